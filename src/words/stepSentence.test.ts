import { describe, expect, test } from 'vitest';
import { inches, lengthOfTicks, millimetres, zero } from '../measure/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { stepSentence, stepWords } from './stepSentence.ts';
import { meadowSet } from './testing/meadowSet.ts';

const { layout, plan } = meadowSet();
const typed = { units: 'in', glyphs: 'typed' } as const;

const trimmer: Trimmer = {
  name: 'The one on the shelf',
  marks: inches(1, 16),
  longest: inches(12),
  narrowest: inches(1, 2),
  reach: { measuringSide: null, otherSide: null },
  correction: zero,
  measuringEdge: 'right',
  hand: 'left',
  sheetsAtOnce: 2,
  cutsPerSitting: null,
};

describe('stepWords', () => {
  const [first, second] = stepWords(plan, { layout, trimmer: null }, typed);

  test('say the setting first, then what to take, how it lies, how often, and what comes of it', () => {
    expect(stepSentence(first!)).toBe(
      'Set 5 in. Take Meadow sheet 1, 12 x 12 in. Lay it sideways, the top of the print to the measuring edge. ' +
        'Cut 2 pieces off: 2 passes. Prove one first: cut one and see that its print stands as it should. ' +
        'That makes 2 strips for step 2, each 12 x 5 in. 12 x 2 in is left over: keep it.',
    );
  });

  test('say a point of no return last, where the stakes are known', () => {
    const rescue = { kind: 'none', cardsFewer: 6, proved: true } as const;
    const stakes = [{ step: 1, loses: new Map([['panel/meadow', 6]]), rescue }];
    const [said, next] = stepWords(plan, { layout, trimmer: null, stakes }, typed);
    expect(stepSentence(said!)).toMatch(/ Point of no return: a sheet spoiled here is 6 cards fewer\.$/);
    expect(next!.stake).toBe('');
  });

  test('say the quarter turn, the passes of all workpieces together, and that nothing is to spare', () => {
    expect(stepSentence(second!)).toBe(
      'Set 4 in. Take the 2 strips from step 1, each 12 x 5 in. ' +
        'Give them a quarter turn and lay them upright, with the side of 12 in along the ruler. ' +
        'Cut each into 3: 4 passes in all. Prove one first: cut one and measure it. ' +
        'That makes 6 pieces for Panel, each 4 x 5 in. ' +
        'Nothing to spare: measure first, they have to be a full 12 in along the ruler.',
    );
  });

  test('point the top of the print to the measuring edge of the trimmer at hand', () => {
    const right = stepWords(plan, { layout, trimmer }, typed);
    expect(right[0]!.lay).toBe('Lay it sideways, the top of the print to the right.');
    const left = stepWords(plan, { layout, trimmer: { ...trimmer, measuringEdge: 'left' } }, typed);
    expect(left[0]!.lay).toContain('to the left');
  });

  test('say how many stacks there are to cut where several pieces lie together', () => {
    const cut = (sheetsAtOnce: number, workpieces = 2) => {
      const ids = Array.from({ length: workpieces }, (_, index) => `s${index + 1}`);
      const sheets = ids.map((id) => ({ ...plan.sheets[0]!, id }));
      const { step, axis, set } = plan.steps[0]!;
      const gives = ids.map((id) => [`${id}a`, `${id}b`]);
      const rest = ids.map((id) => `${id}c`);
      const halves = { step, axis, set, repeat: 2, take: ids, gives, rest };
      const finished = new Map([...gives.flat(), ...rest].map((id) => [id, 'panel/meadow']));
      const many = { ...plan, sheets, steps: [halves], finished, leftovers: [] };
      return stepWords(many, { layout, trimmer: { ...trimmer, sheetsAtOnce } }, typed)[0]!.cut;
    };
    expect(cut(1)).toBe('Cut 2 pieces off each: 4 passes in all.');
    expect(cut(2)).toBe('Cut 2 pieces off each: 4 passes in all. All 2 in one stack: 2 strokes.');
    expect(cut(2, 6)).toBe('Cut 2 pieces off each: 12 passes in all. In 3 stacks of 2: 6 strokes.');
    expect(cut(3, 7)).toBe('Cut 2 pieces off each: 14 passes in all. In 3 stacks of up to 3: 6 strokes.');
    expect(cut(2, 1)).toBe('Cut 2 pieces off: 2 passes.');
  });

  test('say what to set where a test cut found the ruler off, and where that is on it', () => {
    const read = (dial: number) => {
      const steps = plan.steps.map((step) =>
        step.step === 1 ? { ...step, dial: lengthOfTicks(dial) } : step,
      );
      const { set, mark } = stepWords({ ...plan, steps }, { layout, trimmer }, typed)[0]!;
      return `${set} ${mark}`.trim();
    };
    expect(read(inches(159, 32))).toBe(
      'Set 5 in, which on your trimmer reads 4 31/32 in. Between marks, halfway between the 4 15/16 and the 5 mark.',
    );
    expect(read(inches(319, 64))).toBe(
      'Set 5 in, which on your trimmer reads 4 63/64 in. Between marks, 1/64 in short of the 5 mark.',
    );
    expect(read(inches(81, 16))).toBe(
      'Set 5 in, which on your trimmer reads 5 1/16 in. At the mark halfway between the 5 and the 5 1/8 mark.',
    );
    expect(read(inches(5) - 320)).toContain('Between marks, a hair short of the 5 mark.');
    expect(read(0)).toBe(
      'Set 5 in: your ruler reads nothing so short, so draw a line there and lay it under the blade.',
    );
  });

  test('say on which side of the blade a length is measured that is beyond the reach', () => {
    const steps = plan.steps.map((step) => ({ ...step, otherSide: true as const }));
    const across = (measuringEdge: 'left' | 'right') =>
      stepWords({ ...plan, steps }, { layout, trimmer: { ...trimmer, measuringEdge } }, typed)[0]!;
    expect(across('right').set).toBe('Set 5 in on the other side of the blade, the left.');
    expect(across('right').lay).toBe('Lay it sideways, the top of the print to the left.');
    expect(across('left').set).toBe('Set 5 in on the other side of the blade, the right.');
    expect(across('left').lay).toBe('Lay it sideways, the top of the print to the right.');
  });

  test('say where the mark of a marked trimmer is', () => {
    expect(stepWords(plan, { layout, trimmer }, typed)[0]!.mark).toBe('At the 5 mark.');
    expect(stepWords(plan, { layout, trimmer }, { units: 'mm', glyphs: 'typed' })[0]!.mark).toBe(
      '5 in: at the 5 mark.',
    );
    expect(stepWords(plan, { layout, trimmer: { ...trimmer, marks: null } }, typed)[0]!.mark).toBe('');
  });

  test('leave no care where the sheet has something to spare', () => {
    const roomy = meadowSet();
    const sheet = roomy.plan.sheets[0]!;
    const wide = { ...sheet, size: { width: inches(13), height: inches(12) } };
    const steps = roomy.plan.steps.map((step) => (step.step === 1 ? step : { ...step, rest: ['ar', 'br'] }));
    const leftovers = [
      { id: 'c', size: { width: inches(13), height: inches(2) }, keep: true },
      ...['ar', 'br'].map((id) => ({ id, size: { width: inches(1), height: inches(5) }, keep: false })),
    ];
    const words = stepWords(
      { ...roomy.plan, sheets: [wide], steps, leftovers },
      { layout: roomy.layout, trimmer: null },
      typed,
    );
    expect(words[1]!.care).toBe('');
    expect(words[1]!.rest).toBe('What remains, 2 strips, each 1 x 5 in, is too small to keep.');
  });

  test('say the exact length where the units of the guide only round it', () => {
    const metric = { units: 'in', glyphs: 'typed' } as const;
    const steps = plan.steps.map((step) => (step.step === 1 ? { ...step, set: millimetres(120) } : step));
    const first = stepWords(
      {
        ...plan,
        steps: steps.slice(0, 1),
        finished: new Map([
          ['a', 'panel/meadow'],
          ['b', 'panel/meadow'],
        ]),
      },
      { layout, trimmer: null },
      metric,
    )[0]!;
    expect(first.set).toBe('Set about 4.7244 in.');
    expect(first.mark).toBe('That is 120 mm exactly.');
  });

  test('say of a squaring cut which edge lies where and what the margin is', () => {
    const squaring = {
      ...plan,
      steps: [
        {
          ...plan.steps[0]!,
          set: inches(47, 4),
          repeat: 1,
          gives: [['a']],
          rest: ['c'],
          squares: 'bottom' as const,
        },
      ],
      finished: new Map([['a', 'panel/meadow']]),
      leftovers: [{ id: 'c', size: { width: inches(12), height: inches(1, 4) }, keep: false }],
    };
    expect(stepSentence(stepWords(squaring, { layout, trimmer: null }, typed)[0]!)).toBe(
      'Set 11 3/4 in. Take Meadow sheet 1, 12 x 12 in. Lay it with the top edge at the measuring edge. ' +
        'Cut 1 piece off: 1 pass. This squares the bottom edge. That makes 1 piece for Panel, 12 x 11 3/4 in. ' +
        'What remains, 12 x 1/4 in, is the margin.',
    );
  });

  test('say together what remains of several workpieces where it goes different ways', () => {
    const two = {
      ...plan,
      sheets: [...plan.sheets, { ...plan.sheets[0]!, id: 'meadow-2' }],
      steps: [
        {
          ...plan.steps[0]!,
          take: ['meadow-1', 'meadow-2'],
          repeat: 1,
          gives: [['a'], ['b']],
          rest: ['c', 'd'],
        },
        { ...plan.steps[1]!, take: ['c'], set: inches(6), repeat: 2, gives: [['c1', 'c2']], rest: [null] },
      ],
      finished: new Map(['a', 'b', 'd', 'c1', 'c2'].map((id) => [id, 'panel/meadow'])),
      leftovers: [],
    };
    expect(stepWords(two, { layout, trimmer: null }, typed)[0]!.rest).toBe(
      'What remains makes 1 piece for step 2 and 1 piece for Panel, each 12 x 7 in.',
    );
  });
});
