import { type Move, moved, movesOf } from './moves.ts';
import type { SetToPlan } from './planSet.ts';
import { Redrawing, type Redrawn } from './redrawing.ts';

/** A small change of a layout with which something is given that was not. */
export interface SmallMove {
  readonly redrawn: Redrawn;
  /** How many marks the leading length moves. */
  readonly marks: number;
  /**
   * The same move a little further, to where every length that changes lies on a mark twice as coarse; `null` where that
   * is the same, or further than a small change goes.
   */
  readonly rounder: Redrawn | null;
}

/**
 * The smallest moves of a length, others following so that nothing gets less even, with which `gives` holds: fewest
 * marks first, one for each length that leads. What holds for some marks has to hold for more.
 */
export function smallestMoves(
  set: Pick<SetToPlan, 'layout' | 'arrangement' | 'trimmer'>,
  gives: (redrawn: Redrawn) => boolean,
): readonly SmallMove[] {
  const redrawing = new Redrawing(set);
  const found = movesOf(redrawing, set.layout).flatMap(([move]): SmallMove[] => {
    const steps = move === undefined ? [] : stepsOf(redrawing, move);
    if (steps.length === 0 || !gives(steps.at(-1)!)) return [];
    let [low, high] = [0, steps.length - 1];
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if (gives(steps[middle]!)) high = middle;
      else low = middle + 1;
    }
    const isRound = ({ lengths }: Redrawn) =>
      [...lengths.values()].every((length) => length % (2 * redrawing.mark) === 0);
    const rounder = steps.slice(low).find(isRound) ?? null;
    return [{ redrawn: steps[low]!, marks: low + 1, rounder: rounder === steps[low] ? null : rounder }];
  });
  return found.sort((a, b) => a.marks - b.marks || a.redrawn.lengths.size - b.redrawn.lengths.size);
}

/** No length that leads moves further. */
const mostMarks = 8;

function stepsOf(redrawing: Redrawing, move: Move): readonly Redrawn[] {
  const steps: Redrawn[] = [];
  for (let marks = 1; marks <= mostMarks; marks += 1) {
    const redrawn = moved(redrawing, move, marks);
    if (redrawn === null) break;
    steps.push(redrawn);
  }
  return steps;
}
