import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { scratchFolder } from './commandLine.ts';

/** The package as others get it: packed, and installed into an empty folder. */
describe('the packed package', () => {
  const folder = scratchFolder();
  afterAll(folder.remove);
  const run = (command: string, ...args: string[]) =>
    execFileSync(command, args, {
      cwd: folder.path('.'),
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    });

  beforeAll(() => {
    execFileSync('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', folder.path('.')]);
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    writeFileSync(folder.path('package.json'), '{ "name": "empty", "private": true, "type": "module" }');
    run('npm', 'install', '--silent', '--no-audit', '--no-fund', `./cardwright-${version}.tgz`);
  }, 240_000);

  it('makes a new layout, checks it, plans it, prints its guide and draws it', () => {
    const cardwright = (...args: string[]) => run('npx', '--no-install', 'cardwright', ...args);
    cardwright('new', 'first.card.json');
    expect(cardwright('check', 'first.card.json')).not.toContain('What would spoil the set');
    const plan = JSON.parse(cardwright('plan', 'first.card.json', '--json')) as { cardwright_plan: number };
    expect(plan.cardwright_plan).toBe(1);
    cardwright('guide', 'first.card.json', '-o', 'first.pdf');
    expect(readFileSync(folder.path('first.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    cardwright('draw', 'first.card.json', '-o', 'first.svg');
    expect(readFileSync(folder.path('first.svg'), 'utf8')).toContain('</svg>');
  }, 60_000);

  it('can be imported part by part', () => {
    writeFileSync(
      folder.path('use.mjs'),
      `import { readLength } from 'cardwright/measure';
       import { replay } from 'cardwright/replay';
       console.log(readLength('5 1/4', 'in').length, typeof replay);`,
    );
    expect(run(process.execPath, 'use.mjs')).toBe('213360 function\n');
  });

  it('plans a new layout in a worker', () => {
    writeFileSync(
      folder.path('plan.mjs'),
      `import { readLayoutFile, starterLayout } from 'cardwright/files';
       import { arrange } from 'cardwright/layout';
       import { planner } from 'cardwright/planner';
       const { layout } = readLayoutFile(starterLayout({ units: 'in' }));
       const { kind } = await planner().plan({ layout, arrangement: arrange(layout), trimmer: null });
       console.log(kind);`,
    );
    // Nothing closes the planner: idle, it lets the process end.
    expect(run(process.execPath, 'plan.mjs')).toBe('plan\n');
  });

  it('brings its types, examples and schema, and none of its tests or workings', () => {
    const listed = run('find', join('node_modules', 'cardwright'), '-type', 'f').split('\n');
    const has = (name: string) => listed.some((path) => path.endsWith(name));
    expect(has('dist/measure/index.d.ts')).toBe(true);
    expect(has('dist/planner/index.d.ts')).toBe(true);
    for (const name of ['planner.js', 'webWorker.js', 'highs.wasm'])
      expect(has(`dist/browser/${name}`)).toBe(true);
    expect(has('schema/card.schema.json')).toBe(true);
    expect(has('examples/lantern-walk.card.json')).toBe(true);
    expect(has('assets/fonts/OFL.txt')).toBe(true);
    expect(
      listed.filter((path) =>
        /\.test\.|\/testing\/|\/src\/|\/scripts\//.test(path.replace('node_modules/cardwright', '')),
      ),
    ).toEqual([]);
  });
});
