import { describe, expect, test } from 'vitest';
import { unlimited } from '../cutting/index.ts';
import { inches, lengthOfTicks, millimetres } from '../measure/index.ts';
import { smallestUseful, worthKeeping } from './leftover.ts';
import { partName } from './partName.ts';
import { trimmerWith } from './testing/trimmers.ts';
import { cutLimitsOf, settable, settingOf, wideEnough } from './trimmer.ts';

const fives = trimmerWith({ marks: millimetres(5), narrowest: millimetres(25), longest: millimetres(310) });

test('a setting is a positive whole multiple of the marks', () => {
  expect([0, 5, 7.5, 85, 86].map((set) => settable(millimetres(set), fives))).toEqual([
    false,
    true,
    false,
    true,
    false,
  ]);
  expect(settable(lengthOfTicks(1), null)).toBe(true);
  expect(settable(lengthOfTicks(1), trimmerWith({}))).toBe(true);
  expect(settable(inches(15, 16), trimmerWith({ marks: inches(1, 16) }))).toBe(true);
  expect(settable(inches(31, 32), trimmerWith({ marks: inches(1, 16) }))).toBe(false);
});

test('a strip is wide enough from the narrowest on, either way', () => {
  const size = (width: number, height: number) => ({
    width: millimetres(width),
    height: millimetres(height),
  });
  expect(
    [size(25, 200), size(200, 25), size(24.99, 200), size(200, 24)].map((strip) => wideEnough(strip, fives)),
  ).toEqual([true, true, false, false]);
  expect(wideEnough(size(1, 1), null)).toBe(true);
});

test('a setting is within the reach of either side, by what the ruler reads', () => {
  const mm = (reach: number, otherReach: number, correction: number) =>
    trimmerWith({
      reach: millimetres(reach),
      ...(otherReach > 0 ? { otherReach: millimetres(otherReach) } : {}),
      correction: millimetres(correction),
    });
  const most = (reach: number, otherReach: number, correction: number) => {
    const longest = cutLimitsOf(mm(reach, otherReach, correction)).reach;
    expect(settable(millimetres(150), mm(reach, otherReach, correction))).toBe(millimetres(150) <= longest!);
    return longest;
  };
  expect(most(150, 0, 0)).toBe(millimetres(150));
  // A ruler that cuts 1 mm too much reaches 1 mm further, one that cuts too little less far.
  expect(most(150, 0, 1)).toBe(millimetres(151));
  expect(most(150, 0, -1)).toBe(millimetres(149));
  expect(most(150, 100, 1)).toBe(millimetres(151));
  expect(most(150, 200, 1)).toBe(millimetres(200));
  expect(most(1, 0, -1)).toBe(0);
});

test('a length is set on the measuring side where its ruler reads it, else on the other', () => {
  const trimmer = trimmerWith({
    reach: millimetres(150),
    otherReach: millimetres(300),
    correction: millimetres(1),
  });
  const at = (length: number) => {
    const { edge, otherSide, dial } = settingOf(millimetres(length), trimmer);
    return [edge, otherSide, dial / 1_600];
  };
  expect(at(100)).toEqual(['right', false, 99]);
  expect(at(151)).toEqual(['right', false, 150]);
  expect(at(152)).toEqual(['left', true, 152]);
  // The ruler of the measuring side would have to read nothing.
  expect(at(1)).toEqual(['left', true, 1]);
  expect(settingOf(millimetres(1), { ...trimmer, reach: { ...trimmer.reach, otherSide: null } })).toEqual({
    edge: 'right',
    otherSide: false,
    dial: 0,
  });
});

test('the planner is told of the marks and the longest cut', () => {
  expect(cutLimitsOf(fives)).toEqual({ step: millimetres(5), longest: millimetres(310), reach: null });
  expect(cutLimitsOf(trimmerWith({}))).toEqual(unlimited);
  expect(cutLimitsOf(null)).toEqual(unlimited);
});

test('a leftover is kept from an inch on, or from the narrowest strip if that is more, or as told', () => {
  const square = (length: typeof smallestUseful) => ({ width: length, height: length });
  expect(worthKeeping(square(smallestUseful), null)).toBe(true);
  expect(worthKeeping({ width: inches(63, 64), height: inches(12) }, null)).toBe(false);
  const coarse = trimmerWith({ narrowest: inches(2) });
  expect(worthKeeping(square(inches(127, 64)), coarse)).toBe(false);
  expect(worthKeeping(square(inches(2)), coarse)).toBe(true);
  expect(worthKeeping(square(inches(1, 2)), null, inches(1, 2))).toBe(true);
});

describe('partName', () => {
  test('letters and numbers take turns', () => {
    expect(['meadow-1', 'meadow-1a', 'meadow-1a1', 'scrap'].map((whole) => partName(whole, 1))).toEqual([
      'meadow-1b',
      'meadow-1a2',
      'meadow-1a1b',
      'scrap2',
    ]);
  });

  test('after z come aa, ab …, after zz aaa', () => {
    expect([25, 26, 27, 51, 52, 701, 702].map((index) => partName('1', index))).toEqual([
      '1z',
      '1aa',
      '1ab',
      '1az',
      '1ba',
      '1zz',
      '1aaa',
    ]);
  });

  test('no two of many parts of parts are alike', () => {
    const names = ['p-1', 'p-11', 'p-1-1'];
    for (let from = 0; from < 90; from += 1) {
      for (let index = 0; index < 30; index += 1) names.push(partName(names[from]!, index));
    }
    expect(new Set(names).size).toBe(names.length);
  });
});
