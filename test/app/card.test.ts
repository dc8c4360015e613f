import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { addressOf } from '../../apps/web/route.ts';
import { builtApp, hasChromium, layOnShelf, turnTo } from './appPage.ts';

/* The card's screen, gone over by hand and by keys. */

const { card: words, general } = english;

const layout = JSON.stringify({
  cardwright: 1,
  title: 'Orchard gate',
  units: 'in',
  cards: 5,
  base: { size: ['4 1/4 in', '5 1/2 in'], fold: 'left', paper: 'cream' },
  papers: {
    cream: { name: 'Cream', sheets: [{ size: ['8 1/2 in', '11 in'], count: null }] },
    plum: { name: 'Plum', colour: '#7a4a66', sheets: [{ size: ['8 1/2 in', '11 in'], count: 4 }] },
    pears: { name: 'Pears', up: 'one-way', sheets: [{ size: ['12 in', '12 in'], count: 1 }] },
  },
  parts: [
    { id: 'mat', name: 'Mat', inset: '1/8 in', paper: 'plum' },
    {
      id: 'panel',
      name: 'Panel',
      on: 'mat',
      size: ['2 in', '3 in'],
      place: { left: '1/8 in', top: '1/8 in' },
      paper: ['pears', 'cream'],
    },
    { id: 'tag', name: 'Tag', on: 'mat', size: ['1 in', '1/2 in'], paper: 'cream' },
  ],
});

describe.skipIf(!hasChromium)('the card’s screen (needs chromium)', () => {
  const app = builtApp();

  /** The layout open at its card. */
  async function opened(options: Parameters<typeof app.page>[0] = {}): Promise<Page> {
    const page = await app.page(options);
    const id = await layOnShelf(page, layout);
    await page.goto(`${app.address()}${addressOf({ screen: 'card', id })}`);
    await page.locator('[data-stage=answered]').waitFor();
    return page;
  }

  const undoSays = async (page: Page) =>
    (await page.getByRole('button', { name: general.undoes('') }).textContent()) ?? '';
  /** How wide the mat is on the screen, without the ink round it. */
  const matPx = (page: Page) =>
    piece(page, 0)
      .locator('path')
      .first()
      .evaluate((path) => {
        const { width } = (path as SVGGraphicsElement).getBBox();
        return width * (path as SVGGraphicsElement).getScreenCTM()!.a;
      });
  const piece = (page: Page, number: number) => page.locator('.card-picture .piece').nth(number);

  it('says where the set stands, and is answered anew after a change', async () => {
    const page = await opened();
    const stands = page.locator('.stands');
    expect(await stands.textContent()).toBe(
      'Enough for 5 cards: 3 sheets of Cream, 2 of Plum and 1 of Pears; no plan takes fewer.',
    );
    await page.getByRole('button', { name: words.blanks.cards }).click();
    await page.keyboard.type('40');
    await page.keyboard.press('Enter');
    await page.locator('[data-stage=answered]', { hasText: 'Not enough for 40 cards' }).waitFor();
    expect(await stands.textContent()).toContain('Plum is');
  });

  it('has a part dragged, which comes to lie true and keeps how it is laid', async () => {
    const page = await opened();
    const box = (await piece(page, 1).boundingBox())!;
    const scale = box.width / 2;
    await page.mouse.move(box.x + 20, box.y + 20);
    await page.mouse.down();
    // 1 1/2 in to the right, less a little: the right border is then as wide as the others.
    await page.mouse.move(box.x + 20 + 1.62 * scale, box.y + 22, { steps: 6 });
    await page.mouse.up();
    const said = await undoSays(page);
    expect(said).toBe('Undo: Panel moved 1\u00a03⁄4\u00a0in to the right.');
    const form = page.getByRole('region', { name: `${words.pile.inHand}: Panel` });
    expect(await form.locator('.sentence').first().textContent()).toContain('7⁄8 How it lies across');
    await page.getByRole('button', { name: said }).click();
    expect(await form.locator('.sentence').first().textContent()).toContain('1⁄8 How it lies across');
  });

  it('has a part moved by the arrow keys, a mark at a time', async () => {
    const page = await opened();
    await page.getByRole('button', { name: 'Panel, Pears' }).click();
    await page.getByRole('button', { name: words.table.held('Panel') }).focus();
    await page.keyboard.press('ArrowRight');
    expect(await undoSays(page)).toBe('Undo: Panel moved 1⁄16\u00a0in to the right.');
    const readOut = page.locator('.undo [role=status]');
    const moved = (await readOut.textContent())!;
    expect(await undoSays(page)).toBe(general.undoes(moved));
    await page.keyboard.press('Control+z');
    expect(await readOut.textContent()).toBe(general.undone(moved));
    await page.keyboard.press('Control+Shift+z');
    expect(await readOut.textContent()).toBe(general.redone(moved));
    expect(await undoSays(page)).toBe(general.undoes(moved));
  });

  it('goes by the marks of the person’s trimmer, by keys and on the ruler, where it measures in the same units', async () => {
    const page = await opened();
    const said = async (units: string, marks: string, worked: string) => {
      await turnTo(page, 'trimming');
      const trimmer = { cardwright_trimmer: 1, name: 'Mine', units, marks, hand: worked };
      await page.locator('main input[type=file]').setInputFiles({
        name: 'mine.trimmer.json',
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify(trimmer)),
      });
      await page.getByText(`worked with the ${worked} hand`).waitFor();
      await turnTo(page, 'card');
      await page.getByRole('button', { name: 'Panel, Pears' }).click();
    };
    const movedBy = async () => {
      await page.getByRole('button', { name: words.table.held('Panel') }).focus();
      await page.keyboard.press('ArrowRight');
      return undoSays(page);
    };
    const linesOnRuler = async () => {
      await page.locator('.in-words').getByRole('button', { name: words.blanks.width }).click();
      const lines = await page.locator('.ruler .ruler-mark').count();
      await page.keyboard.press('Escape');
      return lines;
    };
    await page.getByRole('button', { name: 'Panel, Pears' }).click();
    const usual = await linesOnRuler();
    await said('in', '1/8 in', 'right');
    expect(await movedBy()).toBe('Undo: Panel moved 1⁄8\u00a0in to the right.');
    // The strip shows an inch and a half to either side: 49 sixteenths or 25 eighths.
    expect([usual, await linesOnRuler()]).toEqual([49, 25]);
    await said('mm', '1 mm', 'left');
    expect(await movedBy()).toBe('Undo: Panel moved 1⁄16\u00a0in to the right.');
    expect(await linesOnRuler()).toBe(49);
  });

  it('has the pile reordered by dragging a tag, by keys and by words; what must lie lower stays', async () => {
    const page = await opened();
    const order = () => page.locator('.pile-list li [translate=no]').allInnerTexts();
    await expect.poll(order).toEqual(['Tag', 'Panel', 'Mat']);
    const [tag, panel] = [page.locator('.tag[data-part=tag]'), page.locator('.tag[data-part=panel]')];
    const to = (await panel.boundingBox())!;
    await tag.scrollIntoViewIfNeeded();
    const from = (await tag.boundingBox())!;
    await page.mouse.move(from.x + from.width - 40, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(to.x + to.width - 40, to.y + to.height - 4, { steps: 5 });
    await page.mouse.up();
    await expect.poll(order).toEqual(['Panel', 'Tag', 'Mat']);
    await tag.focus();
    await page.keyboard.press('Alt+ArrowUp');
    await expect.poll(order).toEqual(['Tag', 'Panel', 'Mat']);
    await page.keyboard.press('Alt+ArrowDown');
    await page.keyboard.press('Alt+ArrowDown');
    await expect.poll(order).toEqual(['Panel', 'Tag', 'Mat']);
    expect(await page.locator('.pile [role=status]').textContent()).toBe(words.pile.stuck);
    await page.getByRole('button', { name: words.pile.up }).click();
    await expect.poll(order).toEqual(['Tag', 'Panel', 'Mat']);
  });

  it('has a part laid on by saying what and on what, edited in words, and taken off', async () => {
    const page = await opened();
    const adding = page.getByRole('region', { name: words.add.heading });
    await adding.getByRole('button', { name: words.add.kind }).click();
    await page.getByRole('radio', { name: words.add.kinds.strip }).click();
    await adding.getByRole('button', { name: words.blanks.on }).click();
    await page.getByRole('radio', { name: words.faces.inside }).click();
    await page.getByRole('button', { name: words.add.do }).click();
    await page.getByText(words.table.caption(words.table.insideOf, 1, 5)).waitFor();
    const form = page.getByRole('region', { name: `${words.pile.inHand}: Strip` });
    await form.getByRole('button', { name: words.blanks.adhere }).click();
    await page.getByRole('radio', { name: words.adhere.raised }).click();
    expect(await undoSays(page)).toContain('Strip');
    await form.getByRole('button', { name: words.blanks.height }).click();
    await page.keyboard.type('7/8');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    expect(await undoSays(page)).toContain('15⁄16\u00a0in');
    await form.getByRole('button', { name: words.blanks.height }).click();
    await page.keyboard.type('wide');
    await page.getByText('“wide”').waitFor();
    await page.keyboard.press('Escape');
    expect(await undoSays(page)).toContain('15⁄16\u00a0in');
    await form.getByRole('button', { name: words.pile.takeOff }).click();
    expect(await undoSays(page)).toBe('Undo: Strip taken off the pile.');
  });

  it('is opened by its fold, turned over, and every card looked at in its own papers', async () => {
    const page = await opened();
    const caption = page.locator('.table .caption');
    await page.getByRole('button', { name: words.table.open }).click();
    expect(await caption.textContent()).toBe(words.table.caption(words.table.insideOf, 1, 5));
    await page.getByRole('button', { name: words.table.turnOver }).click();
    await page.getByRole('button', { name: words.table.turnBack }).click();
    await page.getByRole('button', { name: words.table.next }).click();
    expect(await caption.textContent()).toBe(words.table.caption(words.table.frontOf, 2, 5));
    // The second card’s panel is cut from the other paper.
    await page.getByRole('button', { name: 'Panel, Cream' }).waitFor();
    // The set is laid out among the words right under the card, and lies there, before the pile.
    const table = page.locator('.table');
    await table.getByRole('button', { name: words.table.layOut }).click();
    const cards = await table.getByRole('region', { name: words.table.setOnTable(5) }).boundingBox();
    const pile = await page.getByRole('region', { name: words.pile.label }).boundingBox();
    expect(cards!.y + cards!.height).toBeLessThanOrEqual(pile!.y);
    await page.getByRole('button', { name: words.table.cardNumber(3) }).click();
    await page.getByRole('button', { name: 'Panel, Pears' }).waitFor();
  });

  it('stands at true size once the screen was measured by a bank card', async () => {
    const page = await opened();
    await page.getByRole('button', { name: words.table.trueSize }).click();
    const frame = page.getByRole('img', { name: words.calibrate.frame });
    const slider = page.getByRole('slider', { name: words.calibrate.slider });
    await slider.fill('428');
    expect((await frame.boundingBox())!.width).toBeCloseTo(428, 0);
    await page.getByRole('button', { name: words.calibrate.done }).click();
    // 428 pixels are 85.60 mm; the mat is 4 in wide.
    const matOnScreen = ((4 * 25.4) / 85.6) * 428;
    expect(await matPx(page)).toBeCloseTo(matOnScreen, 1);
    await page.reload();
    await page.getByRole('button', { name: words.table.trueSize }).click();
    expect(await matPx(page)).toBeCloseTo(matOnScreen, 1);
  });
});
