import {
  black,
  circle,
  dimensionLine,
  fineStroke,
  type Mark,
  type Point,
  type Row,
  ringsOf,
} from '../drawing/index.ts';
import { type Axis, type Length, lengthOfTicks, pointsOf, zero } from '../measure/index.ts';
import { chainOf } from './chain.ts';
import { type DrawnPiece, drawnPieces, faceMarks } from './face.ts';
import { lengthIn, letterFor, type Manner, type Matter, numberIn } from './matter.ts';

/**
 * The front of one card of the set as a plate, with its parts lettered, the stops of all edges measured in
 * chains along the left and under it, its width and height outside them.
 */
export function frontFigure(
  matter: Pick<Matter, 'layout' | 'arrangement' | 'showing' | 'typeface'>,
  {
    card,
    scale,
    lettered,
    manner = 'printed',
  }: {
    readonly card: number;
    readonly scale: number;
    readonly lettered: boolean;
    readonly manner?: Manner;
  },
): Row & { readonly widthPt: number } {
  const { layout, arrangement, showing, typeface } = matter;
  const { width, height } = arrangement.card;
  const request = { layout, arrangement, card, face: 'base', scale, manner } as const;
  const drawn = drawnPieces(request);
  const widePt = pointsOf(width) * scale;
  const highPt = pointsOf(height) * scale;

  // The caption says that they are rounded.
  const number = (length: Length) => numberIn(showing)(length).replace(/^about /u, '');
  const left = chainOf({
    stops: stopsAlong(matter, 'height'),
    scale,
    side: 'left',
    edgePt: Math.min(0, ...drawn.map(({ frame }) => frame.xPt)),
    row: 0,
    typeface,
    number,
  });
  const bottom = chainOf({
    stops: stopsAlong(matter, 'width'),
    scale,
    side: 'bottom',
    edgePt: Math.max(highPt, ...drawn.map(({ frame }) => frame.yPt + frame.heightPt)),
    row: 0,
    typeface,
    number,
  });
  const overhang = {
    left: -Math.min(0, ...drawn.map(({ frame }) => frame.xPt)),
    top: -Math.min(0, ...drawn.map(({ frame }) => frame.yPt)),
    right: Math.max(widePt, ...drawn.map(({ frame }) => frame.xPt + frame.widthPt)) - widePt,
    bottom: Math.max(highPt, ...drawn.map(({ frame }) => frame.yPt + frame.heightPt)) - highPt,
  };
  const outerLeft = overhang.left + left.reachPt + outerGapPt;
  const outerBottom = overhang.bottom + bottom.reachPt + outerGapPt;
  const whole = lengthIn(showing);
  const marks: Mark[] = [
    ...faceMarks(request),
    ...left.marks,
    ...bottom.marks,
    // `dimensionLine` stands 10 mm off the edge it is given.
    dimensionLine({
      from: { xPt: 0, yPt: highPt },
      to: { xPt: widePt, yPt: highPt },
      side: 'bottom',
      edgePt: highPt + outerBottom - firstRowPt,
      label: whole(width),
      typeface,
    }),
    dimensionLine({
      from: { xPt: 0, yPt: 0 },
      to: { xPt: 0, yPt: highPt },
      side: 'left',
      edgePt: -(outerLeft - firstRowPt),
      label: whole(height),
      typeface,
      turned: true,
    }),
    ...(lettered ? leaders(matter, drawn, widePt + overhang.right) : []),
  ];
  const move = { xPt: outerLeft + 12, yPt: overhang.top + 8 };
  return {
    widthPt: move.xPt + widePt + overhang.right + (lettered ? leaderPt + 16 : 8),
    heightPt: move.yPt + highPt + outerBottom + 12,
    marks: [{ kind: 'group', marks, move }],
  };
}

const outerGapPt = 14;
/** 10 mm. */
const firstRowPt = 28.35;
const leaderPt = 30;
const letterPt = 10;
/** With more stops than this a chain cannot be read. */
const mostStops = 10;

/** Where edges lie along an axis: those of the card and of all parts, as long as they can be read. */
function stopsAlong({ arrangement }: Pick<Matter, 'arrangement'>, axis: Axis): readonly Length[] {
  let stops = new Set<Length>([zero, arrangement.card[axis]]);
  for (const { face, pieces } of arrangement.parts) {
    if (face !== 'base') continue;
    const more = new Set(stops);
    for (const { box } of pieces) {
      if (box === null) continue;
      const start = axis === 'width' ? box.left : box.top;
      more.add(start);
      more.add(lengthOfTicks(start + box[axis]));
    }
    if (more.size <= mostStops) stops = more;
  }
  return [...stops].sort((a, b) => a - b);
}

/** Letters to the right of the card, one above the other, a fine line from each to where its part is seen. */
export function leaders(
  { layout }: Pick<Matter, 'layout'>,
  drawn: readonly DrawnPiece[],
  rightPt: number,
): readonly Mark[] {
  const firsts = drawn.filter(
    (piece, index) => drawn.findIndex(({ part }) => part.part.id === piece.part.part.id) === index,
  );
  const targets = firsts
    .flatMap((piece) => {
      const seen = seenPoint(piece, drawn.slice(drawn.indexOf(piece) + 1));
      return seen === null ? [] : [{ letter: letterFor(layout, piece.part.part.id), at: seen }];
    })
    .sort((a, b) => a.at.yPt - b.at.yPt || b.at.xPt - a.at.xPt);
  let lowest = -Infinity;
  return targets.flatMap(({ letter, at }): readonly Mark[] => {
    const yPt = Math.max(at.yPt, lowest + letterPt * 1.5);
    lowest = yPt;
    return [
      { kind: 'line', from: at, to: { xPt: rightPt + leaderPt - 4, yPt }, stroke: fineStroke },
      { kind: 'path', path: circle(at, 1.6), fill: { colour: black } },
      {
        kind: 'text',
        at: { xPt: rightPt + leaderPt, yPt: yPt + letterPt * 0.33 },
        text: letter,
        sizePt: letterPt,
        weight: 'semibold',
        colour: black,
        anchor: 'start',
      },
    ];
  });
}

/** A point of the piece that nothing above it covers, as far right as may be; `null` where all of it is covered. */
function seenPoint(piece: DrawnPiece, above: readonly DrawnPiece[]): Point | null {
  const { frame } = piece;
  const steps = 24;
  for (let column = steps - 1; column >= 0; column -= 1) {
    for (const row of middleOut(steps)) {
      const point = {
        xPt: frame.xPt + (frame.widthPt * (column + 0.5)) / steps,
        yPt: frame.yPt + (frame.heightPt * (row + 0.5)) / steps,
      };
      if (covers(piece, point) && !above.some((other) => covers(other, point))) return point;
    }
  }
  return null;
}

function middleOut(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index).sort(
    (a, b) => Math.abs(a - (count - 1) / 3) - Math.abs(b - (count - 1) / 3),
  );
}

function covers({ part, frame, path }: DrawnPiece, { xPt, yPt }: Point): boolean {
  const inFrame =
    xPt > frame.xPt && xPt < frame.xPt + frame.widthPt && yPt > frame.yPt && yPt < frame.yPt + frame.heightPt;
  if (part.part.shape.kind === 'rectangle' || !inFrame) return inFrame;
  // A line from the point to the right goes out as often as it goes in when the point lies outside.
  const crossings = ringsOf(path).flatMap((ring) =>
    ring.filter((end, index) => {
      const start = ring.at(index - 1)!;
      if (start.yPt > yPt === end.yPt > yPt) return false;
      const share = (yPt - start.yPt) / (end.yPt - start.yPt);
      return start.xPt + share * (end.xPt - start.xPt) > xPt;
    }),
  );
  return crossings.length % 2 === 1;
}
