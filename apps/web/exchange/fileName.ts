import type { SavedLayout } from '../../../src/files/index.ts';

/** What a layout's file is called, safe on every system: `kite-day.card.json`. */
export function fileNameOf(file: SavedLayout): string {
  return `${stemOf(typeof file.title === 'string' ? file.title : '')}.card.json`;
}

/** A title as the beginning of a file's name: small letters, digits and dashes, never empty. */
export function stemOf(title: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/gu, '')
    .slice(0, 60);
  return plain === '' ? 'cards' : plain;
}
