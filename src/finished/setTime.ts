import type { Arrangement, Layout } from '../layout/index.ts';
import {
  bestLine,
  fastestLots,
  fastestRuns,
  type LineTask,
  type LineTimes,
  type LotOrder,
  lineTimes,
  type Run,
  type RunWork,
  runsInOrder,
  type Station,
} from '../making/index.ts';
import { type Assembly, assemblyOf } from './assemblySteps.ts';
import { rulesFor, runsOfSet } from './runsOfSet.ts';
import { type Task, tasksOf, wholeOf } from './tasks.ts';

/** How long a set takes, all in whole seconds of work without breaks. What a task takes is an estimate; the rest follows exactly. */
export interface SetTime {
  /** In the order that guide and bench have. */
  readonly tasks: readonly Task[];
  readonly helpers: number;
  /** The work of one card, with its share of cutting. */
  readonly card: number;
  /** The work of the whole set, for one pair of hands. */
  readonly work: number;
  /** Each helper makes her share of the cards from beginning to end. */
  readonly hands: HandsTime;
  /** The cards go through stations; `null`: there are none. */
  readonly line: LineTime | null;
  /** Of two helpers one makes parts ready and the other puts them on; `null`: they are not two, or nothing is made ready. */
  readonly pair: PairTime | null;
  /** Minutes after the last part is on until all holds for good; closing comes after that. 0: no waiting. */
  readonly dry: number;
  /** Closing the cards once they are dry, by all helpers; `null`: it needs no waiting and is among the tasks of the others. */
  readonly closing: number | null;
}

export interface HandsTime {
  /** Of the cards that each makes; the largest share where they are not even. */
  readonly cards: number;
  /** Made so many at a time, where there is no room for more to dry; `null`: all in a row. */
  readonly batch: number | null;
  /** One batch, task by task, in the fastest order. */
  readonly runs: readonly RunTime[];
  /** All batches together. */
  readonly finish: number;
  readonly idle: number;
  readonly bound: number;
  readonly isProved: boolean;
  /** In the order that guide and bench have. */
  readonly guided: { readonly finish: number; readonly idle: number };
  /** The order of its parts, where it is another than the guide's; else `null`. */
  readonly order: readonly string[] | null;
}

/** When a task is done for a whole batch. */
export interface RunTime extends Omit<Run, 'task'> {
  readonly task: string;
  /** Tasks that had to set for it, where that was to be looked to. */
  readonly waitsFor: readonly string[];
  /** Where some task waits for it: from when on the first of its cards dries, and when the last has set; else `null`. */
  readonly dries: { readonly from: number; readonly to: number } | null;
}

export interface LineTime {
  /** What has to be cut before the line begins, for one pair of hands. */
  readonly cutting: number;
  readonly stations: readonly StationTime[];
  readonly finish: number;
  readonly bound: number;
  readonly isProved: boolean;
  /** Where cards lie to dry, between the station before and this one (from 0): how many at once, and all the while. */
  readonly lying: readonly (LineTimes['lying'][number] & { readonly from: number; readonly to: number })[];
  /** Where there is room for so few that it costs time: when it would be done with room for all. */
  readonly withRoom: number | null;
}

export interface StationTime {
  /** Ids of tasks. */
  readonly tasks: readonly string[];
  readonly helpers: number;
  /** For one card and one helper, waiting over its own glue counted. */
  readonly span: number;
  /** Of that, waiting over its own glue. */
  readonly over: number;
  /** When it takes up its first card, and is done with its last. */
  readonly begins: number;
  readonly ends: number;
}

export interface PairTime extends Omit<LotOrder, 'times'> {
  /** By the ids of parts; `''`: the base. */
  readonly times: readonly {
    readonly part: string;
    readonly first: number;
    readonly second: number;
    readonly end: number;
  }[];
  /** What has to be cut before, for one pair of hands. */
  readonly cutting: number;
}

/** How long the set takes to make, as its layout says it is made. */
export function setTimeOf(layout: Layout, arrangement: Arrangement): SetTime {
  const tasks = tasksOf(layout, arrangement);
  const assembly = assemblyOf(layout, arrangement);
  const helpers = layout.making?.helpers ?? 1;
  const stations = layout.making?.stations ?? null;
  const isClosedLater = assembly.dry > 0;
  const now = tasks.filter(({ kind }) => kind !== 'close' || !isClosedLater);
  const work = tasks.reduce((sum, task) => sum + wholeOf(task), 0);
  const closing = tasks.find(({ kind }) => kind === 'close');
  return {
    tasks,
    helpers,
    card: Math.round(work / layout.cards),
    work,
    hands: handsTime(layout, arrangement, { tasks: now, assembly, helpers }),
    line: stations === null ? null : lineOf(layout, { tasks: now, assembly, helpers, stations }),
    pair: helpers === 2 && stations === null ? pairTime(layout, arrangement, now) : null,
    dry: assembly.dry,
    closing: isClosedLater && closing !== undefined ? Math.ceil(wholeOf(closing) / helpers) : null,
  };
}

interface Asked {
  readonly tasks: readonly Task[];
  readonly assembly: Assembly;
  readonly helpers: number;
}

function handsTime(layout: Layout, arrangement: Arrangement, { tasks, assembly, helpers }: Asked): HandsTime {
  const cards = Math.ceil(layout.cards / helpers);
  const room = layout.making?.dryAtOnce ?? null;
  const waits = assembly.steps.some(({ waitsFor }) => waitsFor.length > 0);
  const batch = room !== null && room < cards && waits ? room : null;
  const usual = tasks.map((_, at) => at);
  const timeOf = (share: number) => {
    const work = runsOfSet(layout, arrangement, tasks, share);
    const found = fastestRuns(work, usual);
    const guided = runsInOrder(work, usual);
    const idle = guided.reduce((sum, run) => sum + run.idle, 0);
    return { work, found, guided: { finish: guided.at(-1)?.end ?? 0, idle } };
  };
  const one = timeOf(batch ?? cards);
  const last = batch === null || cards % batch === 0 ? null : timeOf(cards % batch);
  const times = batch === null ? 1 : Math.floor(cards / batch);
  const all = (figure: (time: typeof one) => number) =>
    figure(one) * times + (last === null ? 0 : figure(last));
  const order = one.found.runs.flatMap(({ task }) => (tasks[task]!.kind === 'lay' ? [tasks[task]!.of] : []));
  const isOwn = order.every((id, at) => id === assembly.steps[at]!.part);
  return {
    cards,
    batch,
    runs: runTimes(one.work, one.found.runs),
    finish: all(({ found }) => found.finish),
    idle: all(({ found }) => found.idle),
    bound: all(({ found }) => found.bound),
    isProved: one.found.isProved && (last?.found.isProved ?? true),
    guided: { finish: all(({ guided }) => guided.finish), idle: all(({ guided }) => guided.idle) },
    order: isOwn ? null : order,
  };
}

function runTimes({ tasks, rules }: RunWork, runs: readonly Run[]): readonly RunTime[] {
  const waited = runs.map((run, at) =>
    rules
      .waitsFor(
        run.task,
        runs.slice(0, at).map(({ task }) => task),
      )
      .filter((task) => tasks[task]!.sets > 0),
  );
  return runs.map(({ task, start, end, idle }, at) => {
    const { id, seconds, sets } = tasks[task]!;
    const isWaitedFor = waited.some((those) => those.includes(task));
    return {
      task: id,
      start,
      end,
      idle,
      waitsFor: waited[at]!.map((other) => tasks[other]!.id),
      dries: isWaitedFor ? { from: start + seconds, to: end + sets } : null,
    };
  });
}

function lineOf(
  layout: Layout,
  { tasks, assembly, helpers, stations: wanted }: Asked & { readonly stations: number },
): LineTime {
  const own = tasks.filter(({ kind }) => kind !== 'cut');
  const steps = new Map(assembly.steps.map((step) => [step.part, step]));
  const laidAt = new Map(own.flatMap(({ kind, of }, at) => (kind === 'lay' ? [[of, at] as const] : [])));
  const numbers = new Map(assembly.steps.map(({ number, part }) => [number, part]));
  const lineTasks = own.map(({ id, kind, of, seconds }): LineTask => {
    const step = kind === 'lay' ? steps.get(of)! : null;
    return {
      id,
      seconds,
      sets: 60 * (step?.handle ?? 0),
      waitsFor: (step?.waitsFor ?? []).map((number) => laidAt.get(numbers.get(number)!)!),
    };
  });
  const { cards } = layout;
  const room = layout.making?.dryAtOnce ?? null;
  const cutting = tasks.reduce((sum, task) => sum + (task.kind === 'cut' ? wholeOf(task) : 0), 0);
  if (lineTasks.length === 0)
    return { cutting, stations: [], finish: 0, bound: 0, isProved: true, lying: [], withRoom: null };
  const line = bestLine(lineTasks, { cards, helpers, stations: wanted, room });
  const times = lineTimes(lineTasks, line.stations, { cards, room });
  const withRoom =
    room === null
      ? line.finish
      : bestLine(lineTasks, { cards, helpers, stations: wanted, room: null }).finish;
  return {
    cutting,
    stations: line.stations.map((station, at) => stationTime(lineTasks, station, times, at)),
    finish: line.finish,
    bound: line.bound,
    isProved: line.isProved,
    lying: times.lying.map((one) => ({
      ...one,
      from: times.ends[one.station - 1]![0]!,
      to: times.starts[one.station]!.at(-1)!,
    })),
    withRoom: withRoom < line.finish ? withRoom : null,
  };
}

function stationTime(
  tasks: readonly LineTask[],
  { from, to, helpers }: Station,
  { starts, ends, spans }: LineTimes,
  at: number,
): StationTime {
  const own = tasks.slice(from, to);
  const span = spans[at]!;
  return {
    tasks: own.map(({ id }) => id),
    helpers,
    span,
    over: span - own.reduce((sum, { seconds }) => sum + seconds, 0),
    begins: starts[at]![0] ?? 0,
    ends: ends[at]!.at(-1) ?? 0,
  };
}

/** One makes base and parts ready, part by part for all cards; the other puts them on, likewise. */
function pairTime(layout: Layout, arrangement: Arrangement, tasks: readonly Task[]): PairTime | null {
  const lays = tasks.filter(({ kind }) => kind === 'lay');
  const scoring = tasks.find(({ kind }) => kind === 'score');
  const isReadied = tasks.some(({ kind }) => kind === 'ready');
  if (lays.length === 0 || !isReadied) return null;
  const work = runsOfSet(layout, arrangement, lays, layout.cards);
  const readying = (id: string) => {
    const task = tasks.find(({ kind, of }) => kind === 'ready' && of === id);
    return task === undefined ? 0 : wholeOf(task);
  };
  const lots = [
    ...lays.map((task) => ({ id: task.of, first: readying(task.of), second: wholeOf(task), wait: 0 })),
    ...(scoring === undefined ? [] : [{ id: '', first: wholeOf(scoring), second: 0, wait: 0 }]),
  ];
  const rules = rulesFor(layout, arrangement, [...lays, ...(scoring === undefined ? [] : [scoring])]);
  // What lies under another part has to be made ready before that is put on; the base before what comes onto the card.
  const isReadyUnder = (lot: number, done: readonly number[]) => {
    const on = layout.parts.find(({ id }) => id === lots[lot]!.id)?.on;
    const under = lots.findIndex(({ id }) => id === on);
    return under === -1 || readying(lots[under]!.id) === 0 || done.includes(under);
  };
  const laysAt = (done: readonly number[]) => done.filter((lot) => lot < lays.length);
  const found = fastestLots(lots, {
    rules: {
      mayFollow: (lot, done) => rules.mayFollow(lot, done) && isReadyUnder(lot, done),
      notBefore: (lot, before) => {
        if (lot >= lays.length) return 0;
        const waited = rules.waitsFor(lot, laysAt(before.map((each) => each.lot)));
        return waited.reduce((latest, other) => {
          const time = before.find((each) => each.lot === other)!;
          const { seconds, sets } = work.tasks[other]!;
          const { seconds: own, whole } = work.tasks[lot]!;
          return Math.max(latest, time.second + seconds + sets, time.end + sets - (whole - own));
        }, 0);
      },
    },
    usual: [...(scoring === undefined ? [] : [lays.length]), ...lays.map((_, at) => at)],
  });
  const { times, ...figures } = found;
  return {
    ...figures,
    times: times.map(({ lot, ...time }) => ({ part: lots[lot]!.id, ...time })),
    cutting: tasks.reduce((sum, task) => sum + (task.kind === 'cut' ? wholeOf(task) : 0), 0),
  };
}
