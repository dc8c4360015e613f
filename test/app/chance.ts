/** Numbers from 0 up to 1 that look like chance: the generator of Numerical Recipes, 2nd edition, section 7.1. */
export function chanceFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
