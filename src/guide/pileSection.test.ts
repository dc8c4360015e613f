import { expect, test } from 'vitest';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { thicknessOf } from '../finished/index.ts';
import { arrange } from '../layout/index.ts';
import { lengthOfTicks, millimetres } from '../measure/index.ts';
import { paper, part } from '../words/testing/meadowSet.ts';
import { pileSection } from './pileSection.ts';
import { fieldSet, tideSet } from './testing/sets.ts';
import { wordsIn } from './testing/walk.ts';

test('the pile is tagged with the letter and paper of every layer the cut meets', () => {
  const layout = tideSet();
  const section = pileSection({ layout, arrangement: arrange(layout), typeface: plainTypeface }, 500);
  // From the base up: base, mat, panel, moon, strip.
  expect(wordsIn(section.marks)).toBe('A Sand B Sand C Tide D bought E Sand');
  expect(section.missed).toEqual([]);
  expect(section.estimated).toBe(true);
});

test('names what the cut misses', () => {
  const layout = fieldSet();
  const spots = ['left', 'right'].map((side, index) =>
    part({
      id: side,
      name: side,
      papers: ['field'],
      extent: { by: 'size', width: millimetres(10), height: millimetres(10) },
      places: [
        {
          across: { start: { from: 'edge', distance: millimetres(index === 0 ? 5 : 100) }, end: null },
          down: { start: { from: 'edge', distance: millimetres(index === 0 ? 5 : 80) }, end: null },
        },
      ],
    }),
  );
  const two = { ...layout, parts: spots };
  const section = pileSection({ layout: two, arrangement: arrange(two), typeface: plainTypeface }, 500);
  expect(section.missed).toEqual(['C']);
});

test('a thickness is measured, or follows from the weight, or is what is usual', () => {
  const sheet = { id: 'a', name: 'a', sheets: [] };
  expect(thicknessOf(paper({ ...sheet, thickness: lengthOfTicks(512) }))).toEqual({
    length: 512,
    estimated: false,
  });
  // 80 g/m² of 0.1 mm has a bulk of 1.25 cm³/g (a paper calculator's worked example for ISO 534).
  expect(thicknessOf(paper({ ...sheet, gsm: 80 }))).toEqual({ length: millimetres(0.1), estimated: true });
  expect(thicknessOf(paper({ ...sheet, kind: 'cardstock' })).length).toBeGreaterThan(
    thicknessOf(paper({ ...sheet, kind: 'something else' })).length,
  );
});
