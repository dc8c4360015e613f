import type { Connection } from './database.ts';

/** A database, and whether it keeps anything beyond the life of the page. */
interface KeptOrNot extends Connection {
  readonly isKept: Promise<boolean>;
}

/**
 * The browser's database, or the one that stands in where the browser has none or lets no page have one. One that only
 * fails is no reason for another: what it keeps would seem to be gone.
 */
export function keptOrNot(
  browsers: { readonly has: () => boolean; readonly database: Connection },
  standIn: () => Connection,
): KeptOrNot {
  const isKept = lets(browsers);
  const chosen = isKept.then((isSo) => (isSo ? browsers.database : standIn()));
  return {
    isKept,
    read: async (work) => (await chosen).read(work),
    write: async (work) => (await chosen).write(work),
  };
}

async function lets({ has, database }: Parameters<typeof keptOrNot>[0]): Promise<boolean> {
  try {
    if (!has()) return false;
    await database.read(async () => {});
    return true;
  } catch (reason) {
    return !(reason instanceof Error && denied.includes(reason.name));
  }
}

/** How browsers say that pages may keep nothing, as far as known (from memory): by settings, or in a private window. */
const denied: readonly string[] = ['SecurityError', 'InvalidStateError', 'NotAllowedError'];
