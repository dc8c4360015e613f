import { expect, test } from 'vitest';
import { millimetres } from '../measure/index.ts';
import { envelopeSizes } from './envelopeTable.ts';

// ISO 269 takes its C series from ISO 216: halve the longer side, rounded down to a millimetre, from 917 x 1297.
test('the C sizes are what halving C0 gives', () => {
  let [short, long] = [917, 1297];
  const halved = new Map<string, readonly [number, number]>();
  for (let n = 1; n <= 10; n += 1) {
    [short, long] = [Math.floor(long / 2), short];
    halved.set(`C${n}`, [short, long]);
  }
  const listed = envelopeSizes.mm.filter(({ name }) => /^C\d$/.test(name));
  expect(listed.map(({ name }) => name)).toEqual(['C8', 'C7', 'C6', 'C5', 'C4']);
  for (const { name, height, length } of listed)
    expect([height, length]).toEqual(halved.get(name)!.map((side) => millimetres(side)));
});

test('DL is 110 x 220: 99 x 210 is the card that goes into it', () => {
  const dl = envelopeSizes.mm.find(({ name }) => name === 'DL')!;
  expect([dl.height, dl.length]).toEqual([millimetres(110), millimetres(220)]);
});

test.each(['in', 'mm'] as const)('they stand by size, the longer side told first, in %s', (units) => {
  const areas = envelopeSizes[units].map(({ length, height }) => length * height);
  expect(areas).toEqual(areas.toSorted((one, other) => one - other));
  for (const { length, height } of envelopeSizes[units]) expect(length).toBeGreaterThanOrEqual(height);
});
