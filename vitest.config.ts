import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

const inBrowsers = ['test/app/**/*.test.ts'];

export default defineConfig({
  // This package names a file as its main that Node reads as an empty module; bundlers take the other.
  resolve: { alias: { 'maxrects-packer': 'maxrects-packer/dist/maxrects-packer.mjs' } },
  test: {
    testTimeout: 60_000,
    setupFiles: 'test/seed.ts',
    // Files that follow one another in a process share what they import: nothing here keeps anything from test to test.
    isolate: false,
    server: { deps: { inline: ['maxrects-packer'] } },
    projects: [
      {
        extends: true,
        test: {
          name: 'library and doors',
          include: [
            'src/**/*.test.ts',
            'apps/**/*.test.{ts,tsx}',
            'test/**/*.test.ts',
            'benchmarks/**/*.test.ts',
          ],
          exclude: inBrowsers,
          maxWorkers: availableParallelism(),
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'page',
          include: inBrowsers,
          // A browser is several processes: two of them at a time are no quicker, and less sure of their timing.
          fileParallelism: false,
          // A browser on a busy machine now and then leaves a click waiting. What may lose something is never tried again.
          retry: 1,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
