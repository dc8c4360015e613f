import { type Axis, type Length, type Size, times } from '../measure/index.ts';

/** The kinds of base: `left` is a side fold, `top` a top fold, `none` a flat card. */
export type FoldKind = 'left' | 'top' | 'none';

/** What one kind of fold makes of a closed front. */
interface Fold {
  /** The size that is cut: the base lying open. */
  opened(closed: Size): Size;
  scores(closed: Size): readonly Score[];
  /** The axis the fold line runs along. */
  readonly grain: Axis | null;
}

/** One score line of the opened base, from edge to edge. */
export interface Score {
  /** The axis the distance runs along; the line itself runs across it. */
  readonly axis: Axis;
  /** From the left or top edge of the opened base. */
  readonly at: Length;
}

const folds = {
  left: {
    opened: (closed) => ({ width: times(closed.width, 2), height: closed.height }),
    scores: (closed) => [{ axis: 'width', at: closed.width }],
    grain: 'height',
  },
  top: {
    opened: (closed) => ({ width: closed.width, height: times(closed.height, 2) }),
    scores: (closed) => [{ axis: 'height', at: closed.height }],
    grain: 'width',
  },
  none: { opened: (closed) => closed, scores: () => [], grain: null },
} as const satisfies Record<FoldKind, Fold>;

/** Every kind of fold there is, in the order they are offered. */
export const foldKinds = Object.keys(folds) as readonly FoldKind[];

/** The size to cut for a base whose closed front is `closed`: width then height as the card stands, lying open. */
export function openedSize(closed: Size, fold: FoldKind): Size {
  return folds[fold].opened(closed);
}

/** Where the opened base is scored, left to right and top to bottom; none for a flat card. */
export function scoresOf(closed: Size, fold: FoldKind): readonly Score[] {
  return folds[fold].scores(closed);
}

/**
 * The axis of the opened base that the paper's fibres should run along, so that it folds with the grain; `null`
 * for a flat card.
 *
 * "Fold parallel to the grain": six printing and binding pages agree; a fold across it cracks and springs open.
 */
export function grainFor(fold: FoldKind): Axis | null {
  return folds[fold].grain;
}
