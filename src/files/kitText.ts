import stringify from 'json-stringify-pretty-compact';
import type { JsonObject } from './json.ts';

/** A kit file as it was read, to be written again: every field as it was typed, with the `x-` fields of other tools. */
export type SavedKit = JsonObject;

/** The text of a kit file, as `writeLayoutFile` writes a layout. */
export function writeKitFile(file: SavedKit): string {
  return `${stringify(file, { indent: 2, maxLength: 100 })}\n`;
}
