import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  inches,
  lengthOfTicks,
  lineSpacings,
  type Marking,
  type MarkingId,
  millimetres,
  minus,
  placeOnRuler,
  readMark,
  sum,
  times,
  usualMarkings,
} from './index.ts';

const ids = Object.keys(usualMarkings) as MarkingId[];
const tenths: Marking = { units: 'in', step: inches(1, 10) };

test('3 5/8 in is halfway between 3 1/2 and 3 3/4', () => {
  expect(placeOnRuler(inches(29, 8), usualMarkings['1/16 in'])).toEqual({
    ...readMark(inches(29, 8), usualMarkings['1/16 in']),
    numbered: inches(3),
    spacing: inches(1, 8),
    longer: { below: inches(7, 2), above: inches(15, 4), side: 'halfway', distance: inches(1, 8) },
  });
});

test('92 mm is 2 mm past 90, 94 is 1 mm before 95, 95 is halfway between 90 and 100', () => {
  const at = (count: number) => placeOnRuler(millimetres(count), usualMarkings['1 mm']).longer;
  expect(at(92)).toMatchObject({ below: millimetres(90), side: 'past', distance: millimetres(2) });
  expect(at(94)).toMatchObject({ above: millimetres(95), side: 'before', distance: millimetres(1) });
  expect(at(95)).toMatchObject({ below: millimetres(90), above: millimetres(100), side: 'halfway' });
  expect(at(90)).toBeNull();
});

test('between marks it tells the place of the nearest', () => {
  const place = placeOnRuler(inches(229, 64), usualMarkings['1/16 in']);
  expect(place).toMatchObject({ mark: inches(57, 16), off: inches(1, 64), exact: false });
  expect(place.longer).toMatchObject({ below: inches(7, 2), above: inches(29, 8), side: 'halfway' });
});

test('line lengths of the usual rulers', () => {
  // A-A-355B, the US federal item description of a desk ruler: a line length each for 1/16, 1/8, 1/4 and 1/2 in.
  expect(lineSpacings(usualMarkings['1/16 in'])).toEqual([16, 8, 4, 2, 1].map((parts) => inches(1, parts)));
  // Common practice, no source.
  expect(lineSpacings(usualMarkings['0.5 mm'])).toEqual([0.5, 1, 5, 10].map((count) => millimetres(count)));
  expect(lineSpacings(usualMarkings['5 mm'])).toEqual([5, 10].map((count) => millimetres(count)));
  expect(lineSpacings(tenths)).toEqual([inches(1, 10), inches(1, 2), inches(1)]);
});

test.each(ids)('along a ruler of %s every mark is where the longer lines around it say', (id) => {
  const marking = usualMarkings[id];
  const numberedEvery = marking.units === 'in' ? inches(1) : millimetres(10);
  for (let count = -200; count <= 400; count++) {
    const mark = times(marking.step, count);
    const { longer, spacing, numbered } = placeOnRuler(mark, marking);
    expect(Math.abs(numbered % numberedEvery)).toBe(0);
    expect(numbered <= mark && mark < numbered + numberedEvery).toBe(true);
    if (longer === null) {
      expect(numbered).toBe(mark);
      continue;
    }
    // Walking either way, the longer lines are the first with a longer line than the mark's own.
    for (const [end, step] of [
      [longer.below, -marking.step],
      [longer.above, marking.step],
    ] as const) {
      let walked: number = mark + step;
      while (placeOnRuler(lengthOfTicks(walked), marking).spacing <= spacing) walked += step;
      expect(walked).toBe(end);
    }
    const found = {
      past: () => sum(longer.below, longer.distance),
      before: () => minus(longer.above, longer.distance),
      halfway: () => lengthOfTicks((longer.below + longer.above) / 2),
    }[longer.side]();
    expect(found).toBe(mark);
    // On an inch ruler every line is halfway between two longer ones.
    if (marking.units === 'in') expect(longer.side).toBe('halfway');
  }
});

test('the place of a length is that of its nearest mark', () => {
  const marking = fc.constantFrom(...ids.map((id) => usualMarkings[id]), tenths);
  const ticks = fc.integer({ min: -500_000, max: 500_000 });
  fc.assert(
    fc.property(ticks, marking, (count, ruler) => {
      const length = lengthOfTicks(count);
      const place = placeOnRuler(length, ruler);
      const atMark = placeOnRuler(place.mark, ruler);
      expect(place).toMatchObject(readMark(length, ruler));
      expect(place.spacing).toBe(atMark.spacing);
      expect(place.longer).toEqual(atMark.longer);
      expect(place.spacing % ruler.step).toBe(0);
    }),
  );
});
