import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { readLayoutFile, readPostFile } from '../../src/files/index.ts';
import { docketOf } from '../../src/finished/index.ts';
import { arrange } from '../../src/layout/index.ts';
import { usualMarks } from '../../src/planning/index.ts';
import { docketSentences } from '../../src/words/index.ts';
import { builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';

/* What the person holds her cards to: how rare a slip at the tears is to be, and the sizes of her own post. */

const { heldTo } = english.card;
const read = (name: string) => readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');
const gumLeaves = read('test/sets/gum-leaves.card.json');
const counter = read('examples/counter.post.json');

describe.skipIf(!hasChromium)('what finished cards are held to (needs chromium)', () => {
  const app = builtApp();

  it('is said by the person, holds for what is told of every set, and is there on the next visit', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, gumLeaves);
    await openLayout(page, id, 'card');
    await tells(page, docketLines({ wanted: 1 / 20 }));

    await page.locator('.docket-of-set summary', { hasText: heldTo.heading }).click();
    await page.getByRole('button', { name: heldTo.sets }).click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('500');
    await page.keyboard.press('Enter');
    await tells(page, docketLines({ wanted: 1 / 500 }));

    await takeFile(page, counter);
    await page.getByText(heldTo.ownPost).waitFor();
    const tables = postIn(counter);
    await tells(page, docketLines({ wanted: 1 / 500, tables }));

    await takeFile(page, counter.replace('"Fernland"', '7'));
    await page.locator('.held-to [role=alert]').getByText('country').waitFor();
    await tells(page, docketLines({ wanted: 1 / 500, tables }));

    await page.reload();
    await tells(page, docketLines({ wanted: 1 / 500, tables }));
    await page.locator('.docket-of-set summary', { hasText: heldTo.heading }).click();
    await page.getByRole('button', { name: heldTo.layAside }).click();
    await tells(page, docketLines({ wanted: 1 / 500 }));
  });
});

async function takeFile(page: Page, text: string): Promise<void> {
  const file = { name: 'mine.post.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('.held-to input[type=file]').setInputFiles(file);
}

/** Waits until the docket on the page says just that. */
async function tells(page: Page, lines: readonly string[]): Promise<void> {
  const said = () => page.locator('.docket-of-set > details > ul > li').allTextContents();
  await expect.poll(said, { timeout: 20_000 }).toEqual(lines);
}

function postIn(text: string) {
  const found = readPostFile(text);
  if ('problems' in found) throw new Error('the example is sound');
  return [found.table];
}

/** What the library says of the set. */
function docketLines(asks: Omit<Parameters<typeof docketOf>[2], 'marks'>): readonly string[] {
  const found = readLayoutFile(gumLeaves);
  if (!('layout' in found)) throw new Error('the set is sound');
  const { layout } = found;
  const docket = docketOf(layout, arrange(layout), { marks: usualMarks(layout), ...asks });
  return docketSentences(docket, layout, { units: layout.units, glyphs: 'printed' }).flatMap(
    ({ says }) => says,
  );
}
