// Makes a built page one that can be kept whole by a browser: names the build, and puts the worker beside the page that
// keeps it (`offline.js`), with the digest of every file.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const worker = fileURLToPath(new URL('../apps/web/offline/worker.ts', import.meta.url));
/** The worker's own script, which a browser keeps by itself; it has to lie in the folder of the page it answers for. */
const workerFile = 'offline.js';
const nameInPage = /(<meta name="build" content=")[^"]*(")/u;

/** For the build of the page, once all its files are written. */
export function keptOffline() {
  let folder = '';
  return {
    name: 'kept offline',
    apply: 'build',
    configResolved(config) {
      folder = resolve(config.root, config.build.outDir);
    },
    async writeBundle() {
      await offlineBuild(folder);
    },
  };
}

/** Names the build that lies in a folder by what is in its files, and gives the name; done again, it is the same. */
export async function offlineBuild(folder) {
  const read = (file) => readFileSync(join(folder, file));
  const page = join(folder, 'index.html');
  const html = readFileSync(page, 'utf8');
  if (!nameInPage.test(html)) throw new Error('index.html has no place for the name of its build');
  const named = (name) => html.replace(nameInPage, `$1${name}$2`);
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((file) => file !== workerFile && file !== 'index.html')
    .sort();
  const others = files.map((file) => [file, digest(read(file))]);
  const all = JSON.stringify([...others, ['', digest(named(''))]]);
  const name = createHash('sha256').update(all).digest('hex').slice(0, 16);
  writeFileSync(page, named(name));
  // Asked for as the folder itself: some hosts send a browser there from `index.html`.
  const ownBuild = { name, files: Object.fromEntries([['', digest(named(name))], ...others]) };
  await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    define: { ownBuild: JSON.stringify(ownBuild) },
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2023',
      lib: { entry: worker, formats: ['iife'], name: 'offline', fileName: () => workerFile },
    },
  });
  return name;
}

function digest(content) {
  return `sha256-${createHash('sha256').update(content).digest('base64')}`;
}
