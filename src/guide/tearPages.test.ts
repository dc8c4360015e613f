import { expect, test } from 'vitest';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { guideOf } from './guide.ts';
import { planned, tideSet } from './testing/sets.ts';
import { drawnMarks, wordsIn } from './testing/walk.ts';

const manner = { sheetFormat: 'letter', units: 'in', typeface: plainTypeface } as const;

test('a torn edge is drawn with its least, usual and most, and told', async () => {
  const { pages } = guideOf({ ...(await planned(tideSet(), null)), ...manner });
  const words = pages.map(({ marks }) => wordsIn(marks)).join(' ');
  expect(words).toContain('Tearing the edges');
  for (const said of ['least 3⁄8 in', 'usual 1⁄2 in', 'most 5⁄8 in']) expect(words).toContain(said);
  expect(words).toContain('the torn right of Panel');
});

test('the template is as wide as is torn off, with a line at the least and one at the most', async () => {
  const { pages } = guideOf({ ...(await planned(tideSet(), null)), ...manner });
  const page = pages.find(({ marks }) => wordsIn(marks).includes('Trace a strip onto card'));
  const drawn = drawnMarks(page!.marks);
  // 5 in long and 1/2 in wide, in points of 1/72 in.
  const strips = drawn.flatMap(({ mark }) => {
    const points = mark.kind === 'path' ? mark.path.filter((step) => step.to !== 'close') : [];
    if (points.length === 0) return [];
    const [x, y] = [points.map(({ xPt }) => xPt), points.map(({ yPt }) => yPt)];
    const [xPt, yPt] = [Math.min(...x), Math.min(...y)];
    return [{ xPt, yPt, widthPt: Math.max(...x) - xPt, heightPt: Math.max(...y) - yPt }];
  });
  const strip = strips.find(
    ({ widthPt, heightPt }) => Math.abs(widthPt - 360) < 1e-9 && Math.abs(heightPt - 36) < 1e-9,
  );
  expect(strip).toBeDefined();
  const cutEdge = strip!.yPt + 36;
  const long = drawn.flatMap(({ mark }) =>
    mark.kind === 'line' &&
    mark.from.yPt === mark.to.yPt &&
    Math.abs(mark.to.xPt - mark.from.xPt - 360) < 1e-9
      ? [[cutEdge - mark.from.yPt, mark.stroke.dashPt !== undefined]]
      : [],
  );
  expect(long).toEqual([
    [expect.closeTo(36, 9), false],
    [expect.closeTo(27, 9), true],
    [expect.closeTo(45, 9), true],
  ]);
});

test('where nothing is torn nothing is said of tearing', async () => {
  const layout = tideSet();
  const whole = {
    ...layout,
    parts: layout.parts.map((part) => ({ ...part, torn: { ...part.torn, right: part.torn.top } })),
  };
  const { pages } = guideOf({ ...(await planned(whole, null)), ...manner });
  expect(pages.map(({ marks }) => wordsIn(marks)).join(' ')).not.toMatch(/[Tt]ear/);
});
