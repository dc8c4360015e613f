// `npm run kill`: kills a browser 500 times (or `-- 2000`) while the built page is worked on; nothing may be lost.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root, setUp } from './setUp.mjs';

const kills = Number(process.argv[2] ?? 500);
if (!Number.isInteger(kills) || kills < 1) {
  console.error('How many times? A whole number may stand there: npm run kill -- 500');
  process.exit(2);
}
setUp();
const { status } = spawnSync(
  process.execPath,
  [join('node_modules', 'vitest', 'vitest.mjs'), 'run', 'test/app/kill'],
  { cwd: root, stdio: 'inherit', env: { ...process.env, CARDWRIGHT_KILLS: String(kills) } },
);
process.exit(status ?? 1);
