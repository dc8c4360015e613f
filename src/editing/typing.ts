import { hasUnit, type Json, writtenLength } from '../files/index.ts';
import type { Layout } from '../layout/index.ts';
import type { Length } from '../measure/index.ts';

/** Writes lengths into a file as its maker types them. */
export type Typing = (length: Length, instead?: Json | undefined) => string;

/**
 * How lengths are typed in this file: with or without the unit as the text does that they stand instead of, or else as
 * most lengths of the file do. Whatever is written is read as the very length.
 */
export function typingOf({ units, typed }: Layout): Typing {
  let bare = 0;
  for (const text of typed.values()) bare += hasUnit(text) ? -1 : 1;
  return (length, instead) => {
    const like = typeof instead === 'string' && instead !== 'fill' ? !hasUnit(instead) : bare > 0;
    return writtenLength(length, units, like);
  };
}
