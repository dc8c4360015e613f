import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runCommandLine } from '../apps/cli/commandLine.ts';
import { realWorld, type World } from '../apps/cli/world.ts';

/** What one run of the command line came to. */
export interface Run {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line on the real world, but for its streams; `input` is what standard input holds. */
export async function cardwright(args: readonly string[], input = ''): Promise<Run> {
  const said = { out: '', err: '' };
  const real = realWorld();
  const world: World = {
    ...real,
    read: async (path) => (path === '-' ? input : real.read(path)),
    write: async (path, content, options) => {
      if (path === '-')
        said.out += typeof content === 'string' ? content : Buffer.from(content).toString('latin1');
      else await real.write(path, content, options);
    },
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    status: () => undefined,
    now: () => new Date('2026-11-25T12:00:00Z'),
  };
  const status = await runCommandLine(args, world);
  return { status, ...said };
}

/** A folder of its own for a test, gone when the process ends. */
export function scratchFolder(): { readonly path: (name: string) => string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'cardwright-'));
  return {
    path: (name) => join(folder, name),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** A layout file as a test changes it. */
export interface LayoutDraft {
  cards: number;
  base: { size: string[] };
  papers: Record<string, { sheets: { size: string[]; count: number | null }[] }>;
  parts: {
    id: string;
    size?: string[];
    place?: Record<string, string>;
    torn?: Record<string, string>;
    tuck?: Record<string, string>;
    slant?: number;
    paper: string;
  }[];
}

/** A layout file of the tests or examples, to be changed. */
export function layoutDraft(path: string): LayoutDraft {
  return JSON.parse(readFileSync(path, 'utf8')) as LayoutDraft;
}
