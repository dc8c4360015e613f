import { bestOrder, precedenceOf, settingsInOrder } from './precedence.ts';
import { sidesOf, viableSets } from './settingSets.ts';
import { treeOfStaged } from './stagedPatterns.ts';
import {
  type RelaxedPlan,
  relaxedPlan,
  type StagedPlan,
  type StagedRequest,
  type WorkWeights,
  wholePlan,
} from './stagedPlan.ts';

/** A plan with the settings it needs. */
export interface KindPlan extends StagedPlan {
  readonly settings: number;
  /** The relaxed plan that it was found near. */
  readonly relaxed: RelaxedPlan;
}

/** Plans that are kind to cut, the kindest first, and how much kinder others could be. */
export interface KindPlans {
  readonly plans: readonly KindPlan[];
  /** No plan that only measures off sides of items has fewer settings. */
  readonly settingsBound: number;
  /** No such plan of `settingsBound` settings has fewer passes. */
  readonly passesBound: number;
}

/**
 * Looks for the plan with fewest settings, then fewest passes, then fewest quarter turns, that costs no more than
 * the request allows.
 *
 * Goes through the sets of lengths that could do, smallest sets first. For each a linear programme over everything
 * that can be cut at these settings, in any order, tells whether a plan is possible and how light it can be; whole
 * plans are looked for near it. Where the plan needs a length before and after another, an order of the lengths is
 * fixed and the same done in stages.
 */
export function fewestSettings(request: StagedRequest): KindPlans {
  const { task, work } = request;
  const sides = sidesOf(task);
  const plans: KindPlan[] = [];
  let settingsBound = 0;
  let passesBound = 0;
  const best = () =>
    plans.reduce<KindPlan | null>(
      (top, plan) => (top === null || compareKindness(plan, top, request.weights) < 0 ? plan : top),
      null,
    );

  if (sides.length > manySides) plans.push(...descended(request, sides));
  for (let size = 0; size <= sides.length; size++) {
    if ((best()?.settings ?? Number.POSITIVE_INFINITY) < size || work.left <= 0) break;
    const open: RelaxedPlan[] = [];
    let complete = true;
    for (const set of viableSets(task, sides, size)) {
      const relaxed = work.left > 0 ? relaxedPlan(request, [set]) : 'unknown';
      if (relaxed === 'unknown') complete = false;
      else if (relaxed !== 'none') open.push(relaxed);
    }
    if (open.length === 0 && complete && settingsBound === size) settingsBound = size + 1;
    if (open.length === 0) continue;
    open.sort((a, b) => a.work - b.work);
    if (size === settingsBound && complete) passesBound = Math.min(...open.map((one) => one.passesBound));
    for (const relaxed of open.slice(0, mostSets)) {
      const top = best();
      if (work.left <= 0 || (top !== null && top.settings <= size && top.passes < relaxed.passesBound)) break;
      plans.push(...plansNear(request, relaxed, top?.settings ?? Number.POSITIVE_INFINITY));
    }
  }
  plans.sort((a, b) => compareKindness(a, b, request.weights));
  return { plans, settingsBound, passesBound };
}

/** With more sides than this a good plan is looked for before all small sets are gone through. */
const manySides = 6;

/** Sets of one size that are tried, at most. */
const mostSets = 4;

/**
 * Plans that are light by the weights of the request, however many settings they need: with every side of an item,
 * and every sum of two, as a setting.
 */
export function lightestWork(request: StagedRequest): readonly StagedPlan[] {
  const sides = sidesOf(request.task);
  const sums = sides.flatMap((side) => sides.map((other) => side + other));
  const longest = Math.max(...request.task.sheets.flatMap(({ width, height }) => [width, height]));
  const { reach } = request.task.limits;
  const able = (length: number) => length < longest && (reach === null || length <= reach);
  for (const lengths of [[...new Set([...sides, ...sums])].filter(able), sides]) {
    const relaxed = relaxedPlan(request, [lengths]);
    const plan = typeof relaxed === 'string' ? null : wholePlan(request, relaxed);
    if (plan !== null) return [plan];
  }
  return [];
}

/** Plans with all lengths, and with as many left out, one after another, as can be. */
function descended(request: StagedRequest, sides: readonly number[]): KindPlan[] {
  const { task, work } = request;
  const relaxedBy = (set: readonly number[]) => {
    const relaxed = work.left > 0 ? relaxedPlan(request, [set]) : 'unknown';
    return typeof relaxed === 'string' ? null : relaxed;
  };
  let top = relaxedBy(sides);
  const plans: KindPlan[] = [];
  while (top !== null) {
    const lengths: readonly number[] = top.stages.flat();
    const known = plans.at(-1)?.settings ?? Number.POSITIVE_INFINITY;
    if (plans.length === 0) plans.push(...plansNear(request, top, known));
    const fewer = viableSets(task, lengths, lengths.length - 1)
      .map(relaxedBy)
      .filter((one) => one !== null);
    fewer.sort((a, b) => a.work - b.work);
    if (fewer.length === 0) {
      plans.push(...plansNear(request, top, known));
      break;
    }
    top = fewer[0]!;
  }
  return plans;
}

/**
 * Plans with the settings of a relaxed one: in whatever order, and in a fixed one where that needs fewer settings;
 * then with one length set twice. None of `enough` settings or more is looked for.
 */
function plansNear(request: StagedRequest, relaxed: RelaxedPlan, enough: number): KindPlan[] {
  const { task, work } = request;
  const lengths = relaxed.stages.flat();
  const weighed = relaxed.patterns.map(({ sheet, how }, index) => {
    const { width, height } = task.sheets[sheet]!;
    return { tree: treeOfStaged(how, width, height), weight: relaxed.times[index]! };
  });
  const first = bestOrder(lengths, precedenceOf(weighed));
  if (first === null) return [];
  const found: KindPlan[] = [];
  const add = (plan: StagedPlan | null, near: RelaxedPlan) => {
    if (plan === null) return null;
    const trees = plan.patterns.map(({ tree }) => tree);
    const order = bestOrder(lengths, precedenceOf(trees.map((tree) => ({ tree, weight: 1 }))));
    const settings = settingsInOrder(trees, order?.order ?? lengths).length;
    const kind = { ...plan, settings, relaxed: near };
    found.push(kind);
    return kind;
  };
  const free = add(wholePlan(request, relaxed), relaxed);
  if (free !== null && free.settings <= lengths.length) return found;

  const tried = new Set<string>();
  const inOrder = (order: readonly number[]) => {
    if (tried.has(order.join()) || work.left <= 0) return null;
    tried.add(order.join());
    const staged = relaxedPlan(
      request,
      order.map((set) => [set]),
    );
    return typeof staged === 'string' ? null : staged;
  };
  /** The lightest of some orders and of those got by moving one length, as long as that makes it lighter. */
  const lightest = (orders: readonly (readonly number[])[]) => {
    let top: { order: readonly number[]; staged: RelaxedPlan } | null = null;
    for (let next = orders; next.length > 0 && work.left > 0; ) {
      const before: RelaxedPlan | undefined = top?.staged;
      for (const order of next) {
        if (top !== null && top.staged.work < relaxed.work + 0.5) break;
        const staged = inOrder(order);
        if (staged !== null && (top === null || staged.work < top.staged.work - 1e-6))
          top = { order, staged };
      }
      next = top === null || top.staged === before ? [] : moved(top.order);
    }
    return top;
  };
  const once = lightest([first.order, ...moved(first.order)]);
  const plan = once === null ? null : add(wholePlan(request, once.staged), once.staged);
  if (plan !== null || lengths.length + 1 >= enough) return found;

  const order = once?.order ?? first.order;
  const twice = lightest(order.flatMap((length) => order.map((_, to) => order.toSpliced(to + 1, 0, length))));
  if (twice !== null) add(wholePlan(request, twice.staged), twice.staged);
  return found;
}

/** Every order that has one length at another place. */
function moved(order: readonly number[]): readonly (readonly number[])[] {
  return order.flatMap((length, from) => {
    const others = order.toSpliced(from, 1);
    return order.flatMap((_, to) => (to === from ? [] : [others.toSpliced(to, 0, length)]));
  });
}

function compareKindness(a: KindPlan, b: KindPlan, { pass, turn }: WorkWeights): number {
  return a.settings - b.settings || (a.passes - b.passes) * pass + (a.turns - b.turns) * turn;
}
