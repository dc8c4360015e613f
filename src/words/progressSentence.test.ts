import { expect, test } from 'vitest';
import type { PlanningProgress } from '../planning/index.ts';
import { progressSentence } from './progressSentence.ts';
import { meadowSet } from './testing/meadowSet.ts';

const { layout } = meadowSet();

function said(known: Partial<PlanningProgress>): string {
  const begun = { paper: 'meadow', cards: layout.cards, cost: null, bound: 0, measuredIn: 'sheets' } as const;
  return progressSentence({ ...begun, ...known }, layout);
}

test('tells what is found and what any plan takes, in what the paper is counted in', () => {
  expect(said({})).toBe('Meadow: being planned …');
  expect(said({ bound: 9.2 })).toBe('Meadow: at least 10 sheets …');
  expect(said({ cost: 11, bound: 9.2 })).toBe('Meadow: 11 sheets found, at least 10 …');
  expect(said({ cost: 11 })).toBe('Meadow: 11 sheets found …');
  expect(said({ cost: 1, bound: 1 })).toBe('Meadow: 1 sheet, proved …');
  expect(said({ cost: 14.2, bound: 13.8, measuredIn: 'price' })).toBe(
    'Meadow: 14.20 found, at least 13.80 …',
  );
  expect(said({ cost: 288, bound: 264.5, measuredIn: 'square inches' })).toBe(
    'Meadow: 288 square inches found, at least 264.5 square inches …',
  );
});

test('says that a smaller set is tried where the papers are short', () => {
  expect(said({ cards: 1, cost: 2, bound: 1 })).toBe('Trying 1 card. Meadow: 2 sheets found, at least 1 …');
});
