import type { Length } from '../measure/index.ts';
import { cuttableAt, roundKey } from './round.ts';
import type { ToCut, Workpieces } from './workpiece.ts';

/** See `settingCuts`. */
export type CutAt = (
  table: ReadonlySet<ToCut>,
  set: Length,
) => { table: ReadonlySet<ToCut>; rounds: number; tight: number };

/**
 * A function that tells what is on the table when everything has been cut that can be cut at a setting, in how many
 * rounds, and in how many of these the parts fill a workpiece with nothing to spare. What comes of one workpiece does not depend on the others, so it is worked out once.
 */
export function settingCuts(kinds: Workpieces): CutAt {
  const known = new Map<Length, Map<ToCut, CutOut>>();
  const cutOut = (workpiece: ToCut, set: Length): CutOut => {
    const before = known.get(set)?.get(workpiece);
    if (before !== undefined) return before;
    const { parts, remains } = kinds.cutOff(workpiece, set);
    const open = new Set<ToCut>();
    const rounds = new Set([roundKey(workpiece, set)]);
    const tight = new Set(workpiece.last === null ? rounds : []);
    for (const made of new Set(remains === null ? parts : [...parts, remains])) {
      if (made.kind === 'done') continue;
      if (!cuttableAt(made, set)) {
        open.add(made);
        continue;
      }
      const further = cutOut(made, set);
      for (const left of further.open) open.add(left);
      for (const round of further.rounds) rounds.add(round);
      for (const round of further.tight) tight.add(round);
    }
    const out = { open, rounds, tight };
    const atSet = known.get(set) ?? new Map<ToCut, CutOut>();
    known.set(set, atSet.set(workpiece, out));
    return out;
  };
  return (table, set) => {
    const after = new Set<ToCut>();
    const rounds = new Set<string>();
    const tight = new Set<string>();
    for (const workpiece of table) {
      if (!cuttableAt(workpiece, set)) {
        after.add(workpiece);
        continue;
      }
      const out = cutOut(workpiece, set);
      for (const left of out.open) after.add(left);
      for (const round of out.rounds) rounds.add(round);
      for (const round of out.tight) tight.add(round);
    }
    return { table: after, rounds: rounds.size, tight: tight.size };
  };
}

/** What comes of one workpiece at one setting: what is still to be cut of it, and the keys of its rounds and tight rounds. */
interface CutOut {
  readonly open: ReadonlySet<ToCut>;
  readonly rounds: ReadonlySet<string>;
  readonly tight: ReadonlySet<string>;
}
