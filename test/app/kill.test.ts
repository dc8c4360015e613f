import { appendFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { addressOf, routeOf } from '../../apps/web/route.ts';
import { serve } from '../../scripts/serve.mjs';
import { scratchFolder } from '../commandLine.ts';
import { appFolder, carryInto, chromiumPath, hasChromium } from './appPage.ts';
import { chanceFrom } from './chance.ts';
import type * as inPage from './inPage.ts';
import { startedOn } from './killedBrowser.ts';

/*
 * A browser is killed while the built page is worked on in one to four tabs, and started again on what it has left
 * behind. This process is the witness: it keeps what it saw on the page, and when.
 */

/** How often it is killed; `npm run kill` does it many more times. */
const kills = Number(process.env.CARDWRIGHT_KILLS ?? 5);
/** An edit that is older than this when the browser is killed is not lost, in milliseconds. */
const mayBeLost = 500;
/** After so many kills it goes on with a fresh profile, so that the shelf does not grow for ever. */
const killsOnOneShelf = 20;

const layout = JSON.stringify({
  cardwright: 1,
  title: 'Held',
  units: 'in',
  cards: 1,
  base: { size: ['4 1/4 in', '5 1/2 in'], fold: 'left', paper: null },
  papers: {},
  parts: [],
});

/** What one tab was seen to have, from its beginning on. */
interface Witness {
  readonly seen: { readonly at: number; readonly cards: number }[];
  /** What was said to be saved: where, and with how many cards. */
  readonly saved: { readonly id: string; readonly revision: number; readonly cards: number }[];
}

type InPage = { readonly fromTest: typeof inPage };

describe.skipIf(!hasChromium)(`a browser that is killed (needs ${chromiumPath})`, { retry: 0 }, () => {
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
    `${kills} times loses nothing that was saved, no edit older than half a second, and no layout`,
    async () => {
      const seed = Number(process.env.CARDWRIGHT_SEED ?? Date.now() % 2 ** 31);
      const random = chanceFrom(seed);
      const total = { edits: 0, saved: 0, seconds: 0 };
      let before: readonly Witness[] = [];
      for (let kill = 0; kill <= kills; kill += 1) {
        const browser = await startedOn(scratch.path(`profile-${Math.floor(kill / killsOnOneShelf)}`));
        try {
          const first = await opened(await browser.page());
          // A profile that is fresh knows nothing of what went before.
          if (kill % killsOnOneShelf !== 0) total.seconds += await judged(first, before);
          if (kill === kills) break;
          const id = await layOnShelf(first);
          const tabs = [first];
          for (let count = 1 + Math.floor(random() ** 2 * 4); tabs.length < count; )
            tabs.push(await opened(await browser.page(), addressOf({ screen: 'card', id })));
          before = await workedUntilKilled(tabs, id, random, browser.kill);
          total.edits += before.reduce((sum, { seen }) => sum + seen.length, 0);
          total.saved += before.reduce((sum, { saved }) => sum + saved.length, 0);
          // A fresh profile has to be looked at before it is left.
          if ((kill + 1) % killsOnOneShelf === 0) {
            await browser.kill();
            const again = await startedOn(scratch.path(`profile-${Math.floor(kill / killsOnOneShelf)}`));
            try {
              total.seconds += await judged(await opened(await again.page()), before);
            } finally {
              await again.kill();
            }
          }
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
        if (kill % 50 === 49) console.log(`${kill + 1} kills, ${JSON.stringify(total)}`);
      }
      console.log(
        `${kills} kills: ${total.edits} edits seen, ${total.saved} times told to be saved, ${total.seconds} second versions`,
      );
      expect(total.edits).toBeGreaterThan(kills * 3);
      expect(total.saved).toBeGreaterThan(kills);
    },
    60_000 + kills * 30_000,
  );

  it('in the middle of a record of its log loses nothing of what comes after', async () => {
    const profile = scratch.path('torn');
    const first = await startedOn(profile);
    const page = await opened(await first.page());
    const before = await layOnShelf(page);
    await first.kill();
    await tearEndOfLog(profile);
    const second = await startedOn(profile);
    const since = await layOnShelf(await opened(await second.page()));
    await second.kill();
    const third = await startedOn(profile);
    const kept = await keptIn(await opened(await third.page()));
    await third.kill();
    expect(kept.map(({ id }) => id).sort()).toEqual([before, since].sort());
  }, 120_000);

  async function opened(page: Page, hash = ''): Promise<Page> {
    await page.goto(`${server.addresses[0]!}${hash}`);
    await page.locator('main').waitFor();
    return page;
  }
});

async function layOnShelf(page: Page): Promise<string> {
  await carryInto(page);
  return page.evaluate((text) => (globalThis as unknown as InPage).fromTest.layOnShelf(text), layout);
}

/** Works in turn in every tab, and kills the browser at some moment while that goes on; what was seen until then. */
async function workedUntilKilled(
  tabs: readonly Page[],
  id: string,
  random: () => number,
  kill: () => Promise<void>,
): Promise<readonly Witness[]> {
  const witnesses = tabs.map((): Witness => ({ seen: [], saved: [] }));
  for (const [index, tab] of tabs.entries()) {
    await tab.evaluate(
      (hash) => {
        window.location.hash = hash;
      },
      addressOf({ screen: 'card', id }),
    );
    await tab.locator('.head[data-saving]').waitFor();
    await edited(tab, 'nothing', witnesses[index]!);
  }
  const edits = 10 + Math.floor(random() * 60);
  const end: { killing: Promise<void> | null } = { killing: null };
  for (let edit = 0; ; edit += 1) {
    if (edit === edits)
      setTimeout(() => {
        end.killing = kill();
      }, random() * 60);
    const index = Math.floor(random() * tabs.length);
    const what = random();
    try {
      await edited(
        tabs[index]!,
        what < 0.08 ? 'undo' : what < 0.14 ? 'redo' : what < 0.25 ? 'close' : 'more',
        witnesses[index]!,
      );
    } catch (problem) {
      // Nothing answers in a browser that was killed.
      if (end.killing === null) throw problem;
      await end.killing;
      return witnesses;
    }
  }
}

/** Does something to the number of cards on a page, and puts down what then stands there, with the moment just before on that page. */
async function edited(
  tab: Page,
  what: 'nothing' | 'undo' | 'redo' | 'close' | 'more',
  { seen, saved }: Witness,
): Promise<void> {
  const { at, cards, stage, revision, hash } = await tab.evaluate(
    async ({ what, label }) => {
      const blank = () =>
        [...document.querySelectorAll<HTMLButtonElement>('button.blank')].find(({ textContent }) =>
          textContent.startsWith(label),
        );
      const input = () => document.querySelector<HTMLInputElement>('input[data-blank=cards]');
      const press = (on: EventTarget, key: string, keys: KeyboardEventInit = {}) =>
        on.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...keys }));
      const shown = () => new Promise((resolve) => setTimeout(resolve, 0));
      // The page's clock is this one's, and asking it takes as long as the machine is busy.
      const at = Date.now();
      // While it is typed in, a blank shows what is typed, whatever else is undone.
      if (what !== 'more' && what !== 'nothing' && input() !== null) {
        press(input()!, 'Enter');
        await shown();
      }
      if (what === 'undo') press(window, 'z', { ctrlKey: true });
      else if (what === 'redo') press(window, 'z', { ctrlKey: true, shiftKey: true });
      else if (what === 'more') {
        if (input() === null) {
          blank()?.click();
          await shown();
        }
        press(input()!, 'ArrowUp');
      }
      await shown();
      const head = document.querySelector<HTMLElement>('.head')!;
      return {
        at,
        cards: Number((input()?.value ?? blank()?.textContent ?? '').replace(/^\D+/u, '')),
        stage: head.dataset.saving,
        revision: Number(head.dataset.revision),
        hash: window.location.hash,
      };
    },
    { what, label: english.card.blanks.cards },
  );
  if (seen.at(-1)?.cards !== cards) seen.push({ at, cards });
  const route = routeOf(hash);
  if (stage === 'saved' && 'id' in route && saved.at(-1)?.revision !== revision)
    saved.push({ id: route.id, revision, cards });
}

/** Every layout there is; throws where one cannot be opened. */
async function keptIn(page: Page): ReturnType<typeof inPage.keptInBrowser> {
  await carryInto(page);
  return page.evaluate(() => (globalThis as unknown as InPage).fromTest.keptInBrowser());
}

/**
 * Writes the beginning of a record to the end of the browser's log, as a write leaves it that was cut short: its
 * header (checksum, length, kind) promises more than there is. As in LevelDB's doc/log_format.md.
 */
async function tearEndOfLog(profile: string): Promise<void> {
  const folder = join(profile, 'Default', 'IndexedDB');
  const logs = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.log'));
  const header = Buffer.alloc(7);
  header.writeUInt32LE(0x1234_5678, 0);
  header.writeUInt16LE(2_000, 4);
  header.writeUInt8(1, 6);
  expect(logs).toHaveLength(1);
  await appendFile(join(folder, logs[0]!), Buffer.concat([header, Buffer.alloc(300, 'x')]));
}

/** Holds what is kept against what was seen; how many second versions there are. */
async function judged(page: Page, witnesses: readonly Witness[]): Promise<number> {
  const kept = await keptIn(page);
  const killed = Math.max(...witnesses.flatMap(({ seen }) => seen.map(({ at }) => at)));
  for (const { seen, saved } of witnesses) {
    for (const { id, revision, cards } of saved) {
      const found = kept.find((one) => one.id === id);
      expect(found, `${id} was said to be saved`).toBeDefined();
      expect(found!.revision).toBeGreaterThanOrEqual(revision);
      if (found!.revision === revision) expect(found!.cards).toBe(cards);
    }
    const settled = seen.findLastIndex(({ at }) => at < killed - mayBeLost);
    // What a window began with is no edit of its own, and another may have gone on from there.
    if (settled <= 0) continue;
    const mayBe = seen.slice(settled).map(({ cards }) => cards);
    expect(
      kept.map(({ cards }) => cards).some((cards) => mayBe.includes(cards)),
      `one of ${mayBe} is kept`,
    ).toBe(true);
  }
  return kept.filter(({ besides }) => besides !== null).length;
}
