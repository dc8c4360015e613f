import { bestPattern, type SearchEffort, unlimited, usualEffort } from '../src/cutting/index.ts';
import { quantile, three, timed } from './figures.ts';
import { type KnapsackInstance, knapsackInstances } from './openData.ts';

/** Enough for the 3000 x 3000 sheet of gcut13 without thinning. */
const fineEffort: SearchEffort = { ...usualEffort, positions: 2500, gridSplits: 3e9 };

/** The instances whose optima are asked for; the others are reported only. */
const asked = /^(gcut|cgcut|ngcut)\d/;

/** One sheet, worth most: prints how many published optima are reached and proved; all instances when `whole`. */
export function knapsacks(whole: boolean, yard: number): void {
  console.log(`One sheet, worth most (${whole ? 'all instances' : 'a sample'})`);
  const all = knapsackInstances();
  if (all === null) return;
  const chosen = whole ? all : all.filter(({ id }) => /^(gcut[1-4]|cgcut[13]|ngcut[1-4])$/.test(id));
  const main = chosen.filter(({ id }) => asked.test(id));
  const rest = chosen.filter(({ id }) => !asked.test(id));
  told(
    'gcut, cgcut, ngcut, any number of each',
    main.flatMap((instance) => {
      const { optUnconstrainedGuillotine: optimum } = instance;
      return optimum === undefined ? [] : [tried(instance, Infinity, optimum)];
    }),
    yard,
  );
  told(
    'gcut, cgcut, ngcut, limited numbers',
    main.flatMap((instance) => limitedTried(instance)),
    yard,
  );
  if (rest.length > 0) {
    told(
      'the others, limited numbers (reported only)',
      rest.flatMap((instance) => limitedTried(instance)),
      yard,
    );
  }
}

interface Tried {
  readonly id: string;
  readonly optimum: number;
  readonly value: number;
  readonly bound: number;
  readonly milliseconds: number;
}

function limitedTried(instance: KnapsackInstance): readonly Tried[] {
  const { optConstrainedGuillotine: optimum } = instance;
  return optimum === null ? [] : [tried(instance, null, optimum)];
}

/** `most`: how many of each item count; `null`: as the instance says. */
function tried({ id, w, h, items }: KnapsackInstance, most: number | null, optimum: number): Tried {
  const { value: best, milliseconds } = timed(() =>
    bestPattern(
      {
        sheet: { width: w, height: h },
        items: items.map(([width, height, , maximum]) => {
          const fit = Math.floor(w / width) * Math.floor(h / height);
          return { width, height, need: Math.max(1, Math.min(fit, most ?? maximum)), turns: false };
        }),
        values: items.map(([, , value]) => value),
        limits: unlimited,
      },
      fineEffort,
    ),
  );
  return { id, optimum, value: best.value, bound: best.bound, milliseconds };
}

function told(what: string, all: readonly Tried[], yard: number): void {
  const reached = all.filter(({ value, optimum }) => value === optimum);
  const proved = all.filter(({ value, bound }) => value === bound);
  const times = all.map(({ milliseconds }) => milliseconds);
  console.log(
    `  ${what}: ${reached.length} of ${all.length} published optima, ${proved.length} of ${all.length} proved; ` +
      `${three(quantile(times, 0.5) / yard)} yardsticks at the median, ${three(Math.max(...times) / yard)} at most ` +
      `(${three(Math.max(...times) / 1000)} s)`,
  );
  for (const { id, optimum, value, bound, milliseconds } of all) {
    if (value === bound && value === optimum) continue;
    console.log(
      `    ${id}: ${value}, at most ${bound}, published ${optimum}; ${three(milliseconds / 1000)} s`,
    );
  }
}
