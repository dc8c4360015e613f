import type { Track } from '../../../src/editing/index.ts';
import type { Json } from '../../../src/files/index.ts';

/** All that stands on a shelf, apart from where it is kept: to be written to a file, and put back from one. */
export interface Everything {
  /** By title; what lies in the bin is not among them. */
  readonly layouts: readonly KeptLayout[];
  readonly preferences: Readonly<Record<string, Json>>;
}

export interface KeptLayout {
  /** `null`: it never stood on a shelf. */
  readonly id: string | null;
  readonly revision: number;
  /** The layout that it is a second version of; `null`: of none. */
  readonly besides: string | null;
  readonly track: Track;
}

/** What became of the layouts that were put back: how many came, became second versions, were there already. */
export interface PutBack {
  readonly added: number;
  readonly beside: number;
  readonly there: number;
}
