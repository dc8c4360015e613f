// `npm test`: sets the clone up and runs every check, one after another; names what was skipped and why.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root, setUp } from './setUp.mjs';

const node = process.execPath;
const tool = (path, ...args) => [node, join('node_modules', path), ...args];
const scratch = mkdtempSync(join(tmpdir(), 'cardwright-test-'));
const report = join(scratch, 'vitest.json');

/** Every check: what it is for, and the command. */
const checks = [
  ['types of the library, which knows no machine', tool('typescript/bin/tsc', '-p', 'src/tsconfig.json')],
  ['types of everything', tool('typescript/bin/tsc', '-p', 'tsconfig.json')],
  ['types of the page', tool('typescript/bin/tsc', '-p', 'apps/web/tsconfig.json')],
  ['types of the tests of the page', tool('typescript/bin/tsc', '-p', 'test/app/tsconfig.json')],
  ['format and lint', tool('@biomejs/biome/bin/biome', 'ci', '--error-on-warnings', '.')],
  ['lint that needs types', tool('eslint/bin/eslint.js', '--max-warnings', '0', '.')],
  [
    'arrows between the parts',
    tool(
      'dependency-cruiser/bin/dependency-cruise.mjs',
      '--config',
      '.dependency-cruiser.mjs',
      '--output-type',
      'err',
      'src',
      'apps',
      'benchmarks',
      'test',
    ),
  ],
  ['unused code', tool('knip/bin/knip.js')],
  [
    'tests',
    tool('vitest/vitest.mjs', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`),
  ],
];

let failed = 0;
let passed = 0;
const skipped = [];
try {
  setUp();
  for (const [what, [command, ...args]] of checks) {
    console.log(`\n— ${what}`);
    const { status } = spawnSync(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
    if (what === 'tests') continue;
    if (status === 0) passed += 1;
    else failed += 1;
  }
  const tests = JSON.parse(readFileSync(report, 'utf8'));
  passed += tests.numPassedTests;
  failed += tests.numFailedTests + (tests.success || tests.numFailedTests > 0 ? 0 : 1);
  for (const file of tests.testResults) {
    for (const test of file.assertionResults) {
      // A skipped test says in its title what it wants: “… (needs pdftoppm)”.
      if (test.status !== 'passed' && test.status !== 'failed') skipped.push(test.fullName);
    }
  }
} catch (problem) {
  console.error(problem.message);
  failed += 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
console.log('');
for (const name of skipped) console.log(`Skipped: ${name}`);
console.log(`${passed} passed, ${failed} failed, ${skipped.length} skipped`);
const skipsForbidden = process.argv.includes('--no-skips') && skipped.length > 0;
process.exit(failed > 0 || skipsForbidden ? 1 : 0);
