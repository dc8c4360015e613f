import { type Edit, opened, settingOf, together } from '../../../../src/editing/index.ts';
import { readLayoutFile, type SavedLayout, starterLayout } from '../../../../src/files/index.ts';
import {
  lengthOfTicks,
  type Marking,
  readLength,
  roundTo,
  showLengthWithUnit,
  type Units,
  usualMarkings,
} from '../../../../src/measure/index.ts';
import { assert } from '../../../../src/problem/index.ts';
import type { Planner } from '../../../planner/browserPlanner.ts';
import { nothingSaid } from '../../state/cutting.ts';
import { type OpenLayoutStore, openLayout } from '../../state/openLayout.ts';
import type { Saving } from '../../state/saving.ts';
import { usualStandards } from '../../state/standards.ts';

/** The marks by which a new set is measured before a trimmer is known. */
export const markings: Readonly<Record<Units, Marking>> = {
  in: usualMarkings['1/16 in'],
  mm: usualMarkings['1 mm'],
};

/** A set that is not on the shelf yet: it is neither saved nor planned. */
export function draftOf(units: Units, title: string, cards: number): OpenLayoutStore {
  const read = readLayoutFile(starterLayout({ units, title }));
  assert('file' in read, 'The starter is a sound layout');
  const history = opened({ ...read.file, cards });
  assert(!('problems' in history), 'The starter is sound for any number of cards');
  return openLayout(
    {
      history: { ...history, done: [] },
      cutting: { getState: () => nothingSaid, subscribe: () => () => {} },
      standards: { getState: () => usualStandards, subscribe: () => () => {} },
    },
    { saving: notSaved, planner: idle },
  );
}

/**
 * The closed card made as high as `text` says. The panel of the starter keeps about two thirds of it, in whole quarter
 * inches or millimetres, so that the strip below it has room.
 */
export function heightEdit(file: SavedLayout, text: string, units: Units): Edit {
  const height = settingOf(file, ['base', 'size', 1], text);
  const read = readLength(text, units);
  if (!read.ok) return height;
  const step = lengthOfTicks(units === 'in' ? markings.in.step * 4 : markings.mm.step);
  const panel = roundTo(lengthOfTicks(Math.floor((read.length * 2) / 3)), step, 'nearest');
  return together(height, settingOf(file, ['parts', 1, 'size', 1], showLengthWithUnit(panel, units)));
}

const notSaved: Saving = {
  add() {},
  copied() {},
  state: () => notSavedState,
  subscribe: () => () => {},
  retry() {},
};
const notSavedState: ReturnType<Saving['state']> = {
  stage: 'saved',
  at: { id: '', revision: 0 },
  waiting: 0,
  problem: null,
  beside: null,
};

/** An answer that never comes is of the type of any answer. */
const never = () => new Promise<never>(() => {});
const idle: Planner = { plan: never, ask: never, close() {} };
