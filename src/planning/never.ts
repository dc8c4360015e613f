import { quarterTurned } from '../measure/index.ts';
import type { Paper } from '../stash/index.ts';
import { canSquare, squaredSize, type Trimmer, wideEnough } from '../trimming/index.ts';
import type { Piece } from './piece.ts';
import type { NeverReason } from './shortage.ts';

/** The reasons that can be told from sizes. */
export type NeverBySize = Extract<NeverReason, 'too-large' | 'too-narrow'>;

/**
 * The pieces of a paper that no sheet of it could give even one of, however it is cut, with the reason; by piece
 * id. Only what can be told from sizes: what a trimmer's marks rule out is for the planner of cuts to find. Where there
 * is no sheet that can be used, none is too large for it.
 */
export function neverReasons(
  paper: Paper,
  pieces: readonly Piece[],
  trimmer: Trimmer | null,
): ReadonlyMap<string, NeverBySize> {
  const usable = paper.sheets
    .filter(({ size, margin }) => canSquare(size, margin, trimmer))
    .map(({ size, margin }) => squaredSize(size, margin));
  const reasons = new Map<string, NeverBySize>();
  for (const { id, size, turn } of pieces) {
    const ways = turn === 'free' ? [size, quarterTurned(size)] : [size];
    const fits = usable.some((sheet) =>
      ways.some((way) => way.width <= sheet.width && way.height <= sheet.height),
    );
    if (!wideEnough(size, trimmer)) reasons.set(id, 'too-narrow');
    else if (!fits && usable.length > 0) reasons.set(id, 'too-large');
  }
  return reasons;
}
