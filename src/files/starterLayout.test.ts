import { expect, test } from 'vitest';
import { arrange } from '../layout/index.ts';
import { inches, millimetres } from '../measure/index.ts';
import { readLayoutFile } from './layoutFile.ts';
import { starterLayout } from './starterLayout.ts';

// Worked out by hand: the strip fills what mat, panel and borders leave.
test.each([
  {
    units: 'in',
    mat: [inches(4), inches(21, 4)],
    panel: [inches(15, 4), inches(15, 4)],
    strip: [inches(15, 4), inches(9, 8)],
  },
  {
    units: 'mm',
    mat: [millimetres(99), millimetres(142)],
    panel: [millimetres(93), millimetres(96)],
    strip: [millimetres(93), millimetres(37)],
  },
] as const)('the starter in $units is a layout whose sums come out', ({ units, mat, panel, strip }) => {
  const read = readLayoutFile(starterLayout({ units }));
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  const arrangement = arrange(read.layout);
  expect(arrangement.problems).toEqual([]);
  expect(arrangement.parts.map(({ cut }) => [cut?.width, cut?.height])).toEqual([mat, panel, strip]);
  expect(read.layout.cards).toBe(10);
});

test('the title is the one that is given, whatever is in it', () => {
  const title = 'A "quoted" \\ title';
  const read = readLayoutFile(starterLayout({ units: 'in', title }));
  expect(read).toMatchObject({ layout: { title } });
});
