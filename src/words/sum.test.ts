import { expect, test } from 'vitest';
import { arrange, sumsOf } from '../layout/index.ts';
import { awayFrom, inch, layoutOf, part } from '../layout/testing/build.ts';
import { sumSentence } from './sum.ts';

test('a stack of borders, sizes and gaps is written out as people add it up', () => {
  const layout = layoutOf({
    base: [inch('4 1/4'), inch('5 1/2')],
    parts: [
      part('mat', { inset: inch('1/8') }),
      part('upper', { on: 'mat', size: [inch('3 3/4'), inch('3')], place: { top: inch('1/8') } }),
      part('lower', {
        on: 'mat',
        size: [inch('3 3/4'), inch('1 3/4')],
        place: { top: awayFrom('upper', inch('1/4')) },
      }),
    ],
  });
  const said = sumsOf(arrange(layout)).map((sum) =>
    sumSentence(sum, layout, { units: 'in', glyphs: 'typed' }),
  );
  expect(said).toContain('On the front, left to right: 1/8 + 4 + 1/8 = 4 1/4 in (mat).');
  expect(said).toContain('On mat, top to bottom: 1/8 + 3 + 1/4 + 1 3/4 + 1/8 = 5 1/4 in (upper and lower).');
});

test('an overhang is taken off', () => {
  const layout = layoutOf({
    base: [inch('4'), inch('5')],
    parts: [part('strip', { size: [inch('4'), inch('1')], place: { left: inch('-1/4') } })],
  });
  const said = sumsOf(arrange(layout)).map((sum) =>
    sumSentence(sum, layout, { units: 'in', glyphs: 'typed' }),
  );
  expect(said).toContain('On the front, left to right: -1/4 + 4 + 1/4 = 4 in (strip).');
});
