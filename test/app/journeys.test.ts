import { readFile } from 'node:fs/promises';
import type { Download, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { readPdf, wordsOf } from '../../src/printing/testing/pdfReader.ts';
import { allOnShelf, builtApp, hasChromium, isWorkedOut, layOnShelf, openLayout } from './appPage.ts';
import { handOn, keysOf } from './hand.ts';

/* Whole ways through the page, as a person goes them. */

const { general, shelf, card, guide } = english;
const { begin } = shelf;

describe.skipIf(!hasChromium)('a newcomer’s way to her own guide (needs chromium)', () => {
  const app = builtApp();

  /** Whether a download is the guide of her set: a PDF with her title in it, and what she made of the sizes. */
  async function expectHerGuide(download: Download): Promise<void> {
    expect(download.suggestedFilename()).toBe('quince-supper.guide.pdf');
    const bytes = await readFile(await download.path());
    expect(bytes.subarray(0, 4).toString('latin1')).toBe('%PDF');
    const { pages, title } = await readPdf(bytes);
    expect(title).toContain('Quince supper');
    expect(wordsOf(pages[0]!)).toContain('Quince supper');
    expect(wordsOf(pages[0]!)).toContain('Six cards');
    expect(pages.map(wordsOf).some((words) => words.includes('Set 3 1/4 in.'))).toBe(true);
  }

  it('is less than ten taps, and typing, from the empty shelf', async () => {
    const page = await app.page();
    const hand = handOn(page);
    const button = (name: string) => page.getByRole('button', { name });
    await page.getByText(shelf.empty).waitFor();
    await hand.fill(button(begin.labels.title), 'Quince supper');
    await hand.fill(button(begin.labels.cards), '6');
    await hand.tap(button(begin.go));
    await isWorkedOut(page);
    await hand.tap(pilePart(page, 'Panel'));
    await hand.fill(button(card.blanks.height), '3 1/4');
    await isWorkedOut(page);
    await hand.tap(page.getByRole('link', { name: general.screens.guide }));
    await isWorkedOut(page);
    const download = page.waitForEvent('download');
    await hand.tap(button(guide.save));
    await expectHerGuide(await download);
    expect(hand.taps()).toBeLessThan(10);
  });

  it('is gone by the keys alone as well', async () => {
    const page = await app.page();
    const keys = keysOf(page);
    const button = (name: string) => page.getByRole('button', { name });
    await page.getByText(shelf.empty).waitFor();
    await keys.fill(button(begin.labels.cards), '6');
    await keys.fill(button(begin.labels.title), 'Quince supper');
    await keys.choose(button(begin.labels.fold), begin.folds.top);
    await keys.choose(button(begin.labels.fold), begin.folds.left);
    await keys.press(button(begin.go));
    await isWorkedOut(page);
    await keys.press(pilePart(page, 'Panel'));
    await keys.fill(button(card.blanks.height), '3 1/4');
    await isWorkedOut(page);
    await keys.press(page.getByRole('link', { name: general.screens.guide }), 'back');
    await isWorkedOut(page);
    const download = page.waitForEvent('download');
    await keys.press(button(guide.save));
    await expectHerGuide(await download);
  });
});

describe.skipIf(!hasChromium)('what is done by dragging (needs chromium)', () => {
  const app = builtApp();

  it('can be done in words and by keys, and what comes of it is the same', async () => {
    const page = await app.page();
    await openLayout(page, await layOnShelf(page, orchardGate), 'card');
    const held = page.getByRole('button', { name: card.table.held('Panel') });
    const form = (name: string) => page.getByRole('region', { name: `${card.pile.inHand}: ${name}` });
    const start = await savedText(page);

    /** The file after something was done, which is then undone. */
    const after = async (steps: number, doIt: () => Promise<void>) => {
      await doIt();
      const done = await savedText(page, (text) => text !== start);
      // By the key: to tap, the button at the head of the page would be scrolled to, and this browser at times draws no
      // frame any more after a jump of the page while a blank is being closed.
      for (let step = 0; step < steps; step += 1) await page.keyboard.press('Control+z');
      await savedText(page, (text) => text === start);
      return JSON.parse(done) as unknown;
    };

    // A part is placed: dragged, moved by marks, its distances said.
    await pilePart(page, 'Panel').click();
    const placed = await after(1, async () => {
      await held.scrollIntoViewIfNeeded();
      // Without the ink that shows it is held.
      const box = (await page.locator('.card-picture .piece').nth(1).boundingBox())!;
      const inch = box.width / 2;
      await page.mouse.move(box.x + 20, box.y + 20);
      await page.mouse.down();
      // Within reach of the other border, which it is laid to.
      await page.mouse.move(box.x + 20 + 0.23 * inch, box.y + 21, { steps: 4 });
      await page.mouse.up();
    });
    expect(placed).toMatchObject({ parts: [{}, { place: { left: '1 7/8 in', top: '1/8 in' } }, {}] });
    const marks = 4;
    const nudged = await after(marks, async () => {
      await pilePart(page, 'Panel').click();
      await held.focus();
      for (let mark = 0; mark < marks; mark += 1) await page.keyboard.press('ArrowRight');
      await savedText(page, (text) => text.includes('"left": "1 7/8 in"'));
    });
    expect(nudged).toEqual(placed);
    const inWords = await after(1, () =>
      handOn(page).fill(form('Panel').getByRole('button', { name: card.blanks.distanceAcross }), '1 7/8'),
    );
    expect(inWords).toEqual(placed);

    // A part is moved in the pile: its tag dragged, by keys, in words.
    const tagOf = (name: string) => page.getByRole('button', { name: new RegExp(`^${name}, `, 'u') });
    const sunk = await after(1, async () => {
      await tagOf('Tag').scrollIntoViewIfNeeded();
      await tagOf('Panel').scrollIntoViewIfNeeded();
      const to = (await tagOf('Panel').boundingBox())!;
      const from = (await tagOf('Tag').boundingBox())!;
      await page.mouse.move(from.x + from.width - 40, from.y + from.height / 2);
      await page.mouse.down();
      await page.mouse.move(to.x + to.width - 40, to.y + to.height - 4, { steps: 4 });
      await page.mouse.up();
    });
    const byKeys = await after(1, async () => {
      await tagOf('Tag').focus();
      await page.keyboard.press('Alt+ArrowDown');
    });
    expect(byKeys).toEqual(sunk);
    await pilePart(page, 'Tag').click();
    const byWords = await after(1, () => form('Tag').getByRole('button', { name: card.pile.down }).click());
    expect(byWords).toEqual(sunk);

    // A length is taken from the ruler: dragged along it, and by the arrow keys.
    await pilePart(page, 'Panel').click();
    const height = form('Panel').getByRole('button', { name: card.blanks.height });
    const onRuler = await after(1, async () => {
      await height.click();
      const ruler = (await page.getByRole('img', { name: english.form.ruler('3 in') }).boundingBox())!;
      await page.mouse.move(ruler.x + ruler.width / 2, ruler.y + 20);
      await page.mouse.down();
      const inch = ruler.width / 3;
      await page.mouse.move(ruler.x + ruler.width / 2 + 0.12 * inch, ruler.y + 20, { steps: 4 });
      await page.mouse.up();
      await page.keyboard.press('Enter');
    });
    const byArrows = await after(1, async () => {
      await height.click();
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('Enter');
    });
    expect(onRuler).toMatchObject({ parts: [{}, { size: ['2 in', '3 1/8 in'] }, {}] });
    expect(byArrows).toEqual(onRuler);
  }, 240_000);
});

describe.skipIf(!hasChromium)('undo (needs chromium)', () => {
  const app = builtApp();
  /** Four, and a round of the arrow keys after another; CARDWRIGHT_STEPS=500 is for when there is time. */
  const steps = Number(process.env.CARDWRIGHT_STEPS ?? 204);

  it(`takes back ${steps} steps by the key and does them again, equal to the byte`, async () => {
    const page = await app.page();
    await openLayout(page, await layOnShelf(page, orchardGate), 'card');
    const start = await savedText(page);
    const hand = handOn(page);
    const undo = page.getByRole('button', { name: general.undoes('') });
    const redo = page.getByRole('button', { name: general.redoes('') });

    // Some in words, the rest by keys.
    await hand.fill(page.getByRole('button', { name: card.blanks.title }), 'Orchard wall');
    await hand.fill(page.getByRole('button', { name: card.blanks.cards }), '4');
    await hand.fill(page.getByRole('button', { name: card.add.name }), 'Label');
    await page.getByRole('button', { name: card.add.do }).click();
    await pilePart(page, 'Panel').click();
    await page.getByRole('button', { name: card.table.held('Panel') }).focus();
    // Keys that are held repeat.
    const repeat = async (key: string, times: number) => {
      for (let time = 0; time < times; time += 1) await page.keyboard.down(key);
      await page.keyboard.up(key);
    };
    for (let round = 0; round < (steps - 4) / 8; round += 1)
      for (const arrow of ['ArrowRight', 'ArrowDown', 'ArrowLeft', 'ArrowUp']) await repeat(arrow, 2);
    await hand.fill(page.getByRole('button', { name: card.blanks.cards }), '3');
    const end = await savedText(page, (text) => text.includes('"cards": 3'));

    await page.keyboard.down('Control');
    await repeat('z', steps - 1);
    await undo.waitFor();
    await repeat('z', 1);
    await undo.waitFor({ state: 'detached' });
    await savedText(page, (text) => text === start);
    await repeat('y', steps - 1);
    await redo.waitFor();
    await repeat('y', 1);
    await redo.waitFor({ state: 'detached' });
    await page.keyboard.up('Control');
    await savedText(page, (text) => text === end);
  }, 240_000);
});

describe.skipIf(!hasChromium)('files (needs chromium)', () => {
  const app = builtApp();

  it('go out of one browser and into another, equal to the byte', async () => {
    const page = await app.page();
    await layOnShelf(page, orchardGate);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: shelf.saveCopy }).click();
    const copy = await download;
    expect(copy.suggestedFilename()).toBe('orchard-gate.card.json');
    const bytes = await readFile(await (await download).path());
    expect(bytes.toString('utf8')).toBe(await savedText(page));

    const elsewhere = await app.page();
    await drop(elsewhere, copy.suggestedFilename(), bytes);
    await isWorkedOut(elsewhere);
    expect(await elsewhere.locator('h1').textContent()).toBe('Orchard gate');
    expect(await savedText(elsewhere)).toBe(bytes.toString('utf8'));
  });

  it('that are of another kind or broken are refused in a sentence, and nothing changes', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, orchardGate);
    const before = await allOnShelf(page);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: shelf.files.saveAll }).click();
    const zip = await readFile(await (await download).path());
    const unknown = { ...(JSON.parse(orchardGate) as object), glitter: 'much' };
    const refused: readonly (readonly [name: string, bytes: Buffer, says: string | RegExp])[] = [
      ['list.txt', Buffer.from('cream, plum and pears'), shelf.problems.noLayout],
      ['recipe.json', Buffer.from('{"flour": "200 g"}'), '"cardwright"'],
      ['glitter.card.json', Buffer.from(JSON.stringify(unknown)), 'glitter'],
      ['shelf.zip', zip.subarray(0, Math.floor(zip.length * 0.6)), shelf.problems['not a zip']],
      ['plum.png', onePixelPng, shelf.problems.noText],
    ];
    for (const [name, bytes, says] of refused) {
      await drop(page, name, bytes);
      const notice = page.getByRole('alert').filter({ hasText: name });
      await notice.filter({ hasText: says }).waitFor();
      expect(await notice.textContent()).toContain(shelf.problems.notOpened.replace('{name}', name));
      expect(await allOnShelf(page)).toEqual(before);
    }
    // The whole zip is what the page itself can open, from whatever screen.
    await openLayout(page, id, 'papers');
    await drop(page, 'shelf.zip', zip);
    await page.getByText(shelf.done.putBack({ added: 0, beside: 0, further: 0, there: 1 })).waitFor();
    expect(await allOnShelf(page)).toEqual(before);
  });
});

const orchardGate = JSON.stringify({
  cardwright: 1,
  title: 'Orchard gate',
  units: 'in',
  cards: 5,
  base: { size: ['4 1/4 in', '5 1/2 in'], fold: 'left', paper: 'cream' },
  papers: {
    cream: { name: 'Cream', sheets: [{ size: ['8 1/2 in', '11 in'], count: null }] },
    plum: { name: 'Plum', sheets: [{ size: ['8 1/2 in', '11 in'], count: 4 }] },
    pears: { name: 'Pears', up: 'one-way', sheets: [{ size: ['12 in', '12 in'], count: 1 }] },
  },
  parts: [
    { id: 'mat', name: 'Mat', inset: '1/8 in', paper: 'plum' },
    {
      id: 'panel',
      name: 'Panel',
      on: 'mat',
      size: ['2 in', '3 in'],
      place: { left: '1 5/8 in', top: '1/8 in' },
      paper: 'pears',
    },
    { id: 'tag', name: 'Tag', on: 'mat', size: ['1 in', '1/2 in'], paper: 'cream' },
  ],
});

/** The smallest picture there is: one pixel. */
const onePixelPng = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mNkYAAAAAYAAjCB0C8AAAAASUVORK5CYII=',
  'base64',
);

/** The file of the only layout on the shelf, as soon as it is as it should be. */
async function savedText(page: Page, isSo: (text: string) => boolean = () => true): Promise<string> {
  let text = '';
  await expect
    .poll(
      async () => {
        const all = await allOnShelf(page);
        expect(all).toHaveLength(1);
        ({ text } = all[0]!);
        return isSo(text);
      },
      { timeout: 20_000 },
    )
    .toBe(true);
  return text;
}

/** Drops a file on the page. */
async function drop(page: Page, name: string, bytes: Buffer): Promise<void> {
  await page.evaluate(
    ([name, base64]) => {
      const dataTransfer = new DataTransfer();
      const content = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      dataTransfer.items.add(new File([content], name));
      for (const kind of ['dragenter', 'dragover', 'drop'])
        document.body.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }));
    },
    [name, bytes.toString('base64')] as const,
  );
}

/** A part in the list that says the pile in words. */
function pilePart(page: Page, name: string) {
  return page.getByRole('listitem').getByRole('button', { name, exact: true });
}
