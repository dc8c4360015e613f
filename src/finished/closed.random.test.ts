import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arrange, type Layout, type Part } from '../layout/index.ts';
import { paper } from '../layout/testing/build.ts';
import { randomLayout } from '../layout/testing/randomLayout.ts';
import { postTables } from '../making/index.ts';
import { millimetres } from '../measure/index.ts';
import { closedCards } from './closed.ts';
import { postingOf } from './posting.ts';

const shapes: readonly Part['shape'][] = [
  { kind: 'rectangle' },
  { kind: 'oval' },
  { kind: 'rounded', corner: millimetres(2) },
  { kind: 'banner', ends: { left: 'notched', bottom: 'pointed' }, depth: null },
];

// Curved edges leave slivers where they cross; layers still have to make up the thickness of the place that is named.
test('whatever the shapes of a pile, its section holds together and what is posted follows from it', () => {
  const manner = fc.tuple(
    fc.constantFrom(...shapes),
    fc.constantFrom<Part['adhere']>('flat', 'raised', 'spots'),
  );
  fc.assert(
    fc.property(
      randomLayout({ coarse: false, overFixed: true }),
      fc.array(manner, { minLength: 8, maxLength: 8 }),
      fc.constantFrom(...postTables),
      (drawn, how, table) => {
        const layout: Layout = {
          ...drawn,
          base: { ...drawn.base, papers: ['p'] },
          papers: new Map([['p', { ...paper('p', []), gsm: 250, thickness: millimetres(0.3) }]]),
          parts: drawn.parts.map((one, index) => ({
            ...one,
            shape: how[index]![0],
            adhere: how[index]![1],
            papers: ['p'],
          })),
        };
        const arrangement = arrange(layout);
        const closed = closedCards(layout, arrangement);
        const { thickest, thinnest, levels, round, extent } = closed.section;
        expect(thickest.thickness).toBe(levels[0]!.thickness);
        expect(thinnest.thickness).toBeGreaterThanOrEqual(millimetres(0.3));
        expect(round.width).toBeGreaterThanOrEqual(extent.width);
        const { piece, posted, changes } = postingOf(layout, arrangement, table, closed);
        expect(piece.thickness).toBeGreaterThan(thickest.thickness);
        expect(piece.grams).toBeGreaterThan(closed.weight.grams);
        for (const { as } of changes) {
          expect(posted.not.map((one) => one.class)).toContain(as);
        }
      },
    ),
    { numRuns: 60 },
  );
});
