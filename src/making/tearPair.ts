import { isSure, type TearDepth, tearDensity, tearWithin } from './tear.ts';

/** That `one` × the first depth + `other` × the second is at least so many ticks. */
export interface PairCondition {
  readonly one: -1 | 0 | 1;
  readonly other: -1 | 0 | 1;
  readonly least: number;
}

/**
 * The chance that two independent tears fulfil all the conditions at once; exact.
 *
 * For a first depth x the second has to lie between two bounds that are straight in x, so what is summed over x is a
 * straight density times a parabola: a cubic between the places where a bound passes a corner of the second tear or
 * another bound. Two points of Gauss are exact for a cubic (Abramowitz and Stegun, Handbook of Mathematical Functions,
 * 25.4.30), and every term is positive, so that nothing is lost by subtraction.
 */
export function pairHolds(
  tears: readonly [TearDepth, TearDepth],
  conditions: readonly PairCondition[],
): number {
  const [first, second] = tears;
  const bounds = conditions.map(({ one, other, least }): Bound => {
    if (other === 1) return { side: 'lowest', at: (x) => least - one * x, slope: -one };
    if (other === -1) return { side: 'highest', at: (x) => one * x - least, slope: one };
    return { side: 'none', holds: (x) => one * x >= least, slope: 0 };
  });
  const within = (x: number): number => {
    let [lowest, highest]: [number, number] = [second.least, second.most];
    for (const bound of bounds) {
      if (bound.side === 'none') {
        if (!bound.holds(x)) return 0;
      } else if (bound.side === 'lowest') lowest = Math.max(lowest, bound.at(x));
      else highest = Math.min(highest, bound.at(x));
    }
    if (lowest > highest) return 0;
    return isSure(second) ? 1 : tearWithin(second, highest) - tearWithin(second, lowest);
  };
  if (isSure(first)) return within(first.usual);

  const corners = [second.least, second.usual, second.most];
  const lines = bounds.flatMap((bound) => (bound.side === 'none' ? [] : [bound]));
  const places = [
    first.least,
    first.usual,
    first.most,
    ...conditions.flatMap(({ one, other, least }) => (other === 0 && one !== 0 ? [one * least] : [])),
    ...lines.flatMap((line) =>
      line.slope === 0 ? [] : corners.map((corner) => (corner - line.at(0)) / line.slope),
    ),
    ...lines.flatMap((line, index) =>
      lines
        .slice(index + 1)
        .flatMap((other) =>
          line.slope === other.slope ? [] : [(other.at(0) - line.at(0)) / (line.slope - other.slope)],
        ),
    ),
  ]
    .filter((place) => place >= first.least && place <= first.most)
    .sort((a, b) => a - b);

  let chance = 0;
  for (const [index, from] of places.slice(0, -1).entries()) {
    const half = (places[index + 1]! - from) / 2;
    if (half === 0) continue;
    const middle = from + half;
    for (const off of [-gauss, gauss]) {
      const x = middle + off * half;
      chance += half * tearDensity(first, x) * within(x);
    }
  }
  return Math.min(1, chance);
}

/** The points of the rule of two: 1 / √3 of half the way from the middle. */
const gauss = 1 / Math.sqrt(3);

/** What a condition says of the second depth, given the first. */
type Bound =
  | { readonly side: 'lowest' | 'highest'; readonly slope: number; at(x: number): number }
  | { readonly side: 'none'; readonly slope: 0; holds(x: number): boolean };
