import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';
import { choose, kept, type } from './blanks.ts';

/* What is left over: what it could still give, and back into the stash with it. */

const { papers, card, bench, general } = english;

interface Sheet {
  readonly size: readonly string[];
  readonly count: number | null;
  readonly scrap?: boolean;
}

interface Kept {
  readonly papers: { readonly plum: { readonly sheets: readonly Sheet[] } };
  readonly parts: readonly { readonly id: string; readonly from?: string }[];
  readonly extras?: readonly { readonly name: string; readonly count: number }[];
}

/** Two mats of 4 x 5 come of a sheet of 8 x 8 in, which leaves 8 x 3 in. */
const plumTags = JSON.stringify({
  cardwright: 1,
  title: 'Plum tags',
  units: 'in',
  cards: 2,
  base: { size: ['4 1/4', '5 1/2'], fold: 'none', paper: null },
  papers: { plum: { name: 'Plum', up: 'two-way', sheets: [{ size: ['8', '8'], count: 3 }] } },
  extras: [{ name: 'Gift tag', size: ['1 1/2', '3'], count: 2 }],
  parts: [{ id: 'mat', name: 'Mat', size: ['4', '5'], paper: 'plum' }],
});

async function saved(page: Page): Promise<Kept> {
  await page.locator('[data-saving=saved]').waitFor();
  return JSON.parse(await kept(page)) as Kept;
}

describe.skipIf(!hasChromium)('leftovers (needs chromium)', () => {
  const app = builtApp();

  it('are told with what they give, and go back into the stash in one step that can be undone', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await openLayout(page, await layOnShelf(page, plumTags), 'papers');
    const own = page.locator('.from-leftovers');
    await own.getByText('Gift tag: two, from what is left of Plum').waitFor();
    // Three inches of the strip of eight are tags, and five by three remain.
    await own.getByText('Back into the stash: one scrap of Plum, 5 × 3 in.').waitFor();
    if (process.env.LOOK !== undefined) {
      mkdirSync(process.env.LOOK, { recursive: true });
      await own.screenshot({ path: `${process.env.LOOK}/leftovers.png` });
    }
    await own.getByRole('button', { name: papers.leftovers.restock }).click();
    await page.getByRole('button', { name: general.undoes('The sheets that were cut') }).waitFor();
    const after = await saved(page);
    expect(after.papers.plum.sheets).toEqual([
      { size: ['8', '8'], count: 2 },
      { size: ['5 in', '3 in'], count: 1, scrap: true },
    ]);
    await page.getByRole('button', { name: general.undoes('') }).click();
    expect((await saved(page)).papers.plum.sheets).toEqual([{ size: ['8', '8'], count: 3 }]);
  });

  it('may be wanted for something else, and a part may be cut from them', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await openLayout(page, await layOnShelf(page, plumTags), 'papers');
    const own = page.locator('.from-leftovers');
    await own.getByRole('button', { name: papers.leftovers.extras.add }).click();
    await own.locator('.extras li').nth(1).waitFor();
    const counts = await saved(page);
    expect(counts.extras).toHaveLength(2);
    await own
      .getByRole('button', { name: papers.leftovers.extras.takeNamed('Gift tag') })
      .first()
      .click();
    await own.locator('.extras li').nth(1).waitFor({ state: 'detached' });
    await type(page, papers.leftovers.extras.labels.count, '3');
    expect((await saved(page)).extras?.[0]?.count).toBe(3);

    await page.getByRole('link', { name: general.screens.card }).click();
    await page.locator('.pile-list').getByRole('button', { name: 'Mat', exact: true }).click();
    await choose(page, card.blanks.from, card.from.leftovers);
    expect((await saved(page)).parts[0]?.from).toBe('leftovers');
  });

  it('go back into the stash from the bench when all is done', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await openLayout(page, await layOnShelf(page, plumTags), 'bench');
    await page.getByRole('button', { name: bench.begin }).click();
    const restock = page.getByRole('button', { name: papers.leftovers.restock });
    const next = page.getByRole('button', { name: bench.done, exact: true });
    for (let line = 0; line < 8; line += 1) {
      await next.or(restock).first().waitFor();
      if (await restock.isVisible()) break;
      await next.click();
    }
    await restock.click();
    expect((await saved(page)).papers.plum.sheets).toEqual([
      { size: ['8', '8'], count: 2 },
      { size: ['8 in', '3 in'], count: 1, scrap: true },
    ]);
  });
});
