import { fork } from 'node:child_process';
import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CuttingTask, type LinearSolver, planCuts, unlimited } from '../src/cutting/index.ts';
import { faultsOf } from '../src/cutting/testing/checkTree.ts';
import { type EffortName, efforts } from './efforts.ts';
import { quantile, sum, table, three, timed } from './figures.ts';
import { type BinsInstance, binsInstances, knownBins, publishedBins } from './openData.ts';

/** Which instances are run, and how. */
interface BinsRequest {
  /** Whether pieces may be turned. */
  readonly turned: boolean;
  readonly effort: EffortName;
  /** All ten instances of a class and size, or only the first. */
  readonly whole: boolean;
  /** With 0 nothing is run, and what is kept is shown. */
  readonly processes: number;
  /** Only these classes, 1 to 10. */
  readonly classes: readonly number[];
  /** Where results are kept, a line an instance; a run that was stopped goes on from it. `null`: nowhere. */
  readonly keep: string | null;
}

/** A line of the results. */
export interface BinsResult {
  readonly id: string;
  readonly sheets: number;
  readonly bound: number;
  readonly seconds: number;
}

/** Sheets in all 500 instances: what is published, and what we are after. */
const totals = {
  fixed: [
    [7278, 'three stages, 60 s each (F. Fontan & L. Libralesso 2020)'],
    [7243, 'best known with three stages'],
    [7238, 'Y.-P. Cui et al. 2015'],
    [7233, 'best known (J. Gardeyn & T. Wauters 2022)'],
    [7215, 'best lower bound known'],
  ],
  turned: [
    [7000, 'a round number near good published methods'],
    [6989, 'Y.-P. Cui et al. 2016'],
    [6977, 'best known, each class by its best method'],
    [6968, 'best lower bound known'],
  ],
} as const;

/** Bin packing, edge to edge: runs the instances, and prints the sums by class and size beside the published ones. */
export async function binPacking(request: BinsRequest): Promise<void> {
  const { turned, effort, whole, processes, keep } = request;
  console.log(
    `Bin packing, ${turned ? 'turned' : 'fixed'}, ${effort} effort (${whole ? 'all instances' : 'the first of each class and size'})`,
  );
  const all = binsInstances();
  if (all === null) return;
  const wanted = all.filter(
    ({ id }) => (whole || id.endsWith('_01')) && request.classes.includes(placeOf(id).kind),
  );
  const done = new Map(keptIn(keep).map((result) => [result.id, result]));
  const open = wanted.filter(({ id }) => !done.has(id));
  if (keep !== null) mkdirSync(dirname(keep), { recursive: true });
  await shared(
    open.map(({ id }) => id),
    { turned, effort, processes },
    (result) => {
      done.set(result.id, result);
      if (keep !== null) appendFileSync(keep, `${JSON.stringify(result)}\n`);
    },
  );
  report(
    wanted.flatMap(({ id }) => done.get(id) ?? []),
    turned,
    wanted.length,
  );
}

/** What a child process does: solves the instances that it is sent, one after another. */
export function binsChild(solver: LinearSolver, turned: boolean, effort: EffortName): void {
  const byId = new Map((binsInstances() ?? []).map((instance) => [instance.id, instance]));
  process.on('message', (id: string) => {
    process.send!(solved(byId.get(id)!, turned, solver, effort));
  });
}

/** Plans an instance and checks the plan; throws where it is unsound. */
export function solved(
  instance: BinsInstance,
  turned: boolean,
  solver: LinearSolver,
  effort: EffortName,
): BinsResult {
  const { id, w, h } = instance;
  const task: CuttingTask = {
    items: instance.items.map(([width, height]) => ({ width, height, need: 1, turns: turned })),
    sheets: [{ width: w, height: h, count: null, cost: 1 }],
    limits: unlimited,
  };
  const { value: answer, milliseconds } = timed(() => planCuts(task, solver, efforts[effort]));
  const faults = faultsOf(task, answer);
  if (faults.length > 0 || answer.kind !== 'plan')
    throw new Error(`${id}: ${faults.join(', ') || 'no plan'}`);
  const seconds = Math.round(milliseconds) / 1000;
  return { id, sheets: answer.cost, bound: answer.bound, seconds };
}

/** Hands the instances out to processes, one at a time to each; `take` is called with each result. */
async function shared(
  ids: readonly string[],
  { turned, effort, processes }: Pick<BinsRequest, 'turned' | 'effort' | 'processes'>,
  take: (result: BinsResult) => void,
): Promise<void> {
  const left = [...ids];
  let taken = 0;
  const one = () =>
    new Promise<void>((resolve, reject) => {
      const child = fork(fileURLToPath(import.meta.url), [
        'bins-child',
        '--effort',
        effort,
        ...(turned ? ['--turned'] : []),
      ]);
      const next = () => {
        const id = left.shift();
        if (id === undefined) child.disconnect();
        else child.send(id);
      };
      child.on('message', (result: BinsResult) => {
        take(result);
        taken += 1;
        if (taken % 25 === 0) console.error(`  ${taken} of ${ids.length} …`);
        next();
      });
      child.on('exit', (code) => {
        if (code === 0) resolve();
        else reject(new Error('a process of the benchmark failed; what it said stands above'));
      });
      next();
    });
  await Promise.all(Array.from({ length: Math.min(processes, left.length) }, one));
}

function report(results: readonly BinsResult[], turned: boolean, wanted: number): void {
  if (results.length < wanted) console.log(`  Not all were run: ${results.length} of ${wanted}.`);
  if (results.length === 0) return;
  const complete = results.length === 500;
  const known = knownBins(turned);
  const published = publishedBins(turned);
  const groups = new Map<string, BinsResult[]>();
  for (const result of results) {
    const { kind, size } = placeOf(result.id);
    const group = `${kind} ${size}`;
    groups.set(group, [...(groups.get(group) ?? []), result]);
  }
  const line = (name: string, group: readonly BinsResult[], best: number | null) => [
    name,
    String(group.length),
    String(sum(group.map(({ sheets }) => sheets))),
    String(sum(group.map(({ id }) => known.get(id)!.most))),
    best === null ? '' : String(best),
    String(sum(group.map(({ id }) => known.get(id)!.least))),
    String(sum(group.map(({ bound }) => bound))),
    String(group.filter(({ sheets, bound }) => sheets === bound).length),
    three(
      quantile(
        group.map(({ seconds }) => seconds),
        0.5,
      ),
    ),
    three(Math.max(...group.map(({ seconds }) => seconds))),
  ];
  // A sum over all ten instances is what was published.
  const bestOf = (group: string) =>
    groups.get(group)!.length === 10 ? (published.get(group) ?? null) : null;
  console.log(
    table([
      [
        'class n',
        'instances',
        'sheets',
        'best known',
        'published sum',
        'least',
        'our bound',
        'proved',
        'median s',
        'longest s',
      ],
      ...[...groups].map(([name, group]) => line(name, group, bestOf(name))),
      line('in all', results, complete ? sum([...published.values()]) : null),
    ]).replace(/^/gm, '  '),
  );
  const over = results.filter(({ id, sheets }) => sheets > known.get(id)!.most);
  const under = results.filter(({ id, sheets }) => sheets < known.get(id)!.most);
  const idsOf = (all: readonly BinsResult[]) => all.map(({ id }) => id).join(', ') || 'none';
  console.log(`  more than the best known: ${idsOf(over)}\n  fewer: ${idsOf(under)}`);
  const impossible = results.filter(({ id, sheets, bound }) => {
    const { least, most } = known.get(id)!;
    return sheets < least || bound > most;
  });
  for (const { id, sheets, bound } of impossible) {
    console.log(
      `  AGAINST WHAT IS KNOWN: ${id}, ${sheets} sheets, at least ${bound}, known ${JSON.stringify(known.get(id))}`,
    );
  }
  if (!complete) return;
  const total = sum(results.map(({ sheets }) => sheets));
  for (const [figure, what] of totals[turned ? 'turned' : 'fixed'])
    console.log(`  ${total} against ${figure}, ${what}: ${total <= figure ? '' : '+'}${total - figure}`);
}

/** `cl_07_020_03` is the third instance of class 7 with 20 pieces. */
function placeOf(id: string): { readonly kind: number; readonly size: number } {
  const [, kind, size] = id.split('_').map(Number);
  return { kind: kind!, size: size! };
}

/** The results of a file; none where there is no such file. */
export function keptIn(file: string | null): readonly BinsResult[] {
  if (file === null || !existsSync(file)) return [];
  // The last line may have been cut short when the run was stopped.
  return readFileSync(file, 'utf8')
    .split('\n')
    .flatMap((line) => (line.endsWith('}') ? [JSON.parse(line) as BinsResult] : []));
}
