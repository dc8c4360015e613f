import type { Axis, Edge, Length, Size } from '../measure/index.ts';
import type { ToCut } from './workpiece.ts';

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
  const cuttable = [...table].filter((workpiece) => cuttableAt(workpiece, set));
  const first = cuttable.reduce<ToCut | null>((best, workpiece) => {
    return best === null || comesBefore(workpiece, best) ? workpiece : best;
  }, null);
  if (first === null) return null;
  const { size, axis, squares } = first;
  const key = roundKey(first, set);
  const workpieces = cuttable.filter((other) => roundKey(other, set) === key);
  return { workpieces, size, axis, set, repeat: repeatOf(first, set), squares };
}

/** The same for workpieces that are cut in one round at a setting, when they are on the table together. */
export function roundKey(workpiece: ToCut, set: Length): string {
  const { axis, size, squares } = workpiece;
  return `${axis} ${size.width} ${size.height} ${repeatOf(workpiece, set)} ${squares}`;
}

/** Whether something can be measured off it at a setting. */
export function cuttableAt(workpiece: ToCut, set: Length): boolean {
  return workpiece.groups.some((group) => group.set === set);
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
