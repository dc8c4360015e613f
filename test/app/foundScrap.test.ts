import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';
import { handOn } from './hand.ts';

/* A piece is spoiled and the sheets do not give another; a scrap that lies there does. */

const { bench } = english;
const { spoil } = bench;

/** One sheet gives just the four mats. */
const fourMats = JSON.stringify({
  cardwright: 1,
  title: 'Four mats',
  units: 'in',
  cards: 4,
  base: { size: ['4 1/4 in', '5 1/2 in'], fold: 'none', paper: null },
  papers: { dusk: { name: 'Dusk', up: 'one-way', sheets: [{ size: ['8 in', '10 in'], count: 1 }] } },
  parts: [{ id: 'mat', name: 'Mat', size: ['4 in', '5 in'], paper: 'dusk' }],
});

describe.skipIf(!hasChromium)('a scrap besides', () => {
  const app = builtApp();

  it('makes good what is spoiled, and not where it is too small', async () => {
    const page = await app.page({ widthPx: 820 });
    await openLayout(page, await layOnShelf(page, fourMats), 'bench');
    const hand = handOn(page);
    const named = (name: string) => page.getByRole('button', { name, exact: true });
    await hand.tap(named(bench.begin));
    for (const _ of [1, 2]) await hand.tap(named(bench.done));
    await hand.tap(named(bench.spoiled));
    await hand.tap(page.getByRole('button', { name: /^Mat, .*there: / }).first());
    await page.getByText(spoil.short).waitFor();

    const scrap = page.locator('.found-scrap');
    await hand.tap(scrap.locator('summary'));
    await hand.tap(named(spoil.found.take));
    // Four inches square is too small for a mat.
    await named(spoil.found.notAfterAll).waitFor();
    await page.getByText(spoil.short).waitFor();
    await hand.tap(named(spoil.found.notAfterAll));

    await hand.fill(scrap.getByRole('button', { name: `${spoil.found.labels.width}:` }), '4 1/2');
    await hand.fill(scrap.getByRole('button', { name: `${spoil.found.labels.height}:` }), '6');
    await hand.tap(named(spoil.found.take));
    await hand.tap(named(spoil.goOn));
    await page.locator('.present-line').getByText('4 1⁄2 × 6 in').first().waitFor();
    for (let line = 0; line < 20 && (await named(bench.done).count()) > 0; line += 1)
      await hand.tap(named(bench.done));
    expect(await page.locator('.docket-strip > .stands').textContent()).toBe(bench.allDone);
  });
});
