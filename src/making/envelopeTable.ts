import { inches, type Length, millimetres, type Units } from '../measure/index.ts';

/** An envelope as it is sold, by its outside measures. */
export interface EnvelopeSize {
  readonly name: string;
  /** Its longer side, and its shorter. */
  readonly length: Length;
  readonly height: Length;
  /** Where its measures were found. */
  readonly source: string;
}

const iso = (name: string, height: number, length: number): EnvelopeSize => ({
  name,
  length: millimetres(length),
  height: millimetres(height),
  source: 'ISO 269',
});
const american = (name: string, height: Length, length: Length): EnvelopeSize => ({
  name,
  length,
  height,
  source: 'North American trade sizes, on which merchants’ lists agree',
});
const square = (side: Length, name: string): EnvelopeSize => ({
  name,
  length: side,
  height: side,
  source: 'common practice, no source',
});

/**
 * Envelopes that are usually sold, the smallest first: where papers are measured in inches the North American trade
 * sizes, where in millimetres those of ISO 269 (the C series, DL and B6), and the usual squares of both.
 */
export const envelopeSizes: Readonly<Record<Units, readonly EnvelopeSize[]>> = {
  in: bySize([
    american('A1', inches(29, 8), inches(41, 8)),
    american('A2', inches(35, 8), inches(23, 4)),
    american('A6', inches(19, 4), inches(13, 2)),
    american('A7', inches(21, 4), inches(29, 4)),
    american('A8', inches(11, 2), inches(65, 8)),
    american('A9', inches(23, 4), inches(35, 4)),
    american('A10', inches(6), inches(19, 2)),
    american('A-Long', inches(31, 8), inches(71, 8)),
    american('No. 10', inches(33, 8), inches(19, 2)),
    square(inches(11, 2), '5 1/2 in square'),
    square(inches(6), '6 in square'),
    square(inches(13, 2), '6 1/2 in square'),
  ]),
  mm: bySize([
    iso('C8', 57, 81),
    iso('C7', 81, 114),
    iso('C7/C6', 81, 162),
    iso('C6', 114, 162),
    iso('DL', 110, 220),
    iso('C6/C5', 114, 229),
    iso('B6', 125, 176),
    iso('C5', 162, 229),
    iso('C4', 229, 324),
    square(millimetres(140), '140 mm square'),
    square(millimetres(155), '155 mm square'),
    square(millimetres(160), '160 mm square'),
    square(millimetres(170), '170 mm square'),
  ]),
};

/** By area; of two alike the shorter one first. */
function bySize(sizes: readonly EnvelopeSize[]): readonly EnvelopeSize[] {
  return sizes.toSorted(
    (one, other) => one.length * one.height - other.length * other.height || one.length - other.length,
  );
}
