import { readdirSync } from 'node:fs';
import { defineConfig } from 'tsdown';

/** Every part of the library is a door of its own: `import { readLength } from 'cardwright/measure'`. */
const parts = readdirSync('src', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);

export default defineConfig({
  entry: {
    ...Object.fromEntries(parts.map((part) => [`${part}/index`, `src/${part}/index.ts`])),
    'cli/main': 'apps/cli/main.ts',
  },
  format: 'esm',
  platform: 'neutral',
  target: 'es2023',
  dts: true,
  clean: true,
  external: [/^node:/],
});
