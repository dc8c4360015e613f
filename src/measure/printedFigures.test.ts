import { expect, test } from 'vitest';
import {
  type Box,
  bordersOf,
  goesInto,
  halves,
  inches,
  type Length,
  millimetres,
  minus,
  readLength,
  roundTo,
  type Size,
  showLength,
  showSize,
  sum,
  times,
  zero,
} from './index.ts';

/** The length that a printed figure says. */
function read(text: string, units: 'in' | 'mm' = 'in'): Length {
  const reading = readLength(text, units);
  if (!reading.ok) throw new Error(`${text}: ${reading.why}`);
  return reading.length;
}

function readSize(text: string): Size {
  const [width = '', height = ''] = text.split('x');
  return { width: read(width), height: read(height) };
}

/** What is left of a size when all four sides lose a border. */
function inside({ width, height }: Size, border: Length): Size {
  return { width: minus(width, times(border, 2)), height: minus(height, times(border, 2)) };
}

/** The size in the middle of another one. */
function centred(outer: Size, inner: Size): Box {
  return {
    left: halves(minus(outer.width, inner.width)).smaller,
    top: halves(minus(outer.height, inner.height)).smaller,
    ...inner,
  };
}

test('the layer ladder: each layer shows 1/8 in of the one below', () => {
  // Hobby tutorials HT-2, HT-12 and HT-13, three unrelated authors with the same numbers.
  const ladder = ['4-1/4 x 5-1/2', '4 x 5-1/4', '3-3/4 x 5', '3-1/2 x 4-3/4', '3-1/4 x 4-1/2'].map(readSize);
  ladder.slice(1).forEach((layer, index) => {
    const below = ladder[index]!;
    expect(inside(below, read('1/8'))).toEqual(layer);
    expect(bordersOf({ left: zero, top: zero, ...below }, centred(below, layer))).toEqual({
      left: inches(1, 8),
      right: inches(1, 8),
      top: inches(1, 8),
      bottom: inches(1, 8),
    });
  });
});

// Hobby tutorial HT-1, a table of mats for nine cards. Its "1/8 mat" is 1/8 in smaller overall, so it shows 1/16 in.
test.each([
  ['3 x 3', '2-7/8 x 2-7/8', '2-3/4 x 2-3/4'],
  ['6 x 6', '5-7/8 x 5-7/8', '5-3/4 x 5-3/4'],
  ['3-1/2 x 4-7/8', '3-3/8 x 4-3/4', '3-1/4 x 4-5/8'],
  ['4-1/4 x 5-1/2', '4-1/8 x 5-3/8', '4 x 5-1/4'],
  ['4-1/2 x 6-1/4', '4-3/8 x 6-1/8', '4-1/4 x 6'],
  ['5 x 7', '4-7/8 x 6-7/8', '4-3/4 x 6-3/4'],
  ['5-1/4 x 7-7/8', '5-1/8 x 7-3/4', '5 x 7-5/8'],
  ['5-1/2 x 8-1/2', '5-3/8 x 8-3/8', '5-1/4 x 8-1/4'],
  ['3-7/8 x 9-1/4', '3-3/4 x 9-1/8', '3-5/8 x 9'],
])(
  'mats on a card of %s: %s is 1/8 in smaller overall, %s shows 1/8 in',
  (card, eighthOverall, quarterOverall) => {
    const finished = readSize(card);
    expect(inside(finished, inches(1, 16))).toEqual(readSize(eighthOverall));
    // Hobby tutorial HT-2 means the border that is seen: 4 x 5-1/4 on 4-1/4 x 5-1/2 "gives a 1/8 in border".
    expect(inside(finished, inches(1, 8))).toEqual(readSize(quarterOverall));
    expect(inside(finished, inches(1, 8))).not.toEqual(readSize(eighthOverall));
  },
);

test('other printed layers', () => {
  // Hobby tutorial HT-10, outward then inward by 1/8 in a side.
  expect(inside(readSize('2-1/4 x 3-1/4'), inches(1, 8))).toEqual(readSize('2 x 3'));
  expect(inside(readSize('2-1/2 x 3-1/2'), inches(1, 8))).toEqual(readSize('2-1/4 x 3-1/4'));
  expect(inside(readSize('3 x 4'), inches(1, 8))).toEqual(readSize('2-3/4 x 3-3/4'));
  // Hobby tutorial HT-15.
  expect(inside(readSize('1-1/4 x 3-1/4'), inches(1, 8))).toEqual(readSize('1 x 3'));
  // Hobby tutorial HT-16, metric: both borders are counted from the card.
  expect(inside(readSize('10.5 cm x 14.7 cm'), read('2.5 mm'))).toEqual(readSize('10 cm x 14.2 cm'));
  expect(inside(readSize('10.5 cm x 14.7 cm'), read('10 mm'))).toEqual(readSize('8.5 cm x 12.7 cm'));
  // Framing shop: opening 9-3/4 x 7-3/4 in a frame of 14 x 11 leaves 2-1/8 and 1-5/8.
  const margins = bordersOf(
    { left: zero, top: zero, ...readSize('14 x 11') },
    centred(readSize('14 x 11'), readSize('9-3/4 x 7-3/4')),
  );
  expect(showLength(margins.left, 'in')).toBe('2 1/8');
  expect(showLength(margins.bottom, 'in')).toBe('1 5/8');
});

// ISO 216 (A, B) and ISO 269 (C): sizes 0 to 10 in millimetres, from published copies of the standards' tables.
test.each([
  ['A', '841x1189 594x841 420x594 297x420 210x297 148x210 105x148 74x105 52x74 37x52 26x37'],
  ['B', '1000x1414 707x1000 500x707 353x500 250x353 176x250 125x176 88x125 62x88 44x62 31x44'],
  ['C', '917x1297 648x917 458x648 324x458 229x324 162x229 114x162 81x114 57x81 40x57 28x40'],
])('ISO %s sizes: the long side halved, rounded down to a whole millimetre', (_, table) => {
  const sizes = table.split(' ').map((text) => {
    const [width = '', height = ''] = text.split('x');
    return { width: read(width, 'mm'), height: read(height, 'mm') };
  });
  expect(sizes).toHaveLength(11);
  sizes.slice(1).forEach((size, index) => {
    const larger = sizes[index]!;
    const half = roundTo(halves(larger.height).smaller, millimetres(1), 'down');
    expect(size).toEqual({ width: half, height: larger.width });
    // Two of the smaller come out of the larger, and less than a whole millimetre more than that is left.
    expect(goesInto(half, larger.height)).toEqual({
      count: 2,
      rest: minus(larger.height, times(half, 2)),
    });
    expect(goesInto(half, larger.height).rest).toBeLessThan(millimetres(2));
  });
});

test('297 mm does not give two pieces of 149 mm, which one printed A4 guide asks for', () => {
  // Hobby tutorial HT-8 cuts 29.8 cm and scores at 14.9; ISO 216 says 297 mm, whose half is 148.5.
  expect(goesInto(read('149 mm'), read('29.7 cm')).count).toBe(1);
  expect(halves(read('29.7 cm'))).toEqual({ smaller: read('148.5 mm'), larger: read('148,5 mm') });
});

test('an inch is 25.4 mm exactly', () => {
  // International yard and pound agreement, 1959 (US: Federal Register, 1 July 1959); CSS has 1in = 2.54cm.
  expect(read('1 in')).toBe(read('25.4 mm'));
  expect(read('1in')).toBe(read('2.54cm'));
  expect(showLength(read('1 in'), 'mm')).toBe('25.4');
  expect(showLength(read('25.4 mm'), 'in')).toBe('1');
  expect(showSize({ width: read('8 1/2 in'), height: read('11 in') }, 'mm')).toBe('215.9 x 279.4 mm');
});

test('pieces along a sheet come out as printed', () => {
  // A public-domain book of 1881 (Project Gutenberg no. 42547, "Cutting paper"): seven strips of 3-1/7 out of 22,
  // six of 3-2/3; a third is no whole tick, so it is rounded down and must still go in that often.
  expect(goesInto(read('3-1/7'), read('22')).count).toBe(7);
  expect(goesInto(read('3-2/3'), read('22')).count).toBe(6);
  expect(goesInto(read('4.4'), read('22'))).toEqual({ count: 5, rest: zero });
  // Hobby tutorial HT-3: 2-1/4 goes three times into 8-1/2, and four times into 11.
  expect(goesInto(read('2-1/4'), read('8-1/2'))).toEqual({ count: 3, rest: read('1-3/4') });
  expect(goesInto(read('2-1/4'), read('11'))).toEqual({ count: 4, rest: read('2') });
});

test('a textbook sum of pieces and saw cuts leaves 8-5/8 of 36', () => {
  const used = sum(
    times(read('2-1/8'), 3),
    times(read('5-3/4'), 2),
    times(read('7/8'), 6),
    read('3-1/2'),
    times(read('1/16'), 12),
  );
  expect(showLength(minus(read('36'), used), 'in')).toBe('8 5/8');
});
