// `npm run random`: runs the random tests with 5 seeds never tried before (or `-- 50`); names the seeds that failed.
import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, setUp } from './setUp.mjs';

const times = Number(process.argv[2] ?? 5);
if (!Number.isInteger(times) || times < 1) {
  console.error('With how many seeds? A whole number may stand there: npm run random -- 5');
  process.exit(2);
}
setUp();
const files = ['src', 'apps']
  .flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true }).map((file) => join(folder, String(file))),
  )
  .filter(
    (file) => file.endsWith('.test.ts') && readFileSync(join(root, file), 'utf8').includes('fc.assert'),
  );
const failed = [];
for (let time = 1; time <= times; time += 1) {
  const seed = String(randomInt(2 ** 31));
  console.log(`\n— seed ${seed}, ${time} of ${times}`);
  const { status, signal } = spawnSync(
    process.execPath,
    [join('node_modules', 'vitest', 'vitest.mjs'), 'run', '--reporter=dot', ...files],
    { cwd: root, stdio: 'inherit', env: { ...process.env, CARDWRIGHT_SEED: seed } },
  );
  if (signal !== null) break;
  if (status !== 0) failed.push(seed);
}
for (const seed of failed) console.log(`Failed: CARDWRIGHT_SEED=${seed} npm test`);
process.exit(failed.length > 0 ? 1 : 0);
