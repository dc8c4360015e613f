import type { CutTree } from '../../cutting/index.ts';

/**
 * The fewest changes of setting that take some trees apart, by trying every single thing a hand could do next:
 * any workpiece, any part of it. For small trees only, whose cuts alternate in direction and have at most one
 * rest, which must remain.
 */
export function fewestSettings(trees: readonly CutTree[]): number {
  const start = keyOf({ open: trees.flatMap(opened).sort(), blade: 0 });
  let layer = [start];
  const seen = new Set<string>();
  for (let settings = 0; ; settings += 1) {
    const later: string[] = [];
    while (layer.length > 0) {
      const key = layer.pop()!;
      if (seen.has(key)) continue;
      seen.add(key);
      const state = JSON.parse(key) as State;
      if (state.open.length === 0) return settings;
      for (const { set, open } of movesOf(state)) {
        const next = keyOf({ open, blade: set });
        if (set === state.blade) layer.push(next);
        else later.push(next);
      }
    }
    layer = later;
  }
}

/** `open`: the cut nodes that are not yet apart, as JSON of their axis and remaining parts. */
interface State {
  readonly open: readonly string[];
  readonly blade: number;
}

interface Open {
  readonly axis: 'width' | 'height';
  readonly parts: readonly CutTree[];
}

function keyOf(state: State): string {
  return JSON.stringify(state);
}

function opened(tree: CutTree): readonly string[] {
  if (tree.kind !== 'cut') return [];
  const sorted = tree.parts
    .map((part) => ({ part, key: JSON.stringify(part) }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  return [JSON.stringify({ axis: tree.axis, parts: sorted.map(({ part }) => part) })];
}

function movesOf({ open }: State): readonly { set: number; open: readonly string[] }[] {
  const moves: { set: number; open: readonly string[] }[] = [];
  for (const key of new Set(open)) {
    const { axis, parts } = JSON.parse(key) as Open;
    const others = [...open];
    others.splice(others.indexOf(key), 1);
    // One part at a time: more of the same length at the same setting cost nothing.
    for (const part of parts) {
      if (part.kind === 'rest') continue;
      const remain = parts.filter((beside) => beside !== part);
      const made = [...opened(part)];
      if (remain.length === 1) made.push(...opened(remain[0]!));
      else made.push(JSON.stringify({ axis, parts: remain }));
      moves.push({ set: part[axis], open: [...others, ...made].sort() });
    }
  }
  return moves;
}
