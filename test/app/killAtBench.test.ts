import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { serve } from '../../scripts/serve.mjs';
import { scratchFolder } from '../commandLine.ts';
import { appFolder, chromiumPath, hasChromium, layOnShelf, openLayout } from './appPage.ts';
import { chanceFrom } from './chance.ts';
import { startedOn } from './killedBrowser.ts';

/*
 * A browser is killed while a set is made at the bench of the built page, and started again on what it has left behind.
 * This process is the witness: it keeps what it saw there, when, and whether it was told to be kept.
 */

/** How often it is killed; `npm run kill` does it many more times. */
const kills = Math.ceil(Number(process.env.CARDWRIGHT_KILLS ?? 5) * 0.4);
/** What was told at the bench longer ago than this when the browser is killed is not lost, in milliseconds. */
const mayBeLost = 500;
/** After so many kills another set is begun, so that it is not all done for ever. */
const killsOnOneSet = 5;

const kiteDay = readFileSync('examples/kite-day.card.json', 'utf8');
const { bench } = english;

/** The bench as it was seen. */
interface Seen {
  /** Just before it was brought about. */
  readonly at: number;
  /** How often something had been told there. */
  readonly told: number;
  /** How many lines were done, and whether something was spoiled. */
  readonly stands: string;
  readonly isKept: boolean;
}

type Deed = 'nothing' | 'done' | 'one done' | 'take back' | 'spoil';

describe.skipIf(!hasChromium)(
  `the bench in a browser that is killed (needs ${chromiumPath})`,
  { retry: 0 },
  () => {
    const scratch = scratchFolder();
    let server: Awaited<ReturnType<typeof serve>>;
    beforeAll(async () => {
      server = await serve({ folder: appFolder, host: 'localhost', port: 0 });
    });
    afterAll(async () => {
      await server?.close();
      scratch.remove();
    });

    it(
      `${kills} times goes on where it was`,
      async () => {
        const seed = Number(process.env.CARDWRIGHT_SEED ?? Date.now() % 2 ** 31);
        const random = chanceFrom(seed);
        let id = '';
        let before: readonly Seen[] = [];
        let told = 0;
        for (let kill = 0; kill <= kills; kill += 1) {
          const browser = await startedOn(scratch.path('profile'));
          try {
            const page = await browser.page();
            await page.goto(server.addresses[0]!);
            await page.locator('main').waitFor();
            if (before.length > 0) {
              await openLayout(page, id, 'bench');
              await page.locator('.docket-strip').waitFor();
              judge(before, await seenAfter(page, 'nothing'));
            }
            if (kill === kills) break;
            if (kill % killsOnOneSet === 0) {
              id = await layOnShelf(page, kiteDay);
              await openLayout(page, id, 'bench');
              await page.getByRole('button', { name: bench.begin }).click();
              await page.locator('.docket-strip').waitFor();
            }
            before = await workedUntilKilled(page, random, browser.kill);
            told += before.length;
          } catch (problem) {
            throw new Error(
              `After ${kill} kills, seed ${seed}: ${String(problem)}\n${JSON.stringify(before)}`,
              {
                cause: problem,
              },
            );
          } finally {
            await browser.kill();
          }
        }
        console.log(`${kills} kills at the bench: ${told} deeds seen`);
        expect(told).toBeGreaterThan(kills * 3);
      },
      60_000 + kills * 30_000,
    );
  },
);

/** Holds how the bench stands after the kill against what was seen before. */
function judge(before: readonly Seen[], after: Seen): void {
  const last = before.at(-1)!;
  const settled = before.findLast(({ at, isKept }) => isKept || at < last.at - mayBeLost);
  expect(after.told).toBeGreaterThanOrEqual(settled?.told ?? 0);
  // The last deed may have been kept though the browser could no longer tell of it.
  expect(after.told).toBeLessThanOrEqual(last.told + 1);
  const then = before.find(({ told }) => told === after.told);
  if (then !== undefined) expect(after.stands).toBe(then.stands);
}

/** Works at the bench, and kills the browser at some moment while that goes on; what was seen until then. */
async function workedUntilKilled(
  page: Page,
  random: () => number,
  kill: () => Promise<void>,
): Promise<readonly Seen[]> {
  const seen = [await seenAfter(page, 'nothing')];
  const deeds = 5 + Math.floor(random() * 15);
  const end: { killing: Promise<void> | null } = { killing: null };
  for (let deed = 0; ; deed += 1) {
    if (deed === deeds)
      setTimeout(() => {
        end.killing = kill();
      }, random() * 60);
    const what = random();
    try {
      seen.push(
        await seenAfter(
          page,
          what < 0.1 ? 'spoil' : what < 0.3 ? 'take back' : what < 0.5 ? 'one done' : 'done',
        ),
      );
    } catch (problem) {
      // Nothing answers in a browser that was killed.
      if (end.killing === null) throw problem;
      await end.killing;
      return seen;
    }
  }
}

/** Does something at the bench, where it can be done there, and tells what then stands there. */
async function seenAfter(page: Page, what: Deed): Promise<Seen> {
  return page.evaluate(
    async ({ what, words }) => {
      const strip = () => document.querySelector<HTMLElement>('.docket-strip')!;
      const shown = () => new Promise((resolve) => setTimeout(resolve, 0));
      const tap = async (selector: string, text?: string) => {
        const found = [...strip().querySelectorAll<HTMLButtonElement>(selector)].find(
          ({ textContent }) => text === undefined || textContent === text,
        );
        found?.click();
        await shown();
        return found !== undefined;
      };
      const isSpoiled = () =>
        strip().querySelector('.spoiled') !== null && strip().querySelector('.spoiled h3') === null;
      // The page's clock is this one's, and asking it takes as long as the machine is busy.
      const at = Date.now();
      if (isSpoiled() && what !== 'nothing') {
        // Planned again by its worker, a moment later.
        for (let tries = 0; tries < 1_000; tries += 1) {
          if (await tap('.spoiled button', words.goOn)) break;
          await new Promise((resolve) => setTimeout(resolve, 10));
        }
      } else if (what === 'done') await tap('.doing .done');
      else if (what === 'one done') await tap('.doing .say');
      else if (what === 'take back') await tap('.deeds .say', words.takeBack);
      else if (what === 'spoil') {
        await tap('.deeds .say', words.spoiled);
        if (!(await tap('.spoiled li button'))) await tap('.deeds .say', words.notAfterAll);
      }
      const stands = strip().querySelector('.stands')!.textContent;
      const { told, kept } = strip().dataset;
      return {
        at,
        told: Number(told),
        stands: isSpoiled() ? `${stands} Something is spoiled.` : stands,
        isKept: kept === 'true',
      };
    },
    {
      what,
      words: {
        goOn: bench.spoil.goOn,
        takeBack: bench.takeBack,
        spoiled: bench.spoiled,
        notAfterAll: bench.spoil.notAfterAll,
      },
    },
  );
}
