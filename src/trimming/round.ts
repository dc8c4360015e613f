import type { Axis, Edge, Length, Size } from '../measure/index.ts';
import type { ToCut, Workpiece, Workpieces } from './workpiece.ts';

/** What can be done at once at one setting: equal workpieces that are cut alike. */
export interface Round {
  readonly workpieces: readonly ToCut[];
  readonly size: Size;
  readonly axis: Axis;
  readonly set: Length;
  readonly repeat: number;
  readonly squares: Edge | null;
}

/** The settings that something on the table can be cut at now, the longest first. */
export function settingsOf(table: Iterable<ToCut>): readonly Length[] {
  const sets = new Set<Length>();
  for (const { groups } of table) for (const { set } of groups) sets.add(set);
  return [...sets].sort((a, b) => b - a);
}

/**
 * The next round at a setting, `null` when nothing more can be cut at it.
 *
 * The largest workpieces come first: a cut makes only smaller ones, so that when a size has its turn all
 * workpieces of that size that this setting will ever see are on the table.
 */
export function nextRound(table: Iterable<ToCut>, set: Length): Round | null {
  const cuttable = [...table].filter(({ groups }) => groups.some((group) => group.set === set));
  const first = cuttable.reduce<ToCut | null>((best, workpiece) => {
    return best === null || comesBefore(workpiece, best) ? workpiece : best;
  }, null);
  if (first === null) return null;
  const { size, axis, squares } = first;
  const repeat = repeatOf(first, set);
  const workpieces = cuttable.filter((other) => {
    return (
      other.size.width === size.width &&
      other.size.height === size.height &&
      other.axis === axis &&
      other.squares === squares &&
      repeatOf(other, set) === repeat
    );
  });
  return { workpieces, size, axis, set, repeat, squares };
}

/** What is on the table when everything has been cut that can be cut at a setting, and in how many rounds. */
export function cutAt(
  table: ReadonlySet<ToCut>,
  set: Length,
  kinds: Workpieces,
): { table: ReadonlySet<ToCut>; rounds: number } {
  const after = new Set(table);
  let rounds = 0;
  for (let round = nextRound(after, set); round !== null; round = nextRound(after, set)) {
    rounds += 1;
    for (const workpiece of round.workpieces) {
      after.delete(workpiece);
      const { parts, remains } = kinds.cutOff(workpiece, set);
      for (const made of parts) addTo(after, made);
      if (remains !== null) addTo(after, remains);
    }
  }
  return { table: after, rounds };
}

function comesBefore(a: ToCut, b: ToCut): boolean {
  const difference = areaOf(a.size) - areaOf(b.size);
  return difference === 0 ? a.kindNumber < b.kindNumber : difference > 0;
}

function areaOf({ width, height }: Size): number {
  return width * height;
}

function repeatOf(workpiece: ToCut, set: Length): number {
  return workpiece.groups.find((group) => group.set === set)?.parts.length ?? 0;
}

function addTo(table: Set<ToCut>, workpiece: Workpiece): void {
  if (workpiece.kind === 'to cut') table.add(workpiece);
}
