import { type Arrangement, type Face, type Layout, paperOfCard, regionIn } from '../layout/index.ts';
import { zero } from '../measure/index.ts';
import { boxRegion, difference, intersection, nothing, type Region, union } from '../shape/index.ts';
import { facesFromFront } from './plies.ts';

/** A piece on a face of one card, or the card itself there, and what is seen of it. */
export interface Shown {
  /** The id of its part; `base`: the card itself. */
  readonly part: string;
  /** From 0, of the pieces of the part on a card. */
  readonly piece: number;
  readonly face: Face;
  /** What it covers, in the axes of its face; of a torn piece, as it is reckoned to be torn. */
  readonly region: Region;
  /** What is seen of it with nothing over it, also where it hangs over the edge of the card. */
  readonly open: Region;
  /** What is seen of it only through what lies over it. */
  readonly veiled: Region;
}

/**
 * What is seen of every piece of card number `card` (from 0), face by face, each from the card itself up; pieces whose
 * place is not known are left out.
 *
 * On each face `open` regions do not overlap, and together with what is seen through they cover all that any piece
 * covers. A flat card has no inside. Time grows with the pieces times the corners of what lies over them.
 */
export function shownOn(layout: Layout, arrangement: Arrangement, card: number): readonly Shown[] {
  return facesFromFront
    .filter((face) => layout.base.fold !== 'none' || face !== 'inside')
    .flatMap((face) => shownOnFace(layout, arrangement, card, face));
}

function shownOnFace(layout: Layout, arrangement: Arrangement, card: number, face: Face): readonly Shown[] {
  const isSeenThrough = (paper: string | null) => layout.papers.get(paper ?? '')?.seeThrough === true;
  const ground = {
    part: 'base',
    piece: 0,
    region: boxRegion({ left: zero, top: zero, ...arrangement.card }),
    seenThrough: false,
  };
  const pieces = arrangement.parts.flatMap(({ part, face: own, pieces }) =>
    own !== face
      ? []
      : pieces.flatMap(({ box }, piece) =>
          box === null
            ? []
            : [
                {
                  part: part.id,
                  piece,
                  region: regionIn(part.shape, box),
                  seenThrough: isSeenThrough(paperOfCard(part, card)),
                },
              ],
        ),
  );

  // From the top down: what hides all below it, and what is seen through.
  let opaque = nothing;
  let veil = nothing;
  const shown: Shown[] = [];
  for (const { part, piece, region, seenThrough } of [ground, ...pieces].toReversed()) {
    const seen = difference(region, opaque);
    shown.push({
      part,
      piece,
      face,
      region,
      open: difference(seen, veil),
      veiled: intersection(seen, veil),
    });
    if (seenThrough) veil = union([veil, region]);
    else opaque = union([opaque, region]);
  }
  return shown.toReversed();
}
