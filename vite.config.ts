import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { keptOffline } from './scripts/offlineBuild.mjs';

/** The page as plain files that work from any folder of any host. */
export default defineConfig({
  root: 'apps/web',
  base: './',
  plugins: [react(), keptOffline()],
  build: {
    outDir: '../../dist/app',
    emptyOutDir: true,
    target: 'es2023',
    // Inlined assets would be `data:` addresses, which the policy of the page does not allow for scripts and fonts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1000,
  },
  worker: { format: 'es' },
});
