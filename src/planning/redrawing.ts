import {
  arrange,
  type Dimension,
  type Drawn,
  dimensionsOf,
  isFolded,
  type LayoutSum,
  type Room,
  type Rooms,
  sumsOf,
  type Worse,
  withLengths,
  worseningFrom,
} from '../layout/index.ts';
import { type Axis, inches, type Length, lengthOfTicks, millimetres } from '../measure/index.ts';
import type { CardSet } from './cardSet.ts';
import { usualMarks } from './checkSet.ts';
import type { Follower } from './moves.ts';

/** Lengths of a layout that become others, by their paths. */
export type Lengths = ReadonlyMap<string, Length>;

/** A layout drawn again with some lengths changed, and what stands in its way. */
export interface Redrawn extends Drawn {
  readonly lengths: Lengths;
  /** Whether every length and size lies in the room it has. */
  readonly inRoom: boolean;
  /** Whether something that is other than it was drawn does not. */
  readonly strays: boolean;
  /** Parts (or faces) whose rows are no longer even. */
  readonly uneven: ReadonlySet<string>;
  /** The axes of those rows. */
  readonly along: ReadonlySet<Axis>;
  /** Parts that something else is wrong with than that their borders across are not those down. */
  readonly wrong: ReadonlySet<string>;
  /** Parts (or faces) that anything is worse about than it was drawn; empty: it is as good. */
  readonly worse: ReadonlySet<string>;
}

/**
 * The ways in which a layout may be drawn with other lengths: which of them may move, how far, and what becomes of
 * the card then.
 */
export class Redrawing {
  /** Every length that may move. */
  readonly movable: readonly Movable[];
  /** One step of the trimmer's marks, else of the usual ones. */
  readonly mark: Length;
  readonly #set: Pick<CardSet, 'layout' | 'arrangement'>;
  readonly #worsening: (after: Drawn) => Worse;
  /** Every sum of borders, gaps and sizes as it was drawn. */
  readonly rows: readonly LayoutSum[];
  /** By the path of a length what goes with it when it moves, as far as that was looked for. */
  readonly companions = new Map<string, readonly (readonly Follower[])[]>();
  readonly #known = new Map<string, Redrawn | null>();

  constructor(set: Pick<CardSet, 'layout' | 'arrangement' | 'trimmer'>) {
    const { layout } = set;
    this.#set = set;
    this.mark = set.trimmer?.marks ?? usualMarks(layout);
    this.#worsening = worseningFrom(set);
    this.rows = sumsOf(set.arrangement);
    this.movable = dimensionsOf(layout).flatMap((dimension) => {
      const room = roomOf(dimension, layout);
      return room === null ? [] : [{ ...dimension, ...room }];
    });
  }

  /** How many drawings have been made so far, none of them twice. */
  get timesDrawn(): number {
    return this.#known.size;
  }

  /**
   * The layout with these lengths; `null` where a size is then unknown or not positive.
   */
  drawn(lengths: Lengths): Redrawn | null {
    const key = [...lengths]
      .map(([path, length]) => `${path} ${length}`)
      .sort()
      .join();
    const before = this.#known.get(key);
    if (before !== undefined) return before;
    const redrawn = this.#drawn(lengths);
    this.#known.set(key, redrawn);
    return redrawn;
  }

  #drawn(lengths: Lengths): Redrawn | null {
    const layout = withLengths(this.#set.layout, lengths);
    const arrangement = arrange(layout);
    if (arrangement.parts.some(({ cut }) => cut === null || cut.width <= 0 || cut.height <= 0)) return null;
    const drawn = { layout, arrangement };
    const { uneven, along, unlike, wrong } = this.#worsening(drawn);
    const worse = new Set([...uneven, ...unlike, ...wrong]);
    return { ...drawn, lengths, ...this.#roomed(lengths, drawn), uneven, along, wrong, worse };
  }

  /** Whether what moved lies in its room, and whether everything does. */
  #roomed(lengths: Lengths, { arrangement }: Drawn): Pick<Redrawn, 'inRoom' | 'strays'> {
    const lengthStrays = this.movable.some(({ path, length, within }) => {
      const to = lengths.get(path) ?? length;
      return to !== length && !isWithin(to, within);
    });
    let inRoom = !lengthStrays;
    let strays = lengthStrays;
    for (const [index, { cut, part }] of arrangement.parts.entries()) {
      for (const axis of ['width', 'height'] as const) {
        const room = namedRoom(part.rooms, axis);
        if (room === null || cut === null || isWithin(cut[axis], room)) continue;
        inRoom = false;
        strays ||= cut[axis] !== this.#set.arrangement.parts[index]!.cut?.[axis];
      }
    }
    return { inRoom, strays };
  }
}

/** A length that may move. */
export interface Movable extends Dimension {
  readonly within: Room;
  /** Whether the layout names a room for it. */
  readonly asked: boolean;
}

function isWithin(length: number, { least, most }: Room): boolean {
  return least <= length && length <= most;
}

function namedRoom(rooms: Rooms | undefined, name: string): Room | null {
  if (rooms === undefined || rooms === 'none') return null;
  return (rooms as Readonly<Record<string, Room | undefined>>)[name] ?? null;
}

/**
 * How far a length may move; `null`: not at all.
 *
 * Within the room the layout gives it. Without one: tears, the base, what is bought and what has the size of its die or
 * stamp stay as they are, and of a part that has room for some lengths the other sizes; else a size moves by up to a
 * quarter of itself and 1/2 in or 12 mm, a border or gap by half of that.
 */
function roomOf(
  { part: id, kind, name, length }: Dimension,
  layout: Drawn['layout'],
): Pick<Movable, 'within' | 'asked'> | null {
  const part = layout.parts.find((candidate) => candidate.id === id);
  const rooms = part === undefined ? layout.base.rooms : part.rooms;
  if (rooms === 'none' || kind === 'beyond') return null;
  const room = namedRoom(rooms, name);
  if (room !== null) return { within: room, asked: true };
  if (part === undefined) return null;
  const furthest = layout.units === 'in' ? inches(1, 2) : millimetres(12);
  if (kind === 'size') {
    if (rooms !== undefined || part.papers.length === 0 || part.dieCut || part.stamped) return null;
    if (isFolded(part.shape)) return null;
    const far = Math.min(furthest, Math.floor(length / 4));
    return { within: around(length, far), asked: false };
  }
  // What hangs over or lies flush is left to do so.
  return length <= 0 ? null : { within: around(length, furthest / 2), asked: false };
}

function around(length: Length, far: number): Room {
  return { least: lengthOfTicks(length - far), most: lengthOfTicks(length + far) };
}

/** The axes a length lies along. */
export function axesOf({ axis }: Dimension): readonly Axis[] {
  return axis === 'both' ? ['width', 'height'] : [axis];
}
