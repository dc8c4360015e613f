import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { type Browser, type CDPSession, chromium, type Locator, type Page } from 'playwright-core';
import { build } from 'vite';
import { english } from '../apps/web/messages/english/english.ts';
import { serve } from '../scripts/serve.mjs';
import { quantile, table, three } from './figures.ts';

const chromiumPath = '/usr/bin/chromium';

/** How many times slower the processor is made, so that a fast machine is like a tablet. */
const slower = 4;

/** What one run of the page gives, by what was measured, in milliseconds. */
type Run = Readonly<Record<string, number>>;

/**
 * How long the built page takes until it shows something, answers a change, draws a frame of a drag, turns to
 * Trimming and goes to the next line at the bench, in Chromium with a slowed processor; each also as a multiple of what a page of the same stack takes that shows one word.
 */
export async function page(runs: number): Promise<void> {
  if (!existsSync(chromiumPath)) {
    console.log(`Page: not measured, for there is no ${chromiumPath}`);
    return;
  }
  const served = [];
  for (const folder of [await emptyPage(), join('dist', 'app')])
    served.push(await serve({ folder, host: 'localhost', port: 0 }));
  const [empty, ours] = served.map(({ addresses }) => addresses[0] as string);
  const browser = await chromium.launch({ executablePath: chromiumPath, args: ['--no-sandbox'] });
  const emptyRuns: Run[] = [];
  const ourRuns: Run[] = [];
  try {
    // In turns, so that other work on the machine slows both alike; the first of each warms the server.
    for (let run = 0; run <= runs; run += 1) {
      const both = [
        await inContext(browser, empty!, emptyRun),
        await inContext(browser, ours!, ourRun),
      ] as const;
      if (run === 0) continue;
      emptyRuns.push(both[0]);
      ourRuns.push(both[1]);
    }
  } finally {
    await browser.close();
    for (const server of served) await server.close();
  }
  console.log(
    `Page: the built app, and a page of the same stack with one word in it (empty), ${runs} runs of each in turns, the processor ${slower} times slower`,
  );
  const median = (of: readonly Run[], what: string) =>
    quantile(
      of.map((run) => run[what] ?? Number.NaN),
      0.5,
    );
  const rows = Object.keys(ourRuns[0]!).map((what) => {
    const all = ourRuns.map((run) => run[what]!);
    const beside = besides[what] ?? what;
    const [least, most] = [Math.min(...all), Math.max(...all)];
    const emptyMs = median(emptyRuns, beside);
    return [
      what,
      ...[least, median(ourRuns, what), most].map((ms) => ms.toFixed(0)),
      three(median(ourRuns, what) / emptyMs),
      `${beside}, ${emptyMs.toFixed(0)}`,
    ];
  });
  const head = ['', 'least ms', 'median', 'most', 'median / empty', 'of the empty page, ms'];
  console.log(
    table([head, ...rows].map((row) => row.map((cell, column) => (column === 0 ? `  ${cell}` : cell)))),
  );
}

/** What of the empty page a figure is compared with, where that has another name. */
const besides: Readonly<Record<string, string>> = {
  'a layout opened: its card is shown': 'first contentful paint',
  'a layout opened: the plan is proved': 'first contentful paint',
  'opening, longest task': 'loading, longest task',
  'key in a length blank: shown': 'key: shown',
  'key in a length blank: first plan': 'key: shown',
  'key in a length blank: proof': 'key: shown',
  'key, longest task': 'key, longest task',
  'drag, frame, median': 'drag, frame, median',
  'to Trimming: shown': 'tap: shown',
  'to Trimming: the last picture is there': 'tap: shown',
  'to Trimming, longest task': 'tap, longest task',
  'at the bench, Done: the next line is shown': 'tap: shown',
  'at the bench, longest task': 'tap, longest task',
};

/** Measures on a page of a profile of its own, with the processor slowed from the start. */
async function inContext(
  browser: Browser,
  address: string,
  measure: (page: Page, address: string) => Promise<Run>,
): Promise<Run> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  try {
    const page = await context.newPage();
    const session: CDPSession = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: slower });
    await page.addInitScript(watching);
    return await measure(page, address);
  } finally {
    await context.close();
  }
}

/**
 * Runs in the page: keeps the longest task, the frames, and when after a key the page was painted in a new stage.
 * `stages` of `.stands` are those of the layout's plan; each is noted with the time from the key to its frame.
 */
const watching = `
  window.watched = { longest: 0, frames: [], key: null };
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) watched.longest = Math.max(watched.longest, duration);
  }).observe({ type: 'longtask', buffered: true });
  const painted = (what) => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = what;
    port2.postMessage(null);
  });
  let isMoved = false;
  addEventListener('pointermove', () => { isMoved = true; }, { capture: true });
  window.watchFrames = () => {
    let before = performance.now();
    watched.frames = [];
    const next = (now) => {
      if (isMoved) watched.frames.push(now - before);
      isMoved = false;
      before = now;
      if (watched.goesOn) requestAnimationFrame(next);
    };
    watched.goesOn = true;
    requestAnimationFrame(next);
  };
  addEventListener('click', ({ timeStamp }) => {
    const tap = { shown: null };
    watched.tap = tap;
    painted(() => { tap.shown = performance.now() - timeStamp; });
    const { isThere } = watched;
    if (isThere === undefined) return;
    watched.isThere = undefined;
    const look = () => {
      if (!isThere()) return;
      observer.disconnect();
      painted(() => { tap.there = performance.now() - timeStamp; });
    };
    const observer = new MutationObserver(look);
    observer.observe(document.body, { subtree: true, childList: true, characterData: true });
  }, { capture: true });
  addEventListener('keydown', ({ timeStamp, key }) => {
    if (key !== 'ArrowUp') return;
    const marks = { shown: null };
    watched.key = marks;
    painted(() => { marks.shown = performance.now() - timeStamp; });
    let stage = null;
    const look = () => {
      const now = document.querySelector('.stands')?.dataset.stage ?? null;
      if (now === stage) return;
      stage = now;
      painted(() => { marks[now] ??= performance.now() - timeStamp; });
    };
    const observer = new MutationObserver(look);
    observer.observe(document.body, { subtree: true, attributes: true, attributeFilter: ['data-stage'] });
  }, { capture: true });
`;

/** The longest task since this was asked last. Tasks of less than 50 ms are not told by the browser and count as that. */
async function longestTask(page: Page): Promise<number> {
  await page.evaluate('new Promise((done) => setTimeout(done, 200))');
  return page.evaluate<number>(
    '(() => { const { longest } = watched; watched.longest = 0; return Math.max(50, longest); })()',
  );
}

/** Waits until something is so in the page; its policy lets nothing be made a function from text there. */
function until(page: Page, isSo: string): Promise<void> {
  return page.evaluate(
    `new Promise((done) => { const look = () => (${isSo}) ? done() : setTimeout(look, 5); look(); })`,
  );
}

async function firstPaint(page: Page): Promise<number> {
  await until(page, "performance.getEntriesByName('first-contentful-paint').length > 0");
  return page.evaluate<number>("performance.getEntriesByName('first-contentful-paint')[0].startTime");
}

/**
 * Taps something, and gives the milliseconds until the page was painted after it, and until it was painted once `isThere`
 * was so, a function as the page runs it.
 */
async function tapped(
  page: Page,
  what: Locator,
  isThere: string,
): Promise<{ readonly shown: number; readonly there: number }> {
  await page.evaluate(`watched.isThere = ${isThere}; watched.tap = null;`);
  await what.click();
  await until(page, 'watched.tap?.shown != null && watched.tap.there != null');
  return page.evaluate('watched.tap');
}

/** Drags what is at a point there and back, and gives how long each frame took in which it was moved. */
async function dragFrames(
  page: Page,
  from: { readonly x: number; readonly y: number },
): Promise<readonly number[]> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 8, from.y + 8);
  await page.evaluate('watchFrames()');
  for (let step = 0; step < 60; step += 1) {
    const along = 60 * Math.sin((step / 60) * 2 * Math.PI);
    await page.mouse.move(from.x + along, from.y + along / 2);
  }
  await page.evaluate('watched.goesOn = false');
  await page.mouse.up();
  return page.evaluate<number[]>('watched.frames.slice(2)');
}

async function emptyRun(page: Page, address: string): Promise<Run> {
  await page.goto(address);
  const paint = await firstPaint(page);
  const loading = await longestTask(page);
  const keys: number[] = [];
  for (let time = 0; time < 10; time += 1) {
    await page.keyboard.press('ArrowUp');
    await until(page, 'watched.key?.shown != null');
    keys.push(await page.evaluate<number>('watched.key.shown'));
  }
  const key = await longestTask(page);
  const frames = await dragFrames(page, { x: 300, y: 300 });
  const drag = await longestTask(page);
  const taps: number[] = [];
  for (let time = 0; time < 10; time += 1) {
    await page.mouse.click(10, 10);
    await until(page, 'watched.tap?.shown != null');
    taps.push(await page.evaluate<number>('watched.tap.shown'));
    await page.evaluate('watched.tap = null');
  }
  return {
    'first contentful paint': paint,
    'loading, longest task': loading,
    'key: shown': quantile(keys, 0.5),
    'key, longest task': key,
    'drag, frame, median': quantile(frames, 0.5),
    'drag, frame, 95 % under': quantile(frames, 0.95),
    'drag, longest task': drag,
    'tap: shown': quantile(taps, 0.5),
    'tap, longest task': await longestTask(page),
  };
}

async function ourRun(page: Page, address: string): Promise<Run> {
  await page.goto(address);
  const paint = await firstPaint(page);
  await page.locator('main .catalogue svg').first().waitFor();
  const loading = await longestTask(page);

  // An example is taken from the shelf, and shown as its card; then the same address is loaded afresh.
  await page.locator('main .catalogue button').nth(1).click();
  await page.locator('.stands[data-stage=answered]').waitFor();
  await page.evaluate('new Promise((done) => setTimeout(done, 500))');
  await page.reload();
  await page.locator('.card-picture .piece').first().waitFor();
  const shown = await page.evaluate<number>('performance.now()');
  await page.locator('.stands[data-stage=answered]').waitFor();
  const proved = await page.evaluate<number>('performance.now()');
  const opening = await longestTask(page);

  // The height of a part, a mark more each time.
  await page.locator('.pile-list li button', { hasText: 'Sentiment mat' }).click();
  await page
    .locator('.part-form button.blank', { hasText: /height/iu })
    .first()
    .click();
  await page.locator('.blank-input').waitFor();
  await longestTask(page);
  const keys: { shown: number; first: number; answered: number }[] = [];
  for (let time = 0; time < 10; time += 1) {
    await page.keyboard.press(time % 2 === 0 ? 'ArrowUp' : 'ArrowDown');
    if (time % 2 === 1) {
      await page.locator('.stands[data-stage=answered]').waitFor();
      continue;
    }
    await until(page, 'watched.key?.answered != null');
    keys.push(await page.evaluate('watched.key'));
  }
  const key = await longestTask(page);
  await page.keyboard.press('Escape');

  // The part that was taken up, near its upper edge, where nothing lies on it.
  const piece = page.locator('.card-picture .in-hand').first();
  await piece.scrollIntoViewIfNeeded();
  const box = (await piece.boundingBox())!;
  const frames = await dragFrames(page, { x: box.x + box.width / 2, y: box.y + 6 });
  const drag = await longestTask(page);
  await page.locator('.stands[data-stage=answered]').waitFor();

  // Trimming, with a picture of every step; then the bench, where each is done.
  const toScreen = (screen: string) => page.locator(`.contents a[href*="/${screen}"]`);
  const trimming = await tapped(page, toScreen('trimming'), allPictures);
  const trimmingTask = await longestTask(page);
  await toScreen('bench').click();
  await page.getByRole('button', { name: english.bench.begin, exact: true }).click();
  await page.locator('.present-line figure svg').waitFor();
  await longestTask(page);
  const lines: number[] = [];
  for (let line = 0; line < 10; line += 1) {
    const heading = await page.locator('.present-line h3').textContent();
    const isNext = `() => ![null, undefined, ${JSON.stringify(heading)}].includes(document.querySelector('.present-line h3')?.textContent)`;
    lines.push((await tapped(page, page.locator('.doing .done'), isNext)).there);
  }
  const benchTask = await longestTask(page);
  const at = (of: 'shown' | 'first' | 'answered') =>
    quantile(
      keys.map((each) => each[of] ?? each.answered),
      0.5,
    );
  return {
    'first contentful paint': paint,
    'loading, longest task': loading,
    'a layout opened: its card is shown': shown,
    'a layout opened: the plan is proved': proved,
    'opening, longest task': opening,
    'key in a length blank: shown': at('shown'),
    'key in a length blank: first plan': at('first'),
    'key in a length blank: proof': at('answered'),
    'key, longest task': key,
    'drag, frame, median': quantile(frames, 0.5),
    'drag, frame, 95 % under': quantile(frames, 0.95),
    'drag, longest task': drag,
    'to Trimming: shown': trimming.shown,
    'to Trimming: the last picture is there': trimming.there,
    'to Trimming, longest task': trimmingTask,
    'at the bench, Done: the next line is shown': quantile(lines, 0.5),
    'at the bench, longest task': benchTask,
  };
}

/** Whether Trimming has a picture at every step; runs in the page. */
const allPictures = `() => {
  const lists = [...document.querySelectorAll('.cutting-steps')];
  return lists.length > 0 && lists.every((list) => list.childElementCount > 0 &&
    [...list.children].every((step) => step.querySelector('figure svg') !== null));
}`;

/** Builds a page of the same stack that shows one word, in a folder of its own; gives that. */
async function emptyPage(): Promise<string> {
  // Beside the project's libraries, so that it is built on the same ones.
  const source = join('out', 'empty-page');
  mkdirSync(source, { recursive: true });
  writeFileSync(
    join(source, 'index.html'),
    '<!doctype html><html lang="en"><title>Empty</title><div id="page"></div><script type="module" src="./main.jsx"></script></html>',
  );
  writeFileSync(
    join(source, 'main.jsx'),
    `import { createRoot } from 'react-dom/client';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

const store = createStore(() => ({ word: 'Paper' }));
const Word = () => <p>{useStore(store, ({ word }) => word)}</p>;
createRoot(document.getElementById('page')).render(<Word />);
`,
  );
  const outDir = join(process.cwd(), source, 'built');
  await build({
    configFile: false,
    logLevel: 'error',
    root: source,
    base: './',
    plugins: [react()],
    build: { outDir, emptyOutDir: true, target: 'es2023' },
  });
  return outDir;
}
