import {
  type Axis,
  type Box,
  bordersOf,
  type Edge,
  type Length,
  lengthOfTicks,
  zero,
} from '../measure/index.ts';
import { covers as regionCovers } from '../shape/index.ts';
import type { ArrangedPart, Arrangement, LaidPiece } from './arrange.ts';
import { covers, type Outline } from './cover.ts';
import type { Layout, Part, Place } from './layout.ts';
import { type LayoutProblem, partProblem, placeField } from './layoutProblem.ts';
import { regionIn } from './pieceShape.ts';
import { unseen } from './unseen.ts';

/**
 * Parts that are larger than what they lie on, or hang over its edges or the card's.
 *
 * A negative distance that was typed is meant, so that edge is only cautioned. Where a sum is off already, an
 * overhang along that axis is the same slip and not named again. Each part is named once for each way it is
 * wrong, with the first of its pieces that is.
 */
export function overhangs(layout: Layout, arrangement: Arrangement): readonly LayoutProblem[] {
  const byId = new Map(arrangement.parts.map((arranged) => [arranged.part.id, arranged]));
  return arrangement.parts.flatMap((arranged, index) => {
    const onto = byId.get(arranged.part.on)?.part ?? null;
    const problems = new Map<string, LayoutProblem>();
    for (const [piece, laid] of arranged.pieces.entries()) {
      for (const [key, problem] of overhangsOf(layout, arrangement, { arranged, onto, index, piece, laid })) {
        if (!problems.has(key)) problems.set(key, problem);
      }
    }
    return [...problems.values()];
  });
}

const sides = {
  width: { span: 'across', edges: ['left', 'right'], place: 0 },
  height: { span: 'down', edges: ['top', 'bottom'], place: 1 },
} as const satisfies Record<Axis, { span: keyof Place; edges: readonly [Edge, Edge]; place: 0 | 1 }>;

interface Subject {
  readonly arranged: ArrangedPart;
  /** What it lies on; `null`: the face. */
  readonly onto: Part | null;
  readonly index: number;
  readonly piece: number;
  readonly laid: LaidPiece;
}

/** The problems of one piece, each by what makes it one of a kind for its part. */
function* overhangsOf(
  layout: Layout,
  { card, problems }: Arrangement,
  { arranged, onto, index, piece, laid }: Subject,
): Generator<[key: string, problem: LayoutProblem]> {
  const { part } = arranged;
  const { box, under, borders } = laid;
  if (box === null || under === null || borders === null) return;
  const names = onto === null ? { face: part.on } : { on: onto.name };
  const cardBorders = bordersOf({ left: zero, top: zero, ...card }, box);
  const onCard = { face: arranged.face };

  let hangsOver = false;
  for (const axis of ['width', 'height'] as const) {
    const { span, edges } = sides[axis];
    if (
      problems.some(
        ({ code, part: id, names: about }) => code === 'sumOff' && id === part.id && about.axis === axis,
      )
    ) {
      hangsOver = true;
      continue;
    }
    const place = part.places[piece]![span];
    const typed = {
      [edges[0]]: place.start?.from === 'edge' && place.start.distance < 0,
      [edges[1]]: place.end?.from === 'edge' && place.end.distance < 0,
    };

    // Larger than what it lies on: no place can mend that.
    if (box[axis] > under[axis] + unseen && !edges.some((edge) => typed[edge])) {
      hangsOver = true;
      const isLargerThanCard = box[axis] > card[axis] + unseen;
      const room = isLargerThanCard ? card[axis] : under[axis];
      const fitsTurned = box.width <= under.height + unseen && box.height <= under.width + unseen;
      yield [
        `larger ${axis}`,
        partProblem(
          layout,
          index,
          isLargerThanCard ? 'largerThanCard' : 'largerThanPart',
          extentField(part, axis),
          { size: box[axis], room, difference: lengthOfTicks(box[axis] - room) },
          { axis, turned: fitsTurned ? 'fits' : 'larger', ...(isLargerThanCard ? onCard : names) },
        ),
      ];
      continue;
    }

    for (const edge of edges) {
      if (borders[edge] >= -unseen) continue;
      hangsOver = true;
      const overCard = cardBorders[edge] < -unseen;
      const [code, over] = typed[edge]
        ? (['overhang', borders[edge]] as const)
        : overCard
          ? (['overCardEdge', cardBorders[edge]] as const)
          : part.extent.by === 'inset'
            ? (['negativeBorder', borders[edge]] as const)
            : (['overPartEdge', borders[edge]] as const);
      yield [
        `${code} ${edge}`,
        partProblem(
          layout,
          index,
          code,
          placeField(layout, index, piece),
          { over: lengthOfTicks(-over) },
          { edge, ...(code === 'overCardEdge' ? onCard : names) },
        ),
      ];
    }
  }

  // Inside the box round another shape, and over its rim all the same.
  if (onto !== null && onto.shape.kind !== 'rectangle' && !hangsOver) {
    const [bed, outline] = [
      { shape: onto.shape, box: under },
      { shape: part.shape, box },
    ];
    if (covers(bed, outline)) return;
    const over = onto.shape.kind === 'circle' ? overRim(under, outline) : reachOver(bed, outline);
    yield [
      'rim',
      partProblem(
        layout,
        index,
        'overPartEdge',
        placeField(layout, index, piece),
        { over },
        { edge: 'rim', ...names },
      ),
    ];
  }
}

/** How far the furthest point of a piece lies outside a circle, rounded up to a tick. */
function overRim(circle: Box, { shape, box }: Outline): Length {
  const radius = circle.width / 2;
  const [x, y] = [circle.left + radius, circle.top + circle.height / 2];
  const furthest =
    shape.kind === 'circle'
      ? Math.hypot(box.left + box.width / 2 - x, box.top + box.height / 2 - y) + box.width / 2
      : Math.max(
          ...regionIn(shape, box).rings.flatMap((ring) =>
            ring.map((point) => Math.hypot(point.x - x, point.y - y)),
          ),
        );
  return lengthOfTicks(Math.ceil(furthest - radius));
}

/** The least that the bed would have to grow by on all sides to hold the piece, to a sixteenth of a millimetre. */
function reachOver(bed: Outline, piece: Outline): Length {
  const [outer, inner] = [regionIn(bed.shape, bed.box), regionIn(piece.shape, piece.box)];
  const step = 100;
  let [less, enough] = [0, Math.ceil(Math.max(bed.box.width, bed.box.height) / step)];
  while (enough - less > 1) {
    const middle = Math.floor((less + enough) / 2);
    if (regionCovers(outer, inner, lengthOfTicks(middle * step))) enough = middle;
    else less = middle;
  }
  return lengthOfTicks(enough * step);
}

/** The field that a part's size along an axis comes from. */
function extentField(part: Part, axis: Axis): string {
  switch (part.extent.by) {
    case 'diameter':
      return 'diameter';
    case 'inset':
      return 'inset';
    case 'size':
      return `size[${sides[axis].place}]`;
  }
}
