import { cpSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { scratchFolder } from '../commandLine.ts';
import {
  appFolder,
  builtApp,
  chromiumPath,
  hasChromium,
  isWorkedOut,
  layOnShelf,
  layoutScreens,
  nameInTheHouse,
  openLayout,
  turnTo,
} from './appPage.ts';

const example = readFileSync('examples/kite-day.card.json', 'utf8');

/** Goes to every screen of a layout, and finds it again after loading. */
async function walk(page: Page): Promise<void> {
  const id = await layOnShelf(page, example);
  await openLayout(page, id, 'card');
  for (const screen of layoutScreens) {
    await turnTo(page, screen);
    expect(await page.locator('h1').textContent()).toContain('Kite day');
  }
  await page.reload();
  await isWorkedOut(page);
  expect(await page.locator('h1').textContent()).toContain('Kite day');
  expect(await page.locator('.stands').textContent()).toMatch(/^Enough for 14 cards/u);
}

describe("the page's policy", () => {
  // Level 3 of the Content Security Policy, W3C; the form of the document is ours, so it is read as plain text.
  const html = readFileSync(join(appFolder, 'index.html'), 'utf8');
  const content = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/u.exec(html)?.[1] ?? '';
  const policy = new Map(
    content.split(';').map((directive) => {
      const [name = '', ...sources] = directive.trim().split(/\s+/u);
      return [name, sources] as const;
    }),
  );

  it('lets nothing in but what it names', () => {
    expect(policy.get('default-src')).toEqual(["'none'"]);
    expect(policy.get('script-src')).toEqual(["'self'", "'wasm-unsafe-eval'"]);
    expect(policy.get('style-src')).toEqual(["'self'"]);
    expect(policy.get('connect-src')).toEqual(["'self'"]);
    expect(policy.get('worker-src')).toEqual(["'self'"]);
    expect(policy.get('base-uri')).toEqual(["'none'"]);
    expect(policy.get('form-action')).toEqual(["'none'"]);
    expect(policy.get('require-trusted-types-for')).toEqual(["'script'"]);
    // No default policy, which would take any text for a script.
    expect(policy.get('trusted-types')).toEqual(['cardwright']);
  });

  it('names no host, no scheme of the network and no script or style that stands in the page', () => {
    const shown = ['img-src', 'frame-src', 'media-src'];
    for (const [name, sources] of policy) {
      if (name === 'trusted-types') continue;
      for (const source of sources) {
        const may = ["'none'", "'self'", "'wasm-unsafe-eval'", "'script'"];
        expect([...may, ...(shown.includes(name) ? ['data:', 'blob:'] : [])], name).toContain(source);
      }
    }
    expect(html).not.toMatch(/<style|\sstyle=|\son\w+=|<script(?![^>]*\ssrc=)/u);
  });

  it('stands before anything that is loaded, and every address in the page is a relative one', () => {
    const loaded = [...html.matchAll(/\s(?:src|href)="([^"]*)"/gu)];
    expect(loaded.length).toBeGreaterThan(1);
    for (const [, address] of loaded) expect(address).toMatch(/^\.\//u);
    expect(html.indexOf('Content-Security-Policy')).toBeLessThan(
      Math.min(...loaded.map(({ index }) => index)),
    );
  });
});

describe.skipIf(!hasChromium)(`in a browser (needs ${chromiumPath})`, () => {
  const app = builtApp();

  it('stops a script of another host, text as a script, and asking another host', async () => {
    const page = await app.page();
    const stopped = await page.evaluate(async () => {
      const outcome = async (attempt: () => unknown) => {
        try {
          await attempt();
          return 'done';
        } catch {
          return 'stopped';
        }
      };
      const loaded = (script: HTMLScriptElement) =>
        new Promise((resolve, reject) => {
          script.onload = resolve;
          script.onerror = reject;
          document.body.append(script);
        });
      // What a test hands in may do more; what a timer of the page runs may not.
      await new Promise((resolve) => setTimeout(resolve, 10));
      return {
        eval: await outcome(() => new Function('return 1')),
        html: await outcome(() => {
          document.createElement('div').innerHTML = '<b>bold</b>';
        }),
        ask: await outcome(() => fetch('http://elsewhere.invalid/')),
        script: await outcome(() => {
          const script = document.createElement('script');
          script.src = 'http://elsewhere.invalid/script.js';
          return loaded(script);
        }),
        inline: await outcome(() => {
          const style = document.createElement('style');
          style.textContent = 'body { display: none }';
          document.head.append(style);
          if (getComputedStyle(document.body).display !== 'none') throw new Error('it has no effect');
        }),
      };
    });
    expect(new Set(Object.values(stopped)), JSON.stringify(stopped)).toEqual(new Set(['stopped']));
    // The harness hears of them too, the last one last, so it would hear of one that is not provoked.
    const heard: string[] = [];
    const hear = () => {
      heard.push(...app.troubles());
      return heard.at(-1);
    };
    await expect.poll(hear).toContain('policy, style-src');
    expect(heard.join()).toContain('policy, require-trusted-types-for');
    expect(heard.join()).toContain('policy, connect-src: http://elsewhere.invalid/');
  });

  it('works from its own address', async () => {
    await walk(await app.page());
  });
});

describe.skipIf(!hasChromium)(`in a folder of a host (needs ${chromiumPath})`, () => {
  const scratch = scratchFolder();
  afterAll(scratch.remove);
  const folder = scratch.path('host');
  mkdirSync(join(folder, 'our', 'cards'), { recursive: true });
  if (hasChromium) cpSync(appFolder, join(folder, 'our', 'cards'), { recursive: true });
  const app = builtApp({ folder });

  it('works', async () => {
    await walk(await app.page({ from: `${app.address()}our/cards/` }));
  });
});

describe.skipIf(!hasChromium)(`over plain http in a network (needs ${chromiumPath})`, () => {
  const app = builtApp({ host: '0.0.0.0' });

  it('works, though what needs a secure context is missing there', async () => {
    const { port } = new URL(app.address());
    const page = await app.page({ from: `http://${nameInTheHouse}:${port}/` });
    expect(
      await page.evaluate(() => [isSecureContext, 'locks' in navigator, 'serviceWorker' in navigator]),
    ).toEqual([false, false, false]);
    await walk(page);
  });
});

describe.skipIf(!hasChromium)(`in a browser that keeps nothing (needs ${chromiumPath})`, () => {
  const app = builtApp();

  it('a set is begun and worked on, under a line that says so, and copied to a file', async () => {
    const page = await app.page();
    await page.addInitScript(() => {
      for (const name of ['indexedDB', 'IDBKeyRange'])
        Object.defineProperty(window, name, { value: undefined, configurable: true });
    });
    await page.reload();
    const { general, shelf, card } = english;
    const notice = page.locator('.notice', { hasText: general.saving.notKept });
    await notice.waitFor();
    await page.getByRole('button', { name: shelf.begin.go }).click();
    await isWorkedOut(page);
    await page.getByRole('button', { name: card.blanks.cards }).click();
    await page.keyboard.type('7');
    await page.keyboard.press('Enter');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      notice.getByRole('button', { name: general.saving.saveCopy }).click(),
    ]);
    expect(JSON.parse(readFileSync(await download.path(), 'utf8'))).toMatchObject({ cards: 7 });
    await turnTo(page, 'shelf');
    await page.getByText(shelf.standsHere(1)).waitFor();
    expect(await page.locator('.kept').textContent()).toMatch(
      /^On this page only; copied to a file as it is now/u,
    );
  });
});
