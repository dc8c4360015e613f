import { halves, type Length, lengthOfTicks, minus, sum, times, zero } from '../measure/index.ts';

/**
 * A length in a sum, and how many lengths that were read stand behind it.
 *
 * A length is rounded down to a tick once, when it is read, so a sum of n lengths may be off by n ticks and
 * still be what the person wrote.
 */
export interface Term {
  readonly length: Length;
  readonly reads: number;
}

/** Where something lies along one axis of its face. */
export interface Stretch {
  /** Of its left or top seen edge, from the face's. */
  readonly start: Term;
  readonly seen: Term;
  /** The terms from the start of what it lies on to its own start; they add up to exactly that. */
  readonly before: readonly Term[];
  /** The terms from its end to the end of what it lies on; they add up to exactly that. */
  readonly after: readonly Term[];
}

/** The whole of a face along one axis. */
export function faceStretch(length: Length): Stretch {
  return { start: { length: zero, reads: 0 }, seen: { length, reads: 1 }, before: [], after: [] };
}

/** Position of the right or bottom edge. */
export function endOf(stretch: Stretch): Length {
  return sum(stretch.start.length, stretch.seen.length);
}

/** The sum of the terms as one term. */
export function total(terms: readonly Term[]): Term {
  return {
    length: sum(...terms.map((term) => term.length)),
    reads: terms.reduce((reads, term) => reads + term.reads, 0),
  };
}

/**
 * A stretch of the length `seen` laid on `under` by its start, its end or, with neither, in the middle.
 *
 * `before` and `after` are the terms that fix an end, `null` where nothing does. With both, the start decides,
 * whatever the end says. Law: before + seen + after = under, to the tick; in the middle `after` is `before`
 * or one tick more.
 */
export function laid(
  under: Stretch,
  seen: Term,
  ends: { readonly before: readonly Term[] | null; readonly after: readonly Term[] | null },
): Stretch {
  const rest = minus(under.seen.length, seen.length);
  const reads = under.seen.reads + seen.reads;
  const restOf = (named: readonly Term[]): readonly Term[] => {
    const known = total(named);
    return [{ length: minus(rest, known.length), reads: reads + known.reads }];
  };

  let before = ends.before;
  let after = ends.after;
  if (before !== null) after = restOf(before);
  else if (after !== null) before = restOf(after);
  else {
    const { smaller, larger } = halves(rest);
    before = [{ length: smaller, reads }];
    after = [{ length: larger, reads }];
  }
  return { start: total([under.start, ...before]), seen, before, after };
}

/** The room on `under` between two ends; an end that nothing fixes is the edge of `under`. */
export function roomBetween(
  under: Stretch,
  ends: { readonly before: readonly Term[] | null; readonly after: readonly Term[] | null },
): Term {
  const taken = total([...(ends.before ?? []), ...(ends.after ?? [])]);
  return {
    length: minus(under.seen.length, taken.length),
    reads: under.seen.reads + taken.reads,
  };
}

/** `under` less twice the inset. */
export function insetOn(under: Term, inset: Length): Term {
  return { length: minus(under.length, times(inset, 2)), reads: under.reads + 2 };
}

/** How much the terms are more than `room` (less: negative); zero where that is within the rounding of reading. */
export function excess(terms: readonly Term[], room: Term): Length {
  const all = total(terms);
  const difference = lengthOfTicks(all.length - room.length);
  return Math.abs(difference) <= all.reads + room.reads ? zero : difference;
}
