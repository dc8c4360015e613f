import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { chromiumPath } from './appPage.ts';

/** A browser that ends as it does when a device runs out of power: all of it at once, with no time for a last word. */
export interface KilledBrowser {
  readonly page: () => Promise<Page>;
  /** Ends when none of it runs any more; once is enough. */
  kill(): Promise<void>;
}

/** Starts a browser on a profile; what an earlier one kept there is there. */
export async function startedOn(profile: string): Promise<KilledBrowser> {
  const portFile = join(profile, 'DevToolsActivePort');
  rmSync(portFile, { force: true });
  const process_ = spawn(
    chromiumPath,
    [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      // Every tab is worked in, whichever stands in front.
      '--disable-background-timer-throttling',
      '--disable-backgrounding-occluded-windows',
      '--disable-renderer-backgrounding',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    // A group of its own, so that it can be ended with all it has started.
    { detached: true, stdio: 'ignore' },
  );
  const browser = await connected(portFile, process_);
  const [context] = browser.contexts();
  let killed: Promise<void> | null = null;
  async function killNow(): Promise<void> {
    const gone = new Promise((resolve) => process_.once('exit', resolve));
    process.kill(-process_.pid!, 'SIGKILL');
    await gone;
    await browser.close().catch(() => {});
  }
  return {
    page: () => context!.newPage(),
    kill() {
      killed ??= killNow();
      return killed;
    },
  };
}

async function connected(portFile: string, process_: ChildProcess): Promise<Browser> {
  for (let tries = 0; tries < 600 && process_.exitCode === null; tries += 1) {
    const [port, path] = existsSync(portFile) ? readFileSync(portFile, 'utf8').split('\n') : [];
    if (port && path) return chromium.connectOverCDP(`ws://127.0.0.1:${port}${path}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  process_.kill('SIGKILL');
  throw new Error('The browser has not started');
}
