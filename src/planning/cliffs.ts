import { planCuts } from '../cutting/index.ts';
import { type SumChange, sumChanges } from '../layout/index.ts';
import { costUnitOf, type Paper, shownCost } from '../stash/index.ts';
import { paperTask } from './cuttingTask.ts';
import { type Enough, mostCards, piecesOfPaper } from './enough.ts';
import { givesAll, whetherOnly } from './givesAll.ts';
import type { LengthChange } from './lengthChange.ts';
import { type Move, moved, movesOf } from './moves.ts';
import { neverReasons } from './never.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import { piecesPerSheet } from './piecesPerSheet.ts';
import type { SetToPlan } from './planSet.ts';
import { Redrawing, type Redrawn } from './redrawing.ts';

/** A small change of the sizes with which the same papers give more. */
export interface Cliff {
  /** The lengths that change, the one that leads first. */
  readonly changes: readonly LengthChange[];
  /** How many of the trimmer's marks the leading length moves. */
  readonly marks: number;
  readonly gains: readonly Gain[];
  /** What becomes of every border, gap and seen size of the card. */
  readonly effect: readonly SumChange[];
  /** Every piece whose cut size is then another. */
  readonly pieces: readonly PieceChange[];
}

/** Cut sizes before and after, width then height with the pattern upright. */
export interface PieceChange {
  readonly piece: string;
  readonly from: Piece['size'];
  readonly to: Piece['size'];
}

export type Gain =
  /** A whole sheet of one stock, cut into nothing else, gives more of a piece. */
  | {
      readonly kind: 'piece';
      readonly piece: string;
      readonly stock: number;
      readonly from: number;
      readonly to: number;
    }
  /** The set costs less of a paper: fewer sheets, or cheaper ones; in the unit its cost is measured in. */
  | {
      readonly kind: 'sheet';
      readonly paper: string;
      readonly from: number;
      readonly to: number;
      /** How many sheets are used, scraps counted. */
      readonly sheets: { readonly from: number; readonly to: number };
    }
  /** The papers are enough for more cards. */
  | { readonly kind: 'card'; readonly from: number; readonly to: number };

/**
 * The smallest changes, one mark of the trimmer at a time, of any size, border or gap that the layout allows to move,
 * with which a sheet gives one piece more, the set takes a sheet less, or the papers are enough for a card more. Other
 * lengths follow where that keeps borders and gaps even. For each length that leads, the fewest marks for each gain.
 *
 * `enough` is what `enoughFor` said of the same set. What gains a card comes first, then what saves a sheet, then the
 * rest; of equals the smaller change.
 */
export function cliffsOf(set: SetToPlan, enough: Enough): readonly Cliff[] {
  const redrawing = new Redrawing(set);
  const asking = new Gains(set, enough);
  const cliffs = movesOf(redrawing, set.layout).flatMap((ways) => {
    const found = new Map<string, { move: Move; marks: number; redrawn: Redrawn; gains: Gain[] }>();
    const gained = new Set<string>();
    for (const move of ways.slice(0, mostWays)) {
      for (const { marks, redrawn, gain } of asking.along(redrawing, move)) {
        if (gained.has(keyOf(gain))) continue;
        gained.add(keyOf(gain));
        const key = `${JSON.stringify([...redrawn.lengths])}`;
        const cliff = found.get(key) ?? { move, marks, redrawn, gains: [] };
        cliff.gains.push(gain.kind === 'card' ? { ...gain, to: asking.most(redrawn, gain.to) } : gain);
        found.set(key, cliff);
      }
    }
    return [...found.values()].map(({ move, marks, redrawn, gains }) =>
      cliffFrom(set, { move, marks, redrawn, gains }),
    );
  });
  return cliffs.sort(
    (a, b) => rankOf(a) - rankOf(b) || a.marks - b.marks || a.changes.length - b.changes.length,
  );
}

/** How many ways of following a length are looked at. */
const mostWays = 2;

function keyOf(gain: Gain): string {
  if (gain.kind === 'piece') return `${gain.kind} ${gain.piece} ${gain.stock}`;
  return gain.kind === 'sheet' ? `${gain.kind} ${gain.paper}` : gain.kind;
}

function rankOf({ gains }: Cliff): number {
  return Math.min(...gains.map(({ kind }) => ['card', 'sheet', 'piece'].indexOf(kind)));
}

function cliffFrom(
  set: SetToPlan,
  { move, marks, redrawn, gains }: { move: Move; marks: number; redrawn: Redrawn; gains: readonly Gain[] },
): Cliff {
  const moving = [move.main, ...move.followers.map(({ movable }) => movable)];
  const before = piecesOf(set.layout, set.arrangement);
  const after = piecesOf(redrawn.layout, redrawn.arrangement);
  return {
    changes: moving.map(({ path, part, name, length }) => {
      return { path, part, name, from: length, to: redrawn.lengths.get(path)! };
    }),
    marks,
    gains,
    effect: sumChanges(set.arrangement, redrawn.arrangement),
    pieces: changedPieces(before, after),
  };
}

function changedPieces(before: readonly Piece[], after: readonly Piece[]): readonly PieceChange[] {
  return before.flatMap(({ id, size }, index) => {
    const { size: to } = after[index]!;
    return to.width === size.width && to.height === size.height ? [] : [{ piece: id, from: size, to }];
  });
}

/** Looks for what sizes gain; what has been planned before is not planned again. */
class Gains {
  readonly #set: SetToPlan;
  readonly #enough: Enough;
  /** The set whose sheets are counted: the one asked for, or the largest that can be made. */
  readonly #planned: number;
  readonly #perSheet = new Map<string, number>();
  readonly #costs = new Map<string, Cost | null>();
  readonly #verdicts = new Map<string, boolean>();

  constructor(set: SetToPlan, enough: Enough) {
    this.#set = set;
    this.#enough = enough;
    this.#planned = Math.min(set.layout.cards, enough.cards ?? set.layout.cards);
  }

  /** The fewest marks of a move for each gain, with what is gained there. */
  along(
    redrawing: Redrawing,
    move: Move,
  ): readonly { readonly marks: number; readonly redrawn: Redrawn; readonly gain: Gain }[] {
    const steps: Redrawn[] = [];
    for (let marks = 1; marks <= mostMarks; marks += 1) {
      const redrawn = moved(redrawing, move, marks);
      if (redrawn === null) break;
      steps.push(redrawn);
    }
    if (steps.length === 0) return [];
    const found: { marks: number; redrawn: Redrawn; gain: Gain }[] = [];
    const first = (of: readonly PieceChange[], gainAt: (redrawn: Redrawn) => Gain | null) => {
      const holds = (redrawn: Redrawn) => gainAt(redrawn) !== null;
      // What something gains by becoming smaller it never loses again, unless something else grows.
      const at = of.some(isLarger) ? steps.findIndex(holds) : leastIndex(steps, holds);
      if (at < 0) return;
      found.push({ marks: at + 1, redrawn: steps[at]!, gain: gainAt(steps[at]!)! });
    };
    const pieces = piecesOf(this.#set.layout, this.#set.arrangement);
    const last = steps.at(-1)!;
    const changes = changedPieces(pieces, piecesOf(last.layout, last.arrangement));
    const changesOf = (paper: string) =>
      changes.filter(({ piece }) => pieces.some((each) => each.id === piece && each.paper === paper));
    for (const piece of pieces) {
      const own = changes.filter((change) => change.piece === piece.id);
      if (own.length === 0) continue;
      this.#set.layout.papers.get(piece.paper)!.sheets.forEach((_, stock) => {
        first(own, (redrawn) => this.#pieceGain(piece, stock, redrawn));
      });
    }
    const papers = [...this.#set.layout.papers.keys()].filter((paper) => changesOf(paper).length > 0);
    for (const paper of papers) first(changesOf(paper), (redrawn) => this.#sheetGain(paper, redrawn));
    // A card more needs every paper that limits now.
    if (this.#enough.limit.length > 0 && this.#enough.limit.every((paper) => papers.includes(paper)))
      first(changes, (redrawn) => this.#cardGain(redrawn));
    return found;
  }

  #pieceGain({ id, paper }: Piece, stock: number, redrawn: Redrawn): Gain | null {
    const sheets = this.#set.layout.papers.get(paper)!.sheets;
    const count = (layout: Redrawn['layout'], arrangement: Redrawn['arrangement']) => {
      const piece = piecesOf(layout, arrangement).find((candidate) => candidate.id === id)!;
      const key = `${paper} ${stock} ${piece.size.width} ${piece.size.height} ${piece.turn}`;
      const known = this.#perSheet.get(key);
      if (known !== undefined) return known;
      const { count: most } = piecesPerSheet(piece, sheets[stock]!, this.#set.trimmer);
      this.#perSheet.set(key, most);
      return most;
    };
    const from = count(this.#set.layout, this.#set.arrangement);
    const to = count(redrawn.layout, redrawn.arrangement);
    return to > from ? { kind: 'piece', piece: id, stock, from, to } : null;
  }

  #sheetGain(paper: string, redrawn: Redrawn): Gain | null {
    const before = this.#cost(paper, this.#set);
    const after = this.#cost(paper, redrawn);
    if (before === null || after === null) return null;
    if (after.cost > before.cost || (after.cost === before.cost && after.sheets >= before.sheets))
      return null;
    const unit = costUnitOf(this.#set.layout.papers.get(paper)!);
    return {
      kind: 'sheet',
      paper,
      from: shownCost(before.cost, unit),
      to: shownCost(after.cost, unit),
      sheets: { from: before.sheets, to: after.sheets },
    };
  }

  #cost(id: string, drawn: Pick<Redrawn, 'layout' | 'arrangement'>): Cost | null {
    const paper = this.#set.layout.papers.get(id)!;
    const pieces = piecesOfPaper({ ...drawn.layout, cards: this.#planned }, drawn, id);
    return this.#known(this.#costs, paper, pieces, () => {
      if (neverReasons(paper, pieces, this.#set.trimmer).size > 0) return null;
      const answer = planCuts(
        paperTask(paper, pieces, this.#set.trimmer).task,
        this.#set.solver,
        whetherOnly,
      );
      if (answer.kind === 'short') return null;
      return { cost: answer.cost, sheets: answer.patterns.reduce((sum, { times }) => sum + times, 0) };
    });
  }

  #cardGain(redrawn: Redrawn): Gain | null {
    const { cards } = this.#enough;
    if (cards === null || !this.#isEnough(cards + 1, redrawn)) return null;
    return { kind: 'card', from: cards, to: cards + 1 };
  }

  /** The most cards that the papers are enough for then; `cards` they are. */
  most(redrawn: Redrawn, cards: number): number {
    let most = cards;
    let tooMany = mostCards + 1;
    for (let step = 1; tooMany - most > 1; ) {
      const asked = step > 0 ? Math.min(most + step, tooMany - 1) : Math.floor((most + tooMany) / 2);
      if (this.#isEnough(asked, redrawn)) {
        most = asked;
        step *= 2;
      } else {
        tooMany = asked;
        step = 0;
      }
    }
    return most;
  }

  /** Whether all papers are enough for so many cards; those that limit now are asked first. */
  #isEnough(cards: number, redrawn: Redrawn): boolean {
    const { papers, limit } = this.#enough;
    const limited = [...papers].flatMap(([id, enough]) => (enough.cards === null ? [] : [id]));
    const same = (id: string) => {
      const [before, after] = [this.#set, redrawn].map((drawn) => piecesOfPaper(drawn.layout, drawn, id));
      return changedPieces(before!, after!).length === 0;
    };
    return [...new Set([...limit, ...limited])].every((id) => {
      const known = papers.get(id)!;
      // Of an ample paper only a least number is known.
      if (same(id) && (known.proved || known.cards! >= cards)) return known.cards! >= cards;
      const paper = this.#set.layout.papers.get(id)!;
      const pieces = piecesOfPaper({ ...redrawn.layout, cards }, redrawn, id);
      return this.#known(this.#verdicts, paper, pieces, () => givesAll(paper, pieces, this.#set) === 'yes');
    });
  }

  #known<Answer>(
    answers: Map<string, Answer>,
    paper: Paper,
    pieces: readonly Piece[],
    ask: () => Answer,
  ): Answer {
    const key = `${paper.id} ${pieces.map(({ size, need }) => `${size.width} ${size.height} ${need}`).join()}`;
    if (!answers.has(key)) answers.set(key, ask());
    return answers.get(key)!;
  }
}

interface Cost {
  readonly cost: number;
  readonly sheets: number;
}

/** How far a length is moved at the most. */
const mostMarks = 16;

function isLarger({ from, to }: PieceChange): boolean {
  return to.width > from.width || to.height > from.height;
}

/** The first index that something holds for, by halving, where it holds for all later ones; -1: for none. */
function leastIndex<Value>(values: readonly Value[], holds: (value: Value) => boolean): number {
  if (!holds(values.at(-1)!)) return -1;
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(values[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}
