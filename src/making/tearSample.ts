import { assert } from '../problem/index.ts';
import { type TearDepth, tearQuantile } from './tear.ts';

/** A chance that was found by trying, and how: the same seed gives the same again. */
export interface Sampled {
  readonly chance: number;
  /** Root of chance × (1 - chance) / draws, but never less than that of one hit in all draws. */
  readonly standardError: number;
  readonly draws: number;
  readonly seed: number;
}

/** How often `happens` among `draws` cards whose tears (depths in ticks, in the order of `tears`) are drawn anew. */
export function sampledChance({
  tears,
  happens,
  draws,
  seed,
}: {
  readonly tears: readonly TearDepth[];
  readonly happens: (depths: readonly number[]) => boolean;
  readonly draws: number;
  readonly seed: number;
}): Sampled {
  assert(draws > 0, 'Something has to be drawn', { draws });
  const fraction = fractions(seed);
  let hits = 0;
  for (let draw = 0; draw < draws; draw++) {
    if (happens(tears.map((tear) => tearQuantile(tear, fraction())))) hits += 1;
  }
  const chance = hits / draws;
  const spread = Math.max(hits, 1) * Math.max(draws - hits, 1);
  return { chance, standardError: Math.sqrt(spread / draws) / draws, draws, seed };
}

/**
 * Fractions between 0 and 1, neither included: the generator of S. K. Park and K. W. Miller ("Random number
 * generators: good ones are hard to find", Communications of the ACM 31, 1988) with the multiplier 48271 of 1993.
 */
function fractions(seed: number): () => number {
  const modulus = 2 ** 31 - 1;
  let state = (Math.abs(Math.trunc(seed)) % (modulus - 1)) + 1;
  return () => {
    state = (state * 48_271) % modulus;
    return state / modulus;
  };
}
