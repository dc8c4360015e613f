import {
  dimensionsOf,
  isFolded,
  type Layout,
  type LayoutSum,
  type Part,
  type Room,
  type RoomName,
  sumsOf,
} from '../layout/index.ts';
import { type Axis, inches, type Length, lengthOfTicks, millimetres } from '../measure/index.ts';
import { givesAll } from './givesAll.ts';
import { piecesOf } from './pieces.ts';
import type { SetToPlan } from './planSet.ts';
import type { Shortage } from './shortage.ts';
import { type SuitedSizes, suitedSet } from './suit.ts';

/** Sizes with which a set that its papers are short for comes out, or the most cards that any near it give. */
export interface SuitedRecast {
  /** The lengths that move, by their paths; `null`: none were found with which all cards come out. */
  readonly lengths: ReadonlyMap<string, Length> | null;
  /** How many cards come out with sizes near these; 0 where nothing may move. */
  readonly cards: number;
}

/**
 * Sizes near those of a layout with which its papers are enough: the parts that are cut from papers that are short
 * may become smaller and what lies on them, what stands in a row with them larger, by some 12 mm or 1/2 in; what has
 * room of its own moves within that alone, and is left alone here. Tried along the height alone, along the width alone, then both ways: first
 * with borders and gaps as they are, then with those that follow.
 *
 * Every length of the layout stands on marks of the trimmer of `set`, else on the usual ones.
 */
export function suitedRecast(set: SetToPlan, { papers }: Shortage, mark: Length): SuitedRecast {
  const short = new Set(papers.map(({ paper }) => paper));
  let most = 0;
  const found: SuitedSizes[] = [];
  const ways = [true, false].flatMap((firm) =>
    ([['height'], ['width'], ['height', 'width']] as const).map((axes) => ({ firm, axes })),
  );
  // What does not come out with everything smaller both ways need not be looked for.
  if (isHopeless(set, short, furthest(set.layout, mark, 1))) return { lengths: null, cards: 0 };
  for (const { firm, axes } of ways) {
    // The first that comes out even all round is good enough; borders move only where sizes alone do not do.
    if (found.some(({ alike }) => alike) || (!firm && found.length > 0)) break;
    const layout = withRoomsAround(set, { short, axes, mark, firm });
    if (layout === null) continue;
    const suited = suitedSet({ ...set, layout });
    if (suited.kind !== 'suited') continue;
    most = Math.max(most, suited.cards);
    if (suited.cards >= set.layout.cards) found.push(suited);
  }
  const best = found.toSorted((a, b) => Number(b.alike) - Number(a.alike) || a.marks - b.marks)[0];
  if (best === undefined) return { lengths: null, cards: most };
  return { lengths: new Map(best.changes.map(({ path, to }) => [path, to])), cards: best.cards };
}

/** Which way a size may go. */
type Way = 'smaller' | 'larger';

/** Whether the papers do not even give the set with every piece of theirs so much smaller both ways. */
function isHopeless(set: SetToPlan, short: ReadonlySet<string>, by: number): boolean {
  const pieces = piecesOf(set.layout, set.arrangement).map((piece) => {
    const smaller = (length: Length) => lengthOfTicks(Math.max(Math.ceil(length / 2), length - by));
    return { ...piece, size: { width: smaller(piece.size.width), height: smaller(piece.size.height) } };
  });
  return [...short].some((id) => {
    const own = pieces.filter(({ paper }) => paper === id);
    // Sizes between marks are not for a trimmer to cut: this asks about room alone.
    return givesAll(set.layout.papers.get(id)!, own, { ...set, trimmer: null }) === 'no';
  });
}

/** The layout with room around the sizes that may move; `null`: none may. */
function withRoomsAround(
  { layout, arrangement }: SetToPlan,
  {
    short,
    axes,
    mark,
    firm,
  }: {
    readonly short: ReadonlySet<string>;
    readonly axes: readonly Axis[];
    readonly mark: Length;
    /** Borders and gaps stay as they are. */
    readonly firm: boolean;
  },
): Layout | null {
  const rows = sumsOf(arrangement);
  const moving = new Map<string, { readonly part: Part; readonly axis: Axis; readonly way: Way }>();
  for (const axis of axes) {
    const lead = layout.parts.filter(({ papers }) => papers.some((id) => short.has(id)));
    for (const part of lead) addTo(moving, part, axis, 'smaller');
    const ids = new Set(lead.map(({ id }) => id));
    for (const part of layout.parts) if (ids.has(part.on)) addTo(moving, part, axis, 'smaller');
    for (const part of besideIn(layout, ids, rows, axis)) addTo(moving, part, axis, 'larger');
  }
  if (moving.size === 0) return null;
  const far = furthest(layout, mark, moving.size);
  const rooms = new Map<string, Partial<Record<RoomName, Room>>>();
  for (const { part, axis, way } of moving.values()) {
    const [name, length] = sizeNamed(part, axis)!;
    const room = {
      // What is inset becomes smaller when its border grows.
      least: lengthOfTicks(Math.max(mark, length - (name === 'inset' || way === 'larger' ? 0 : far))),
      most: lengthOfTicks(length + (name === 'inset' ? mark * 2 : way === 'larger' ? far : 0)),
    };
    rooms.set(part.id, { ...rooms.get(part.id), [name]: room });
  }
  if (firm) {
    for (const { part: id, kind, name, length } of dimensionsOf(layout)) {
      if ((kind !== 'gap' && kind !== 'border') || !rooms.has(id)) continue;
      // Pieces with places of their own may have several of a name: the room holds for all of them.
      const known = rooms.get(id)![name as RoomName] ?? { least: length, most: length };
      const least = lengthOfTicks(Math.min(known.least, length));
      rooms.set(id, {
        ...rooms.get(id),
        [name]: { least, most: lengthOfTicks(Math.max(known.most, length)) },
      });
    }
  }
  return {
    ...layout,
    parts: layout.parts.map((part) => {
      const own = rooms.get(part.id);
      return own === undefined ? part : { ...part, rooms: own };
    }),
  };
}

type Moving = Map<string, { readonly part: Part; readonly axis: Axis; readonly way: Way }>;

function addTo(moving: Moving, part: Part, axis: Axis, way: Way): void {
  const key = `${part.id} ${axis}`;
  // A room that the layout names says how far all of that part may move.
  const may =
    part.rooms === undefined &&
    part.papers.length > 0 &&
    !part.dieCut &&
    !part.stamped &&
    !isFolded(part.shape);
  if (may && !moving.has(key) && sizeNamed(part, axis) !== null) moving.set(key, { part, axis, way });
}

/** The length of a part that gives its size along an axis; `null`: its size follows. */
function sizeNamed({ extent }: Part, axis: Axis): readonly [RoomName, Length] | null {
  switch (extent.by) {
    case 'diameter':
      return ['diameter', extent.diameter];
    case 'inset':
      return ['inset', extent.inset];
    case 'size': {
      const length = extent[axis];
      return length === null ? null : [axis, length];
    }
  }
}

/** What stands in a row with these parts. */
function besideIn(
  layout: Layout,
  ids: ReadonlySet<string>,
  rows: readonly LayoutSum[],
  axis: Axis,
): readonly Part[] {
  const found = new Set<string>();
  for (const row of rows) {
    if (row.axis !== axis) continue;
    const parts = row.terms.flatMap((term) => (term.kind === 'size' ? [term.part] : []));
    if (parts.some((id) => ids.has(id))) for (const id of parts) found.add(id);
  }
  return layout.parts.filter(({ id }) => found.has(id) && !ids.has(id));
}

/** How far sizes may move, so that the choices can be gone through. */
function furthest({ units }: Layout, mark: Length, sizes: number): number {
  const wanted = Math.max(4, Math.floor((units === 'in' ? inches(1, 2) : millimetres(12)) / mark));
  const most = Math.floor(mostChoices ** (1 / sizes)) - 1;
  return mark * Math.max(1, Math.min(wanted, most));
}

/** How many choices of sizes may be gone through, each of which is drawn. */
const mostChoices = 1_500;
