import { expect, test } from 'vitest';
import { Chance } from './chance.ts';
import { OpenSheets, type Place } from './openSheets.ts';
import { faultsOf } from './testing/checkTree.ts';
import { smallTask } from './testing/randomTask.ts';
import { tidied } from './treeBuilding.ts';

test('after any changes the trees keep the rules and hold just what is not out', () => {
  for (let seed = 1; seed <= 150; seed++) {
    const task = smallTask(seed);
    const chance = new Chance(seed);
    const kinds = task.sheets.flatMap((_, sheet) => [sheet, sheet]);
    const needs = task.items.map(({ need }) => need);
    const open = new OpenSheets(
      task,
      kinds,
      task.items.map(({ width, height }) => width * height),
      needs,
    );
    const place: Place = { room: 0, turned: false, first: 0 };
    const shown = () => JSON.stringify(kinds.map((_, sheet) => open.tree(sheet)));
    let before = shown();
    let roominess = open.roominess;
    for (let change = 0; change < 400; change++) {
      const item = chance.below(task.items.length);
      const branch = open.pieces > 0 ? open.piece(chance.below(open.pieces)) : -1;
      if (chance.fraction() < 0.6) {
        if (open.out(item) > 0 && open.findPlace(item, place, 0.2, chance)) open.insert(item, place);
      } else if (branch >= 0) {
        const row = open.parent(branch);
        const node = row >= 0 && chance.fraction() < 0.3 ? row : branch;
        const above = open.parent(node);
        open.remove(node);
        if (above >= 0 && chance.fraction() < 0.5) open.drawIn(open.parent(above));
      }
      if (chance.fraction() < 0.3) {
        open.undo();
        expect(shown(), `seed ${seed}, undone`).toBe(before);
        expect(open.roominess).toBe(roominess);
      } else if (chance.fraction() < 0.5) {
        open.keep();
        before = shown();
        roominess = open.roominess;
      }
    }
    const patterns = kinds.map((sheet, index) => ({
      sheet,
      times: 1,
      tree: tidied(open.tree(index), task.limits),
    }));
    const sheets = task.sheets.map((sheet) => ({ ...sheet, count: 2 }));
    const missing = needs.map((_, item) => open.out(item));
    const certificate = null;
    const answer = { kind: 'short', best: patterns, missing, proved: false, certificate } as const;
    const faults = faultsOf({ ...task, sheets }, answer).filter((fault) => fault !== 'short of nothing');
    expect(faults, `seed ${seed}: ${JSON.stringify(task)}`).toEqual([]);
    const made = needs.map((_, item) =>
      kinds.reduce((sum, _kind, sheet) => sum + open.made(sheet)[item]!, 0),
    );
    expect(made).toEqual(needs.map((need, item) => need - missing[item]!));
  }
});
