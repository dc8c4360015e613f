import { describe, expect, test } from 'vitest';
import {
  type CuttingAnswer,
  type CuttingTask,
  type Item,
  planCuts,
  type SheetType,
  unlimited,
} from './index.ts';
import { checkCertificate } from './testing/checkCertificate.ts';
import { faultsOf } from './testing/checkTree.ts';
import { solver } from './testing/solver.ts';

/** Worked examples: whole sets of cards, reckoned by hand. Lengths in 1/16 in or in tenths of a millimetre. */
const locked = (width: number, height: number, need: number): Item => ({ width, height, need, turns: false });
const free = (width: number, height: number, need: number): Item => ({ width, height, need, turns: true });
const sheet = (width: number, height: number, count: number | null): SheetType => ({
  width,
  height,
  count,
  cost: 1,
});

function planned(items: readonly Item[], sheets: readonly SheetType[], limits = unlimited): CuttingAnswer {
  const task: CuttingTask = { items, sheets, limits };
  const answer = planCuts(task, solver);
  expect(faultsOf(task, answer)).toEqual([]);
  // Tenths of a millimetre are too many for a programme over every size.
  if (answer.certificate !== null && sheets.every(({ width, height }) => Math.max(width, height) <= 200)) {
    const { faults, bound } = checkCertificate(task, answer.certificate, null);
    expect(faults).toEqual([]);
    expect(bound).toBe(answer.kind === 'plan' ? answer.bound : null);
  }
  return answer;
}

function expectSheets(answer: CuttingAnswer, count: number) {
  expect(answer).toMatchObject({ kind: 'plan', cost: count, bound: count, sheetsBound: count });
}

const impossible = { kind: 'short', proved: true };

describe('ten birthday cards from letter and 12 in sheets', () => {
  const inch = 16;
  const letter = (count: number) => sheet(8.5 * inch, 11 * inch, count);
  const square = sheet(12 * inch, 12 * inch, 1);
  test('cream bases: five letter sheets', () => {
    expectSheets(planned([free(8.5 * inch, 5.5 * inch, 10)], [letter(6)]), 5);
  });
  test('coral mats and ten small mats: three sheets', () => {
    const mats = [free(4 * inch, 5.25 * inch, 10), free(3.25 * inch, inch, 10)];
    expectSheets(planned(mats, [letter(4)]), 3);
  });
  test('white inside panels and 17 sentiments from three sheets; the rest below two panels has room for no more', () => {
    const panels = free(4 * inch, 5.25 * inch, 10);
    const sentiments = (need: number) => free(3 * inch, 0.75 * inch, need);
    expectSheets(planned([panels, sentiments(17)], [letter(3)]), 3);
    const rest = sheet(8.5 * inch, 5.75 * inch, 1);
    expectSheets(planned([sentiments(17)], [rest]), 1);
    expect(planned([sentiments(18)], [rest])).toMatchObject(impossible);
  });
  test('an upright print gives 12 panels with nothing to spare, 9 from a sheet 1/16 in short', () => {
    expectSheets(planned([locked(3.75 * inch, 3 * inch, 12)], [square]), 1);
    const short = sheet(191, 191, 1);
    expectSheets(planned([locked(3.75 * inch, 3 * inch, 9)], [short]), 1);
    expect(planned([locked(3.75 * inch, 3 * inch, 10)], [short])).toMatchObject({
      ...impossible,
      missing: [1],
    });
    expectSheets(planned([locked(47, 47, 12)], [short]), 1);
  });
});

describe('cards with two prints from the same two 12 in sheets', () => {
  const two = sheet(3048, 3048, 2);
  const leaves = (need: number) => locked(1420, 720, need);
  const stripes = (need: number) => locked(380, 1420, need);
  test.each([
    [8, 0],
    [6, 4],
    [4, 8],
    [2, 12],
  ])('one sheet gives %i panels and %i strips, and not one strip more', (panels, strips) => {
    const one = { ...two, count: 1 };
    const items = (more: number) => [
      ...(panels > 0 ? [leaves(panels)] : []),
      ...(strips + more > 0 ? [stripes(strips + more)] : []),
    ];
    expectSheets(planned(items(0), [one]), 1);
    expect(planned(items(1), [one])).toMatchObject(impossible);
  });
  test('ten of each come out, eleven and twelve are proved impossible', () => {
    expectSheets(planned([leaves(10), stripes(10)], [two]), 2);
    expect(planned([leaves(11), stripes(11)], [two])).toMatchObject(impossible);
    expect(planned([leaves(12), stripes(12)], [two])).toMatchObject(impossible);
    expectSheets(planned([leaves(12), stripes(12)], [{ ...two, count: 3 }]), 3);
  });
  test('turning the strips does not help', () => {
    expect(planned([leaves(11), { ...stripes(11), turns: true }], [two])).toMatchObject(impossible);
  });
  test('instead of eleven: ten panels, and eleven strips all the same (8 + 0 and 2 + 12)', () => {
    expect(planned([leaves(11), stripes(11)], [two])).toMatchObject({ missing: [1, 0] });
  });
});

describe('ten square cards with a paper ribbon', () => {
  const square = (count: number) => sheet(3048, 3048, count);
  test('bases and lower panels from five sheets, mats from three, upright panels from two', () => {
    expectSheets(planned([free(2700, 1350, 10), free(1230, 320, 10)], [square(5)]), 5);
    expectSheets(planned([free(1290, 1290, 10)], [square(3)]), 3);
    expectSheets(planned([locked(1230, 880, 10)], [square(2)]), 2);
  });
  // The stripe runs along every strip, so nothing of the ribbon may be turned.
  const ribbon = (tuck: number) => [
    locked(1290 + 2 * tuck, 200, 10),
    locked(1300, 200, 10),
    locked(600, 200, 10),
    locked(400, 120, 10),
  ];
  test.each([150, 220, 230])('the ribbon with a tuck of %i tenths comes from one sheet', (tuck) => {
    expectSheets(planned(ribbon(tuck), [square(1)]), 1);
  });
});

describe('ten cards for a trimmer with 5 mm steps only', () => {
  const a4 = (count: number | null) => sheet(2100, 2970, count);
  const steps = { ...unlimited, step: 50 };
  test('mats from three sheets, upright panels from four', () => {
    expectSheets(planned([free(1350, 950, 10)], [a4(null)], steps), 3);
    expectSheets(planned([locked(1250, 850, 10)], [a4(null)], steps), 4);
    expectSheets(planned([free(1250, 850, 10)], [a4(null)], steps), 2);
  });
  test('half a sheet is off the marks: 148 mm cannot be set, 145 mm can', () => {
    expect(planned([free(1480, 2100, 10)], [a4(null)], steps)).toMatchObject(impossible);
    expectSheets(planned([free(1450, 2100, 10)], [a4(null)], steps), 5);
  });
  test('147 mm is what remains when 150 mm is measured off, once from each sheet', () => {
    expectSheets(planned([free(1470, 2100, 3)], [a4(null)], steps), 3);
  });
});
