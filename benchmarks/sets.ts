import type { CuttingTask, Item, SheetType } from '../src/cutting/index.ts';
import { unlimited } from '../src/cutting/index.ts';
import { generator } from './generator.ts';

/** An invented set of cards as a cutting task; the same for the same seed. */
export interface PracticalSet extends CuttingTask {
  readonly seed: number;
  /** Whether all sheets are of one size and as many as needed, which is all that general packers can be given. */
  readonly oneSize: boolean;
}

/**
 * Invented practical sets with the seeds `seed`, `seed + 1` and so on: one to six kinds of piece for 5 to 200
 * cards, in eighths of an inch or whole millimetres. Every second set has sheets of one size without number; the
 * others add a few sheets of other sizes at their area or at invented prices, and up to three scraps for nothing.
 * A third of the pieces are locked.
 */
export function practicalSets(count: number, seed: number): readonly PracticalSet[] {
  return Array.from({ length: count }, (_, index) => practicalSet(seed + index, index % 2 === 0));
}

function practicalSet(seed: number, oneSize: boolean): PracticalSet {
  const next = generator(seed);
  const between = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  const oneOf = <T>(list: readonly T[]): T => list[between(0, list.length - 1)]!;
  const { step, inch, fronts, sheets } = oneOf(systems);
  const cards = between(5, 200);
  const [frontWidth, frontHeight] = oneOf(fronts);
  const main = oneOf(sheets.filter(({ large }) => large));

  /** Part of the inch, in steps. */
  const inches = (low: number, high: number) => between(Math.round(low * inch), Math.round(high * inch));
  const kinds: readonly (() => readonly [number, number])[] = [
    () => [2 * frontWidth, frontHeight],
    () => {
      const less = 2 * inches(1 / 8, 1 / 4);
      return [frontWidth - less, frontHeight - less];
    },
    () => [Math.floor(frontWidth / 2) - inches(1 / 8, 1 / 2), frontHeight - 2 * inches(1 / 8, 1 / 2)],
    () => [frontWidth, inches(1 / 2, 1.5)],
    () => [inches(1.5, 3.5), inches(1 / 2, 1.25)],
    () => [inches(1, 4), inches(1, 4)],
  ];
  const items: Item[] = [];
  for (let left = between(1, 6); left > 0; left -= 1) {
    const [width, height] = oneOf(kinds)();
    const turns = between(0, 2) > 0;
    const fits =
      (width <= main.width && height <= main.height) ||
      (turns && height <= main.width && width <= main.height);
    const lies = fits ? { width, height, turns } : { width: height, height: width, turns };
    // A base wider than the sheet lies along its longer side, even where the print is locked.
    items.push({
      width: lies.width * step,
      height: lies.height * step,
      need: cards * oneOf([1, 1, 1, 2]) + oneOf([0, 0, 1, 2]),
      turns,
    });
  }

  const byArea = next() < 0.5;
  const costOf = (width: number, height: number) =>
    byArea ? width * height : Math.ceil((width * height * between(8, 16)) / (inch * inch));
  const stock: SheetType[] = [];
  const add = (width: number, height: number, number: number | null, cost: number) =>
    stock.push({ width: width * step, height: height * step, count: number, cost });
  add(main.width, main.height, null, oneSize ? 1 : costOf(main.width, main.height));
  if (!oneSize) {
    for (const other of sheets) {
      if (other !== main && next() < 0.5)
        add(other.width, other.height, between(1, 12), costOf(other.width, other.height));
    }
    for (let scraps = between(0, 3); scraps > 0; scraps -= 1) add(inches(2, 8), inches(2, 8), 1, 0);
  }
  return { seed, oneSize, items, sheets: stock, limits: unlimited };
}

interface System {
  /** In ticks: 1/8 in or 1 mm. Everything below is counted in it. */
  readonly step: number;
  readonly inch: number;
  readonly fronts: readonly (readonly [number, number])[];
  readonly sheets: readonly { readonly width: number; readonly height: number; readonly large: boolean }[];
}

/** Usual card fronts and sheets. */
const systems: readonly System[] = [
  {
    step: 5_080,
    inch: 8,
    fronts: [
      [34, 44],
      [40, 56],
      [44, 44],
      [28, 39],
    ],
    sheets: [
      { width: 68, height: 88, large: true },
      { width: 96, height: 96, large: true },
      { width: 88, height: 136, large: true },
      { width: 48, height: 48, large: false },
    ],
  },
  {
    step: 1_600,
    inch: 25.4,
    fronts: [
      [105, 148],
      [99, 210],
      [135, 135],
      [74, 105],
    ],
    sheets: [
      { width: 210, height: 297, large: true },
      { width: 305, height: 305, large: true },
      { width: 297, height: 420, large: true },
      { width: 148, height: 210, large: false },
    ],
  },
];
