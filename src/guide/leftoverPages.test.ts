import { beforeAll, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { type Block, type Typeface, textStyles } from '../drawing/index.ts';
import { arrange, type Extra } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches, zero } from '../measure/index.ts';
import { planSet } from '../planning/index.ts';
import { testSolver } from '../planning/testing/solver.ts';
import { leftoverSection } from './leftoverPages.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

/** Every letter as wide as half its size. */
const typeface: Typeface = {
  widthPt: (text, sizePt) => text.length * sizePt * 0.5,
  has: () => true,
  capHeight: 0.66,
};

const tag: Extra = {
  name: 'Gift tag',
  shape: { kind: 'rectangle' },
  size: { width: inches(2), height: inches(1) },
  margin: zero,
  count: 3,
  papers: [],
  turn: null,
};

/** A sheet of 6 x 4 in gives a panel of 6 x 3, which leaves 6 x 1 in. */
function section(extras: readonly Extra[]): readonly Block[] {
  const layout = layoutOf({
    base: [inches(6), inches(6)],
    fold: 'none',
    papers: [paper('plum', [{ size: { width: inches(6), height: inches(4) }, count: 1 }], 'one-way')],
    parts: [part('panel', { size: [inches(6), inches(3)], papers: ['plum'] })],
    extras,
  });
  const arrangement = arrange(layout);
  const plan = planSet({ layout, arrangement, trimmer: null, solver });
  if (plan.kind !== 'plan') throw new Error('expected a plan');
  const matter = {
    layout,
    arrangement,
    plan,
    stakes: [],
    trimmer: null,
    showing: { units: 'in', glyphs: 'typed' } as const,
    typeface,
    styles: textStyles(),
    // So broad that no line breaks.
    widthPt: 5_000,
  };
  return leftoverSection(matter);
}

it('draws each leftover with what is laid on it and says where', () => {
  const words = JSON.stringify(section([tag]));
  expect(words).toContain('From what is left');
  expect(words).toContain('with three of Gift tag');
  expect(words).toContain('Gift tag 0 and 0; 2 and 0; 4 and 0.');
  expect(words).toContain('Nothing of it is kept.');
});

it('is left out where the layout asks for nothing of its leftovers', () => {
  expect(section([])).toEqual([]);
});
