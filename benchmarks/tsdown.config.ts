import { defineConfig } from 'tsdown';

export default defineConfig({
  entry: { run: 'run.ts' },
  outDir: '../out/benchmarks',
  format: 'esm',
  platform: 'node',
  dts: false,
  clean: true,
});
