import { useSyncExternalStore } from 'react';
import type { Typeface } from '../../../src/drawing/index.ts';

/**
 * The measures of the page's own type, so that drawings are laid out here without the code that prints them.
 *
 * A page shows every character somehow, borrowing from other fonts, so it `has` them all. Before the fonts are
 * there it measures those that stand in; `useTypeface` gives a new one then.
 */
export function pageTypeface(): Typeface {
  const pen = document.createElement('canvas').getContext('2d');
  const widths = new Map<string, number>();
  return {
    widthPt(text, sizePt, weight) {
      const key = `${weight} ${text}`;
      let width = widths.get(key);
      if (width === undefined) {
        if (pen !== null) pen.font = `${weight === 'semibold' ? 600 : 400} ${measuredPx}px ${family}`;
        width = (pen?.measureText(text).width ?? 0) / measuredPx;
        if (widths.size >= mostKept) widths.clear();
        widths.set(key, width);
      }
      return width * sizePt;
    },
    has: () => true,
    capHeight: 0.66,
  };
}

/** The page's type, anew when its fonts have come. */
export function useTypeface(): Typeface {
  return useSyncExternalStore(listen, present);
}

/** Large, so that no browser rounds the advances of small type. */
const measuredPx = 100;
const family = '"Source Sans 3", "Noto Sans", "DejaVu Sans", Arial, sans-serif';
const mostKept = 5_000;

let typeface: Typeface | null = null;

function present(): Typeface {
  typeface ??= pageTypeface();
  return typeface;
}

const heard = new Set<() => void>();

function listen(changed: () => void): () => void {
  if (heard.size === 0) {
    document.fonts.addEventListener('loadingdone', fontsCame);
    // A canvas does not ask for the fonts it is set in, and nothing on the page may be in the heavier one yet.
    for (const weight of [400, 600]) void document.fonts.load(`${weight} 17px "Source Sans 3"`);
  }
  heard.add(changed);
  return () => {
    heard.delete(changed);
    if (heard.size === 0) document.fonts.removeEventListener('loadingdone', fontsCame);
  };
}

function fontsCame(): void {
  typeface = null;
  for (const changed of heard) changed();
}
