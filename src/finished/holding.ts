import type { Adhere, Arrangement, Face, Layout, Part } from '../layout/index.ts';
import { type AdhesiveUse, adhesiveUses } from '../making/index.ts';
import { type Box, type Length, lengthOfTicks, minus } from '../measure/index.ts';
import { breadthOf, type Region } from '../shape/index.ts';
import { type Adhesive, adhesiveFor } from './adhesive.ts';
import { type Laid, laidUnder } from './holdingLaid.ts';
import { type HoldingRoom, holdingRooms } from './holdingRoom.ts';
import { isWrapped } from './isWrapped.ts';
import { tuckedEnds } from './tucks.ts';

/** What holds the parts of a card, and how much of it the set needs. */
export interface Holding {
  /** In the order of the pile. */
  readonly parts: readonly HeldPart[];
  /** Of every adhesive that is used. */
  readonly needs: readonly AdhesiveNeed[];
}

/** What holds one part. */
export interface HeldPart {
  readonly part: string;
  readonly face: Face;
  readonly by: Adhere;
  readonly adhesive: Adhesive;
  /** One for each piece whose place is known. */
  readonly pieces: readonly HeldPiece[];
}

/**
 * What holds one piece. Boxes are in the axes of the piece as it is seen from the front of its face, from the top left
 * corner of its seen box; seen from behind, where it is laid, left and right change places.
 */
export interface HeldPiece {
  /** From 0. */
  readonly piece: number;
  readonly laid: readonly Laid[];
  /** Removable tape over the ends of a band, behind what it goes round. */
  readonly ends: readonly Laid[];
  /** How far the worst point of it is from the nearest of that, where it is over the span; `null`: it is not. */
  readonly hangs: Length | null;
  /** Why nothing holds it: no `room` behind it, or none that is not seen through it (`cover`). `null`: something does. */
  readonly lacks: 'room' | 'cover' | null;
  /** How broad the room is for it, where it is broadest. */
  readonly breadth: Length;
  /** Where it may lie, in the axes of the face. */
  readonly room: Region;
}

/** How much of one adhesive is needed. */
export interface AdhesiveNeed {
  readonly use: AdhesiveUse;
  readonly adhesive: Adhesive;
  readonly card: Amount;
  readonly set: Amount;
  /** Rolls, or packs, to have at the least, cut without loss; `null`: it is not known how much is on one. */
  readonly toHave: number | null;
}

/** Of strips and lines their length in all, of all how many. */
export interface Amount {
  /** In ticks; may be more than any length of a layout. */
  readonly length: number;
  readonly count: number;
}

/** What holds every part, laid where it is not seen; all cards of a set alike. */
export function holdingOf(layout: Layout, arrangement: Arrangement): Holding {
  const rooms = new Map(
    holdingRooms(layout, arrangement).map((room) => [`${room.part} ${room.piece}`, room]),
  );
  const parts = arrangement.parts.map(({ part, face, pieces }): HeldPart => {
    const adhesive = adhesiveFor(layout, part.adhere);
    // Pieces of one part are mostly laid alike.
    const known = new Map<string, ReturnType<typeof laidUnder>>();
    return {
      part: part.id,
      face,
      by: part.adhere,
      adhesive,
      pieces: pieces.flatMap(({ box }, piece) => {
        const room = rooms.get(`${part.id} ${piece}`);
        return box === null || room === undefined
          ? []
          : [heldPiece({ part, piece, box, room, adhesive, layout, known })];
      }),
    };
  });
  return { parts, needs: needsOf(layout, parts) };
}

/** Whether it has something of its own under it; a flat band is held by its ends alone. */
export function isHeldUnder(part: Part): boolean {
  return part.adhere !== 'flat' || !isWrapped(part);
}

function heldPiece({
  part,
  piece,
  box,
  room,
  adhesive,
  layout,
  known,
}: {
  readonly part: Part;
  readonly piece: number;
  readonly box: Box;
  readonly room: HoldingRoom;
  readonly adhesive: Adhesive;
  readonly layout: Layout;
  readonly known: Map<string, ReturnType<typeof laidUnder>>;
}): HeldPiece {
  const own = (laid: readonly Laid[]) =>
    laid.map(({ box: one, along }) => ({
      box: { ...one, left: minus(one.left, box.left), top: minus(one.top, box.top) },
      along,
    }));
  const ends = own(tapeOver(part, box, adhesiveFor(layout, 'holding')));
  const breadth = breadthOf(room.room);
  if (!isHeldUnder(part))
    return { piece, laid: [], ends, hangs: null, lacks: null, breadth, room: room.room };
  const key = JSON.stringify(
    [room.region, room.room].map(({ rings }) =>
      rings.map((ring) => ring.map(({ x, y }) => [x - box.left, y - box.top])),
    ),
  );
  let under = known.get(key);
  if (under === undefined) {
    const { laid, hangs } = laidUnder(room.region, room.room, adhesive);
    under = { laid: own(laid), hangs };
    known.set(key, under);
  }
  const { laid, hangs } = under;
  return {
    piece,
    laid,
    ends,
    hangs,
    lacks: laid.length > 0 ? null : lackOf(room, adhesive),
    breadth,
    room: room.room,
  };
}

/** Whether it would hold if it might be seen. */
function lackOf({ region, behind, isSeenThrough }: HoldingRoom, adhesive: Adhesive): 'room' | 'cover' {
  return isSeenThrough && laidUnder(region, behind, adhesive).laid.length > 0 ? 'cover' : 'room';
}

/** A strip of tape along each end of a band, half on the band and half on what it goes round. */
function tapeOver(part: Part, box: Box, { width }: Adhesive): readonly Laid[] {
  return tuckedEnds(part, box).map(({ edge, box: end }) => {
    const across = edge === 'left' || edge === 'right';
    const inner = { left: end.left + end.width, right: end.left, top: end.top + end.height, bottom: end.top }[
      edge
    ];
    const from = lengthOfTicks(inner - Math.floor(width / 2));
    return across
      ? { box: { ...end, left: from, width }, along: 'height' }
      : { box: { ...end, top: from, height: width }, along: 'width' };
  });
}

function needsOf(layout: Layout, parts: readonly HeldPart[]): readonly AdhesiveNeed[] {
  return adhesiveUses.flatMap((use) => {
    const adhesive = adhesiveFor(layout, use);
    const laid = parts.flatMap(({ by, pieces }) =>
      use === 'holding'
        ? pieces.flatMap(({ ends }) => ends)
        : by === use
          ? pieces.flatMap((piece) => piece.laid)
          : [],
    );
    if (laid.length === 0) return [];
    const runs = adhesive.form === 'strip' || adhesive.form === 'line';
    const card = {
      length: runs ? laid.reduce((sum, { box, along }) => sum + box[along], 0) : 0,
      count: laid.length,
    };
    const set = { length: card.length * layout.cards, count: card.count * layout.cards };
    const toHave =
      adhesive.roll !== null && runs
        ? Math.ceil(set.length / adhesive.roll)
        : adhesive.pack === null
          ? null
          : Math.ceil(set.count / adhesive.pack);
    return [{ use, adhesive, card, set, toHave }];
  });
}
