import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';
import { blank, choose, kept, type } from './blanks.ts';

/* Folds of several panels are said on the card’s screen, drawn there, and answered. */

const { card } = english;

const layout = `${JSON.stringify({
  cardwright: 1,
  title: 'Garden gate',
  units: 'in',
  cards: 6,
  base: { size: ['4 1/4 in', '5 1/2 in'], fold: 'gate', paper: 'oat' },
  papers: {
    oat: { name: 'Oat', gsm: 270, colour: '#e9dcc0', sheets: [{ size: ['12 in', '18 in'], count: null }] },
    fern: { name: 'Fern', gsm: 160, colour: '#9db58a', sheets: [{ size: ['12 in', '12 in'], count: null }] },
  },
  parts: [
    {
      id: 'left',
      name: 'Left panel',
      size: ['1 7/8 in', '5 1/4 in'],
      place: { left: '1/8 in' },
      paper: 'fern',
    },
    {
      id: 'right',
      name: 'Right panel',
      size: ['1 7/8 in', '5 1/4 in'],
      place: { right: '1/8 in' },
      paper: 'fern',
    },
    { id: 'greeting', name: 'Greeting', on: 'inside', inset: '1/4 in', paper: 'fern' },
  ],
})}\n`;

describe.skipIf(!hasChromium)('the card’s screen (needs chromium)', () => {
  const app = builtApp();

  it('opens a gate to both sides, and takes another fold with what belongs to it', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    const id = await layOnShelf(page, layout);
    await openLayout(page, id, 'card');
    await look(page, 'gate');
    // Both doors turn about an outer edge.
    expect(await page.locator('.card-picture .fold-line').count()).toBe(2);
    const closed = await widthOf(page);
    await page.getByRole('button', { name: card.table.open }).click();
    await page.getByRole('button', { name: card.table.close }).waitFor();
    expect(await page.locator('.card-picture .fold-line').count()).toBe(2);
    // Two doors of 2 1/8 in beside 4 1/4 in.
    expect((await widthOf(page)) - closed).toBeCloseTo(4.25 * 72, 6);
    await look(page, 'gate open');

    await choose(page, card.blanks.fold, card.folds.shutter);
    expect(await page.locator('.card-picture .fold-line').count()).toBe(4);
    await choose(page, card.folding.way, card.folding.ways.upwards);
    await look(page, 'shutter open upwards');
    await choose(page, card.blanks.fold, card.folds.roll);
    await type(page, card.folding.allowance, '1/8');
    await look(page, 'roll open');
    await page
      .locator('.docket-of-set')
      .getByText(/1⁄8.in narrower/u)
      .waitFor({ state: 'attached' });
    await page.locator('[data-saving=saved]').waitFor();
    expect(JSON.parse(await kept(page))).toMatchObject({
      base: { fold: 'roll', opens: 'upwards', allowance: '1/8 in' },
    });

    // What a side fold has not goes, so that the file never refuses it.
    await choose(page, card.blanks.fold, card.folds.left);
    await page.locator('[data-saving=saved]').waitFor();
    expect(Object.keys((JSON.parse(await kept(page)) as { base: object }).base)).toEqual([
      'size',
      'fold',
      'paper',
    ]);
    await page.getByRole('button', { name: english.general.undoes('') }).click();
    await blank(page, card.folding.allowance).waitFor();
  });

  it('loses nothing where one fold after another is tried by the keys', async () => {
    const page = await app.page();
    const rolled = JSON.parse(layout) as { base: object };
    rolled.base = { ...rolled.base, fold: 'roll', opens: 'upwards', allowance: '3/32 in' };
    const id = await layOnShelf(page, JSON.stringify(rolled));
    await openLayout(page, id, 'card');
    await blank(page, card.blanks.fold).focus();
    await page.keyboard.press('Enter');
    await page.locator('input[type=radio]:checked:focus').waitFor();
    const back = ['trifold', 'shutter', 'gate', 'top'] as const;
    for (const kind of back) {
      await page.keyboard.press('ArrowUp');
      await blank(page, card.blanks.fold).getByText(card.folds[kind], { exact: true }).waitFor();
    }
    for (const _ of back) await page.keyboard.press('ArrowDown');
    await blank(page, card.blanks.fold).getByText(card.folds.roll, { exact: true }).waitFor();
    await page.keyboard.press('Enter');
    await page.locator('[data-saving=saved]').waitFor();
    expect(JSON.parse(await kept(page))).toEqual(rolled);
  });
});

async function widthOf(page: Page): Promise<number> {
  const box = await page.locator('.card-picture').getAttribute('viewBox');
  return Number(box!.split(' ')[2]);
}

async function look(page: Page, name: string): Promise<void> {
  if (process.env.LOOK === undefined) return;
  mkdirSync(process.env.LOOK, { recursive: true });
  await page.screenshot({ path: `${process.env.LOOK}/${name}.png`, fullPage: true });
}
