export type { Effort, Leftover, Step } from './step.ts';
export type { Trimmer } from './trimmer.ts';
