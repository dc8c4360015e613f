// `npm start`: sets the clone up, serves the page from this machine and says where it is; Ctrl-C ends it.
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { root, setUp } from './setUp.mjs';

const { values: options } = parseArgs({
  options: {
    port: { type: 'string', default: process.env.PORT ?? '8460' },
    // For a tablet in the same house: `npm start -- --home`.
    home: { type: 'boolean', default: false },
  },
});

try {
  setUp();
  const { serve } = await import('./serve.mjs');
  const { addresses } = await serve({
    folder: join(root, 'dist', 'app'),
    port: Number(options.port),
    host: options.home ? '0.0.0.0' : 'localhost',
  });
  console.log(`
Cardwright is at ${addresses.join(' and ')}
Open it in a browser on this ${options.home ? 'machine, or on a tablet in the same network' : 'machine'}; Ctrl-C ends it.`);
} catch (problem) {
  if (problem.message) console.error(problem.message);
  process.exit(1);
}
