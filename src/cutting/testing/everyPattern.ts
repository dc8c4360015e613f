import loadHighs from 'highs';
import type { CuttingTask } from '../index.ts';
import { everyProduction } from './everyCut.ts';

const highs = await loadHighs();

/**
 * The least cost of a task with small sheets, by an integer programme over every pattern that `everyProduction`
 * finds, written out for the solver's own text reader; `null`: there is no plan. Shares nothing with the planner.
 */
export function leastByProgramme(task: CuttingTask): number | null {
  const patterns = task.sheets.flatMap((sheet, index) =>
    everyProduction(task.items, task.limits, sheet).map((made) => ({ sheet: index, cost: sheet.cost, made })),
  );
  const sum = (terms: readonly string[]) => (terms.length === 0 ? '0 x0' : terms.join(' + '));
  const rows = [
    ...task.items.map(({ need }, item) => {
      const terms = patterns.flatMap(({ made }, p) => (made[item]! > 0 ? [`${made[item]} x${p}`] : []));
      return `need${item}: ${sum(terms)} >= ${need}`;
    }),
    ...task.sheets.flatMap(({ count }, sheet) => {
      if (count === null) return [];
      const terms = patterns.flatMap((pattern, p) => (pattern.sheet === sheet ? [`1 x${p}`] : []));
      return [`sheet${sheet}: ${sum(terms)} <= ${count}`];
    }),
  ];
  const programme = [
    'Minimize',
    ` cost: ${sum(patterns.map(({ cost }, p) => `${cost} x${p}`))}`,
    'Subject To',
    ...rows.map((row) => ` ${row}`),
    'General',
    ` ${patterns.map((_, p) => `x${p}`).join(' ')}`,
    'End',
  ].join('\n');
  const solution = highs.solve(programme, { mip_rel_gap: 0 });
  return solution.Status === 'Optimal' ? Math.round(solution.ObjectiveValue) : null;
}
