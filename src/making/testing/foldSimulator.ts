/** A crease as somebody folding meets it: where on the flat strip, how it leans, and whether the rest goes over or under. */
export interface SimulatedCrease {
  readonly at: number;
  readonly degrees: number;
  readonly goes: 'over' | 'under';
}

export type Polygon = readonly (readonly [x: number, y: number])[];

export interface SimulatedFacet {
  readonly polygon: Polygon;
  readonly turned: boolean;
}

/**
 * A strip folded step by step, as a hand does it: the part that is still loose is cut along the crease where it lies
 * now, and all that is beyond, with the lines of the creases to come, is mirrored in it, point by point. From the lowest
 * facet to the highest; the strip's centre line begins at the origin and runs to the right.
 */
export function simulatedFolds(
  strip: { readonly width: number; readonly length: number },
  creases: readonly SimulatedCrease[],
): readonly SimulatedFacet[] {
  const half = strip.width / 2;
  let loose: Polygon = [
    [0, -half],
    [strip.length, -half],
    [strip.length, half],
    [0, half],
  ];
  // Each crease by two points on it; the first stays behind with what lies, the second tells its direction.
  let lines: Polygon = creases.flatMap(({ at, degrees }): Polygon => {
    const radians = (degrees / 180) * Math.PI;
    return [
      [at, 0],
      [at + Math.cos(radians), Math.sin(radians)],
    ];
  });
  let turned = false;
  let beginning: readonly [number, number] = [0, 0];
  const pile: SimulatedFacet[] = [];
  const lay = (polygon: Polygon, goes: 'over' | 'under') => {
    if (goes === 'under') pile.unshift({ polygon, turned });
    else pile.push({ polygon, turned });
  };
  let goes: 'over' | 'under' = 'over';
  for (const crease of creases) {
    const [one, other, ...later] = lines;
    const sideOf = ([x, y]: readonly [number, number]) =>
      (other![0] - one![0]) * (y - one![1]) - (other![1] - one![1]) * (x - one![0]);
    const staying = Math.sign(sideOf(beginning));
    lay(
      clipped(loose, (point) => staying * sideOf(point)),
      goes,
    );
    const mirrored = (points: Polygon): Polygon => points.map((point) => mirror(point, one!, other!));
    loose = mirrored(clipped(loose, (point) => -staying * sideOf(point)));
    lines = mirrored(later);
    beginning = one!;
    // What comes next lies beyond this crease: a point a little way along tells which side that is.
    if (lines.length > 0) beginning = between(one!, lines[0]!);
    goes = crease.goes;
    turned = !turned;
  }
  lay(loose, goes);
  return pile;
}

function between(
  one: readonly [number, number],
  other: readonly [number, number],
): readonly [number, number] {
  return [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2];
}

/** A point mirrored in the line through two others: its foot on the line, and as far again. */
function mirror(
  [x, y]: readonly [number, number],
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
): readonly [number, number] {
  const share = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
  const foot = [ax + share * (bx - ax), ay + share * (by - ay)] as const;
  return [2 * foot[0] - x, 2 * foot[1] - y];
}

/** What of a convex polygon lies where `height` is not negative (Sutherland and Hodgman 1974). */
function clipped(polygon: Polygon, height: (point: readonly [number, number]) => number): Polygon {
  return polygon.flatMap((point, index): Polygon => {
    const next = polygon[(index + 1) % polygon.length]!;
    const [here, there] = [height(point), height(next)];
    const own: Polygon = here >= 0 ? [point] : [];
    if (here >= 0 === there >= 0) return own;
    const share = here / (here - there);
    return [...own, [point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])]];
  });
}
