/** One task of a set when one pair of hands does it for all cards, one card after another: a run. Times in whole seconds. */
export interface RunTask {
  readonly id: string;
  /** For one card, and for all of them with whatever is made beyond. */
  readonly seconds: number;
  readonly whole: number;
  /** How long after it what it has put on a card has to set before the work can be turned over; 0: no time. */
  readonly sets: number;
}

/** What the order of the runs has to keep; tasks are told by their places in the list. */
export interface RunRules {
  /** Whether a task may be done when those in `done` are, in the order in which they were. */
  mayFollow(task: number, done: readonly number[]): boolean;
  /** Of those done, the tasks that have to have set on a card before this one begins with it. */
  waitsFor(task: number, done: readonly number[]): readonly number[];
  /** What `waitsFor` goes by beside which tasks are done: alike texts, alike answers. */
  stateOf(done: readonly number[]): string;
}

export interface RunWork {
  readonly tasks: readonly RunTask[];
  readonly rules: RunRules;
}

/** When one run begins and ends, in seconds from the beginning of the work. */
export interface Run {
  readonly task: number;
  readonly start: number;
  readonly end: number;
  /** How long the hands have nothing to do before it. */
  readonly idle: number;
}

/** An order of the runs. */
export interface Runs {
  readonly runs: readonly Run[];
  /** When the last has ended. */
  readonly finish: number;
  readonly idle: number;
  /** No order that the rules allow ends sooner than this. */
  readonly bound: number;
  readonly isProved: boolean;
}

/**
 * The runs in that order, each begun as soon as it may be.
 *
 * Cards are taken up in one order throughout. So a run that waits for what an earlier one has put on may begin once
 * the first card has set, if it then reaches no card before its own has: with a run that takes longer for a card than
 * the earlier one, the first card decides, else the last.
 */
export function runsInOrder(work: RunWork, order: readonly number[]): readonly Run[] {
  const runs: Run[] = [];
  for (const task of order) runs.push(nextRun(work, task, runs));
  return runs;
}

/**
 * The order of the runs that ends soonest: `usual` where that leaves the hands nothing to wait for, else the best of all
 * orders that the rules allow, found by branch and bound. Two ways to the same tasks done are compared, and the one that
 * is nowhere sooner is given up. After `mostNodes` steps it stops with the best it has and says so; the bound is then
 * the work itself, which is never done faster by one pair of hands.
 */
export function fastestRuns(work: RunWork, usual: readonly number[], mostNodes = 60_000): Runs {
  const { tasks, rules } = work;
  const all = tasks.reduce((sum, { whole }) => sum + whole, 0);
  let best = runsInOrder(work, usual);
  let nodes = 0;
  /** For the same tasks done in the same state: when the hands are free, then when each task that sets has set. */
  const seen = new Map<string, (readonly number[])[]>();
  const setting = tasks.flatMap(({ sets }, task) => (sets > 0 ? [task] : []));

  const follow = (runs: readonly Run[], done: readonly number[], left: number): void => {
    nodes += 1;
    if (nodes > mostNodes || finishOf(best) === all) return;
    const now = finishOf(runs);
    if (left === 0) {
      if (now < finishOf(best)) best = runs;
      return;
    }
    if (now + left >= finishOf(best)) return;
    const key = `${done.toSorted((a, b) => a - b).join(' ')}/${rules.stateOf(done)}`;
    const clocks = [
      now,
      ...setting.map((task) => {
        const run = runs.find((each) => each.task === task);
        return run === undefined ? now : Math.max(now, run.end + tasks[task]!.sets);
      }),
    ];
    const others = seen.get(key) ?? [];
    if (others.some((other) => other.every((clock, at) => clock <= clocks[at]!))) return;
    seen.set(key, [...others.filter((other) => other.some((clock, at) => clock < clocks[at]!)), clocks]);
    usual
      .filter((task) => !done.includes(task) && rules.mayFollow(task, done))
      .map((task) => nextRun(work, task, runs))
      // What leaves the hands idle least comes first, else what is usual.
      .toSorted((one, other) => one.idle - other.idle)
      .forEach((run) => {
        follow([...runs, run], [...done, run.task], left - tasks[run.task]!.whole);
      });
  };
  follow([], [], all);

  const finish = finishOf(best);
  const isProved = finish === all || nodes <= mostNodes;
  return { runs: best, finish, idle: finish - all, bound: isProved ? finish : all, isProved };
}

function nextRun({ tasks, rules }: RunWork, task: number, before: readonly Run[]): Run {
  const own = tasks[task]!;
  const now = finishOf(before);
  const done = before.map((run) => run.task);
  const start = rules.waitsFor(task, done).reduce((latest, other) => {
    const run = before.find((each) => each.task === other)!;
    const { seconds, sets } = tasks[other]!;
    const first = run.start + seconds + sets;
    const last = run.end + sets - (own.whole - own.seconds);
    return Math.max(latest, first, last);
  }, now);
  return { task, start, end: start + own.whole, idle: start - now };
}

function finishOf(runs: readonly Run[]): number {
  return runs.at(-1)?.end ?? 0;
}
