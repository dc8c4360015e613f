import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { readLayoutFile } from '../../src/files/index.ts';
import { arrange } from '../../src/layout/index.ts';
import { cardwright } from '../commandLine.ts';
import { allOnShelf, builtApp, hasChromium, isWorkedOut, layOnShelf, openLayout } from './appPage.ts';
import { handOn, keysOf } from './hand.ts';

/*
 * Sizes that suit the sheets, and the same layout for another card, other units and other sheets, from the screens a
 * maker would look at. What comes out is held against the command line, and against what was worked out by hand before.
 */

const { recast: recastWords, papers, trimming } = english;
const { suit } = trimming;

/** The set whose four panels of three inches take all of a sheet that was sold as twelve inches and is a mark less. */
const trap = readFileSync('test/sets/bees-and-dots.card.json', 'utf8').replace(
  '"up": "one-way",\n      "sheets": [{ "size": ["12 in", "12 in"]',
  '"up": "one-way",\n      "sheets": [{ "size": ["11 15/16 in", "11 15/16 in"]',
);
const fern = readFileSync('test/sets/fern-walk.card.json', 'utf8');

describe.skipIf(!hasChromium)('other sizes', () => {
  const app = builtApp();

  it('that suit: a mark off the panel makes the ten cards, by keys alone, and is undone as one', async () => {
    const page = await app.page({ widthPx: 820 });
    const id = await layOnShelf(page, trap);
    await openLayout(page, id, 'trimming');
    const keys = keysOf(page);
    const panel = page.locator('.suit');
    await keys.press(panel.locator('summary'));
    await panel.getByText(suit.noRoom).waitFor();
    await keys.choose(panel.getByRole('button', { name: `${suit.labels.part}:` }), 'upper');
    await keys.choose(panel.getByRole('button', { name: `${suit.labels.length}:` }), suit.lengths.height);
    await keys.press(panel.getByRole('button', { name: suit.let, exact: true }));
    await keys.fill(panel.getByRole('button', { name: `${suit.labels.most}:` }), '3 in');
    await isWorkedOut(page);
    await keys.press(panel.getByRole('button', { name: suit.go, exact: true }));
    await panel.getByText('Upper 2 15⁄16 in high instead of 3').waitFor();
    await panel.getByText('The gap between upper and lower becomes 5⁄16 in instead of 1⁄4.').waitFor();
    await keys.press(panel.getByRole('button', { name: suit.take(10, '10') }));
    await isWorkedOut(page);
    await expect.poll(() => page.locator('.stands').getAttribute('data-stage')).toBe('answered');
    expect(await page.getByText(trimming.short).count()).toBe(0);

    const read = readLayoutFile((await allOnShelf(page)).at(0)!.text);
    if (!('layout' in read)) throw new Error('The layout stays sound');
    const [, upper, lower] = arrange(read.layout).parts;
    const sixteenths = (length: number) => length / 2540;
    expect(sixteenths(upper!.cut!.height)).toBe(2 * 16 + 15);
    expect(sixteenths(lower!.cut!.height)).toBe(16 + 12);

    await page.keyboard.press('Control+z');
    await page.getByText(trimming.short).waitFor();
  });

  it('that suit are looked for in vain where only what follows may move, and where ends are the wrong way round', async () => {
    const page = await app.page({ widthPx: 390 });
    await openLayout(page, await layOnShelf(page, trap), 'trimming');
    const hand = handOn(page);
    const panel = page.locator('.suit');
    await hand.tap(panel.locator('summary'));
    await hand.choose(panel.getByRole('button', { name: `${suit.labels.part}:` }), 'mat');
    await hand.choose(panel.getByRole('button', { name: `${suit.labels.length}:` }), suit.lengths.width);
    await hand.tap(panel.getByRole('button', { name: suit.let, exact: true }));
    await panel.getByText(suit.onlyFollows).waitFor();
    await hand.tap(panel.getByRole('button', { name: `${suit.labels.least}:` }));
    await page.keyboard.type('6 in');
    await panel.locator('.opened').getByRole('alert').getByText('6 in').waitFor();
    await page.keyboard.press('Escape');
    await hand.tap(panel.getByRole('button', { name: suit.keep }));
    await panel.getByText(suit.noRoom).waitFor();
  });

  it('of the sheets and in other units: put on the shelf as a layout of its own, the very file that the command line writes', async () => {
    const page = await app.page({ widthPx: 820 });
    const id = await layOnShelf(page, fern);
    await openLayout(page, id, 'papers');
    const hand = handOn(page);
    const panel = page.locator('.recast');
    await hand.tap(panel.locator('summary'));
    await hand.choose(
      panel.getByRole('button', { name: `${recastWords.labels.units}:` }),
      recastWords.units.mm,
    );
    const ofFern = panel.locator('.sentence', { hasText: 'Fern print' });
    await hand.choose(ofFern.getByRole('button', { name: `${papers.sizeLabel}:` }), recastWords.own);
    await hand.fill(ofFern.getByRole('button', { name: `${papers.sheetLabels.width}:` }), '300');
    await hand.fill(ofFern.getByRole('button', { name: `${papers.sheetLabels.height}:` }), '300');
    await hand.tap(panel.getByRole('button', { name: recastWords.go }));
    const told = page.locator('.recast-told');
    await told
      .getByText('A sheet of Fern print would give nine of Upper panel (95 × 76 mm), not twelve.')
      .waitFor();
    await hand.tap(told.getByRole('button', { name: recastWords.keep }));
    await page.locator('.head[data-screen=card]').waitFor();
    const all = await allOnShelf(page);
    expect(all).toHaveLength(2);
    const kept = all.find((layout) => layout.id !== id)!;

    const run = await cardwright(
      ['recast', '-', '-o', '-', '--units', 'mm', '--sheets', 'fern 300 x 300 mm, 1'],
      fern,
    );
    expect(run.status).toBe(0);
    const { title, ...written } = JSON.parse(kept.text) as { title: string };
    const { title: _, ...byCommand } = JSON.parse(run.out) as { title: string };
    expect(title).toMatch(/^Fern walk, \d+ x \d+ mm$/u);
    expect(written).toEqual(byCommand);

    // Back to the layout that it was made from, and on again.
    await page.goBack();
    await page.locator('.head[data-screen=papers]').getByText('Fern walk', { exact: true }).waitFor();
    await page.goForward();
    await page.locator('.head[data-screen=card]').getByText(title).waitFor();
  });

  it('that cannot be are refused in a sentence', async () => {
    const page = await app.page();
    await openLayout(page, await layOnShelf(page, fern), 'card');
    const hand = handOn(page);
    const panel = page.locator('.recast');
    await hand.tap(panel.locator('summary'));
    await hand.fill(panel.getByRole('button', { name: `${recastWords.labels.width}:` }), '13 in');
    await hand.tap(panel.getByRole('button', { name: recastWords.go }));
    await panel.getByRole('alert').getByText('larger than any sheet').waitFor();
    expect(await allOnShelf(page)).toHaveLength(1);
  });
});
