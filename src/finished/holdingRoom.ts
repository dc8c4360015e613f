import type { Arrangement, Layout, Part } from '../layout/index.ts';
import { tearOf } from '../making/index.ts';
import { type Edge, type Length, lengthOfTicks, minus } from '../measure/index.ts';
import {
  boundsOf,
  boxRegion,
  breadthOf,
  difference,
  intersection,
  narrowed,
  nothing,
  type Region,
  union,
} from '../shape/index.ts';
import { type Adhesive, adhesiveFor } from './adhesive.ts';
import { doorsHolding } from './doorHolding.ts';
import { type Lying, liftsOf, restOf } from './rest.ts';
import { shownOn } from './shown.ts';

/** Where what holds a piece may lie unseen, in the axes of its face. */
export interface HoldingRoom extends Lying {
  /** Behind the piece, in from its edges and holes and from the deepest that it may be torn, on what it rests on; of a front with doors on one of them. */
  readonly behind: Region;
  /** Of that, what is not seen through the piece: all of it, or only what lies under something that is not seen through. */
  readonly room: Region;
  /** Whether the piece is seen through on some card, so that what holds it would show. */
  readonly isSeenThrough: boolean;
  /** How far from its edges that is. */
  readonly inset: Length;
}

/**
 * Where what holds each piece may lie, all cards of the set taken together: what is seen through on one of them is
 * taken to be on all. Pieces whose place is not known are left out.
 */
export function holdingRooms(layout: Layout, arrangement: Arrangement): readonly HoldingRoom[] {
  const lying: readonly Lying[] = shownOn(layout, arrangement, 0);
  const lifts = liftsOf(layout, arrangement);
  const doors = doorsHolding(layout, arrangement);
  const parts = new Map(layout.parts.map((part) => [part.id, part]));
  const isSeenThrough = ({ papers }: Part) =>
    papers.some((paper) => layout.papers.get(paper)?.seeThrough === true);
  return lying.flatMap((one, index) => {
    const part = parts.get(one.part);
    if (part === undefined) return [];
    const adhesive = adhesiveFor(layout, part.adhere);
    const inset = insetOf(one.region, part, adhesive);
    const rest = restOf(one, lying, lifts);
    const door = doors.get(`${one.part} ${one.piece}`);
    const held = door === undefined ? rest : intersection(rest, door(inset));
    const behind = intersection(narrowed(untorn(one.region, part), inset), held);
    const shows = adhesive.shows && isSeenThrough(part);
    const over = lying
      .slice(index + 1)
      .filter(({ part: id, face }) => face === one.face && !isSeenThrough(parts.get(id)!));
    const room = shows ? intersection(behind, union(over.map(({ region }) => region))) : behind;
    return [{ ...one, behind, room, isSeenThrough: shows, inset }];
  });
}

/** A flat piece shows nothing at its side; glue keeps off its edges so as not to ooze, of a narrow one by a quarter. */
function insetOf(region: Region, { adhere }: Part, { inset }: Adhesive): Length {
  return adhere === 'flat' ? lengthOfTicks(Math.min(inset, Math.floor(breadthOf(region) / 4))) : inset;
}

/** What is left of a piece where its tears go as deep as they may. */
function untorn(region: Region, { torn, tear }: Part): Region {
  const edges = (Object.keys(torn) as Edge[]).filter((edge) => torn[edge] > 0);
  return edges.reduce((left, edge) => {
    const box = boundsOf(left);
    if (box === null) return nothing;
    const { most } = tearOf(torn[edge], tear);
    const across = edge === 'left' || edge === 'right';
    const deeper = lengthOfTicks(Math.min(Math.max(0, most - torn[edge]), across ? box.width : box.height));
    const taken = across
      ? {
          ...box,
          width: deeper,
          left: edge === 'left' ? box.left : minus(endOf(box.left, box.width), deeper),
        }
      : { ...box, height: deeper, top: edge === 'top' ? box.top : minus(endOf(box.top, box.height), deeper) };
    return difference(left, boxRegion(taken));
  }, region);
}

function endOf(start: Length, length: Length): Length {
  return lengthOfTicks(start + length);
}
