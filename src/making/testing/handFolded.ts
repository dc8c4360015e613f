/** One fold by hand: all panels beyond a crease are turned about it, over what lies there or under it. */
export interface HandFold {
  /** The crease right of panel `crease` (from 0). */
  readonly crease: number;
  /** Which panels move: those before the crease, or those past it. */
  readonly moves: 'before' | 'past';
  readonly to: 'over' | 'under';
}

/** Where a panel has come to lie. */
export interface FoldedPanel {
  readonly from: number;
  readonly to: number;
  readonly insideUp: boolean;
  /** From 0 at the bottom; panels that do not lie over one another may have any order. */
  readonly order: number;
}

/**
 * Folds a strip of panels step by step as a hand would, by turning blocks of panels about creases; shares nothing with
 * `panelsOf`. The strip lies with its inside up and begins at 0.
 *
 * Folds of a crease are told as seen on the inside of the strip.
 */
export function handFolded(
  lengths: readonly number[],
  folds: readonly HandFold[],
): { readonly panels: readonly FoldedPanel[]; readonly creases: readonly ('valley' | 'mountain')[] } {
  let start = 0;
  const state = lengths.map((length, index) => {
    // `left` and `right` are where the panel's own left and right edges have come to be.
    const panel = { index, left: start, right: start + length, insideUp: true };
    start += length;
    return panel;
  });
  let pile = state.map(({ index }) => index);
  const creases: ('valley' | 'mountain')[] = lengths.slice(1).map(() => 'valley');
  for (const { crease, moves, to } of folds) {
    const held = state[moves === 'past' ? crease : crease + 1]!;
    const about = moves === 'past' ? held.right : held.left;
    const isMoved = (index: number) => (moves === 'past' ? index > crease : index <= crease);
    creases[crease] = (to === 'over') === held.insideUp ? 'valley' : 'mountain';
    const block = pile.filter(isMoved).toReversed();
    const rest = pile.filter((index) => !isMoved(index));
    pile = to === 'over' ? [...rest, ...block] : [...block, ...rest];
    for (const index of block) {
      const panel = state[index]!;
      [panel.left, panel.right] = [2 * about - panel.left, 2 * about - panel.right];
      panel.insideUp = !panel.insideUp;
    }
  }
  return {
    panels: state.map(({ index, left, right, insideUp }) => ({
      from: Math.min(left, right),
      to: Math.max(left, right),
      insideUp,
      order: pile.indexOf(index),
    })),
    creases,
  };
}
