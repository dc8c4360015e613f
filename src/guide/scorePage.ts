import {
  type Block,
  black,
  dimensionDistancePt,
  dimensionLine,
  foldStroke,
  type Mark,
  mountainStroke,
  rectangle,
  type Stroke,
  setFigure,
  setParagraph,
  type Typeface,
  valleyStroke,
  white,
  wideStroke,
} from '../drawing/index.ts';
import { foldedBase } from '../layout/index.ts';
import { type FoldedBase, openedSize, type Panel, panelsOf, type Score, scoresOf } from '../making/index.ts';
import { type Length, pointsOf, type Size } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { capital, panelWord, scoringWords } from '../words/index.ts';
import { hatchOf, lengthIn, type Matter } from './matter.ts';

/** How the bases are scored: the opened base drawn with its score lines, in words and measured; nothing where none is. */
export function scorePage(matter: Matter): readonly Block[] {
  const { layout, plan, showing, styles, typeface, widthPt } = matter;
  const base = foldedBase(layout);
  const scores = scoresOf(base);
  const paper = layout.base.papers[0];
  if (paper === undefined || scores.length === 0) return [];
  const { marks, widePt, abovePt, highPt, belowPt } = openedFigure(matter, base, paper);

  const cut = plan.pieces.filter(({ part }) => part === 'base').reduce((sum, { need }) => sum + need, 0);
  const scoring = scoringWords(layout, cut, showing);
  assert(scoring !== null, 'What has scores is told how it is scored');
  const alone = scores.length === 1;
  const mountains = scores.some(({ folds }) => folds === 'mountain');
  return [
    setParagraph({
      words: 'Scoring the bases',
      widthPt,
      style: styles.heading,
      typeface,
      role: 'heading',
      beforePt: 26,
      withNext: true,
    }),
    setParagraph({ words: scoring.says, widthPt, style: styles.body, typeface, beforePt: 4, withNext: true }),
    setFigure({
      marks: [{ kind: 'group', marks, move: { xPt: (widthPt - widePt) / 2, yPt: abovePt } }],
      heightPt: abovePt + highPt + belowPt,
      says: `The base lying open, with its score ${alone ? 'line' : 'lines'}: ${scoring.lines.join('; ')}.`,
      caption: {
        words: alone
          ? 'The base lying open; the line of long and short dashes is the score.'
          : `The base lying open, the inside up. A score of dashes is folded to a valley${mountains ? ', one of dashes and dots to a mountain' : ''}; measures from the ${scores[0]!.axis === 'width' ? 'left' : 'top'} edge.`,
        widthPt,
        style: styles.small,
        typeface,
      },
      beforePt: 6,
    }),
  ];
}

interface OpenedFigure {
  /** The top left corner of the base at the origin. */
  readonly marks: readonly Mark[];
  readonly widePt: number;
  readonly highPt: number;
  /** What stands above the base and below it. */
  readonly abovePt: number;
  readonly belowPt: number;
}

/** The opened base, measured from the edge its scores are measured from; the shortest measure is nearest to it. */
function openedFigure({ layout, showing, typeface }: Matter, base: FoldedBase, paper: string): OpenedFigure {
  const opened = openedSize(base);
  const scores = scoresOf(base);
  const across = scores[0]!.axis === 'width';
  const several = scores.length > 1;
  const length = lengthIn(showing);
  const scale = Math.min(
    0.36,
    300 / pointsOf(opened.width),
    (several && !across ? 280 : 190) / pointsOf(opened.height),
  );
  const pt = (of: Length) => pointsOf(of) * scale;
  const [widePt, highPt] = [pt(opened.width), pt(opened.height)];
  const ground: Mark = {
    kind: 'path',
    path: rectangle({ xPt: 0, yPt: 0, widthPt: widePt, heightPt: highPt }),
    fill: { hatch: hatchOf(layout, paper) },
    stroke: wideStroke,
  };
  const rows = several ? scores.length : 0;
  return {
    widePt,
    highPt,
    abovePt: several && across ? 16 : 46,
    belowPt: across ? (several ? dimensionDistancePt(rows) + 12 : 46) : 12,
    marks: [
      ground,
      ...scores.flatMap((score) => scoreMarks(score, pt(score.at), { widePt, highPt, alone: !several })),
      ...(several
        ? [
            ...scores.map((score) => kindMark(score, pt(score.at), widePt)),
            ...panelsOf(base).flatMap((panel, index) =>
              nameMarks(panelWord(base, index), panel, pt, { widePt, highPt, across, typeface }),
            ),
          ]
        : []),
      ...scores.map(({ at }, row) =>
        dimensionLine({
          from: { xPt: 0, yPt: across ? highPt : 0 },
          to: { xPt: across ? pt(at) : 0, yPt: across ? highPt : pt(at) },
          side: across ? 'bottom' : 'left',
          row,
          label: length(at),
          typeface,
          turned: true,
        }),
      ),
      ...sizeMarks(opened, { widePt, highPt, rows, across, label: length, typeface }),
    ],
  };
}

/** Width and height of the opened base; the one its scores divide stands outside their measures. */
function sizeMarks(
  opened: Size,
  {
    widePt,
    highPt,
    rows,
    across,
    label,
    typeface,
  }: {
    readonly widePt: number;
    readonly highPt: number;
    /** How many measures of scores it stands outside of; 0: it stands on the other side. */
    readonly rows: number;
    readonly across: boolean;
    readonly label: (length: Length) => string;
    readonly typeface: Typeface;
  },
): readonly Mark[] {
  const below = rows > 0 && across;
  const left = rows > 0 && !across;
  return [
    dimensionLine({
      from: { xPt: left ? 0 : widePt, yPt: 0 },
      to: { xPt: left ? 0 : widePt, yPt: highPt },
      side: left ? 'left' : 'right',
      row: left ? rows : 0,
      label: label(opened.height),
      typeface,
      turned: true,
    }),
    dimensionLine({
      from: { xPt: 0, yPt: below ? highPt : 0 },
      to: { xPt: widePt, yPt: below ? highPt : 0 },
      side: below ? 'bottom' : 'top',
      row: below ? rows : 0,
      label: label(opened.width),
      typeface,
    }),
  ];
}

interface Drawn {
  readonly widePt: number;
  readonly highPt: number;
}

function scoreMarks(
  score: Score,
  place: number,
  drawn: Drawn & { readonly alone: boolean },
): readonly Mark[] {
  const { widePt, highPt, alone } = drawn;
  const across = score.axis === 'width';
  return [
    // A bare band, so that the score is seen in the hatch.
    {
      kind: 'path',
      path: rectangle(
        across
          ? { xPt: place - 4, yPt: 1, widthPt: 8, heightPt: highPt - 2 }
          : { xPt: 1, yPt: place - 4, widthPt: widePt - 2, heightPt: 8 },
      ),
      fill: { colour: white },
    },
    {
      kind: 'line',
      from: across ? { xPt: place, yPt: -8 } : { xPt: alone ? -8 : 0, yPt: place },
      to: across ? { xPt: place, yPt: highPt + (alone ? 8 : 0) } : { xPt: widePt + 8, yPt: place },
      stroke: { ...(alone ? foldStroke : strokes[score.folds]), widthPt: 1.2 },
    },
  ];
}

const strokes = { valley: valleyStroke, mountain: mountainStroke } as const satisfies Record<
  Score['folds'],
  Stroke
>;

/** What a score is folded to, at the end of its line. */
function kindMark({ axis, folds }: Score, place: number, widePt: number): Mark {
  const across = axis === 'width';
  return {
    kind: 'text',
    at: across ? { xPt: place, yPt: -11 } : { xPt: widePt + 12, yPt: place + smallPt * 0.33 },
    text: folds,
    sizePt: smallPt,
    weight: 'regular',
    colour: black,
    anchor: across ? 'middle' : 'start',
  };
}

const smallPt = 8;

/** What a panel is called, on a bare patch in its middle; upright where it is too narrow to read across. */
function nameMarks(
  name: string,
  { at, length }: Panel,
  pt: (of: Length) => number,
  { widePt, highPt, across, typeface }: Drawn & { readonly across: boolean; readonly typeface: Typeface },
): readonly Mark[] {
  const text = capital(name);
  const longPt = typeface.widthPt(text, smallPt, 'regular') + 6;
  const middle = pt(at) + pt(length) / 2;
  const centre = across ? { xPt: middle, yPt: highPt / 2 } : { xPt: widePt / 2, yPt: middle };
  const turned = across && longPt > pt(length) - 12;
  const [wide, high] = turned ? [smallPt + 4, longPt] : [longPt, smallPt + 4];
  const drop = smallPt * 0.33;
  return [
    {
      kind: 'path',
      path: rectangle({
        xPt: centre.xPt - wide / 2,
        yPt: centre.yPt - high / 2,
        widthPt: wide,
        heightPt: high,
      }),
      fill: { colour: white },
    },
    {
      kind: 'text',
      at: turned ? { xPt: centre.xPt + drop, yPt: centre.yPt } : { xPt: centre.xPt, yPt: centre.yPt + drop },
      text,
      sizePt: smallPt,
      weight: 'regular',
      colour: black,
      anchor: 'middle',
      ...(turned ? { turnDegrees: -90 } : {}),
    },
  ];
}
