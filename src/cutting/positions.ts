/**
 * The sizes along one axis that workpieces of a best plan need to have, and how they split in two.
 *
 * Waste can always be shaved off first, so a workpiece may be taken as no larger than what comes out of it: a sum
 * of item sizes, each taken at most as often as it is wanted ("normal patterns", J. C. Herz 1972, N. Christofides
 * & C. Whitlock 1977). Of the splits of a workpiece only those are kept in which neither part could be larger;
 * sizes that no such split reaches from the sheet are dropped (the idea of "raster points", G. Scheithauer 1997,
 * taken through every level).
 *
 * With a `step`, sizes fall into two classes: whole multiples of it (measured off), and those that differ from
 * the sheet's own size by a multiple (the far end that remains). A multiple splits into two multiples; a far end
 * into a multiple and a smaller far end. Within a class waste can be shaved at on-mark settings, so the larger
 * does all that the smaller does.
 *
 * With a `reach` one part of a split, for a far end the multiple, is no longer than it. Shaving stays within a
 * class, for waste may come off in several strips; only a reach shorter than the step allows no cut at all.
 */
export interface Positions {
  /** Ascending; `sizes[0]` is 0 and stands for nothing left. */
  readonly sizes: readonly number[];
  /** Index of the size that stands for the whole sheet. */
  readonly whole: number;
  /** The splits of size i are numbers `start[i]` to `start[i + 1] - 1`; parts are indices of sizes. */
  readonly start: Int32Array;
  /** The part that is measured off, a multiple of `step`. */
  readonly first: Int32Array;
  /** The part that remains. */
  readonly second: Int32Array;
}

export interface PositionsRequest {
  readonly length: number;
  /** Sizes of what is wanted along this axis, and how often at most. */
  readonly wanted: ReadonlyMap<number, number>;
  readonly step: number | null;
  /** The longest part that can be measured off; `null`: any. */
  readonly reach: number | null;
  /** Larger sizes than this also get the split into the next smaller one and waste; `null`: none needs it. */
  readonly shaveAbove: number | null;
  /** No more sizes than this. */
  readonly most: number;
  /**
   * What to do about more: give up, or thin out, which keeps the sums of fewest items. Cuts at fewer positions are
   * still true cuts, but no longer include the best.
   */
  readonly thin: boolean;
}

/** The positions along one axis; `null` when there would be too many. */
export function positionsAlong(request: PositionsRequest): Positions | null {
  const { length, step, shaveAbove, most } = request;
  const reach = request.reach ?? Number.POSITIVE_INFINITY;
  const uncuttable = reach < (step ?? 1);
  const residue = step === null ? 0 : length % step;
  const isMultiple = (size: number) => step === null || size % step === 0;
  const multiples = request.thin ? fewestSums(request, isMultiple) : sumsWithin(request, isMultiple);
  const farEnds = residue === 0 || multiples === null ? [] : farEndsWithin(request, multiples, residue);
  if (multiples === null || farEnds === null) return null;
  const isFarEnd = (size: number) => residue !== 0 && step !== null && size % step === residue;

  const splitsOf = (size: number): [number, number][] => {
    const splits: [number, number][] = [];
    for (const first of multiples) {
      if (first === 0) continue;
      if (first > reach || first > size || (!isFarEnd(size) && 2 * first > size)) break;
      const second = largestWithin(isFarEnd(size) ? farEnds : multiples, size - first);
      // A larger part is no gain where neither of the two could then be measured.
      const room = !isFarEnd(size) && second <= reach ? size - second : Math.min(size - second, reach);
      if (largestWithin(multiples, room) !== first) continue;
      if (first < size) splits.push([first, second]);
    }
    if (shaveAbove !== null && size > shaveAbove && !uncuttable) {
      const smaller = largestWithin(isFarEnd(size) ? farEnds : multiples, size - 0.5);
      if (smaller > 0) splits.push([smaller, 0]);
    }
    return splits;
  };

  const whole = largestWithin(residue === 0 ? multiples : farEnds, length);
  const splits = new Map<number, [number, number][]>([[0, []]]);
  const open = [whole];
  for (let size = open.pop(); size !== undefined; size = open.pop()) {
    if (splits.has(size)) continue;
    const found = splitsOf(size);
    splits.set(size, found);
    if (splits.size > most && !request.thin) return null;
    for (const [first, second] of found) open.push(first, second);
  }
  return indexed(splits, whole);
}

/** Sums of wanted sizes of one class, from 0 to the length, ascending. */
function sumsWithin(
  { length, wanted, most }: PositionsRequest,
  belongs: (size: number) => boolean,
): number[] | null {
  let sums = new Set([0]);
  for (const [size, times] of [...wanted].sort(([a], [b]) => b - a)) {
    if (!belongs(size)) continue;
    const grown = new Set(sums);
    for (const sum of sums) {
      for (let count = 1, next = sum + size; count <= times && next <= length; count++, next += size)
        grown.add(next);
      if (grown.size > most * 4) return null;
    }
    sums = grown;
  }
  return [...sums].sort((a, b) => a - b);
}

/** Some of these sums, about `most / 4` of them: those of fewest pieces of at most two sizes. */
function fewestSums(
  { length, wanted, most: sizesAtMost }: PositionsRequest,
  belongs: (size: number) => boolean,
): number[] {
  const enough = Math.max(2, Math.floor(sizesAtMost / 4));
  const sums = new Set([0]);
  const sizes = [...wanted.keys()].filter(belongs).sort((a, b) => b - a);
  const usual = [...sizes].sort((a, b) => wanted.get(b)! - wanted.get(a)! || b - a);
  const add = (size: number, count: number) => {
    // Rows much longer than the root of the need, or of a hundred, are for sheets of millions of pieces.
    const most = Math.min(wanted.get(size)!, 4 + Math.sqrt(wanted.get(size)!), 48);
    if (count <= most && count * size <= length && sums.size < enough) sums.add(count * size);
  };
  // Doubled again and again first, so that many small pieces still fill a large sheet; then one more at a time.
  for (let count = 1; count <= 2 ** 30; count *= 2) for (const size of usual) add(size, count);
  for (let count = 3; count <= enough; count++) for (const size of usual) add(size, count);
  const single = [...sums];
  for (const a of single) {
    for (const b of single) if (a + b <= length && sums.size < 2 * enough) sums.add(a + b);
  }
  return [...sums].sort((a, b) => a - b);
}

/** Sizes of the far-end class: one wanted far end, or bare waste, and multiples before it. */
function farEndsWithin(
  { length, wanted, step, most, thin }: PositionsRequest,
  multiples: readonly number[],
  residue: number,
): number[] | null {
  const ends = new Set<number>([0]);
  const starts = [residue, ...[...wanted.keys()].filter((size) => step !== null && size % step === residue)];
  for (const start of starts) {
    for (const sum of multiples) if (start + sum <= length) ends.add(start + sum);
    if (ends.size > most * 4 && !thin) return null;
    if (ends.size > most) break;
  }
  return [...ends].sort((a, b) => a - b);
}

/** The largest of ascending `sizes` that is at most `limit`; `sizes` starts with 0. */
function largestWithin(sizes: readonly number[], limit: number): number {
  let low = 0;
  let high = sizes.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sizes[middle]! <= limit) low = middle;
    else high = middle - 1;
  }
  return sizes[low]!;
}

function indexed(splits: ReadonlyMap<number, readonly [number, number][]>, whole: number): Positions {
  const sizes = [...splits.keys()].sort((a, b) => a - b);
  const indexOf = new Map(sizes.map((size, index) => [size, index]));
  const start = new Int32Array(sizes.length + 1);
  const first: number[] = [];
  const second: number[] = [];
  sizes.forEach((size, index) => {
    for (const [a, b] of splits.get(size)!) {
      first.push(indexOf.get(a)!);
      second.push(indexOf.get(b)!);
    }
    start[index + 1] = first.length;
  });
  return {
    sizes,
    whole: indexOf.get(whole)!,
    start,
    first: Int32Array.from(first),
    second: Int32Array.from(second),
  };
}
