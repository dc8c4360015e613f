import { expect, test } from 'vitest';
import { hardAt, setAt, turnAt } from './drying.ts';
import { lineOf, steps } from './testing/bandedPanel.ts';

test('glue told at ten to four is dry enough to turn over at twenty past, and hard a day later', () => {
  const told = new Date(2026, 4, 4, 15, 50).getTime();
  const [panel, band, mat] = steps.map((step) => lineOf(step, step.part === 'panel' ? told : null));
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
  const lines = steps.map((step) => lineOf(step, null));
  expect(setAt(lines[0]!)).toBeNull();
  expect(turnAt(lines[1]!, lines)).toBeNull();
  expect(hardAt(lines)).toBeNull();
});
