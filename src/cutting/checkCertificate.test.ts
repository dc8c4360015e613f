import { describe, expect, test } from 'vitest';
import { type BoundCertificate, type CuttingTask, planCuts, unlimited } from './index.ts';
import { chance } from './testing/chance.ts';
import { checkCertificate } from './testing/checkCertificate.ts';
import { randomSet } from './testing/randomSet.ts';
import { smallTask } from './testing/randomTask.ts';
import { solver } from './testing/solver.ts';

/** Twenty unlike pieces from sheets of ten units: class 1 of J. O. Berkey & P. Y. Wang 1987, other random numbers. */
function unlikePieces(seed: number): CuttingTask {
  const int = chance(seed);
  const items = Array.from({ length: 20 }, () => {
    return { width: int(1, 10), height: int(1, 10), need: 1, turns: seed % 2 === 0 };
  });
  return { items, sheets: [{ width: 10, height: 10, count: null, cost: 1 }], limits: unlimited };
}

/** A few kinds that leave much of small sheets, of one size or two. */
function wastefulTask(seed: number): CuttingTask {
  const int = chance(seed);
  const items = Array.from({ length: int(3, 6) }, () => {
    return { width: int(3, 10), height: int(3, 10), need: int(1, 3), turns: int(0, 1) === 1 };
  });
  const sheets = [
    { width: int(10, 16), height: int(10, 16), count: null, cost: int(5, 9) },
    { width: int(10, 12), height: int(10, 20), count: int(1, 3), cost: int(4, 9) },
  ];
  return { items, sheets: sheets.slice(int(0, 1)), limits: unlimited };
}

describe('the proof of a bound stands when it is gone through anew', () => {
  const kinds: [string, (seed: number) => CuttingTask, number, number][] = [
    ['small sheets with any limits, seeds 1001 to 1080', smallTask, 1001, 1080],
    ['kinds that leave much of their sheets, seeds 2001 to 2100', wastefulTask, 2001, 2100],
    ['twenty unlike pieces, seeds 3001 to 3030', unlikePieces, 3001, 3030],
    ['letter sheets in eighths of an inch, seeds 300 to 311', randomSet, 300, 311],
  ];
  test.each(kinds)('%s', (kind, make, first, last) => {
    let refuted = 0;
    for (let seed = first; seed <= last; seed++) {
      const task = make(seed);
      const shown = `seed ${seed}: ${JSON.stringify(task)}`;
      const answer = planCuts(task, solver);
      if (answer.certificate === null) continue;
      const cost = answer.kind === 'plan' ? answer.cost : null;
      const check = checkCertificate(task, answer.certificate, cost);
      expect(check, shown).toMatchObject({ faults: [], unchecked: 0 });
      refuted += check.refutedAgain;
      if (answer.kind === 'plan') {
        const { bound, sheetsBound } = answer;
        expect({ bound: check.bound, sheetsBound: check.sheetsBound }, shown).toEqual({ bound, sheetsBound });
      } else if (answer.proved) expect(check.bound, shown).toBeNull();
    }
    // Else the harder half of the check would never have been at work.
    if (make === wastefulTask || make === unlikePieces) expect(refuted, kind).toBeGreaterThan(0);
  });
});

describe('a proof that has been tampered with is found out', () => {
  const task: CuttingTask = {
    items: [
      { width: 6, height: 4, need: 5, turns: true },
      { width: 3, height: 2, need: 9, turns: false },
    ],
    sheets: [
      { width: 10, height: 11, count: null, cost: 3 },
      { width: 7, height: 9, count: 2, cost: 2 },
    ],
    limits: unlimited,
  };
  const answer = planCuts(task, solver);
  if (answer.kind !== 'plan') throw new Error('no plan');
  const { certificate, cost, bound } = answer;
  const check = (changed: Partial<BoundCertificate>) =>
    checkCertificate(task, { ...certificate, ...changed }, cost);

  test('as it is, it holds', () => {
    expect(check({})).toMatchObject({ faults: [], unchecked: 0, bound });
  });
  test('a sheet worth less than what can be cut of it', () => {
    const conditions = certificate.conditions.map(({ prices, sheets }) => ({
      prices,
      sheets: sheets.map((worth) => Math.floor(worth / 2)),
    }));
    expect(check({ conditions }).faults).not.toEqual([]);
  });
  test('counts called impossible that do give all', () => {
    const counts = certificate.groups.map((group) =>
      answer.patterns.reduce((sum, { sheet, times }) => sum + (group.includes(sheet) ? times : 0), 0),
    );
    const refuted = [...certificate.refuted, { counts, condition: 0, by: 'search' as const }];
    expect(check({ refuted }).faults).not.toEqual([]);
  });
  test('a sheet left out, and one in two groups', () => {
    const groups = certificate.groups.slice(1);
    const conditions = certificate.conditions.map(({ prices, sheets }) => ({
      prices,
      sheets: sheets.slice(1),
    }));
    expect(check({ groups, conditions, refuted: [] }).faults).not.toEqual([]);
    expect(check({ groups: [certificate.groups[0]!, certificate.groups[0]!] }).faults).not.toEqual([]);
  });
});
