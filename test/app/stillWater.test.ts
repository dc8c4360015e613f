import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { readPdf, wordsOf } from '../../src/printing/testing/pdfReader.ts';
import { builtApp, hasChromium, isWorkedOut, turnTo } from './appPage.ts';
import { expectOneSetting, inWords, linesOnTrimming, presentLine, tellDone } from './atTheBench.ts';
import { handOn } from './hand.ts';
import { ImaginaryTable, type OwnPaper, plain } from './imaginaryTable.ts';

/* A set in whole steps of 5 mm, for someone who sees little and works her trimmer with the left hand. */

const { trimming, bench, guide } = english;

/** Of A4 trimmed to 290 mm before it is halved, with borders of 5 mm all round. */
const stillWater = JSON.stringify({
  cardwright: 1,
  title: 'Still water',
  units: 'mm',
  cards: 10,
  base: { size: ['145 mm', '105 mm'], fold: 'top', paper: 'pearl' },
  papers: {
    pearl: { name: 'Pearl', sheets: [{ size: ['210 mm', '297 mm'], count: null }] },
    slate: { name: 'Slate', sheets: [{ size: ['210 mm', '297 mm'], count: null }] },
    dusk: { name: 'Dusk', up: 'one-way', sheets: [{ size: ['210 mm', '297 mm'], count: null }] },
  },
  parts: [
    { id: 'mat', name: 'Mat', inset: '5 mm', paper: 'slate' },
    { id: 'panel', name: 'Panel', on: 'mat', inset: '5 mm', paper: 'dusk' },
  ],
});

/** As many as needed. */
const a4 = { sheet: [210, 297], count: 99 } as const;
const stash: Readonly<Record<string, OwnPaper>> = {
  Pearl: { ...a4, isOneWay: false },
  Slate: { ...a4, isOneWay: false },
  Dusk: { ...a4, isOneWay: true },
};
const trimmer = { marks: 5, narrowest: 25 };
const cutsPerSitting = 35;
/** The least size of type that she reads. */
const leastPt = 20;

describe.skipIf(!hasChromium)('ten cards in whole steps of 5 mm (needs chromium)', () => {
  const app = builtApp();

  it('are cut as her trimmer, her hand and her eyes want it, from the file to the last panel', async () => {
    const page = await app.page({ widthPx: 820, locale: 'en-GB' });
    const hand = handOn(page);
    const button = (name: string) => page.getByRole('button', { name, exact: true });
    await page.locator('main input[type=file]').setInputFiles({
      name: 'still-water.card.json',
      mimeType: 'application/json',
      buffer: Buffer.from(stillWater),
    });
    await isWorkedOut(page);

    // Her trimmer, in words.
    await turnTo(page, 'trimming');
    const blank = (label: string) => page.getByRole('button', { name: `${label}:` });
    const { labels, marked, sides } = trimming.trimmer;
    await hand.tap(page.getByText(trimming.trimmer.heading, { exact: true }));
    await hand.tap(button(trimming.trimmer.say));
    await hand.choose(blank(labels.marks), marked('5 mm'));
    await hand.fill(blank(labels.narrowest), '25');
    await hand.choose(blank(labels.edge), sides.right);
    await hand.choose(blank(labels.hand), sides.left);
    await hand.fill(blank(labels.sheets), '1');
    await hand.fill(blank(labels.cuts), `${cutsPerSitting}`);
    await isWorkedOut(page);
    expect(await page.locator('.stands').first().textContent()).toBe(
      'Enough for 10 cards: 5 sheets of Pearl, 3 of Slate and 4 of Dusk; no plan takes fewer.',
    );

    // 38 cuts, and where a break comes between two papers, no sitting is longer than she can do.
    const toCut = await linesOnTrimming(page);
    const onPage = new ImaginaryTable(stash, trimmer);
    for (const line of toCut) onPage.follow(line);
    expectPieces(onPage);
    expect(onPage.sheetsTaken()).toEqual({ Pearl: 5, Slate: 3, Dusk: 4 });
    const ofPaper = (paper: string) => toCut.filter((line) => inWords(line).includes(`Take ${paper} `));
    const sittings = plain((await page.locator('.sittings').textContent())!);
    const [, cuts, breakAfter] = /^(\d+) passes, at most 35 at a sitting: a break after step (\d+)\.$/u
      .exec(sittings)!
      .map(Number) as [number, number, number];
    expect(cuts).toBe(38);
    const passes = [...onPage.passes];
    const first = passes.filter(([step]) => step <= breakAfter).reduce((sum, [, count]) => sum + count, 0);
    expect([first, cuts - first].every((count) => count > 0 && count <= cutsPerSitting)).toBe(true);
    const begins = ['Pearl', 'Slate', 'Dusk'].map((paper) => inWords(ofPaper(paper)[0]!));
    expect(begins).toContain(inWords(toCut[breakAfter]!));

    // The guide, in her size.
    await turnTo(page, 'guide');
    await hand.choose(page.getByRole('button', { name: guide.type }), guide.types.larger);
    const download = page.waitForEvent('download');
    await hand.tap(button(guide.save));
    const { pages } = await readPdf(await readFile(await (await download).path()));
    const printed = pages.map(wordsOf).join(' ');
    expect(printed).toContain('The heavy rule on the right is the measuring edge');
    // The break comes at the same place, before the next paper.
    const stop = 'A good place to stop: what follows is for sitting 2.';
    expect(printed.indexOf(stop)).toBeGreaterThan(printed.indexOf(`${breakAfter} Set `));
    expect(printed.indexOf(stop)).toBeLessThan(printed.lastIndexOf('Cutting Dusk'));
    // What is read at the trimmer.
    const large = pages.map((one) => ({
      ...one,
      runs: one.runs.filter(({ sizePt }) => sizePt > leastPt - 0.01),
    }));
    const inLarge = large.map(wordsOf).join(' ');
    for (const { sentences } of toCut)
      for (const sentence of sentences) expect(inLarge).toContain(plain(sentence));

    // At the bench, in the largest type.
    await turnTo(page, 'bench');
    await hand.tap(button(bench.begin));
    await hand.choose(page.getByRole('button', { name: bench.type }), bench.types.larger);
    const table = new ImaginaryTable(stash, trimmer);
    const toGlue: string[] = [];
    for (let done = 0; ; done += 1) {
      const line = await presentLine(page);
      if (line === null) break;
      expect(done).toBeLessThan(20);
      if (line.cutting === null) toGlue.push(inWords(line));
      else {
        expect(expectOneSetting(line) % 5).toBe(0);
        expect(line.cutting.edge).toBe('right');
        expect(line.cutting.growsRight).toBe(true);
        expect(line.cutting.isHatched).toBe(true);
        expect(line.cutting.leastPx, inWords(line)).toBeGreaterThanOrEqual((leastPt * 96) / 72);
        expect(inWords(line)).toBe(inWords(toCut[done]!));
        table.follow(line);
        expect(await page.getByText(stop).count(), inWords(line)).toBe(done === breakAfter ? 1 : 0);
      }
      await tellDone(page, done % 2 === 0 ? 'tap' : 'Enter');
    }
    expect(await page.locator('.docket-strip > .stands').textContent()).toBe(bench.allDone);
    expectPieces(table);
    expect(toGlue.map((line) => line.split(' On each ')[0])).toEqual([toGlue[0], 'Mat', 'Panel']);
    expect(toGlue[0]).toContain('score from edge to edge 105 mm from the top edge');
    for (const line of toGlue.slice(1)) expect(line).toContain('5 mm from every edge');
  }, 120_000);
});

/** Ten bases, mats and panels; only the mats may lie either way. */
function expectPieces(table: ImaginaryTable): void {
  const finished = table.finished();
  const bothWays = (pieces: readonly (readonly number[])[]) =>
    pieces.map((size) => [...size].sort((a, b) => b - a));
  expect(bothWays(finished.Base!)).toEqual(Array.from({ length: 10 }, () => [210, 145]));
  expect(bothWays(finished.Mat!)).toEqual(Array.from({ length: 10 }, () => [135, 95]));
  expect(finished.Panel).toEqual(Array.from({ length: 10 }, () => [125, 85]));
}
