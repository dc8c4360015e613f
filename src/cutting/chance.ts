/**
 * A seeded generator: the same seed gives the same numbers on every machine.
 *
 * Marsaglia's xorshift of 32 bits with the shifts 13, 17, 5 (G. Marsaglia, "Xorshift RNGs", 2003).
 */
export class Chance {
  private state: number;

  constructor(seed: number) {
    // Zero would stay zero; near seeds are spread apart (Knuth's multiplicative hash).
    this.state = Math.imul(seed + 1, 0x9e3779b1) | 0 || 1;
    for (let warm = 0; warm < 4; warm++) this.next();
  }

  /** A whole number from 0 to `below` - 1. */
  below(below: number): number {
    return Math.floor(this.fraction() * below);
  }

  /** A number in [0, 1). */
  fraction(): number {
    return (this.next() >>> 0) / 4294967296;
  }

  private next(): number {
    let state = this.state;
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    this.state = state;
    return state;
  }
}
