import fc from 'fast-check';
import { type Box, lengthOfTicks } from '../../measure/index.ts';
import {
  type BannerEnd,
  bannerOutline,
  type Outline,
  ovalOutline,
  pathOutline,
  readPath,
  rectangleOutline,
  roundedOutline,
} from '../index.ts';

/** A box whose edges lie between 0 and `span` ticks; edges that coincide are as likely as not. */
export function anyBox(span: number): fc.Arbitrary<Box> {
  const edge = fc.oneof(
    fc.integer({ min: 0, max: span }),
    fc.integer({ min: 0, max: 8 }).map((step) => Math.round((step * span) / 8)),
  );
  return fc.tuple(edge, edge, edge, edge).map(([a, b, c, d]) => {
    const [left, right] = [Math.min(a, b), Math.max(a, b, Math.min(a, b) + 4)];
    const [top, bottom] = [Math.min(c, d), Math.max(c, d, Math.min(c, d) + 4)];
    return {
      left: lengthOfTicks(left),
      top: lengthOfTicks(top),
      width: lengthOfTicks(right - left),
      height: lengthOfTicks(bottom - top),
    };
  });
}

/** The outline of any kind of shape in a box up to `span`; drawn paths may cross themselves. */
export function anyOutline(span: number): fc.Arbitrary<Outline> {
  const box = anyBox(span);
  const end = fc.constantFrom<BannerEnd>('notched', 'pointed', 'slanted');
  const ends = fc.record({ left: end, right: end, top: end, bottom: end }, { requiredKeys: [] });
  const depth = fc.option(fc.integer({ min: 0, max: Math.floor(span / 4) }).map(lengthOfTicks));
  return fc.oneof(
    { weight: 3, arbitrary: box.map(rectangleOutline) },
    box.map(ovalOutline),
    fc
      .tuple(box, fc.integer({ min: 0, max: Math.floor(span / 3) }))
      .map(([at, corner]) => roundedOutline(at, lengthOfTicks(corner))),
    fc.tuple(box, ends, depth).map(([at, cut, deep]) => bannerOutline(at, cut, deep)),
    fc.tuple(box, anyPath()).map(([at, text]) => {
      const reading = readPath(text);
      return reading.ok ? pathOutline(reading.path, at) : rectangleOutline(at);
    }),
  );
}

/** Path data of one to three closed contours of lines, curves and arcs, in units up to 100. */
export function anyPath(): fc.Arbitrary<string> {
  const place = fc.integer({ min: 0, max: 100 });
  const point = fc.tuple(place, place).map(([x, y]) => `${x} ${y}`);
  const segment = fc.oneof(
    point.map((to) => `L${to}`),
    fc.tuple(point, point, point).map(([first, second, to]) => `C${first} ${second} ${to}`),
    fc.tuple(point, point).map(([handle, to]) => `Q${handle} ${to}`),
    fc
      .tuple(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 180 }),
        fc.constantFrom('0 0', '0 1', '1 0', '1 1'),
        point,
      )
      .map(([rx, ry, turn, flags, to]) => `A${rx} ${ry} ${turn} ${flags} ${to}`),
  );
  const contour = fc
    .tuple(point, fc.array(segment, { minLength: 2, maxLength: 5 }))
    .map(([from, segments]) => `M${from}${segments.join('')}Z`);
  return fc.array(contour, { minLength: 1, maxLength: 3 }).map((contours) => contours.join(''));
}
