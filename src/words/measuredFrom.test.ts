import { expect, test } from 'vitest';
import { measuredFrom, sideOf } from './measuredFrom.ts';
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

test('what is measured on the other side of the blade lies there', () => {
  expect(sideOf({ otherSide: true }, 'left')).toBe('right');
  expect(sideOf({ otherSide: true }, 'right')).toBe('left');
  expect(sideOf({}, 'right')).toBe('right');
  expect(measuredFrom({ axis: 'width', otherSide: true }, kept, 'left')).toBe('right');
  expect(measuredFrom({ axis: 'height', otherSide: true }, kept, 'left')).toBe('top');
});

test('a squaring cut measures the margin from its own edge, or the sheet from the edge across it', () => {
  expect(measuredFrom({ axis: 'height', squares: 'bottom' }, margin, 'left')).toBe('bottom');
  expect(measuredFrom({ axis: 'height', squares: 'bottom' }, kept, 'left')).toBe('top');
  expect(measuredFrom({ axis: 'width', squares: 'left' }, kept, 'left')).toBe('right');
  expect(measuredFrom({ axis: 'width', squares: 'right' }, margin, 'left')).toBe('right');
});
