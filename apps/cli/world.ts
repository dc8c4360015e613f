import { randomUUID } from 'node:crypto';
import { constants, rmSync } from 'node:fs';
import { access, copyFile, readFile, realpath, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { text } from 'node:stream/consumers';

/** Everything of the world that the commands touch, so that they can be run in a test without it. */
export interface World {
  /** The text of a file; `-` is standard input. Throws a `WorldProblem`. */
  read(path: string): Promise<string>;
  /**
   * Writes a whole file or nothing: what stood there before stays until all is written. With `fresh`, an
   * existing file is left alone and a `WorldProblem` thrown, as is one of `not`, the files that were read.
   * `-` is standard output.
   */
  write(path: string, content: string | Uint8Array, options?: WriteOptions): Promise<void>;
  /** A file that comes with the program, from `assets/`. */
  asset(path: string): Promise<Uint8Array>;
  out(text: string): void;
  err(text: string): void;
  /**
   * Shows a line at the foot of the terminal in place of the one before, until something else is said or the
   * command ends; an empty one wipes it. Nothing is shown where standard error is no terminal.
   */
  status(line: string): void;
  now(): Date;
}

export interface WriteOptions {
  readonly fresh?: boolean;
  readonly not?: readonly (string | undefined)[];
}

/** The world did not do as it was asked; the message is a sentence for people. */
export class WorldProblem extends Error {}

/** The real world: files, standard streams, the clock. */
export function realWorld(): World {
  const status = statusLine(process.stderr);
  return {
    async read(path) {
      try {
        return path === '-' ? await text(process.stdin) : await readFile(path, 'utf8');
      } catch (cause) {
        throw new WorldProblem(`Cannot read ${shown(path)}: ${reason(cause)}.`, { cause });
      }
    },
    async write(path, content, { fresh = false, not = [] } = {}) {
      if (path === '-') {
        status('');
        process.stdout.write(content);
        return;
      }
      const target = await realPath(path);
      for (const input of not) {
        if (input === undefined || input === '-' || (await realPath(input)) !== target) continue;
        throw new WorldProblem(`Cannot write ${shown(path)}: it is the file that was read; name another.`);
      }
      const draft = join(dirname(path), `.${basename(path)}.${randomUUID()}`);
      // Ctrl-C ends the process by itself at any other time; here it would leave a draft lying about.
      const stop = () => {
        rmSync(draft, { force: true });
        process.kill(process.pid, 'SIGINT');
      };
      process.once('SIGINT', stop);
      try {
        await writeFile(draft, content, { flag: 'wx' });
        // Copying with COPYFILE_EXCL fails where a file stands; renaming replaces it in one move.
        if (fresh) await copyFile(draft, path, constants.COPYFILE_EXCL);
        else await rename(draft, path);
      } catch (cause) {
        throw new WorldProblem(`Cannot write ${shown(path)}: ${reason(cause)}.`, { cause });
      } finally {
        // Where no draft could be written, none can be taken away either.
        await rm(draft, { force: true }).catch(() => undefined);
        process.off('SIGINT', stop);
      }
    },
    async asset(path) {
      return readFile(new URL(`${await packageFolder()}assets/${path}`));
    },
    out(text) {
      status('');
      process.stdout.write(text);
    },
    err(text) {
      status('');
      process.stderr.write(text);
    },
    status,
    now: () => new Date(),
  };
}

/** A line that is written over and over at the foot of a terminal, no longer than it is wide. */
export function statusLine(
  terminal: Pick<NodeJS.WriteStream, 'isTTY' | 'columns' | 'write'>,
): World['status'] {
  let shown = '';
  return (line) => {
    if (!terminal.isTTY || line === shown) return;
    shown = line;
    const widest = (terminal.columns || 80) - 1;
    // Back to the beginning of the line, and wipe it (ECMA-48: carriage return, EL).
    terminal.write(`\r\u001b[2K${line.length > widest ? `${line.slice(0, widest - 1)}…` : line}`);
  };
}

/** Where the package stands: the command line runs built, from `dist/`, and in tests from its source. */
async function packageFolder(): Promise<string> {
  for (let folder = new URL('.', import.meta.url); ; folder = new URL('..', folder)) {
    try {
      await access(new URL('package.json', folder));
      return folder.href;
    } catch (cause) {
      if (folder.pathname === '/')
        throw new WorldProblem('The program’s own files are missing: install it again.', { cause });
    }
  }
}

/** Where a path leads in the end, or the path made whole where nothing stands there yet. */
async function realPath(path: string): Promise<string> {
  return realpath(path).catch(() => resolve(path));
}

function reason(cause: unknown): string {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  const said: Readonly<Record<string, string>> = {
    ENOENT: 'there is no such file or folder',
    EACCES: 'it may not be opened',
    EPERM: 'it may not be opened',
    EROFS: 'nothing can be written there',
    EISDIR: 'it is a folder, not a file',
    ENOTDIR: 'a part of its path is a file, not a folder',
    EEXIST: 'a file of that name is there already, and is left as it is',
    ENOSPC: 'the disk is full',
    ENAMETOOLONG: 'the name is too long',
  };
  return said[code] ?? (cause instanceof Error ? cause.message : String(cause));
}

function shown(path: string): string {
  return path === '-' ? 'standard input' : `“${path}”`;
}
