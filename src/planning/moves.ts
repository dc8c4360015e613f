import type { Layout } from '../layout/index.ts';
import { type Length, lengthOfTicks, roundTo } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import { axesOf, type Lengths, type Movable, type Redrawing, type Redrawn } from './redrawing.ts';

/**
 * A way to make some pieces smaller: one length moves, mark by mark, and others with it, so that borders and gaps
 * stay even and nothing else gets worse.
 */
export interface Move {
  /** The length that leads. */
  readonly main: Movable;
  /** Which way it goes. */
  readonly sign: 1 | -1;
  /** The lengths that go with it, and how many times as far as it does, against its way where negative. */
  readonly followers: readonly Follower[];
}

export interface Follower {
  readonly movable: Movable;
  readonly times: number;
}

/**
 * The layout after a move of so many marks (1 and up); `null` where a length has no such room, or something would be
 * worse. A length between two marks comes to the next mark first.
 */
export function moved(redrawing: Redrawing, move: Move, marks: number): Redrawn | null {
  const lengths = lengthsOf(move, marks, redrawing.mark);
  const redrawn = lengths && redrawing.drawn(lengths);
  return redrawn?.strays === false && redrawn.worse.size === 0 ? redrawn : null;
}

function lengthsOf({ main, sign, followers }: Move, marks: number, mark: Length): Lengths | null {
  const next = roundTo(lengthOfTicks(main.length + sign), mark, sign < 0 ? 'down' : 'up');
  const to = next + sign * (marks - 1) * mark;
  const lengths = new Map([[main.path, lengthOfTicks(to)]]);
  for (const { movable, times } of followers) {
    const by = (to - main.length) * times;
    if (!Number.isInteger(by)) return null;
    lengths.set(movable.path, lengthOfTicks(movable.length + by));
  }
  return lengths;
}

/**
 * Every move of one length that makes some piece smaller, with the ways to follow it that leave all as even as it was
 * drawn: those that make no other piece larger first, then those that move fewer lengths.
 */
export function movesOf(redrawing: Redrawing, layout: Layout): readonly (readonly Move[])[] {
  const drawn = redrawing.drawn(new Map());
  assert(drawn !== null, 'The sizes of a set are known');
  const before = piecesOf(layout, drawn.arrangement);
  const changeOf = (redrawn: Redrawn | null) =>
    redrawn === null ? null : sizeChange(before, piecesOf(redrawn.layout, redrawn.arrangement));
  const seen = new Set<string>();
  return redrawing.movable.flatMap((main) =>
    ([-1, 1] as const).flatMap((sign) => {
      const alone = redrawing.drawn(lengthsOf({ main, sign, followers: [] }, 1, redrawing.mark) ?? new Map());
      if (changeOf(alone)?.smaller !== true) return [];
      const ways = waysToFollow(redrawing, main, sign).flatMap((followers) => {
        const move: Move = { main, sign, followers };
        const key = keyOf(move);
        const change = seen.has(key) ? null : changeOf(moved(redrawing, move, 1));
        seen.add(key);
        return change?.smaller === true ? [{ move, larger: Number(change.larger) }] : [];
      });
      const sorted = ways.sort(
        (a, b) => a.larger - b.larger || weight(a.move.followers) - weight(b.move.followers),
      );
      return sorted.length === 0 ? [] : [sorted.map(({ move }) => move)];
    }),
  );
}

/** The same for moves of the same lengths by the same amounts. */
function keyOf({ main, sign, followers }: Move): string {
  return [[main.path, sign], ...followers.map(({ movable, times }) => [movable.path, sign * times])]
    .map((each) => each.join(' '))
    .sort()
    .join();
}

function sizeChange(
  before: readonly Piece[],
  after: readonly Piece[],
): { readonly smaller: boolean; readonly larger: boolean } {
  const changes = after.flatMap(({ size }, index) => {
    const old = before[index]!.size;
    return [size.width - old.width, size.height - old.height];
  });
  return { smaller: changes.some((by) => by < 0), larger: changes.some((by) => by > 0) };
}

// --- What follows a length ---

/** How often as far a length may follow another: as far, half as far (a border on either side), twice. */
const paces = [-1, 1, -0.5, 0.5, -2, 2] as const;

/**
 * The sets of followers that leave nothing worse. A length moves alone, or with a border or gap that evens its own row;
 * where that is not enough, with one other length that does so too.
 */
function waysToFollow(redrawing: Redrawing, main: Movable, sign: 1 | -1): readonly (readonly Follower[])[] {
  const worseWith = (followers: readonly Follower[]) => {
    const lengths = lengthsOf({ main, sign, followers }, 1, redrawing.mark);
    return (lengths && redrawing.drawn(lengths))?.worse ?? null;
  };
  const begun = [[], ...companionsOf(redrawing, main)].flatMap((followers) => {
    const worse = worseWith(followers);
    return worse === null ? [] : [{ followers, worse }];
  });
  const sound = begun.filter(({ worse }) => worse.size === 0).map(({ followers }) => followers);
  if (sound.length > 0) return sound;

  const mended: (readonly Follower[])[] = [];
  for (const { followers, worse } of begun) {
    const taken = new Set([main.path, ...followers.map(({ movable }) => movable.path)]);
    for (const movable of redrawing.movable) {
      if (taken.has(movable.path) || !concerns(movable, worse, main)) continue;
      for (const evening of [[], ...companionsOf(redrawing, movable)]) {
        if (evening.some((follower) => taken.has(follower.movable.path))) continue;
        for (const times of paces) {
          const own = evening.map((follower) => ({ ...follower, times: follower.times * times }));
          const all = [...followers, { movable, times }, ...own];
          if (worseWith(all)?.size === 0) mended.push(all);
        }
      }
    }
  }
  return mended;
}

/**
 * What a length takes along when it moves: one border or gap that evens its own row; or, of something that parts lie
 * on, a size in each row of them; or the sizes that are as long as it and lie in line with it.
 */
export function companionsOf(redrawing: Redrawing, main: Movable): readonly (readonly Follower[])[] {
  const known = redrawing.companions.get(main.path);
  if (known !== undefined) return known;
  const families = [nestedIn(redrawing, main), inLineWith(redrawing, main)];
  const found = [...evenedBy(redrawing, main), ...families.filter((followers) => followers.length > 0)];
  redrawing.companions.set(main.path, found);
  return found;
}

function evenedBy(redrawing: Redrawing, main: Movable): readonly (readonly Follower[])[] {
  const unevenWith = (followers: readonly Follower[]) => {
    const lengths = lengthsOf({ main, sign: -1, followers }, 1, redrawing.mark);
    return (lengths && redrawing.drawn(lengths))?.uneven ?? null;
  };
  const alone = unevenWith([]);
  if (alone === null || alone.size === 0) return [];
  return redrawing.movable.flatMap((movable) => {
    const follows = movable.kind === 'border' || movable.kind === 'gap';
    if (!follows || movable === main || !concerns(movable, alone, main)) return [];
    return paces
      .map((times) => [{ movable, times }])
      .filter((followers) => unevenWith(followers)?.size === 0);
  });
}

/** The sizes of parts on the same thing that are as long along the same axis. */
function inLineWith(redrawing: Redrawing, { path, part, kind, axis, length }: Movable): readonly Follower[] {
  if (kind !== 'size') return [];
  const onSame = new Set(
    redrawing.rows
      .filter((row) => row.terms.some((term) => term.kind === 'size' && term.part === part))
      .map(({ on }) => on),
  );
  const beside = new Set(
    redrawing.rows
      .filter(({ on }) => onSame.has(on))
      .flatMap(({ terms }) => terms.flatMap((term) => (term.kind === 'size' ? [term.part] : []))),
  );
  return redrawing.movable.flatMap((movable) => {
    const alike = movable.kind === 'size' && movable.axis === axis && movable.length === length;
    return alike && movable.path !== path && beside.has(movable.part) ? [{ movable, times: 1 }] : [];
  });
}

/** In each row on the part along the length's axis the largest size that may move, and in each row on that, and so on. */
function nestedIn(redrawing: Redrawing, { part, kind, axis }: Movable): readonly Follower[] {
  if (kind !== 'size') return [];
  const followers = new Map<string, Follower>();
  for (const row of redrawing.rows) {
    if (row.on !== part || row.axis !== axis) continue;
    const sizes = row.terms
      .flatMap((term) => (term.kind === 'size' ? [term] : []))
      .sort((a, b) => b.length - a.length)
      .flatMap((term) =>
        redrawing.movable.filter(
          (movable) => movable.part === term.part && movable.kind === 'size' && movable.axis === axis,
        ),
      );
    const [movable] = sizes;
    if (movable === undefined || followers.has(movable.path)) continue;
    followers.set(movable.path, { movable, times: 1 });
    for (const follower of nestedIn(redrawing, movable)) followers.set(follower.movable.path, follower);
  }
  return [...followers.values()];
}

/** Whether a length may mend what is worse: it belongs to a part concerned, along an axis that moved. */
function concerns(movable: Movable, worse: ReadonlySet<string>, main: Movable): boolean {
  if (!worse.has(movable.part)) return false;
  return movable.part === main.part || axesOf(movable).some((axis) => axesOf(main).includes(axis));
}

/** Gaps and borders follow more gladly than sizes. */
function weight(followers: readonly Follower[]): number {
  const weights = { gap: 1, border: 2, inset: 3, size: 4, beyond: 9 } as const;
  return followers.reduce((sum, { movable }) => sum + weights[movable.kind], 0);
}
