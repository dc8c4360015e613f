import { passesOn, type Step } from './step.ts';

/** What is cut between two breaks. */
export interface Sitting {
  /** Blade strokes; more than was asked for only where one workpiece alone takes more within its step. */
  readonly passes: number;
  readonly portions: readonly Portion[];
}

/** A step, or the workpieces `take[from]` up to but not with `take[to]` of it. */
export interface Portion {
  readonly step: Step;
  readonly from: number;
  readonly to: number;
}

/**
 * The fewest sittings of at most `cutsPerSitting` blade strokes that cut a whole plan, with its breaks where
 * they disturb least: between papers, else between settings, else between steps, else between two workpieces
 * of a step; and of equally good ones the most even.
 *
 * `papers`: the steps of each paper, in the order they are cut. With no limit (`null`) it is one sitting; no
 * steps need none. The time grows with the number of workpieces times `cutsPerSitting`.
 */
export function sittings(
  papers: readonly (readonly Step[])[],
  cutsPerSitting: number | null,
): readonly Sitting[] {
  const bites = bitesOf(papers);
  const all = bites.reduce((passes, bite) => passes + bite.passes, 0);
  if (all === 0) return [];
  if (cutsPerSitting === null || all <= cutsPerSitting) return [sittingOf(bites)];

  // best[end]: the best way to cut the first `end` bites.
  const best: Way[] = [{ sittings: 0, disturbance: 0, unevenness: 0, from: 0 }];
  for (let end = 1; end <= bites.length; end += 1) {
    let passes = 0;
    let way: Way | null = null;
    for (let from = end - 1; from >= 0; from -= 1) {
      passes += bites[from]!.passes;
      if (passes > cutsPerSitting && from < end - 1) break;
      const before = best[from]!;
      const candidate = {
        sittings: before.sittings + 1,
        disturbance: before.disturbance + (from === 0 ? 0 : bites[from]!.breakBefore),
        unevenness: before.unevenness + passes * passes,
        from,
      };
      if (way === null || isBetter(candidate, way)) way = candidate;
    }
    best.push(way!);
  }

  const found: Sitting[] = [];
  for (let end = bites.length; end > 0; end = best[end]!.from) {
    found.push(sittingOf(bites.slice(best[end]!.from, end)));
  }
  return found.reverse();
}

/** One workpiece in one step. */
interface Bite {
  readonly step: Step;
  readonly index: number;
  readonly passes: number;
  /** How much it disturbs to have a break before it. */
  readonly breakBefore: number;
}

interface Way {
  readonly sittings: number;
  readonly disturbance: number;
  /** The sum of the squares of the passes: for the same total it is least when all are alike. */
  readonly unevenness: number;
  readonly from: number;
}

const disturbance = { betweenPapers: 0, betweenSettings: 1, betweenSteps: 2, betweenWorkpieces: 3 };

function bitesOf(papers: readonly (readonly Step[])[]): readonly Bite[] {
  return papers.flatMap((steps) =>
    steps.flatMap((step, at) => {
      const before = steps[at - 1];
      const first =
        before === undefined
          ? disturbance.betweenPapers
          : before.set === step.set
            ? disturbance.betweenSteps
            : disturbance.betweenSettings;
      return step.take.map((_, index) => ({
        step,
        index,
        passes: passesOn(step, index),
        breakBefore: index === 0 ? first : disturbance.betweenWorkpieces,
      }));
    }),
  );
}

function isBetter(a: Way, b: Way): boolean {
  const difference = a.sittings - b.sittings || a.disturbance - b.disturbance || a.unevenness - b.unevenness;
  return difference < 0;
}

function sittingOf(bites: readonly Bite[]): Sitting {
  const portions: Portion[] = [];
  let passes = 0;
  for (const bite of bites) {
    passes += bite.passes;
    const open = portions.at(-1);
    if (open?.step === bite.step) portions[portions.length - 1] = { ...open, to: bite.index + 1 };
    else portions.push({ step: bite.step, from: bite.index, to: bite.index + 1 });
  }
  return { passes, portions };
}
