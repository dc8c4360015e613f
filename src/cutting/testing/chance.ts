/** A seeded generator for tests: whole numbers from `low` to `high`. (mulberry32, public domain, T. Ettinger 2017.) */
export function chance(seed: number): (low: number, high: number) => number {
  let state = seed;
  return (low, high) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return low + Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296) * (high - low + 1));
  };
}
