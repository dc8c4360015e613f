import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

/**
 * Where open data sets of the cutting literature lie, which are not part of this project: the folder that the
 * environment variable CARDWRIGHT_CUTTING_DATA names, else one beside the project.
 */
export const openDataFolder = process.env.CARDWRIGHT_CUTTING_DATA ?? join('..', 'shared', 'data', 'cutting');

const whole = z.int();

/**
 * One sheet and what may be cut of it: G. F. Cintra et al. 2008, N. Christofides & C. Whitlock 1977, J. E. Beasley
 * 1985, and others, with the optima of H. Becker, O. Araujo & L. Buriol (edge to edge, any number of stages).
 */
const knapsack = z.object({
  id: z.string(),
  w: whole,
  h: whole,
  /** Width, height, value, how many at most. */
  items: z.array(z.tuple([whole, whole, whole, whole])),
  optConstrainedGuillotine: whole.nullable(),
  optUnconstrainedGuillotine: whole.optional(),
});

/** Cutting stock: G. F. Cintra, F. K. Miyazawa, Y. Wakabayashi & E. C. Xavier 2008; one size of sheet is used here. */
const stock = z.object({
  id: z.string(),
  w: whole,
  h: whole,
  /** Width, height, how many. */
  items: z.array(z.tuple([whole, whole, whole])),
  threeStageBest: whole,
});

/** Bin packing: J. O. Berkey & P. Y. Wang 1987 (classes 1 to 6), S. Martello & D. Vigo 1998 (classes 7 to 10). */
const bins = z.object({ id: z.string(), w: whole, h: whole, items: z.array(z.tuple([whole, whole])) });

export type KnapsackInstance = z.infer<typeof knapsack>;
export type StockInstance = z.infer<typeof stock>;
export type BinsInstance = z.infer<typeof bins>;

/** The instances; `null`, with a line that says so, where the data are not on this machine. */
export function knapsackInstances(): readonly KnapsackInstance[] | null {
  return instances('knapsack.json', knapsack);
}

export function stockInstances(): readonly StockInstance[] | null {
  return instances('cintra-cutting-stock.json', stock);
}

export function binsInstances(): readonly BinsInstance[] | null {
  return instances('bwmv.json', bins);
}

/**
 * What is known of the bin-packing instances: by instance a lower and an upper bound on the sheets of edge-to-edge
 * plans, any number of stages.
 */
export function knownBins(
  turned: boolean,
): ReadonlyMap<string, { readonly least: number; readonly most: number }> {
  const letter = turned ? 'R' : 'O';
  const rows = commaRows('bwmv-best.csv');
  return new Map(
    rows.map((row) => [row.id!, { least: Number(row[`${letter}_lb`]), most: Number(row[`${letter}_ub`]) }]),
  );
}

/** By class and size (`7 20`), the fewest sheets in all ten instances that any of six published methods took. */
export function publishedBins(turned: boolean): ReadonlyMap<string, number> {
  return new Map(
    commaRows(`bwmv-published-${turned ? 'R' : 'O'}.csv`).map((row) => {
      const { class: kind, n, ...methods } = row;
      return [`${kind} ${n}`, Math.min(...Object.values(methods).map(Number))];
    }),
  );
}

function instances<T>(file: string, shape: z.ZodType<T>): readonly T[] | null {
  const path = join(openDataFolder, file);
  if (!existsSync(path)) {
    console.log(`  left out: there is no ${path} (CARDWRIGHT_CUTTING_DATA may name its folder)`);
    return null;
  }
  return z.array(shape).parse(JSON.parse(readFileSync(path, 'utf8')));
}

function commaRows(file: string): readonly Record<string, string>[] {
  const [head, ...lines] = readFileSync(join(openDataFolder, file), 'utf8').trim().split(/\r?\n/);
  const names = head!.split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, at) => [names[at]!, cell])));
}
