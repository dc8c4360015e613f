import { expect, test } from 'vitest';
import { chance } from '../cutting/testing/chance.ts';
import { arrange } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches, lengthOfTicks, zero } from '../measure/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { type Plan, planSet, type Shortage } from './index.ts';
import { testSolver } from './testing/solver.ts';

/** A set of up to eight cards from two papers with margins, and some trimmer, sensible or not. */
function randomSet(seed: number) {
  const int = chance(seed);
  const eighths = (low: number, high: number) => inches(int(low * 8, high * 8), 8);
  const perhaps = (low: number, high: number) => (int(0, 1) === 0 ? null : eighths(low, high));
  const papers = ['ivory', 'slate'].map((id) => {
    const margins = { left: int(0, 4), right: int(0, 2), top: int(0, 3), bottom: int(0, 1) };
    const { left, right, top, bottom } = int(0, 1) === 0 ? { left: 0, right: 0, top: 0, bottom: 0 } : margins;
    const sixteenths = (count: number) => (count === 0 ? zero : inches(count, 16));
    return paper(id, [
      {
        size: { width: eighths(6, 12), height: eighths(6, 12) },
        count: int(0, 2) === 0 ? int(1, 4) : null,
        margin: {
          left: sixteenths(left),
          right: sixteenths(right),
          top: sixteenths(top),
          bottom: sixteenths(bottom),
        },
      },
    ]);
  });
  const layout = layoutOf({
    cards: int(1, 8),
    base: [inches(5), inches(7)],
    papers,
    parts: Array.from({ length: int(1, 3) }, (_, index) =>
      part(`part-${index}`, {
        size: [eighths(1, 7), eighths(1, 7)],
        papers: int(0, 1) === 0 ? ['ivory'] : ['slate', 'ivory'],
      }),
    ),
  });
  const trimmer: Trimmer = {
    name: '',
    marks: int(0, 1) === 0 ? null : inches(1, 2 ** int(2, 4)),
    longest: perhaps(5, 13),
    narrowest: perhaps(1, 2),
    reach: { measuringSide: perhaps(1, 6), otherSide: perhaps(3, 9) },
    correction: lengthOfTicks(int(0, 2) === 0 ? 0 : int(-9000, 9000)),
    measuringEdge: 'left',
    hand: 'right',
    sheetsAtOnce: 1,
    cutsPerSitting: null,
  };
  return { layout, arrangement: arrange(layout), trimmer };
}

test('every plan for every trimmer comes out, and a trimmer without limits needs no more paper', async () => {
  const solver = await testSolver();
  const sheets = (answer: Plan | Shortage) => (answer.kind === 'plan' ? answer.sheets.length : Infinity);
  const seen = { plans: 0, across: 0, corrected: 0 };
  for (let seed = 1; seed <= 180; seed += 1) {
    const set = randomSet(seed);
    // Replayed before it is returned, with the trimmer's reach and correction.
    const answer = planSet({ ...set, solver });
    if (answer.kind === 'short') continue;
    seen.plans += 1;
    if (answer.steps.some(({ otherSide }) => otherSide)) seen.across += 1;
    if (answer.steps.some(({ dial }) => dial !== undefined)) seen.corrected += 1;
    const free = planSet({ ...set, trimmer: null, solver });
    expect(sheets(free), `seed ${seed}`).toBeLessThanOrEqual(sheets(answer));
  }
  expect(Math.min(seen.plans, seen.corrected), JSON.stringify(seen)).toBeGreaterThan(30);
  expect(seen.across, JSON.stringify(seen)).toBeGreaterThan(6);
});
