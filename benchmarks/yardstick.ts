import { quantile, timed } from './figures.ts';

/**
 * The milliseconds that a fixed piece of plain work takes on this machine now: the best filling of 4 000 units from
 * 500 lengths, each any number of times, by the textbook dynamic programme (two million steps), at the median of
 * nine runs. Times are given as multiples of it, so that runs on unlike machines can be laid side by side.
 */
export function yardstick(): number {
  return quantile(
    Array.from({ length: 9 }, () => timed(work).milliseconds),
    0.5,
  );
}

function work(): number {
  const best = new Int32Array(4_001);
  for (let length = 17; length < 517; length += 1) {
    const worth = length * 3 + ((length * 7919) % 41);
    for (let room = length; room <= 4_000; room += 1) {
      const filled = best[room - length]! + worth;
      if (filled > best[room]!) best[room] = filled;
    }
  }
  return best[4_000]!;
}
