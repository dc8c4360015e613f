import { black } from './ink.ts';
import type { GroupMark, Mark, PathStep, Point, Stroke } from './mark.ts';
import { circle } from './outline.ts';

/** How a small drawn sign stands: centred on `at`, turned clockwise. */
export interface SignRequest {
  readonly at: Point;
  readonly sizePt: number;
  readonly turnDegrees?: number;
  readonly colour?: string;
}

/** The up-arrow of a pattern: a shaft and an open head, pointing up when not turned. */
export function upArrow(request: SignRequest): GroupMark {
  const place = placing(request);
  const stroke = penOf(request);
  return {
    kind: 'group',
    marks: [
      { kind: 'line', from: place(0, 0.5), to: place(0, -0.48), stroke },
      {
        kind: 'path',
        path: [
          { to: 'move', ...place(-0.2, -0.16) },
          { to: 'line', ...place(0, -0.5) },
          { to: 'line', ...place(0.2, -0.16) },
        ],
        stroke,
      },
    ],
  };
}

/** Open scissors that cut to the right when not turned: two finger rings and two blades that cross at the pivot. */
export function scissors(request: SignRequest): GroupMark {
  const place = placing(request);
  const stroke = penOf(request);
  const ring = (y: number): Mark => ({
    kind: 'path',
    path: circle(place(-0.34, y), 0.13 * request.sizePt),
    stroke,
  });
  // Each blade is a sliver: its edge straight, its back slightly bent, so that the mark reads when it is small.
  const blade = (side: 1 | -1): Mark => ({
    kind: 'path',
    path: [
      { to: 'move', ...place(-0.24, side * 0.13) },
      { to: 'line', ...place(0.5, side * -0.2) },
      bend(place, [0.34, side * -0.22], [0.06, side * -0.1], [-0.26, side * 0.07]),
      { to: 'close' },
    ],
    fill: { colour: stroke.colour },
  });
  return { kind: 'group', marks: [ring(0.18), ring(-0.18), blade(1), blade(-1)] };
}

type Place = (x: number, y: number) => Point;

/** From shares of the sign's size, centred and upright, to the page. */
function placing({ at, sizePt, turnDegrees = 0 }: SignRequest): Place {
  const cosine = Math.cos((turnDegrees * Math.PI) / 180) * sizePt;
  const sine = Math.sin((turnDegrees * Math.PI) / 180) * sizePt;
  return (x, y) => ({
    xPt: at.xPt + x * cosine - y * sine,
    yPt: at.yPt + x * sine + y * cosine,
  });
}

function penOf({ sizePt, colour }: SignRequest): Stroke {
  return { colour: colour ?? black, widthPt: Math.max(0.4, sizePt * 0.07) };
}

function bend(
  place: Place,
  first: [number, number],
  second: [number, number],
  end: [number, number],
): PathStep {
  const [one, two] = [place(...first), place(...second)];
  return { to: 'curve', x1Pt: one.xPt, y1Pt: one.yPt, x2Pt: two.xPt, y2Pt: two.yPt, ...place(...end) };
}
