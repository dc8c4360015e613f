import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { readPdf, wordsOf } from '../../src/printing/testing/pdfReader.ts';
import { allOnShelf, builtApp, hasChromium, isWorkedOut, layOnShelf, openLayout, turnTo } from './appPage.ts';
import {
  expectOneSetting,
  inWords,
  leftOnTrimming,
  linesOnTrimming,
  presentLine,
  tellDone,
} from './atTheBench.ts';
import { handOn } from './hand.ts';
import { ImaginaryTable, lengthOf, type OwnPaper, type OwnTrimmer, type Sizes } from './imaginaryTable.ts';

/* A set in inches, from the empty shelf to the last part glued down. */

const { general, shelf, card, papers, trimming, bench, guide } = english;
const { begin } = shelf;

describe.skipIf(!hasChromium)('ten birthday cards of bees and dots (needs chromium)', () => {
  const app = builtApp();
  /** The file as it was when all had been entered. */
  let entered = '';

  it('are entered by hand up to their guide, and a sheet that is a little small is told with its ways out', async () => {
    const page = await app.page();
    const hand = handOn(page);
    const button = (name: string) => page.getByRole('button', { name });
    const stands = page.locator('.stands');
    await hand.fill(button(begin.labels.title), 'Bees and dots');
    await hand.tap(button(begin.go));
    await isWorkedOut(page);

    // Six sheets of cream, four of coral, three of white, one of each print; what the starter brings goes.
    await turnTo(page, 'papers');
    const adding = page.locator('.add-paper');
    const paper = (name: string) => page.getByRole('region', { name, exact: true });
    await hand.fill(paper('Cream cardstock').getByRole('button', { name: papers.labels.name }), 'Cream');
    await hand.fill(paper('Cream').getByRole('button', { name: papers.sheetLabels.count }), '6');
    for (const [kind, name, count, size] of [
      ['cardstock', 'Coral', '4', 'letter'],
      ['cardstock', 'White', '3', 'letter'],
      ['patterned', 'Bees', '1', 'square12'],
      ['patterned', 'Dots', '1', 'square12'],
    ] as const) {
      await hand.choose(adding.getByRole('button', { name: papers.labels.kind }), papers.kinds[kind]);
      await hand.fill(adding.getByRole('button', { name: papers.labels.name }), name);
      await hand.fill(adding.getByRole('button', { name: papers.sheetLabels.count }), count);
      await hand.choose(adding.getByRole('button', { name: papers.sizeLabel }), papers.sizes[size]);
      await hand.tap(adding.getByRole('button', { name: papers.put }));
      await paper(name).waitFor();
    }
    await hand.choose(paper('Bees').getByRole('button', { name: papers.labels.up }), papers.ups['one-way']);
    for (const [old, instead] of [
      ['Russet cardstock', 'Coral'],
      ['Orchard print', 'Bees'],
    ] as const) {
      await hand.tap(button(papers.takeNamed(old)));
      await hand.tap(page.getByRole('radio', { name: instead, exact: true }));
      await hand.tap(button(papers.takeAndGive));
      await paper(old).waitFor({ state: 'detached' });
    }

    // The panels, and what lies over their gap and inside.
    await turnTo(page, 'card');
    const form = (name: string) => page.getByRole('region', { name: `${card.pile.inHand}: ${name}` });
    const blank = (part: string, label: string) => form(part).getByRole('button', { name: label });
    const ofPaper = async (opens: Locator, name: string) => {
      await hand.tap(opens);
      await page.getByLabel(card.dealt.first).selectOption({ label: name });
      await hand.tap(button(english.form.done));
    };
    await hand.tap(pilePart(page, 'Panel'));
    await hand.fill(blank('Panel', card.blanks.name), 'Panel A');
    await hand.fill(blank('Panel A', card.blanks.height), '3');
    await hand.tap(pilePart(page, 'Strip'));
    await hand.fill(blank('Strip', card.blanks.name), 'Panel B');
    await ofPaper(blank('Panel B', card.blanks.paper), 'Dots');
    await hand.fill(blank('Panel B', card.blanks.distanceDown).first(), '1/4');
    await hand.choose(blank('Panel B', card.blanks.adhere), card.adhere.flat);

    const laying = page.getByRole('region', { name: card.add.heading });
    const layOn = async (kind: keyof typeof card.add.kinds, of: string, on: string, name: string) => {
      await hand.choose(laying.getByRole('button', { name: card.add.kind }), card.add.kinds[kind]);
      await ofPaper(laying.getByRole('button', { name: card.blanks.paper }), of);
      await hand.choose(laying.getByRole('button', { name: card.blanks.on }), on);
      await hand.fill(laying.getByRole('button', { name: card.add.name }), name);
      await hand.tap(button(card.add.do));
      await form(name).waitFor();
    };
    await layOn('mat', 'White', card.faces.inside, 'Inside panel');
    await layOn('panel', 'Coral', 'Mat', 'Sentiment mat');
    await hand.fill(blank('Sentiment mat', card.blanks.width), '3 1/4');
    await hand.fill(blank('Sentiment mat', card.blanks.height), '1');
    await hand.choose(blank('Sentiment mat', card.blanks.down), 'from the top');
    await hand.fill(blank('Sentiment mat', card.blanks.distanceDown), '2 3/4');
    await hand.choose(blank('Sentiment mat', card.blanks.adhere), card.adhere.raised);
    await layOn('sentiment', 'White', 'Sentiment mat', 'Sentiment');
    await hand.fill(blank('Sentiment', card.blanks.width), '3');
    await hand.fill(blank('Sentiment', card.blanks.height), '3/4');
    await isWorkedOut(page);
    const enough =
      'Enough for 10 cards: 5 sheets of Cream, 3 of Coral, 3 of White, 1 of Bees and 1 of Dots; no plan takes fewer.';
    expect(await stands.textContent()).toBe(enough);

    await expect.poll(async () => (entered = (await allOnShelf(page))[0]?.text ?? '')).toContain('"3/4 in"');

    // Its guide.
    await turnTo(page, 'guide');
    const download = page.waitForEvent('download');
    await hand.tap(button(guide.save));
    const { title, pages } = await readPdf(await readFile(await (await download).path()));
    expect(title).toContain('Bees and dots');
    const printed = pages.map(wordsOf).join(' ');
    for (const says of [
      '5 sheets of Cream',
      '3 sheets of Coral',
      '3 sheets of White',
      '1 sheet of Bees',
      '1 sheet of Dots',
    ])
      expect(printed.includes(`${says};`)).toBe(true);

    // Four times 3 in is all of 12 in; a sheet that measures a mark less gives nine panels.
    await turnTo(page, 'card');
    await page.getByText('Four times 3 in is all of the 12 in that a sheet of Bees has').waitFor();
    await turnTo(page, 'papers');
    await hand.fill(paper('Bees').getByRole('button', { name: papers.sheetLabels.width }), '11 15/16');
    await hand.fill(paper('Bees').getByRole('button', { name: papers.sheetLabels.height }), '11 15/16');
    await isWorkedOut(page);
    const short =
      'Not enough for 10 cards: Bees is one piece short. They are enough for 9 cards and no more.';
    expect(await stands.textContent()).toBe(short);
    await paper('Bees').getByText('It gives 9 of the 10 for Panel A.').waitFor();
    await turnTo(page, 'guide');
    await page.getByText(guide.short).waitFor();

    // The ways out: what is offered, and her own.
    await turnTo(page, 'card');
    const wanting = page
      .getByRole('listitem')
      .filter({ hasText: '1 of the 10 pieces for Panel A is wanting' });
    await wanting.getByRole('button', { name: 'The set: 9 cards.' }).waitFor();
    await hand.tap(wanting.getByRole('button', { name: 'Bees: 2 sheets on hand, 1 more.' }));
    await isWorkedOut(page);
    expect(await stands.textContent()).toContain('Enough for 10 cards');
    await hand.tap(button(general.undoes('')));
    await isWorkedOut(page);
    expect(await stands.textContent()).toBe(short);
    await hand.tap(pilePart(page, 'Panel A'));
    await hand.fill(blank('Panel A', card.blanks.height), '2 15/16');
    await hand.tap(pilePart(page, 'Panel B'));
    await hand.fill(blank('Panel B', card.blanks.distanceDown).first(), '5/16');
    await isWorkedOut(page);
    expect(await stands.textContent()).toBe(enough);
    // The borders are as they were, and so is the other panel.
    expect(await page.locator('.pile-list').textContent()).toMatch(/Panel B3\s3⁄4\s×\s1\s3⁄4\sin/u);
  }, 240_000);

  it('are cut through at the bench, a piece is spoiled on the way, and all is done', async () => {
    if (entered === '') throw new Error('It is entered by hand by the test above');
    const page = await app.page({ widthPx: 820 });
    const hand = handOn(page);
    const button = (name: string) => page.getByRole('button', { name, exact: true });
    await openLayout(page, await layOnShelf(page, entered), 'trimming');

    // Her trimmer, in words.
    const blank = (label: string) => page.getByRole('button', { name: `${label}:` });
    const { labels, marked, sides } = trimming.trimmer;
    await hand.tap(page.getByText(trimming.trimmer.heading, { exact: true }));
    await hand.tap(button(trimming.trimmer.say));
    await hand.choose(blank(labels.marks), marked('1⁄16 in'));
    await hand.fill(blank(labels.narrowest), '1/2');
    await hand.choose(blank(labels.hand), sides.right);
    await isWorkedOut(page);
    const stands =
      'Enough for 10 cards: 5 sheets of Cream, 3 of Coral, 3 of White, 1 of Bees and 1 of Dots; no plan takes fewer.';
    expect(await page.locator('.stands').first().textContent()).toBe(stands);

    // What is said there comes out at an imaginary table, with what is left over as it is listed.
    const onPage = new ImaginaryTable(stash, trimmer);
    const toCut = await linesOnTrimming(page);
    for (const line of toCut) onPage.follow(line);
    expectPieces(onPage);
    expect(onPage.sheetsTaken()).toEqual({ Cream: 5, Coral: 3, White: 3, Bees: 1, Dots: 1 });
    expect(await leftOnTrimming(page)).toEqual(onPage.left());
    // The lower panels are of the sheet's top 7 in, and what is below is whole.
    expect(onPage.left().Dots).toContainEqual([12, 5]);
    // Twelve upper panels are in a sheet.
    expect(onPage.left().Bees).toContainEqual([3.75, 6]);

    // At the bench every line says the same, and shows it.
    await turnTo(page, 'bench');
    await hand.tap(button(bench.begin));
    const table = new ImaginaryTable(stash, trimmer);
    const toGlue: string[] = [];
    let isSpoiled = false;
    for (let done = 0; ; done += 1) {
      const line = await presentLine(page);
      if (line === null) break;
      expect(done).toBeLessThan(40);
      if (line.cutting === null) toGlue.push(inWords(line));
      else {
        expectOneSetting(line);
        expect(line.cutting.edge).toBe('left');
        // Away from the blade, which is on the right of what it measures.
        expect(line.cutting.growsRight).toBe(false);
        if (!isSpoiled) expect(inWords(line)).toBe(inWords(toCut[done]!));
        table.follow(line);
      }
      await tellDone(page, (['tap', 'Enter', 'Space'] as const)[done % 3]!);

      // A panel with its bees is spoiled as soon as there are some.
      if (isSpoiled || (table.finished()['Panel A'] ?? []).length < 8) continue;
      isSpoiled = true;
      await hand.tap(button(bench.spoiled));
      await hand.tap(page.getByRole('button', { name: /^Panel A, .*there: /u }).first());
      await page.getByText('1 piece for Panel A is spoiled').waitFor();
      table.spoil('Panel A');
      await hand.tap(button(bench.spoil.goOn));
      await page.locator('.present-line').waitFor();
    }
    expect(await page.locator('.docket-strip > .stands').textContent()).toBe(bench.allDone);
    expectPieces(table);
    expect(isSpoiled).toBe(true);
    // One of the two to spare stands in for the spoiled one; the other is cut as well, or still in what is left.
    const inStrips = table.left().Bees!.map(([width, height]) => (width === 3.75 ? height / 3 : 0));
    const cutOrLeft = table.finished()['Panel A']!.length + inStrips.reduce((sum, count) => sum + count, 0);
    expect(cutOrLeft).toBe(11);
    expect(table.sheetsTaken()).toEqual({ Cream: 5, Coral: 3, White: 3, Bees: 1, Dots: 1 });
    expectEvenBorders(table, toGlue);
  }, 120_000);
});

/** What is on hand, in inches. */
const stash: Readonly<Record<string, OwnPaper>> = {
  Cream: { sheet: [8.5, 11], count: 6, isOneWay: false },
  Coral: { sheet: [8.5, 11], count: 4, isOneWay: false },
  White: { sheet: [8.5, 11], count: 3, isOneWay: false },
  Bees: { sheet: [12, 12], count: 1, isOneWay: true },
  Dots: { sheet: [12, 12], count: 1, isOneWay: false },
};
const trimmer: OwnTrimmer = { marks: 1 / 16, narrowest: 1 / 2 };

/** Ten of every piece, and few more, each as large as it was worked out by hand; the bees stand upright. */
function expectPieces(table: ImaginaryTable): void {
  const finished = table.finished();
  const wanted: Readonly<Record<string, Sizes>> = {
    Base: [8.5, 5.5],
    Mat: [4, 5.25],
    'Panel A': [3.75, 3],
    'Panel B': [3.75, 1.75],
    'Inside panel': [4, 5.25],
    'Sentiment mat': [3.25, 1],
    Sentiment: [3, 0.75],
  };
  expect(Object.keys(finished).sort()).toEqual(Object.keys(wanted).sort());
  for (const [piece, size] of Object.entries(wanted)) {
    const sizes = finished[piece]!;
    expect(sizes.length, piece).toBeGreaterThanOrEqual(10);
    expect(sizes.length, piece).toBeLessThanOrEqual(17);
    const turned = [...size].reverse();
    for (const own of sizes) expect(piece === 'Panel A' ? [size] : [size, turned], piece).toContainEqual(own);
  }
  expect(finished.Base).toHaveLength(10);
}

/** What is said of the putting together gives the front as it was worked out, with borders of an eighth all round. */
function expectEvenBorders(table: ImaginaryTable, said: readonly string[]): void {
  const lineOf = (part: string) => said.find((line) => line.startsWith(`${part} On each of the 10 cards:`));
  const eighth = '1/8 in from every edge';
  expect(said[0]).toContain('score from edge to edge 4 1/4 in from the left edge');
  expect(lineOf('Mat')).toContain(eighth);
  expect(lineOf('Inside panel')).toContain(eighth);
  expect(lineOf('Sentiment')).toContain(eighth);
  expect(lineOf('Panel A')).toContain('1/8 in from left and right, 1/8 in from the top');
  expect(lineOf('Panel B')).toContain('1/8 in from left and right, 1/8 in from the bottom');
  const upright = (piece: string) => [...table.finished()[piece]![0]!].sort((a, b) => a - b);
  const [width, height] = upright('Mat') as [number, number];
  const [heightA, widthA] = upright('Panel A') as [number, number];
  const [heightB, widthB] = upright('Panel B') as [number, number];
  expect([widthA, widthB]).toEqual([width - 1 / 4, width - 1 / 4]);
  // Top border, upper panel, gap, lower panel, bottom border.
  expect(height - 1 / 8 - heightA - heightB - 1 / 8).toBe(1 / 4);
  // The sentiment is centred over the gap, which is in the middle of 3 1/8 and 3 3/8 in.
  const [tall] = upright('Sentiment mat') as [number];
  const bottom = /(\S+(?: \d\S*)?) in from the bottom/u.exec(lineOf('Sentiment mat')!)![1]!;
  expect(height - lengthOf(bottom) - tall / 2).toBe(3.25);
}

/** A part in the list that says the pile in words. */
function pilePart(page: Page, name: string) {
  return page.getByRole('listitem').getByRole('button', { name, exact: true });
}
