import type { Units } from './box.ts';
import { inches, type Length, millimetres, minus } from './length.ts';
import { roundTo } from './rounding.ts';

/** How a ruler or a trimmer is marked: a mark at every whole multiple of `step`, numbered in `units`. */
export interface Marking {
  readonly units: Units;
  readonly step: Length;
}

/** The markings that rulers and trimmers usually have, by their finest step. */
export const usualMarkings = {
  '1/8 in': { units: 'in', step: inches(1, 8) },
  '1/16 in': { units: 'in', step: inches(1, 16) },
  '1/32 in': { units: 'in', step: inches(1, 32) },
  '1/64 in': { units: 'in', step: inches(1, 64) },
  '0.5 mm': { units: 'mm', step: millimetres(0.5) },
  '1 mm': { units: 'mm', step: millimetres(1) },
  '5 mm': { units: 'mm', step: millimetres(5) },
} as const satisfies Readonly<Record<string, Marking>>;

/** The id of a usual marking. */
export type MarkingId = keyof typeof usualMarkings;

/** A length as it is read off a marking. */
export interface MarkReading {
  /** The nearest mark; halfway between two, the one that is an even number of steps. */
  readonly mark: Length;
  /** How far the length is past its mark; negative where it falls short of it. */
  readonly off: Length;
  /** Whether it falls on a mark. */
  readonly exact: boolean;
  /** The marks around it; both are the mark itself where it falls on one. */
  readonly below: Length;
  readonly above: Length;
}

/**
 * The mark at which a length is set or read.
 *
 * The rule is that of NIST Handbook 44 (appendix A, 10.3): the nearest graduation, and midway between two
 * the one whose value is even.
 */
export function readMark(length: Length, marking: Marking): MarkReading {
  const mark = roundTo(length, marking.step, 'nearest');
  return {
    mark,
    off: minus(length, mark),
    exact: length === mark,
    below: roundTo(length, marking.step, 'down'),
    above: roundTo(length, marking.step, 'up'),
  };
}
