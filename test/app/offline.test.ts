import { cpSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { addressOf } from '../../apps/web/route.ts';
import { drawnIcons } from '../../scripts/icons.mjs';
import { offlineBuild } from '../../scripts/offlineBuild.mjs';
import { serve } from '../../scripts/serve.mjs';
import { readPdf, wordsOf } from '../../src/printing/testing/pdfReader.ts';
import { scratchFolder } from '../commandLine.ts';
import {
  appFolder,
  builtApp,
  chromiumPath,
  hasChromium,
  isWorkedOut,
  layOnShelf,
  nameInTheHouse,
  openLayout,
  turnTo,
} from './appPage.ts';
import { goThrough } from './atTheBench.ts';

/* The page without its host, and with a newer build of it there. */

const { bench, card, general, guide, shelf } = english;
const { offline } = shelf;
const example = readFileSync('examples/kite-day.card.json', 'utf8');
const patience = { timeout: 15_000 };
const laterColophon = 'The later build works everything out on this device.';

/** A later build of the page in a folder: it says another sentence, and none of its files has the name it had. */
async function laterBuild(folder: string): Promise<void> {
  cpSync(appFolder, folder, { recursive: true });
  const assets = join(folder, 'assets');
  const names = readdirSync(assets);
  const later = (text: string) =>
    names
      .reduce((changed, name) => changed.replaceAll(name, renamed(name)), text)
      .replaceAll(general.colophon, laterColophon);
  for (const path of [join(folder, 'index.html'), ...names.map((name) => join(assets, name))]) {
    if (/\.(?:js|css|html)$/u.test(path)) writeFileSync(path, later(readFileSync(path, 'utf8')));
  }
  for (const name of names) renameSync(join(assets, name), join(assets, renamed(name)));
  await offlineBuild(folder);
}

function renamed(name: string): string {
  return name.replace(/(\.\w+)$/u, '-later$1');
}

describe.skipIf(!hasChromium)(`the page itself is kept (needs ${chromiumPath})`, () => {
  const app = builtApp();
  const scratch = scratchFolder();
  const later = scratch.path('later');
  const hosts: Host[] = [];
  let hostsSoFar = 0;
  afterEach(async () => {
    for (const host of hosts.splice(0)) await host.stop();
  });
  beforeAll(() => laterBuild(later));
  afterAll(scratch.remove);

  /** A host of its own, whose folder `our/cards/` has the page; what is there can be changed, and it can be stopped. */
  class Host {
    private served: Awaited<ReturnType<typeof serve>> | null = null;
    readonly folder = scratch.path(`host-${++hostsSoFar}`);
    address = '';

    static async of(build: string): Promise<Host> {
      const host = new Host();
      hosts.push(host);
      host.has(build);
      host.served = await serve({ folder: host.folder, host: 'localhost', port: 0 });
      host.address = `${host.served.addresses[0]!}our/cards/`;
      return host;
    }

    /** Has this build from now on, and nothing of the one before. */
    has(build: string, change: (page: string) => void = () => {}): void {
      const page = join(this.folder, 'our', 'cards');
      rmSync(page, { recursive: true, force: true });
      mkdirSync(page, { recursive: true });
      cpSync(build, page, { recursive: true });
      change(page);
    }

    async stop(): Promise<void> {
      await this.served?.close();
      this.served = null;
    }
  }

  const isKept = (page: Page) => page.getByText(offline.kept).waitFor();

  /** Loads the page again with nobody left to serve it, and sees that it is there. */
  async function reload(page: Page): Promise<void> {
    await page.reload();
    await page.locator('main').waitFor();
  }

  /** A page hears that the host may have something newer, as when it is looked at again. */
  const lookAgain = (page: Page) =>
    page.evaluate(() => {
      document.dispatchEvent(new Event('visibilitychange'));
    });

  async function expectGuide(page: Page, title: string): Promise<void> {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: guide.save }).click(),
    ]);
    const { pages } = await readPdf(readFileSync(await download.path()));
    expect(wordsOf(pages[0]!)).toContain(title);
  }

  const colophon = (page: Page) => page.locator('.colophon').textContent();
  const builds = (page: Page) => page.evaluate(async () => (await caches.keys()).length);
  const newer = (page: Page) => page.getByText(offline.newer);
  const load = (page: Page) => page.getByRole('button', { name: offline.load });

  it('at the first visit: with the host stopped, it opens, a set is planned, its guide is made and it is cut at the bench', async () => {
    const host = await Host.of(appFolder);
    const page = await app.page({ from: host.address, keepsPage: true });
    await isKept(page);
    await host.stop();
    await reload(page);
    await page.getByRole('button', { name: shelf.begin.labels.title }).click();
    await page.keyboard.type('Lantern walk');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: shelf.begin.go }).click();
    await isWorkedOut(page);
    expect(await page.locator('.stands').getAttribute('data-stage')).toBe('answered');
    await turnTo(page, 'guide');
    await expectGuide(page, 'Lantern walk');
    await turnTo(page, 'bench');
    expect(await goThrough(page)).toBeGreaterThan(5);
    // What was done there is kept, with nobody to load the page from.
    await page.waitForFunction(
      () => document.querySelector<HTMLElement>('.docket-strip')?.dataset.kept === 'true',
    );
    await reload(page);
    await page.getByText(bench.allDone).waitFor();
    // At another of its addresses, in another window.
    const second = await page.context().newPage();
    await second.goto(`${host.address}index.html?from=home${addressOf({ screen: 'shelf' })}`);
    await second.getByText('Lantern walk').first().waitFor();
    await isKept(second);
    app.troubles();
  });

  it('whole or not at all, and the page says what is missing', async () => {
    const host = await Host.of(appFolder);
    const solver = readdirSync(join(appFolder, 'assets')).find((name) => name.endsWith('.wasm'))!;
    host.has(appFolder, (page) => rmSync(join(page, 'assets', solver)));
    const page = await app.page({ from: host.address, keepsPage: true });
    await page.getByText(`assets/${solver}`).waitFor();
    expect(await builds(page)).toBe(0);
    // One that is there and not what was built is as bad.
    host.has(appFolder, (folder) => writeFileSync(join(folder, 'assets', solver), 'nothing that solves'));
    await reload(page);
    await page.getByText(`assets/${solver}`).waitFor();
    expect(await builds(page)).toBe(0);
    host.has(appFolder);
    await reload(page);
    await isKept(page);
    app.troubles();
  });

  it('and a newer build is offered, and loaded only when she says so and nothing is unsaved', async () => {
    const host = await Host.of(appFolder);
    const page = await app.page({ from: host.address, keepsPage: true });
    await isKept(page);
    const id = await layOnShelf(page, example);
    expect(await newer(page).count()).toBe(0);

    // A build that lacks a file is not offered.
    const worker = readdirSync(join(later, 'assets')).find((name) => name.startsWith('guideWorker'))!;
    host.has(later, (folder) => rmSync(join(folder, 'assets', worker)));
    const refused = page.evaluate(async () => {
      const registration = (await navigator.serviceWorker.getRegistration())!;
      return new Promise((resolve) => {
        registration.addEventListener('updatefound', () => {
          const { installing } = registration;
          installing?.addEventListener('statechange', () => resolve(installing.state));
        });
      });
    });
    await lookAgain(page);
    expect(await refused).toBe('redundant');
    expect(await newer(page).count()).toBe(0);
    await isKept(page);
    expect(await builds(page)).toBe(1);

    host.has(later);
    await lookAgain(page);
    await newer(page).waitFor();
    expect(await colophon(page)).toBe(general.colophon);
    // Loading the page again is not saying so.
    await reload(page);
    await newer(page).waitFor();
    expect(await colophon(page)).toBe(general.colophon);

    // Something is unsaved: the disk takes nothing.
    await openLayout(page, id, 'card');
    await page.evaluate(() => {
      const { transaction } = IDBDatabase.prototype;
      Object.assign(window, { transaction });
      IDBDatabase.prototype.transaction = function (names, mode, options) {
        if (mode === 'readwrite') throw new DOMException('The disk takes nothing', 'UnknownError');
        return transaction.call(this, names, mode, options);
      };
    });
    await page.getByRole('button', { name: card.blanks.cards }).click();
    await page.keyboard.type('9');
    await page.keyboard.press('Enter');
    await page.locator('.notice', { hasText: general.saving.failed }).waitFor();
    await turnTo(page, 'shelf');
    await load(page).click();
    await page.getByText(offline.unsaved).waitFor();
    expect(await colophon(page)).toBe(general.colophon);

    // The disk takes it after all.
    await page.evaluate(() => {
      // Laid aside there by this test, when it made the disk fail.
      const { transaction } = window as unknown as { transaction: IDBDatabase['transaction'] };
      IDBDatabase.prototype.transaction = transaction;
    });
    await lookAgain(page);
    await expect
      .poll(async () => {
        await load(page)
          .click({ timeout: 500 })
          .catch(() => {});
        return colophon(page);
      }, patience)
      .toBe(laterColophon);
    await host.stop();
    await openLayout(page, id, 'card');
    expect(await page.locator('.stands').textContent()).toContain('9 cards');
    await turnTo(page, 'guide');
    await expectGuide(page, 'Kite day');
    // No page of the build before is open, so it has gone.
    await expect.poll(() => builds(page), patience).toBe(1);
    app.troubles();
  });

  it('and a window stays in its own build, with all its files, while another one has a newer', async () => {
    const host = await Host.of(appFolder);
    const one = await app.page({ from: host.address, keepsPage: true });
    await isKept(one);
    const id = await layOnShelf(one, example);
    const other = await one.context().newPage();
    await other.goto(host.address);
    await isKept(other);
    host.has(later);
    await lookAgain(one);
    await newer(one).waitFor();
    await newer(other).waitFor();
    await load(one).click();
    await one.getByText(laterColophon).waitFor();
    await host.stop();

    expect(await colophon(other)).toBe(general.colophon);
    await newer(other).waitFor();
    await openLayout(other, id, 'card');
    await turnTo(other, 'guide');
    // Nothing of how a guide is made was loaded there before.
    await expectGuide(other, 'Kite day');
    expect(await colophon(other)).toBe(general.colophon);
    await reload(one);
    await isKept(one);
    expect(await builds(one)).toBe(2);

    // It goes over to the newer one in its own time.
    await turnTo(other, 'shelf');
    await load(other).click();
    await other.getByText(laterColophon).waitFor();
    expect(await newer(other).count()).toBe(0);
    await expect.poll(() => builds(one), patience).toBe(1);
    app.troubles();
  });
});

describe.skipIf(!hasChromium)(`over plain http in a network (needs ${chromiumPath})`, () => {
  const app = builtApp({ host: '0.0.0.0' });

  it('the shelf says that the page cannot be kept', async () => {
    const { port } = new URL(app.address());
    const page = await app.page({ from: `http://${nameInTheHouse}:${port}/`, keepsPage: true });
    await page.getByText(offline.cannot).waitFor();
  });
});

describe('what a device needs to put the page among its programs', () => {
  const manifest = JSON.parse(readFileSync(join(appFolder, 'cardwright.webmanifest'), 'utf8')) as {
    readonly start_url: string;
    readonly scope: string;
    readonly icons: readonly { readonly src: string; readonly sizes: string; readonly purpose: string }[];
  };

  it('names nothing outside the folder of the page', () => {
    expect([manifest.start_url, manifest.scope]).toEqual(['./', './']);
    expect(readFileSync(join(appFolder, 'index.html'), 'utf8')).toContain(
      'rel="manifest" href="./cardwright.webmanifest"',
    );
  });

  it('has icons of the sizes it says, as they are drawn', () => {
    const drawn = drawnIcons();
    expect(manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual([
      '192x192 any',
      '512x512 any',
      '512x512 maskable',
    ]);
    for (const { src, sizes } of manifest.icons) {
      const { width, height, data } = PNG.sync.read(readFileSync(join(appFolder, src)));
      expect(`${width}x${height}`).toBe(sizes);
      const again = PNG.sync.read(Buffer.from(drawn[src.replace('icons/', '')]!));
      expect(data.equals(again.data)).toBe(true);
    }
  });
});
