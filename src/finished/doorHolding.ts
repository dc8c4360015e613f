import { type ArrangedPart, type Arrangement, foldedBase, type Layout } from '../layout/index.ts';
import { slitOf } from '../making/index.ts';
import { type Box, type Length, lengthOfTicks, minus, times } from '../measure/index.ts';
import { boxRegion, type Region } from '../shape/index.ts';

/**
 * On which door of a front that has two each piece is held, by its part and its number: the side of the slit that its
 * adhesive keeps to, or it would hold the card shut. What lies on another part goes by that; what lies on both doors
 * itself is held by the one that it covers more of. Pieces of other faces are left out, and so is what is carried by
 * something that lies on both.
 */
export function doorsHolding(
  layout: Layout,
  arrangement: Arrangement,
): ReadonlyMap<string, (inset: Length) => Region> {
  const slit = slitOf(foldedBase(layout));
  const held = new Map<string, (inset: Length) => Region>();
  if (slit === null) return held;
  const { axis, at } = slit;
  const [start, across] = axis === 'width' ? (['left', 'top'] as const) : (['top', 'left'] as const);
  const byId = new Map(arrangement.parts.map((one) => [one.part.id, one]));
  // Far enough for whatever hangs over.
  const far = times(lengthOfTicks(Math.max(arrangement.card.width, arrangement.card.height)), 100);
  const side = (first: boolean) => (inset: Length) => {
    const box = { left: minus(at, far), top: minus(at, far), width: times(far, 2), height: times(far, 2) };
    const from = first ? minus(at, far) : lengthOfTicks(at + inset);
    const door: Box = { ...box, [across]: minus(at, far), [start]: from, [axis]: minus(far, inset) };
    return boxRegion(door);
  };
  for (const arranged of arrangement.parts) {
    if (arranged.face !== 'base') continue;
    arranged.pieces.forEach(({ box }, piece) => {
      const root = rootOf(arranged, piece, byId);
      if (root === null || box === null) return;
      const before = at - root.box[start];
      const past = root.box[start] + root.box[axis] - at;
      const isRoot = root.part === arranged.part.id;
      if (before > 0 && past > 0 && !isRoot) return;
      held.set(`${arranged.part.id} ${piece}`, side(before >= past));
    });
  }
  return held;
}

/** The piece on the card itself that carries a piece; `null` where the place of one on the way is not known. */
function rootOf(
  { part, pieces }: ArrangedPart,
  piece: number,
  byId: ReadonlyMap<string, ArrangedPart>,
): { readonly part: string; readonly box: Box } | null {
  const laid = pieces[piece];
  if (laid === undefined || laid.box === null) return null;
  const bed = byId.get(part.on);
  return bed === undefined || laid.onPiece === null
    ? { part: part.id, box: laid.box }
    : rootOf(bed, laid.onPiece, byId);
}
