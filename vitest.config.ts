import { defineConfig } from 'vitest/config';

export default defineConfig({
  // This package names a file as its main that Node reads as an empty module; bundlers take the other.
  resolve: { alias: { 'maxrects-packer': 'maxrects-packer/dist/maxrects-packer.mjs' } },
  test: {
    include: ['src/**/*.test.ts', 'apps/**/*.test.{ts,tsx}', 'test/**/*.test.ts', 'benchmarks/**/*.test.ts'],
    testTimeout: 60_000,
    server: { deps: { inline: ['maxrects-packer'] } },
  },
});
