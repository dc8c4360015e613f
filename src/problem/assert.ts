/**
 * Throws when `condition` does not hold: our own code is wrong, never the person's input.
 *
 * `values` are shown in the message, so that the failing case can be made again. Nothing in `src/` catches it.
 */
export function assert(
  condition: unknown,
  message: string,
  values: Readonly<Record<string, unknown>> = {},
): asserts condition {
  if (condition) return;
  const shown = Object.entries(values).map(
    ([name, value]) => `${name} = ${JSON.stringify(value) ?? String(value)}`,
  );
  throw new Error(shown.length === 0 ? message : `${message}: ${shown.join(', ')}`);
}
