export { assert } from './assert.ts';
export type { Problem, Severity } from './problem.ts';
