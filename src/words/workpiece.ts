import { type Axis, millimetres, minus, type Size, times } from '../measure/index.ts';
import type { Plan } from '../planning/index.ts';
import { assert } from '../problem/index.ts';

/** Something that lies on the table at some time while a plan is cut: a sheet, or what a step makes. */
export interface Workpiece {
  readonly id: string;
  readonly paper: string;
  /** With the pattern upright. */
  readonly size: Size;
  /** Whether its size along an axis is what the sheet itself brings or what remains of it, not a setting. */
  readonly unmeasured: Readonly<Record<Axis, boolean>>;
  /** Where it comes from; steps by their number. */
  readonly from:
    | { readonly kind: 'sheet'; readonly number: number }
    | { readonly kind: 'piece' | 'rest'; readonly step: number };
  /** What becomes of it. */
  readonly goes:
    | { readonly kind: 'finished'; readonly piece: string }
    | { readonly kind: 'step'; readonly step: number }
    | { readonly kind: 'leftover'; readonly keep: boolean };
}

/**
 * Whether something is there only because lengths are rounded down to ticks when they are read (three of 1 1/3 in
 * leave a tick of 4 in): less than a hundredth of a millimetre is nothing to speak of.
 */
export function isSliver({ width, height }: Size): boolean {
  return Math.min(width, height) < millimetres(0.01);
}

/**
 * Everything that ever lies on the table, by its id, in the order it comes there.
 *
 * A sheet's number counts the sheets of its paper in the plan from 1.
 */
export function tableOf(plan: Plan): ReadonlyMap<string, Workpiece> {
  const takenBy = new Map(plan.steps.flatMap((step) => step.take.map((id) => [id, step.step])));
  const keeps = new Map(plan.leftovers.map(({ id, keep }) => [id, keep]));
  const table = new Map<string, Workpiece>();

  function lay(piece: Omit<Workpiece, 'goes'>): void {
    const finished = plan.finished.get(piece.id);
    const step = takenBy.get(piece.id);
    const keep = keeps.get(piece.id);
    const goes =
      finished !== undefined
        ? ({ kind: 'finished', piece: finished } as const)
        : step !== undefined
          ? ({ kind: 'step', step } as const)
          : keep !== undefined
            ? ({ kind: 'leftover', keep } as const)
            : null;
    assert(goes !== null, 'Whatever lies on the table is used, finished or left over', { id: piece.id });
    table.set(piece.id, { ...piece, goes });
  }

  const sheetsOf = new Map<string, number>();
  for (const { id, paper, size } of plan.sheets) {
    const number = (sheetsOf.get(paper) ?? 0) + 1;
    sheetsOf.set(paper, number);
    lay({ id, paper, size, unmeasured: { width: true, height: true }, from: { kind: 'sheet', number } });
  }
  for (const { step, take, axis, set, repeat, gives, rest } of plan.steps) {
    for (const [index, id] of take.entries()) {
      const taken = table.get(id);
      assert(taken !== undefined, 'A step takes what lies on the table', { step, id });
      const { paper, size, unmeasured } = taken;
      const left = rest[index] ?? null;
      for (const [nth, piece] of (gives[index] ?? []).entries()) {
        lay({
          id: piece,
          paper,
          size: { ...size, [axis]: set },
          unmeasured: {
            ...unmeasured,
            [axis]: left === null && nth === repeat - 1 ? unmeasured[axis] : false,
          },
          from: { kind: 'piece', step },
        });
      }
      if (left !== null) {
        const length = minus(size[axis], times(set, repeat));
        lay({
          id: left,
          paper,
          size: { ...size, [axis]: length },
          unmeasured,
          from: { kind: 'rest', step },
        });
      }
    }
  }
  return table;
}
