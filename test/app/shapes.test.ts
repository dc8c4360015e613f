import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';
import { blank, choose, kept, type } from './blanks.ts';

/* What the layout file can say of shapes, foam, envelope and post is said on the card’s screen, and answered there. */

const { card } = english;

const layout = `${JSON.stringify({
  cardwright: 1,
  title: 'River stones',
  units: 'mm',
  cards: 12,
  base: { size: ['148 mm', '105 mm'], fold: 'left', paper: 'cream' },
  papers: {
    cream: { name: 'Cream', gsm: 240, sheets: [{ size: ['210 mm', '297 mm'], count: null }] },
    slate: { name: 'Slate', gsm: 160, sheets: [{ size: ['305 mm', '305 mm'], count: null }] },
  },
  parts: [
    { id: 'panel', name: 'Panel', size: ['120 mm', '80 mm'], paper: 'slate' },
    {
      id: 'tag',
      name: 'Tag',
      on: 'panel',
      size: ['90 mm', '20 mm'],
      place: { left: '10 mm', top: '10 mm' },
      torn: { left: '6 mm' },
      paper: 'cream',
    },
    {
      id: 'pearl',
      name: 'Pearl',
      size: ['8 mm', '8 mm'],
      place: { right: '5 mm', bottom: '5 mm' },
      paper: null,
    },
  ],
})}\n`;

describe.skipIf(!hasChromium)('the card’s screen (needs chromium)', () => {
  const app = builtApp();

  it('says shapes, foam, envelope and post, tells what comes of them, and undoes it all', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    const id = await layOnShelf(page, layout);
    await openLayout(page, id, 'card');
    const before = await kept(page);
    await takeUp(page, 'Tag');

    // Torn edges go with the rectangle; all of it is one thing to undo.
    await choose(page, card.shape.label, card.shape.kinds.banner);
    await blank(page, card.shape.endLabel(card.torn.edges.right))
      .getByText(card.shape.ends.notched)
      .waitFor();
    expect(await blank(page, card.blanks.tornMore).count()).toBe(0);
    await choose(page, card.shape.endLabel(card.torn.edges.left), card.shape.ends.pointed);
    await type(page, card.shape.depth, '8');
    await type(page, card.blanks.margin, '2');
    await choose(page, card.blanks.adhere, card.adhere.raised);
    await type(page, card.blanks.foam, '3');
    // The banner is seen within its margin: 90 mm across from 10 mm leaves 20 mm, and 4 mm more of margin.
    await page
      .locator('.shown-words')
      .getByText(/24.mm on the right/u)
      .waitFor();
    await look(page, 'banner');

    await takeUp(page, 'Panel');
    await choose(page, card.shape.label, card.shape.kinds.rounded);
    await type(page, card.shape.corner, '10');
    await page.locator('.shown-words').getByText(/14.mm/u).first().waitFor();
    await look(page, 'rounded');

    await takeUp(page, 'Pearl');
    await type(page, card.readyMade.thickness, '4');
    await type(page, card.readyMade.grams, '0.3');
    await look(page, 'bought');

    // An envelope that the card does not go into is a problem until it is large enough.
    const problems = page.locator('.problems');
    await choose(page, card.sending.envelope, card.sending.envelopes.own);
    expect(await blank(page, card.sending.width).textContent()).toContain('162');
    expect(await blank(page, card.sending.name).textContent()).toContain('C6');
    await choose(page, card.sending.post, card.sending.posts.de);
    await type(page, card.sending.width, '140');
    await problems.getByText('The envelope is too small').waitFor();
    // What is sold as C6 is of another size.
    await blank(page, card.sending.name).getByText(card.sending.nameless).waitFor();
    await look(page, 'small envelope');
    // One that does is to be had with a tap, and the tap can be undone.
    await problems
      .getByRole('button', { name: /put in the envelope C6/u })
      .first()
      .click();
    await problems.getByText('The envelope is too small').waitFor({ state: 'detached' });
    await blank(page, card.sending.name).getByText('C6').waitFor();
    await page.getByRole('button', { name: /^Undo/u }).first().click();
    await problems.getByText('The envelope is too small').waitFor();
    await type(page, card.sending.width, '190');
    await type(page, card.sending.height, '130');
    await problems.getByText('The envelope is too small').waitFor({ state: 'detached' });
    const docket = page.locator('.docket-of-set');
    await docket
      .getByText(/Kompaktbrief|Standardbrief|Großbrief/u)
      .first()
      .waitFor({ state: 'attached' });
    expect(await docket.textContent()).not.toContain('letter that machines cannot sort');

    await page.locator('[data-saving=saved]').waitFor();
    expect(JSON.parse(await kept(page))).toMatchObject({
      envelope: { size: ['190 mm', '130 mm'] },
      post: 'de',
      parts: [
        { shape: 'rounded', corner: '10 mm' },
        {
          shape: 'banner',
          ends: { left: 'pointed', right: 'notched' },
          endDepth: '8 mm',
          margin: '2 mm',
          adhere: 'raised',
          foam: '3 mm',
        },
        { thickness: '4 mm', grams: 0.3 },
      ],
    });
    expect(await kept(page)).not.toContain('torn');

    // Foam goes with what is raised, so that the file never refuses it.
    await takeUp(page, 'Tag');
    await choose(page, card.blanks.adhere, card.adhere.flat);
    await blank(page, card.blanks.foam).waitFor({ state: 'detached' });
    await undoAll(page);
    expect(await kept(page)).toBe(before);
  });

  it('loses nothing where one shape after another is tried by the keys', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, layout);
    await openLayout(page, id, 'card');
    await takeUp(page, 'Tag');
    await blank(page, card.shape.label).focus();
    await page.keyboard.press('Enter');
    await page.locator('input[type=radio]:checked:focus').waitFor();
    const forth = ['rounded', 'oval', 'circle', 'banner', 'ribbon', 'loops', 'knot'] as const;
    for (const kind of forth) {
      await page.keyboard.press('ArrowDown');
      await blank(page, card.shape.label).getByText(card.shape.kinds[kind], { exact: true }).waitFor();
    }
    for (const _ of forth) await page.keyboard.press('ArrowUp');
    await blank(page, card.shape.label).getByText(card.shape.kinds.rectangle, { exact: true }).waitFor();
    await page.keyboard.press('Enter');
    await page.locator('.opened').waitFor({ state: 'detached' });
    await page.locator('[data-saving=saved]').waitFor();
    const { parts } = JSON.parse(await kept(page)) as { parts: readonly object[] };
    const { parts: were } = JSON.parse(layout) as { parts: readonly object[] };
    expect(parts[1]).toEqual({ ...were[1], shape: 'rectangle' });

    // All of one opening of the blank is one thing to undo.
    await page.getByRole('button', { name: english.general.undoes('') }).click();
    await page.locator('[data-saving=saved]').waitFor();
    expect(JSON.parse(await kept(page))).toEqual(JSON.parse(layout));
  });

  it('says what goes behind, what bases are bought, an empty envelope, and a banner that is none any more', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    const id = await layOnShelf(
      page,
      layout.replace('"fold":"left","paper":"cream"', '"fold":"left","paper":null'),
    );
    await openLayout(page, id, 'card');
    await type(page, card.readyMade.thickness, '0.4');
    await type(page, card.readyMade.grams, '7,5');
    await choose(page, card.sending.envelope, card.sending.envelopes.own);
    await type(page, card.sending.gsm, '120');
    await blank(page, card.sending.gsm).getByText('120 g/m²').waitFor();

    await takeUp(page, 'Panel');
    await choose(page, card.blanks.tuckMore, card.torn.edges.right);
    await type(page, card.blanks.tuck(card.torn.edges.right), '15');
    // 15 mm of its 120 go round, so that 105 are seen.
    await page.locator('.pile-list').getByText('105').first().waitFor();

    await takeUp(page, 'Tag');
    await choose(page, card.shape.label, card.shape.kinds.banner);
    await choose(page, card.shape.endLabel(card.torn.edges.right), card.shape.ends.straight);
    await blank(page, card.shape.label).getByText(card.shape.kinds.rectangle, { exact: true }).waitFor();

    await page.locator('[data-saving=saved]').waitFor();
    const now = JSON.parse(await kept(page)) as { parts: readonly object[] };
    expect(now).toMatchObject({
      base: { thickness: '0.4 mm', grams: 7.5 },
      envelope: { gsm: 120 },
      parts: [{ tuck: { right: '15 mm' } }, {}, {}],
    });
    expect(now.parts[1]).not.toHaveProperty('ends');
    await look(page, 'goes behind');
    await undoAll(page);
  });

  it('takes an outline from an SVG file, and says what is wrong with another', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, layout);
    await openLayout(page, id, 'card');
    await takeUp(page, 'Panel');
    const input = page.locator('.from-drawing input[type=file]');
    await input.setInputFiles(svg('bad.svg', '<text x="1" y="2">stone</text>'));
    const refusal = page.locator('.from-drawing [role=alert]');
    await refusal.getByText('line 2, column 1').waitFor();
    expect(await refusal.textContent()).toContain('bad.svg');
    expect(await kept(page)).not.toContain('outline');
    await look(page, 'refused');

    await input.setInputFiles(svg('stone.svg', '<path d="M0 0H60L45 20H10Z"/>'));
    await blank(page, card.shape.label).getByText(card.shape.kinds.outline).waitFor();
    expect(await refusal.textContent()).toBe('');
    await page.locator('[data-saving=saved]').waitFor();
    const { parts } = JSON.parse(await kept(page)) as { parts: readonly object[] };
    expect(parts[0]).toMatchObject({ shape: 'outline', size: ['120 mm', '40 mm'] });
    await page.getByRole('button', { name: card.shape.fromAnother }).waitFor();
    await look(page, 'outline');
  });

  it('folds a part of its strip, and finds its slant from the gap between the tails', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    const id = await layOnShelf(page, layout);
    await openLayout(page, id, 'card');
    const before = await kept(page);
    await takeUp(page, 'Tag');
    await choose(page, card.shape.label, card.shape.kinds.ribbon);
    await type(page, card.shape.template, '40');
    // What the strip of 90 mm cannot give is refused, with what it gives.
    await blank(page, card.shape.gap).click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('90');
    await page.getByText(/This one leaves a gap of/u).waitFor();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('10');
    await page.keyboard.press('Enter');
    await page.locator('.opened').waitFor({ state: 'detached' });
    await page
      .locator('.shown-words')
      .getByText(/with a gap of 10.mm between them/u)
      .waitFor();
    await page.locator('[data-saving=saved]').waitFor();
    const { parts } = JSON.parse(await kept(page)) as { parts: readonly Record<string, unknown>[] };
    const { shape, slant, size, torn } = parts[1]!;
    expect([shape, torn]).toEqual(['ribbon', undefined]);
    const width = Number.parseFloat((size as string[])[1]!);
    expect(slant).toBeCloseTo((Math.atan((10 + width) / 40) * 180) / Math.PI, 3);
    await look(page, 'ribbon');

    await choose(page, card.shape.label, card.shape.kinds.loops);
    await page
      .locator('.shown-words')
      .getByText(/Two loops round a template/u)
      .waitFor();
    await look(page, 'loops');
    await choose(page, card.shape.label, card.shape.kinds.knot);
    await page
      .locator('.shown-words')
      .getByText(/flat overhand knot/u)
      .waitFor();
    await look(page, 'knot');
    await undoAll(page);
    expect(await kept(page)).toBe(before);
  });
});

const svg = (name: string, drawn: string) => ({
  name,
  mimeType: 'image/svg+xml',
  buffer: Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg">\n${drawn}\n</svg>\n`),
});

async function takeUp(page: Page, part: string): Promise<void> {
  await page.locator('.pile-list').getByRole('button', { name: part }).first().click();
  await page.getByRole('region', { name: `${card.pile.inHand}: ${part}` }).waitFor();
}

async function undoAll(page: Page): Promise<void> {
  const undo = page.getByRole('button', { name: english.general.undoes('') });
  while ((await undo.count()) > 0) await undo.click();
  await page.locator('[data-saving=saved]').waitFor();
}

async function look(page: Page, name: string): Promise<void> {
  if (process.env.LOOK === undefined) return;
  mkdirSync(process.env.LOOK, { recursive: true });
  for (const scheme of ['light', 'dark'] as const)
    for (const width of [820, 390]) {
      await page.emulateMedia({ colorScheme: scheme });
      await page.setViewportSize({ width, height: 1180 });
      await page.screenshot({ path: `${process.env.LOOK}/${name}-${scheme}-${width}.png`, fullPage: true });
    }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 820, height: 1180 });
}
