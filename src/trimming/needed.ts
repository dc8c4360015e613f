import type { Length } from '../measure/index.ts';
import type { ToCut, Workpiece } from './workpiece.ts';

/** See `neededSettings`. */
export type Needed = (table: ReadonlySet<ToCut>) => number;

/**
 * A function that tells how many settings a table needs at least: one for each length that must be measured
 * off somewhere. A part that stands alone in its row may remain instead, unless another must.
 */
export function neededSettings(): Needed {
  const places = new Map<Length, number>();
  const placeOf = (set: Length): number => {
    const place = places.get(set) ?? places.size;
    places.set(set, place);
    return place;
  };
  const known = new Map<ToCut, Marked>();
  const neededBy = (workpiece: ToCut): Marked => {
    const before = known.get(workpiece);
    if (before !== undefined) return before;
    const needed: Marked = [];
    const join = (part: Workpiece): void => {
      if (part.kind === 'to cut') joinTo(needed, neededBy(part));
    };
    for (const { set, parts } of workpiece.groups) {
      if (workpiece.last !== null || parts.length > 1) mark(needed, placeOf(set));
      for (const part of new Set(parts)) join(part);
    }
    if (workpiece.last !== null) join(workpiece.last);
    known.set(workpiece, needed);
    return needed;
  };
  return (table) => {
    const needed: Marked = [];
    for (const workpiece of table) joinTo(needed, neededBy(workpiece));
    return countOf(needed);
  };
}

/** A set of small numbers, 32 to a word: tables are compared by the hundred thousand, and this was most of the time. */
type Marked = number[];

function mark(marked: Marked, place: number): void {
  const word = Math.floor(place / 32);
  while (marked.length <= word) marked.push(0);
  marked[word]! |= 1 << (place % 32);
}

function joinTo(marked: Marked, others: Marked): void {
  for (let word = 0; word < others.length; word += 1) marked[word] = (marked[word] ?? 0) | others[word]!;
}

function countOf(marked: Marked): number {
  let count = 0;
  for (const word of marked) for (let left = word; left !== 0; left &= left - 1) count += 1;
  return count;
}
