import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type PlanOptions, planner } from '../apps/planner/index.ts';
import type { LinearSolver } from '../src/cutting/index.ts';
import { readKitFile, readLayoutFile } from '../src/files/index.ts';
import { assemblyOf, checkFinished, docketOf, holdingOf } from '../src/finished/index.ts';
import { kitReport, kitSet } from '../src/kits/index.ts';
import { arrange, type Layout } from '../src/layout/index.ts';
import { millimetres } from '../src/measure/index.ts';
import {
  type CardSet,
  checkSet,
  cliffsOf,
  enoughFor,
  leftoverUses,
  nothingCut,
  type Plan,
  planRecord,
  planSet,
  quickSet,
  recast,
  recutSet,
  type Shortage,
  sparesOf,
  suitedSet,
  tableNow,
  untouchedTable,
  usualMarks,
} from '../src/planning/index.ts';
import { testSolver } from '../src/planning/testing/solver.ts';
import { assert } from '../src/problem/index.ts';
import { scratchFolder } from './commandLine.ts';

/* The planner in real workers, as they are built (`npm run prepare` builds). */

const example = readFileSync('examples/kite-day.card.json', 'utf8');
const worker = new URL('../dist/planner/nodeWorker.js', import.meta.url);

function setOf(text: string, change: (layout: Layout) => Layout = (layout) => layout): CardSet {
  const read = readLayoutFile(text);
  if (!('layout' in read)) throw new Error('the example is sound');
  const layout = change(read.layout);
  return { layout, arrangement: arrange(layout), trimmer: null };
}

/** Room for the mat of the example. */
function withRoom(layout: Layout): Layout {
  const rooms = { inset: { least: millimetres(2), most: millimetres(12) } };
  return { ...layout, parts: layout.parts.map((part) => (part.id === 'mat' ? { ...part, rooms } : part)) };
}

function recordOf(answer: Plan | Shortage | null): string {
  if (answer?.kind !== 'plan') throw new Error('expected a plan');
  return JSON.stringify(planRecord(answer));
}

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

describe('in worker threads', () => {
  const threads = planner({ worker });
  afterAll(() => threads.close());

  /** A request and everything that it is told, in order. */
  async function told(set: CardSet, options: PlanOptions = {}, by = threads): Promise<string[]> {
    const all: string[] = [];
    try {
      const answer = await by.plan(set, {
        ...options,
        onFirst: (first) => {
          all.push(`first ${recordOf(first)}`);
          options.onFirst?.(first);
        },
        onProgress: () => void all.push('progress'),
      });
      all.push(answer.kind === 'plan' ? `planned ${recordOf(answer)}` : 'short');
    } catch (problem) {
      all.push((problem as Error).name);
    }
    return all;
  }

  it('tells the first plan, progress and the plan, the same each time and as without workers', async () => {
    const set = setOf(example);
    const once = await told(set);
    expect(once[0]).toBe(`first ${recordOf(quickSet(set))}`);
    expect(once.slice(1, -1).every((each) => each === 'progress')).toBe(true);
    expect(once.length).toBeGreaterThan(2);
    expect(once.at(-1)).toBe(`planned ${recordOf(planSet({ ...set, solver }))}`);
    expect(await told(set)).toEqual(once);
  });

  it('answers every question as without workers', async () => {
    const set = setOf(example, withRoom);
    const own = { ...set, solver };
    const answer = planSet(own);
    if (answer.kind !== 'plan') throw new Error('expected a plan');
    const enough = enoughFor(own);
    expect(await threads.ask({ name: 'check', set, answer })).toEqual(checkSet(own, answer));
    expect(await threads.ask({ name: 'enough', set })).toEqual({ enough, cliffs: cliffsOf(own, enough) });
    expect(await threads.ask({ name: 'spares', set, plan: answer })).toEqual(sparesOf(own, answer));
    expect(await threads.ask({ name: 'leftovers', set, plan: answer })).toEqual(leftoverUses(own, answer));
    expect(await threads.ask({ name: 'suit', set, cards: 25 })).toEqual(suitedSet(own, 25));
    const asked = { marks: usualMarks(set.layout), wanted: 1 / 20 };
    expect(await threads.ask({ name: 'docket', set, by: { wanted: 1 / 20 } })).toEqual({
      docket: docketOf(set.layout, set.arrangement, asked),
      problems: checkFinished(set.layout, set.arrangement, asked),
    });
    expect(await threads.ask({ name: 'assembly', set })).toEqual({
      assembly: assemblyOf(set.layout, set.arrangement),
      holding: holdingOf(set.layout, set.arrangement),
    });
    const opened = readKitFile(readFileSync('examples/autumn-afternoon.kit.json', 'utf8'));
    assert('kit' in opened, 'The example is sound');
    const { kit } = opened;
    const { sources: _, ...bags } = kitSet(kit, null)!;
    expect(await threads.ask({ name: 'kit', set: bags, kit })).toEqual(
      kitReport(kit, { trimmer: null, solver: own.solver }),
    );
    const wishes = { units: 'mm' } as const;
    expect(await threads.ask({ name: 'recast', set, wishes })).toEqual(recast(own, wishes));
    const inHand = { plan: answer, onTable: untouchedTable };
    const spoiled = [{ kind: 'workpiece', id: answer.sheets[0]!.id }] as const;
    const table = tableNow(set.layout, inHand, { ...nothingCut, spoiled });
    if ('problems' in table) throw new Error('expected a table');
    expect(await threads.ask({ name: 'recut', set, table })).toEqual(recutSet(own, table));
  });

  it('carries a shortage whole', async () => {
    const set = setOf(example, (layout) => ({ ...layout, cards: 500 }));
    const answer = await threads.plan(set);
    expect(answer.kind).toBe('short');
    expect(answer).toEqual(planSet({ ...set, solver }));
  });

  it('is given up at once, and plans again', async () => {
    const set = setOf(example);
    const control = new AbortController();
    const given = await told(set, { signal: control.signal, onFirst: () => control.abort() });
    expect(given).toEqual([`first ${recordOf(quickSet(set))}`, 'AbortError']);
    const [older, newer] = await Promise.all([told(set), told(set, { instead: true })]);
    expect(older).toEqual(['AbortError']);
    expect(newer.at(-1)).toMatch(/^planned /);
  });

  it('says clearly that a worker broke, and plans the next request', async () => {
    const folder = scratchFolder();
    const broke = folder.path('broke');
    const script = folder.path('breaks-once.mjs');
    writeFileSync(
      script,
      `import { existsSync, writeFileSync } from 'node:fs';
       import { parentPort } from 'node:worker_threads';
       parentPort.on('message', ({ kind }) => {
         if (kind !== 'plan' || existsSync(${JSON.stringify(broke)})) return;
         writeFileSync(${JSON.stringify(broke)}, '');
         process.exit(7);
       });
       await import(${JSON.stringify(worker.href)});`,
    );
    const breaking = planner({ worker: pathToFileURL(script) });
    try {
      const set = setOf(example);
      await expect(breaking.plan(set)).rejects.toThrow('The planner failed: its worker ended with 7.');
      expect((await told(set, {}, breaking)).at(-1)).toMatch(/^planned /);
    } finally {
      breaking.close();
      folder.remove();
    }
  });
});

const chromiumPath = '/usr/bin/chromium';

describe.skipIf(!existsSync(chromiumPath))(`in a browser (needs ${chromiumPath})`, () => {
  let server: Server;
  let browser: Browser;
  let page: Page;
  const errors: string[] = [];

  beforeAll(async () => {
    server = serveFolder(new URL('../', import.meta.url));
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as AddressInfo;
    browser = await chromium.launch({
      executablePath: chromiumPath,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
    page = await browser.newPage();
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(`http://127.0.0.1:${port}/test/browser/planner.html`, { waitUntil: 'load' });
    await page.waitForFunction(() => 'plan' in globalThis);
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    server.close();
  });

  interface Told {
    readonly kind: string;
    readonly record?: string;
  }
  const planOnPage = (text: string, giveUp: boolean): Promise<Told[]> =>
    page.evaluate(
      ([layout, isGivenUp]) =>
        (globalThis as unknown as { plan(text: string, giveUp: boolean): Promise<Told[]> }).plan(
          layout,
          isGivenUp,
        ),
      [text, giveUp] as const,
    );

  it('plans as in Node, to the byte, and again after it was given up midway', async () => {
    const set = setOf(example);
    const first = { kind: 'first', record: recordOf(quickSet(set)) };
    const planned = { kind: 'planned', record: recordOf(planSet({ ...set, solver })) };
    const whole = await planOnPage(example, false);
    expect(whole.filter(({ kind }) => kind !== 'progress')).toEqual([first, planned]);
    expect([whole[0]?.kind, whole.at(-1)?.kind]).toEqual(['first', 'planned']);
    const givenUp = await planOnPage(example, true);
    expect(givenUp[0]).toEqual(first);
    expect(givenUp.at(-1)).toEqual({ kind: 'AbortError' });
    expect(await planOnPage(example, false)).toEqual(whole);
    expect(errors).toEqual([]);
  });
});

/** Serves the files of a folder to this machine. */
function serveFolder(root: URL): Server {
  const types: Readonly<Record<string, string>> = {
    '.html': 'text/html; charset=utf-8',
    '.js': 'text/javascript',
    '.wasm': 'application/wasm',
  };
  return createServer((request, response) => {
    const file = new URL(`.${new URL(request.url ?? '/', 'http://localhost').pathname}`, root);
    if (!existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': types[extname(file.pathname)] ?? 'text/plain' });
    response.end(readFileSync(file));
  });
}
