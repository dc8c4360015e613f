import { black, lineWidthPt } from './ink.ts';
import type { Hatch, PathMark, PathStep, Point } from './mark.ts';
import { frameOf, polyline, ringsOf } from './outline.ts';

/**
 * The hatch by which the paper at this place in the layout's list (from 0) is told from the others.
 *
 * The first seven differ in pattern, the next seven are the same wider and turned, and so on. `turnDegrees` turns
 * it with its sheet; `ground` is the colour of the paper where it is known, else a light tint; `ink` is black unless
 * said.
 */
export function hatchFor(
  index: number,
  options: { readonly turnDegrees?: number; readonly ground?: string; readonly ink?: string } = {},
): Hatch {
  const round = Math.floor(index / family.length);
  const member = family[index % family.length]!;
  return {
    pattern: member.pattern,
    ground: options.ground ?? tints[index % tints.length]!,
    ink: options.ink ?? black,
    turnDegrees: member.turnDegrees + 30 * round + (options.turnDegrees ?? 0),
    spacingPt: member.spacingPt * 1.5 ** (round % 3),
  };
}

/** Cardstock without a print: its ground and nothing on it. */
export function plainGround(ground: string): Hatch {
  return { pattern: 'plain', ground, ink: black, turnDegrees: 0, spacingPt: 6 };
}

/**
 * The marks that a hatched path is made of: its ground, then the hatch, every line of which ends at the outline.
 *
 * The pattern hangs on the origin, so shapes side by side wear one print. Both doors draw these very marks.
 * Cost: number of hatch strokes times number of outline corners at their height.
 */
export function hatchMarks(path: readonly PathStep[], hatch: Hatch): readonly PathMark[] {
  const ground: PathMark = { kind: 'path', path, fill: { colour: hatch.ground } };
  if (hatch.pattern === 'plain') return [ground];
  const rings = ringsOf(path);
  const edges = byHeight(rings.flatMap(edgesOf));
  const { strokes, dots } = motifs[hatch.pattern](reachOf(rings, hatch), hatch.spacingPt);
  const turned = turning(hatch.turnDegrees);
  const lines = strokes.flatMap((points) => insideParts(points.map(turned), edges));
  const marks: PathMark[] = [ground];
  if (lines.length > 0) {
    marks.push({ kind: 'path', path: lines, stroke: { colour: hatch.ink, widthPt: lineWidthPt.hatch } });
  }
  // A line of no length with round ends: a tenth of what the outline of a dot would take in a file.
  const spots = dots
    .map(turned)
    .filter((dot) => isInside(dot, edges) && isClear(dot, edges))
    .flatMap((dot) => polyline([tidied(dot), tidied(dot)]));
  if (spots.length > 0) {
    const stroke = { colour: hatch.ink, widthPt: 2 * dotRadiusPt, cap: 'round' } as const;
    marks.push({ kind: 'path', path: spots, stroke });
  }
  return marks;
}

/** An edge of the outline, and the frame round it, outside of which nothing meets it. */
interface Edge {
  readonly start: Point;
  readonly end: Point;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
/** The edges that reach into the heights from `top` to `bottom`, each once, and maybe a few beside them. */
type EdgesAt = (top: number, bottom: number) => readonly Edge[];

/** What the pattern must cover, in its own unturned coordinates. */
interface Reach {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
interface Motifs {
  readonly strokes: readonly (readonly Point[])[];
  readonly dots: readonly Point[];
}

const family = [
  { pattern: 'lines', turnDegrees: 45, spacingPt: 5 },
  { pattern: 'dots', turnDegrees: 0, spacingPt: 6 },
  { pattern: 'chevrons', turnDegrees: 0, spacingPt: 8 },
  { pattern: 'crossed', turnDegrees: 45, spacingPt: 7 },
  { pattern: 'dashes', turnDegrees: 0, spacingPt: 5 },
  { pattern: 'waves', turnDegrees: 0, spacingPt: 6 },
  { pattern: 'bricks', turnDegrees: 0, spacingPt: 7 },
] as const satisfies readonly Pick<Hatch, 'pattern' | 'turnDegrees' | 'spacingPt'>[];

/** So light that a page printed in black alone loses nothing but the tint. */
const tints = ['#f6f2e8', '#eef3ee', '#f3eff4', '#f7f3df', '#edf2f5', '#f5eeea'] as const;

const dotRadiusPt = 0.6;

const motifs: Record<Exclude<Hatch['pattern'], 'plain'>, (reach: Reach, spacing: number) => Motifs> = {
  lines: (reach, spacing) =>
    onlyStrokes(levels(reach.top, reach.bottom, spacing).map((y) => across(reach, y))),
  crossed: (reach, spacing) =>
    onlyStrokes([
      ...levels(reach.top, reach.bottom, spacing).map((y) => across(reach, y)),
      ...levels(reach.left, reach.right, spacing).map((x) => [at(x, reach.top), at(x, reach.bottom)]),
    ]),
  dots: (reach, spacing) => ({ strokes: [], dots: staggered(reach, spacing, spacing / 2) }),
  dashes: (reach, spacing) =>
    onlyStrokes(
      staggered(reach, 2 * spacing, spacing).map(({ xPt, yPt }) => [
        at(xPt - spacing * 0.6, yPt),
        at(xPt + spacing * 0.6, yPt),
      ]),
    ),
  waves: (reach, spacing) =>
    onlyStrokes(
      levels(reach.top, reach.bottom, spacing).map((y) =>
        levels(reach.left, reach.right, spacing / 2).map((x) =>
          at(x, y + spacing * 0.25 * Math.sin((x / spacing) * (Math.PI / 1.5))),
        ),
      ),
    ),
  // Points up, so that a print with an up is seen to stand upright or not.
  chevrons: (reach, spacing) =>
    onlyStrokes(
      staggered(reach, 1.5 * spacing, spacing / 2).map(({ xPt, yPt }) => [
        at(xPt - spacing * 0.3, yPt + spacing * 0.2),
        at(xPt, yPt - spacing * 0.2),
        at(xPt + spacing * 0.3, yPt + spacing * 0.2),
      ]),
    ),
  bricks: (reach, spacing) =>
    onlyStrokes([
      ...levels(reach.top, reach.bottom, spacing).map((y) => across(reach, y)),
      ...staggered(reach, 2 * spacing, spacing).map(({ xPt, yPt }) => [at(xPt, yPt), at(xPt, yPt + spacing)]),
    ]),
};

function onlyStrokes(strokes: readonly (readonly Point[])[]): Motifs {
  return { strokes, dots: [] };
}

function at(xPt: number, yPt: number): Point {
  return { xPt, yPt };
}

function across(reach: Reach, y: number): readonly Point[] {
  return [at(reach.left, y), at(reach.right, y)];
}

/** Multiples of `step` from one before `from` to one after `to`, off the origin by half a step. */
function levels(from: number, to: number, step: number): readonly number[] {
  const first = Math.floor(from / step) - 1;
  const last = Math.ceil(to / step) + 1;
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index + 0.5) * step);
}

/** Rows `down` apart of points `along` apart, every other row shifted by half. */
function staggered(reach: Reach, along: number, down: number): readonly Point[] {
  return levels(reach.top, reach.bottom, down).flatMap((y) => {
    const odd = Math.floor(y / down) % 2 !== 0;
    return levels(reach.left - along, reach.right, along).map((x) => at(odd ? x + along / 2 : x, y));
  });
}

function reachOf(rings: readonly (readonly Point[])[], hatch: Hatch): Reach {
  const { xPt, yPt, widthPt, heightPt } = frameOf(rings.flat().map(turning(-hatch.turnDegrees)));
  return { left: xPt, right: xPt + widthPt, top: yPt, bottom: yPt + heightPt };
}

/** Turns points clockwise about the origin (y runs down). */
function turning(degrees: number): (point: Point) => Point {
  const cosine = Math.cos((degrees * Math.PI) / 180);
  const sine = Math.sin((degrees * Math.PI) / 180);
  return ({ xPt, yPt }) => ({ xPt: xPt * cosine - yPt * sine, yPt: xPt * sine + yPt * cosine });
}

function edgesOf(ring: readonly Point[]): readonly Edge[] {
  return ring.map((start, index) => {
    const end = ring[(index + 1) % ring.length]!;
    return {
      start,
      end,
      left: Math.min(start.xPt, end.xPt),
      right: Math.max(start.xPt, end.xPt),
      top: Math.min(start.yPt, end.yPt),
      bottom: Math.max(start.yPt, end.yPt),
    };
  });
}

/** Sorts edges into bands, so that a short stroke on a round or torn outline meets only the few at its height. */
function byHeight(edges: readonly Edge[]): EdgesAt {
  const above = Math.min(...edges.map(({ top }) => top));
  const below = Math.max(...edges.map(({ bottom }) => bottom));
  const bandAt = (y: number) => Math.max(0, Math.floor((y - above) / bandPt));
  // Each reaches into the next, so that a stroke no higher than a band lies in one of them.
  const bands: Edge[][] = Array.from({ length: bandAt(below) + 1 }, () => []);
  for (const edge of edges)
    for (let band = Math.max(0, bandAt(edge.top) - 1); band <= bandAt(edge.bottom); band += 1)
      bands[band]!.push(edge);
  return (top, bottom) => {
    const band = bandAt(top);
    return bandAt(bottom) <= band + 1 ? (bands[band] ?? []) : edges;
  };
}

const bandPt = 6;

/** The parts of a polyline that lie inside the edges, as path steps. */
function insideParts(points: readonly Point[], edges: EdgesAt): readonly PathStep[] {
  const steps: PathStep[] = [];
  let pen: Point | undefined;
  for (let index = 1; index < points.length; index += 1) {
    const [from, to] = [points[index - 1]!, points[index]!];
    const stops = [0, ...crossings(from, to, edges), 1];
    for (let stop = 1; stop < stops.length; stop += 1) {
      const [start, end] = [stops[stop - 1]!, stops[stop]!];
      // Skips the empty pieces that corners and touching edges make.
      if (end - start < 1e-9 || !isInside(between(from, to, (start + end) / 2), edges)) continue;
      const begin = between(from, to, start);
      if (pen === undefined || pen.xPt !== begin.xPt || pen.yPt !== begin.yPt) {
        steps.push({ to: 'move', xPt: tidy(begin.xPt), yPt: tidy(begin.yPt) });
      }
      pen = between(from, to, end);
      steps.push({ to: 'line', xPt: tidy(pen.xPt), yPt: tidy(pen.yPt) });
    }
  }
  return steps;
}

/** Where the line from `from` (0) to `to` (1) meets the edges, in rising order. */
function crossings(from: Point, to: Point, edges: EdgesAt): readonly number[] {
  const found: number[] = [];
  const [alongX, alongY] = [to.xPt - from.xPt, to.yPt - from.yPt];
  const [left, right] = [Math.min(from.xPt, to.xPt), Math.max(from.xPt, to.xPt)];
  const [top, bottom] = [Math.min(from.yPt, to.yPt), Math.max(from.yPt, to.yPt)];
  for (const edge of edges(top, bottom)) {
    if (edge.right < left || edge.left > right || edge.bottom < top || edge.top > bottom) continue;
    const { start, end } = edge;
    const [edgeX, edgeY] = [end.xPt - start.xPt, end.yPt - start.yPt];
    const across = alongX * edgeY - alongY * edgeX;
    if (across === 0) continue;
    const [offsetX, offsetY] = [start.xPt - from.xPt, start.yPt - from.yPt];
    const onLine = (offsetX * edgeY - offsetY * edgeX) / across;
    const onEdge = (offsetX * alongY - offsetY * alongX) / across;
    if (onLine > 0 && onLine < 1 && onEdge >= 0 && onEdge <= 1) found.push(onLine);
  }
  return found.sort((a, b) => a - b);
}

/** Even-odd rule: whether a ray to the right crosses the edges an odd number of times. */
function isInside(point: Point, edges: EdgesAt): boolean {
  let inside = false;
  for (const { start, end } of edges(point.yPt, point.yPt)) {
    if (start.yPt > point.yPt === end.yPt > point.yPt) continue;
    const x = start.xPt + ((point.yPt - start.yPt) * (end.xPt - start.xPt)) / (end.yPt - start.yPt);
    if (point.xPt < x) inside = !inside;
  }
  return inside;
}

/** Whether a dot about the point reaches over no edge. */
function isClear(point: Point, edges: EdgesAt): boolean {
  const { xPt, yPt } = point;
  return edges(yPt - dotRadiusPt, yPt + dotRadiusPt).every((edge) => {
    const isBeside = xPt < edge.left - dotRadiusPt || xPt > edge.right + dotRadiusPt;
    return isBeside || distanceTo(edge, point) >= dotRadiusPt;
  });
}

function distanceTo({ start, end }: Edge, point: Point): number {
  const edge = { x: end.xPt - start.xPt, y: end.yPt - start.yPt };
  const length = edge.x * edge.x + edge.y * edge.y;
  const projected = (point.xPt - start.xPt) * edge.x + (point.yPt - start.yPt) * edge.y;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, projected / length));
  return Math.hypot(point.xPt - start.xPt - t * edge.x, point.yPt - start.yPt - t * edge.y);
}

function between(from: Point, to: Point, t: number): Point {
  return {
    xPt: from.xPt + t * (to.xPt - from.xPt),
    yPt: from.yPt + t * (to.yPt - from.yPt),
  };
}

function tidied({ xPt, yPt }: Point): Point {
  return { xPt: tidy(xPt), yPt: tidy(yPt) };
}

/** Thousandths of a point: a hatch is no measure, and shorter numbers halve the file. */
function tidy(value: number): number {
  return Math.round(value * 1000) / 1000;
}
