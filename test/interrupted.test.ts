import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import { scratchFolder } from './commandLine.ts';

const folder = scratchFolder();
afterAll(folder.remove);

/** The built command line writing a guide over an older file, stopped as Ctrl-C does after so many milliseconds. */
function stopped(name: string, afterMs: number): Promise<NodeJS.Signals | number> {
  const args = ['guide', 'examples/kite-day.card.json', '-o', folder.path(`${name}/guide.pdf`)];
  const command = spawn(process.execPath, ['bin/cardwright.js', ...args], { stdio: 'ignore' });
  setTimeout(() => command.kill('SIGINT'), afterMs);
  return new Promise((resolve) => command.on('exit', (code, signal) => resolve(signal ?? code!)));
}

it('Ctrl-C at any moment stops the command and leaves the older file, or the new one whole, and no draft', async () => {
  const ends: (NodeJS.Signals | number)[] = [];
  for (const afterMs of [10, 100, 250, 500, 750, 1000]) {
    const name = `after-${afterMs}`;
    mkdirSync(folder.path(name));
    writeFileSync(folder.path(`${name}/guide.pdf`), 'older');
    // A shell shows an end by this signal as exit status 130.
    const end = await stopped(name, afterMs);
    expect(['SIGINT', 0]).toContain(end);
    ends.push(end);
    expect(readdirSync(folder.path(name))).toEqual(['guide.pdf']);
    const written = readFileSync(folder.path(`${name}/guide.pdf`), 'latin1');
    expect(written === 'older' || /^%PDF-.*%%EOF\s*$/s.test(written)).toBe(true);
    if (end === 0) expect(written).not.toBe('older');
  }
  expect(ends[0]).toBe('SIGINT');
});
