/** A size that sheets are usually sold in; width and height as a layout file has them. */
export type SheetSize = keyof typeof sheetSizes;

/**
 * The usual sizes. Letter is ANSI/ASME Y14.1 size A; A3, A4 and A5 are ISO 216; the squares are common practice, no
 * source. All are what is written on the pack: what the sheets measure is for the person to say.
 */
export const sheetSizes = {
  square12: ['12 in', '12 in'],
  letter: ['8 1/2 in', '11 in'],
  square8: ['8 in', '8 in'],
  square6: ['6 in', '6 in'],
  a4: ['210 mm', '297 mm'],
  a5: ['148 mm', '210 mm'],
  a3: ['297 mm', '420 mm'],
  square305: ['305 mm', '305 mm'],
  square150: ['150 mm', '150 mm'],
} as const satisfies Readonly<Record<string, readonly [string, string]>>;

/** The sizes, those in these units first. */
export function sizesFrom(units: 'in' | 'mm'): readonly SheetSize[] {
  const all = Object.keys(sheetSizes) as SheetSize[];
  const isIn = (size: SheetSize) => sheetSizes[size][0].endsWith(units);
  return [...all.filter(isIn), ...all.filter((size) => !isIn(size))];
}
