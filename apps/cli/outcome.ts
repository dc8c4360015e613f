/** What one command answers: an exit status, everything said and written by then. */
export type Outcome = typeof done | typeof cannot | typeof wrongUsage;

/** All well. */
export const done = 0;
/** The input is wrong, or what was asked cannot be done with it. */
export const cannot = 1;
/** The command was not understood. */
export const wrongUsage = 2;
