import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { builtApp, chromiumPath, eachKindOfBlank, eachScreen, hasChromium } from './appPage.ts';

/* The page in the language that nobody speaks: whatever can still be read in English is not in the catalogue. */

const example = readFileSync('examples/kite-day.card.json', 'utf8');
const kit = readFileSync('examples/autumn-afternoon.kit.json', 'utf8');

/** What may stand unmarked in any message: names, the person's own words that were filled in, and signs of units. */
const filledIn = new Set([
  ...[...`${example}${kit}`.matchAll(/"(?:title|name|kind)": "([^"]*)"/gu)].flatMap(([, words]) =>
    words!.split(/[^A-Za-z]+/u),
  ),
  'Cardwright',
  'x',
  'in',
  'mm',
  'cm',
  'g',
  'm',
  'JSON',
  'PDF',
  'SVG',
  // Times of the clock, which the browser writes.
  'AM',
  'PM',
  ...Array.from({ length: 7 }, (_, day) =>
    new Date(2026, 0, 1 + day).toLocaleDateString('en-US', { weekday: 'long' }),
  ),
]);

/** The texts of the page that are plain English and say nothing of it: neither a library's nor the person's words. */
async function unmarked(page: Page): Promise<readonly string[]> {
  const texts = await page.evaluate(() => {
    const isTold = (element: Element) => {
      const language = element.closest('[lang]');
      if (language !== null && language !== document.documentElement) return true;
      return element.closest('[translate=no]') !== null;
    };
    const found: string[] = [document.title];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const element = node.parentElement!;
      if (element.closest('script, style, noscript') !== null || !element.checkVisibility()) continue;
      if (!isTold(element)) found.push(node.textContent ?? '');
    }
    const spoken = [
      'aria-label',
      'aria-description',
      'aria-roledescription',
      'aria-valuetext',
      'title',
      'alt',
      'placeholder',
    ];
    for (const name of spoken) {
      for (const element of document.body.querySelectorAll(`[${name}]`))
        if (!isTold(element)) found.push(element.getAttribute(name) ?? '');
    }
    return found;
  });
  // A letter by itself names a part in a drawing.
  const isPlain = (text: string) =>
    !/^[A-Z]$/u.test(text) &&
    (text.match(/\p{L}+/gu) ?? []).some((word) => /^[A-Za-z]+$/u.test(word) && !filledIn.has(word));
  return texts.filter(isPlain);
}

describe.skipIf(!hasChromium)(
  `every word of the app's own is in its catalogue (needs ${chromiumPath})`,
  () => {
    const app = builtApp();

    it('on every screen, and in what blanks open onto', async () => {
      const page = await app.page({ pseudo: true });
      const found: string[] = [];
      const seen = new Map<string, Set<string>>();
      await eachScreen(page, example, async (name) => {
        found.push(...(await unmarked(page)).map((text) => `${name}: ${text}`));
        // A screen may be seen in several states, with the same kinds of blanks.
        const screen = (await page.locator('main').getAttribute('data-screen'))!;
        const kinds = seen.get(screen) ?? new Set();
        seen.set(screen, kinds);
        await eachKindOfBlank(page, kinds, async (label) => {
          found.push(...(await unmarked(page)).map((text) => `${name}, ${label}: ${text}`));
        });
      });
      expect(found).toEqual([]);
    }, 120_000);

    it('and a word that is not would be found', async () => {
      const page = await app.page({ pseudo: true });
      await page.evaluate(() => {
        const paragraph = document.createElement('p');
        paragraph.textContent = 'Lay it here';
        paragraph.title = 'Where to lay it';
        document.body.append(paragraph);
      });
      expect(await unmarked(page)).toEqual(expect.arrayContaining(['Lay it here', 'Where to lay it']));
    });
  },
);
