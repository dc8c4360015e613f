import { expect, it } from 'vitest';
import { type PlanRecord, replay, type StepRecord } from './index.ts';

/**
 * A cutting programme in print (hobby tutorial HT-4): a letter sheet is trimmed at positions measured from one edge,
 * the largest first, and the strips are cut up in turn. Each position is a setting that keeps what lies between the
 * edge and the blade; what is beyond it comes off. The strips made are exactly the strips used.
 */
const ticks = (inches: number) => inches * 40_640;

/** What is trimmed, at which positions, and how long the pieces are that come off one after another. */
interface Trimming {
  readonly from: string;
  readonly axis: 'width' | 'height';
  readonly across: number;
  readonly at: readonly number[];
  readonly comesOff: readonly number[];
  readonly names: readonly string[];
}

const programme: readonly Trimming[] = [
  {
    from: 'sheet-1',
    axis: 'height',
    across: 8.5,
    at: [9.75, 8.5, 7.25, 5.75, 4.25, 2.25],
    comesOff: [1.25, 1.25, 1.25, 1.5, 1.5, 2, 2.25],
    names: ['1.25 a', '1.25 b', '1.25 c', '1.5 a', '1.5 b', '2', '2.25'],
  },
  {
    from: '2.25',
    axis: 'width',
    across: 2.25,
    at: [8.25, 5.75, 3.25],
    comesOff: [0.25, 2.5, 2.5, 3.25],
    names: [],
  },
  { from: '2', axis: 'width', across: 2, at: [6.25, 5.25, 3], comesOff: [2.25, 1, 2.25, 3], names: [] },
  {
    from: '1.5 a',
    axis: 'width',
    across: 1.5,
    at: [7.75, 6.5, 5.25],
    comesOff: [0.75, 1.25, 1.25, 5.25],
    names: [],
  },
  {
    from: '1.5 b',
    axis: 'width',
    across: 1.5,
    at: [7.75, 6.5, 5.25],
    comesOff: [0.75, 1.25, 1.25, 5.25],
    names: [],
  },
  { from: '1.25 a', axis: 'width', across: 1.25, at: [5], comesOff: [3.5, 5], names: [] },
  { from: '1.25 b', axis: 'width', across: 1.25, at: [5], comesOff: [3.5, 5], names: [] },
];

function record(trimmings: readonly Trimming[]): PlanRecord {
  const steps: StepRecord[] = [];
  const lying = new Map<string, readonly [number, number]>();
  for (const { from, axis, across, at, comesOff, names } of trimmings) {
    lying.delete(from);
    let kept = from;
    at.forEach((position, index) => {
      const off = names[index] ?? `${from} / ${index + 1}`;
      const remains = index < at.length - 1 ? `${from} to ${position}` : (names.at(-1) ?? `${from} / last`);
      steps.push({
        step: steps.length + 1,
        take: [kept],
        axis,
        set: ticks(position),
        repeat: 1,
        gives: [[remains]],
        rest: [off],
      });
      lying.set(off, sized(comesOff[index]!));
      kept = remains;
    });
    lying.set(kept, sized(comesOff.at(-1)!));
    function sized(along: number): readonly [number, number] {
      return axis === 'width' ? [ticks(along), ticks(across)] : [ticks(across), ticks(along)];
    }
  }
  const settings = steps.filter((step, index) => steps[index - 1]?.set !== step.set).length;
  // A strip from the sheet is turned by a quarter once, for its first cut.
  const figures = { sheets: 1, cost: 1, bound: 1, proved: true, passes: steps.length, settings, turns: 6 };
  return {
    cardwright_plan: 1,
    ticks_per_inch: 40_640,
    cards: 1,
    pieces: [],
    sheets: [{ id: 'sheet-1', paper: 'sheet', stock: 0, size: [ticks(8.5), ticks(11)] }],
    steps,
    finished: {},
    leftovers: [...lying].map(([id, size]) => ({ id, size, keep: true })),
    papers: { sheet: figures },
  };
}

it('a cutting programme in print comes out to the tick', () => {
  const plan = record(programme);
  expect(replay(plan)).toEqual([]);
  expect(plan.leftovers).toHaveLength(1 + 4 + 4 + 4 + 4 + 2 + 2);
});

it('and does not with one position misprinted', () => {
  const [first, ...others] = programme;
  const misprinted = { ...first!, at: first!.at.with(2, 7.5) };
  expect(replay(record([misprinted, ...others])).map(({ code }) => code)).toContain('leftover-differs');
});
