import type { Arrangement, Layout } from '../layout/index.ts';
import type { RunRules, RunTask, RunWork } from '../making/index.ts';
import { assemblyOrder } from './assemblyOrder.ts';
import { assemblyOf, isMadeReady } from './assemblySteps.ts';
import { joinedOnto } from './joined.ts';
import { type Task, wholeOf } from './tasks.ts';

/**
 * The tasks of a set as runs of one pair of hands that makes `share` of its cards, and what their order has to keep: a
 * part is cut before it is made ready, made ready before it is put on or lies under another, and put on as the rules
 * of the assembly want it, and as the layout names it; whatever is turned over has to have set.
 */
export function runsOfSet(
  layout: Layout,
  arrangement: Arrangement,
  tasks: readonly Task[],
  share: number,
): RunWork {
  const minutes = new Map(assemblyOf(layout, arrangement).steps.map(({ part, handle }) => [part, handle]));
  return {
    tasks: tasks.map((task): RunTask => {
      const whole = Math.round((wholeOf(task) * share) / layout.cards);
      const sets = task.kind === 'lay' ? 60 * (minutes.get(task.of) ?? 0) : 0;
      return { id: task.id, seconds: task.kind === 'cut' ? whole / share : task.seconds, whole, sets };
    }),
    rules: rulesFor(layout, arrangement, tasks),
  };
}

/** What the order of these tasks has to keep, told by their places in the list. */
export function rulesFor(
  layout: Layout,
  arrangement: Arrangement,
  tasks: readonly Pick<Task, 'id' | 'kind' | 'of'>[],
): RunRules {
  const { parts, rules, refused } = assemblyOrder(layout, arrangement);
  // Where no order can be, the one that stands in for it is kept; where one is named, what is named.
  const isStandIn = refused.some((refusal) => refusal.of === 'pile');
  const named = isStandIn ? parts : refused.length === 0 ? (layout.order ?? []) : [];
  const byId = new Map(layout.parts.map((part) => [part.id, part]));
  const faces = new Map(arrangement.parts.map(({ part, face }) => [part.id, face]));
  const places = new Map(tasks.map(({ id }, at) => [id, at]));
  const needs = (id: string, done: ReadonlySet<number>) => {
    const at = places.get(id);
    return at === undefined || done.has(at);
  };

  interface Standing {
    readonly laid: ReadonlySet<string>;
    readonly isBackUp: boolean;
  }
  const standings = new Map<string, Standing>();
  const standingAfter = (done: readonly number[]): Standing => {
    const lays = done.flatMap((at) => (tasks[at]!.kind === 'lay' ? [tasks[at]!.of] : []));
    const key = lays.join(' ');
    const known = standings.get(key);
    if (known !== undefined) return known;
    let [laid, isBackUp]: [ReadonlySet<string>, boolean] = [new Set(), false];
    for (const id of lays) {
      ({ isBackUp } = joinedOnto(layout, faces, id, { laid, isBackUp }));
      laid = new Set([...laid, id]);
    }
    standings.set(key, { laid, isBackUp });
    return { laid, isBackUp };
  };

  const isCut = (id: string, done: ReadonlySet<number>) =>
    (byId.get(id)?.papers ?? []).every((paper) => needs(`cut ${paper}`, done));
  const isReady = (id: string, done: ReadonlySet<number>) =>
    !byId.has(id) || (isCut(id, done) && (!isMadeReady(byId.get(id)!) || needs(`ready ${id}`, done)));
  const mayLie = (id: string, laid: ReadonlySet<string>) =>
    rules.every(
      ({ first, before }) =>
        isStandIn ||
        first === id ||
        laid.has(first) ||
        !before.includes(id) ||
        before.some((other) => other !== id && !laid.has(other)),
    ) &&
    (!named.includes(id) || named.slice(0, named.indexOf(id)).every((other) => laid.has(other)));

  return {
    mayFollow(at, order) {
      const { kind, of } = tasks[at]!;
      const done = new Set(order);
      switch (kind) {
        case 'cut':
          return true;
        case 'score':
          return layout.base.papers.every((paper) => needs(`cut ${paper}`, done));
        case 'ready':
          return isCut(of, done);
        case 'lay': {
          const standing = standingAfter(order);
          const { offCard } = joinedOnto(layout, faces, of, standing);
          const hasBase =
            offCard !== null ||
            (needs('score', done) && layout.base.papers.every((paper) => needs(`cut ${paper}`, done)));
          return hasBase && isReady(of, done) && isReady(byId.get(of)!.on, done) && mayLie(of, standing.laid);
        }
        case 'close':
          return done.size === tasks.length - 1;
      }
    },
    waitsFor(at, order) {
      const { kind, of } = tasks[at]!;
      if (kind !== 'lay') return [];
      const { turnedWith } = joinedOnto(layout, faces, of, standingAfter(order));
      return turnedWith.flatMap((id) => places.get(`lay ${id}`) ?? []);
    },
    stateOf: (order) => String(standingAfter(order).isBackUp),
  };
}
