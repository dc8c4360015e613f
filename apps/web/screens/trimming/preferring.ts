import { type KindnessGoal, kindnessOrder } from '../../../../src/planning/index.ts';

/**
 * The goals in the person's order once `goal` stands at `place`, counted from 0; `usual`: nothing more is said from there
 * on. A goal that stood further back changes places with the one it takes the place of, so that none is lost.
 */
export function preferring(
  said: readonly KindnessGoal[],
  place: number,
  goal: KindnessGoal | 'usual',
): readonly KindnessGoal[] {
  if (goal === 'usual') return worthSaying(said.slice(0, place));
  const before = said[place];
  const others = said.map((each) => (each === goal && before !== undefined ? before : each));
  return worthSaying([...others.slice(0, place), goal, ...others.slice(place + 1)]);
}

/** The usual order needs no saying. */
function worthSaying(goals: readonly KindnessGoal[]): readonly KindnessGoal[] {
  return goals.length === 1 && goals[0] === kindnessOrder[0] ? [] : goals;
}
