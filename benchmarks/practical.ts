import { type LinearSolver, planCuts } from '../src/cutting/index.ts';
import { percent, quantile, spread, sum, three, timed } from './figures.ts';
import { cutsEdgeToEdge, mostPieces, packers } from './packers.ts';
import { practicalSets } from './sets.ts';

/** Seeds of the sets: this one and those after it. */
const firstSeed = 20_261_125;
/** A screen that shows sixty pictures a second has one up for so long. */
const frameMilliseconds = 1000 / 60;

/** Plans invented sets, and prints how well, how fast, and how that compares with general packers. */
export function practical(solver: LinearSolver, count: number): void {
  const sets = practicalSets(count, firstSeed);
  console.log(`Practical sets: ${count}, seeds ${firstSeed} to ${firstSeed + count - 1}`);
  for (const set of sets.slice(0, 4)) planCuts(set, solver); // warm

  const ours = sets.map((set) => {
    const { value: answer, milliseconds } = timed(() => planCuts(set, solver));
    if (answer.kind !== 'plan') throw new Error(`seed ${set.seed}: no plan, and one sheet is without number`);
    const proved = answer.cost === answer.bound;
    const sheets = answer.patterns.reduce((sum, { times }) => sum + times, 0);
    return { set, cost: answer.cost, bound: answer.bound, proved, sheets, milliseconds };
  });
  const open = ours.filter(({ proved }) => !proved);
  console.log(`  least cost, proved: ${count - open.length} of ${count}`);
  for (const { set, cost, bound } of open)
    console.log(`    open: seed ${set.seed}, cost ${cost}, at least ${bound}`);
  console.log(`  plan and proof: ${spread(ours.map(({ milliseconds }) => milliseconds))}`);

  const comparable = ours.filter(({ set }) => set.oneSize);
  const theirs = Object.entries(packers).map(([name, pack]) => {
    const given = comparable.filter(({ set }) => {
      return set.items.reduce((sum, { need }) => sum + need, 0) <= (mostPieces[name] ?? Infinity);
    });
    for (const { set } of given.slice(0, 4)) pack(set); // warm
    const runs = given.map(({ set, sheets: least }) => {
      const { value: sheets, milliseconds } = timed(() => pack(set));
      return { set, least, sheets: sheets.length, cuttable: sheets.every(cutsEdgeToEdge), milliseconds };
    });
    return { name, runs };
  });
  console.log(`  general packers, on the ${comparable.length} of them with sheets of one size:`);
  for (const { name, runs } of theirs) {
    const cuttable = runs.filter((run) => run.cuttable);
    const asFew = cuttable.filter(({ sheets, least }) => sheets <= least).length;
    const better = cuttable.filter(({ sheets, least }) => sheets < least);
    const ratio = sum(runs.map(({ sheets }) => sheets)) / sum(runs.map(({ least }) => least));
    console.log(
      `    ${name}: ${ratio.toFixed(3)} times our sheets (on ${runs.length}); ` +
        `${percent(cuttable.length, runs.length)} of its plans can be cut edge to edge, ` +
        `${percent(asFew, runs.length)} with as few sheets as ours, ${better.length} with fewer`,
    );
    for (const { set } of better) console.log(`      fewer: seed ${set.seed}`);
  }
  const ratios = comparable.map(
    ({ set, milliseconds }) =>
      milliseconds /
      Math.min(...theirs.flatMap(({ runs }) => runs.find((run) => run.set === set)?.milliseconds ?? [])),
  );
  console.log(
    `  plan and proof / the fastest of the packers: median ${three(quantile(ratios, 0.5))}; ` +
      `/ one frame of ${frameMilliseconds.toFixed(1)} ms: median ` +
      three(
        quantile(
          ours.map(({ milliseconds }) => milliseconds / frameMilliseconds),
          0.5,
        ),
      ),
  );
}
