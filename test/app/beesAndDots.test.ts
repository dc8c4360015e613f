import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { readPdf, wordsOf } from '../../src/printing/testing/pdfReader.ts';
import { builtApp, hasChromium, isWorkedOut, turnTo } from './appPage.ts';
import { handOn } from './hand.ts';

/* A set in inches, from the empty shelf to the last part glued down. */

const { general, shelf, card, papers, guide } = english;
const { begin } = shelf;

describe.skipIf(!hasChromium)('ten birthday cards of bees and dots (needs chromium)', () => {
  const app = builtApp();

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
});

/** A part in the list that says the pile in words. */
function pilePart(page: Page, name: string) {
  return page.getByRole('listitem').getByRole('button', { name, exact: true });
}
