import {
  black,
  circle,
  type Frame,
  fineStroke,
  frameOf,
  hiddenStroke,
  lineWidthPt,
  type Mark,
  outlineStroke,
  type PathStep,
  rectangle,
  rubric,
  type Stroke,
  white,
  wideStroke,
} from '../drawing/index.ts';
import {
  type Assembly,
  type AssemblyStep,
  type HeldPart,
  type Holding,
  tuckedEnds,
} from '../finished/index.ts';
import type { Arrangement, Layout } from '../layout/index.ts';
import { type Box, pointsOf, sum, zero } from '../measure/index.ts';
import { type DrawnPiece, drawnFace, drawnPieces } from './face.ts';
import { letterFor, type Manner } from './matter.ts';

/** How one step of putting a card together looks, as a plate of two figures beside each other. */
export interface AssemblyPlate {
  readonly step: AssemblyStep;
  readonly widthPt: number;
  readonly heightPt: number;
  readonly marks: readonly Mark[];
  /** What is under the figures, the left one first; the same letters as in the figures. */
  readonly captions: readonly string[];
  /** What it shows, for someone who listens. */
  readonly says: string;
}

/** What plates are drawn from. */
export interface PlateRequest {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
  /** From 0; says which of several papers its parts wear. */
  readonly card: number;
  readonly assembly: Assembly;
  readonly holding: Holding;
  /** `printed` when absent. */
  readonly manner?: Manner;
  /** The id of the one part whose plate is wanted; all when absent. */
  readonly only?: string;
  /** No plate is larger. */
  readonly room: { readonly widthPt: number; readonly heightPt: number };
}

/**
 * A plate for every step whose part has a known place.
 *
 * At the left the work turned over on its face, so that left and right have changed places: the back of the part with the
 * adhesive where it is laid, or what a band goes round with the ends of the band taped down. At the right the front: the
 * part, drawn in the accent with a heavy line, on all that lies there by then. What is not on the card yet is drawn by
 * itself. Both are true to scale, each to its own.
 */
export function assemblyPlates(request: PlateRequest): readonly AssemblyPlate[] {
  const { assembly, only } = request;
  return assembly.steps.flatMap((step) =>
    only === undefined || step.part === only ? (plateOf(step, request) ?? []) : [],
  );
}

function plateOf(step: AssemblyStep, request: PlateRequest): AssemblyPlate | null {
  const { layout, room } = request;
  const pieces = drawnPieces({ arrangement: request.arrangement, face: step.face, scale: 1 });
  const own = pieces.filter(({ part }) => part.part.id === step.part);
  if (own.length === 0) return null;
  const [letter, onto] = [letterFor(layout, step.part), letterFor(layout, groundOf(step))];
  const figures = [
    { figure: turnedOver(step, pieces, request), caption: `${turnedLetter(step, layout)} turned over` },
    {
      figure: fromFront(step, pieces, request),
      caption: step.does === 'wrap' ? `${letter} round ${onto}` : `${letter} on ${onto}`,
    },
  ];
  const cell = { widthPt: (room.widthPt - betweenPt) / 2, heightPt: room.heightPt - captionPt };
  const set = figures.map(({ figure, caption }, index) => ({
    ...setIn(cell, figure),
    caption,
    xPt: index * (cell.widthPt + betweenPt),
  }));
  const heightPt = Math.max(...set.map((one) => one.heightPt));
  return {
    step,
    widthPt: room.widthPt,
    heightPt: heightPt + captionPt,
    marks: set.flatMap(({ marks, heightPt: high, caption, xPt }): readonly Mark[] => [
      { kind: 'group', marks, move: { xPt, yPt: heightPt - high } },
      {
        kind: 'text',
        at: { xPt: xPt + (cell.widthPt - lettersPt) / 2, yPt: heightPt + 13 },
        text: caption,
        sizePt: 9,
        weight: 'regular',
        colour: black,
        anchor: 'middle',
      },
    ]),
    captions: figures.map(({ caption }) => caption),
    says: `${figures[0]!.caption}, with what holds it; and ${figures[1]!.caption}, seen from the front.`,
  };
}

/** White between the figures, and the line under them. */
const betweenPt = 24;
const captionPt = 17;

/** What the part is put on: the base for a face of the card. */
function groundOf({ onto, face }: AssemblyStep): string {
  return onto === face ? 'base' : onto;
}

/** What is turned over at the left: what a band goes round, else the part itself. */
function turnedLetter(step: AssemblyStep, layout: Layout): string {
  return letterFor(layout, step.does === 'wrap' ? groundOf(step) : step.part);
}

/** Something drawn to true size, in points, with the letters that stand beside it. */
interface Figure {
  readonly frame: Frame;
  /** Draws it to a scale, from the same origin. */
  marks(scale: number): readonly Mark[];
  readonly letters: readonly { readonly letter: string; readonly of: Frame; readonly isNew: boolean }[];
}

// --- The front ---

function fromFront(step: AssemblyStep, pieces: readonly DrawnPiece[], request: PlateRequest): Figure {
  const { layout, arrangement, card, manner = 'printed' } = request;
  const isThere = new Set([...lyingThere(step, request), ...step.carries, step.part]);
  const shown = pieces.filter(({ part }) => isThere.has(part.part.id));
  const ground: Frame = frameOfBox({ left: zero, top: zero, ...arrangement.card });
  const frames = [...(step.offCard === null ? [ground] : []), ...shown.map(({ frame }) => frame)];
  const isNew = (piece: DrawnPiece) => piece.part.part.id === step.part;
  const marks = (scale: number): readonly Mark[] => {
    const drawn = drawnFace({ layout, arrangement, card, face: step.face, scale, manner });
    const there = drawn.pieces.filter(({ part }) => isThere.has(part));
    return [
      ...(step.offCard === null ? [drawn.ground.mark] : []),
      ...there.map(({ mark }) => mark),
      // Over all else, so that what lies on it does not break its outline.
      ...there
        .filter(({ part }) => part === step.part)
        .map(({ path }): Mark => ({ kind: 'path', path, stroke: newStroke })),
    ];
  };
  const onto =
    step.onto === step.face ? ground : pieces.find(({ part }) => part.part.id === step.onto)?.frame;
  const newest = pieces.find(isNew)!;
  return {
    frame: around(frames),
    marks,
    letters: [
      { letter: letterFor(layout, step.part), of: newest.frame, isNew: true },
      ...(onto === undefined || (step.offCard === null ? false : !isThere.has(step.onto))
        ? []
        : [{ letter: letterFor(layout, groundOf(step)), of: onto, isNew: false }]),
    ],
  };
}

/** A heavy line in the accent: the part that is put on now. */
const newStroke: Stroke = { colour: rubric, widthPt: lineWidthPt.heavy };

/** The parts that lie on the same work already: on the card, or on what is being built off it. */
function lyingThere(
  { number, offCard, face, onto }: AssemblyStep,
  { assembly, layout, arrangement }: PlateRequest,
) {
  const before = new Set(assembly.steps.slice(0, number - 1).map(({ part }) => part));
  const onOf = new Map(layout.parts.map((part) => [part.id, part.on]));
  const faces = new Map(arrangement.parts.map(({ part, face: own }) => [part.id, own]));
  // Down to what does not lie on anything yet, or to the face of the card.
  const footOf = (id: string): string => (before.has(id) ? footOf(onOf.get(id)!) : id);
  const foot = offCard ?? footOf(onto);
  const there = [...before].filter((id) => faces.get(id) === face && footOf(id) === foot);
  return offCard === null ? there : [...there, foot];
}

// --- Turned over ---

function turnedOver(step: AssemblyStep, pieces: readonly DrawnPiece[], request: PlateRequest): Figure {
  const { arrangement, layout, holding } = request;
  const isBand = step.does === 'wrap';
  const ground = isBand ? groundOf(step) : step.part;
  const body = isBand
    ? pieces.find(({ part }) => part.part.id === step.onto)
    : pieces.find(({ part }) => part.part.id === step.part);
  const card: Frame = frameOfBox({ left: zero, top: zero, ...arrangement.card });
  const frame = body?.frame ?? card;
  const over = (of: Frame, scale: number): Frame => scaled({ ...of, xPt: -of.xPt - of.widthPt }, scale);
  const own = pieces.find(({ part }) => part.part.id === step.part)!;
  const held = holding.parts.find(({ part }) => part === step.part);
  const laid = held?.pieces.find(({ piece }) => piece === own.piece);
  // Bands that went round it before are seen from behind, as are their ends now.
  const bands = isBand
    ? [own]
    : pieces.filter(({ part }) => part.part.on === step.part && isOnAlready(part.part.id, step, request));
  const marks = (scale: number): readonly Mark[] => {
    const drawn = drawnPieces({ arrangement, face: step.face, scale }).find(
      ({ part, piece }) => part.part.id === ground && piece === body?.piece,
    );
    const outline = drawn === undefined ? rectangle(over(card, scale)) : mirrored(drawn.path);
    return [
      { kind: 'path', path: outline, fill: { colour: white }, stroke: isBand ? wideStroke : newStroke },
      ...bands.flatMap(({ part: { part }, box }) =>
        tuckedEnds(part, box).map(
          (end): Mark => ({
            kind: 'path',
            path: rectangle(over(frameOfBox(end.box), scale)),
            fill: { colour: white },
            stroke: part.id === step.part ? newStroke : outlineStroke,
          }),
        ),
      ),
      ...(held === undefined || laid === undefined || isBand
        ? []
        : laid.laid.flatMap(({ box, along }) =>
            adhesiveMarks(over(frameOfBox(moved(box, own.box)), scale), held, along),
          )),
      ...(isBand ? (laid?.ends ?? []) : []).map(
        ({ box }): Mark => ({
          kind: 'path',
          path: rectangle(over(frameOfBox(moved(box, own.box)), scale)),
          fill: { colour: adhesiveTint },
          stroke: hiddenStroke,
        }),
      ),
    ];
  };
  return {
    frame: over(frame, 1),
    marks,
    letters: isBand
      ? [
          { letter: letterFor(layout, step.part), of: over(own.frame, 1), isNew: true },
          { letter: letterFor(layout, ground), of: over(frame, 1), isNew: false },
        ]
      : [{ letter: letterFor(layout, step.part), of: over(frame, 1), isNew: true }],
  };
}

function isOnAlready(id: string, { number }: AssemblyStep, { assembly }: PlateRequest): boolean {
  return assembly.steps.some((step) => step.part === id && step.number < number);
}

const adhesiveTint = '#dedede';

/** Strips and squares of tape are outlined; a spot is round; a line of glue is soft at its ends. */
function adhesiveMarks(frame: Frame, { adhesive }: HeldPart, along: 'width' | 'height'): readonly Mark[] {
  const fill = { colour: adhesiveTint };
  const { xPt, yPt, widthPt, heightPt } = frame;
  const middle = { xPt: xPt + widthPt / 2, yPt: yPt + heightPt / 2 };
  switch (adhesive.form) {
    case 'strip':
    case 'square':
      return [{ kind: 'path', path: rectangle(frame), fill, stroke: outlineStroke }];
    case 'spot':
      return [
        { kind: 'path', path: circle(middle, Math.min(widthPt, heightPt) / 2), fill, stroke: outlineStroke },
      ];
    case 'line': {
      const broad = along === 'width' ? heightPt : widthPt;
      const half = Math.max(0, (along === 'width' ? widthPt : heightPt) / 2 - broad / 2);
      const [from, to] =
        along === 'width'
          ? [
              { ...middle, xPt: middle.xPt - half },
              { ...middle, xPt: middle.xPt + half },
            ]
          : [
              { ...middle, yPt: middle.yPt - half },
              { ...middle, yPt: middle.yPt + half },
            ];
      return [
        { kind: 'line', from, to, stroke: { colour: glueGrey, widthPt: Math.max(broad, 1), cap: 'round' } },
      ];
    }
  }
}

const glueGrey = '#b5b5b5';

// --- Setting ---

/** A figure as large as its cell lets it be, its letters in a column at its right, each with a line to what it names. */
function setIn(
  cell: { readonly widthPt: number; readonly heightPt: number },
  { frame, marks, letters }: Figure,
): { readonly marks: readonly Mark[]; readonly heightPt: number } {
  const edge = lineWidthPt.heavy;
  const scale = Math.min(
    (cell.widthPt - lettersPt - 2 * edge) / frame.widthPt,
    (cell.heightPt - 2 * edge) / frame.heightPt,
    largest,
  );
  const drawn = scaled(frame, scale);
  const xPt = (cell.widthPt - lettersPt - drawn.widthPt) / 2;
  let lowest = Number.NEGATIVE_INFINITY;
  const named = letters
    .map((one) => ({ ...one, of: scaled(one.of, scale) }))
    .map((one) => ({ ...one, yPt: one.of.yPt + one.of.heightPt / 2 - drawn.yPt }))
    .sort((a, b) => a.yPt - b.yPt)
    .flatMap(({ letter, of, isNew, yPt }): readonly Mark[] => {
      const at = Math.min(Math.max(yPt, lowest + 12, 6), Math.max(drawn.heightPt, 12));
      lowest = at;
      const right = drawn.widthPt + 14;
      return [
        {
          kind: 'line',
          from: { xPt: of.xPt + of.widthPt - drawn.xPt, yPt },
          to: { xPt: right - 2, yPt: at },
          stroke: fineStroke,
        },
        {
          kind: 'text',
          at: { xPt: right, yPt: at + 3.4 },
          text: letter,
          sizePt: 10,
          weight: 'semibold',
          colour: isNew ? rubric : black,
          anchor: 'start',
        },
      ];
    });
  const high = Math.max(drawn.heightPt, lowest + 4);
  return {
    heightPt: high + 2 * edge,
    marks: [
      {
        kind: 'group',
        marks: [{ kind: 'group', marks: marks(scale), move: { xPt: -drawn.xPt, yPt: -drawn.yPt } }, ...named],
        move: { xPt, yPt: edge },
      },
    ],
  };
}

/** The column of letters beside a figure. */
const lettersPt = 30;
/** Small parts are not blown up further than so many times. */
const largest = 1.5;

function mirrored(path: readonly PathStep[]): readonly PathStep[] {
  return path.map((step): PathStep => {
    switch (step.to) {
      case 'close':
        return step;
      case 'curve':
        return { ...step, x1Pt: -step.x1Pt, x2Pt: -step.x2Pt, xPt: -step.xPt };
      default:
        return { ...step, xPt: -step.xPt };
    }
  });
}

function moved(box: Box, by: Box): Box {
  return { ...box, left: sum(box.left, by.left), top: sum(box.top, by.top) };
}

function frameOfBox({ left, top, width, height }: Box): Frame {
  return { xPt: pointsOf(left), yPt: pointsOf(top), widthPt: pointsOf(width), heightPt: pointsOf(height) };
}

function scaled({ xPt, yPt, widthPt, heightPt }: Frame, scale: number): Frame {
  return { xPt: xPt * scale, yPt: yPt * scale, widthPt: widthPt * scale, heightPt: heightPt * scale };
}

function around(frames: readonly Frame[]): Frame {
  return frameOf(
    frames.flatMap(({ xPt, yPt, widthPt, heightPt }) => [
      { xPt, yPt },
      { xPt: xPt + widthPt, yPt: yPt + heightPt },
    ]),
  );
}
