import { mkdirSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { builtApp, hasChromium, layOnShelf } from './appPage.ts';
import { choose, type } from './blanks.ts';

/* A class of fourteen: bags, two more seats, what is short and the offers that are taken, a size that is refused. */

const { kit } = english;
const file = 'examples/autumn-afternoon.kit.json';
const lanterns = readFileSync('examples/lantern-walk.card.json', 'utf8');
const tin = readFileSync('examples/button-tin.card.json', 'utf8');

/** When the kit is planned and everything is on the disk. */
async function isDone(page: Page): Promise<void> {
  await page.locator('.stands[data-stage=done]').waitFor({ timeout: 120_000 });
  await page.locator('[data-saving=saved]').waitFor();
}

/** All words of the page, fractions as they are typed. */
async function toldOn(page: Page): Promise<string> {
  const text = (await page.locator('main').textContent()) ?? '';
  return text.replaceAll('\u2044', '/').replaceAll(/\s+/gu, ' ');
}

async function look(page: Page, name: string): Promise<void> {
  if (process.env.LOOK === undefined) return;
  mkdirSync(process.env.LOOK, { recursive: true });
  await page.screenshot({ path: `${process.env.LOOK}/kit-${name}.png`, fullPage: true });
}

describe.skipIf(!hasChromium)('kits (needs chromium)', () => {
  const app = builtApp();

  it('opens from its file, tells what is short for two more seats, and is filled by offers', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await page.locator('input[type=file]').first().setInputFiles(file);
    await page.getByRole('heading', { name: 'Autumn afternoon', level: 1 }).waitFor();
    await isDone(page);
    const text = () => toldOn(page);
    expect(await text()).toContain('16 kits: 14 seats, one for the teacher and one spare');
    expect(await text()).toContain('Every bag: 19 pieces of paper, 3 envelopes');
    expect(await text()).toContain('304 cut pieces in all and 48 envelopes.');
    await look(page, 'filled');

    await type(page, kit.labels.seats, '16');
    await page.getByRole('heading', { name: kit.headings.short }).waitFor({ timeout: 120_000 });
    await isDone(page);
    expect(await page.locator('.undo button').allTextContents()).toEqual([
      english.general.undoes('16 seats'),
    ]);
    expect(await text()).toContain('Acorns print is short: 2 of the 18 pieces for Panel (Acorn window)');
    expect(await text()).toContain('Furrows print is short: 2 of the 18 pieces for Strip (Field path)');
    expect(await text()).toContain(kit.guideShort);
    await look(page, 'short');
    const offer = (says: string | RegExp) =>
      page.locator('.offers li').filter({ hasText: says }).first().getByRole('button');
    await offer('Straw print, from which nothing else is cut, stands in for Acorns print').click();
    await isDone(page);
    expect(await text()).not.toContain('Acorns print is short');
    await offer(/Strip is then 1.1.8\s×\s5.1.4/u).click();
    await isDone(page);
    expect(await page.getByRole('heading', { name: kit.headings.short }).count()).toBe(0);
    expect(await text()).toContain('Bags 17 and 18: 19 pieces of paper');
    expect(await text()).toContain('342 cut pieces in all and 54 envelopes.');

    // What was done is there after the page is loaded again, and can be undone.
    await page.reload();
    await isDone(page);
    expect(await text()).toContain('342 cut pieces in all');
    await page.locator('.undo button').first().click();
    await page.getByRole('heading', { name: kit.headings.short }).waitFor({ timeout: 120_000 });
    await page.getByTitle(english.general.redo).click();
    await isDone(page);
    expect(await page.getByRole('heading', { name: kit.headings.short }).count()).toBe(0);

    // Sheets are counted, and are again as many as needed.
    const rust = page.locator('main button.blank').filter({ hasText: 'Sheets of Rust cardstock' });
    await rust.click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('1');
    await page.keyboard.press('Enter');
    await page
      .getByText(/Rust cardstock is short/u)
      .first()
      .waitFor({ timeout: 120_000 });
    await isDone(page);
    await rust.click();
    await page.getByRole('button', { name: english.papers.boughtAsNeeded }).click();
    await isDone(page);
    expect(await text()).not.toContain('Rust cardstock is short');

    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: kit.save, exact: true }).click();
    expect((await saved).suggestedFilename()).toBe('autumn-afternoon.pdf');
    await page.getByText('Saved autumn-afternoon.pdf').waitFor();
  });

  it('refuses a strip whose mat would be taller than the card', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await page.getByRole('button', { name: 'Take a copy of Autumn afternoon' }).click();
    await isDone(page);
    const own = page.getByRole('region', { name: kit.headings.lengths });
    await choose(page, kit.labels.layout, 'Field path');
    await choose(page, kit.labels.part, 'Strip');
    await choose(page, kit.labels.length, 'height');
    await type(page, kit.labels.to, '5 3/4');
    await own.getByRole('button', { name: kit.set }).click();
    await own.getByText('Field path: Mat is 6 in high').waitFor();
    await look(page, 'refused');
    expect(await page.locator('.undo button').count()).toBe(0);
  });

  it('is begun from layouts on the shelf, goes to the bin and comes back', async () => {
    const page = await app.page({ widthPx: 390, heightPx: 844 });
    await layOnShelf(page, lanterns);
    await layOnShelf(page, tin);
    await page.reload();
    const shelf = page.getByRole('region', { name: kit.onShelf.heading });
    await shelf.getByRole('checkbox', { name: 'Lantern walk' }).check();
    await shelf.getByRole('checkbox', { name: 'Button tin' }).check();
    await shelf.getByRole('button', { name: kit.onShelf.go }).click();
    await page.getByRole('heading', { name: kit.onShelf.title, level: 1 }).waitFor();
    await page.locator('.stands[data-stage=done]').waitFor({ timeout: 120_000 });
    expect(await toldOn(page)).toContain('12 kits: twelve seats');
    await look(page, 'begun');
    await page.goBack();
    await shelf.getByRole('button', { name: `${kit.onShelf.toBin}: ${kit.onShelf.title}` }).click();
    await shelf.getByRole('button', { name: `Put ${kit.onShelf.title} back on the shelf` }).click();
    await shelf.getByRole('link', { name: `Open ${kit.onShelf.title}` }).waitFor();
    const zip = page.waitForEvent('download');
    await page.getByRole('button', { name: english.shelf.files.saveAll }).click();
    const path = await (await zip).path();
    const other = await app.page();
    await other
      .locator('input[type=file]')
      .first()
      .setInputFiles({
        name: 'shelf.zip',
        mimeType: 'application/zip',
        buffer: readFileSync(path),
      });
    await other.getByRole('link', { name: `Open ${kit.onShelf.title}` }).waitFor();
  });
});
