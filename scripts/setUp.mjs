import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the project. */
export const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * Makes a fresh clone ready: the right Node, the libraries, the build. Does only what is wanting, and says what
 * it does to `say`. Throws an Error whose message is for people when it cannot.
 */
export function setUp(say = (line) => console.log(line)) {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    throw new Error(
      `This needs Node 20.19 or later; here is Node ${process.versions.node}. Newer ones: https://nodejs.org`,
    );
  }
  installLibraries(say);
  build(say);
}

function installLibraries(say) {
  const wanted = digest(['package-lock.json']);
  const stamp = join(root, 'node_modules', '.set-up-from');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  say(
    'Fetching the libraries this project is built on (once; it needs the network and about half a minute) …',
  );
  // The build follows below, so that it is told on its own line; `prepare` would do it here unseen.
  run('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']);
  writeFileSync(stamp, wanted);
}

/** Builds `dist/` when it is older than the source. */
export function build(say = (line) => console.log(line)) {
  const wanted = digest([
    'package-lock.json',
    'tsdown.config.ts',
    'vite.config.ts',
    'scripts/offlineBuild.mjs',
    ...filesUnder('src'),
    ...filesUnder('apps'),
    ...filesUnder('assets'),
    ...filesUnder('examples'),
  ]);
  const stamp = join(root, 'dist', '.built-from');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  say('Building the tool …');
  run(process.execPath, [join('node_modules', 'tsdown', 'dist', 'run.mjs'), '--logLevel', 'error']);
  // After the library, which clears `dist/` first.
  run(process.execPath, [join('node_modules', 'vite', 'bin', 'vite.js'), 'build']);
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(stamp, wanted);
}

/** Runs a command in the project's folder; what it says is shown only when it fails. */
function run(command, args) {
  // npm is a script on Windows and wants a shell there; the arguments are our own words.
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd: root,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (status === 0) return;
  throw new Error(
    `${stdout}${stderr}\n“${command} ${args.join(' ')}” did not succeed; what it said stands above.`,
  );
}

function digest(files) {
  const hash = createHash('sha256');
  for (const file of files)
    hash
      .update(file)
      .update('\0')
      .update(readFileSync(join(root, file)))
      .update('\0');
  return hash.digest('hex');
}

function filesUnder(folder) {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.test\.tsx?$/u.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length))
    .sort();
}
