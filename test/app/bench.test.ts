import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { addressOf } from '../../apps/web/route.ts';
import { builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';

/* A set made at the bench, a line at a time. */

const { bench } = english;

const lanterns = JSON.stringify({
  cardwright: 1,
  title: 'Lanterns',
  units: 'in',
  cards: 6,
  base: { size: ['4 1/4 in', '5 1/2 in'], fold: 'left', paper: 'cream' },
  papers: {
    cream: { name: 'Cream', sheets: [{ size: ['8 1/2 in', '11 in'], count: 6 }] },
    dusk: { name: 'Dusk', colour: '#4a4a7a', sheets: [{ size: ['12 in', '12 in'], count: 3 }] },
  },
  parts: [
    { id: 'mat', name: 'Mat', inset: '1/8 in', paper: 'dusk' },
    { id: 'panel', name: 'Panel', on: 'mat', size: ['3 in', '3 in'], paper: 'dusk' },
  ],
});

describe.skipIf(!hasChromium)('the bench (needs chromium)', () => {
  const app = builtApp();
  const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
  const stands = (page: Page) => page.locator('.docket-strip > .stands').textContent();
  const isKept = (page: Page) =>
    page.waitForFunction(() => document.querySelector<HTMLElement>('.docket-strip')?.dataset.kept === 'true');

  async function begun(page: Page): Promise<string> {
    const id = await layOnShelf(page, lanterns);
    await openLayout(page, id, 'bench');
    await button(page, bench.begin).click();
    await page.locator('.present-line').waitFor();
    return id;
  }

  it('goes through a set from the first cut to the last part, and keeps every tick', async () => {
    const page = await app.page({ widthPx: 820 });
    await begun(page);
    const lines = await page.locator('.done-lines li').count();
    expect(lines).toBe(0);
    const heard: string[] = [];
    for (let line = 0; line < 60 && (await button(page, bench.done).count()) > 0; line += 1) {
      heard.push((await page.locator('.present-line h3').textContent())!);
      await button(page, bench.done).click();
      // Every few lines the page is closed and opened again.
      if (line % 3 === 1) {
        await isKept(page);
        const before = await stands(page);
        await page.reload();
        await page.locator('.docket-strip').waitFor();
        expect(await stands(page)).toBe(before);
      }
    }
    expect(await stands(page)).toBe(bench.allDone);
    expect(heard[0]).toMatch(/^Step 1 Set /u);
    expect(heard.slice(-3)).toEqual([bench.scoring, 'Mat', 'Panel']);
    // What was noted last can be taken back, one after another.
    await button(page, bench.takeBack).click();
    expect(await page.locator('.present-line h3').textContent()).toBe('Panel');
  });

  it('plans the rest again from the table when a piece is spoiled', async () => {
    const page = await app.page({ widthPx: 820 });
    await begun(page);
    const finished = page.getByRole('button', { name: /^Mat, .*there: / });
    for (let line = 0; line < 30; line += 1) {
      await button(page, bench.done).click();
      await button(page, bench.spoiled).click();
      if ((await finished.count()) > 0) break;
      await button(page, bench.spoil.notAfterAll).click();
    }
    await finished.first().click();
    await page.getByText('1 piece for Mat is spoiled').waitFor();
    // It is all there after the page was closed in between.
    await isKept(page);
    await page.reload();
    await page.getByText('1 piece for Mat is spoiled').waitFor();
    await button(page, bench.spoil.goOn).click();
    await page.locator('.present-line').waitFor();
    for (let line = 0; line < 60 && (await button(page, bench.done).count()) > 0; line += 1)
      await button(page, bench.done).click();
    expect(await stands(page)).toBe(bench.allDone);
  });

  it('says where a sheet that is spoiled would cost cards', async () => {
    const page = await app.page({ widthPx: 820 });
    const lantern = readFileSync('examples/lantern-walk.card.json', 'utf8');
    await openLayout(page, await layOnShelf(page, lantern), 'bench');
    await button(page, bench.begin).click();
    await button(page, bench.done).click();
    // As README shows it of the same set.
    await page
      .locator('.present-line')
      .getByText('Point of no return: a sheet spoiled here is 2 cards fewer.')
      .waitFor();
  });

  it('takes a double tap, or a key that is held down, for one line', async () => {
    const page = await app.page({ widthPx: 820 });
    await begun(page);
    await button(page, bench.done).dblclick();
    await isKept(page);
    expect(await page.locator('.done-lines li').count()).toBe(1);
    await button(page, bench.done).focus();
    for (let held = 0; held < 4; held += 1) await page.keyboard.down('Enter');
    await page.keyboard.up('Enter');
    await isKept(page);
    expect(await page.locator('.done-lines li').count()).toBe(2);
  });

  it('draws how a part is put on, in type as large as is chosen, and nothing where it is cut', async () => {
    const page = await app.page({ widthPx: 820 });
    await begun(page);
    expect(await page.locator('.present-line .assembly-plate').count()).toBe(0);
    for (let line = 0; line < 60; line += 1) {
      if ((await page.locator('.present-line h3').textContent()) === 'Panel') break;
      await button(page, bench.done).click();
    }
    const plate = page
      .locator('.present-line')
      .getByRole('img', { name: 'C turned over, with what holds it; and C on B, seen from the front.' });
    await plate.waitFor();
    const typePx = () =>
      plate
        .locator('text')
        .evaluateAll((texts) => Math.min(...texts.map((text) => text.getBoundingClientRect().height)));
    const usual = await typePx();
    await page.getByRole('button', { name: bench.type }).click();
    await page.getByLabel(bench.types.larger).click();
    await expect.poll(typePx).toBeGreaterThan(usual * 1.4);
    if (process.env.LOOK !== undefined)
      await page.screenshot({ path: `${process.env.LOOK}/bench-plate.png`, fullPage: true });
  });

  it('is worked by keys alone, and is in type as large as is wanted', async () => {
    const page = await app.page({ widthPx: 820 });
    await begun(page);
    await button(page, bench.done).focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('Enter');
    expect(await page.locator('.done-lines li').count()).toBe(2);
    const sizePx = () =>
      page
        .locator('.present-line h3')
        .evaluate((heading) => Number.parseFloat(getComputedStyle(heading).fontSize));
    // A letter then stands some 6 mm high on a tablet: read from a yard away by who reads 20/40 (common practice, no
    // source).
    expect(await sizePx()).toBeGreaterThanOrEqual(36);
    await page.getByRole('button', { name: bench.type }).click();
    await page.getByLabel(bench.types.larger).click();
    expect(await sizePx()).toBeGreaterThanOrEqual(60);
  });

  it('goes on as it was begun when the layout is changed, and is begun anew only when that is wanted', async () => {
    const page = await app.page({ widthPx: 820 });
    const id = await begun(page);
    await button(page, bench.done).click();
    await openLayout(page, id, 'card');
    await page.getByRole('button', { name: english.card.blanks.cards }).click();
    await page.keyboard.type('4');
    await page.keyboard.press('Enter');
    await openLayout(page, id, 'bench');
    await page.getByText(bench.changedSince).waitFor();
    expect(await page.locator('.done-lines li').count()).toBe(1);
    await button(page, bench.beginAnew).click();
    await button(page, bench.keep).click();
    await button(page, bench.beginAnew).click();
    await button(page, bench.anew).click();
    await page.getByText(bench.changedSince).waitFor({ state: 'detached' });
    expect(await page.locator('.done-lines li').count()).toBe(0);
  });

  it('says what is not noted because another window was first, and each window stands as the other does', async () => {
    const first = await app.page({ widthPx: 820 });
    const id = await begun(first);
    const second = await first.context().newPage();
    await second.goto(`${app.address()}${addressOf({ screen: 'bench', id })}`);
    await second.locator('.present-line').waitFor();
    await button(first, bench.done).click();
    // The other window hears of it by itself.
    await second.getByText(bench.elsewhere).waitFor();
    expect(await stands(second)).toBe(await stands(first));
    // One that hears no news does not know what was noted last.
    const deaf = await first.context().newPage();
    await deaf.addInitScript(() => Reflect.deleteProperty(window, 'BroadcastChannel'));
    await deaf.goto(`${app.address()}${addressOf({ screen: 'bench', id })}`);
    await deaf.locator('.present-line').waitFor();
    await button(first, bench.done).click();
    await isKept(first);
    await button(deaf, bench.takeBack).click();
    await deaf.getByRole('alert').getByText(bench.notNoted.what['taken back']).waitFor();
    expect(await stands(deaf)).toBe(await stands(first));
    await button(deaf, bench.takeBack).click();
    await deaf.getByRole('alert').waitFor({ state: 'detached' });
    expect(await deaf.locator('.done-lines li').count()).toBe(1);
  });

  it('says which trimmer a set is cut with, also where that is said in another window', async () => {
    const page = await app.page({ widthPx: 820 });
    const id = await layOnShelf(page, lanterns);
    await openLayout(page, id, 'bench');
    await page.getByText(bench.cutBy.none).waitFor();
    const other = await page.context().newPage();
    await other.goto(`${app.address()}${addressOf({ screen: 'trimming', id })}`);
    await other.getByText(english.trimming.trimmer.heading, { exact: true }).click();
    await button(other, english.trimming.trimmer.say).click();
    // Both windows plan for it at once.
    await page.getByText(bench.cutBy.none).waitFor({ state: 'detached' });
    await button(page, bench.begin).click();
    await page.locator('.present-line').waitFor();
    await page.getByText(bench.cutBy.unnamed.slice(0, -1)).waitFor();
    // One who says otherwise in the middle of it is told that the set goes on as it was begun.
    await button(other, english.trimming.trimmer.layAside).click();
    await page.getByText(bench.trimmerSince).waitFor();
    await button(page, bench.done).click();
    expect(await page.locator('.done-lines li').count()).toBe(1);
  });
});
