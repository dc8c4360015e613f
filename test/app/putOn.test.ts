import { mkdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { allOnShelf, builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';

/* How the part in hand is put on: its plate and its words, where the part is. */

const { card } = english;
const lanterns = readFileSync(new URL('../../examples/lantern-walk.card.json', import.meta.url), 'utf8');

describe.skipIf(!hasChromium)('how a part is put on (needs chromium)', () => {
  const app = builtApp();

  it('is drawn and said on the card’s screen, part by part', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await openLayout(page, await layOnShelf(page, lanterns), 'card');
    for (const [name, letters] of [
      ['Moon', 'E turned over, with what holds it; and E on B, seen from the front.'],
      ['Sentiment mat', 'F turned over, with what holds it; and F on B, seen from the front.'],
    ] as const) {
      await page.locator('.pile-list').getByRole('button', { name, exact: true }).click();
      const own = page.locator('.put-on');
      if ((await own.getAttribute('open')) === null) await own.locator('summary').click();
      const plate = own.getByRole('img', { name: letters });
      await plate.waitFor();
      expect(await own.textContent()).toContain('Raise it on foam tape');
      // Its type is no smaller than the least of the page.
      const least = await plate
        .locator('text')
        .evaluateAll((texts) => Math.min(...texts.map((text) => text.getBoundingClientRect().height)));
      expect(least).toBeGreaterThan(14);
      if (process.env.LOOK === undefined) continue;
      mkdirSync(process.env.LOOK, { recursive: true });
      for (const width of [820, 390]) {
        await page.setViewportSize({ width, height: 1180 });
        await page.waitForTimeout(500);
        await own.screenshot({ path: `${process.env.LOOK}/put-on-${name}-${width}.png` });
      }
      await page.setViewportSize({ width: 820, height: 1180 });
    }
  });

  it('can be asked for in another order, and what cannot be is told with its reason', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await openLayout(page, await layOnShelf(page, lanterns), 'card');
    await page.locator('.pile-list').getByRole('button', { name: 'Sentiment', exact: true }).click();
    const own = page.locator('.put-on');
    await own.locator('summary').click();
    await own.getByRole('button', { name: card.pile.sooner }).click();
    // The sentiment can be glued on its mat before that is raised over the card.
    await own.getByRole('button', { name: card.pile.orderFreed }).waitFor();
    await page.locator('[data-saving=saved]').waitFor();
    const order = async () =>
      (JSON.parse((await allOnShelf(page))[0]!.text) as { order?: readonly string[] }).order;
    expect(await order()).toEqual(['mat', 'band', 'panel', 'moon', 'sentiment', 'tag', 'lining']);

    // Nor can the panel be under the band that lies below it.
    await page.locator('.pile-list').getByRole('button', { name: 'Torn panel', exact: true }).click();
    if ((await own.getAttribute('open')) === null) await own.locator('summary').click();
    await own.getByRole('button', { name: card.pile.sooner }).click();
    const refused = page
      .locator('.problems')
      .getByText(/cannot/u)
      .first();
    await refused.waitFor();
    await own.getByRole('button', { name: card.pile.orderFreed }).click();
    await refused.waitFor({ state: 'detached' });
    await page.locator('[data-saving=saved]').waitFor();
    expect(await order()).toBeUndefined();
  });

  it('has what holds it in blanks, and how much to have is said anew with each', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await openLayout(page, await layOnShelf(page, lanterns), 'card');
    const docket = page.locator('.docket-of-set');
    await docket
      .getByText(/Foam tape/u)
      .first()
      .waitFor({ state: 'attached' });
    await page.locator('.holding-form summary').click();
    const blank = (label: string) =>
      page.locator('.holding-form button.blank').filter({ hasText: `${label}: ` });
    await blank(card.holding.labels.kind).last().click();
    await page
      .locator('.opened')
      .getByRole('radio', { name: card.holding.kinds['foam-squares'], exact: true })
      .click();
    await docket
      .getByText(/Foam squares of/u)
      .first()
      .waitFor({ state: 'attached' });
    await blank(card.holding.labels.handle).click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('20');
    await page.keyboard.press('Enter');
    await docket
      .getByText(/after 20 minutes/u)
      .first()
      .waitFor({ state: 'attached' });
    await page.locator('[data-saving=saved]').waitFor();
    const [kept] = await allOnShelf(page);
    expect(JSON.parse(kept!.text)).toMatchObject({
      adhesives: { raised: { kind: 'foam-squares' }, flat: { handle: 20 } },
    });
    if (process.env.LOOK !== undefined)
      await page.locator('.holding-form').screenshot({ path: `${process.env.LOOK}/holding-form.png` });
  });
});
