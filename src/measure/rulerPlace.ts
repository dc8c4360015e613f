import type { Units } from './box.ts';
import { inches, type Length, lengthOfTicks, millimetres, minus } from './length.ts';
import { type Marking, type MarkReading, readMark } from './marking.ts';
import { roundTo } from './rounding.ts';

/** Where on a ruler a length is, told by the marks around it: for words, and for a picture of the ruler. */
export interface RulerPlace extends MarkReading {
  /** The numbered mark at or below it: a whole inch, or a whole 10 mm. */
  readonly numbered: Length;
  /** How far apart the marks are that are drawn as long as its mark: 1/8 in for 3 5/8 in. */
  readonly spacing: Length;
  /** The marks with longer lines around its mark; `null` at a numbered mark, the longest there are. */
  readonly longer: LongerMarks | null;
}

/** The next marks with longer lines, and which way to find the mark from them. */
export interface LongerMarks {
  readonly below: Length;
  readonly above: Length;
  /** `halfway` between them, or nearer to one of them: `past` the lower or `before` the upper one. */
  readonly side: 'halfway' | 'past' | 'before';
  /** How far the mark is from the nearer of the two. */
  readonly distance: Length;
}

/**
 * The nearest mark to a length and the longer marks around it: 3 5/8 in is halfway between 3 1/2 and
 * 3 3/4, 92 mm is 2 mm past 90.
 */
export function placeOnRuler(length: Length, marking: Marking): RulerPlace {
  const reading = readMark(length, marking);
  const { mark } = reading;
  const spacings = lineSpacings(marking);
  const rank = spacings.findLastIndex((spacing) => mark % spacing === 0);
  const wider = spacings[rank + 1];
  return {
    ...reading,
    numbered: roundTo(length, spacings.at(-1)!, 'down'),
    spacing: spacings[rank]!,
    longer: wider === undefined ? null : longerMarks(mark, wider),
  };
}

/**
 * How far apart the marks of each line length are, the shortest lines first: 1/16, 1/8, 1/4, 1/2 and 1 in on
 * a ruler marked in sixteenths (A-A-355B, the US federal description of a desk ruler, wants a line length for
 * each); 1, 5 and 10 mm on a metric one (common practice, no source). Each is a whole multiple of the one before.
 */
export function lineSpacings(marking: Marking): readonly Length[] {
  const spacings = [marking.step];
  for (const spacing of widerSpacings[marking.units]) {
    const last = spacings.at(-1)!;
    if (spacing > last && spacing % last === 0) spacings.push(spacing);
  }
  return spacings;
}

const widerSpacings: Readonly<Record<Units, readonly Length[]>> = {
  in: [64, 32, 16, 8, 4, 2, 1].map((parts) => inches(1, parts)),
  mm: [0.5, 1, 5, 10].map((count) => millimetres(count)),
};

function longerMarks(mark: Length, spacing: Length): LongerMarks {
  const below = roundTo(mark, spacing, 'down');
  const above = roundTo(mark, spacing, 'up');
  const past = minus(mark, below);
  const before = minus(above, mark);
  const side = past === before ? 'halfway' : past < before ? 'past' : 'before';
  return { below, above, side, distance: lengthOfTicks(Math.min(past, before)) };
}
