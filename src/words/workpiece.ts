import { type Axis, millimetres, minus, type Size, times } from '../measure/index.ts';
import type { Lying, Plan } from '../planning/index.ts';
import { assert } from '../problem/index.ts';

/** Something that lies on the table at some time while a plan is cut: a sheet, or what a step makes. */
export interface Workpiece {
  readonly id: string;
  readonly paper: string;
  /** With the pattern upright. */
  readonly size: Size;
  /** Whether its size along an axis is what the sheet itself brings or what remains of it, not a setting. */
  readonly unmeasured: Readonly<Record<Axis, boolean>>;
  /** Where it comes from; steps by their number, those too that were done before the plan begins. */
  readonly from:
    | { readonly kind: 'sheet'; readonly number: number }
    | { readonly kind: 'piece' | 'rest'; readonly step: number }
    | { readonly kind: 'found' };
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
 * A sheet's number is that of its id, which counts the sheets of its paper from 1. `lying` is what lies there as the
 * plan begins and is no whole sheet.
 */
export function tableOf(plan: Plan, lying: readonly Lying[] = []): ReadonlyMap<string, Workpiece> {
  if (lying.length > 0) return laidTable(plan, lying);
  const known = tables.get(plan);
  if (known !== undefined) return known;
  const table = laidTable(plan, []);
  tables.set(plan, table);
  return table;
}

/** A plan is told in many sentences, each of which asks for the same table, which is long where the set is large. */
const tables = new WeakMap<Plan, ReadonlyMap<string, Workpiece>>();

function laidTable(plan: Plan, lying: readonly Lying[]): ReadonlyMap<string, Workpiece> {
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

  const there = new Map(lying.map((workpiece) => [workpiece.id, workpiece]));
  const sheetsOf = new Map<string, number>();
  for (const { id, paper, size } of plan.sheets) {
    const cut = there.get(id);
    // A finished piece is measured; how long a strip or scrap is that lies there, nobody knows for sure.
    const open = cut === undefined || !plan.finished.has(id);
    const unmeasured = { width: open, height: open };
    if (cut !== undefined) {
      lay({ id, paper, size, unmeasured, from: cut.from });
      continue;
    }
    const named = id.startsWith(`${paper}-`) ? Number(id.slice(paper.length + 1)) : Number.NaN;
    const number = Number.isSafeInteger(named) ? named : (sheetsOf.get(paper) ?? 0) + 1;
    sheetsOf.set(paper, number);
    lay({ id, paper, size, unmeasured, from: { kind: 'sheet', number } });
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
