import { expect, test } from 'vitest';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import type { Layout } from '../layout/index.ts';
import { inches } from '../measure/index.ts';
import { guideOf } from './guide.ts';
import { planned, tideSet } from './testing/sets.ts';
import { drawnMarks, wordsIn } from './testing/walk.ts';

/** The page on which the bases of that fold are scored: its words and its dashed lines with where they stand. */
async function scored(base: Partial<Layout['base']>) {
  const set = tideSet();
  const layout = { ...set, base: { ...set.base, ...base } };
  const { pages } = guideOf({
    ...(await planned(layout, null)),
    sheetFormat: 'letter',
    units: 'in',
    typeface: plainTypeface,
  });
  const page = pages.find(({ marks }) => wordsIn(marks).includes('Lay each of the'))!;
  const lines = drawnMarks(page.marks).flatMap(({ mark }) =>
    mark.kind === 'line' && mark.stroke.dashPt !== undefined && mark.stroke.widthPt === 1.2 ? [mark] : [],
  );
  return { words: wordsIn(page.marks), lines };
}

const half = { width: inches(7, 2), height: inches(11, 2) };

test('the scores of a shutter stand where they are printed, and say what each is folded to', async () => {
  // Hobby tutorial HT-4: 10 1/2 in wide, scored at 1 3/4, 3 1/2, 7 and 8 3/4.
  const { words, lines } = await scored({ fold: 'shutter', size: half });
  const at = lines.map(({ from }) => from.xPt);
  const [first, last] = [at[0]!, at.at(-1)!];
  const scale = (last - first) / (8.75 - 1.75);
  const printed = [1.75, 3.5, 7, 8.75];
  expect(at).toHaveLength(printed.length);
  for (const [index, xPt] of at.entries())
    expect((xPt - first) / scale + 1.75).toBeCloseTo(printed[index]!, 9);
  const dashes = lines.map(({ stroke }) => stroke.dashPt!.length);
  expect(dashes[0]).toBe(dashes[3]);
  expect(dashes[1]).toBe(dashes[2]);
  expect(dashes[0]).not.toBe(dashes[1]);
  for (const said of ['1 3⁄4 in', '3 1⁄2 in', '7 in', '8 3⁄4 in', '10 1⁄2 in', 'Outer half of the left door'])
    expect(words).toContain(said);
  expect(words.match(/\bmountain\b/gu)!.length).toBeGreaterThanOrEqual(4);
});

test('a base that opens upwards is scored from the top edge', async () => {
  const { words, lines } = await scored({
    fold: 'trifold',
    opens: 'upwards',
    size: { width: inches(17, 4), height: inches(59, 16) },
  });
  expect(words).toContain('measured from the top edge');
  const at = lines.map(({ from, to }) => {
    expect(from.yPt).toBe(to.yPt);
    return from.yPt;
  });
  expect(at).toHaveLength(2);
  expect(words).toContain('7 3⁄8 in');
});

test('a side fold has its one line of long and short dashes', async () => {
  const { lines, words } = await scored({});
  expect(lines.map(({ stroke }) => stroke.dashPt!.length)).toEqual([6]);
  expect(words).toContain('the line of long and short dashes is the score');
});
