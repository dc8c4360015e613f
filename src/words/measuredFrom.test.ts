import { expect, test } from 'vitest';
import { measuredFrom } from './measuredFrom.ts';
import { meadowSet } from './testing/meadowSet.ts';
import { tableOf } from './workpiece.ts';

const table = tableOf(meadowSet().plan);
const kept = [table.get('a')!];
const margin = [table.get('c')!];

test('work lies with its top or its side at the measuring edge', () => {
  expect(measuredFrom({ axis: 'height' }, kept, 'left')).toBe('top');
  expect(measuredFrom({ axis: 'height' }, kept, 'right')).toBe('top');
  expect(measuredFrom({ axis: 'width' }, kept, 'left')).toBe('left');
  expect(measuredFrom({ axis: 'width' }, kept, 'right')).toBe('right');
});

test('a squaring cut measures the margin from its own edge, or the sheet from the edge across it', () => {
  expect(measuredFrom({ axis: 'height', squares: 'bottom' }, margin, 'left')).toBe('bottom');
  expect(measuredFrom({ axis: 'height', squares: 'bottom' }, kept, 'left')).toBe('top');
  expect(measuredFrom({ axis: 'width', squares: 'left' }, kept, 'left')).toBe('right');
  expect(measuredFrom({ axis: 'width', squares: 'right' }, margin, 'left')).toBe('right');
});
