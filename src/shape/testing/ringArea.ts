/** The area inside a ring by the sum of trapezoids under its edges: a second way to the same number. */
export function trapezoidArea(ring: readonly { readonly x: number; readonly y: number }[]): number {
  return Math.abs(
    ring.reduce((total, point, index) => {
      const next = ring[(index + 1) % ring.length]!;
      return total + ((next.x - point.x) * (point.y + next.y)) / 2;
    }, 0),
  );
}

/** The length of all the edges of a region, in ticks. */
export function edgeLength(region: {
  readonly rings: readonly (readonly { readonly x: number; readonly y: number }[])[];
}): number {
  return region.rings
    .flatMap((ring) =>
      ring.map((point, index) => {
        const next = ring[(index + 1) % ring.length]!;
        return Math.hypot(next.x - point.x, next.y - point.y);
      }),
    )
    .reduce((total, length) => total + length, 0);
}
