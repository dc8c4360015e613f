import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { settingOf } from '../../../src/editing/index.ts';
import { readLayoutFile, starterLayout } from '../../../src/files/index.ts';
import type { Planner } from '../../planner/browserPlanner.ts';
import { databaseNamed } from '../storage/database.ts';
import { shelfIn } from '../storage/shelf.ts';
import { faultsEverywhere } from '../storage/testing/faults.ts';
import { cuttingKeptIn } from './cutting.ts';
import { deskBefore } from './desk.ts';
import type { OpenLayoutStore } from './openLayout.ts';
import { standardsKeptIn } from './standards.ts';

/** Plans nothing, ever; it tells how often it was asked to. */
function idlePlanner() {
  let asked = 0;
  const planner = {
    plan: () => {
      asked += 1;
      return new Promise(() => {});
    },
    ask: () => new Promise(() => {}),
  } as unknown as Planner;
  return { planner, asked: () => asked };
}

const until = async (holds: () => boolean) => {
  for (let turn = 0; turn < 200 && !holds(); turn += 1)
    await new Promise((resolve) => setTimeout(resolve, 0));
  expect(holds()).toBe(true);
};

it('what could not be saved stays on the desk, is taken up as it was left, and goes on being planned', async () => {
  const faults = faultsEverywhere();
  try {
    let ids = 0;
    const newId = () => {
      ids += 1;
      return `id-${ids}`;
    };
    const shelf = shelfIn(databaseNamed('desk'), newId);
    const { planner, asked } = idlePlanner();
    const desk = deskBefore(
      { shelf, planner, cutting: cuttingKeptIn(shelf), standards: standardsKeptIn(shelf) },
      { later: () => () => {}, newId },
    );
    const read = readLayoutFile(starterLayout({ units: 'in' }));
    if (!('file' in read)) throw new Error('the starter is sound');
    const { id } = await shelf.add(read.file);
    const cardsTo = (layout: OpenLayoutStore, count: number) =>
      layout.make(settingOf(layout.getState().history.file, ['cards'], count));

    const one = (await desk.open(id))!;
    faults.next = () => 'throws';
    cardsTo(one, 12);
    await until(() => one.getState().saving.stage === 'failed');
    desk.layAway(one);
    expect(desk.isUnsaved()).toBe(true);
    const again = (await desk.open(id))!;
    expect(again).toBe(one);

    faults.next = () => null;
    desk.saveAgain();
    await until(() => !desk.isUnsaved());
    // It was taken up again, so being saved is no reason to lay it away.
    const before = asked();
    cardsTo(again, 13);
    expect(asked()).toBe(before + 1);
    await until(() => !desk.isUnsaved());

    desk.layAway(again);
    const later = (await desk.open(id))!;
    expect(later).not.toBe(one);
    expect(later.getState().history.layout.cards).toBe(13);
    expect((await shelf.documents()).map(({ revision }) => revision)).toEqual([2]);
  } finally {
    faults.stop();
  }
});
