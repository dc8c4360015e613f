import Queue from 'tinyqueue';
import { firstPlan } from '../cutting/index.ts';
import { type SumChange, sumChanges } from '../layout/index.ts';
import { type Length, lengthOfTicks, roundTo } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { CardSet } from './cardSet.ts';
import { paperTask } from './cuttingTask.ts';
import { mostCards } from './enough.ts';
import { givesAll, type Verdict } from './givesAll.ts';
import { changesOf, type LengthChange } from './lengthChange.ts';
import { companionsOf } from './moves.ts';
import { neverReasons } from './never.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import type { Plan } from './plan.ts';
import { planSet, type SetToPlan } from './planSet.ts';
import { axesOf, type Movable, Redrawing, type Redrawn } from './redrawing.ts';

/** Sizes that suit the sheets on hand, or the nearest that can be done. */
export type Suited =
  | SuitedSizes
  /** The layout gives no length any room. */
  | { readonly kind: 'no-room' }
  /** There is no whole mark in the room of a length; `path` is the length's. */
  | { readonly kind: 'no-mark'; readonly path: string; readonly mark: Length }
  /** No sizes within the room keep borders and gaps even. */
  | { readonly kind: 'never-even'; readonly proved: boolean };

export interface SuitedSizes {
  readonly kind: 'suited';
  /** How many cards come out: as many as were asked for, else the most that the room allows. */
  readonly cards: number;
  /** Whether it is proved that no sizes within the room give more, where fewer come out than were asked for. */
  readonly proved: boolean;
  /** Whether it is proved that no sizes within the room that give so many cards are nearer to what was drawn. */
  readonly nearest: boolean;
  /** Whether borders are alike all round where they were drawn so; else only left and right, top and bottom are. */
  readonly alike: boolean;
  /** The lengths that are others than they were drawn, in the layout's order; none: it was well as it was. */
  readonly changes: readonly LengthChange[];
  /** By how many marks they differ in all, those of borders and gaps that only follow aside. */
  readonly marks: number;
  /** What becomes of every border, gap and seen size of the card. */
  readonly effect: readonly SumChange[];
  /** The set with these sizes and that many cards. */
  readonly set: CardSet;
  /** Its plan; `null` for no card. */
  readonly plan: Plan | null;
}

/**
 * Sizes in whole marks, within the room that a layout gives its lengths, that make so many cards from the sheets on
 * hand: of all that leave borders and gaps as even as they were drawn the nearest to what was drawn, by marks in all,
 * then by how many lengths change. Borders and gaps without a room of their own may follow where that evens a row.
 *
 * Where no such sizes give so many cards, those that give the most. Where none are even all round, those whose
 * borders are even left and right, top and bottom.
 */
export function suitedSet(set: SetToPlan, cards: number = set.layout.cards): Suited {
  const redrawing = new Redrawing(set);
  const variables: Variable[] = [];
  for (const movable of redrawing.movable) {
    if (!movable.asked) continue;
    const values = valuesOf(movable, redrawing.mark);
    if (values.length === 0) return { kind: 'no-mark', path: movable.path, mark: redrawing.mark };
    variables.push({ movable, values });
  }
  if (variables.length === 0) return { kind: 'no-room' };

  const drawings = evenDrawings(redrawing, variables);
  const question = new Question(set);
  const strict = { alike: true, drawings: drawings.even.filter(({ redrawn }) => redrawn.worse.size === 0) };
  const lenient = { alike: false, drawings: drawings.even };
  if (drawings.even.length === 0) return { kind: 'never-even', proved: drawings.complete };
  for (const { alike, drawings: among } of [strict, lenient]) {
    const found = nearestGiving(cards, among, question);
    if (found !== null)
      return suitedFrom(set, { cards, alike, ...found }, { proved: true, drawings, question });
  }
  const { alike, drawings: among } = strict.drawings.length > 0 ? strict : lenient;
  const most = mostGiven(cards, among, question);
  const found = most === 0 ? { drawing: among[0]!, sure: true } : nearestGiving(most, among, question)!;
  return suitedFrom(set, { cards: most, alike, ...found }, { proved: false, drawings, question });
}

// --- What may be drawn ---

/** A length that may move, and the whole marks in its room with what was drawn. */
interface Variable {
  readonly movable: Movable;
  /** Nearest to what was drawn first. */
  readonly values: readonly Length[];
}

/** A way to draw the layout within its room. */
interface Drawing {
  readonly redrawn: Redrawn;
  /** By how many marks it differs from what was drawn. */
  readonly marks: number;
  readonly changed: number;
  /** Width and height of every piece, one after another. */
  readonly extents: readonly number[];
  readonly pieces: readonly Piece[];
}

function valuesOf({ within, length }: Movable, mark: Length): readonly Length[] {
  const values = new Set<Length>();
  if (within.least <= length && length <= within.most) values.add(length);
  for (let at = roundTo(within.least, mark, 'up'); at <= within.most; at = lengthOfTicks(at + mark)) {
    values.add(at);
    if (values.size > mostValues) break;
  }
  return [...values].sort((a, b) => Math.abs(a - length) - Math.abs(b - length) || a - b);
}

/** How many marks of one length are tried. */
const mostValues = 200;

/** How many choices of sizes are gone through, and how often the card is drawn for it, which is the longer work. */
const mostChoices = 500_000;
const mostDrawings = 8_000;

/**
 * The ways to draw the layout that leave its rows even, the nearest to what was drawn first, then those that change
 * fewer lengths. `complete`: there are no others.
 */
function evenDrawings(
  redrawing: Redrawing,
  variables: readonly Variable[],
): { readonly even: readonly Drawing[]; readonly complete: boolean } {
  const even: Drawing[] = [];
  const rows = new RowsAlong(redrawing);
  let chosen = 0;
  for (const { values, marks } of choicesOf(variables, redrawing.mark)) {
    if (chosen === mostChoices || redrawing.timesDrawn >= mostDrawings) return { even, complete: false };
    chosen += 1;
    const moving = variables.flatMap(({ movable }, index) => {
      const by = values[index]! - movable.length;
      return by === 0 ? [] : [{ movable, by }];
    });
    if (!rows.mayBeEven(moving)) continue;
    const redrawn = evenlyDrawn(redrawing, moving);
    if (redrawn === null) continue;
    const pieces = piecesOf(redrawn.layout, redrawn.arrangement);
    const extents = pieces.flatMap(({ size }) => [size.width, size.height]);
    even.push({ redrawn, marks, changed: redrawn.lengths.size, extents, pieces });
  }
  return { even, complete: true };
}

/** Whether rows along an axis can be even; the other axis has no say in it, so what was found is used again. */
class RowsAlong {
  readonly #redrawing: Redrawing;
  readonly #known = new Map<string, boolean>();

  constructor(redrawing: Redrawing) {
    this.#redrawing = redrawing;
  }

  mayBeEven(moving: readonly Moving[]): boolean {
    return (['width', 'height'] as const).every((axis) => {
      const along = moving.filter(({ movable }) => axesOf(movable).includes(axis));
      const key = `${axis} ${along.map(({ movable, by }) => `${movable.path} ${by}`).join()}`;
      const known = this.#known.get(key);
      if (known !== undefined) return known;
      let may = false;
      for (const redrawn of waysToDraw(this.#redrawing, along)) {
        may = !redrawn.along.has(axis);
        if (may) break;
      }
      this.#known.set(key, may);
      return may;
    });
  }
}

/** Every choice of one value each, those that are fewer marks from what was drawn first. */
function* choicesOf(
  variables: readonly Variable[],
  mark: Length,
): Generator<{ readonly values: readonly Length[]; readonly marks: number }> {
  const distance = ({ movable, values }: Variable, at: number) =>
    Math.abs(values[at]! - movable.length) / mark;
  // Each variable's values in order; a choice is gone on from by taking the next value of its last moved variable, or
  // the second of a later one, so that each choice comes up once.
  interface Open {
    readonly at: readonly number[];
    readonly last: number;
    readonly marks: number;
  }
  const open = new Queue<Open>([], (a, b) => a.marks - b.marks || moved(a) - moved(b));
  const moved = ({ at }: Open) => at.filter((index) => index > 0).length;
  const marksOf = (at: readonly number[]) =>
    variables.reduce((sum, variable, index) => sum + distance(variable, at[index]!), 0);
  const start = variables.map(() => 0);
  open.push({ at: start, last: 0, marks: marksOf(start) });
  for (let best = open.pop(); best !== undefined; best = open.pop()) {
    yield {
      values: best.at.map((index, variable) => variables[variable]!.values[index]!),
      marks: best.marks,
    };
    for (let variable = best.last; variable < variables.length; variable += 1) {
      const next = best.at[variable]! + 1;
      if (next >= variables[variable]!.values.length) continue;
      const at = best.at.with(variable, next);
      open.push({ at, last: variable, marks: marksOf(at) });
    }
  }
}

interface Moving {
  readonly movable: Movable;
  readonly by: number;
}

/**
 * The layout with these lengths moved: the first way that is as even as it was drawn, else the first whose rows are
 * even, else `null`.
 */
function evenlyDrawn(redrawing: Redrawing, moving: readonly Moving[]): Redrawn | null {
  let rowsEven: Redrawn | null = null;
  for (const redrawn of waysToDraw(redrawing, moving)) {
    if (!redrawn.inRoom) continue;
    if (redrawn.worse.size === 0) return redrawn;
    if (redrawn.uneven.size === 0 && redrawn.wrong.size === 0) rowsEven ??= redrawn;
  }
  return rowsEven;
}

/** The layout with these lengths moved, alone or with borders and gaps that follow them. */
function* waysToDraw(redrawing: Redrawing, moving: readonly Moving[]): Generator<Redrawn> {
  const taken = new Set(moving.map(({ movable }) => movable.path));
  // What follows each: nothing, or a border or gap without a room of its own.
  const choices = moving.map(({ movable, by }) => [
    [],
    ...companionsOf(redrawing, movable)
      .filter((followers) => followers.every((follower) => canFollow(follower.movable, taken)))
      .map((followers) =>
        followers.map((follower) => ({ movable: follower.movable, by: by * follower.times })),
      ),
  ]);
  for (const following of productOf(choices, mostFollowings)) {
    const lengths = new Map<string, Length>();
    let whole = true;
    for (const { movable, by } of [...moving, ...following.flat()]) {
      const to = (lengths.get(movable.path) ?? movable.length) + by;
      whole &&= Number.isInteger(to);
      if (whole) lengths.set(movable.path, lengthOfTicks(to));
    }
    const redrawn = whole ? redrawing.drawn(lengths) : null;
    if (redrawn !== null) yield redrawn;
  }
}

function canFollow({ kind, asked, path }: Movable, taken: ReadonlySet<string>): boolean {
  return (kind === 'border' || kind === 'gap') && !asked && !taken.has(path);
}

/** How many ways of following are tried for one choice of sizes. */
const mostFollowings = 16;

/** One of each list, in every way, the first of each first. */
function* productOf<Value>(lists: readonly (readonly Value[])[], most: number): Generator<readonly Value[]> {
  let ways: (readonly Value[])[] = [[]];
  for (const list of lists) ways = ways.flatMap((way) => list.map((value) => [...way, value])).slice(0, most);
  yield* ways;
}

// --- What the sheets give ---

/** Whether the sheets on hand give the pieces of a drawing for so many cards; nothing is planned twice. */
class Question {
  readonly #set: SetToPlan;
  readonly #known = new Map<string, { readonly extents: readonly number[]; readonly verdict: Verdict }[]>();

  constructor(set: SetToPlan) {
    this.#set = set;
  }

  ask({ redrawn }: Drawing, cards: number): Verdict {
    const pieces = piecesOf({ ...redrawn.layout, cards }, redrawn.arrangement);
    const papers = [...new Set(pieces.map(({ paper }) => paper))];
    let verdict: Verdict = 'yes';
    for (const paper of papers) {
      const own = pieces.filter((piece) => piece.paper === paper);
      const one = this.#askPaper(paper, own);
      if (one === 'no') return 'no';
      if (one === 'unknown') verdict = one;
    }
    return verdict;
  }

  /** What is smaller in everything comes out where the larger does, and what is larger does not where that does not. */
  #askPaper(id: string, pieces: readonly Piece[]): Verdict {
    const key = `${id} ${pieces.map((piece) => `${piece.id} ${piece.need} ${piece.turn}`).join()}`;
    const extents = pieces.flatMap(({ size }) => [size.width, size.height]);
    const known = this.#known.get(key) ?? [];
    this.#known.set(key, known);
    for (const before of known) {
      if (before.verdict === 'yes' && isWithin(extents, before.extents)) return 'yes';
      if (before.verdict === 'no' && isWithin(before.extents, extents)) return 'no';
      if (before.extents.every((extent, index) => extent === extents[index])) return before.verdict;
    }
    const verdict = this.#plan(id, pieces);
    known.push({ extents, verdict });
    return verdict;
  }

  #plan(id: string, pieces: readonly Piece[]): Verdict {
    const paper = this.#set.layout.papers.get(id)!;
    if (neverReasons(paper, pieces, this.#set.trimmer).size > 0) return 'no';
    if (firstPlan(paperTask(paper, pieces, this.#set.trimmer).task) !== null) return 'yes';
    return givesAll(paper, pieces, this.#set);
  }
}

/** Whether each is at most as large as the other's. */
function isWithin(smaller: readonly number[], larger: readonly number[]): boolean {
  return smaller.every((extent, index) => extent <= larger[index]!);
}

/**
 * The nearest of the drawings that gives so many cards; `null`: none does. `sure`: it is proved of all nearer ones
 * that they do not.
 *
 * Whether any up to a distance does is told by the smallest of them alone, so the distance is found by halving.
 */
function nearestGiving(
  cards: number,
  drawings: readonly Drawing[],
  question: Question,
): { readonly drawing: Drawing; readonly sure: boolean } | null {
  const distances = [...new Set(drawings.map(({ marks }) => marks))];
  let sure = true;
  const anyWithin = (distance: number) => {
    const verdicts: Verdict[] = [];
    for (const drawing of smallestOf(drawings.filter(({ marks }) => marks <= distance))) {
      verdicts.push(question.ask(drawing, cards));
      if (verdicts.at(-1) === 'yes') return true;
    }
    if (verdicts.includes('unknown')) sure = false;
    return false;
  };
  let [low, high] = [0, distances.length - 1];
  if (high < 0 || !anyWithin(distances[high]!)) return null;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (anyWithin(distances[middle]!)) high = middle;
    else low = middle + 1;
  }
  const drawing = drawings.find(
    (candidate) => candidate.marks === distances[low]! && question.ask(candidate, cards) === 'yes',
  );
  assert(drawing !== undefined, 'Of the drawings up to a distance one gives the cards', { cards });
  return { drawing, sure };
}

/** The drawings that no other is smaller than in every piece. */
function smallestOf(drawings: readonly Drawing[]): readonly Drawing[] {
  const area = ({ pieces }: Drawing) => pieces.reduce((sum, { size }) => sum + size.width * size.height, 0);
  const smallest: Drawing[] = [];
  for (const { drawing } of drawings
    .map((drawing) => ({ drawing, area: area(drawing) }))
    .sort((a, b) => a.area - b.area)) {
    if (!smallest.some(({ extents }) => isWithin(extents, drawing.extents))) smallest.push(drawing);
  }
  return smallest;
}

/** The most cards, fewer than `cards`, that any of the drawings gives; 0: none gives one. */
function mostGiven(cards: number, drawings: readonly Drawing[], question: Question): number {
  const smallest = smallestOf(drawings);
  let [most, tooMany] = [0, Math.min(cards, mostCards + 1)];
  while (tooMany - most > 1) {
    const middle = Math.floor((most + tooMany) / 2);
    if (smallest.some((drawing) => question.ask(drawing, middle) === 'yes')) most = middle;
    else tooMany = middle;
  }
  return most;
}

// --- The answer ---

function suitedFrom(
  set: SetToPlan,
  found: {
    readonly cards: number;
    readonly alike: boolean;
    readonly drawing: Drawing;
    readonly sure: boolean;
  },
  about: {
    readonly proved: boolean;
    readonly drawings: { readonly even: readonly Drawing[]; readonly complete: boolean };
    readonly question: Question;
  },
): SuitedSizes {
  const { cards, alike, drawing, sure } = found;
  const { redrawn, marks } = drawing;
  const { solver, onProgress, ...drawn } = set;
  const layout = { ...redrawn.layout, cards: Math.max(1, cards) };
  const suited: CardSet = { ...drawn, layout, arrangement: redrawn.arrangement };
  const again = { ...suited, solver, ...(onProgress === undefined ? {} : { onProgress }) };
  const plan = cards === 0 ? null : planSet(again);
  assert(plan?.kind !== 'short', 'Sizes that suit can be planned', { lengths: [...redrawn.lengths] });
  const { drawings, question } = about;
  const refuted = () =>
    drawings.complete && smallestOf(drawings.even).every((one) => question.ask(one, cards + 1) === 'no');
  return {
    kind: 'suited',
    cards,
    proved: about.proved || refuted(),
    // Whether borders are even is not asked of those that are nearer and were never looked at: there are none.
    nearest: sure,
    alike,
    changes: changesOf(set, redrawn.lengths),
    marks,
    effect: sumChanges(set.arrangement, redrawn.arrangement),
    set: suited,
    plan,
  };
}
