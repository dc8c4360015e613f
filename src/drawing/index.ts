export { type Block, besideOf, groupOf, isBlock, type Row, stackOf } from './block.ts';
export { type CropTickRequest, cropTick } from './cropTick.ts';
export { type DimensionRequest, dimensionDistancePt, dimensionLine } from './dimension.ts';
export { type FigureRequest, setFigure } from './figure.ts';
export { type FlowOptions, type Folio, flow } from './flow.ts';
export { hatchFor, hatchMarks, plainGround } from './hatch.ts';
export {
  black,
  cutStroke,
  fineStroke,
  foldStroke,
  grey,
  hiddenStroke,
  lineWidthPt,
  mountainStroke,
  outlineStroke,
  pointsOfMillimetres,
  rubric,
  valleyStroke,
  white,
  wideStroke,
} from './ink.ts';
export { type ListRequest, setList } from './list.ts';
export { magnified } from './magnified.ts';
export type {
  Fill,
  Frame,
  GroupMark,
  Hatch,
  LineMark,
  Mark,
  PathMark,
  PathStep,
  Point,
  Role,
  Stroke,
  TextMark,
  Weight,
} from './mark.ts';
export { circle, frameOf, polygon, polyline, rectangle, ringsOf, roundedRectangle } from './outline.ts';
export { a4Format, type Booklet, letterFormat, type Page, type PageFormat, textWidthPt } from './page.ts';
export {
  baselinePt,
  type Paragraph,
  type ParagraphRequest,
  type Run,
  setParagraph,
  type Words,
  wordsWidthPt,
} from './paragraph.ts';
export { pathData, svgNumber } from './pathData.ts';
export { type RunningLinesRequest, runningLines } from './runningLines.ts';
export { allShown, shownText, standIn } from './shownText.ts';
export { type SignRequest, scissors, upArrow } from './sign.ts';
export { type SvgOptions, svgOf } from './svg.ts';
export { setTable, type TableColumn, type TableRequest } from './table.ts';
export { tallyStrokes } from './tally.ts';
export { type TestBarWords, testBars, testBarsHeightPt } from './testBar.ts';
export { largePrintPt, type TextStyle, textStyles } from './textStyle.ts';
export { toneOn } from './tone.ts';
export { tornOutline } from './tornOutline.ts';
export type { Typeface } from './typeface.ts';
export { xmlText } from './xmlText.ts';
