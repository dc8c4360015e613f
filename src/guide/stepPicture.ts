import {
  black,
  cropTick,
  type Frame,
  fineStroke,
  grey,
  type Hatch,
  lineWidthPt,
  type Mark,
  outlineStroke,
  type Row,
  rectangle,
  type TextMark,
  type Typeface,
  tallyStrokes,
  upArrow,
} from '../drawing/index.ts';
import { type Axis, type Edge, type Length, pointsOf, type Size } from '../measure/index.ts';
import { counted } from '../words/index.ts';

/** One setting of the trimmer, as its picture needs to know it. */
export interface PicturedStep {
  /** Of the workpiece, with the pattern upright. */
  readonly size: Size;
  readonly axis: Axis;
  /** The edge of the upright work that lies at the measuring edge. */
  readonly from: Edge;
  readonly set: Length;
  /** What the trimmer's ruler reads for it; `null`: just that. */
  readonly dial: Length | null;
  /** Whether it is measured on the other side of the blade. */
  readonly otherSide: boolean;
  readonly repeat: number;
  /** What remains along `axis`; zero for nothing. */
  readonly rest: Length;
  /** Whether what remains is left over; else it is finished or cut again. */
  readonly restLeft: boolean;
  /** The letter of the part that a piece measured off is; `null` for one that is cut again or left over. */
  readonly letters: readonly (string | null)[];
  readonly restLetter: string | null;
  readonly passes: number;
  readonly workpieces: number;
  /** What the workpieces are called: sheet, piece. */
  readonly noun: string;
}

/** What all the pictures of one paper share. */
export interface PictureManner {
  readonly typeface: Typeface;
  /** Drawn length over true length. */
  readonly scale: number;
  /** The paper's hatch, upright. */
  readonly hatch: Hatch;
  /** Whether the print has an up to be shown. */
  readonly directed: boolean;
  readonly measuringEdge: 'left' | 'right';
  readonly length: (length: Length) => string;
  readonly size: (size: Size) => string;
}

/** The picture of one setting, and what it has of paper and trimmer alone. */
export interface StepPicture extends Row {
  readonly work: Work;
}

/** The work under the blade with the measuring edge, the ticks and the arrow, but with no letter, number or stroke. */
export interface Work {
  /** Where it lies in the picture. */
  readonly frame: Frame;
  readonly marks: readonly Mark[];
}

/**
 * The picture of one setting: the workpiece as the hand turns it under the blade, the pieces a little apart.
 *
 * The blade runs up and down and pieces come off at the measuring edge, the heavy rule; across from it where they are
 * measured on the other side of the blade. Work whose height is measured lies on its side, `from` at that edge, and
 * its hatch turns with it. The picture is `widthPt` wide; what it shows of the paper has true proportions.
 */
export function stepPicture(step: PicturedStep, usual: PictureManner, widthPt: number): StepPicture {
  const across = usual.measuringEdge === 'left' ? 'right' : 'left';
  const manner: PictureManner = step.otherSide ? { ...usual, measuringEdge: across } : usual;
  const plate = plateOf(step, manner, widthPt);
  const { pieces, rest } = plate;
  const hatch = { ...manner.hatch, turnDegrees: manner.hatch.turnDegrees + plate.turnDegrees };
  const bare: Mark[] = pieces.map((frame) => ({
    kind: 'path',
    path: rectangle(frame),
    fill: { hatch },
    stroke: outlineStroke,
  }));
  if (rest !== null) {
    bare.push({
      kind: 'path',
      path: rectangle(rest),
      ...(step.restLeft
        ? { stroke: { ...fineStroke, colour: grey, dashPt: [4, 2.5] } }
        : { fill: { hatch }, stroke: outlineStroke }),
    });
  }
  bare.push(measuringRule(plate), ...cutTicks(plate, manner));
  const arrow = manner.directed
    ? [upArrow({ at: beyond(plate, 'edge', 16), sizePt: 15, turnDegrees: plate.turnDegrees })]
    : [];
  return {
    heightPt: plate.top + plate.across + belowPt,
    marks: [
      ...bare,
      ...letterMarks(step, plate, manner),
      ...numberMarks(step, plate, manner, widthPt),
      ...arrow,
    ],
    work: { frame: workFrame(plate, manner), marks: [...bare, ...arrow] },
  };
}

/** What the work takes up with all that stands round it but words. */
function workFrame(plate: Plate, { directed }: PictureManner): Frame {
  const [edgePt, farPt, ticksPt] = [directed ? 26 : 6, 9, 13];
  const leftPt = plate.edge === 'left' ? edgePt : farPt;
  return {
    xPt: plate.left - leftPt,
    yPt: plate.top - ticksPt,
    widthPt: plate.right - plate.left + edgePt + farPt,
    heightPt: plate.across + 2 * ticksPt,
  };
}

/** The largest scale at which every step's picture keeps to the width and the paper in it to the height. */
export function pictureScale(
  steps: readonly Pick<PicturedStep, 'size' | 'axis' | 'repeat'>[],
  room: { readonly widthPt: number; readonly heightPt: number },
  manner: Pick<PictureManner, 'typeface' | 'length'>,
): number {
  return Math.min(
    ...steps.map((step) =>
      Math.min(
        (room.widthPt - edgeSidePt - farSidePt(step, manner) - step.repeat * gapPt(step.repeat)) /
          pointsOf(step.size[step.axis]),
        room.heightPt / pointsOf(step.size[acrossAxis(step.axis)]),
      ),
    ),
  );
}

/** Room around the drawn paper for ticks, numbers and the arrow. */
const edgeSidePt = 32;
const abovePt = 26;
const belowPt = 54;

/** Room on the far side: the number beside the work must stay within the picture. */
function farSidePt(
  step: Pick<PicturedStep, 'size' | 'axis'>,
  { typeface, length }: Pick<PictureManner, 'typeface' | 'length'>,
): number {
  return 12 + typeface.widthPt(length(step.size[acrossAxis(step.axis)]), numberPt, 'regular');
}

/** Where everything lies in the picture. */
interface Plate {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Drawn length along the blade. */
  readonly across: number;
  /** Turn of the work from upright. */
  readonly turnDegrees: number;
  readonly edge: 'left' | 'right';
  /** The first lies at the measuring edge. */
  readonly pieces: readonly Frame[];
  readonly rest: Frame | null;
  /** Places of the cuts, from the measuring edge. */
  readonly cuts: readonly number[];
}

function plateOf(step: PicturedStep, manner: PictureManner, widthPt: number): Plate {
  const { scale, measuringEdge: edge } = manner;
  const each = pointsOf(step.set) * scale;
  const across = pointsOf(step.size[acrossAxis(step.axis)]) * scale;
  const gap = gapPt(step.repeat);
  const cutCount = step.rest > 0 ? step.repeat : step.repeat - 1;
  const drawn = pointsOf(step.size[step.axis]) * scale + cutCount * gap;
  const farSide = farSidePt(step, manner);
  const spare = (widthPt - drawn - edgeSidePt - farSide) / 2;
  const left = spare + (edge === 'left' ? edgeSidePt : farSide);
  const top = abovePt;
  // Places run from the measuring edge; a right-hand edge mirrors them, but never the hatch.
  const frameAt = (from: number, length: number): Frame => ({
    xPt: edge === 'left' ? left + from : left + drawn - from - length,
    yPt: top,
    widthPt: length,
    heightPt: across,
  });
  return {
    left,
    right: left + drawn,
    top,
    across,
    turnDegrees: turnOf(step.from, edge),
    edge,
    pieces: Array.from({ length: step.repeat }, (_, index) => frameAt(index * (each + gap), each)),
    rest: step.rest > 0 ? frameAt(step.repeat * (each + gap), pointsOf(step.rest) * scale) : null,
    cuts: Array.from({ length: cutCount }, (_, index) => {
      const from = (index + 1) * (each + gap) - gap / 2;
      return edge === 'left' ? left + from : left + drawn - from;
    }),
  };
}

/** How far upright work is turned, clockwise, to bring one of its edges to the measuring edge. */
function turnOf(from: Edge, measuringEdge: 'left' | 'right'): number {
  const clockwise = ['left', 'top', 'right', 'bottom'] as const satisfies readonly Edge[];
  const quarters = clockwise.indexOf(measuringEdge) - clockwise.indexOf(from);
  return [0, 90, 180, -90][(quarters + 4) % 4] ?? 0;
}

/** How far apart the pieces are drawn: many pieces have little room. */
function gapPt(repeat: number): number {
  return Math.min(6, 42 / repeat);
}

function acrossAxis(axis: Axis): Axis {
  return axis === 'width' ? 'height' : 'width';
}

/** A place beside the paper at half its height: beyond the measuring edge or on the far side. */
function beyond(plate: Plate, side: 'edge' | 'far', byPt: number): { xPt: number; yPt: number } {
  const left = (side === 'edge') === (plate.edge === 'left');
  return {
    xPt: left ? plate.left - byPt : plate.right + byPt,
    yPt: plate.top + plate.across / 2,
  };
}

/** The heavy rule the work is laid to. */
function measuringRule(plate: Plate): Mark {
  const { xPt } = beyond(plate, 'edge', 3);
  return {
    kind: 'line',
    from: { xPt, yPt: plate.top - 6 },
    to: { xPt, yPt: plate.top + plate.across + 6 },
    stroke: { colour: black, widthPt: 2 * lineWidthPt.heavy },
  };
}

/** Crop ticks outside every cut, and at the ends of the blade's way on the far side. */
function cutTicks(plate: Plate, { measuringEdge }: PictureManner): readonly Mark[] {
  const bottom = plate.top + plate.across;
  const far = measuringEdge === 'left' ? 'right' : 'left';
  const farPt = far === 'right' ? plate.right : plate.left;
  return [
    ...plate.cuts.flatMap((xPt) => [
      cropTick({ at: { xPt, yPt: plate.top }, edge: 'top' }),
      cropTick({ at: { xPt, yPt: bottom }, edge: 'bottom' }),
    ]),
    cropTick({ at: { xPt: farPt, yPt: plate.top }, edge: far, lengthPt: 6 }),
    cropTick({ at: { xPt: farPt, yPt: bottom }, edge: far, lengthPt: 6 }),
  ];
}

/** The letters of finished parts, above them; where they would crowd, the first of a run speaks for it. */
function letterMarks(step: PicturedStep, plate: Plate, manner: PictureManner): readonly Mark[] {
  const all = [
    ...plate.pieces.map((frame, index) => ({ frame, letter: step.letters[index] ?? null })),
    ...(plate.rest === null ? [] : [{ frame: plate.rest, letter: step.restLetter }]),
  ];
  return all.flatMap(({ frame, letter }, index) => {
    if (letter === null) return [];
    const crowded =
      manner.typeface.widthPt(letter, letterPt, 'semibold') > frame.widthPt + gapPt(step.repeat);
    if (crowded && all[index - 1]?.letter === letter) return [];
    return [
      text(
        letter,
        { xPt: frame.xPt + frame.widthPt / 2, yPt: plate.top - 5 },
        { sizePt: letterPt, weight: 'semibold' },
      ),
    ];
  });
}

/** The smallest type of a picture. */
export const smallestPt = 8.5;
const letterPt = 10;
const numberPt = 9.5;

function numberMarks(
  step: PicturedStep,
  plate: Plate,
  manner: PictureManner,
  widthPt: number,
): readonly Mark[] {
  const { typeface } = manner;
  const bottom = plate.top + plate.across;
  const widthOf = (label: string) => typeface.widthPt(label, numberPt, 'regular');
  const marks: Mark[] = [];

  // The setting stands between the crop ticks of the first piece, or below them when it is too narrow.
  const below = numbersBelow(bottom, typeface, widthPt);
  const first = plate.pieces[0];
  const read = step.dial === null || step.dial <= 0 ? '' : ` (ruler ${manner.length(step.dial)})`;
  const setting = `${manner.length(step.set)}${read}`;
  if (first !== undefined) marks.push(below(setting, first, { weight: 'semibold' }));

  // The other side of the work, beside it.
  const side = beyond(plate, 'far', 9);
  marks.push(
    text(
      manner.length(step.size[acrossAxis(step.axis)]),
      { xPt: side.xPt, yPt: side.yPt + numberPt * 0.35 },
      { anchor: plate.edge === 'left' ? 'start' : 'end' },
    ),
  );

  // What remains: a leftover's size is written on it lightly, with its up-arrow; other work has its length below.
  if (plate.rest !== null) {
    marks.push(
      ...(step.restLeft
        ? leftoverMarks(step, plate.rest, plate, manner, below)
        : [below(manner.length(step.rest), plate.rest)]),
    );
  }

  // Tally strokes for the passes, and how many workpieces there are of the kind.
  const count = counted(step.passes, 'pass');
  const note = step.workpieces === 1 ? count : `${count} on ${counted(step.workpieces, step.noun)}`;
  const strokes = step.passes <= 20 ? step.passes : 0;
  const tally = tallyStrokes({ xPt: 0, yPt: 0 }, strokes, { heightPt: 9 });
  const wide = tally.widthPt + (strokes > 0 ? 6 : 0) + widthOf(note);
  const start = Math.min(Math.max(0, (plate.left + plate.right - wide) / 2), widthPt - wide);
  marks.push({ kind: 'group', marks: [tally.marks], move: { xPt: start, yPt: bottom + 48 } });
  marks.push(text(note, { xPt: start + wide, yPt: bottom + 48 }, { anchor: 'end' }));
  return marks;
}

type NumberBelow = (label: string, frame: Frame, style?: Parameters<typeof text>[2]) => TextMark;

/** Sets numbers under what they measure: between its ticks, else on the next level where none is in the way. */
function numbersBelow(bottomPt: number, typeface: Typeface, widthPt: number): NumberBelow {
  const levels: { from: number; to: number }[][] = [[], [], []];
  const levelPt = [12, 23, 34];
  return (label, frame, style = {}) => {
    const wide = typeface.widthPt(label, style.sizePt ?? numberPt, style.weight ?? 'regular');
    const middle = Math.min(Math.max(frame.xPt + frame.widthPt / 2, wide / 2), widthPt - wide / 2);
    const [from, to] = [middle - wide / 2 - 2, middle + wide / 2 + 2];
    const fits = wide < frame.widthPt - 2;
    let level = fits ? 0 : 1;
    while (level < 2 && levels[level]!.some((other) => from < other.to && other.from < to)) level += 1;
    levels[level]!.push({ from, to });
    return text(label, { xPt: middle, yPt: bottomPt + levelPt[level]! }, style);
  };
}

function leftoverMarks(
  step: PicturedStep,
  rest: Frame,
  plate: Plate,
  { size, directed, typeface }: PictureManner,
  below: NumberBelow,
): readonly Mark[] {
  const label = size({ ...step.size, [step.axis]: step.rest });
  const wide = typeface.widthPt(label, smallestPt, 'regular');
  const centre = { xPt: rest.xPt + rest.widthPt / 2, yPt: rest.yPt + rest.heightPt / 2 };
  const arrowRoom = directed ? 12 : 0;
  const light = { colour: grey, sizePt: smallestPt } as const;
  const arrow = (at: { xPt: number; yPt: number }) =>
    directed ? [upArrow({ at, sizePt: 8, colour: grey, turnDegrees: plate.turnDegrees })] : [];
  if (wide + arrowRoom + 4 <= rest.widthPt && rest.heightPt >= 10) {
    return [
      text(label, { xPt: centre.xPt - arrowRoom / 2, yPt: centre.yPt + smallestPt * 0.35 }, light),
      ...arrow({ xPt: centre.xPt + wide / 2 + 2, yPt: centre.yPt }),
    ];
  }
  if (wide + arrowRoom + 4 <= rest.heightPt && rest.widthPt >= 10) {
    return [
      {
        ...text(label, { xPt: centre.xPt + smallestPt * 0.35, yPt: centre.yPt + arrowRoom / 2 }, light),
        turnDegrees: -90,
      },
      ...arrow({ xPt: centre.xPt, yPt: centre.yPt - wide / 2 - 2 }),
    ];
  }
  // Too small to write on: its size stands under it, and the arrow on it where that has room.
  return [
    below(label, { ...rest, widthPt: Math.min(rest.widthPt, 1), xPt: centre.xPt }, light),
    ...(Math.min(rest.widthPt, rest.heightPt) >= 8 ? arrow(centre) : []),
  ];
}

function text(
  label: string,
  at: { readonly xPt: number; readonly yPt: number },
  style: Partial<Pick<TextMark, 'sizePt' | 'weight' | 'colour' | 'anchor'>> = {},
): TextMark {
  return {
    kind: 'text',
    at,
    text: label,
    sizePt: numberPt,
    weight: 'regular',
    colour: black,
    anchor: 'middle',
    ...style,
  };
}
