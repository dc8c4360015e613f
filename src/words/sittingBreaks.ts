import type { Plan } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import { type Step, sittings, type Trimmer } from '../trimming/index.ts';
import { counted, listed } from './count.ts';
import { tableOf } from './workpiece.ts';

/** Where someone rests who makes only so many cuts at a sitting. */
export interface SittingBreak {
  /** The step after which it is, or within which. */
  readonly step: number;
  /** How many of that step's workpieces are cut by then. */
  readonly cut: number;
  readonly isWithin: boolean;
  /** What is said there: `A good place to stop: what follows is for sitting 2.` */
  readonly says: string;
}

/** The breaks of a plan for a trimmer whose owner wants some, in their order; none where one sitting does. */
export function sittingBreaks(plan: Plan, trimmer: Trimmer | null): readonly SittingBreak[] {
  return sittingsOf(plan, trimmer)
    .slice(0, -1)
    .map(({ portions }, index): SittingBreak => {
      const last = portions.at(-1);
      assert(last !== undefined, 'A sitting cuts something');
      const { step, take } = last.step;
      const isWithin = last.to < take.length;
      const place = isWithin
        ? `A good place to stop, when ${last.to} of the ${take.length} are cut`
        : 'A good place to stop';
      return {
        step,
        cut: last.to,
        isWithin,
        says: `${place}: what follows is for sitting ${index + 2}.`,
      };
    });
}

/**
 * How the cutting falls into sittings for a trimmer whose owner wants breaks:
 * `39 passes, at most 35 at a sitting: a break after step 4.`; empty where one sitting does.
 */
export function sittingsSentence(plan: Plan, trimmer: Trimmer | null): string {
  const most = trimmer?.cutsPerSitting ?? null;
  const breaks = sittingBreaks(plan, trimmer);
  if (most === null || breaks.length === 0) return '';
  const passes = sittingsOf(plan, trimmer).reduce((sum, sitting) => sum + sitting.passes, 0);
  const places = breaks.map(({ step, isWithin }) => `${isWithin ? 'within' : 'after'} step ${step}`);
  return `${counted(passes, 'pass')}, at most ${most} at a sitting: ${places.length === 1 ? 'a break' : 'breaks'} ${listed(places)}.`;
}

function sittingsOf(plan: Plan, trimmer: Trimmer | null): ReturnType<typeof sittings> {
  const table = tableOf(plan);
  const byPaper = new Map<string, Step[]>();
  for (const step of plan.steps) {
    const paper = table.get(step.take[0] ?? '')?.paper ?? '';
    byPaper.set(paper, [...(byPaper.get(paper) ?? []), step]);
  }
  return sittings([...byPaper.values()], trimmer?.cutsPerSitting ?? null);
}
