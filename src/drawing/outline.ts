import { assert } from '../problem/index.ts';
import type { Frame, PathStep, Point } from './mark.ts';

/** The outline of an upright rectangle, clockwise from its top left corner. */
export function rectangle(frame: Frame): readonly PathStep[] {
  const { xPt, yPt, widthPt, heightPt } = frame;
  return polygon([
    { xPt, yPt },
    { xPt: xPt + widthPt, yPt },
    { xPt: xPt + widthPt, yPt: yPt + heightPt },
    { xPt, yPt: yPt + heightPt },
  ]);
}

/** The closed outline through the points. */
export function polygon(points: readonly Point[]): readonly PathStep[] {
  return [...polyline(points), { to: 'close' }];
}

/** The open line through the points. */
export function polyline(points: readonly Point[]): readonly PathStep[] {
  return points.map((point, index) => ({ to: index === 0 ? 'move' : 'line', ...point }));
}

/** A circle of four cubic curves; the true circle is missed by no more than 0.03 % of the radius. */
export function circle(centre: Point, radiusPt: number): readonly PathStep[] {
  const { xPt, yPt } = centre;
  return roundedRectangle(
    { xPt: xPt - radiusPt, yPt: yPt - radiusPt, widthPt: 2 * radiusPt, heightPt: 2 * radiusPt },
    radiusPt,
  );
}

/** A rectangle with rounded corners; the radius is cut down to half the shorter side. */
export function roundedRectangle(frame: Frame, radiusPt: number): readonly PathStep[] {
  const { xPt: left, yPt: top, widthPt, heightPt } = frame;
  const right = left + widthPt;
  const bottom = top + heightPt;
  const radius = Math.min(radiusPt, widthPt / 2, heightPt / 2);
  const pull = radius * (1 - quarterArcHandle);
  return [
    { to: 'move', xPt: left + radius, yPt: top },
    { to: 'line', xPt: right - radius, yPt: top },
    curve(right - pull, top, right, top + pull, right, top + radius),
    { to: 'line', xPt: right, yPt: bottom - radius },
    curve(right, bottom - pull, right - pull, bottom, right - radius, bottom),
    { to: 'line', xPt: left + radius, yPt: bottom },
    curve(left + pull, bottom, left, bottom - pull, left, bottom - radius),
    { to: 'line', xPt: left, yPt: top + radius },
    curve(left, top + pull, left + pull, top, left + radius, top),
    { to: 'close' },
  ];
}

/** The path's rings as points, curves replaced by short straight pieces. */
export function ringsOf(path: readonly PathStep[]): readonly (readonly Point[])[] {
  const rings: Point[][] = [];
  for (const step of path) {
    if (step.to === 'close') continue;
    const end = { xPt: step.xPt, yPt: step.yPt };
    if (step.to === 'move') {
      rings.push([end]);
      continue;
    }
    const ring = rings.at(-1);
    assert(ring !== undefined, 'A path begins with a move', { path });
    if (step.to === 'curve') {
      const start = ring.at(-1)!;
      for (let piece = 1; piece < curvePieces; piece += 1) {
        const t = piece / curvePieces;
        ring.push({
          xPt: onCurve(t, start.xPt, step.x1Pt, step.x2Pt, step.xPt),
          yPt: onCurve(t, start.yPt, step.y1Pt, step.y2Pt, step.yPt),
        });
      }
    }
    ring.push(end);
  }
  return rings;
}

/** The smallest upright rectangle around the points; of no extent at the origin for none. */
export function frameOf(points: readonly Point[]): Frame {
  if (points.length === 0) return { xPt: 0, yPt: 0, widthPt: 0, heightPt: 0 };
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { xPt, yPt } of points) {
    left = Math.min(left, xPt);
    right = Math.max(right, xPt);
    top = Math.min(top, yPt);
    bottom = Math.max(bottom, yPt);
  }
  return { xPt: left, yPt: top, widthPt: right - left, heightPt: bottom - top };
}

/** Handle length of the cubic curve that best stands for a quarter of the unit circle: 4/3 (sqrt 2 - 1). */
const quarterArcHandle = (4 / 3) * (Math.SQRT2 - 1);
const curvePieces = 16;

function curve(x1Pt: number, y1Pt: number, x2Pt: number, y2Pt: number, xPt: number, yPt: number): PathStep {
  return { to: 'curve', x1Pt, y1Pt, x2Pt, y2Pt, xPt, yPt };
}

function onCurve(t: number, start: number, first: number, second: number, end: number): number {
  const u = 1 - t;
  return u * u * u * start + 3 * u * u * t * first + 3 * u * t * t * second + t * t * t * end;
}
