import type { Point } from './point.ts';

/**
 * Whether a ring turns one way at every corner and goes round once: such a one cannot cross itself. Straight corners
 * do not count as convex, since no corner of a region stands on a straight line.
 */
export function isConvex(ring: readonly Point[]): boolean {
  let [sign, turnsOfX, lastX] = [0, 0, 0];
  for (let index = 0; index < ring.length; index += 1) {
    const [one, two, three] = [ring.at(index - 2)!, ring.at(index - 1)!, ring[index]!];
    const cross = (two.x - one.x) * (three.y - two.y) - (three.x - two.x) * (two.y - one.y);
    if (cross === 0 || (sign !== 0 && Math.sign(cross) !== sign)) return false;
    sign = Math.sign(cross);
    const stepX = Math.sign(three.x - two.x);
    if (stepX !== 0) {
      if (lastX !== 0 && stepX !== lastX) turnsOfX += 1;
      lastX = stepX;
    }
  }
  return turnsOfX <= 2;
}

/**
 * The radius of the greatest disc in a convex ring that goes clockwise, in ticks, to a thousandth of one.
 *
 * The least distance to any edge is a concave function of the place, so that the best place is found by thirds: along
 * y for each x, and along x over those.
 */
export function greatestRadius(ring: readonly Point[]): number {
  const edges = ring.map((to, index) => {
    const from = ring.at(index - 1)!;
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    const [across, down] = [-(to.y - from.y) / long, (to.x - from.x) / long];
    return { across, down, off: across * from.x + down * from.y };
  });
  const distance = (x: number, y: number) => {
    let least = Infinity;
    for (const { across, down, off } of edges) least = Math.min(least, across * x + down * y - off);
    return least;
  };
  const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const bestAt = (x: number) => greatestBetween(top, bottom, (y) => distance(x, y));
  return greatestBetween(Math.min(...xs), Math.max(...xs), bestAt);
}

/** The greatest value of a concave function between two places, by leaving out the worse outer third. */
function greatestBetween(from: number, to: number, value: (at: number) => number): number {
  let [least, most] = [from, to];
  while (most - least > 0.001) {
    const third = (most - least) / 3;
    if (value(least + third) < value(most - third)) least += third;
    else most -= third;
  }
  return value((least + most) / 2);
}
