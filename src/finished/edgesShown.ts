import type { Arrangement, Face, LaidPiece } from '../layout/index.ts';
import { type Box, bottomOf, type Edge, type Length, minus, rightOf, zero } from '../measure/index.ts';
import { areaOf, boxRegion, intersection, nearestBetween } from '../shape/index.ts';
import type { Shown } from './shown.ts';

/** What shows on one side of a piece. */
export interface BorderShown {
  /** From the seen edge of what it lies on to its own; negative: it hangs over. */
  readonly breadth: Length;
  /** How much of the border is seen, with nothing over it, from 0 to 1; 0 where there is none. */
  readonly open: number;
}

/** The borders of a piece on what it lies on, as they are seen. */
export interface BordersShown {
  readonly part: string;
  readonly piece: number;
  readonly face: Face;
  /** What it lies on: the id of a part, or a face. */
  readonly on: string;
  readonly edges: Readonly<Record<Edge, BorderShown>>;
  /** From its true outline to that of what it lies on, at the nearest; 0 where they meet or cross. */
  readonly nearest: Length;
}

/** What shows between two pieces that lie beside one another on the same thing. */
export interface GapShown {
  readonly face: Face;
  /** Along which axis they stand apart; the one on the left or on top first. */
  readonly axis: 'width' | 'height';
  readonly between: readonly [PieceName, PieceName];
  /** From box to box. */
  readonly breadth: Length;
  /** From outline to outline, at the nearest. */
  readonly nearest: Length;
  /** What is seen of the gap, with nothing over it: each part with its share, the largest first; `base`: the card. */
  readonly shows: readonly { readonly part: string; readonly share: number }[];
}

export interface PieceName {
  readonly part: string;
  readonly piece: number;
}

/** The borders round every piece, in the order of the pile. */
export function bordersShown(arrangement: Arrangement, shown: readonly Shown[]): readonly BordersShown[] {
  return placed(arrangement, shown).flatMap(({ at, box, under, bed, on }) => {
    if (bed === null) return [];
    const edges = Object.fromEntries(
      beside(under, box).map(({ edge, breadth, box: strip }) => {
        const whole = strip === null ? 0 : areaOf(intersection(bed.region, boxRegion(strip)));
        const open = strip === null ? 0 : areaOf(intersection(bed.open, boxRegion(strip)));
        return [edge, { breadth, open: whole === 0 ? 0 : open / whole }];
      }),
    ) as Record<Edge, BorderShown>;
    const { part, piece, face } = at;
    return [{ part, piece, face, on, edges, nearest: nearestBetween(at.region, bed.region) ?? zero }];
  });
}

/** The gaps between pieces that lie on the same thing with nothing of its like between them, in the order of the pile. */
export function gapsShown(arrangement: Arrangement, shown: readonly Shown[]): readonly GapShown[] {
  const pieces = placed(arrangement, shown);
  return pieces.flatMap((one, index) =>
    pieces.slice(index + 1).flatMap((other) => {
      if (one.bedName !== other.bedName) return [];
      const gap = gapBetween(one.box, other.box);
      if (gap === null) return [];
      // What lies over the two as well is laid across the gap, not into it.
      const isBetween = pieces.some(
        (third) =>
          third !== one &&
          third !== other &&
          third.bedName === one.bedName &&
          overlap(third.box, gap.box) &&
          !overlap(third.box, one.box) &&
          !overlap(third.box, other.box),
      );
      if (isBetween) return [];
      const [first, second] = gap.turned ? [other, one] : [one, other];
      const nameOf = ({ at }: Placed): PieceName => ({ part: at.part, piece: at.piece });
      return [
        {
          face: one.at.face,
          axis: gap.axis,
          between: [nameOf(first), nameOf(second)] as const,
          breadth: gap.breadth,
          nearest: nearestBetween(one.at.region, other.at.region) ?? zero,
          shows: seenIn(gap.box, one.at.face, shown),
        },
      ];
    }),
  );
}

interface Placed {
  readonly at: Shown;
  readonly box: Box;
  readonly under: Box;
  readonly on: string;
  /** Names the one piece, or the face, that it lies on. */
  readonly bedName: string;
  /** The piece that it lies on. */
  readonly bed: Shown | null;
}

/** The pieces whose place is known, with what they lie on. */
function placed(arrangement: Arrangement, shown: readonly Shown[]): readonly Placed[] {
  const byName = new Map(shown.map((one) => [`${one.part} ${one.piece} ${one.face}`, one]));
  return arrangement.parts.flatMap(({ part, face, pieces }) =>
    pieces.flatMap(({ box, under, onPiece }: LaidPiece, piece) => {
      const at = byName.get(`${part.id} ${piece} ${face}`);
      if (at === undefined || box === null || under === null) return [];
      const bedName = `${onPiece === null ? 'base 0' : `${part.on} ${onPiece}`} ${face}`;
      return [{ at, box, under, on: part.on, bedName, bed: byName.get(bedName) ?? null }];
    }),
  );
}

/** The strips of what a piece lies on that are its borders, each as high or wide as the piece; `null`: there is none. */
function beside(
  under: Box,
  box: Box,
): readonly { readonly edge: Edge; readonly breadth: Length; readonly box: Box | null }[] {
  const strip = (edge: Edge, breadth: Length, of: Box) => ({ edge, breadth, box: breadth > 0 ? of : null });
  const [left, top] = [minus(box.left, under.left), minus(box.top, under.top)];
  const right = minus(rightOf(under), rightOf(box));
  const bottom = minus(bottomOf(under), bottomOf(box));
  return [
    strip('left', left, { ...box, left: under.left, width: left }),
    strip('right', right, { ...box, left: rightOf(box), width: right }),
    strip('top', top, { ...box, top: under.top, height: top }),
    strip('bottom', bottom, { ...box, top: bottomOf(box), height: bottom }),
  ];
}

interface Gap {
  readonly axis: 'width' | 'height';
  readonly breadth: Length;
  readonly box: Box;
  /** Whether the other one is on the left or on top. */
  readonly turned: boolean;
}

/** The box between two boxes that face one another; `null`: they do not, or lie on one another. */
function gapBetween(one: Box, other: Box): Gap | null {
  const common = (start: number, end: number, from: number, to: number) => {
    const [low, high] = [Math.max(start, from), Math.min(end, to)];
    return high > low ? ([low as Length, minus(high as Length, low as Length)] as const) : null;
  };
  const rows = common(one.top, bottomOf(one), other.top, bottomOf(other));
  const columns = common(one.left, rightOf(one), other.left, rightOf(other));
  if (rows !== null && columns !== null) return null;
  if (rows !== null) {
    const turned = other.left < one.left;
    const [first, second] = turned ? [other, one] : [one, other];
    const breadth = minus(second.left, rightOf(first));
    const [top, height] = rows;
    return { axis: 'width', breadth, turned, box: { left: rightOf(first), top, width: breadth, height } };
  }
  if (columns !== null) {
    const turned = other.top < one.top;
    const [first, second] = turned ? [other, one] : [one, other];
    const breadth = minus(second.top, bottomOf(first));
    const [left, width] = columns;
    return { axis: 'height', breadth, turned, box: { left, top: bottomOf(first), width, height: breadth } };
  }
  return null;
}

function overlap(one: Box, other: Box): boolean {
  return (
    one.left < rightOf(other) &&
    other.left < rightOf(one) &&
    one.top < bottomOf(other) &&
    other.top < bottomOf(one)
  );
}

function seenIn(box: Box, face: Face, shown: readonly Shown[]): GapShown['shows'] {
  const strip = boxRegion(box);
  const whole = areaOf(strip);
  if (whole === 0) return [];
  const shares = new Map<string, number>();
  for (const one of shown) {
    if (one.face !== face) continue;
    const share = areaOf(intersection(one.open, strip)) / whole;
    if (share > 0) shares.set(one.part, (shares.get(one.part) ?? 0) + share);
  }
  return [...shares].map(([part, share]) => ({ part, share })).sort((a, b) => b.share - a.share);
}
