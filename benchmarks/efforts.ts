import { type SearchEffort, thoroughEffort, usualEffort } from '../src/cutting/index.ts';

/** How much work a run may do, by the word it is asked for with. */
export const efforts = { usual: usualEffort, thorough: thoroughEffort } as const satisfies Record<
  string,
  SearchEffort
>;

export type EffortName = keyof typeof efforts;
