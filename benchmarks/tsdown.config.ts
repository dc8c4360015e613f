import { defineConfig } from 'tsdown';

export default defineConfig({
  entry: { run: 'run.ts' },
  outDir: '../out/benchmarks',
  format: 'esm',
  platform: 'node',
  dts: false,
  clean: true,
  // They find their own parts beside themselves.
  deps: { neverBundle: [/^vite/, /^@vitejs/, /^playwright-core/] },
});
