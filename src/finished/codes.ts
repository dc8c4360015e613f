import type { Severity } from '../problem/index.ts';

/** What can be wrong with the card once it is made, and how badly. */
export const finishedCodes = {
  /**
   * Even as deep as it usually goes, a tear leaves a bare spot or a gap. Names: kind, edge, against, shows. Numbers:
   * nominal, usual, least, most, onCard, inSet, cards, wanted.
   */
  tearShows: 'error',
  /** A tear may leave a bare spot or a gap, or come out past what hides it, on more sets than is wanted. As above. */
  tearMayShow: 'caution',
  /** Two edges may meet, or a border vanish, on more sets than is wanted, since a tear wanders. As above. */
  tearMeets: 'caution',
} as const satisfies Record<string, Severity>;

/** Code of a problem of the finished card. */
export type FinishedCode = keyof typeof finishedCodes;
