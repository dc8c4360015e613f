import {
  type ArrangedPart,
  type Arrangement,
  type Face,
  type Layout,
  type Part,
  regionIn,
  unseen,
} from '../layout/index.ts';
import { type TearDepth, tearOf } from '../making/index.ts';
import { type Axis, type Box, type Edge, type Length, lengthOfTicks } from '../measure/index.ts';
import type { Region } from '../shape/index.ts';
import type { EdgeOf, JoinKind, JoinTear, LaidJoin } from './tearJoin.ts';

/**
 * Every join of every torn edge on the card as it is laid, in the order of the pile.
 *
 * Each torn edge is followed along its length, stretch by stretch as its neighbours stand, and looked at across: what
 * lies on it, what it lies on, where that ends, and what comes next. What is see-through hides nothing. Two torn edges
 * that face each other make one join. A neighbour that is no rectangle is followed in fine steps, and counts where it
 * reaches furthest over or under the edge, or comes nearest to it.
 */
export function tearJoins(layout: Layout, arrangement: Arrangement): readonly LaidJoin[] {
  const pieces = standing(layout, arrangement);
  const found = new Map<string, Candidate[]>();
  for (const piece of pieces) {
    for (const edge of edges) {
      if (piece.tears[edge] === null) continue;
      const beside = pieces.filter((other) => other.face === piece.face);
      for (const { at, length } of stretchesAlong(piece, edge, beside)) {
        for (const join of joinsAcross(across(piece, edge, at, beside, arrangement), length)) {
          const key = keyOf(join);
          found.set(key, [...(found.get(key) ?? []), join]);
        }
      }
    }
  }
  return [...found.values()].flatMap(decisive);
}

const edges = ['left', 'right', 'top', 'bottom'] as const;
const opposite = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' } as const satisfies Record<
  Edge,
  Edge
>;

/** A piece that has a place, with the tears of its torn edges. */
interface Standing {
  readonly id: string;
  readonly piece: number;
  readonly face: Face;
  /** From the bottom of the pile. */
  readonly order: number;
  readonly box: Box;
  /** What it covers, where that is not the box. */
  readonly region: Region | null;
  readonly hides: boolean;
  readonly tears: Readonly<Record<Edge, { readonly reckoned: Length; readonly tear: TearDepth } | null>>;
}

function standing(layout: Layout, { parts }: Arrangement): readonly Standing[] {
  let order = 0;
  return parts.flatMap((arranged) => {
    const { part, face, pieces } = arranged;
    const tears = tearsOfPart(arranged);
    return pieces.flatMap(({ box }, piece) => {
      order += 1;
      if (box === null) return [];
      const hides = !isSeeThrough(layout, part);
      return [
        {
          id: part.id,
          piece,
          face,
          order,
          box,
          region: part.shape.kind === 'rectangle' ? null : regionIn(part.shape, box),
          hides,
          tears,
        },
      ];
    });
  });
}

function isSeeThrough(layout: Layout, part: Part): boolean {
  return part.papers.some((paper) => layout.papers.get(paper)?.seeThrough === true);
}

function tearsOfPart({ part }: ArrangedPart): Standing['tears'] {
  const of = (edge: Edge) => {
    const reckoned = part.torn[edge];
    return reckoned > 0 ? { reckoned, tear: tearOf(reckoned, part.tear) } : null;
  };
  return { left: of('left'), right: of('right'), top: of('top'), bottom: of('bottom') };
}

/** Places along the edge, each for the stretch around it that is alike. */
function stretchesAlong(
  piece: Standing,
  edge: Edge,
  beside: readonly Standing[],
): readonly { readonly at: number; readonly length: number }[] {
  const axis: Axis = edge === 'left' || edge === 'right' ? 'height' : 'width';
  const start = startOf[axis];
  const from = piece.box[start];
  const to = from + piece.box[axis];
  const inside = (place: number) => place > from && place < to;
  const corners = beside.flatMap(({ box, region }) => {
    const [first, last] = [box[start], box[start] + box[axis]];
    const steps = region === null ? 1 : fineSteps;
    return Array.from({ length: steps + 1 }, (_, step) => first + ((last - first) * step) / steps);
  });
  const cuts = [from, ...corners.filter(inside).sort((a, b) => a - b), to];
  return cuts.slice(0, -1).flatMap((first, index) => {
    const length = cuts[index + 1]! - first;
    return length <= unseen ? [] : [{ at: first + length / 2, length }];
  });
}

/** Odd, so that the middle of a circle is the middle of a step. */
const fineSteps = 33;
const startOf = { width: 'left', height: 'top' } as const;

/** What a line across a torn edge meets; `x` runs from the edge into the piece. */
interface Across {
  readonly own: Crossed;
  readonly edge: Edge;
  /** The others on this line. */
  readonly others: readonly Crossed[];
  /** The face itself. */
  readonly card: { readonly face: Face; readonly low: number; readonly high: number };
}

interface Crossed {
  readonly of: Standing;
  readonly low: number;
  readonly high: number;
}

function across(
  piece: Standing,
  edge: Edge,
  at: number,
  beside: readonly Standing[],
  { card }: Arrangement,
): Across {
  const axis: Axis = edge === 'left' || edge === 'right' ? 'width' : 'height';
  const start = startOf[axis];
  const isStart = edge === start;
  const origin = isStart ? piece.box[start] : piece.box[start] + piece.box[axis];
  const turned = (from: number, to: number) =>
    isStart ? { low: from - origin, high: to - origin } : { low: origin - to, high: origin - from };
  const { from, to } = { from: piece.box[start], to: piece.box[start] + piece.box[axis] };
  const crossed = (of: Standing): readonly Crossed[] =>
    spansAt(of, axis, at).map((span) => ({ of, ...turned(span.from, span.to) }));
  return {
    own: { of: piece, ...turned(from, to) },
    edge,
    others: beside.filter((other) => other !== piece).flatMap(crossed),
    card: { face: piece.face, ...turned(0, card[axis]) },
  };
}

/** From where to where along the axis the piece covers anything at that place of the other axis. */
function spansAt(
  { box, region }: Standing,
  axis: Axis,
  at: number,
): readonly { readonly from: number; readonly to: number }[] {
  const other: Axis = axis === 'width' ? 'height' : 'width';
  const first = box[startOf[other]];
  if (at <= first || at >= first + box[other]) return [];
  if (region === null) return [{ from: box[startOf[axis]], to: box[startOf[axis]] + box[axis] }];
  const [along, across] = axis === 'width' ? (['x', 'y'] as const) : (['y', 'x'] as const);
  const crossings = region.rings
    .flatMap((ring) =>
      ring.flatMap((one, index) => {
        const next = ring[(index + 1) % ring.length]!;
        if (one[across] < at === next[across] < at) return [];
        const share = (at - one[across]) / (next[across] - one[across]);
        return [one[along] + share * (next[along] - one[along])];
      }),
    )
    .sort((a, b) => a - b);
  return crossings.flatMap((from, index) => (index % 2 === 0 ? [{ from, to: crossings[index + 1]! }] : []));
}

/** A little more than what is unseen. */
const just = unseen + 1;

function joinsAcross(line: Across, length: number): readonly Candidate[] {
  const { own, edge, others } = line;
  const depth = own.high;
  const above = others.filter(({ of }) => of.order > own.of.order);
  const below = others.filter(({ of }) => of.order < own.of.order);
  const coversFrom = (place: number) => furthestCover(above, place);
  const join = (kind: JoinKind, against: Against, shows: string, margin: number): Candidate =>
    laid(line, { kind, against, shows, margin, length });
  /** The topmost thing that is seen at a place once this piece is gone from there. */
  const groundAt = (place: number): Crossed | null =>
    topmost(below.filter(({ low, high }) => low <= place && place <= high));
  const nameAt = (place: number): string => groundAt(place)?.of.id ?? line.card.face;

  // A cover from the outside hides the edge; what is left is how far it reaches either way.
  const covers = above.filter(({ of, low, high }) => of.hides && low < -unseen && high >= -just);
  const innermost = coversFrom(0) ?? largest(covers, ({ high }) => high);
  if (covers.length > 0 && innermost !== null) {
    const outermost = largest(covers, ({ low }) => -low)!;
    const inner: Against = { of: innermost.of, edge: opposite[edge], sign: -1 };
    return [
      ...(innermost.high >= depth - unseen
        ? []
        : [join('under', inner, nameAt(innermost.high + just), innermost.high)]),
      ...onlyWherePossible(join('beyond', { of: outermost.of, edge, sign: -1 }, own.of.id, -outermost.low)),
    ];
  }

  const ground = topmost(others.filter(({ low, high }) => low < -unseen && high >= -just));
  const groundName = ground?.of.id ?? line.card.face;
  const joins: Candidate[] = [];

  // Outwards: what shows beside the tear, as far as something on it or its own edge.
  const groundOrder = ground?.of.order ?? 0;
  const groundEnd = ground?.low ?? line.card.low;
  const next = largest(
    others.filter(({ of, high }) => of.order > groundOrder && high < -just && high >= groundEnd - unseen),
    ({ high }) => high,
  );
  if (next !== null) {
    joins.push(join('facing', { of: next.of, edge: opposite[edge], sign: 1 }, groundName, -next.high));
  } else if (groundEnd < -unseen || ground !== null) {
    const against: Against = ground === null ? 'card' : { of: ground.of, edge, sign: -1 };
    joins.push(join('border', against, groundName, -groundEnd));
  }

  // Inwards, on top: the border that this piece shows around what lies on it.
  const upon = largest(
    above.filter(({ low }) => low >= -unseen && low < depth - unseen),
    ({ low }) => -low,
  );
  if (upon !== null) {
    joins.push(join('border', { of: upon.of, edge, sign: 1 }, own.of.id, Math.max(0, upon.low)));
  }

  // Inwards, below: the edge of what shows beside the tear, if it ends under this piece and nothing on top hides that.
  if (ground !== null && ground.high < depth - unseen) {
    const end = Math.max(0, ground.high);
    const cover = coversFrom(end);
    if (cover === null) {
      joins.push(join('over', { of: ground.of, edge: opposite[edge], sign: -1 }, nameAt(end + just), end));
    } else if (cover.high < depth - unseen) {
      const against: Against = { of: cover.of, edge: opposite[edge], sign: -1 };
      joins.push(join('over', against, nameAt(cover.high + just), cover.high));
    }
  }
  // What lies hidden between the two comes to light where the tear goes as deep.
  const hidden = largest(
    below.filter(({ of, low }) => of.order > groundOrder && low > unseen && low < depth - unseen),
    ({ low }) => -low,
  );
  if (hidden !== null && coversFrom(hidden.low) === null) {
    joins.push(
      ...onlyWherePossible(join('over', { of: hidden.of, edge, sign: 1 }, hidden.of.id, hidden.low)),
    );
  }
  return joins;
}

/** An edge of a piece on the line, and what its own tear does for the margin; `card`: the edge of the face. */
type Against = { readonly of: Standing; readonly edge: Edge; readonly sign: 1 | -1 } | 'card';

function laid(
  line: Across,
  {
    kind,
    against,
    shows,
    margin,
    length,
  }: {
    readonly kind: JoinKind;
    readonly against: Against;
    readonly shows: string;
    readonly margin: number;
    readonly length: number;
  },
): Candidate {
  const { own, edge, card } = line;
  const torn: EdgeOf = { part: own.of.id, piece: own.of.piece, edge };
  // Where something lies on the torn piece, or hides it from within, a deep tear takes from the margin.
  const isTold =
    kind === 'facing' ||
    kind === 'beyond' ||
    (kind === 'border' && (against === 'card' || against.of.order < own.of.order));
  const tears: JoinTear[] = [{ of: torn, tear: own.of.tears[edge]!.tear, sign: isTold ? 1 : -1 }];
  let bare = Math.round(margin) - tears[0]!.sign * own.of.tears[edge]!.reckoned;
  const other: EdgeOf =
    against === 'card'
      ? { part: card.face, piece: 0, edge }
      : { part: against.of.id, piece: against.of.piece, edge: against.edge };
  const otherTear = against === 'card' ? null : against.of.tears[against.edge];
  if (against !== 'card' && otherTear !== null) {
    tears.push({ of: other, tear: otherTear.tear, sign: against.sign });
    bare -= against.sign * otherTear.reckoned;
  }
  return {
    kind,
    torn,
    against: other,
    shows,
    nominal: lengthOfTicks(Math.round(margin)),
    bare: lengthOfTicks(bare),
    tears,
    along: lengthOfTicks(Math.round(length)),
    crossed: against !== 'card' && crosses(against.of, own.of, edge),
  };
}

/** Whether what is no rectangle lies to both sides of the edge. */
function crosses({ box, region }: Standing, own: Standing, edge: Edge): boolean {
  if (region === null) return false;
  const axis: Axis = edge === 'left' || edge === 'right' ? 'width' : 'height';
  const start = startOf[axis];
  const at = edge === start ? own.box[start] : own.box[start] + own.box[axis];
  return box[start] < at - unseen && box[start] + box[axis] > at + unseen;
}

/** The piece in which what hides from a place on inwards without a break comes to its end; `null`: nothing hides it. */
function furthestCover(above: readonly Crossed[], place: number): Crossed | null {
  let reached: Crossed | null = null;
  for (;;) {
    const from: number = reached?.high ?? place;
    const next = largest(
      above.filter(({ of, low, high }) => of.hides && low <= from + unseen && high > from + unseen),
      ({ high }) => high,
    );
    if (next === null) return reached;
    reached = next;
  }
}

/** A join that no tear can bring to fail is not worth telling, where nobody laid it for the tear's sake. */
function onlyWherePossible(join: Candidate): readonly Candidate[] {
  const least = join.tears.reduce(
    (all, { tear, sign }) => all + (sign === 1 ? tear.least : -tear.most),
    join.bare as number,
  );
  return least < 0 ? [join] : [];
}

/** A join at one stretch, and whether it is with a curve that crosses the edge. */
type Candidate = LaidJoin & { readonly crossed: boolean };

/** Two torn edges that face each other are told once. */
function keyOf({ kind, torn, against }: LaidJoin): string {
  const name = ({ part, piece, edge }: EdgeOf) => `${part} ${piece} ${edge}`;
  return `${kind} ${[name(torn), name(against)].sort().join(', ')}`;
}

/**
 * The join of two edges from what it is at each stretch: at the place that decides. Where a curve crosses the edge, it is
 * every length from nothing on, and only what is straight of it for half of the way makes a join.
 */
function decisive(stretches: readonly Candidate[]): readonly LaidJoin[] {
  const [first] = stretches as readonly [Candidate];
  const own = stretches.filter(({ torn }) => JSON.stringify(torn) === JSON.stringify(first.torn));
  const along = own.reduce((all, join) => all + join.along, 0);
  const isLaidOver = first.kind === 'over' || first.kind === 'under';
  const furthest = own.reduce((best, join) =>
    (isLaidOver ? join.nominal > best.nominal : join.nominal < best.nominal) ? join : best,
  );
  const whole = ({ crossed: _, ...join }: Candidate): LaidJoin => ({ ...join, along: lengthOfTicks(along) });
  if (own.every(({ crossed }) => !crossed)) return [whole(furthest)];
  const lengthAt = ({ nominal }: LaidJoin) =>
    own
      .filter((other) => Math.abs(other.nominal - nominal) <= unseen)
      .reduce((all, other) => all + other.along, 0);
  const straight = own.reduce((best, each) => (lengthAt(each) > lengthAt(best) ? each : best));
  return 2 * lengthAt(straight) < along ? [] : [whole(straight)];
}

function topmost(crossed: readonly Crossed[]): Crossed | null {
  return largest(crossed, ({ of }) => of.order);
}

function largest(crossed: readonly Crossed[], by: (each: Crossed) => number): Crossed | null {
  return crossed.reduce<Crossed | null>(
    (best, each) => (best === null || by(each) > by(best) ? each : best),
    null,
  );
}
