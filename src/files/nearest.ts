/**
 * The one of `words` that was probably meant by `found`, or `null` when none is close.
 *
 * Close is at most one slip for each three letters (a letter left out, put in, changed, or exchanged with its
 * neighbour; small and capital letters are alike). Of equally close words the first. Distance as in optimal string
 * alignment (Damerau 1964; the recurrence of Wagner and Fischer 1974).
 */
export function nearest(found: string, words: Iterable<string>): string | null {
  if (found.length > 60) return null;
  let best: string | null = null;
  let least = Math.max(1, Math.floor(found.length / 3)) + 1;
  for (const word of words) {
    if (Math.abs(word.length - found.length) >= least) continue;
    const slips = distance(found.toLowerCase(), word.toLowerCase());
    if (slips < least) [best, least] = [word, slips];
  }
  return best;
}

function distance(from: string, to: string): number {
  // rows[i][j]: slips between the first i letters of `from` and the first j of `to`.
  const rows: number[][] = [Array.from({ length: to.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= from.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= to.length; j += 1) {
      const same = from[i - 1] === to[j - 1];
      const changed = rows[i - 1]![j - 1]! + (same ? 0 : 1);
      const exchanged =
        i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]
          ? rows[i - 2]![j - 2]! + 1
          : Number.POSITIVE_INFINITY;
      row.push(Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, changed, exchanged));
    }
    rows.push(row);
  }
  return rows[from.length]![to.length]!;
}
