/** One build of the page: all files that belong together. */
export interface Build {
  /** Another one wherever any of the files differs. */
  readonly name: string;
  /**
   * Each file by its address from the folder of the page on (`assets/index.js`; the page itself is ``), with its digest
   * as browsers check it (`sha256-…`, Subresource Integrity, W3C).
   */
  readonly files: Readonly<Record<string, string>>;
}

/**
 * What a build goes by where all pages of a host share one list of names: its cache, and the lock that a page of it
 * holds while it is open. `folder` is the address of the page's folder, with the slash at its end.
 */
export function sharedName(folder: string, name: string): string {
  return `${sharedNamesOf(folder)}${name}`;
}

/** What the names of all builds of a folder begin with. */
export function sharedNamesOf(folder: string): string {
  return `cardwright ${folder} `;
}
