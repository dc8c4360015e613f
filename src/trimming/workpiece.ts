import { type CutTree, stripsOf } from '../cutting/index.ts';
import { type Axis, type Edge, type Length, lengthOfTicks, type Size, sum, times } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { SquaringCut } from './squaring.ts';
import { cutLimitsOf, settable, type Trimmer } from './trimmer.ts';

/** A thing on the table and what is still to be done to it; one object for all that are alike (see `Workpieces`). */
export type Workpiece = Done | ToCut;

/** Nothing more is to be done to it. */
export interface Done {
  readonly kind: 'done';
  /** Counts the kinds of workpiece as they first turn up. */
  readonly kindNumber: number;
  readonly size: Size;
  /** Index of the item it is, or what is left of the sheet. */
  readonly becomes: number | 'leftover' | 'margin';
}

/** Parts are to be measured off along one axis, in any order of the groups. */
export interface ToCut {
  readonly kind: 'to cut';
  readonly kindNumber: number;
  readonly size: Size;
  readonly axis: Axis;
  /** Parts of one length together, the longest first; no two groups of one length. */
  readonly groups: readonly Group[];
  /** The part that must remain, never be measured off; `null`: any part that stands alone may remain. */
  readonly last: Workpiece | null;
  readonly squares: Edge | null;
}

export interface Group {
  readonly set: Length;
  readonly parts: readonly Workpiece[];
}

/** What a cut makes of a workpiece: the parts measured off, and what remains, `null` for nothing. */
export interface CutOff {
  readonly parts: readonly Workpiece[];
  readonly remains: Workpiece | null;
}

/**
 * The kinds of workpiece met while cutting some sheets for one trimmer: alike ones are the same object, so that
 * a table of a thousand equal sheets is as quickly thought through as one.
 */
export class Workpieces {
  readonly #trimmer: Trimmer | null;
  readonly #dones = new Map<string, Done>();
  readonly #toCuts = new Map<string, ToCut>();
  readonly #byTree = new Map<CutTree, Workpiece>();
  readonly #cutOffs = new Map<ToCut, Map<Length, CutOff>>();
  #count = 0;

  constructor(trimmer: Trimmer | null) {
    this.#trimmer = trimmer;
  }

  /**
   * A workpiece that is to become the tree's pieces.
   *
   * Cuts along one axis that stand directly within each other become one row of parts, and the rests of a row
   * one rest, because no pass is needed between waste and waste. The rest remains, unless another part cannot
   * be set: then that one does, and the rest is measured off, in several strips where it is beyond the reach.
   */
  ofTree(tree: CutTree): Workpiece {
    return foundOrMade(this.#byTree, tree, () => this.#fromTree(tree));
  }

  /** A sheet that one margin is to be cut off, then to be treated as `squared`. */
  withMargin(cut: SquaringCut, squared: Workpiece): ToCut {
    const margin = this.#done({ ...cut.before, [cut.axis]: cut.margin }, 'margin');
    const [measured, last] = cut.measured === 'margin' ? [margin, squared] : [squared, margin];
    return this.#toCut({
      size: cut.before,
      axis: cut.axis,
      groups: [{ set: cut.set, parts: [measured] }],
      last,
      squares: cut.edge,
    });
  }

  /** What comes of measuring off every part of length `set`; throws where the workpiece has none. */
  cutOff(workpiece: ToCut, set: Length): CutOff {
    const bySet = foundOrMade(this.#cutOffs, workpiece, () => new Map<Length, CutOff>());
    return foundOrMade(bySet, set, () => this.#makeCutOff(workpiece, set));
  }

  #fromTree(tree: CutTree): Workpiece {
    const size = { width: lengthOfTicks(tree.width), height: lengthOfTicks(tree.height) };
    assert(size.width > 0 && size.height > 0, 'A part of a cut tree has a size', { size });
    if (tree.kind === 'piece') return this.#done(size, tree.item);
    if (tree.kind === 'rest') return this.#done(size, 'leftover');

    const { axis } = tree;
    const row = rowOf(tree).map((part) => this.ofTree(part));
    const across = axis === 'width' ? 'height' : 'width';
    assert(
      sum(...row.map((part) => part.size[axis])) === size[axis] &&
        row.every((part) => part.size[across] === size[across]),
      'The parts of a cut fill their workpiece',
      { size, axis, parts: row.map((part) => part.size) },
    );

    // What must remain.
    const parts: Workpiece[] = row.filter((part) => !isLeftover(part));
    const unsettable = parts.filter((part) => !settable(part.size[axis], this.#trimmer));
    assert(unsettable.length <= 1, 'At most one part of a cut is off the marks or beyond the reach', {
      axis,
      parts: parts.map((part) => part.size),
    });

    // One rest, or what of it can be measured off.
    const rest = sum(...row.filter(isLeftover).map((part) => part.size[axis]));
    const strips = unsettable.length > 0 ? stripsOf(rest, cutLimitsOf(this.#trimmer)) : [rest];
    assert(rest === 0 || strips !== null, 'The rest of a cut can be measured off where a part must remain', {
      axis,
      rest,
    });
    for (const strip of rest === 0 ? [] : strips!) {
      parts.push(this.#done({ ...size, [axis]: lengthOfTicks(strip) }, 'leftover'));
    }
    if (parts.length === 1) return parts[0]!;
    const last = unsettable[0] ?? parts.find(isLeftover) ?? null;
    if (last !== null) parts.splice(parts.indexOf(last), 1);
    return this.#toCut({ size, axis, groups: groupsOf(parts, axis), last, squares: null });
  }

  #makeCutOff(workpiece: ToCut, set: Length): CutOff {
    const { size, axis, last } = workpiece;
    const group = workpiece.groups.find((candidate) => candidate.set === set);
    assert(group !== undefined, 'A workpiece has no part of this length', { set, workpiece });
    const groups = workpiece.groups.filter((other) => other !== group);
    const { parts } = group;
    if (groups.length === 0) return { parts, remains: last };
    if (last === null && groups.length === 1 && groups[0]!.parts.length === 1) {
      return { parts, remains: groups[0]!.parts[0]! };
    }
    const left = lengthOfTicks(size[axis] - times(set, parts.length));
    const remains = this.#toCut({ size: { ...size, [axis]: left }, axis, groups, last, squares: null });
    return { parts, remains };
  }

  #done(size: Size, becomes: Done['becomes']): Done {
    return foundOrMade(this.#dones, `${size.width} ${size.height} ${becomes}`, () => {
      return { kind: 'done', kindNumber: this.#count++, size, becomes };
    });
  }

  #toCut(fields: Omit<ToCut, 'kind' | 'kindNumber'>): ToCut {
    const { size, axis, groups, last, squares } = fields;
    const lengthOfCut = axis === 'width' ? size.height : size.width;
    assert(lengthOfCut <= (this.#trimmer?.longest ?? Infinity), 'A cut is no longer than the trimmer cuts', {
      size,
      axis,
    });
    const row = groups.map(({ set, parts }) => `${set}:${parts.map((part) => part.kindNumber).join()}`);
    const key = `${axis} ${size.width} ${size.height} ${squares} ${row.join(' ')} ${last?.kindNumber}`;
    return foundOrMade(this.#toCuts, key, () => ({ kind: 'to cut', kindNumber: this.#count++, ...fields }));
  }
}

/** The parts that stand beside each other in a cut: parts of parts along the same axis stand beside the others. */
function rowOf(tree: CutTree & { kind: 'cut' }): readonly CutTree[] {
  const row: CutTree[] = [];
  const waiting: CutTree[] = [tree];
  for (let part = waiting.pop(); part !== undefined; part = waiting.pop()) {
    if (part.kind === 'cut' && part.axis === tree.axis) {
      assert(part.parts.length >= 2, 'A cut has at least two parts', {
        width: part.width,
        height: part.height,
      });
      waiting.push(...part.parts.toReversed());
    } else {
      row.push(part);
    }
  }
  return row;
}

function isLeftover(workpiece: Workpiece): boolean {
  return workpiece.kind === 'done' && workpiece.becomes === 'leftover';
}

function groupsOf(parts: readonly Workpiece[], axis: Axis): readonly Group[] {
  const bySet = new Map<Length, Workpiece[]>();
  for (const part of parts) foundOrMade(bySet, part.size[axis], () => []).push(part);
  return [...bySet]
    .sort(([a], [b]) => b - a)
    .map(([set, alike]) => ({ set, parts: alike.sort((a, b) => a.kindNumber - b.kindNumber) }));
}

function foundOrMade<Key, Value>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  let value = known.get(key);
  if (value === undefined) {
    value = make();
    known.set(key, value);
  }
  return value;
}
