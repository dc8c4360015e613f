import { lengthOfTicks, type Size, ticksPerInch, ticksPerMillimetre, type Units } from '../measure/index.ts';
import type { Problem } from '../problem/index.ts';
import { pathSize, readPath, transformedPath } from '../shape/index.ts';
import type { SvgProblemCode } from '../words/index.ts';
import { crossings } from './svgCrossings.ts';
import { svgProblem } from './svgProblem.ts';
import { readSvgShapes, type SvgLength, type SvgShape, type SvgSheet } from './svgShapes.ts';

/** Something that is wrong with an SVG document; `where` is its line and column, `svgProblemSentence` says it. */
export type SvgProblem = Problem<SvgProblemCode>;

/** What was drawn in an SVG document, as a part of a layout may have it. */
export interface SvgOutline {
  /** Path data of all its closed lines, in the units of the document; inside and outside by the even-odd rule. */
  readonly outline: string;
  /** Width and height of what was drawn, in units of the document. */
  readonly ratio: { readonly width: number; readonly height: number };
  /** Its true size where the document names its own with units, and what it names it in; null where it names none. */
  readonly size: (Size & { readonly units: Units }) | null;
}

/**
 * The outline in the text of an SVG document (Scalable Vector Graphics 1.1), or everything in it that is no outline.
 *
 * It takes path, rect, circle, ellipse, polygon and closed polylines, in groups and with transforms, and passes over
 * what changes nothing of an outline: titles, descriptions, metadata, comments, colours. All else is a problem with its
 * place; nothing is run, fetched or looked up.
 */
export function readSvgFile(text: string): SvgOutline | { readonly problems: readonly SvgProblem[] } {
  const read = readSvgShapes(text);
  if ('problems' in read) return read;
  const { shapes, sheet } = read;
  const crossing = crossings(shapes);
  if (crossing.length > 0) return { problems: crossing };

  // One path of all, as short as a hundred-thousandth of the drawing allows.
  const together = shapes.map(({ path }) => closed(path)).join('');
  const first = shapes[0]!;
  const whole = readPath(together);
  if (!whole.ok) return { problems: [wholeProblem(first, whole.code)] };
  const { width, height } = pathSize(whole.path);
  const decimals = Math.min(20, Math.max(0, Math.ceil(5 - Math.log10(Math.max(width, height)))));
  const outline = transformedPath(together, [], decimals);
  const rounded = readPath(outline);
  if (!rounded.ok) return { problems: [wholeProblem(first, rounded.code)] };
  return { outline, ratio: { width, height }, size: sizeOf({ width, height }, sheet) };
}

function wholeProblem({ place }: SvgShape, code: string): SvgProblem {
  return svgProblem('svgPath', place, { element: 'svg', fault: code, found: '' }, { at: 0 });
}

/** With a Z behind each contour, so that rounding opens none. */
function closed(path: string): string {
  return `${path.replace(/(?<=[^zZ\s])(?=M)/g, 'Z').replace(/[^zZ]$/, '$&Z')}`;
}

/** How long a unit of the document is, from the size it names for itself. */
function sizeOf(
  { width, height }: { readonly width: number; readonly height: number },
  { width: wide, height: high, viewBox, aspect }: SvgSheet,
): SvgOutline['size'] {
  const named = [wide, high].find((length) => length?.unit !== undefined && length.unit !== '');
  if (named === undefined || named === null) return null;
  const scales = {
    x: scaleOf(wide, viewBox?.width ?? null),
    y: scaleOf(high, viewBox?.height ?? null),
  };
  const either = scales.x ?? scales.y!;
  const [x, y] = [scales.x ?? either, scales.y ?? either];
  const both = aspect === 'slice' ? Math.max(x, y) : Math.min(x, y);
  const [across, down] = aspect === 'none' ? [x, y] : [both, both];
  const ticks = [Math.round(width * across), Math.round(height * down)] as const;
  // Beyond what a layout may hold, in either direction, no size is better than a wrong one.
  if (ticks.some((length) => length < 1 || length > longestTicks)) return null;
  const units = ['mm', 'cm', 'q'].includes(named.unit) ? 'mm' : 'in';
  return { width: lengthOfTicks(ticks[0]), height: lengthOfTicks(ticks[1]), units };
}

const longestTicks = 10_000 * ticksPerMillimetre;

/** Ticks of a unit of the document along one axis: of the size over the view; a pixel where there is no view. */
function scaleOf(length: SvgLength | null, view: number | null): number | null {
  if (length === null || length.unit === '') return null;
  return view === null ? unitTicks.px : (length.number * unitTicks[length.unit]) / view;
}

/** The absolute units of CSS (CSS Values and Units 3, section 6.2): a pixel is 1/96 in, a point 1/72 in. */
const unitTicks: Readonly<Record<Exclude<SvgLength['unit'], ''>, number>> = {
  px: ticksPerInch / 96,
  pt: ticksPerInch / 72,
  pc: ticksPerInch / 6,
  in: ticksPerInch,
  mm: ticksPerMillimetre,
  cm: 10 * ticksPerMillimetre,
  q: ticksPerMillimetre / 4,
};
