import type { SavedLayout } from '../../../src/files/index.ts';

/** What a layout's file is called, safe on every system: `kite-day.card.json`. */
export function fileNameOf(file: SavedLayout): string {
  return `${stemOf(typeof file.title === 'string' ? file.title : '')}.card.json`;
}

/** A title as the beginning of a file's name: small letters, digits and dashes, never empty, a name on every system. */
export function stemOf(title: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-');
  // A letter may take four bytes, and a name no more than 255 of them with its ending.
  const short = [...plain].slice(0, 50).join('').replace(/^-|-$/gu, '');
  if (short === '') return 'cards';
  return isDevice.test(short) ? `${short}-cards` : short;
}

/** Names that stand for devices on some systems, whatever their ending. */
const isDevice = /^(?:con|prn|aux|nul|com\d|lpt\d)$/u;
