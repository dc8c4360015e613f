import { describe, expect, test } from 'vitest';
import { inches, millimetres, zero } from '../measure/index.ts';
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
        'Cut 2 pieces off: 2 passes. That makes 2 strips for step 2, each 12 x 5 in. 12 x 2 in is left over: keep it.',
    );
  });

  test('say the quarter turn, the passes of all workpieces together, and that nothing is to spare', () => {
    expect(stepSentence(second!)).toBe(
      'Set 4 in. Take the 2 strips from step 1, each 12 x 5 in. ' +
        'Give them a quarter turn and lay them upright, with the side of 12 in along the ruler. ' +
        'Cut each into 3: 4 passes in all. That makes 6 pieces for Panel, each 4 x 5 in. ' +
        'Nothing to spare: measure first, they have to be a full 12 in along the ruler.',
    );
  });

  test('point the top of the print to the measuring edge of the trimmer at hand', () => {
    const right = stepWords(plan, { layout, trimmer }, typed);
    expect(right[0]!.lay).toBe('Lay it sideways, the top of the print to the right.');
    expect(right[1]!.cut).toContain('Up to 2 may lie together.');
    const left = stepWords(plan, { layout, trimmer: { ...trimmer, measuringEdge: 'left' } }, typed);
    expect(left[0]!.lay).toContain('to the left');
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
