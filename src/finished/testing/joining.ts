import type { Arrangement, Layout } from '../../layout/index.ts';

/**
 * Puts a card together in that order with sheets of cardboard in the mind, for layouts of rectangles on one face:
 * whether it comes out as the pile has it. Whatever is joined comes from above, so nothing of it may belong under
 * anything of what it is joined to; and a band reaches round only what is still loose. Knows nothing of rules.
 */
export function joins(layout: Layout, arrangement: Arrangement, order: readonly string[]): boolean {
  const things = arrangement.parts.map(({ part, pieces: [piece] }, height) => ({
    id: part.id,
    on: part.on,
    height,
    box: piece!.box!,
    isBand: Object.values(part.tuck).some((tuck) => tuck > 0),
  }));
  /** Everything that hangs together, by the number of its heap. */
  const heaps = new Map([['base', 0], ...things.map(({ id }, index): [string, number] => [id, index + 1])]);
  const joined = new Set<string>();
  for (const id of order) {
    const thing = things.find((each) => each.id === id)!;
    const [own, other] = [heaps.get(id)!, heaps.get(thing.on)!];
    if (thing.isBand && layout.parts.some((part) => part.id === thing.on) && joined.has(thing.on))
      return false;
    const upper = things.filter((each) => heaps.get(each.id) === own);
    const lower = things.filter((each) => heaps.get(each.id) === other);
    for (const above of upper) {
      for (const below of lower) {
        const a = above.box;
        const b = below.box;
        const meet =
          a.left < b.left + b.width &&
          b.left < a.left + a.width &&
          a.top < b.top + b.height &&
          b.top < a.top + a.height;
        if (meet && above.height < below.height) return false;
      }
    }
    for (const { id: each } of upper) heaps.set(each, other);
    joined.add(id);
  }
  return true;
}

/** All orders of a few things. */
export function permutations<Thing>(things: readonly Thing[]): readonly (readonly Thing[])[] {
  if (things.length === 0) return [[]];
  return things.flatMap((first, index) =>
    permutations(things.filter((_, at) => at !== index)).map((rest) => [first, ...rest]),
  );
}
