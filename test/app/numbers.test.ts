import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { allOnShelf, builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';

/* Numbers as they are written where the person is; the file has them as it always does. */

const { card, form, papers } = english;

const layout = JSON.stringify({
  cardwright: 1,
  title: 'Lindenhof',
  units: 'mm',
  cards: 1200,
  base: { size: ['105.5 mm', '148 mm'], fold: 'left', paper: 'ivory' },
  papers: { ivory: { name: 'Ivory', sheets: [{ size: ['210', '297'], count: null, price: '0.35' }] } },
  parts: [],
});

describe.skipIf(!hasChromium)('numbers of a place (needs chromium)', () => {
  const app = builtApp();

  it('have a decimal comma there, shown and typed, and what can be meant in two ways is refused', async () => {
    const page = await app.page({ locale: 'de-DE' });
    const id = await layOnShelf(page, layout);
    await openLayout(page, id, 'card');
    const width = page.getByRole('button', { name: card.blanks.baseWidth });
    expect(await width.textContent()).toContain('105,5');
    expect(await page.getByRole('button', { name: card.blanks.cards }).textContent()).toContain('1.200');
    await width.click();
    await page.keyboard.type('1.205');
    await page.getByText(form.twoWays('1.205')).waitFor();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('104,25');
    await page.keyboard.press('Enter');
    expect(await width.textContent()).toContain('104,25');
    await page.getByRole('button', { name: card.blanks.cards }).click();
    await page.keyboard.type('1.100');
    await page.keyboard.press('Enter');

    await openLayout(page, id, 'papers');
    const price = page.getByRole('button', { name: papers.sheetLabels.price });
    expect(await price.textContent()).toContain(papers.each('0,35'));
    await price.click();
    await page.keyboard.type('0,40');
    await page.keyboard.press('Enter');
    expect(await price.textContent()).toContain(papers.each('0,40'));
    await page.locator('[data-saving=saved]').waitFor();
    const [kept] = await allOnShelf(page);
    expect(JSON.parse(kept!.text)).toMatchObject({
      cards: 1100,
      base: { size: ['104.25 mm', '148 mm'] },
      papers: { ivory: { sheets: [{ price: '0.40' }] } },
    });
  });
});
