import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { english } from '../../apps/web/messages/english/english.ts';
import { addressOf, type Screen, screens } from '../../apps/web/route.ts';
import { serve } from '../../scripts/serve.mjs';
import type * as inPage from './inPage.ts';

/* The page as it is built (`npm run prepare` builds), in a real browser. */

export const chromiumPath = '/usr/bin/chromium';
export const hasChromium = existsSync(chromiumPath);

/** Where the built page lies. */
export const appFolder = fileURLToPath(new URL('../../dist/app/', import.meta.url));

/** The screens that belong to a layout, in the order of the contents line. */
export const layoutScreens = screens.filter((screen) => screen !== 'shelf');

/**
 * A name of this machine that is not `localhost`, as a tablet in the same house would call it: over plain http a page
 * from there is no secure context.
 */
export const nameInTheHouse = 'craft-table.home.arpa';

export interface PageOptions {
  readonly widthPx?: number;
  readonly heightPx?: number;
  readonly ground?: 'light' | 'dark';
  /** Where the person is, as a browser says it (`de-DE`); where nothing is said, in the US. */
  readonly locale?: string;
  /** In the language that nobody speaks. */
  readonly pseudo?: boolean;
  /** Where the page is served from, where that is not the usual address. */
  readonly from?: string;
  /** Whether the browser may keep the page itself. In most tests it may not, so that they wait for nothing of it. */
  readonly keepsPage?: boolean;
}

export interface BuiltApp {
  /** Where it is served; ends with a slash. */
  readonly address: () => string;
  /** The page in a browser profile of its own, with an empty shelf. */
  page(options?: PageOptions): Promise<Page>;
  /** What went wrong on any page since this was asked last; a test that provokes something takes it out. */
  troubles(): readonly string[];
}

/**
 * Serves the built page and has a browser for the tests of a file. A test fails on an error on the page or in its
 * console, on anything the page's policy had to stop, and on a request to another host.
 */
export function builtApp({
  folder = appFolder,
  host = 'localhost',
}: {
  readonly folder?: string;
  readonly host?: string;
} = {}): BuiltApp {
  let server: Awaited<ReturnType<typeof serve>>;
  let browser: Browser;
  let found: string[] = [];
  const address = () => server.addresses[0]!;
  const troubles = () => {
    const all = found;
    found = [];
    return all;
  };

  beforeAll(async () => {
    if (!existsSync(appFolder)) throw new Error('There is no dist/app: `npm run prepare` builds it');
    server = await serve({ folder, host, port: 0 });
    browser = await chromium.launch({
      executablePath: chromiumPath,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        // Whatever the page might ask another host never leaves this machine.
        `--host-resolver-rules=MAP ${nameInTheHouse} 127.0.0.1, MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE 127.0.0.1`,
      ],
    });
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close();
    expect(troubles()).toEqual([]);
  });

  return {
    address,
    troubles,
    async page({
      widthPx = 1280,
      heightPx = 900,
      ground = 'light',
      locale = 'en-US',
      pseudo = false,
      from = address(),
      keepsPage = false,
    } = {}) {
      const context = await browser.newContext({
        viewport: { width: widthPx, height: heightPx },
        colorScheme: ground,
        locale,
        reducedMotion: 'reduce',
        serviceWorkers: keepsPage ? 'allow' : 'block',
      });
      const own = new URL(from).origin;
      context.on('request', (request) => {
        const { origin, protocol } = new URL(request.url());
        if (origin !== own && !['data:', 'blob:'].includes(protocol))
          found.push(`request to another host: ${request.url()}`);
      });
      context.on('weberror', (error) => found.push(`error on the page: ${error.error().message}`));
      context.on('console', (message) => {
        if (message.type() === 'error') found.push(`error in the console: ${message.text()}`);
      });
      await context.addInitScript(() => {
        document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
          console.error(`stopped by the policy, ${violatedDirective}: ${blockedURI}`),
        );
      });
      const page = await context.newPage();
      await page.goto(pseudo ? `${from}?pseudo` : from);
      await page.locator('main').waitFor();
      return page;
    },
  };
}

let carried: Promise<string> | null = null;

/** Carries what `inPage.ts` has into a page, to be called there as `fromTest`. */
export async function carryInto(page: Page): Promise<void> {
  carried ??= carriedScript();
  await page.evaluate(await carried);
}

/** Puts a layout file on the shelf of a page's browser, and loads the page again; its id there. */
export async function layOnShelf(page: Page, text: string): Promise<string> {
  await carryInto(page);
  const id = await page.evaluate(
    (file) => (globalThis as unknown as { fromTest: typeof inPage }).fromTest.layOnShelf(file),
    text,
  );
  await page.reload();
  await page.locator('main').waitFor();
  return id;
}

/** Everything on the shelf of a page's browser, by title: its id there and the text of its file. */
export async function allOnShelf(page: Page): ReturnType<typeof inPage.allOnShelf> {
  if (!(await page.evaluate(() => 'fromTest' in globalThis))) await carryInto(page);
  return page.evaluate(() => (globalThis as unknown as { fromTest: typeof inPage }).fromTest.allOnShelf());
}

/** What runs in the page, in one script. */
async function carriedScript(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      lib: {
        entry: fileURLToPath(new URL('inPage.ts', import.meta.url)),
        formats: ['iife'],
        name: 'fromTest',
      },
    },
  });
  const [output] = [built].flat();
  if (output === undefined || !('output' in output)) throw new Error('It is built once');
  return output.output[0].code;
}

/** Opens a layout of the shelf at one of its screens, and waits until its plan is known. */
export async function openLayout(page: Page, id: string, screen: Exclude<Screen, 'shelf'>): Promise<void> {
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, addressOf({ screen, id }));
  await page.locator(`.head[data-screen=${screen}]`).waitFor();
  await isWorkedOut(page);
}

/** Turns to another screen of the open layout by the contents line. */
export async function turnTo(page: Page, screen: Screen): Promise<void> {
  const link = page
    .getByRole('navigation', { name: english.general.contents })
    .getByRole('link', { name: english.general.screens[screen] });
  await link.click();
  // The screen before is there until the next is drawn.
  await link.and(page.locator('[aria-current=page]')).waitFor();
  if (screen !== 'shelf') await isWorkedOut(page);
}

/** Waits until nothing is being planned or proved on a screen of a layout. */
export async function isWorkedOut(page: Page): Promise<void> {
  await page.locator('.stands:is([data-stage=answered], [data-stage=unknown])').waitFor({ timeout: 30_000 });
}

/**
 * Goes to every screen, the shelf first empty and then with a layout on it, unfolds what is folded there, and gives each
 * to `see`, by what it is called; the trimming screen once more with a trimmer and its test cut said and with sizes that
 * suit, the card with the layout planned again, the bench with a set that is begun and with what may be spoiled; last a
 * kit whose papers are short.
 */
export async function eachScreen(
  page: Page,
  text: string,
  see: (name: string, id: string | null) => Promise<void>,
): Promise<void> {
  await see('the empty shelf', null);
  const id = await layOnShelf(page, text);
  await page.locator('main').getByText(titleOf(text)).first().waitFor();
  await see('the shelf', id);
  for (const screen of layoutScreens) {
    await openLayout(page, id, screen);
    await page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
    });
    if (screen === 'guide') await page.locator('.guide-page svg').waitFor();
    // What there is to tap is found by where it is: the page may be in any language.
    if (screen === 'trimming') {
      await page.locator('.enough-for [role=status]').waitFor({ state: 'detached' });
      await see(screen, id);
      // First the trimmer, then its test cut.
      const nextToSay = page.locator('.cut-for .deeds .say').first();
      await nextToSay.click();
      await nextToSay.click();
      await isWorkedOut(page);
      await page.locator('.enough-for [role=status]').waitFor({ state: 'detached' });
      await see('trimming with a trimmer', id);
      // A length is let move, and sizes are looked for.
      await page.locator('.suit > .deeds .say').first().click();
      await isWorkedOut(page);
      await page.locator('.suit > .deeds .say').last().click();
      await page.locator('.suit [role=status] > [lang]').waitFor();
      await page.locator('.enough-for [role=status]').waitFor({ state: 'detached' });
      await see('sizes that suit', id);
    } else await see(screen, id);
    if (screen === 'card') {
      await page.locator('.recast > .deeds .say').click();
      await page.locator('.recast-told').waitFor();
      await see('the layout planned again', id);
    }
    if (screen === 'bench') {
      await page.locator('main > .doing .done').click();
      await page.locator('.present-line svg').first().waitFor();
      for (let line = 0; line < 3; line += 1) await page.locator('.doing .done').click();
      await see('a line at the bench', id);
      await page.locator('.docket-strip > .deeds .say').last().click();
      await page.locator('.spoiled').waitFor();
      await see('what is spoiled', id);
    }
  }
  await page.evaluate(() => {
    window.location.hash = '#/';
  });
  const kit = readFileSync('examples/autumn-afternoon.kit.json', 'utf8');
  const short = kit.replace('"seats": 14', '"seats": 16');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'short.kit.json',
      mimeType: 'application/json',
      buffer: Buffer.from(short),
    });
  await page.locator('.stands[data-stage=done]').waitFor({ timeout: 120_000 });
  await page.locator('.offers').waitFor();
  await see('a kit', null);
}

/**
 * Opens every closed blank of the page, and gives the first of each kind that was not `seen` yet to `see` while it is
 * open, by what it is called. Blanks that open onto the same kinds of controls are one kind.
 */
export async function eachKindOfBlank(
  page: Page,
  seen: Set<string>,
  see: (label: string) => Promise<void>,
): Promise<void> {
  for (let from = 0; ; ) {
    const found = await page.evaluate(openNextKind, { seen: [...seen], from });
    if (found === null) return;
    seen.add(found.kind);
    from = found.index + 1;
    await see(found.label);
    await page.keyboard.press('Escape');
    await page.locator('.opened').waitFor({ state: 'detached' });
  }
}

/** Runs in the page: opens the next blank of a kind that was not seen; the others are opened and closed. */
async function openNextKind({
  seen,
  from,
}: {
  readonly seen: readonly string[];
  readonly from: number;
}): Promise<{ readonly kind: string; readonly index: number; readonly label: string } | null> {
  const until = async (isSo: () => boolean) => {
    for (let tries = 0; !isSo(); tries += 1) {
      if (tries === 500) throw new Error('A blank opens and closes');
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
  };
  const isOpen = () => document.querySelector('.opened') !== null;
  for (let index = from; ; index += 1) {
    const blank = document.querySelectorAll<HTMLElement>('main button.blank')[index];
    if (blank === undefined) return null;
    const label = blank.textContent ?? '';
    blank.click();
    await until(isOpen);
    const controls = document.querySelectorAll('.opened :is(input, select, svg), input[data-blank]');
    const kinds = [...controls].map((control) =>
      control instanceof HTMLInputElement ? `${control.type} ${control.inputMode}` : control.tagName,
    );
    const kind = [...new Set(kinds)].sort().join();
    if (!seen.includes(kind)) return { kind, index, label };
    const pressed = new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, cancelable: true });
    document.activeElement?.dispatchEvent(pressed);
    await until(() => !isOpen());
  }
}

function titleOf(text: string): string {
  return (JSON.parse(text) as { title: string }).title;
}
