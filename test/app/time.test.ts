import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { builtApp, hasChromium, layOnShelf, openLayout } from './appPage.ts';
import { kept, type } from './blanks.ts';

/* How long a set takes, on its card's screen: told, drawn, and said otherwise by the person. */

const { bench } = english;
const { time } = english.card;
const lights = readFileSync(new URL('../sets/harbour-lights.card.json', import.meta.url), 'utf8');
const bow = readFileSync(new URL('../sets/tulip-bow.card.json', import.meta.url), 'utf8');

describe.skipIf(!hasChromium)('the time of a set (needs chromium)', () => {
  const app = builtApp();

  it('is told and drawn, and follows what is said of helpers, stations and minutes', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, bow);
    await openLayout(page, id, 'card');
    await page.locator('.docket-of-set summary', { hasText: time.heading }).click();
    await page.getByText('One pair of hands, each task for all ten cards in a row').waitFor();
    await page.locator('.docket-of-set figure svg').waitFor();

    await type(page, time.labels.helpers, '6');
    await page.getByText('Six helpers, each making two cards at most').waitFor();
    await type(page, time.labels.stations, '3');
    await page.getByText('Six helpers at three stations').waitFor();
    await page.getByText(time.counted.stations('3', 3)).waitFor();
    expect(await page.locator('.docket-of-set figure svg text', { hasText: 'Station 3' }).count()).toBe(1);
    await type(page, time.minutesLabels.score, '1.5');
    await page.getByText('your own for one of').waitFor();
    const file = JSON.parse(await kept(page)) as { making: object };
    expect(file.making).toEqual({ helpers: 6, stations: 3, minutes: { score: 1.5 } });

    // What cannot be is refused where it is typed.
    await page.getByRole('button', { name: time.labels.stations }).click();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('9');
    await page.getByText('the set has 6 helpers').first().waitFor();
    await page.keyboard.press('Escape');
  });

  it('stands at the bench as a time of the clock, and what the set took is reckoned with from then on', async () => {
    const page = await app.page();
    const id = await layOnShelf(page, lights);
    await openLayout(page, id, 'bench');
    await page.getByRole('button', { name: bench.begin }).click();
    await page.getByText(/^Done by about /).waitFor();
    const done = page.getByRole('button', { name: bench.done, exact: true });
    const learnt = page.getByRole('button', { name: bench.learnt.take });
    await done.waitFor();
    for (let at = 0; at < 60 && (await page.locator('.present-line').count()) > 0; at += 1) {
      const before = await page.locator('.present-line h3').textContent();
      await done.click();
      await page.waitForFunction(
        (said) => document.querySelector('.present-line h3')?.textContent !== said,
        before,
      );
    }
    await learnt.click();
    await page.getByText(bench.learnt.taken).waitFor();
    const file = JSON.parse(await kept(page)) as {
      making: { minutes: { cut: number } };
      parts: readonly { minutes: { lay: number } }[];
    };
    // It was told in seconds what is reckoned in minutes.
    expect(file.making.minutes.cut).toBeLessThan(0.25);
    for (const { minutes } of file.parts) expect(minutes.lay).toBeLessThan(0.75);
  });
});
