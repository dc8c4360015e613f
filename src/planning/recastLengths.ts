import {
  type ArrangedPart,
  type Arrangement,
  arrange,
  type Dimension,
  dimensionsOf,
  isFolded,
  type Layout,
  type LayoutSum,
  type Part,
  sumsOf,
  unseen,
  withLengths,
} from '../layout/index.ts';
import { type Axis, type Length, lengthOfTicks, minus, roundTo, type Size, sum } from '../measure/index.ts';
import { filledRow, onMark, type RowTerm } from './filledRow.ts';
import { tornOverlaps } from './tornOverlaps.ts';

/** What a layout is drawn anew for. */
export interface RecastTarget {
  /** The closed front. */
  readonly base: Size;
  /** Whether another base was asked for: what does not fill its place keeps its share then, else its size. */
  readonly scales: boolean;
  readonly marks: Length;
  /** The marks of a trimmer that can be set to nothing else; `null`: what lies between marks can be cut too. */
  readonly settable: Length | null;
  /** Seen sizes that are settled, by `heldKey`. */
  readonly held?: ReadonlyMap<string, Length>;
}

/** The key of a part's seen size along an axis. */
export function heldKey(part: string, axis: Axis): string {
  return `${part} ${axis}`;
}

/**
 * Why a length is what it now is. `asked`: of the base; `mark`: rounded to one; `fills`: what its row leaves;
 * `share`: of what it lies on; `follows`: a place that goes with the parts around it; `suits`: moved so that the
 * cards come out; `die`, `stamp`, `bought`, `folded` (of a strip), `fixed` (nothing may move): true sizes, which are kept; `stays`.
 */
export type RecastReason =
  | 'asked'
  | 'mark'
  | 'fills'
  | 'share'
  | 'follows'
  | 'suits'
  | 'die'
  | 'stamp'
  | 'bought'
  | 'folded'
  | 'fixed'
  | 'stays';

/** A length drawn anew. */
export interface NewLength {
  readonly length: Length;
  readonly why: RecastReason;
}

/**
 * Every length of a layout drawn anew, by the paths of `dimensionsOf`, so that on the new base the rows of borders,
 * sizes and gaps add up to the tick again and what was even still is; the sizes of all parts must be known.
 *
 * What the parts lie on comes before them. Rows that frame what they lie on (their two borders take a quarter of it
 * at most) fill it again, see `filledRow`. What frames nothing keeps its size or its share; a place that is a border
 * (an eighth of what it lies on at most) stays one, another follows the row that it lies over. Dies, stamps, bought
 * parts and parts that may not move keep their true size: where they are cut from paper, a die's or a stamp's piece
 * is brought up to the next mark, since a little more paper does no harm, and one that may not move goes to the
 * nearest mark only where the trimmer can be set to no other. A stamped part that frames what it lies on fills it
 * like any other.
 */
export function recastLengths(layout: Layout, arrangement: Arrangement, target: RecastTarget): RecastLengths {
  const { lengths, unfilled } = new Recasting(layout, arrangement, target);
  return { lengths, unfilled };
}

/** A layout drawn anew. */
export interface RecastLengths {
  /** By the paths of `dimensionsOf`, all of them. */
  readonly lengths: ReadonlyMap<string, NewLength>;
  /** Ids of the parts to which borders and gaps leave nothing of what they lie on; none as a rule. */
  readonly unfilled: ReadonlySet<string>;
}

const axes = ['width', 'height'] as const;
const edgesOf = {
  width: { start: 'left', end: 'right', span: 'across' },
  height: { start: 'top', end: 'bottom', span: 'down' },
} as const;

/** One thing that parts lie on. */
interface Bed {
  readonly on: string;
  readonly old: Size;
  readonly now: Size;
}

/** A row that fills what it lies on, before and after. */
interface FilledRow {
  readonly pieces: readonly RowPiece[];
  readonly total: readonly [old: Length, now: Length];
}

interface RowPiece {
  readonly part: string;
  readonly piece: number;
  readonly old: Stretch;
  readonly now: Stretch;
}

/** From the start of what it lies on. */
interface Stretch {
  readonly start: Length;
  readonly length: Length;
}

class Recasting {
  readonly lengths = new Map<string, NewLength>();
  readonly unfilled = new Set<string>();
  private readonly dimensions: ReadonlyMap<string, readonly Dimension[]>;
  private readonly arranged: ReadonlyMap<string, ArrangedPart>;
  private readonly rows: readonly LayoutSum[];
  /** Seen lengths drawn anew, by part and axis. */
  private readonly seen = new Map<string, NewLength>();

  constructor(
    private readonly layout: Layout,
    arrangement: Arrangement,
    private readonly target: RecastTarget,
  ) {
    const dimensions = new Map<string, Dimension[]>();
    for (const dimension of dimensionsOf(layout)) {
      const own = dimensions.get(dimension.part);
      if (own === undefined) dimensions.set(dimension.part, [dimension]);
      else own.push(dimension);
    }
    this.dimensions = dimensions;
    this.arranged = new Map(arrangement.parts.map((arranged) => [arranged.part.id, arranged]));
    this.rows = this.rowsOf(arrangement);
    this.base();
    for (const part of layout.parts) this.tears(part);
    for (const [key, length] of target.held ?? []) this.seen.set(key, { length, why: 'suits' });
    for (const face of ['base', 'inside', 'back']) {
      this.bed({ on: face, old: layout.base.size, now: target.base });
    }
    for (const [index, part] of layout.parts.entries()) {
      if (!layout.parts.some(({ on }) => on === part.id)) continue;
      const now = this.soFar().parts[index]!.seen;
      const old = arrangement.parts[index]!.seen;
      if (now !== null && old !== null) this.bed({ on: part.id, old, now });
    }
    this.mendSums();
    this.mendOverlaps(arrangement);
  }

  private soFar(): Arrangement {
    return arrange(
      withLengths(this.layout, new Map([...this.lengths].map(([path, { length }]) => [path, length]))),
    );
  }

  private set({ path, length: old }: Dimension, length: Length, why: RecastReason): void {
    if (this.lengths.has(path)) return;
    const stays = length === old && !keptReasons.has(why);
    this.lengths.set(path, { length, why: stays ? 'stays' : why });
  }

  private dimensionsOfPart(part: Part): readonly Dimension[] {
    return this.dimensions.get(part.id) ?? [];
  }

  private base(): void {
    const { base, scales } = this.target;
    for (const dimension of this.dimensions.get('base') ?? []) {
      const axis = dimension.axis as Axis;
      this.set(dimension, base[axis], scales ? 'asked' : 'mark');
    }
  }

  private tears(part: Part): void {
    const keeps = this.keptAs(part);
    for (const dimension of this.dimensionsOfPart(part)) {
      if (dimension.kind !== 'beyond') continue;
      if (keeps === null) this.set(dimension, onMark(dimension.length, this.target.marks), 'mark');
      else this.set(dimension, dimension.length, keeps);
    }
  }

  /** What of the cut length is then not seen. */
  private beyond(part: Part, axis: Axis): Length {
    return sum(
      ...this.dimensionsOfPart(part).flatMap(({ kind, axis: along, path }) => {
        if (kind !== 'beyond' || (along !== axis && along !== 'both')) return [];
        const { length } = this.lengths.get(path)!;
        // A margin lies at both ends.
        return along === 'both' ? [length, length] : [length];
      }),
    );
  }

  /** Why a part keeps its true size; `null`: it does not. */
  private keptAs(part: Part): RecastReason | null {
    if (part.extent.by === 'inset') return null;
    if (part.papers.length === 0) return 'bought';
    if (isFolded(part.shape)) return 'folded';
    if (part.dieCut) return 'die';
    if (part.rooms === 'none') return 'fixed';
    return part.stamped && !this.frames(part) ? 'stamp' : null;
  }

  private frames(part: Part): boolean {
    return this.rows.some(
      (row) => row.terms.some((term) => term.kind === 'size' && term.part === part.id) && this.isFraming(row),
    );
  }

  /** All sums; and what lies flat in a sum that frames only without what is raised over it and happens to fit in. */
  private rowsOf(arrangement: Arrangement): readonly LayoutSum[] {
    const rows = sumsOf(arrangement);
    const flat = sumsOf({
      ...arrangement,
      parts: arrangement.parts.filter(({ part }) => part.adhere === 'flat'),
    });
    const framing = new Set(rows.filter((row) => this.isFraming(row)).flatMap(partsIn));
    return [
      ...rows,
      ...flat.filter((row) => this.isFraming(row) && !partsIn(row).every((part) => framing.has(part))),
    ];
  }

  /** As the check of uneven borders has it; what is raised frames only what it all but covers. */
  private isFraming({ terms, total }: LayoutSum): boolean {
    const [before, after] = [terms[0]!.length, terms.at(-1)!.length];
    if (before < -unseen || after < -unseen) return false;
    const raised = terms.some(
      (term) => term.kind === 'size' && this.arranged.get(term.part)!.part.adhere !== 'flat',
    );
    if (raised) return Math.abs(before - after) <= unseen && (before + after) * 8 <= total;
    return (before + after) * 4 <= total;
  }

  // --- What lies on one bed ---

  private bed(bed: Bed): void {
    const parts = this.layout.parts.filter(({ on }) => on === bed.on);
    if (parts.length === 0) return;
    for (const part of parts) {
      this.inset(part, bed);
      this.kept(part);
      this.circle(part, bed);
    }
    for (const axis of axes) {
      const filled: FilledRow[] = [];
      for (const row of this.framingRows(bed, axis)) {
        const solved = this.filled(row, bed);
        if (solved !== null) filled.push(solved);
      }
      for (const part of parts) this.freeSize(part, bed, axis, filled);
      for (const row of this.evenRows(bed, axis)) {
        const solved = this.filled(row, bed);
        if (solved !== null) filled.push(solved);
      }
      for (const part of parts) this.places(part, bed, axis, filled);
    }
    for (const part of parts) this.sizes(part);
  }

  private seenOf(part: string, axis: Axis): NewLength | undefined {
    return this.seen.get(heldKey(part, axis));
  }

  private see(part: string, axis: Axis, length: Length, why: RecastReason): void {
    if (this.seenOf(part, axis) === undefined) this.seen.set(heldKey(part, axis), { length, why });
  }

  private inset(part: Part, { now }: Bed): void {
    const { marks } = this.target;
    const dimension = this.dimensionsOfPart(part).find(({ kind }) => kind === 'inset');
    if (dimension === undefined) return;
    let inset = onMark(dimension.length, marks);
    // A base between marks: what is over goes to the borders, where both ways agree.
    const over = now.width % marks;
    if (over === now.height % marks && over % 2 === 0) inset = sum(inset, lengthOfTicks(over / 2));
    this.set(dimension, inset, 'mark');
    for (const axis of axes) this.see(part.id, axis, lengthOfTicks(now[axis] - 2 * inset), 'fills');
  }

  private kept(part: Part): void {
    const why = this.keptAs(part);
    const { cut, seen } = this.arranged.get(part.id)!;
    if (why === null || cut === null) return;
    const { extent } = part;
    if (why === 'folded') {
      for (const axis of axes) this.see(part.id, axis, seen![axis], why);
      return;
    }
    for (const axis of axes) {
      if (extent.by === 'size' && extent[axis] === null) continue;
      this.see(part.id, axis, minus(this.keptLength(cut[axis], why), this.beyond(part, axis)), why);
    }
  }

  private keptLength(length: Length, why: RecastReason): Length {
    const { marks, settable } = this.target;
    switch (why) {
      case 'die':
      case 'stamp':
        return roundTo(length, marks, 'up');
      case 'fixed':
        return settable === null ? length : onMark(length, settable);
      default:
        return length;
    }
  }

  /** A circle has one size for both ways: the smaller of what they leave it. */
  private circle(part: Part, bed: Bed): void {
    const { extent } = part;
    if (extent.by !== 'diameter' || this.seenOf(part.id, 'width') !== undefined) return;
    const ways = axes.map((axis) => {
      const rows = this.framingRows(bed, axis).filter((row) =>
        row.terms.some((term) => term.kind === 'size' && term.part === part.id),
      );
      const fills = rows.flatMap((row) => {
        const lengths = this.fill(row, bed);
        const index = row.terms.findIndex((term) => term.kind === 'size' && term.part === part.id);
        return lengths === null ? [] : [{ length: lengths[index]!, why: 'fills' as const }];
      });
      return fills[0] ?? this.freeLength(extent.diameter, bed, axis);
    });
    const [across, down] = ways as [NewLength, NewLength];
    const smaller = across.length <= down.length ? across : down;
    for (const axis of axes) this.see(part.id, axis, smaller.length, smaller.why);
  }

  // --- Rows ---

  /** The longest first: they have least to choose from. */
  private framingRows({ on }: Bed, axis: Axis): readonly LayoutSum[] {
    return this.rows
      .filter((row) => row.on === on && row.axis === axis && this.isFraming(row))
      .toSorted((a, b) => b.terms.length - a.terms.length);
  }

  /**
   * Rows of several pieces that frame nothing and lie evenly all the same: their sizes are known by then, the gaps
   * are rounded, and the borders take the rest.
   */
  private evenRows({ on }: Bed, axis: Axis): readonly LayoutSum[] {
    return this.rows.filter((row) => {
      if (row.on !== on || row.axis !== axis || this.isFraming(row)) return false;
      const [before, after] = [row.terms[0]!.length, row.terms.at(-1)!.length];
      return (
        row.terms.length > 3 &&
        Math.abs(before - after) <= unseen &&
        row.terms.every((term) =>
          term.kind === 'size' ? this.seenOf(term.part, axis) !== undefined : term.length > unseen,
        )
      );
    });
  }

  private filled(row: LayoutSum, bed: Bed): FilledRow | null {
    const { axis, terms } = row;
    const lengths = this.fill(row, bed);
    if (lengths === null) return null;
    const pieces: RowPiece[] = [];
    let [oldStart, nowStart]: readonly [number, number] = [0, 0];
    for (const [index, term] of terms.entries()) {
      const now = lengths[index]!;
      if (term.kind === 'size') {
        pieces.push({
          part: term.part,
          piece: this.pieceAt(term.part, row, oldStart),
          old: { start: lengthOfTicks(oldStart), length: term.length },
          now: { start: lengthOfTicks(nowStart), length: now },
        });
        this.see(term.part, axis, now, 'fills');
      }
      oldStart += term.length;
      nowStart += now;
    }
    return { pieces, total: [bed.old[axis], bed.now[axis]] };
  }

  private pieceAt(part: string, { axis, onPiece }: LayoutSum, start: number): number {
    const edge = edgesOf[axis].start;
    const { pieces } = this.arranged.get(part)!;
    return pieces.findIndex((laid) => (laid.onPiece ?? 0) === onPiece && laid.borders?.[edge] === start);
  }

  /** The row's lengths anew; as they are where all of it stands on the marks and what it lies on has not changed. */
  private fill({ axis, terms }: LayoutSum, bed: Bed): readonly Length[] | null {
    const { marks } = this.target;
    const rowTerms = terms.map((term): RowTerm => {
      const part = term.kind === 'size' ? term.part : null;
      const fixed = part === null ? null : (this.seenOf(part, axis)?.length ?? null);
      return { kind: term.kind, length: term.length, part, fixed };
    });
    const stays =
      bed.old[axis] === bed.now[axis] &&
      rowTerms.every(
        ({ part, fixed, length }) =>
          part === null ||
          ((fixed === null ? length % marks === 0 : fixed === length) && this.isOnMarks(part, axis)),
      );
    if (stays) return terms.map(({ length }) => length);
    const filled = filledRow({ terms: rowTerms, total: bed.now[axis], marks });
    const least = rowTerms.map(({ part, fixed, length }) =>
      part === null ? onMark(length, marks) : (fixed ?? marks),
    );
    if (filled === null && sum(...least) > bed.now[axis])
      for (const { part, fixed } of rowTerms) if (part !== null && fixed === null) this.unfilled.add(part);
    return filled;
  }

  private isOnMarks(part: string, axis: Axis): boolean {
    return (this.dimensions.get(part) ?? []).every(
      (dimension) =>
        (dimension.axis !== axis && dimension.axis !== 'both') || dimension.length % this.target.marks === 0,
    );
  }

  // --- What frames nothing ---

  private freeSize(part: Part, bed: Bed, axis: Axis, filled: readonly FilledRow[]): void {
    const { extent } = part;
    const old = this.arranged.get(part.id)!.seen;
    if (extent.by !== 'size' || extent[axis] === null || old === null) return;
    if (this.seenOf(part.id, axis) !== undefined) return;
    if (this.isEven(part, axis)) {
      // In line with a row on both sides.
      const border = (bed.old[axis] - old[axis]) / 2;
      const line = filled.find(({ pieces }) => Math.abs(pieces[0]!.old.start - border) <= unseen);
      const between = line === undefined ? 0 : bed.now[axis] - 2 * line.pieces[0]!.now.start;
      if (border > unseen && between > 0) {
        this.see(part.id, axis, lengthOfTicks(between), 'fills');
        return;
      }
    }
    const free = this.freeLength(old[axis], bed, axis);
    const { why } = free;
    const length = this.withinRow(free.length, old[axis], filled);
    const stays = length === old[axis] && bed.now[axis] === bed.old[axis];
    this.see(
      part.id,
      axis,
      stays || !this.isEven(part, axis) ? length : this.centredLength(length, bed.now[axis]),
      why,
    );
  }

  /** What was shorter than a row stays shorter by a mark at each end, so that the row still shows under it. */
  private withinRow(length: Length, old: Length, filled: readonly FilledRow[]): Length {
    const { marks } = this.target;
    const most = filled.flatMap(({ pieces }) => {
      const [first, last] = [pieces[0]!, pieces.at(-1)!];
      const spanOf = (at: 'old' | 'now') => last[at].start + last[at].length - first[at].start;
      return old < spanOf('old') - unseen && length >= spanOf('now') ? [spanOf('now') - 2 * marks] : [];
    });
    return most.length === 0 ? length : lengthOfTicks(Math.max(marks, Math.min(...most)));
  }

  /** Whether every piece of a part leaves as much on either side of it. */
  private isEven(part: Part, axis: Axis): boolean {
    const { start, end } = edgesOf[axis];
    return this.arranged
      .get(part.id)!
      .pieces.every(({ borders }) => borders !== null && Math.abs(borders[start] - borders[end]) <= unseen);
  }

  /** The length, or a mark less, so that what is centred has borders on marks. */
  private centredLength(length: Length, total: Length): Length {
    const { marks } = this.target;
    const isOdd = total % marks === 0 && ((total - length) / marks) % 2 !== 0;
    return isOdd && length > marks ? minus(length, marks) : length;
  }

  private freeLength(old: Length, bed: Bed, axis: Axis): NewLength {
    const { marks, scales } = this.target;
    const wanted = scales ? lengthOfTicks(Math.round((old * bed.now[axis]) / bed.old[axis])) : old;
    const nearest = onMark(wanted, marks);
    // What fitted still does.
    const most = old > bed.old[axis] + unseen ? nearest : roundTo(bed.now[axis], marks, 'down');
    return {
      length: lengthOfTicks(Math.max(marks, Math.min(nearest, most))),
      why: scales ? 'share' : 'mark',
    };
  }

  /** Distances and gaps of a part along an axis. */
  private places(part: Part, bed: Bed, axis: Axis, filled: readonly FilledRow[]): void {
    const stays = this.staysAlong(bed, axis);
    for (const dimension of this.dimensionsOfPart(part)) {
      if (dimension.axis !== axis && dimension.axis !== 'both') continue;
      if (dimension.kind !== 'border' && dimension.kind !== 'gap') continue;
      if (stays && dimension.length % this.target.marks === 0) {
        this.set(dimension, dimension.length, 'stays');
        continue;
      }
      const listed = /\.place\[(\d+)\]/.exec(dimension.path)?.[1];
      const inRow = filled
        .flatMap((row) => row.pieces.map((piece) => ({ row, ...piece })))
        .find((found) => found.part === part.id && (listed === undefined || found.piece === Number(listed)));
      const piece = listed === undefined ? (inRow?.piece ?? 0) : Number(listed);
      if (dimension.kind === 'border') {
        if (inRow === undefined) this.freeBorder(dimension, { part, piece, axis, bed, filled });
        else {
          const { start, length } = inRow.now;
          const isStart = dimension.name === edgesOf[axis].start;
          const distance = isStart ? start : lengthOfTicks(inRow.row.total[1] - start - length);
          this.set(
            dimension,
            distance,
            distance === onMark(dimension.length, this.target.marks) ? 'mark' : 'follows',
          );
        }
      }
      if (dimension.kind === 'gap') {
        const gap = inRow === undefined ? null : this.gapInRow(part, inRow, axis);
        this.set(dimension, gap ?? onMark(dimension.length, this.target.marks), 'mark');
      }
    }
  }

  /** Whether neither a bed nor anything that lies on it has become another length along an axis. */
  private staysAlong(bed: Bed, axis: Axis): boolean {
    return (
      bed.old[axis] === bed.now[axis] &&
      this.layout.parts.every(({ id, on }) => {
        const [old, now] = [this.arranged.get(id)!.seen?.[axis], this.seenOf(id, axis)?.length];
        return on !== bed.on || now === undefined || now === old;
      })
    );
  }

  /** The gap that a row leaves a piece to its neighbour; `null` where the neighbour does not stand in it. */
  private gapInRow(
    part: Part,
    { row, piece, now }: RowPiece & { readonly row: FilledRow },
    axis: Axis,
  ): Length | null {
    const { start, end } = part.places[piece]![edgesOf[axis].span];
    if (start?.from === 'part') {
      const beside = row.pieces.find(this.isBeside(start.part, part, piece, axis, 'start'));
      if (beside !== undefined) return lengthOfTicks(now.start - beside.now.start - beside.now.length);
    }
    if (end?.from === 'part') {
      const beside = row.pieces.find(this.isBeside(end.part, part, piece, axis, 'end'));
      if (beside !== undefined) return lengthOfTicks(beside.now.start - now.start - now.length);
    }
    return null;
  }

  /** Tells the piece of a neighbour that a piece is laid to: that of its own number, else the one that reaches furthest. */
  private isBeside(
    neighbour: string,
    { places }: Part,
    piece: number,
    axis: Axis,
    at: 'start' | 'end',
  ): (candidate: RowPiece) => boolean {
    const { pieces } = this.arranged.get(neighbour)!;
    const edge = edgesOf[axis].start;
    const reach = ({ box }: (typeof pieces)[number]) =>
      at === 'start' ? box![edge] + box![axis] : -box![edge];
    const furthest = pieces.reduce(
      (best, laid, index) => (reach(laid) > reach(pieces[best]!) ? index : best),
      0,
    );
    const wanted = pieces.length === places.length ? piece : furthest;
    return (candidate) => candidate.part === neighbour && candidate.piece === wanted;
  }

  private freeBorder(
    dimension: Dimension,
    {
      part,
      piece,
      axis,
      bed,
      filled,
    }: {
      readonly part: Part;
      readonly piece: number;
      readonly axis: Axis;
      readonly bed: Bed;
      readonly filled: readonly FilledRow[];
    },
  ): void {
    const { marks, scales } = this.target;
    const { length: distance } = dimension;
    const [old, now] = [bed.old[axis], bed.now[axis]];
    const laid = this.arranged.get(part.id)!.pieces[piece]!;
    const seen = this.arranged.get(part.id)!.seen;
    const settled = this.seenOf(part.id, axis)?.length;
    if (settled !== undefined && this.isEven(part, axis)) {
      const half = lengthOfTicks(Math.floor((now - settled) / 2));
      this.set(dimension, half, half === onMark(distance, marks) ? 'mark' : 'follows');
      return;
    }
    const line = this.lineAt(dimension, { axis, bed, filled });
    if (line !== null) {
      this.set(dimension, line, line === onMark(distance, marks) ? 'mark' : 'follows');
      return;
    }
    if (distance * 8 <= old || laid.borders === null || seen === null) {
      this.set(dimension, onMark(distance, marks), 'mark');
      return;
    }
    const guide = filled[0];
    const { start, end } = edgesOf[axis];
    const [before, after] = [laid.borders[start], laid.borders[end]];
    if (guide === undefined && !scales) {
      this.set(dimension, onMark(distance, marks), 'mark');
      return;
    }
    const goesTo = (place: number) => (guide === undefined ? (place * now) / old : along(guide, place));
    const newSeen = this.seenOf(part.id, axis)?.length;
    let wanted: number;
    if (newSeen === undefined) {
      // It fills: each end goes its own way.
      wanted = dimension.name === start ? goesTo(distance) : now - goesTo(old - distance);
    } else {
      const fits = before >= -unseen && after >= -unseen;
      const middle = goesTo(before + seen[axis] / 2) - newSeen / 2;
      const place = fits ? Math.max(0, Math.min(middle, now - newSeen)) : middle;
      wanted = dimension.name === start ? place : now - place - newSeen;
    }
    // What lies in the middle of a gap may lie halfway between two marks: it is laid there, not cut.
    const isHalfway = newSeen !== undefined && (2 * wanted) % marks === 0;
    const place = lengthOfTicks(Math.round(wanted));
    this.set(dimension, isHalfway ? place : onMark(place, marks), 'follows');
  }

  /** Where an edge goes that lay in line with one of a row that is filled, or of something centred; `null`: it did not. */
  private lineAt(
    { name, length: distance }: Dimension,
    { axis, bed, filled }: { readonly axis: Axis; readonly bed: Bed; readonly filled: readonly FilledRow[] },
  ): Length | null {
    if (distance <= unseen) return null;
    const { start } = edgesOf[axis];
    const isNear = (other: number) => Math.abs(other - distance) <= unseen;
    for (const { pieces, total } of filled) {
      for (const { old, now } of pieces) {
        if (name === start && isNear(old.start)) return now.start;
        if (name !== start && isNear(total[0] - old.start - old.length))
          return lengthOfTicks(total[1] - now.start - now.length);
      }
    }
    for (const part of this.layout.parts) {
      const [seen, now] = [this.arranged.get(part.id)!.seen, this.seenOf(part.id, axis)];
      if (part.on !== bed.on || seen === null || now === undefined || !isCentred(part, axis)) continue;
      if (isNear((bed.old[axis] - seen[axis]) / 2))
        return lengthOfTicks(Math.floor((bed.now[axis] - now.length) / 2));
    }
    return null;
  }

  /** The drawn sizes of a part, from what is seen of it and what is not. */
  private sizes(part: Part): void {
    for (const dimension of this.dimensionsOfPart(part)) {
      if (dimension.kind !== 'size') continue;
      const axis = dimension.axis === 'both' ? 'width' : dimension.axis;
      const seen = this.seenOf(part.id, axis);
      if (seen === undefined) continue;
      const cut = seen.why === 'folded' ? dimension.length : sum(seen.length, this.beyond(part, axis));
      this.set(dimension, cut, seen.why);
    }
  }

  /** Where both ends and the size are given and the sum came out before, the end gives way. */
  private mendSums(): void {
    const wrongBefore = new Set(arrange(this.layout).problems.map(({ code, where }) => `${code} ${where}`));
    for (const { code, part: id, names, numbers, where } of this.soFar().problems) {
      if (code !== 'sumOff' || wrongBefore.has(`${code} ${where}`)) continue;
      const axis = names.axis as Axis;
      const part = this.layout.parts.find((candidate) => candidate.id === id)!;
      const ends = this.dimensionsOfPart(part).filter(
        ({ kind, name, axis: own }) =>
          (kind === 'border' && name === edgesOf[axis].end) || (kind === 'gap' && own === axis),
      );
      const end = ends.find(({ kind }) => kind === 'border') ?? ends[0];
      if (end === undefined) continue;
      const { length } = this.lengths.get(end.path)!;
      this.lengths.set(end.path, { length: lengthOfTicks(length - numbers.difference!), why: 'follows' });
    }
  }

  /** A torn edge wanders, so what lies under it reaches as far as it did: the first of the two that is free grows. */
  private mendOverlaps(before: Arrangement): void {
    for (const [key, { depth, parts, axis }] of tornOverlaps(before)) {
      const now = tornOverlaps(this.soFar()).get(key)?.depth ?? 0;
      if (now >= depth - unseen) continue;
      const by = roundTo(lengthOfTicks(Math.ceil(depth - now)), this.target.marks, 'up');
      const [one, other] = parts;
      for (const [grows, beside] of [[one, other] as const, [other, one] as const]) {
        const start = axis === 'width' ? 'left' : 'top';
        const reaches = beside.pieces[0]!.box![start] < grows.pieces[0]!.box![start] ? 'start' : 'end';
        if (this.grown(grows.part, axis, reaches, by)) break;
      }
    }
  }

  /** Whether the part could be made longer at that end. */
  private grown(part: Part, axis: Axis, at: 'start' | 'end', by: Length): boolean {
    const own = this.dimensionsOfPart(part);
    const size = own.find(({ kind, axis: along }) => kind === 'size' && along === axis);
    const why = this.seenOf(part.id, axis)?.why;
    if (size === undefined || (why !== 'mark' && why !== 'share')) return false;
    const centred = isCentred(part, axis);
    const border = own.find(({ kind, name }) => kind === 'border' && name === edgesOf[axis][at]);
    const longer = (path: string, more: number) => {
      this.lengths.set(path, {
        length: lengthOfTicks(this.lengths.get(path)!.length + more),
        why: 'follows',
      });
    };
    longer(size.path, centred ? 2 * by : by);
    if (border !== undefined) longer(border.path, -by);
    return true;
  }
}

/** The parts of a row, each with its bed's piece and the axis. */
function partsIn({ onPiece, axis, terms }: LayoutSum): readonly string[] {
  return terms.flatMap((term) => (term.kind === 'size' ? [`${term.part} ${onPiece} ${axis}`] : []));
}

function isCentred({ places }: Part, axis: Axis): boolean {
  return places.every((place) => {
    const { start, end } = place[edgesOf[axis].span];
    return start === null && end === null;
  });
}

const keptReasons: ReadonlySet<RecastReason> = new Set(['die', 'stamp', 'bought', 'folded', 'fixed']);

/** Where a place goes when the edges of a row's pieces go to theirs, in a straight line between any two. */
function along({ pieces, total }: FilledRow, place: number): number {
  const knots: (readonly [old: number, now: number])[] = [
    [0, 0],
    ...pieces.flatMap(({ old, now }): [number, number][] => [
      [old.start, now.start],
      [old.start + old.length, now.start + now.length],
    ]),
    [total[0], total[1]],
  ];
  const after = knots.findIndex(([old]) => old >= place);
  if (after === -1) return place + total[1] - total[0];
  if (after === 0) return place;
  const [from, to] = [knots[after - 1]!, knots[after]!];
  if (to[0] === from[0]) return to[1];
  return from[1] + ((place - from[0]) * (to[1] - from[1])) / (to[0] - from[0]);
}
