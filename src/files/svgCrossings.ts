import { lengthOfTicks } from '../measure/index.ts';
import { assert, type Problem } from '../problem/index.ts';
import {
  areaOf,
  boundsOf,
  intersection,
  type Outline,
  type PathShape,
  pathOutline,
  pathSize,
  type Region,
  readPath,
  regionOf,
  woundRegionOf,
} from '../shape/index.ts';
import type { SvgProblemCode } from '../words/index.ts';
import { svgProblem } from './svgProblem.ts';
import type { SvgShape } from './svgShapes.ts';

/**
 * Shapes whose lines would not be cut as they are filled: one that fills what its own lines go round twice, and such as
 * lie partly on one another. A shape wholly inside another is a hole in it, for its line is cut.
 */
export function crossings(shapes: readonly SvgShape[]): Problem<SvgProblemCode>[] {
  const drawn = shapes.map((shape) => ({ shape, path: pathOf(shape) }));
  const bounds = drawn.map(({ path }) => path.bounds);
  const [left, top] = [Math.min(...bounds.map((one) => one.left)), Math.min(...bounds.map((one) => one.top))];
  const largest = Math.max(
    ...bounds.map((one) => Math.max(one.left + one.width - left, one.top + one.height - top)),
  );
  const placed = drawn.map(({ shape, path }) => {
    const outline = outlineAt(path, { left, top, scale: trialTicks / largest });
    return { shape, outline, region: regionOf(outline) };
  });

  const doubled = placed.filter(
    ({ shape, outline, region }) => shape.fill === 'nonzero' && fillsMore(outline, region),
  );
  if (doubled.length > 0)
    return doubled.map(({ shape }) => svgProblem('svgFilledHole', shape.place, named(shape)));
  return placed.flatMap(({ shape, region }, index) => {
    const other = placed.slice(0, index).find((before) => overlaps(before.region, region));
    if (other === undefined) return [];
    const { line, column } = other.shape.place;
    const names = { ...named(shape), other: other.shape.element };
    return [svgProblem('svgOverlap', shape.place, names, { otherLine: line, otherColumn: column })];
  });
}

/** The drawing is looked at as if it were 200 mm large; what overlaps by less than 10 µm there only touches. */
const trialTicks = 320_000;
const touching = lengthOfTicks(16);

function pathOf(shape: SvgShape): PathShape {
  const reading = readPath(shape.path);
  assert(reading.ok, 'A shape that was read is a path', { path: shape.path });
  return reading.path;
}

function outlineAt(path: PathShape, place: { left: number; top: number; scale: number }): Outline {
  const { width, height } = pathSize(path);
  const ticks = (value: number) => lengthOfTicks(Math.round(value * place.scale));
  return pathOutline(path, {
    left: ticks(path.bounds.left - place.left),
    top: ticks(path.bounds.top - place.top),
    width: ticks(width),
    height: ticks(height),
  });
}

function fillsMore(outline: Outline, region: Region): boolean {
  return !sameArea(areaOf(woundRegionOf(outline)), areaOf(region));
}

/** Whether two lie partly on one another: more than along a line, and neither wholly on the other. */
function overlaps(one: Region, other: Region): boolean {
  const common = intersection(one, other);
  if (isThin(common)) return false;
  const shared = areaOf(common);
  const [first, second] = [areaOf(one), areaOf(other)];
  const inside = sameArea(shared, Math.min(first, second));
  return !inside || sameArea(first, second);
}

function isThin(region: Region): boolean {
  const bounds = boundsOf(region);
  if (bounds === null) return true;
  return areaOf(region) <= 2 * touching * (bounds.width + bounds.height);
}

function sameArea(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-4 * Math.max(one, other) + 4 * touching ** 2;
}

function named({ element }: SvgShape): { readonly element: string } {
  return { element };
}
