import type { Stroke } from './mark.ts';

/** The ink everything is first drawn in. */
export const black = '#000000';
/** The bindery's one accent, as in rubricated initials; never the only sign of anything. */
export const rubric = '#a3211f';
/** For what is only lightly written: leftovers, construction. Contrast to white 5.7:1, so still readable. */
export const grey = '#666666';
/** The paper itself. */
export const white = '#ffffff';

/** Line widths of the ISO 128 series in points, named by what they are for; wide to narrow is 2:1. */
export const lineWidthPt = {
  /** 0.13 mm: hatches. */
  hatch: pointsOfMillimetres(0.13),
  /** 0.18 mm: dimension, extension and lay lines, ticks. */
  fine: pointsOfMillimetres(0.18),
  /** 0.25 mm: folds and scores, rules of a table. */
  narrow: pointsOfMillimetres(0.25),
  /** 0.35 mm: outlines of parts and pieces. */
  outline: pointsOfMillimetres(0.35),
  /** 0.5 mm: outlines of sheets and of the card. */
  wide: pointsOfMillimetres(0.5),
  /** 0.7 mm: the cut that is made now, the heavy rule over a table. */
  heavy: pointsOfMillimetres(0.7),
} as const;

export const fineStroke: Stroke = { colour: black, widthPt: lineWidthPt.fine };
export const outlineStroke: Stroke = { colour: black, widthPt: lineWidthPt.outline };
export const wideStroke: Stroke = { colour: black, widthPt: lineWidthPt.wide };
/** A cut that is made now: heavy and unbroken. */
export const cutStroke: Stroke = { colour: black, widthPt: lineWidthPt.heavy };
/**
 * A fold or score: narrow, long dashes and two short ones, ISO 128's line for a shape before it is bent.
 */
export const foldStroke: Stroke = {
  colour: black,
  widthPt: lineWidthPt.narrow,
  dashPt: [9, 2.5, 2, 2.5, 2, 2.5],
};
/** A score that is folded to a valley: dashes, as in drawings of folded paper (common practice, no source). */
export const valleyStroke: Stroke = { colour: black, widthPt: lineWidthPt.outline, dashPt: [7, 3] };
/** A score that is folded to a mountain: dashes and dots, likewise. */
export const mountainStroke: Stroke = {
  colour: black,
  widthPt: lineWidthPt.outline,
  dashPt: [7, 2.5, 1.2, 2.5],
};
/** What lies hidden under another part: narrow short dashes. */
export const hiddenStroke: Stroke = { colour: black, widthPt: lineWidthPt.narrow, dashPt: [3, 2] };

/** 1 mm is 72/25.4 pt. */
export function pointsOfMillimetres(millimetres: number): number {
  return (millimetres * 72) / 25.4;
}
