import type { Layout } from '../../../../src/layout/index.ts';
import { type Length, readLength, type Size, type Units } from '../../../../src/measure/index.ts';
import type { OtherSheets, RecastWishes } from '../../../../src/planning/index.ts';
import type { Paper } from '../../../../src/stash/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { markingOf } from '../../state/inHand.ts';
import { type SheetSize, sheetSizes } from '../papers/sheetSizes.ts';

/** What a layout is to be planned again for, as the form has it: lengths as they are typed, with their units. */
export interface Wished {
  readonly units: Units;
  readonly cards: number;
  /** Of the closed card; `null`: as it is. */
  readonly width: string | null;
  readonly height: string | null;
  /** Distance of the marks that every length is to stand on; `null`: those of the trimmer, else the usual ones. */
  readonly marks: string | null;
  /** By the id of a paper; those that are not named keep their sheets. */
  readonly sheets: Readonly<Record<string, SheetsWished>>;
}

/** Other sheets of one paper. */
export interface SheetsWished {
  readonly size: SheetSize | 'own';
  /** Measures of a size of the person's own. */
  readonly width: string;
  readonly height: string;
  /** `null`: as many as needed. */
  readonly count: number | null;
}

/** Nothing is wished yet: everything as it is. */
export function nothingWished({ units, cards }: Layout): Wished {
  return { units, cards, width: null, height: null, marks: null, sheets: {} };
}

/** The wishes, in lengths; all texts are lengths already. */
export function wishesOf(wished: Wished, layout: Layout, trimmer: Trimmer | null): RecastWishes {
  const { units, cards, width, height, sheets } = wished;
  return {
    units,
    trimmer,
    cards,
    ...(width === null && height === null ? {} : { base: baseOf(wished, layout) }),
    marks: marksOf(wished, trimmer),
    sheets: Object.entries(sheets).map(
      ([paper, other]): OtherSheets => ({
        paper,
        size: sizeOf(other),
        count: other.count,
        insteadOf: null,
      }),
    ),
  };
}

/** The closed card as it is wished. */
export function baseOf({ width, height }: Wished, { base }: Layout): Size {
  return {
    width: width === null ? base.size.width : lengthOf(width),
    height: height === null ? base.size.height : lengthOf(height),
  };
}

/** The marks as they are wished. */
export function marksOf({ marks, units }: Wished, trimmer: Trimmer | null): Length {
  return marks === null ? markingOf({ units }, trimmer).step : lengthOf(marks);
}

/** The size of sheets as they are wished. */
export function sizeOf({ size, width, height }: SheetsWished): Size {
  const [across, down] = size === 'own' ? [width, height] : sheetSizes[size];
  return { width: lengthOf(across), height: lengthOf(down) };
}

/** How many sheets there are of a paper that are no scraps; `null`: as many as needed. */
export function countOf({ sheets }: Paper): number | null {
  const counts = sheets.filter(({ scrap }) => !scrap).map(({ count }) => count);
  return counts.includes(null) ? null : counts.reduce<number>((all, count) => all + (count ?? 0), 0);
}

/** A length that was typed into a blank, which takes nothing else. */
function lengthOf(text: string): Length {
  const read = readLength(text, 'mm');
  if (!read.ok) throw new Error(`A blank for a length takes a length, not “${text}”`);
  return read.length;
}
