import type { Axis, Length } from '../measure/index.ts';
import { describeSteps } from '../trimming/index.ts';
import type { Plan } from './plan.ts';

/** Pieces that use up a whole side of their sheet, so that a sheet a hair short spoils one of them. */
export interface TightFit {
  readonly paper: string;
  /** Index into the paper's `sheets`. */
  readonly stock: number;
  readonly axis: Axis;
  /** The sheet's side. */
  readonly side: Length;
  /** So many of this length make up the side. */
  readonly count: number;
  readonly set: Length;
}

/**
 * The fits of a plan with nothing to spare against the edge of a sheet: several pieces that make up a side of it, or
 * one piece as long as the sheet. A strip that was itself cut to length
 * is not among them: what is measured is as long as it was measured.
 */
export function tightFitsOf(plan: Plan): readonly TightFit[] {
  const sheets = new Map(plan.sheets.map((sheet) => [sheet.id, sheet]));
  const described = describeSteps(plan.steps, new Map(plan.sheets.map(({ id, size }) => [id, size])));
  // Whether a workpiece still has the sheet's own side along each axis.
  const uncut = new Map(plan.sheets.map(({ id }) => [id, { sheet: id, width: true, height: true }]));
  const fits = new Map<string, TightFit>();
  const add = (fit: TightFit) => fits.set(JSON.stringify(fit), fit);
  for (const [at, step] of plan.steps.entries()) {
    for (const [index, id] of step.take.entries()) {
      const from = uncut.get(id)!;
      const after = { ...from, [step.axis]: false };
      for (const made of [...step.gives[index]!, step.rest[index]!])
        if (made !== null) uncut.set(made, after);
      // Lengths are rounded down to a tick each when they are read: so small a rest is none.
      if (described[at]!.rest > step.repeat || !from[step.axis]) continue;
      const { paper, stock, size } = sheets.get(from.sheet)!;
      add({ paper, stock, axis: step.axis, side: size[step.axis], count: step.repeat, set: step.set });
    }
  }
  for (const id of plan.finished.keys()) {
    const from = uncut.get(id)!;
    const { paper, stock, size } = sheets.get(from.sheet)!;
    for (const axis of ['width', 'height'] as const) {
      if (from[axis]) add({ paper, stock, axis, side: size[axis], count: 1, set: size[axis] });
    }
  }
  return [...fits.values()];
}
