import { mkdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';

/* How the part in hand is put on: its plate and its words, where the part is. */

const lanterns = readFileSync(new URL('../../examples/lantern-walk.card.json', import.meta.url), 'utf8');

describe.skipIf(!hasChromium)('how a part is put on (needs chromium)', () => {
  const app = builtApp();

  it('is drawn and said on the card’s screen, part by part', async () => {
    const page = await app.page({ widthPx: 820, heightPx: 1180 });
    await openLayout(page, await layOnShelf(page, lanterns), 'card');
    for (const [name, letters] of [
      ['Moon', 'E turned over, with what holds it; and E on B, seen from the front.'],
      ['Sentiment mat', 'F turned over, with what holds it; and F on B, seen from the front.'],
    ] as const) {
      await page.locator('.pile-list').getByRole('button', { name, exact: true }).click();
      const own = page.locator('.put-on');
      if ((await own.getAttribute('open')) === null) await own.locator('summary').click();
      const plate = own.getByRole('img', { name: letters });
      await plate.waitFor();
      expect(await own.textContent()).toContain('Raise it on foam tape');
      // Its type is no smaller than the least of the page.
      const least = await plate
        .locator('text')
        .evaluateAll((texts) => Math.min(...texts.map((text) => text.getBoundingClientRect().height)));
      expect(least).toBeGreaterThan(14);
      if (process.env.LOOK === undefined) continue;
      mkdirSync(process.env.LOOK, { recursive: true });
      for (const width of [820, 390]) {
        await page.setViewportSize({ width, height: 1180 });
        await page.waitForTimeout(500);
        await own.screenshot({ path: `${process.env.LOOK}/put-on-${name}-${width}.png` });
      }
      await page.setViewportSize({ width: 820, height: 1180 });
    }
  });
});
