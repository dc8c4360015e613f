import { inches, type Length, lengthOfTicks, millimetres, ticksPerInch } from '../measure/index.ts';
import type { PostClass, PostSizes, PostTable } from './post.ts';

/** An ounce is a sixteenth of a pound of 453.59237 g (international yard and pound agreement, 1959). */
const gramsPerOunce = 28.349523125;

/** Thousandths of an inch, rounded down to a tick: a piece that is just so thick is thick enough. */
const thousandths = (count: number): Length => lengthOfTicks(Math.floor((count * ticksPerInch) / 1000));

const sizes = (length: Length | null, height: Length | null, thickness: Length | null): PostSizes => ({
  length,
  height,
  thickness,
});
const mm = (length: number, height: number, thickness: number | null): PostSizes =>
  sizes(millimetres(length), millimetres(height), thickness === null ? null : millimetres(thickness));

/** What most classes are like: any ratio, any weight from nothing on, thick in some places, and stiff. */
const usual = {
  least: sizes(null, null, null),
  stiffer: null,
  ratio: { least: null, most: null },
  takesUneven: true,
  takesRigid: true,
} as const satisfies Partial<PostClass>;

const letterOfTheUnitedStates = {
  least: sizes(inches(5), inches(7, 2), thousandths(7)),
  most: sizes(inches(23, 2), inches(49, 8), inches(1, 4)),
  grams: { least: null, most: 3.5 * gramsPerOunce },
} as const;

const ratioOfGermany = { least: [14, 10], most: null } as const;

/** Limits of five posts, dated and with their sources, to be changed where a post changes them. */
export const postTables = [
  {
    id: 'us',
    country: 'United States',
    asOf: '2023-07',
    source: 'USPS Domestic Mail Manual 101, text dated 9 July 2023, and 201',
    classes: [
      {
        ...letterOfTheUnitedStates,
        name: 'letter',
        stiffer: { length: inches(6), height: inches(17, 4), thickness: thousandths(9) },
        ratio: { least: [13, 10], most: [25, 10] },
        takesUneven: false,
        takesRigid: false,
      },
      { ...usual, ...letterOfTheUnitedStates, name: 'letter that machines cannot sort' },
      {
        ...usual,
        name: 'large envelope',
        most: sizes(inches(15), inches(12), inches(3, 4)),
        grams: { least: null, most: 13 * gramsPerOunce },
      },
    ],
  },
  {
    id: 'uk',
    country: 'United Kingdom',
    asOf: '2025-02',
    source: 'Ofcom, “Letter or large letter”; weights from merchants’ pages',
    classes: [
      { ...usual, name: 'letter', most: mm(240, 165, 5), grams: { least: null, most: 100 } },
      { ...usual, name: 'large letter', most: mm(353, 250, 25), grams: { least: null, most: 750 } },
    ],
  },
  {
    id: 'ca',
    country: 'Canada',
    asOf: '2025-02',
    source: 'Canada Post, “Letter weight and size” and “Size requirements”',
    classes: [
      {
        ...usual,
        name: 'standard letter',
        least: mm(140, 90, 0.18),
        most: mm(245, 156, 5),
        grams: { least: 2, most: 50 },
      },
      { ...usual, name: 'other letter', most: mm(380, 270, 20), grams: { least: null, most: 500 } },
    ],
  },
  {
    id: 'de',
    country: 'Germany',
    asOf: '2025-02',
    source: 'three newspapers and price lists that agree, one of February 2025',
    classes: [
      {
        ...usual,
        name: 'Standardbrief',
        least: mm(140, 90, null),
        most: mm(235, 125, 5),
        ratio: ratioOfGermany,
        grams: { least: null, most: 20 },
      },
      {
        ...usual,
        name: 'Kompaktbrief',
        least: mm(100, 70, null),
        most: mm(235, 125, 10),
        ratio: ratioOfGermany,
        grams: { least: null, most: 50 },
      },
      {
        ...usual,
        name: 'Großbrief',
        least: mm(100, 70, null),
        most: mm(353, 250, 20),
        grams: { least: null, most: 500 },
      },
    ],
  },
  {
    id: 'au',
    country: 'Australia',
    asOf: '2025-02',
    source: 'Australia Post, its own pages; the least size is from memory',
    classes: [
      {
        ...usual,
        name: 'small letter',
        takesRigid: false,
        least: mm(138, 88, null),
        most: mm(240, 130, 5),
        grams: { least: null, most: 250 },
      },
      {
        ...usual,
        name: 'large letter',
        takesRigid: false,
        most: mm(360, 260, 20),
        grams: { least: null, most: 500 },
      },
    ],
  },
] as const satisfies readonly PostTable[];

/** The table of that id; `null`: there is none. */
export function postTableOf(id: string): PostTable | null {
  return postTables.find((table) => table.id === id) ?? null;
}
