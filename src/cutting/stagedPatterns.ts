import type { Axis } from '../measure/index.ts';
import { mostOf, type WorkPrices } from './bestStaged.ts';
import type { CutTree } from './cutTree.ts';
import type { StagedNode, StagedSheet } from './stagedSheet.ts';

/** A way to cut one sheet in stages. */
export interface StagedPattern {
  /** By item, what counts of what comes out: no item beyond its cap. */
  readonly made: readonly number[];
  readonly passes: number;
  readonly turns: number;
  /** Area of the largest rest that is useful; 0: none is. */
  readonly rest: number;
  readonly how: How;
}

/** How a workpiece is taken apart. */
export type How =
  | { readonly kind: 'rest' }
  | { readonly kind: 'piece'; readonly item: number; readonly turned: boolean }
  | {
      readonly kind: 'cut';
      readonly axis: Axis;
      readonly set: number;
      readonly first: How;
      readonly second: How;
    };

export interface StagedPatternsRequest {
  readonly staged: StagedSheet;
  readonly caps: readonly number[];
  /** Shortest side of a rest that is useful. */
  readonly useful: number;
  /** How much less than the best a pattern may bring at these prices, and the values of `stagedValues` for them. */
  readonly prices: WorkPrices;
  readonly slack: number;
  readonly values: Float64Array;
  /** What a useful rest brings for its area. */
  readonly restPrice: number;
  /** Pairs of ways combined at most. */
  readonly combinations: number;
}

/**
 * For everything that can come out of the sheet within the slack, the way whose passes and quarter turns take least,
 * less what its largest useful rest brings; `null` when the limit of work was met.
 */
export function stagedPatterns(
  request: StagedPatternsRequest,
): { readonly patterns: readonly StagedPattern[]; readonly combinations: number } | null {
  const { staged, caps, useful, prices, values } = request;
  const { items, pass, turn } = prices;
  const { nodes, whole } = staged;
  if (whole < 0) return { patterns: [], combinations: 0 };
  const slacks = slacksOf(request);
  const radix = radixOf(caps);
  const heavy = heavinessBy(prices, request.restPrice);
  if (radix === null) return null;
  let left = request.combinations;

  const nothing = (width: number, height: number): Way => ({
    key: 0,
    made: caps.map(() => 0),
    value: 0,
    passes: 0,
    turns: 0,
    rest: Math.min(width, height) >= useful ? width * height : 0,
    begins: null,
    how: { kind: 'rest' },
  });
  const seen: Seen[] = [];

  for (const [index, node] of nodes.entries()) {
    const slack = slacks[index]!;
    if (slack < 0) {
      seen.push(unseen);
      continue;
    }
    const least = mostOf(values, index) - slack;
    const ways = new Ways(caps, prices, radix, heavy);
    if (0 >= least) ways.offer(nothing(node.width, node.height));
    for (const { item, turned } of node.pieces) {
      const made = caps.map((_, other) => (other === item ? Math.min(1, caps[item]!) : 0));
      const way: Way = {
        key: radix[item]! * made[item]!,
        made,
        value: made[item]! * items[item]!,
        passes: 0,
        turns: 0,
        rest: 0,
        begins: null,
        how: { kind: 'piece', item, turned },
      };
      if (way.value >= least) ways.offer(way);
    }
    if (node.later >= 0) for (const way of seen[node.later]!.own) if (way.value >= least) ways.offer(way);
    for (const { axis, set, first, second } of node.cuts) {
      const secondSize = sizeAfter(node, axis, set);
      const firsts = seen[first]!.measuredAlong(axis);
      const seconds = second < 0 ? [nothing(...secondSize)] : seen[second]!.remainingAlong(axis);
      for (const a of firsts) {
        if (a.key === 0) continue;
        for (const b of seconds) {
          if (left-- <= 0) return null;
          // Capped counts bring no more than the sum; those that bring most stand first.
          if (a.value + b.value - pass < least) break;
          ways.offerTogether(a, b, axis, set, least);
        }
      }
    }
    const own = ways.all();
    left -= own.length;
    seen.push(new Seen(own, turn, heavy));
  }
  return { patterns: unexceeded([...seen[whole]!.own]), combinations: request.combinations - left };
}

/** The tree of a pattern; a row's cuts become one node, in their order. */
export function treeOfStaged(how: StagedPattern['how'], width: number, height: number): CutTree {
  if (how.kind === 'rest') return { kind: 'rest', width, height };
  if (how.kind === 'piece') return { kind: 'piece', width, height, item: how.item, turned: how.turned };
  const { axis } = how;
  const parts: CutTree[] = [];
  let room = { width, height };
  let remains: How = how;
  while (remains.kind === 'cut' && remains.axis === axis) {
    const part = { ...room, [axis]: remains.set };
    parts.push(treeOfStaged(remains.first, part.width, part.height));
    room = { ...room, [axis]: room[axis] - remains.set };
    remains = remains.second;
  }
  parts.push(treeOfStaged(remains, room.width, room.height));
  return { kind: 'cut', width, height, axis, parts };
}

/** A pattern of a workpiece as it is put together. */
interface Way extends StagedPattern {
  /** One number for `made`. */
  readonly key: number;
  /** What it brings. */
  readonly value: number;
  /** The axis of its first cut; `null`: it is not cut. */
  readonly begins: Axis | null;
}

/** The least work for each `made` and beginning. */
class Ways {
  private readonly best = {
    none: new Map<number, Way>(),
    width: new Map<number, Way>(),
    height: new Map<number, Way>(),
  };

  constructor(
    private readonly caps: readonly number[],
    private readonly prices: WorkPrices,
    private readonly radix: readonly number[],
    private readonly heavy: Heaviness,
  ) {}

  offer(way: Way): void {
    const of = this.best[way.begins ?? 'none'];
    const known = of.get(way.key);
    if (known === undefined || this.heavy(way) < this.heavy(known)) of.set(way.key, way);
  }

  /** Two ways for the parts of one cut; nothing where they bring less than `least` together. */
  offerTogether(a: Way, b: Way, axis: Axis, set: number, least: number): void {
    const { caps, prices, radix } = this;
    const passes = a.passes + b.passes + 1;
    const turns = a.turns + b.turns;
    let key = 0;
    let value = -passes * prices.pass - turns * prices.turn;
    for (let item = 0; item < caps.length; item++) {
      const count = Math.min(caps[item]!, a.made[item]! + b.made[item]!);
      key += count * radix[item]!;
      value += count * prices.items[item]!;
    }
    if (value < least) return;
    const rest = Math.max(a.rest, b.rest);
    const known = this.best[axis].get(key);
    if (known !== undefined && this.heavy({ passes, turns, rest }) >= this.heavy(known)) return;
    const made = caps.map((cap, item) => Math.min(cap, a.made[item]! + b.made[item]!));
    const how: How = { kind: 'cut', axis, set, first: a.how, second: b.how };
    this.best[axis].set(key, { key, made, value, passes, turns, rest, begins: axis, how });
  }

  all(): readonly Way[] {
    return [...this.best.none.values(), ...this.best.width.values(), ...this.best.height.values()];
  }
}

/** The ways of a node; and as seen by a cut along an axis, those that bring most first. */
class Seen {
  private readonly known = new Map<string, readonly Way[]>();

  constructor(
    readonly own: readonly Way[],
    private readonly turn: number,
    private readonly heavy: Heaviness,
  ) {}

  /**
   * As the part that was measured off, which is not divided along the same axis again: its parts would be measured
   * off at once.
   */
  measuredAlong(axis: Axis): readonly Way[] {
    return this.from(`measured ${axis}`, axis, () => this.own.filter((way) => way.begins !== axis));
  }

  remainingAlong(axis: Axis): readonly Way[] {
    return this.from(`remaining ${axis}`, axis, () => this.own);
  }

  private from(key: string, axis: Axis, ways: () => readonly Way[]): readonly Way[] {
    const before = this.known.get(key);
    if (before !== undefined) return before;
    // Beginning along the other axis takes a quarter turn.
    const best = new Map<number, Way>();
    for (const way of ways()) {
      const turned = way.begins !== null && way.begins !== axis;
      const here = turned ? { ...way, turns: way.turns + 1, value: way.value - this.turn } : way;
      const other = best.get(way.key);
      if (other === undefined || this.heavy(here) < this.heavy(other)) best.set(way.key, here);
    }
    const kept = unexceeded([...best.values()]).sort((a, b) => b.value - a.value);
    this.known.set(key, kept);
    return kept;
  }
}

/** Without ways that make no more than another for no less work. */
function unexceeded(ways: Way[]): Way[] {
  if (ways.length > 100) return ways;
  ways.sort((a, b) => a.passes - b.passes || a.turns - b.turns || b.value - a.value || b.rest - a.rest);
  const kept: Way[] = [];
  for (const way of ways) {
    const better = kept.some(
      (other) => other.rest >= way.rest && other.made.every((count, item) => count >= way.made[item]!),
    );
    if (!better) kept.push(way);
  }
  return kept;
}

type Heaviness = (way: Pick<Way, 'passes' | 'turns' | 'rest'>) => number;

const unseen = new Seen([], 0, () => 0);

function heavinessBy({ pass, turn }: WorkPrices, restPrice: number): Heaviness {
  return ({ passes, turns, rest }) => passes * pass + turns * turn - rest * restPrice;
}

/** `null` when the counts do not fit one number. */
function radixOf(caps: readonly number[]): readonly number[] | null {
  const radix: number[] = [];
  let next = 1;
  for (const cap of caps) {
    radix.push(next);
    next *= cap + 1;
  }
  return next <= Number.MAX_SAFE_INTEGER ? radix : null;
}

/** By node, how much less than the most it may bring in a sheet within the slack; -1: it cannot occur. */
function slacksOf({ staged, values, slack, prices }: StagedPatternsRequest): Float64Array {
  const { nodes, whole } = staged;
  const slacks = new Float64Array(nodes.length).fill(-1);
  slacks[whole] = slack;
  const most = (node: number) => (node < 0 ? 0 : mostOf(values, node));
  for (let index = nodes.length - 1; index >= 0; index--) {
    const allowed = slacks[index]!;
    if (allowed < 0) continue;
    const { cuts, later } = nodes[index]!;
    const value = most(index);
    const pass = (part: number, rest: number) => {
      if (part >= 0 && rest > slacks[part]!) slacks[part] = rest;
    };
    if (later >= 0) pass(later, allowed - (value - most(later)));
    for (const { first, second } of cuts) {
      const rest = allowed - (value - (most(first) + most(second) - prices.pass));
      if (rest < 0) continue;
      pass(first, rest);
      pass(second, rest);
    }
  }
  return slacks;
}

function sizeAfter({ width, height }: StagedNode, axis: Axis, set: number): readonly [number, number] {
  return axis === 'width' ? [width - set, height] : [width, height - set];
}
