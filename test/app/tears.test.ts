import { mkdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { allOnShelf, builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';

/* Torn edges where the part is: how deep they go in blanks, and below them what comes of it. */

const { card } = english;

const layout = JSON.stringify({
  cardwright: 1,
  title: 'Gum leaves',
  units: 'mm',
  cards: 12,
  base: { size: ['148 mm', '105 mm'], fold: 'top', paper: 'cream' },
  papers: {
    cream: { name: 'Cream', sheets: [{ size: ['210', '297'], count: null }] },
    gum: { name: 'Gum', sheets: [{ size: ['305', '305'], count: null }] },
  },
  parts: [
    { id: 'band', name: 'Band', size: ['142 mm', '9 mm'], place: { top: '65 mm' }, paper: 'cream' },
    {
      id: 'leaf',
      name: 'Leaf',
      size: ['142 mm', '72 mm'],
      place: { top: '3 mm' },
      torn: { bottom: '8 mm' },
      paper: 'gum',
    },
  ],
});

describe.skipIf(!hasChromium)('torn edges on the card’s screen (needs chromium)', () => {
  const app = builtApp();

  it('have their depths in blanks, and what comes of them is said anew with each', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, layout);
    await openLayout(page, id, 'card');
    await page.getByRole('button', { name: 'Leaf' }).first().click();
    const words = page.locator('.tear-words');
    const most = page.getByRole('button', { name: card.tear.labels.most });
    expect(await most.textContent()).toContain('10');
    expect(await words.textContent()).toContain('At the deepest tear nothing of that is left.');
    // Drawn where they would be: 2 mm out and 2 mm in from the edge as it is reckoned, in points.
    const heightOf = async (how: string) =>
      Number(/^M\S+ (\S+)h/u.exec((await page.locator(`.tear-${how}`).getAttribute('d')) ?? '')?.[1]);
    const between = (await heightOf('least')) - (await heightOf('most'));
    expect(between).toBeCloseTo(((10 - 6) / 25.4) * 72, 6);

    await most.click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('12');
    await page.keyboard.press('Enter');
    await words.getByText('A deeper tear lets').waitFor();
    expect(await words.textContent()).toMatch(/2\smm of it at the worst/u);
    expect(await words.textContent()).toMatch(/That happens on 1 card in \d+; with 12 cards, that is /u);
    await page.locator('[data-saving=saved]').waitFor();
    const [kept] = await allOnShelf(page);
    expect(JSON.parse(kept!.text)).toMatchObject({ parts: [{}, { tear: { most: '12 mm' } }] });
    if (process.env.LOOK !== undefined) {
      mkdirSync(process.env.LOOK, { recursive: true });
      await page.screenshot({ path: `${process.env.LOOK}/tears.png`, fullPage: true });
    }
  });

  it('say no more of tears once nothing is torn', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, layout.replace('"torn":', '"tear":{"core":"2 mm"},"torn":'));
    await openLayout(page, id, 'card');
    await page.getByRole('button', { name: 'Leaf' }).first().click();
    await page.locator('.tear-words').getByText('about 2 mm broad').waitFor();
    await page.getByRole('button', { name: card.blanks.torn(card.torn.edges.bottom) }).click();
    await page.getByRole('button', { name: card.torn.leave }).click();
    await page.locator('.tear-words').waitFor({ state: 'detached' });
    await page.locator('[data-saving=saved]').waitFor();
    const [kept] = await allOnShelf(page);
    const { parts } = JSON.parse(kept!.text) as { parts: readonly object[] };
    expect(Object.keys(parts[1]!)).not.toContain('tear');
  });
});
