import Queue from 'tinyqueue';
import { type Length, lengthOfTicks, roundTo } from '../measure/index.ts';
import { companionsOf } from './moves.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import { axesOf, type Movable, type Redrawing, type Redrawn } from './redrawing.ts';

/** A length that may move, and the whole marks in its room with what was drawn. */
export interface Variable {
  readonly movable: Movable;
  /** Nearest to what was drawn first. */
  readonly values: readonly Length[];
}

/** A way to draw the layout within its room. */
export interface Drawing {
  readonly redrawn: Redrawn;
  /** By how many marks it differs from what was drawn. */
  readonly marks: number;
  readonly changed: number;
  /** Width and height of every piece, one after another. */
  readonly extents: readonly number[];
  readonly pieces: readonly Piece[];
}

export function valuesOf({ within, length }: Movable, mark: Length): readonly Length[] {
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

export interface EvenDrawings {
  /** The nearest to what was drawn first, then those that change fewer lengths. */
  readonly even: readonly Drawing[];
  /** No other way to draw it leaves rows even. */
  readonly complete: boolean;
  /** All that are fewer marks than this from what was drawn are among them. */
  readonly reached: number;
}

/**
 * The ways to draw the layout that leave its rows even. Where there are more than can be looked at, those that are near
 * to what was drawn, and those with every length at one end of its room.
 */
export function evenDrawings(redrawing: Redrawing, variables: readonly Variable[]): EvenDrawings {
  const even: Drawing[] = [];
  const rows = new RowsAlong(redrawing);
  const draw = ({ values, marks }: Choice) => {
    const moving = variables.flatMap(({ movable }, index) => {
      const by = values[index]! - movable.length;
      return by === 0 ? [] : [{ movable, by }];
    });
    const redrawn = rows.mayBeEven(moving) ? evenlyDrawn(redrawing, moving) : null;
    if (redrawn === null) return;
    const pieces = piecesOf(redrawn.layout, redrawn.arrangement);
    const extents = pieces.flatMap(({ size }) => [size.width, size.height]);
    even.push({ redrawn, marks, changed: redrawn.lengths.size, extents, pieces });
  };

  let chosen = 0;
  for (const choice of choicesOf(variables, redrawing.mark)) {
    if (chosen === mostChoices || redrawing.timesDrawn >= mostDrawings) {
      for (const end of endsOf(variables, redrawing.mark)) if (end.marks > choice.marks) draw(end);
      return { even, complete: false, reached: choice.marks };
    }
    chosen += 1;
    draw(choice);
  }
  return { even, complete: true, reached: Number.POSITIVE_INFINITY };
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

/** One value for each variable, and by how many marks they differ from what was drawn. */
interface Choice {
  readonly values: readonly Length[];
  readonly marks: number;
}

/** Every choice with each variable at one end of its room, the nearest first; so many of them. */
function endsOf(variables: readonly Variable[], mark: Length): readonly Choice[] {
  const ends = variables.map(({ values }) => {
    const [least, most] = [Math.min(...values), Math.max(...values)].map(lengthOfTicks);
    return least === most ? [least!] : [least!, most!];
  });
  return [...productOf(ends, mostEnds)]
    .map((values) => ({ values, marks: marksOf(variables, values, mark) }))
    .sort((a, b) => a.marks - b.marks);
}

const mostEnds = 64;

function marksOf(variables: readonly Variable[], values: readonly Length[], mark: Length): number {
  return variables.reduce(
    (sum, { movable }, index) => sum + Math.abs(values[index]! - movable.length) / mark,
    0,
  );
}

/** Every choice, those that are fewer marks from what was drawn first. */
function* choicesOf(variables: readonly Variable[], mark: Length): Generator<Choice> {
  // Each variable's values in order; a choice is gone on from by taking the next value of its last moved variable, or
  // the second of a later one, so that each choice comes up once.
  interface Open {
    readonly at: readonly number[];
    readonly last: number;
    readonly marks: number;
  }
  const open = new Queue<Open>([], (a, b) => a.marks - b.marks || moved(a) - moved(b));
  const moved = ({ at }: Open) => at.filter((index) => index > 0).length;
  const valuesAt = (at: readonly number[]) =>
    at.map((index, variable) => variables[variable]!.values[index]!);
  const start = variables.map(() => 0);
  open.push({ at: start, last: 0, marks: marksOf(variables, valuesAt(start), mark) });
  for (let best = open.pop(); best !== undefined; best = open.pop()) {
    yield { values: valuesAt(best.at), marks: best.marks };
    for (let variable = best.last; variable < variables.length; variable += 1) {
      const next = best.at[variable]! + 1;
      if (next >= variables[variable]!.values.length) continue;
      const at = best.at.with(variable, next);
      open.push({ at, last: variable, marks: marksOf(variables, valuesAt(at), mark) });
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
