/**
 * The id of a part of a workpiece: `meadow-1` gives `meadow-1a`, `meadow-1b` …, and `meadow-1a` gives
 * `meadow-1a1`, `meadow-1a2` ….
 *
 * A letter follows a digit and a number anything else, so that the parts of one sheet never share an id.
 * `index` counts from 0; after `z` come `aa`, `ab` ….
 */
export function partName(whole: string, index: number): string {
  return /\d$/.test(whole) ? whole + letters(index) : whole + String(index + 1);
}

function letters(index: number): string {
  const last = String.fromCharCode('a'.charCodeAt(0) + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}
