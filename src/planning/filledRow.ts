import { unseen } from '../layout/index.ts';
import { halves, type Length, minus, roundTo, sum, times, zero } from '../measure/index.ts';

/** A row of borders, sizes and gaps that is to fill what it lies on again, which has become another length. */
export interface RowToFill {
  /** Border, size, gap, size … border, as they were. */
  readonly terms: readonly RowTerm[];
  /** What it lies on now. */
  readonly total: Length;
  readonly marks: Length;
}

export interface RowTerm {
  readonly kind: 'border' | 'gap' | 'size';
  readonly length: Length;
  /** Of a size: the part; all pieces of one part get one size. */
  readonly part: string | null;
  /** Of a size: what it is already known to be; `null`: it shares what is left. */
  readonly fixed: Length | null;
}

/**
 * The row's lengths so that they add up to `total` to the tick; `null` where nothing is left for its sizes.
 *
 * Borders and gaps are rounded to whole marks, alike where they were alike. The sizes share what is left in
 * proportion to what they were, in whole marks and alike where they were alike; what whole marks leave over is put
 * where it is least against the length it changes: on the largest size as a rule, on gaps where several pieces of
 * one size do not divide the rest. Where no size may move, or the total falls between marks, the borders take the
 * rest: half each where they were even (gaps a mark each where that cannot be halved), else the last one all of it.
 */
export function filledRow({ terms, total, marks }: RowToFill): readonly Length[] | null {
  const first = terms[0]!.length;
  const evenBorders = Math.abs(first - terms.at(-1)!.length) <= unseen;
  const gaps = terms.filter(({ kind }) => kind === 'gap');
  const evenGaps = gaps.every(({ length }) => Math.abs(length - gaps[0]!.length) <= unseen);
  const targets = terms.map(({ kind, length, fixed }) => {
    if (kind === 'size') return fixed ?? zero;
    if (kind === 'gap') return onMark(evenGaps ? gaps[0]!.length : length, marks);
    return onMark(evenBorders ? first : length, marks);
  });
  const rest = minus(total, sum(...targets));
  const toBorders = (lengths: readonly Length[], more: Length) => {
    const { smaller, larger } = halves(more);
    return lengths
      .with(0, sum(lengths[0]!, evenBorders ? smaller : zero))
      .with(-1, sum(lengths.at(-1)!, evenBorders ? larger : more));
  };

  const groups = groupsOf(terms);
  if (groups.length === 0) {
    // Where an odd mark cannot be halved, an odd number of gaps can take one each.
    const isOdd = evenBorders && rest % marks === 0 && (rest / marks) % 2 !== 0;
    const spread = isOdd && evenGaps && gaps.length % 2 === 1 && targets[2]! > 0;
    const wider = targets.map((length, index) =>
      spread && terms[index]!.kind === 'gap' ? sum(length, marks) : length,
    );
    return toBorders(wider, minus(rest, spread ? times(marks, gaps.length) : zero));
  }
  const room = Math.floor(rest / marks);
  const inMarks = (length: Length) => Math.round(length / marks);
  const best = bestShares(groups, {
    room,
    gap: evenGaps && gaps.length > 0 ? { count: gaps.length, marks: inMarks(targets[2]!) } : null,
    border: evenBorders ? { count: 2, marks: inMarks(targets[0]!) } : null,
  });
  if (best === null) return null;
  const lengths = terms.map(({ kind, part }, index) => {
    if (kind === 'gap') return sum(targets[index]!, times(marks, best.gapMore));
    if (kind === 'border') return sum(targets[index]!, times(marks, best.borderMore));
    return best.sizes.has(part!) ? times(marks, best.sizes.get(part!)!) : targets[index]!;
  });
  return toBorders(lengths, minus(rest, times(marks, room)));
}

/** A border, gap or tear on the nearest mark, but never rounded to nothing; what nobody sees is nothing. */
export function onMark(length: Length, marks: Length): Length {
  if (Math.abs(length) <= unseen) return zero;
  const nearest = roundTo(length, marks, 'nearest');
  return nearest === zero ? times(marks, Math.sign(length)) : nearest;
}

/** The sizes of one part that are free, as one unknown. */
interface Group {
  readonly part: string;
  readonly count: number;
  readonly length: Length;
}

function groupsOf(terms: readonly RowTerm[]): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const { kind, part, length, fixed } of terms) {
    if (kind !== 'size' || fixed !== null) continue;
    const count = (groups.get(part!)?.count ?? 0) + 1;
    groups.set(part!, { part: part!, count, length });
  }
  return [...groups.values()];
}

interface Shares {
  /** In marks, by part. */
  readonly sizes: ReadonlyMap<string, number>;
  readonly gapMore: number;
  readonly borderMore: number;
}

interface Alike {
  readonly count: number;
  /** In marks. */
  readonly marks: number;
}

/**
 * What each size gets of `room` marks, and how many marks more every gap and border, so that the squares of what is
 * changed, each against the length it changes, are least in all. Sizes that were alike and no longer are count as
 * much as a mark that doubles a border.
 */
function bestShares(
  groups: readonly Group[],
  { room, gap, border }: { readonly room: number; readonly gap: Alike | null; readonly border: Alike | null },
): Shares | null {
  let best: { shares: Shares; shown: number } | null = null;
  const alike = alikeGroups(groups);
  const ways =
    alike.length === groups.length
      ? [groups.map((group) => [group])]
      : [alike, groups.map((group) => [group])];
  for (const [way, classes] of ways.entries()) {
    for (const gapMore of changesOf(gap)) {
      for (const borderMore of changesOf(border)) {
        const left = room - (gap?.count ?? 0) * gapMore - (border?.count ?? 0) * borderMore;
        const shared = sharesOf(classes, left);
        if (shared === null) continue;
        // A border stands in both ways of the card: to change one of four shows twice.
        const shown = shared.shown + shownBy(gap, gapMore) + 2 * shownBy(border, borderMore) + way;
        if (best !== null && best.shown <= shown) continue;
        best = { shares: { sizes: shared.sizes, gapMore, borderMore }, shown };
      }
    }
  }
  return best?.shares ?? null;
}

function alikeGroups(groups: readonly Group[]): readonly (readonly Group[])[] {
  const classes: Group[][] = [];
  for (const group of groups) {
    const same = classes.find(([one]) => Math.abs(one!.length - group.length) <= unseen);
    if (same === undefined) classes.push([group]);
    else same.push(group);
  }
  return classes;
}

function changesOf(alike: Alike | null): readonly number[] {
  if (alike === null || alike.marks === 0) return [0];
  return [0, 1, -1, 2, -2].filter((more) => alike.marks + more > 0);
}

function shownBy(alike: Alike | null, more: number): number {
  return alike === null || more === 0 ? 0 : (alike.count * more * more) / alike.marks;
}

/** Whole marks for each class that make `room` together, near to their share; `null` where there are none. */
function sharesOf(
  classes: readonly (readonly Group[])[],
  room: number,
): { readonly sizes: ReadonlyMap<string, number>; readonly shown: number } | null {
  const counts = classes.map((groups) => groups.reduce((total, { count }) => total + count, 0));
  const weight = classes.reduce((total, [group], index) => total + counts[index]! * group!.length, 0);
  const ideals = classes.map(([group]) => (room * group!.length) / weight);
  if (room < counts.reduce((total, count) => total + count, 0)) return null;
  const marks =
    classes.length <= mostTried ? nearestMarks(counts, ideals, room) : dealtMarks(counts, ideals, room);
  if (marks === null) return null;
  return {
    sizes: new Map(classes.flatMap((groups, index) => groups.map(({ part }) => [part, marks[index]!]))),
    shown: shownOf(counts, ideals, marks),
  };
}

/** With more sizes in a row than this the marks are dealt one by one. */
const mostTried = 5;

function shownOf(counts: readonly number[], ideals: readonly number[], marks: readonly number[]): number {
  return marks.reduce((total, mark, index) => {
    const ideal = Math.max(ideals[index]!, 1);
    return total + (counts[index]! * (mark - ideal) ** 2) / ideal;
  }, 0);
}

/** Every choice within two marks of the shares is tried; the last class takes what is left. */
function nearestMarks(
  counts: readonly number[],
  ideals: readonly number[],
  room: number,
): readonly number[] | null {
  let best: readonly number[] | null = null;
  const tryFrom = (chosen: readonly number[], left: number) => {
    const index = chosen.length;
    const count = counts[index]!;
    if (index === counts.length - 1) {
      if (left < count || left % count !== 0) return;
      const marks = [...chosen, left / count];
      if (best === null || shownOf(counts, ideals, marks) < shownOf(counts, ideals, best)) best = marks;
      return;
    }
    const middle = Math.round(ideals[index]!);
    for (const mark of [middle, middle + 1, middle - 1, middle + 2, middle - 2]) {
      if (mark >= 1) tryFrom([...chosen, mark], left - mark * count);
    }
  };
  tryFrom([], room);
  return best;
}

/** Shares rounded down, then mark after mark to where it shows least. */
function dealtMarks(
  counts: readonly number[],
  ideals: readonly number[],
  room: number,
): readonly number[] | null {
  let marks: readonly number[] = ideals.map((ideal) => Math.max(1, Math.floor(ideal)));
  let left = room - marks.reduce((total, mark, index) => total + mark * counts[index]!, 0);
  while (left > 0) {
    const more = marks
      .flatMap((mark, index) => (counts[index]! <= left ? [marks.with(index, mark + 1)] : []))
      .toSorted((a, b) => shownOf(counts, ideals, a) - shownOf(counts, ideals, b))[0];
    if (more === undefined) return null;
    left -= more.reduce((total, mark, index) => total + (mark - marks[index]!) * counts[index]!, 0);
    marks = more;
  }
  return left === 0 ? marks : null;
}
