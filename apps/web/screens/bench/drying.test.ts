import { expect, test } from 'vitest';
import { type AssemblyStep, assemblyOf } from '../../../../src/finished/index.ts';
import { arrange } from '../../../../src/layout/index.ts';
import { layoutOf, mm, part } from '../../../../src/layout/testing/build.ts';
import { hardAt, setAt, turnAt } from './drying.ts';
import type { Line } from './lines.ts';

/** A panel glued to a mat, a band round both, the mat down on the card. */
const layout = layoutOf({
  units: 'mm',
  base: [mm(100), mm(100)],
  parts: [
    part('mat', { inset: mm(5) }),
    part('panel', { on: 'mat', inset: mm(5) }),
    part('band', { on: 'mat', size: [mm(110), mm(20)], tuck: { left: mm(10), right: mm(10) } }),
  ],
});
const { steps } = assemblyOf(layout, arrange(layout));
const line = (step: AssemblyStep, at: number | null): Extract<Line, { kind: 'made' }> => ({
  kind: 'made',
  key: `part ${step.part}`,
  isDone: at !== null,
  name: step.part,
  sentences: [],
  step,
  at,
});

test('glue told at ten to four is dry enough to turn over at twenty past, and hard a day later', () => {
  const told = new Date(2026, 4, 4, 15, 50).getTime();
  const [panel, band, mat] = steps.map((step) => line(step, step.part === 'panel' ? told : null));
  const lines = [panel!, band!, mat!];
  expect([panel!.name, band!.name, mat!.name]).toEqual(['panel', 'band', 'mat']);
  const set = { at: new Date(2026, 4, 4, 16, 20).getTime(), since: told };
  expect(setAt(panel!)).toEqual(set);
  expect(turnAt(band!, lines)).toEqual(set);
  // The tape at the ends needs no drying, so nothing more is waited for.
  expect(turnAt(mat!, lines)).toBeNull();
  expect(hardAt(lines)).toEqual({ at: new Date(2026, 4, 5, 15, 50).getTime(), since: told });
});

test('what was noted without its time promises none', () => {
  const lines = steps.map((step) => line(step, null));
  expect(setAt(lines[0]!)).toBeNull();
  expect(turnAt(lines[1]!, lines)).toBeNull();
  expect(hardAt(lines)).toBeNull();
});
