// Serves a folder of built files, as any web host would; for `npm start` and for the tests in a browser.
import { preview } from 'vite';

/**
 * Serves the folder; takes the next free port where `port` is in use. Gives the addresses it is reached at, and a
 * way to end it.
 */
export async function serve({ folder, port, host }) {
  const server = await preview({
    configFile: false,
    logLevel: 'error',
    root: folder,
    base: '/',
    build: { outDir: '.' },
    preview: {
      port,
      host,
      strictPort: false,
      // By its own name in the house; nothing here is secret.
      allowedHosts: true,
      headers: { 'X-Content-Type-Options': 'nosniff', 'Referrer-Policy': 'no-referrer' },
    },
  });
  const { local, network } = server.resolvedUrls;
  return { addresses: [...local, ...network], close: () => server.close() };
}
