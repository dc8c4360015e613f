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
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { arrows } from '../architecture.mjs';

/**
 * A rule that reads nothing passes, so violations are planted in a copy of the house and the rule is expected to
 * find each of them.
 */
describe('the dependency rule finds', () => {
  let house: string;
  beforeAll(() => {
    house = mkdtempSync(join(tmpdir(), 'cardwright-house-'));
    for (const name of [
      'src',
      'apps',
      'architecture.mjs',
      '.dependency-cruiser.mjs',
      'package.json',
      'tsconfig.json',
      'tsconfig.base.json',
    ]) {
      cpSync(name, join(house, name), { recursive: true });
    }
    symlinkSync(join(process.cwd(), 'node_modules'), join(house, 'node_modules'));
  });
  afterAll(() => rmSync(house, { recursive: true, force: true }));

  const planted: readonly [rule: string, file: string, code: string][] = [
    ['arrows-of-measure', 'src/measure/canary.ts', "export { planSet } from '../planning/index.ts';"],
    ['arrows-of-cutting', 'src/cutting/canary.ts', "export type { Paper } from '../stash/index.ts';"],
    ['only-through-index', 'src/words/canary.ts', "export { zero } from '../measure/length.ts';"],
    ['apps-only-through-index', 'apps/cli/canary.ts', "export { zero } from '../../src/measure/length.ts';"],
    ['packages-of-layout', 'src/layout/canary.ts', "export { z } from 'zod';"],
    ['no-node-in-library', 'src/files/canary.ts', "export { readFile } from 'node:fs/promises';"],
    ['library-knows-no-app', 'src/words/canary.ts', "export { main } from '../../apps/cli/main.ts';"],
    ['testing-only-for-tests', 'src/layout/canary.ts', "export * from './testing/canary.ts';"],
    ['unknown-part', 'src/utils/canary.ts', "export { zero } from '../measure/index.ts';"],
  ];

  it.each(planted)('%s', (rule, file, code) => {
    const folder = join(house, file, '..');
    const testing = join(house, 'src/layout/testing/canary.ts');
    for (const made of [folder, join(testing, '..')]) mkdirSync(made, { recursive: true });
    writeFileSync(testing, 'export const canary = 1;\n');
    writeFileSync(join(house, file), `${code}\n`);
    const { stdout } = cruise(house);
    rmSync(join(house, file));
    rmSync(testing);
    expect(stdout).toContain(`error ${rule}: ${file}`);
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
    const shown = readFileSync('ARCHITECTURE.md', 'utf8');
    for (const [part, knows] of Object.entries(arrows)) {
      expect(shown).toContain(`| \`${part}\` | ${knows.length === 0 ? '—' : knows.join(', ')} |`);
    }
  });
});

function cruise(folder: string): { stdout: string } {
  const tool = join(folder, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const args = [tool, '--config', '.dependency-cruiser.mjs', '--output-type', 'err', 'src', 'apps'];
  return spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
}
