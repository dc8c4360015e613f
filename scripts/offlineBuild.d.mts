import type { Plugin } from 'vite';

/** For the build of the page: it can be kept whole by a browser. */
export function keptOffline(): Plugin;

/** Does it to a page that lies built in a folder, and gives the name of the build. */
export function offlineBuild(folder: string): Promise<string>;
