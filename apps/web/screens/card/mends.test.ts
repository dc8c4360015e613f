import { expect, it } from 'vitest';
import { inHandOf } from '../../../../src/editing/testing/handmade.ts';
import { checkLayout } from '../../../../src/layout/index.ts';
import { keyOf } from './mends.tsx';

it('tells two problems of one part from each other, of which only the numbers differ', () => {
  const { layout, arrangement } = inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 1,
    base: { size: ['4', '5'], fold: 'none', paper: null },
    papers: { plain: { sheets: [{ size: ['12', '12'], count: null }] } },
    parts: [{ id: 'panel', size: ['3 1/2', '4 1/2'], place: { left: '1/8', top: '3/16' }, paper: 'plain' }],
  });
  const problems = checkLayout(layout, arrangement);
  expect(problems.map(({ code, where, names }) => ({ code, where, names }))).toEqual(
    Array.from({ length: 2 }, (): unknown =>
      expect.objectContaining({ code: 'unevenBorder', where: 'parts[0].place' }),
    ),
  );
  expect(problems[0]!.names).toEqual(problems[1]!.names);
  const keys = problems.map((problem) => keyOf({ of: 'layout', problem }));
  expect(new Set(keys).size).toBe(2);
  // The very same problem, found once more, has the same key, so that its mends stay with it.
  expect(checkLayout(layout, arrangement).map((problem) => keyOf({ of: 'layout', problem }))).toEqual(keys);
});
