import { inches, type Length, millimetres, type Units } from '../measure/index.ts';

/** What a crafter holds parts with, in the trade's words. */
export const adhesiveKinds = [
  'foam-tape',
  'foam-squares',
  'liquid-glue',
  'double-sided-tape',
  'glue-spots',
  'removable-tape',
] as const;

export type AdhesiveKind = (typeof adhesiveKinds)[number];

/** What an adhesive is for: the three ways a part is held, and what only holds something until it is covered. */
export const adhesiveUses = ['flat', 'raised', 'spots', 'holding'] as const;

export type AdhesiveUse = (typeof adhesiveUses)[number];

/** What may be used for each; the first is what is taken where nobody said. */
export const adhesivesFor = {
  flat: ['liquid-glue', 'double-sided-tape'],
  raised: ['foam-tape', 'foam-squares'],
  spots: ['glue-spots'],
  holding: ['removable-tape'],
} as const satisfies Record<AdhesiveUse, readonly [AdhesiveKind, ...AdhesiveKind[]]>;

/** How an adhesive comes and goes on, and how long it takes; to be changed for what a person uses. */
export interface UsualAdhesive {
  /** `strip`: cut from a roll; `line`: out of a bottle; `spot`: a round one; `square`: a square one. */
  readonly form: 'strip' | 'line' | 'spot' | 'square';
  /** Of a tape or a line of glue, or across a spot or a square. */
  readonly width: Readonly<Record<Units, Length>>;
  /** How thick it lies; `null`: too thin to count. */
  readonly thickness: Readonly<Record<Units, Length>> | null;
  /** How far from the edges of what it holds it stays, so that it is not seen from the side and does not ooze. */
  readonly inset: Readonly<Record<Units, Length>>;
  /** How far any point of what it holds may lie from the nearest of it. */
  readonly span: Readonly<Record<Units, Length>>;
  /** How much is on a roll; `null`: it does not come on one, or rolls differ too much. */
  readonly roll: Readonly<Record<Units, Length>> | null;
  /** Minutes pressed until the work can be taken up and turned over. */
  readonly handle: number;
  /** Minutes until it holds for good. */
  readonly dry: number;
  /** Whether it is seen through paper that is seen through. */
  readonly shows: boolean;
  /** Where the figures come from. */
  readonly source: string;
}

/**
 * The adhesives of the craft table.
 *
 * Liquid glue: published advice on white glue on card ranges from 15 to 60 minutes until it can be handled and from 18
 * to 72 hours until it is hard; 30 minutes and 24 hours lie between. Foam is sold 1/32, 1/16 and 1/8 in thick. That
 * almost any adhesive shows through vellum is what four published pages say. All else is common practice, no source.
 */
export const usualAdhesives = {
  'foam-tape': {
    form: 'strip',
    width: { in: inches(1, 2), mm: millimetres(12) },
    thickness: { in: inches(1, 16), mm: millimetres(1.5) },
    inset: { in: inches(1, 8), mm: millimetres(3) },
    span: { in: inches(3, 4), mm: millimetres(20) },
    roll: { in: inches(78), mm: millimetres(2000) },
    handle: 0,
    dry: 0,
    shows: true,
    source: 'thicknesses as it is sold; width, span and inset: common practice, no source; roll: from memory',
  },
  'foam-squares': {
    form: 'square',
    width: { in: inches(1, 2), mm: millimetres(12) },
    thickness: { in: inches(1, 16), mm: millimetres(1.5) },
    inset: { in: inches(1, 8), mm: millimetres(3) },
    span: { in: inches(3, 4), mm: millimetres(20) },
    roll: null,
    handle: 0,
    dry: 0,
    shows: true,
    source: 'thicknesses as it is sold; width, span and inset: common practice, no source',
  },
  'liquid-glue': {
    form: 'line',
    width: { in: inches(1, 16), mm: millimetres(2) },
    thickness: null,
    inset: { in: inches(1, 8), mm: millimetres(3) },
    span: { in: inches(1, 2), mm: millimetres(12) },
    roll: null,
    handle: 30,
    dry: 24 * 60,
    shows: true,
    source: 'minutes: published advice disagrees, its middle is taken; the rest: common practice, no source',
  },
  'double-sided-tape': {
    form: 'strip',
    width: { in: inches(1, 4), mm: millimetres(6) },
    thickness: null,
    inset: { in: inches(1, 8), mm: millimetres(3) },
    span: { in: inches(3, 4), mm: millimetres(20) },
    roll: { in: inches(394), mm: millimetres(10_000) },
    handle: 0,
    dry: 0,
    shows: true,
    source: 'common practice, no source; roll: from memory',
  },
  'glue-spots': {
    form: 'spot',
    width: { in: inches(3, 8), mm: millimetres(10) },
    thickness: { in: millimetres(0.3), mm: millimetres(0.3) },
    inset: { in: inches(1, 8), mm: millimetres(3) },
    span: { in: inches(3, 4), mm: millimetres(20) },
    roll: null,
    handle: 0,
    dry: 0,
    shows: true,
    source: 'common practice, no source; sizes of spots: from memory',
  },
  'removable-tape': {
    form: 'strip',
    width: { in: inches(1, 2), mm: millimetres(12) },
    thickness: null,
    inset: { in: inches(1, 8), mm: millimetres(3) },
    span: { in: inches(3, 4), mm: millimetres(20) },
    roll: { in: inches(394), mm: millimetres(10_000) },
    handle: 0,
    dry: 0,
    shows: true,
    source: 'common practice, no source; roll: from memory',
  },
} as const satisfies Record<AdhesiveKind, UsualAdhesive>;
