import { readdirSync } from 'node:fs';
import { defineConfig } from 'tsdown';

/** Every part of the library is a door of its own: `import { readLength } from 'cardwright/measure'`. */
const parts = readdirSync('src', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);

export default defineConfig([
  {
    entry: {
      ...Object.fromEntries(parts.map((part) => [`${part}/index`, `src/${part}/index.ts`])),
      'cli/main': 'apps/cli/main.ts',
      'planner/index': 'apps/planner/index.ts',
      'planner/nodeWorker': 'apps/planner/nodeWorker.ts',
    },
    format: 'esm',
    platform: 'neutral',
    target: 'es2023',
    dts: true,
    clean: true,
    // These are written for `require`, which no browser has.
    deps: { neverBundle: [/^node:/], alwaysBundle: ['saxes', /^xmlchars/, 'svgpath'] },
    inputOptions: { resolve: { mainFields: ['module', 'main'] } },
  },
  // The planner for browsers, with all it needs: these files can be served as they are.
  {
    entry: { planner: 'apps/planner/browser.ts', webWorker: 'apps/planner/webWorker.ts' },
    outDir: 'dist/browser',
    format: 'esm',
    platform: 'browser',
    target: 'es2023',
    dts: false,
    minify: true,
    deps: { neverBundle: [/^node:/], alwaysBundle: [/^clipper2-ts/, 'highs', 'svgpath', 'tinyqueue'] },
    // The solver looks for its machine code beside the script it stands in.
    copy: [{ from: 'node_modules/highs/build/highs.wasm', to: 'dist/browser' }],
  },
]);
