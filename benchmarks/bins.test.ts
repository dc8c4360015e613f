import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { solver } from '../src/cutting/testing/solver.ts';
import { keptIn, solved } from './bins.ts';
import { binsInstances, knownBins } from './openData.ts';

it('a run that was stopped in the middle of a line goes on from the line before', () => {
  const folder = mkdtempSync(join(tmpdir(), 'cardwright-bins-'));
  try {
    const file = join(folder, 'results.jsonl');
    expect(keptIn(file)).toEqual([]);
    const first = { id: 'cl_01_020_01', sheets: 8, bound: 8, seconds: 0.2 };
    writeFileSync(file, `${JSON.stringify(first)}\n{"id":"cl_01_020_02","shee`);
    expect(keptIn(file)).toEqual([first]);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

it('an instance is planned whole and within its bounds', () => {
  // Two of 6 x 6 and four of 4 x 4 from sheets of 10: beside a large one there is room for three small ones.
  const items: [number, number][] = [
    [6, 6],
    [6, 6],
    [4, 4],
    [4, 4],
    [4, 4],
    [4, 4],
  ];
  const result = solved({ id: 'own', w: 10, h: 10, items }, false, solver, 'usual');
  expect(result).toMatchObject({ id: 'own', sheets: 2, bound: 2 });
});

// Where the open data are not on this machine `binsInstances` says so, and there is nothing more to check.
const sample = (binsInstances() ?? []).filter(({ id }) => id.endsWith('_020_01'));
for (const instance of sample) {
  describe(`open instance ${instance.id}`, () => {
    it.each([
      ['fixed', false],
      ['turned', true],
    ])('%s: neither plan nor bound is against what is published', (_, turned) => {
      const { sheets, bound } = solved(instance, turned, solver, 'usual');
      const { least, most } = knownBins(turned).get(instance.id)!;
      expect(sheets).toBeGreaterThanOrEqual(least);
      expect(bound).toBeLessThanOrEqual(most);
      expect(sheets - most).toBeLessThanOrEqual(1);
    });
  });
}
