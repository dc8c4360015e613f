import { cpus } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import load from 'highs';
import { highsSolver } from '../src/cutting/index.ts';
import { binPacking, binsChild } from './bins.ts';
import { coldStart } from './coldStart.ts';
import { type EffortName, efforts } from './efforts.ts';
import { growth, growthChild } from './growth.ts';
import { knapsacks } from './knapsack.ts';
import { page } from './page.ts';
import { practical } from './practical.ts';
import { sizes } from './sizes.ts';
import { cuttingStock } from './stock.ts';
import { yardstick } from './yardstick.ts';

/*
 * Prints ratios measured in one run, on one machine; single times mean little and are there for orientation.
 *
 *   npm run bench                     all of it, a sample of the open data
 *   npm run bench -- sets [COUNT]     invented practical sets, and general packers
 *   npm run bench -- knapsack         one sheet, worth most: all open instances
 *   npm run bench -- stock            cutting stock: all open instances
 *   npm run bench -- bins [--turned]  bin packing: all 500 open instances
 *   npm run bench -- growth            10 to 10 000 cards of one layout
 *   npm run bench -- start            cold start
 *   npm run bench -- page [RUNS]      the built page in a browser, its processor slowed
 *
 * With `bins`: --processes N (0: only show what is kept); --classes 2,4; --sample for the first of each class and size; --keep FILE for another
 * file of results than the usual one (a run goes on where the last with that file stopped), --fresh for none.
 * With `stock` and `bins`: --effort usual or thorough, which is what they have by themselves.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    turned: { type: 'boolean', default: false },
    effort: { type: 'string' },
    processes: { type: 'string', default: '1' },
    classes: { type: 'string', default: '1,2,3,4,5,6,7,8,9,10' },
    sample: { type: 'boolean', default: false },
    keep: { type: 'string' },
    fresh: { type: 'boolean', default: false },
  },
});
const [what = 'all', count = '60'] = positionals;
const effort = effortNamed(values.effort ?? (what === 'all' ? 'usual' : 'thorough'));
const turned = values.turned;
const solver = highsSolver(await load());

if (what === 'bins-child') binsChild(solver, turned, effort);
else if (what === 'growth-child') growthChild(Number(count), solver);
else {
  console.log(
    `Node ${process.version}, ${process.platform} ${process.arch}, ${cpus().length} x ${cpus()[0]?.model}`,
  );
  const yard = yardstick();
  console.log(`A yardstick is ${yard.toFixed(2)} ms.\n`);
  const samples = what === 'all';
  const bins = {
    effort,
    processes: Number(values.processes),
    classes: values.classes.split(',').map(Number),
    whole: !values.sample && !samples,
  };
  const keep = (way: string) =>
    values.fresh || samples ? null : (values.keep ?? join('out', 'results', `bins-${way}-${effort}.jsonl`));
  if (samples || what === 'sets') practical(solver, Number(count));
  if (samples || what === 'knapsack') knapsacks(!samples, yard);
  if (samples || what === 'stock') cuttingStock(solver, !samples, effort, yard);
  if (samples || (what === 'bins' && !turned)) {
    await binPacking({ ...bins, turned: false, keep: keep('fixed') });
  }
  if (samples || (what === 'bins' && turned)) {
    await binPacking({ ...bins, turned: true, keep: keep('turned') });
  }
  if (samples || what === 'growth') growth(!samples);
  if (samples || what === 'start') coldStart();
  if (samples || what === 'page') await page(what === 'page' && positionals[1] ? Number(count) : 5);
  if (samples || what === 'sizes') sizes(solver, what === 'sizes' && positionals[1] ? Number(count) : 13);
}

function effortNamed(word: string): EffortName {
  if (word in efforts) return word as EffortName;
  throw new Error(`--effort: ${Object.keys(efforts).join(' or ')}, not ${word}`);
}
