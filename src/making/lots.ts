/** What two people make one after the other, as one lot: the first has it for so long, then the second. In whole seconds. */
export interface Lot {
  readonly id: string;
  readonly first: number;
  readonly second: number;
  /** What has to pass between the two, such as drying; 0: nothing. */
  readonly wait: number;
}

/** When a lot is begun and done, in seconds from the beginning. */
export interface LotTimes {
  readonly lot: number;
  readonly first: number;
  readonly second: number;
  readonly end: number;
}

/** An order of lots, the same for both. */
export interface LotOrder {
  readonly times: readonly LotTimes[];
  readonly finish: number;
  /** How long the second waits in between, her beginning counted. */
  readonly idle: number;
  /** No order in which both take up the lots alike ends sooner. */
  readonly bound: number;
  readonly isProved: boolean;
}

/** What an order of lots has to keep beside the times of the lots themselves. */
export interface LotRules {
  /** Whether a lot may come next when those in `done` have come, in their order. */
  mayFollow(lot: number, done: readonly number[]): boolean;
  /** When the second may begin with a lot at the soonest, after these; 0: at once. */
  notBefore(lot: number, before: readonly LotTimes[]): number;
}

/** The lots in that order, told by their places in the list, each begun as soon as it may be. */
export function lotsInOrder(
  lots: readonly Lot[],
  order: readonly number[],
  rules: Pick<LotRules, 'notBefore'> = noRules,
): readonly LotTimes[] {
  const times: LotTimes[] = [];
  let free = 0;
  for (const lot of order) {
    const { first, second, wait } = lots[lot]!;
    const start = free;
    free += first;
    const then = Math.max(times.at(-1)?.end ?? 0, free + wait, rules.notBefore(lot, times));
    times.push({ lot, first: start, second: then, end: then + second });
  }
  return times;
}

const noRules: LotRules = { mayFollow: () => true, notBefore: () => 0 };

/**
 * The order of lots that ends soonest when both people take them up in the same order.
 *
 * Johnson's rule (S. M. Johnson, "Optimal two- and three-stage production schedules with setup times included", 1954),
 * with waits as L. G. Mitten has them ("Sequencing n jobs on two machines with arbitrary time lags", 1959): the rule on
 * first + wait and wait + second. Where there are rules besides, its answer is what no order beats; if that does not
 * keep them, the orders that do are searched by branch and bound, from `usual` on, which keeps them, up to `mostNodes`
 * steps.
 */
export function fastestLots(
  lots: readonly Lot[],
  {
    rules = noRules,
    usual = lots.map((_, lot) => lot),
    mostNodes = 60_000,
  }: {
    readonly rules?: LotRules;
    readonly usual?: readonly number[];
    readonly mostNodes?: number;
  } = {},
): LotOrder {
  const ruled = byRule(
    lots,
    lots.map((_, lot) => lot),
  );
  const unbound = finishOf(lotsInOrder(lots, ruled));
  const isAllowed = ruled.every((lot, at) => rules.mayFollow(lot, ruled.slice(0, at)));
  let best = isAllowed ? ruled : usual;
  let least = finishOf(lotsInOrder(lots, best, rules));
  let nodes = 0;
  const follow = (done: readonly number[], left: readonly number[]): void => {
    nodes += 1;
    if (nodes > mostNodes || least === unbound) return;
    const rest = byRule(lots, left);
    if (soonest(lots, done, rest, rules) >= least) return;
    if (left.length === 0) {
      best = done;
      least = finishOf(lotsInOrder(lots, done, rules));
      return;
    }
    for (const lot of rest)
      if (rules.mayFollow(lot, done))
        follow(
          [...done, lot],
          left.filter((each) => each !== lot),
        );
  };
  follow([], ruled);

  const times = lotsInOrder(lots, best, rules);
  const work = lots.reduce((sum, { second }) => sum + second, 0);
  const isProved = nodes <= mostNodes || least === unbound;
  return { times, finish: least, idle: least - work, bound: isProved ? least : unbound, isProved };
}

/** What no order beats that begins so: the rest by the rule alone, which is best from any beginning. */
function soonest(
  lots: readonly Lot[],
  done: readonly number[],
  rest: readonly number[],
  rules: LotRules,
): number {
  const begun = lotsInOrder(lots, done, rules);
  return finishOf(
    lotsInOrder(lots, [...done, ...rest], {
      notBefore: (_, before) => begun[before.length]?.second ?? 0,
    }),
  );
}

/** Johnson's order of some of the lots. */
function byRule(lots: readonly Lot[], some: readonly number[]): readonly number[] {
  const before = (lot: number) => lots[lot]!.first + lots[lot]!.wait;
  const after = (lot: number) => lots[lot]!.wait + lots[lot]!.second;
  const early = some.filter((lot) => before(lot) <= after(lot));
  const late = some.filter((lot) => before(lot) > after(lot));
  return [
    ...early.toSorted((one, other) => before(one) - before(other)),
    ...late.toSorted((one, other) => after(other) - after(one)),
  ];
}

function finishOf(times: readonly LotTimes[]): number {
  return times.at(-1)?.end ?? 0;
}
