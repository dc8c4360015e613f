import { type CuttingTask, type LinearSolver, planCuts, unlimited } from '../src/cutting/index.ts';
import { type EffortName, efforts } from './efforts.ts';
import { table, three, timed } from './figures.ts';
import { stockInstances } from './openData.ts';

/** Cutting stock, gcut1d to gcut12d with one size of sheet: prints a line for each; the first four unless `whole`. */
export function cuttingStock(solver: LinearSolver, whole: boolean, effort: EffortName, yard: number): void {
  console.log(`Cutting stock, one size of sheet, ${effort} effort (${whole ? 'all instances' : 'a sample'})`);
  const all = stockInstances();
  if (all === null) return;
  const chosen = whole ? all : all.filter(({ id }) => /^gcut[1-4]d$/.test(id));
  let proved = 0;
  const rows = chosen.map(({ id, w, h, items, threeStageBest }) => {
    const task: CuttingTask = {
      items: items.map(([width, height, need]) => ({ width, height, need, turns: false })),
      sheets: [{ width: w, height: h, count: null, cost: 1 }],
      limits: unlimited,
    };
    const { value: answer, milliseconds } = timed(() => planCuts(task, solver, efforts[effort]));
    if (answer.kind !== 'plan') throw new Error(`${id}: no plan, and sheets are without number`);
    if (answer.cost === answer.bound) proved += 1;
    const shown = answer.cost === answer.bound ? 'proved' : `at least ${answer.bound}`;
    const seconds = milliseconds / 1000;
    return [
      id,
      String(answer.cost),
      shown,
      String(threeStageBest),
      three(milliseconds / yard),
      three(seconds),
    ];
  });
  const head = ['instance', 'sheets', '', 'published, three stages', 'yardsticks', 's'];
  console.log(table([head, ...rows]).replace(/^/gm, '  '));
  console.log(`  proved: ${proved} of ${rows.length}`);
}
