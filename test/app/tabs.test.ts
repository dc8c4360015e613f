import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { addressOf } from '../../apps/web/route.ts';
import { builtApp, hasChromium, layOnShelf } from './appPage.ts';

/* Several windows on one layout: nobody's work overwrites another's. */

const { card: words, general } = english;

const layout = JSON.stringify({
  cardwright: 1,
  title: 'Harbour lamps',
  units: 'mm',
  cards: 4,
  base: { size: ['105 mm', '148 mm'], fold: 'left', paper: 'sand' },
  papers: { sand: { name: 'Sand', sheets: [{ size: ['210 mm', '297 mm'], count: null }] } },
  parts: [{ id: 'panel', name: 'Panel', inset: '3 mm', paper: 'sand' }],
});

async function setCards(page: Page, cards: number): Promise<void> {
  await page.getByRole('button', { name: words.blanks.cards }).click();
  const blank = page.getByRole('textbox', { name: words.blanks.cards });
  await blank.fill(String(cards));
  await blank.press('Enter');
}

/** How many cards each layout on the shelf has, and whether it is a second version, as the shelf tells it. */
async function onShelf(page: Page): Promise<readonly string[]> {
  await page.goto(new URL(addressOf({ screen: 'shelf' }), page.url()).href);
  await page
    .getByText(/\d cards, 105/)
    .first()
    .waitFor();
  return (await page.getByText(/\d cards, 105/).allTextContents()).map((text) => text.split(',')[0]!).sort();
}

describe.skipIf(!hasChromium)('several windows on one layout (needs chromium)', { retry: 0 }, () => {
  const app = builtApp();

  it('keep a version each, and none overwrites another', async () => {
    const first = await app.page();
    const id = await layOnShelf(first, layout);
    const pages = [first];
    while (pages.length < 4) pages.push(await first.context().newPage());
    for (const page of pages) {
      await page.goto(`${app.address()}${addressOf({ screen: 'card', id })}`);
      await page.locator('[data-stage=answered]').waitFor();
    }
    for (const [index, page] of pages.entries()) {
      await page.bringToFront();
      await setCards(page, 10 + index);
      // The first to save has the layout; each that comes later goes on in a version of its own, and says so.
      if (index > 0) await page.getByText(general.saving.beside).waitFor();
    }
    for (const [index, page] of pages.entries()) {
      await page.bringToFront();
      await setCards(page, 20 + index);
      // A step is on the disk a moment after it was done; a page that is left sooner asks whether to stay.
      await page.locator('.head[data-saving=saved]').waitFor();
      await page.reload();
      await page.locator('[data-stage=answered]').waitFor();
      expect(await page.locator('.stands').textContent()).toContain(`${20 + index} cards`);
    }
    expect(await onShelf(first)).toEqual(pages.map((_, index) => `${20 + index} cards`));
  });
});
