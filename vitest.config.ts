import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'apps/**/*.test.ts', 'test/**/*.test.ts', 'benchmarks/**/*.test.ts'],
    testTimeout: 60_000,
  },
});
