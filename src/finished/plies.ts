import {
  type ArrangedPart,
  type Arrangement,
  depthRegionsIn,
  type Face,
  foldedBase,
  isFolded,
  type Layout,
  type Part,
  paperOfCard,
  regionIn,
} from '../layout/index.ts';
import { openingAxis, type Panel, panelsOf } from '../making/index.ts';
import { type Box, type Length, lengthOfTicks, minus, sum, zero } from '../measure/index.ts';
import { boxRegion, evenOddRegion, intersection, isEmpty, type Region } from '../shape/index.ts';
import { foamOf, spotsOf, type Thickness, thicknessOfDealt } from './thickness.ts';
import { tucksOf } from './tucks.ts';

/** The faces that parts lie on, as they follow one another from the front of a closed card to its back. */
export const facesFromFront = ['base', 'inside', 'back'] as const satisfies readonly Face[];

/**
 * One thing that a closed card is made of, where it lies in the card: a panel of the base, a piece of a part, what of a
 * wrapped band lies behind, what of a folded strip lies over itself (once more for each fold). Its place is in the axes of the front, seen from there.
 */
export interface Ply {
  readonly what: 'base' | 'part' | 'tuck' | 'fold';
  /** The id of its part, or `base`. */
  readonly part: string;
  /** From 0, of the pieces of the part on a card; of the base its panels, as `panelsOf` counts them. */
  readonly piece: number;
  readonly face: Face;
  readonly region: Region;
  /** Of the paper, or of what is bought. */
  readonly thickness: Thickness;
  /** What holds it away from what it lies on: foam, or spots of glue; `null`: it lies flat. */
  readonly held: { readonly by: 'foam' | 'spots'; readonly thickness: Thickness } | null;
  /** How high foam and spots hold it in all, its own and what carries the things it lies on. */
  readonly lift: Length;
}

/**
 * Everything that one closed card is made of, from the back to the front as it would be met going up through a card
 * that lies on its back.
 *
 * The inside is the panel seen beside the front's inner side when the card is opened (`panelsOf`). Paper gives way,
 * so that a piece lies close to whatever is under it; foam does not, and whatever lies on something it carries is
 * carried as high, over its whole extent.
 */
export function pliesOf(layout: Layout, arrangement: Arrangement, card: number): readonly Ply[] {
  const pile = (face: Face) => pileOn(face, layout, arrangement, card);
  const base = foldedBase(layout);
  const axis = openingAxis(base) ?? 'width';
  const panels = panelsOf(base).map((panel, piece) => ({ panel, piece }));
  const inside = panels.find(({ panel }) => panel.is === 'inside')?.panel.level ?? -1;
  const ground = { left: zero, top: zero, ...arrangement.card };
  const placed = ({ closedAt, length }: Panel): Box =>
    axis === 'width'
      ? { ...ground, left: closedAt, width: length }
      : { ...ground, top: closedAt, height: length };
  const ply = (panel: Panel, piece: number): Ply => ({
    what: 'base',
    part: 'base',
    piece,
    face: panel.level > inside ? 'base' : 'back',
    region: boxRegion(placed(panel)),
    thickness: thicknessOfDealt(layout, layout.base, paperOfCard(layout.base, card)),
    held: null,
    lift: zero,
  });
  const plies = panels
    .toSorted((one, other) => one.panel.level - other.panel.level)
    .map(({ panel, piece }) => ply(panel, piece));
  return [
    ...pile('back').toReversed(),
    ...plies.filter(({ face }) => face === 'back'),
    ...(inside < 0 ? [] : pile('inside')),
    ...plies.filter(({ face }) => face === 'base'),
    ...pile('base'),
  ];
}

function pileOn(face: Face, layout: Layout, arrangement: Arrangement, card: number): readonly Ply[] {
  const plies: Ply[] = [];
  /** What is held up or carried, by which later pieces are carried in turn. */
  const lifted: Ply[] = [];
  arrangement.parts.forEach((arranged, index) => {
    if (arranged.face !== face) return;
    const part: Part = layout.parts[index]!;
    const thickness = thicknessOfDealt(layout, part, paperOfCard(part, card));
    const held = heldBy(part, layout);
    arranged.pieces.forEach(({ box }, piece) => {
      if (box === null) return;
      const region = regionOfPiece(arranged, box, face, arrangement);
      const carried = lifted.filter((other) => !isEmpty(intersection(other.region, region)));
      const lift = sum(
        lengthOfTicks(Math.max(0, ...carried.map((other) => other.lift))),
        held?.thickness.length ?? zero,
      );
      const ply: Ply = { what: 'part', part: part.id, piece, face, region, thickness, held, lift };
      if (lift > 0) lifted.push(ply);
      for (const tuck of tucksOf(part, box)) {
        plies.push({
          ...ply,
          what: 'tuck',
          region: seenFromFront(tuck, face, arrangement),
          held: null,
          lift: zero,
        });
      }
      plies.push(ply);
      // The first depth is the piece itself.
      for (const depth of isFolded(part.shape) ? depthRegionsIn(part.shape, box).slice(1) : [])
        plies.push({ ...ply, what: 'fold', region: seenFromFront(depth, face, arrangement), held: null });
    });
  });
  return plies;
}

function heldBy(part: Part, layout: Layout): Ply['held'] {
  switch (part.adhere) {
    case 'raised':
      return { by: 'foam', thickness: foamOf(part, layout) };
    case 'spots':
      return { by: 'spots', thickness: spotsOf(layout) };
    case 'flat':
      return null;
  }
}

function regionOfPiece({ part }: ArrangedPart, box: Box, face: Face, arrangement: Arrangement): Region {
  const region = regionIn(part.shape, box);
  return seenFromFront(region, face, arrangement);
}

/** The back is turned over like a page, so that its left is the front's right. */
function seenFromFront(region: Region, face: Face, { card }: Arrangement): Region {
  return face === 'back'
    ? evenOddRegion(region.rings.map((ring) => ring.map(({ x, y }) => ({ x: minus(card.width, x), y }))))
    : region;
}
