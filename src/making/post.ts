import type { Length } from '../measure/index.ts';

/** A card in its envelope, ready to be posted. */
export interface Mailpiece {
  /** Of the envelope: its longer side, and its shorter. */
  readonly length: Length;
  readonly height: Length;
  /** Where it is thickest. */
  readonly thickness: Length;
  /** Weight in grams, all told; not exact. */
  readonly grams: number;
  /** Whether it is thicker in some places than in others, as over foam. */
  readonly isUneven: boolean;
  /** Whether something in it does not bend, as a button. */
  readonly isRigid: boolean;
}

/** What a post takes as one kind of mail: sizes and limits only. What it costs is for the post to say. */
export interface PostClass {
  readonly name: string;
  readonly least: PostSizes;
  readonly most: PostSizes;
  /** A larger piece has to be so thick: longer or higher than this; `null`: no such rule. */
  readonly stiffer: { readonly length: Length; readonly height: Length; readonly thickness: Length } | null;
  /** Of length over height, each as two whole numbers: `[13, 10]` is 1.3; `null`: none. */
  readonly ratio: {
    readonly least: readonly [number, number] | null;
    readonly most: readonly [number, number] | null;
  };
  /** In grams; `null`: none. */
  readonly grams: { readonly least: number | null; readonly most: number | null };
  readonly takesUneven: boolean;
  readonly takesRigid: boolean;
}

/** `null`: no limit. */
export interface PostSizes {
  readonly length: Length | null;
  readonly height: Length | null;
  readonly thickness: Length | null;
}

/** The posts whose limits are known here, by the codes of ISO 3166-1 but for the United Kingdom's, in small letters. */
export const postIds = ['us', 'uk', 'ca', 'de', 'au'] as const;

export type PostId = (typeof postIds)[number];

/** The kinds of mail of one post as they were on a day, the smallest first; the local post office decides. */
export interface PostTable {
  /** What a layout file calls it: `us`, `uk` … */
  readonly id: string;
  readonly country: string;
  /** The day that its limits were found as they are here, `2026-11`. */
  readonly asOf: string;
  /** Where they were found. */
  readonly source: string;
  readonly classes: readonly PostClass[];
}

/** Why a piece is not of a class: what it measures, and the limit that this passes. */
export interface PostFault {
  readonly code:
    | 'tooLong'
    | 'tooShort'
    | 'tooHigh'
    | 'tooLow'
    | 'tooThick'
    | 'tooThin'
    | 'tooHeavy'
    | 'tooLight'
    /** Too near to a square. */
    | 'tooSquare'
    /** Too long for its height. */
    | 'tooNarrow'
    | 'uneven'
    | 'rigid';
  /** Ticks, grams, or length over height; for `uneven` and `rigid` both are 0. */
  readonly is: number;
  readonly limit: number;
}

/** Everything that keeps a piece from being of a class; none: it is. A limit itself is within. */
export function postFaults(piece: Mailpiece, of: PostClass): readonly PostFault[] {
  const { length, height, thickness, grams } = piece;
  const stiffer =
    of.stiffer !== null && (length > of.stiffer.length || height > of.stiffer.height)
      ? of.stiffer.thickness
      : null;
  const thinnest = stiffer === null ? of.least.thickness : Math.max(stiffer, of.least.thickness ?? stiffer);
  const over = (code: PostFault['code'], is: number, limit: number | null): readonly PostFault[] =>
    limit !== null && is > limit ? [{ code, is, limit }] : [];
  const under = (code: PostFault['code'], is: number, limit: number | null): readonly PostFault[] =>
    limit !== null && is < limit ? [{ code, is, limit }] : [];
  return [
    ...over('tooLong', length, of.most.length),
    ...under('tooShort', length, of.least.length),
    ...over('tooHigh', height, of.most.height),
    ...under('tooLow', height, of.least.height),
    ...over('tooThick', thickness, of.most.thickness),
    ...under('tooThin', thickness, thinnest),
    ...over('tooHeavy', grams, of.grams.most),
    ...under('tooLight', grams, of.grams.least),
    ...ratioFaults(piece, of.ratio),
    ...(piece.isUneven && !of.takesUneven ? [{ code: 'uneven' as const, is: 0, limit: 0 }] : []),
    ...(piece.isRigid && !of.takesRigid ? [{ code: 'rigid' as const, is: 0, limit: 0 }] : []),
  ];
}

/** In whole numbers, so that a ratio that is just the limit is within. */
function ratioFaults(
  { length, height }: Mailpiece,
  { least, most }: PostClass['ratio'],
): readonly PostFault[] {
  const is = length / height;
  const faults: PostFault[] = [];
  if (least !== null && length * least[1] < height * least[0])
    faults.push({ code: 'tooSquare', is, limit: least[0] / least[1] });
  if (most !== null && length * most[1] > height * most[0])
    faults.push({ code: 'tooNarrow', is, limit: most[0] / most[1] });
  return faults;
}

/** What a post takes a piece as. */
export interface Posted {
  /** The smallest class that takes it; `null`: none does. */
  readonly as: PostClass | null;
  /** The smaller ones, with why they do not; all of them where none does. */
  readonly not: readonly { readonly class: PostClass; readonly faults: readonly PostFault[] }[];
}

/** The class by which a post takes a piece, and what keeps it from each smaller one. */
export function postedAs(piece: Mailpiece, { classes }: PostTable): Posted {
  const not: { readonly class: PostClass; readonly faults: readonly PostFault[] }[] = [];
  for (const one of classes) {
    const faults = postFaults(piece, one);
    if (faults.length === 0) return { as: one, not };
    not.push({ class: one, faults });
  }
  return { as: null, not };
}
