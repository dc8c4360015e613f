import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { arrows } from '../architecture.json';

/** Violations of each rule: the file that is planted, and what stands in it. */
const planted: readonly [rule: string, file: string, code: string][] = [
  ['arrows-of-measure', 'src/measure/canary.ts', "export { planSet } from '../planning/index.ts';"],
  ['arrows-of-cutting', 'src/cutting/canary.ts', "export type { Paper } from '../stash/index.ts';"],
  ['only-through-index', 'src/words/canary.ts', "export { zero } from '../measure/length.ts';"],
  ['apps-only-through-index', 'apps/cli/canary.ts', "export { zero } from '../../src/measure/length.ts';"],
  ['apps-apart-planner', 'apps/planner/canary.ts', "export { main } from '../cli/main.ts';"],
  ['packages-of-app-planner', 'apps/planner/canaryPackage.ts', "export { Command } from 'commander';"],
  ['packages-of-layout', 'src/layout/canary.ts', "export { z } from 'zod';"],
  ['no-node-in-library', 'src/files/canary.ts', "export { readFile } from 'node:fs/promises';"],
  ['library-knows-no-app', 'src/guide/canary.ts', "export { main } from '../../apps/cli/main.ts';"],
  ['testing-only-for-tests', 'src/making/canary.ts', "export { canary } from './testing/canary.ts';"],
  ['unknown-part', 'src/utils/canary.ts', "export { zero } from '../measure/index.ts';"],
  ['no-cycles', 'src/stash/canary.ts', "export { canary } from './canaryBack.ts';"],
];

/**
 * A rule that reads nothing passes, so violations are planted in a copy of the house and the rule is expected to
 * find each of them.
 */
describe('the dependency rule finds', () => {
  const house = mkdtempSync(join(tmpdir(), 'cardwright-house-'));
  afterAll(() => rmSync(house, { recursive: true, force: true }));
  let found: string;
  beforeAll(() => {
    for (const name of [
      'src',
      'apps',
      'examples',
      'architecture.json',
      'assets',
      '.dependency-cruiser.mjs',
      'package.json',
    ]) {
      cpSync(name, join(house, name), { recursive: true });
    }
    for (const name of ['tsconfig.json', 'tsconfig.base.json']) cpSync(name, join(house, name));
    symlinkSync(join(process.cwd(), 'node_modules'), join(house, 'node_modules'));
    const plant = (file: string, code: string) => {
      mkdirSync(dirname(join(house, file)), { recursive: true });
      writeFileSync(join(house, file), `${code}\n`);
    };
    for (const [, file, code] of planted) plant(file, code);
    plant('src/making/testing/canary.ts', 'export const canary = 1;');
    plant(
      'src/stash/canaryBack.ts',
      "import { canary as other } from './canary.ts';\nexport const canary = () => other;",
    );
    found = cruise(house);
  }, 60_000);

  it.each(planted)('%s', (rule, file) => {
    expect(found).toContain(`error ${rule}: ${file}`);
  });

  it('nothing in the house as it stands', () => {
    const others = found.split('\n').filter((line) => line.includes('error ') && !line.includes('canary'));
    expect(others).toEqual([]);
  });
});

describe('the table of arrows', () => {
  it('names exactly the parts that there are', () => {
    const parts = readdirSync('src', { withFileTypes: true }).filter((entry) => entry.isDirectory());
    expect(Object.keys(arrows).sort()).toEqual(parts.map(({ name }) => name).sort());
  });

  it('has no way round in a circle', () => {
    const order: string[] = [];
    for (const [part, knows] of Object.entries(arrows)) {
      for (const known of knows) expect(order, `${part} knows ${known}, which stands later`).toContain(known);
      order.push(part);
    }
  });

  it('is the one that ARCHITECTURE.md shows', () => {
    const shown = readFileSync('ARCHITECTURE.md', 'utf8').replaceAll(/ +/g, ' ');
    const rows = Object.entries(arrows).map(
      ([part, knows]) => `| \`${part}\` | ${knows.length === 0 ? '—' : knows.join(', ')} |`,
    );
    expect(rows.filter((row) => !shown.includes(row))).toEqual([]);
  });
});

function cruise(folder: string): string {
  const tool = join(folder, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const args = [tool, '--config', '.dependency-cruiser.mjs', '--output-type', 'err', 'src', 'apps'];
  return spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' }).stdout;
}
