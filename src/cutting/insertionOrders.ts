import type { CuttingTask } from './task.ts';

/** Orders in which items may be put into sheets: largest area, longer side, width, height first. */
export function insertionOrders({ items }: CuttingTask): number[][] {
  const by = (size: (item: { readonly width: number; readonly height: number }) => number) =>
    items.map((_, item) => item).sort((a, b) => size(items[b]!) - size(items[a]!) || a - b);
  return [
    by(({ width, height }) => width * height),
    by(({ width, height }) => Math.max(width, height)),
    by(({ width }) => width),
    by(({ height }) => height),
  ];
}
