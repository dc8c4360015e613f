// `npm run bench`: sets the clone up, builds the benchmarks and runs them.
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { root, setUp } from './setUp.mjs';

setUp();
const run = (...args) => execFileSync(process.execPath, args, { cwd: root, stdio: 'inherit' });
run(
  join('node_modules', 'tsdown', 'dist', 'run.mjs'),
  '--config',
  'benchmarks/tsdown.config.ts',
  '--logLevel',
  'error',
);
run(join('out', 'benchmarks', 'run.mjs'), ...process.argv.slice(2));
