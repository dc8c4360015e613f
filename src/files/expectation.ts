import { assert } from '../problem/index.ts';
import type { Wanted } from '../words/index.ts';

/**
 * What a field may hold, as data for a message. It travels as the error text of a zod schema, the one thing
 * that zod hands from a schema to its issues.
 */
export interface Expectation {
  readonly wanted: Wanted;
  readonly names: Readonly<Record<string, string>>;
  readonly numbers: Readonly<Record<string, number>>;
}

/** The error text of a schema that wants this. */
export function expecting(
  wanted: Wanted,
  numbers: Readonly<Record<string, number>> = {},
  names: Readonly<Record<string, string>> = {},
): string {
  return JSON.stringify({ wanted, names, numbers } satisfies Expectation);
}

/** The expectation in an error text that `expecting` made. */
export function expectationIn(message: string): Expectation {
  assert(message.startsWith('{'), 'Every schema says what it expects', { message });
  return JSON.parse(message) as Expectation;
}
