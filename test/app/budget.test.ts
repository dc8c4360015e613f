import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { parseAst } from 'vite';
import { describe, expect, it } from 'vitest';
import { appFolder, builtApp, chromiumPath, hasChromium } from './appPage.ts';

/** In bytes, gzipped. Sizes are the same everywhere; times are not. */
const budget = { firstScreen: 230_000, withNext: 300_000, whole: 400_000 };

describe('how much script the page has', () => {
  const html = existsSync(appFolder) ? readFileSync(join(appFolder, 'index.html'), 'utf8') : '';
  const entries = [...html.matchAll(/(?:src|href)="\.\/assets\/([^"]+\.js)"/gu)].map(([, file]) => file!);
  const first = reachedFrom(entries, { later: false });
  const whole = reachedFrom(entries, { later: true });

  it(`less than ${budget.firstScreen / 1000} KB for the first screen`, () => {
    expect(entries.length).toBeGreaterThan(0);
    expect(gzipped(first)).toBeLessThan(budget.firstScreen);
  });

  it(`less than ${budget.whole / 1000} KB in all, but for the workers`, () => {
    expect(gzipped(whole)).toBeLessThan(budget.whole);
  });

  it('and what is not counted is a worker or what only workers load', () => {
    const scripts = readdirSync(join(appFolder, 'assets')).filter((file) => file.endsWith('.js'));
    const text = [...whole].map((file) => readFileSync(join(appFolder, 'assets', file), 'utf8')).join('\n');
    const workers = scripts.filter((file) => !whole.has(file) && text.includes(file));
    expect(
      workers.every((file) => /worker/iu.test(file)),
      workers.join(' '),
    ).toBe(true);
    const theirs = reachedFrom(workers, { later: true });
    expect(scripts.filter((file) => !whole.has(file) && !theirs.has(file))).toEqual([]);
  });

  describe.skipIf(!hasChromium)(`(needs ${chromiumPath})`, () => {
    const app = builtApp();
    it(`the browser loads no more than the imports say, and less than ${budget.withNext / 1000} KB with the screen that it fetches once the first is shown`, async () => {
      const page = await app.page();
      const loaded = await page.evaluate(() =>
        performance.getEntriesByType('resource').map(({ name }) => name),
      );
      const scripts = loaded.filter((name) => name.endsWith('.js')).map((name) => basename(name));
      const loadedLater = scripts.filter((file) => whole.has(file) && !first.has(file));
      expect(scripts).toEqual(expect.arrayContaining(entries));
      expect(gzipped(new Set([...first, ...loadedLater]))).toBeLessThan(budget.withNext);
    });
  });
});

function gzipped(files: ReadonlySet<string>): number {
  return [...files].reduce(
    (sum, file) => sum + gzipSync(readFileSync(join(appFolder, 'assets', file))).length,
    0,
  );
}

/** The scripts that are loaded with these; with `later` also those that wait until they are asked for. */
function reachedFrom(
  entries: readonly string[],
  { later }: { readonly later: boolean },
): ReadonlySet<string> {
  const reached = new Set<string>();
  const waiting = [...entries];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (reached.has(file)) continue;
    reached.add(file);
    waiting.push(...importsOf(readFileSync(join(appFolder, 'assets', file), 'utf8'), later));
  }
  return reached;
}

/** The names of the scripts that a script imports, in any form of import. */
function importsOf(script: string, later: boolean): readonly string[] {
  const found: string[] = [];
  const look = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    if (Array.isArray(node)) {
      node.forEach(look);
      return;
    }
    const { type, source } = node as { type?: string; source?: unknown };
    const imports = ['ImportDeclaration', 'ExportNamedDeclaration', 'ExportAllDeclaration'];
    if (type !== undefined && (imports.includes(type) || (later && type === 'ImportExpression'))) {
      const name = textOf(source);
      if (name?.startsWith('.')) found.push(basename(name));
    }
    Object.values(node).forEach(look);
  };
  look(parseAst(script));
  return found;
}

/** The text of a literal or of a template with nothing filled in. */
function textOf(node: unknown): string | null {
  const { value, quasis } = (node ?? {}) as { value?: unknown; quasis?: { value: { cooked: string } }[] };
  if (typeof value === 'string') return value;
  return quasis?.length === 1 ? quasis[0]!.value.cooked : null;
}
