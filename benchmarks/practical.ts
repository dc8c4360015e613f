import { type CuttingPlan, firstPlan, type LinearSolver, planCuts } from '../src/cutting/index.ts';
import { faultsOf } from '../src/cutting/testing/checkTree.ts';
import { percent, quantile, spread, sum, three, timed } from './figures.ts';
import { cutsEdgeToEdge, mostPieces, packers } from './packers.ts';
import { type PracticalSet, practicalSets } from './sets.ts';

/** Seeds of the sets: this one and those after it. */
const firstSeed = 20_261_125;
/** A screen that shows sixty pictures a second has one up for so long. */
const frameMilliseconds = 1000 / 60;

/** Plans invented sets, and prints how well, how fast, and how that compares with general packers. */
export function practical(solver: LinearSolver, count: number): void {
  const sets = practicalSets(count, firstSeed);
  console.log(`Practical sets: ${count}, seeds ${firstSeed} to ${firstSeed + count - 1}`);
  for (const set of sets.slice(0, 6)) planCuts(set, solver); // warm
  for (const set of sets) firstPlan(set);

  const firsts = sets.map((set) => {
    const { value, milliseconds } = atBest(() => firstPlan(set));
    if (value !== null) sound(set, value);
    return { set, plan: value, milliseconds };
  });
  const ours = sets.map((set) => {
    const { value: answer, milliseconds } = timed(() => planCuts(set, solver));
    if (answer.kind !== 'plan') throw new Error(`seed ${set.seed}: no plan, and one sheet is without number`);
    sound(set, answer);
    return { set, answer, proved: answer.cost === answer.bound, sheets: sheetsOf(answer), milliseconds };
  });

  const open = ours.filter(({ proved }) => !proved);
  console.log(`  least cost, proved: ${count - open.length} of ${count}`);
  for (const { set, answer } of open)
    console.log(`    open: seed ${set.seed}, cost ${answer.cost}, at least ${answer.bound}`);
  console.log(`  plan and proof: ${spread(ours.map(({ milliseconds }) => milliseconds))}`);

  const slow = ours.filter(({ milliseconds }) => milliseconds > 1000);
  if (slow.length > 0) {
    const seeds = slow.map(({ set, milliseconds }) => `${set.seed} (${three(milliseconds / 1000)} s)`);
    console.log(`    longer than a second: seeds ${seeds.join(', ')}`);
  }

  const firstTimes = firsts.map(({ milliseconds }) => milliseconds);
  const found = firsts.filter(({ plan }) => plan !== null);
  const dearer = firsts.flatMap(({ plan }, at) => (plan === null ? [] : plan.cost / ours[at]!.answer.cost));
  const frames = [0.5, 0.95, 1].map((share) => three(quantile(firstTimes, share) / frameMilliseconds));
  console.log(`  first plan: ${spread(firstTimes)}; found for ${found.length} of ${count}`);
  console.log(
    `    cost / least cost: median ${three(quantile(dearer, 0.5))}, 95 % under ${three(quantile(dearer, 0.95))}`,
  );
  console.log(
    `    time / one frame of ${frameMilliseconds.toFixed(1)} ms: median ${frames[0]}, 95 % under ${frames[1]}, most ${frames[2]}`,
  );

  const comparable = ours.filter(({ set }) => set.oneSize);
  const theirs = Object.entries(packers).map(([name, pack]) => {
    const given = comparable.filter(({ set }) => piecesOf(set) <= (mostPieces[name] ?? Infinity));
    for (const { set } of given) if (piecesOf(set) < 300) pack(set); // warm
    const runs = given.map(({ set, sheets: least }) => {
      const { value: sheets, milliseconds } = atBest(() => pack(set));
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
  const ratiosOf = (all: readonly { readonly set: PracticalSet; readonly milliseconds: number }[]) =>
    all
      .filter(({ set }) => set.oneSize)
      .map(({ set, milliseconds }) => {
        const rivals = theirs.flatMap(({ runs }) => runs.find((run) => run.set === set)?.milliseconds ?? []);
        return milliseconds / Math.min(...rivals);
      });
  console.log(
    `    time / that of the fastest of them: first plan ${three(quantile(ratiosOf(firsts), 0.5))} at the median, ` +
      `plan and proof ${three(quantile(ratiosOf(ours), 0.5))}`,
  );
}

/** The least of five times: what is short is easily disturbed. */
function atBest<T>(run: () => T): { readonly value: T; readonly milliseconds: number } {
  const runs = Array.from({ length: 5 }, () => timed(run));
  return { value: runs[0]!.value, milliseconds: Math.min(...runs.map(({ milliseconds }) => milliseconds)) };
}

function sound(set: PracticalSet, plan: CuttingPlan): void {
  const faults = faultsOf(set, plan);
  if (faults.length > 0) throw new Error(`seed ${set.seed}: ${faults.join(', ')}`);
}

function sheetsOf(plan: CuttingPlan): number {
  return sum(plan.patterns.map(({ times }) => times));
}

function piecesOf(set: PracticalSet): number {
  return sum(set.items.map(({ need }) => need));
}
