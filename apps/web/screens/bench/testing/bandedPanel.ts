import { type AssemblyStep, assemblyOf } from '../../../../../src/finished/index.ts';
import { arrange } from '../../../../../src/layout/index.ts';
import { layoutOf, mm, part } from '../../../../../src/layout/testing/build.ts';
import type { Line } from '../lines.ts';

/** A panel glued to a mat, a band round both, the mat down on the card; ten cards. */
export const bandedPanel = {
  ...layoutOf({
    units: 'mm',
    base: [mm(100), mm(100)],
    parts: [
      part('mat', { inset: mm(5) }),
      part('panel', { on: 'mat', inset: mm(5) }),
      part('band', { on: 'mat', size: [mm(110), mm(20)], tuck: { left: mm(10), right: mm(10) } }),
    ],
  }),
  cards: 10,
};

/** Its steps in their order: panel, band, mat. */
export const { steps } = assemblyOf(bandedPanel, arrange(bandedPanel));

/** The line at the bench of a step, done at that moment; `null`: not done yet. */
export function lineOf(step: AssemblyStep, at: number | null): Extract<Line, { kind: 'made' }> {
  return {
    kind: 'made',
    key: `part ${step.part}`,
    isDone: at !== null,
    name: step.part,
    sentences: [],
    step,
    at,
  };
}
