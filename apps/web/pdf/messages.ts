import type { Page } from '../../../src/drawing/index.ts';
import type { Hand } from '../../../src/guide/index.ts';
import type { KitReport } from '../../../src/kits/index.ts';
import type { Layout } from '../../../src/layout/index.ts';
import type { PostTable } from '../../../src/making/index.ts';
import type { Units } from '../../../src/measure/index.ts';
import type { Plan, StepStakes } from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';

/** What a guide is made from: plain data, which a structured clone carries whole. */
export interface GuideAsked {
  readonly layout: Layout;
  /** A plan of this very layout. */
  readonly plan: Plan;
  /** What is at stake at its steps; points of no return are told where it is given. */
  readonly stakes: readonly StepStakes[];
  /** `null`: nobody said which. */
  readonly trimmer: Trimmer | null;
  /** Whose hand it is for; `null`: that of the trimmer. */
  readonly hand: Hand | null;
  /** The person's own post; `null`: the one that the layout names. */
  readonly post: PostTable | null;
  readonly sheetFormat: 'letter' | 'a4';
  readonly units: Units;
  /** Size of the body text. */
  readonly bodyPt: number;
  /** Milliseconds since 1970; stands in the file as its date. */
  readonly madeAt: number;
  /** Its content as plain text, for tests. */
  readonly uncompressed?: boolean;
}

/** What the guide of a kit is made from: plain data, too. */
export interface KitGuideAsked
  extends Pick<GuideAsked, 'sheetFormat' | 'units' | 'bodyPt' | 'madeAt' | 'uncompressed'> {
  /** Of a kit whose bags can all be filled. */
  readonly report: KitReport;
}

/** What the worker is asked for, once: a guide to save or print, or its pages to be looked at. */
export interface GuideRequest {
  readonly kind: 'print' | 'look';
  readonly of: GuideAsked | KitGuideAsked;
}

/** What the worker answers, once. */
export type GuideAnswer = GuideMade | GuideLaid | GuideFailed;

export interface GuideMade {
  readonly kind: 'made';
  readonly pdf: Uint8Array<ArrayBuffer>;
  readonly pages: number;
}

export interface GuideLaid {
  readonly kind: 'laid';
  readonly pages: readonly Page[];
}

/** Our own code is wrong, or the fonts could not be fetched. */
export interface GuideFailed {
  readonly kind: 'failed';
  readonly message: string;
}
