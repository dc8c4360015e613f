import { type Path, valueAt } from '../files/index.ts';
import { beyondAlong, checkLayout, foldedBase } from '../layout/index.ts';
import { frontFor, openingAxis } from '../making/index.ts';
import { type Axis, type Length, lengthOfTicks, minus, roundTo, type Size } from '../measure/index.ts';
import type { PlanningCode, PlanningProblem, Shortage } from '../planning/index.ts';
import type { SheetStock } from '../stash/index.ts';
import type { EditOwner } from '../words/index.ts';
import { type Ailing, along, anchoredAt, lengthSet, mending, mendingOf, resized, spanned } from './ailing.ts';
import { type Change, changesTo } from './change.ts';
import type { Edit } from './edit.ts';
import type { InHand } from './inHand.ts';
import { inHandAfter, mendHolds } from './mends.ts';
import { typingOf } from './typing.ts';

/** An edit that mends something between a layout and the papers and trimmer on hand. */
export interface PlanningMend {
  readonly edit: Edit;
  /**
   * Whether it is known to mend it. Else the set has to be planned again with the edit, and `mendHolds` says then
   * whether it may be offered.
   */
  readonly sure: boolean;
}

/**
 * What may mend a problem of planning, best first and at most three; empty: nothing honest can be offered. All leave
 * the file sound and bring no new error of the layout. `marks` are the trimmer's, or the usual ones; `shortage` is what
 * planning found, if it came to one.
 */
export function planningMendsOf(
  inHand: InHand,
  problem: PlanningProblem,
  { marks, shortage }: { readonly marks: Length; readonly shortage: Shortage | null },
): readonly PlanningMend[] {
  const before = checkLayout(inHand.layout, inHand.arrangement);
  const index = inHand.layout.parts.findIndex(({ id }) => id === problem.part);
  const arranged = inHand.arrangement.parts[index];
  const ailing = arranged === undefined ? null : { inHand, index, arranged, piece: 0 };
  return mendsByCode[problem.code]({ inHand, problem, marks, shortage, ailing })
    .flatMap(({ edit, sure, holds }): readonly PlanningMend[] => {
      const after = edit && inHandAfter(inHand, edit);
      if (edit === null || after === null) return [];
      if (!mendHolds(problem, before, checkLayout(after.layout, after.arrangement))) return [];
      return holds === undefined || holds(after) ? [{ edit, sure }] : [];
    })
    .slice(0, 3);
}

interface Case {
  readonly inHand: InHand;
  readonly problem: PlanningProblem;
  readonly marks: Length;
  readonly shortage: Shortage | null;
  /** The part it is about; `null`: none, or the base. */
  readonly ailing: Ailing | null;
}

interface Tried {
  readonly edit: Edit | null;
  readonly sure: boolean;
  /** What is still to be seen of the layout afterwards. */
  readonly holds?: (after: InHand) => boolean;
}

const mendsByCode = {
  short,
  pieceTooLarge,
  pieceTooNarrow,
  betweenMarks,
  nothingToSpare,
  // The margins of a sheet are as they are.
  cannotSquare: () => [],
} as const satisfies Record<PlanningCode, (one: Case) => readonly Tried[]>;

// --- What is short ---

function short({ inHand, problem, shortage }: Case): readonly Tried[] {
  const { file, layout } = inHand;
  const cards = numberIn(problem, 'cards');
  const fewer =
    cards > 0
      ? mendingOf({ kind: 'set' }, inHand, { by: 'cards', count: cards }, changesTo(file, ['cards'], cards))
      : null;
  const id = paperOf(problem);
  const paper = layout.papers.get(id);
  const found = shortage?.papers.find((one) => one.paper === id);
  const more = (found?.moreSheets ?? []).map(({ stock, count }): Tried => {
    const now = paper?.sheets[stock]?.count ?? null;
    if (paper === undefined || now === null) return { edit: null, sure: true };
    const path = ['papers', id, 'sheets', stock, 'count'];
    const told = { by: 'more sheets', count: now + count, more: count } as const;
    const owner = { kind: 'paper', name: paper.name } as const;
    return { edit: mendingOf(owner, inHand, told, changesTo(file, path, now + count)), sure: true };
  });
  return [{ edit: fewer, sure: true }, ...more, { edit: freed(inHand, problem, id), sure: true }];
}

/** All pieces of a paper free to turn, where its direction is the limit. */
function freed(inHand: InHand, problem: PlanningProblem, id: string): Edit | null {
  const { file, layout } = inHand;
  const paper = layout.papers.get(id);
  if (problem.numbers.direction !== 1 || paper === undefined) return null;
  const dealt: readonly (readonly [Path, readonly string[]])[] = [
    [['base'], layout.base.papers],
    ...layout.parts.map(({ papers }, index) => [['parts', index], papers] as const),
  ];
  const changes = dealt.flatMap(([path, papers]) =>
    papers.includes(id) ? changesTo(file, [...path, 'turn'], 'free') : [],
  );
  return mendingOf({ kind: 'paper', name: paper.name }, inHand, { by: 'free' }, changes);
}

// --- Pieces that no sheet or trimmer gives ---

function pieceTooLarge({ inHand, problem, ailing, marks }: Case): readonly Tried[] {
  const turns =
    problem.numbers.direction === 1
      ? mendingOf(
          ailing === null ? { kind: 'base' } : { kind: 'part', name: ailing.arranged.part.name },
          inHand,
          { by: 'free' },
          changesTo(
            inHand.file,
            ailing === null ? ['base', 'turn'] : ['parts', ailing.index, 'turn'],
            'free',
          ),
        )
      : null;
  return [
    { edit: turns, sure: false },
    { edit: ailing && largestThatGoes(ailing, problem, marks), sure: false },
  ];
}

/** The part made as much smaller as the sheet wants that takes least of it. */
function largestThatGoes(ailing: Ailing, problem: PlanningProblem, marks: Length): Edit | null {
  const { layout } = ailing.inHand;
  const { part, cut } = ailing.arranged;
  if (cut === null || part.extent.by !== 'size') return null;
  const piece = { width: numberIn(problem, 'width'), height: numberIn(problem, 'height') };
  const sheets = layout.papers.get(paperOf(problem))?.sheets ?? [];
  const sizes = sheets.map((stock): Size => {
    const room = usable(stock);
    const side = (axis: Axis) =>
      piece[axis] <= room[axis] ? lengthOfTicks(piece[axis]) : roundTo(room[axis], marks, 'down');
    return { width: side('width'), height: side('height') };
  });
  const [best] = sizes.toSorted((a, b) => b.width * b.height - a.width * a.height);
  if (best === undefined || best.width <= 0 || best.height <= 0) return null;
  const size = part.lies === 'sideways' ? { width: best.height, height: best.width } : best;
  const axes = (['width', 'height'] as const).filter((axis) => size[axis] !== cut[axis]);
  const changes = axes.map((axis) => resized(ailing, axis, seenOf(ailing, axis, size[axis])));
  const [first] = axes;
  if (first === undefined || changes.some((change) => change === null)) return null;
  const told =
    axes.length === 1
      ? ({ by: 'length', of: first, to: size[first] } as const)
      : ({ by: 'cut size', ...size } as const);
  return mending(
    ailing,
    told,
    changes.flatMap((change) => change ?? []),
  );
}

function usable({ size, margin }: SheetStock): Size {
  return {
    width: lengthOfTicks(size.width - margin.left - margin.right),
    height: lengthOfTicks(size.height - margin.top - margin.bottom),
  };
}

function pieceTooNarrow({ problem, ailing, marks }: Case): readonly Tried[] {
  const cut = ailing?.arranged.cut ?? null;
  if (ailing === null || cut === null) return [];
  const wide = roundTo(lengthOfTicks(numberIn(problem, 'narrowest')), marks, 'up');
  const axes = (['width', 'height'] as const).filter((axis) => cut[axis] < wide);
  const [axis] = axes;
  if (axis === undefined || axes.length > 1) return [];
  const changes = resized(ailing, axis, seenOf(ailing, axis, wide));
  return [{ edit: mending(ailing, { by: 'length', of: axis, to: wide }, changes), sure: false }];
}

// --- Marks ---

function betweenMarks({ inHand, problem, ailing, marks }: Case): readonly Tried[] {
  const length = numberIn(problem, 'length');
  const [below, above] = (['down', 'up'] as const).map((way) => roundTo(lengthOfTicks(length), marks, way));
  const nearest = [below!, above!]
    .filter((mark) => mark > 0)
    .toSorted((a, b) => Math.abs(a - length) - Math.abs(b - length));
  const named: Axis = problem.names.axis === 'height' ? 'height' : 'width';
  if (ailing === null) {
    return nearest.map((mark) => ({ edit: baseAt(inHand, named, mark, marks), sure: false }));
  }
  const { part } = ailing.arranged;
  const axis = part.lies === 'sideways' ? along[named].other : named;
  return nearest.map((mark) => ({
    edit: cutAt(ailing, axis, mark),
    // Another piece may be short then.
    sure: false,
    holds: ({ arrangement }) => {
      const cut = arrangement.parts[ailing.index]?.cut ?? null;
      return cut !== null && cut[axis] % marks === 0;
    },
  }));
}

/** The base whose opened size along an axis is no more than that, and on a mark. */
function baseAt(inHand: InHand, axis: Axis, opened: Length, marks: Length): Edit | null {
  const base = foldedBase(inHand.layout);
  const front = frontFor(base, axis, opened);
  const to = axis === openingAxis(base) ? roundTo(front, marks, 'nearest') : opened;
  if (to <= 0) return null;
  return mendingOf({ kind: 'base' }, inHand, { by: 'length', of: axis, to }, baseSize(inHand, axis, to));
}

function baseSize({ file, layout }: InHand, axis: Axis, to: Length): readonly Change[] {
  const path = ['base', 'size', along[axis].side];
  return changesTo(file, path, typingOf(layout)(to, valueAt(file, path)));
}

/** The part whose cut size along an axis is that: by its size, its inset, or the distance from an edge. */
function cutAt(ailing: Ailing, axis: Axis, mark: Length): Edit | null {
  const { part, cut } = ailing.arranged;
  if (cut === null) return null;
  const more = minus(mark, cut[axis]);
  const { extent } = part;
  if (extent.by === 'inset') {
    const inset = extent.inset - more / 2;
    if (!Number.isInteger(inset) || inset <= 0) return null;
    const to = lengthOfTicks(inset);
    return mending(ailing, { by: 'length', of: 'inset', to }, lengthSet(ailing, ['inset'], to));
  }
  if (extent.by === 'size' && extent[axis] === null) return filledTo(ailing, axis, more);
  const of = extent.by === 'diameter' ? 'diameter' : axis;
  return mending(ailing, { by: 'length', of, to: mark }, resized(ailing, axis, seenOf(ailing, axis, mark)));
}

/** A part that fills its room, and with another distance from an edge so much more of it. */
function filledTo(ailing: Ailing, axis: Axis, more: Length): Edit | null {
  const { span, start, end } = along[axis];
  const place = ailing.arranged.part.places[0]![span];
  const which = place.end?.from === 'edge' ? 'end' : place.start?.from === 'edge' ? 'start' : null;
  const anchor = which && place[which];
  if (which === null || anchor?.from !== 'edge' || anchor.distance < more) return null;
  const to = minus(anchor.distance, more);
  const changes = spanned(ailing, axis, null, (now) => ({
    ...now,
    [which]: now[which] && anchoredAt(now[which], to),
  }));
  return mending(ailing, { by: 'length', of: which === 'end' ? end : start, to }, changes);
}

function seenOf({ arranged: { part } }: Ailing, axis: Axis, cut: Length): Length {
  return minus(cut, beyondAlong(part, axis));
}

// --- Fits ---

/** What is as long as the fit, of that paper, a mark shorter. */
function nothingToSpare({ inHand, problem, marks }: Case): readonly Tried[] {
  const { layout, arrangement } = inHand;
  const set = lengthOfTicks(numberIn(problem, 'set'));
  const to = roundTo(lengthOfTicks(set - 1), marks, 'down');
  const id = String(/^papers\.(?<id>[^.]+)\.sheets/.exec(problem.where)?.groups?.id);
  if (to <= 0) return [];
  const shorter = arrangement.parts.flatMap((arranged, index) => {
    const { part, cut } = arranged;
    if (!part.papers.includes(id) || cut === null) return [];
    const ailing: Ailing = { inHand, index, arranged, piece: 0 };
    return (['width', 'height'] as const).flatMap((axis) => {
      if (cut[axis] !== set) return [];
      const changes = resized(ailing, axis, seenOf(ailing, axis, to));
      return changes === null ? [] : [{ name: part.name, axis, changes }];
    });
  });
  const [first] = shorter;
  if (first === undefined) return [];
  const owner: EditOwner = { kind: 'part', name: first.name };
  const told = { by: 'length', of: first.axis, to } as const;
  const one = mendingOf(owner, inHand, told, first.changes);
  const all = mendingOf(
    { kind: 'paper', name: layout.papers.get(id)!.name },
    inHand,
    { by: 'pieces shorter', to, from: set },
    shorter.flatMap(({ changes }) => changes),
  );
  return shorter.length === 1
    ? [{ edit: one, sure: false }]
    : [
        { edit: all, sure: false },
        { edit: one, sure: false },
      ];
}

// --- What a problem brings ---

/** The paper of a piece: `part/paper`. */
function paperOf({ names }: PlanningProblem): string {
  return (names.piece ?? '').split('/').at(-1)!;
}

function numberIn({ numbers }: PlanningProblem, name: string): number {
  return numbers[name] ?? 0;
}
