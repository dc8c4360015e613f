import { spawnSync } from 'node:child_process';
import load from 'highs';
import { highsSolver, planCuts } from '../src/cutting/index.ts';
import { cutsEdgeToEdge, packers } from './packers.ts';
import { practicalSets } from './sets.ts';

/*
 * Prints ratios measured in one run, on one machine; single times mean little and are there for orientation.
 * `npm run bench` builds and starts it; a number after `--` is how many sets are tried.
 */
const count = Number(process.argv[2] ?? 40);
const seed = 20_261_125;
const solver = highsSolver(await load());

console.log(`Node ${process.version}, ${process.platform} ${process.arch}\n`);
console.log(`Planner against general packers: ${count} practical sets of one sheet size, seed ${seed}`);

const sets = practicalSets(count, seed);
planCuts(sets[0]!, solver); // warm

interface Tried {
  readonly sheets: number;
  readonly milliseconds: number;
}

const ours = sets.map((task) => {
  const began = performance.now();
  const answer = planCuts(task, solver);
  const milliseconds = performance.now() - began;
  if (answer.kind !== 'plan') throw new Error(`${task.name}: no plan from sheets without number`);
  return { sheets: answer.cost, milliseconds, proved: answer.cost === answer.bound };
});
const times = ours.map(({ milliseconds }) => milliseconds).sort((a, b) => a - b);
const share = (part: number, whole: number) => `${((100 * part) / whole).toFixed(0)} %`;
console.log(
  `  cardwright: ${share(ours.filter(({ proved }) => proved).length, count)} proved best; ` +
    `median ${at(times, 0.5)} ms, 95 % under ${at(times, 0.95)} ms, longest ${at(times, 1)} ms`,
);

for (const [name, pack] of Object.entries(packers)) {
  const theirs = sets.map((task): Tried & { readonly cuttable: boolean } => {
    const began = performance.now();
    const bins = pack(task);
    return {
      milliseconds: performance.now() - began,
      sheets: bins.length,
      cuttable: bins.every(cutsEdgeToEdge),
    };
  });
  const total = (tried: readonly Tried[]) => tried.reduce((sum, { sheets }) => sum + sheets, 0);
  const cuttable = theirs.filter((tried) => tried.cuttable).length;
  const asFew = theirs.filter((tried, index) => tried.cuttable && tried.sheets <= ours[index]!.sheets).length;
  const ratios = theirs
    .map((tried, index) => ours[index]!.milliseconds / tried.milliseconds)
    .sort((a, b) => a - b);
  console.log(
    `  ${name}: ${(total(theirs) / total(ours)).toFixed(3)} times the sheets; ` +
      `${share(cuttable, count)} of its plans can be cut edge to edge, ${share(asFew, count)} with as few sheets; ` +
      `our time / its time: median ${at(ratios, 0.5)}`,
  );
}

console.log('\nCold start, whole processes in turns, median of 9');
const help = median(9, ['bin/cardwright.js', '--help']);
const empty = median(9, ['-e', '']);
console.log(
  `  cardwright --help / an empty program: ${(help / empty).toFixed(2)} (${help.toFixed(0)} ms / ${empty.toFixed(0)} ms)`,
);

function median(runs: number, args: readonly string[]): number {
  const all = Array.from({ length: runs }, () => {
    const began = performance.now();
    spawnSync(process.execPath, args, { stdio: 'ignore' });
    return performance.now() - began;
  });
  return all.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

function at(sorted: readonly number[], share: number): string {
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!.toFixed(1);
}
