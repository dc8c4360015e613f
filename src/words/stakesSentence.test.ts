import { describe, expect, it } from 'vitest';
import { proveReasons } from '../planning/index.ts';
import { proveSentence, stakesSentence } from './stakesSentence.ts';

describe('what is at stake at a step', () => {
  it('is said where it cannot be made good, with what it costs', () => {
    expect(stakesSentence({ kind: 'none', cardsFewer: 2, proved: true }, 'sheet')).toBe(
      'Point of no return: a sheet spoiled here is 2 cards fewer.',
    );
    expect(stakesSentence({ kind: 'none', cardsFewer: 1, proved: false }, 'strip')).toBe(
      'Point of no return: a strip spoiled here is up to 1 card fewer.',
    );
  });

  it('is not said where it can be, or where nobody knows', () => {
    for (const kind of ['spare', 'leftover', 'new sheet', 'unknown'] as const)
      expect(stakesSentence({ kind }, 'piece')).toBe('');
  });
});

describe('a stop to prove one first', () => {
  it('is one sentence, led by the weightiest reason', () => {
    expect(proveSentence([])).toBe('');
    expect(proveSentence(proveReasons)).toBe(
      'Prove one first: cut one and measure it; nothing is to spare here.',
    );
    expect(proveSentence(['direction', 'new setting'])).toBe(
      'Prove one first: cut one and see that its print stands as it should.',
    );
    expect(proveSentence(['new setting'])).toBe('Prove one first: cut one and measure it.');
  });

  it('does not say twice that nothing is to spare', () => {
    expect(proveSentence(proveReasons, { isSaid: true })).toBe('Prove one first: cut one and measure it.');
  });
});
