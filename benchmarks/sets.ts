import type { CuttingTask, Item } from '../src/cutting/index.ts';
import { unlimited } from '../src/cutting/index.ts';

/** A cutting task with sheets of one size, as many as needed: what general packers can be given too. */
export interface OneSizeTask extends CuttingTask {
  readonly name: string;
}

/**
 * Invented practical sets, always the same for one seed: one to six kinds of piece in eighths of an inch or whole
 * millimetres, 5 to 60 cards, from letter, A4 or 12 x 12; half of the kinds are locked.
 */
export function practicalSets(count: number, seed: number): readonly OneSizeTask[] {
  const next = generator(seed);
  const between = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  return Array.from({ length: count }, (_, index) => {
    const sheet = sheets[between(0, sheets.length - 1)]!;
    const cards = between(5, 60);
    const items: Item[] = Array.from({ length: between(1, 6) }, () => ({
      width:
        sheet.step *
        between(Math.ceil(sheet.width / sheet.step / 12), Math.floor(sheet.width / sheet.step / 2)),
      height:
        sheet.step *
        between(Math.ceil(sheet.height / sheet.step / 12), Math.floor(sheet.height / sheet.step / 2)),
      need: cards * between(1, 2),
      turns: next() < 0.5,
    }));
    const { width, height } = sheet;
    return {
      name: `set ${index + 1}`,
      items,
      sheets: [{ width, height, count: null, cost: 1 }],
      limits: unlimited,
    };
  });
}

/** Usual sheets in ticks, and the step that sizes cut from them are whole multiples of: 1/8 in or 1 mm. */
const sheets = [
  { width: 345_440, height: 447_040, step: 5_080 },
  { width: 487_680, height: 487_680, step: 5_080 },
  { width: 336_000, height: 475_200, step: 1_600 },
] as const;

/** Numbers in [0, 1) from a seed: the mulberry32 generator (public domain, T. Ettinger). */
function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
