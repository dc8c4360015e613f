import { describe, expect, test } from 'vitest';
import { inches } from '../measure/index.ts';
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
});
