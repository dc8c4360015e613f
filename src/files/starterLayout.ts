import type { Units } from '../measure/index.ts';
import { type SavedLayout, writeLayoutFile } from './layoutFile.ts';

/** What a new layout begins with. */
export interface StarterOptions {
  readonly units: Units;
  readonly title?: string;
}

/**
 * The text of a small complete layout to start from: ten side-fold cards of the usual size, with a mat, a panel
 * and a strip below it that follow the borders.
 *
 * In inches from letter paper and a 12 in print (4 1/4 x 5 1/2 in), in millimetres from A4 (105 x 148 mm).
 */
export function starterLayout({ units, title = 'Harvest supper' }: StarterOptions): string {
  const { card, border, panelHeight, plain, print } = starters[units];
  const layout: SavedLayout = {
    cardwright: 1,
    title,
    units,
    cards: 10,
    base: { size: card, fold: 'left', paper: 'cream' },
    papers: {
      cream: {
        name: 'Cream cardstock',
        kind: 'cardstock',
        gsm: 270,
        colour: '#f3ead3',
        sheets: [{ size: plain, count: null }],
      },
      russet: {
        name: 'Russet cardstock',
        kind: 'cardstock',
        gsm: 216,
        colour: '#a8583a',
        sheets: [{ size: plain, count: null }],
      },
      orchard: {
        name: 'Orchard print',
        kind: 'patterned',
        gsm: 160,
        colour: '#c9d2a5',
        up: 'one-way',
        sheets: [{ size: print, count: 2 }],
      },
    },
    parts: [
      { id: 'mat', name: 'Mat', on: 'base', inset: border, paper: 'russet' },
      {
        id: 'panel',
        name: 'Panel',
        on: 'mat',
        size: ['fill', panelHeight],
        place: { left: border, right: border, top: border },
        paper: 'orchard',
      },
      {
        id: 'strip',
        name: 'Strip',
        on: 'mat',
        size: ['fill', 'fill'],
        place: { left: border, right: border, below: 'panel', gap: border, bottom: border },
        paper: 'cream',
        adhere: 'raised',
      },
    ],
  };
  return writeLayoutFile(layout);
}

const starters = {
  in: {
    card: ['4 1/4 in', '5 1/2 in'],
    border: '1/8 in',
    panelHeight: '3 3/4 in',
    plain: ['8 1/2 in', '11 in'],
    print: ['12 in', '12 in'],
  },
  mm: {
    card: ['105 mm', '148 mm'],
    border: '3 mm',
    panelHeight: '96 mm',
    plain: ['210 mm', '297 mm'],
    print: ['210 mm', '297 mm'],
  },
} as const;
