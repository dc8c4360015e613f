import type { How, StagedPattern } from './stagedPatterns.ts';
import type { StagedNode, StagedSheet } from './stagedSheet.ts';

/** What one piece of each item brings, and what a pass and a quarter turn take. */
export interface WorkPrices {
  readonly items: readonly number[];
  readonly pass: number;
  readonly turn: number;
}

/**
 * By node, the most that can come of it at such prices, any number of each item being welcome: not cut, cut along the
 * width first, cut along the height first (three numbers for each node; minus infinity where that cannot be).
 */
export function stagedValues({ nodes }: StagedSheet, prices: WorkPrices): Float64Array {
  return valued(nodes, prices).values;
}

/** The most that can come of a node by its three values. */
export function mostOf(values: Float64Array, node: number): number {
  return Math.max(values[node * 3]!, values[node * 3 + 1]!, values[node * 3 + 2]!);
}

/**
 * The pattern that brings most at such prices, any number of each item being welcome; `null`: none brings anything.
 *
 * The counts are not capped.
 */
export function bestStaged({ nodes, whole }: StagedSheet, prices: WorkPrices): StagedPattern | null {
  if (whole < 0) return null;
  const { items, turn } = prices;
  const { values, reached } = valued(nodes, prices);
  const made = items.map(() => 0);
  let passes = 0;
  let turns = 0;
  const best = (node: number, choices: readonly { begins: number; less: number }[]): number =>
    choices.reduce(
      (top, { begins, less }) => {
        const value = values[node * 3 + begins]! - less;
        return value > top.value ? { begins, value } : top;
      },
      { begins: -1, value: Number.NEGATIVE_INFINITY },
    ).begins;
  const trace = (node: number, begins: number): How => {
    const { pieces, cuts, later } = nodes[node]!;
    const place = reached[node * 3 + begins]!;
    if (place === -2) return trace(later, begins);
    if (begins === 0) {
      const piece = place < 0 ? undefined : pieces[place];
      if (piece === undefined) return { kind: 'rest' };
      made[piece.item]!++;
      return { kind: 'piece', item: piece.item, turned: piece.turned };
    }
    const { axis, set, first, second } = cuts[place]!;
    const other = begins === 1 ? 2 : 1;
    passes++;
    const cutAcross = { begins: other, less: turn };
    const isPiece = nodes[first]!.pieces.length > 0;
    const firstBegins = best(first, isPiece ? [{ begins: 0, less: 0 }, cutAcross] : [cutAcross]);
    if (firstBegins === other) turns++;
    const secondBegins =
      second < 0 ? 0 : best(second, [{ begins: 0, less: 0 }, { begins, less: 0 }, cutAcross]);
    if (secondBegins === other) turns++;
    return {
      kind: 'cut',
      axis,
      set,
      first: trace(first, firstBegins),
      second: second < 0 ? { kind: 'rest' } : trace(second, secondBegins),
    };
  };
  const begins = best(
    whole,
    [0, 1, 2].map((one) => ({ begins: one, less: 0 })),
  );
  if (values[whole * 3 + begins]! <= 0) return null;
  const how = trace(whole, begins);
  return { made, passes, turns, rest: 0, how };
}

/** The values of all nodes, and by which piece or cut each is reached (-2: at the next stage). */
function valued(
  nodes: readonly StagedNode[],
  { items, pass, turn }: WorkPrices,
): { values: Float64Array; reached: Int32Array } {
  // By node and beginning: 0 not cut, 1 along the width, 2 along the height; the value, and the cut that reaches it.
  const values = new Float64Array(nodes.length * 3).fill(Number.NEGATIVE_INFINITY);
  const reached = new Int32Array(nodes.length * 3).fill(-1);
  const remaining = (node: number, along: 1 | 2): number => {
    if (node < 0) return 0;
    const other = along === 1 ? 2 : 1;
    return Math.max(values[node * 3]!, values[node * 3 + along]!, values[node * 3 + other]! - turn);
  };
  // What is measured off is used: uncut it is a piece.
  const measured = (node: number, along: 1 | 2): number => {
    const cut = values[node * 3 + (along === 1 ? 2 : 1)]! - turn;
    return nodes[node]!.pieces.length === 0 ? cut : Math.max(values[node * 3]!, cut);
  };
  for (const [index, node] of nodes.entries()) {
    values[index * 3] = node.pieces.length === 0 ? 0 : Number.NEGATIVE_INFINITY;
    for (const [place, { item }] of node.pieces.entries()) {
      if (items[item]! <= values[index * 3]!) continue;
      values[index * 3] = items[item]!;
      reached[index * 3] = place;
    }
    for (const [place, { axis, first, second }] of node.cuts.entries()) {
      const along = axis === 'width' ? 1 : 2;
      const value = measured(first, along) + remaining(second, along) - pass;
      if (value <= values[index * 3 + along]!) continue;
      values[index * 3 + along] = value;
      reached[index * 3 + along] = place;
    }
    if (node.later < 0) continue;
    for (let begins = 0; begins < 3; begins++) {
      if (values[node.later * 3 + begins]! <= values[index * 3 + begins]!) continue;
      values[index * 3 + begins] = values[node.later * 3 + begins]!;
      reached[index * 3 + begins] = -2;
    }
  }
  return { values, reached };
}
