import type { CuttingTask } from './task.ts';

/** The lengths that the trimmer might be set to: the sides of the items that it can be set to, longest first. */
export function sidesOf({ items, limits }: CuttingTask): readonly number[] {
  const sides = new Set(items.flatMap(({ width, height }) => [width, height]));
  const { step, reach } = limits;
  return [...sides]
    .filter((side) => (step === null || side % step === 0) && (reach === null || side <= reach))
    .sort((a, b) => b - a);
}

/** All sets of so many of these lengths that could do: with nothing else set, some sheet gives every item. */
export function viableSets(
  task: CuttingTask,
  lengths: readonly number[],
  size: number,
): readonly (readonly number[])[] {
  const found: (readonly number[])[] = [];
  const choose = (from: number, chosen: readonly number[]): void => {
    if (chosen.length === size) {
      if (isViable(task, chosen)) found.push(chosen);
      return;
    }
    for (let next = from; next <= lengths.length - (size - chosen.length); next++) {
      choose(next + 1, [...chosen, lengths[next]!]);
    }
  };
  choose(0, []);
  return found;
}

function isViable({ items, sheets }: CuttingTask, lengths: readonly number[]): boolean {
  const known = new Map<number, ReadonlySet<number>>();
  const from = (side: number) => {
    const before = known.get(side);
    if (before !== undefined) return before;
    const sizes = sizesFrom(side, lengths);
    known.set(side, sizes);
    return sizes;
  };
  return items.every(({ width, height, turns }) =>
    sheets.some((sheet) => {
      const gives = (w: number, h: number) => from(sheet.width).has(w) && from(sheet.height).has(h);
      return gives(width, height) || (turns && gives(height, width));
    }),
  );
}

/** Every size that measuring off these lengths can make of a side. */
function sizesFrom(side: number, lengths: readonly number[]): ReadonlySet<number> {
  const sizes = new Set<number>([side, ...lengths.filter((length) => length < side)]);
  // What is added while it is gone through is gone through as well.
  for (const size of sizes) for (const length of lengths) if (length < size) sizes.add(size - length);
  return sizes;
}
