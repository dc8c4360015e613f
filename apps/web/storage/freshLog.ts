import { deleteDB, openDB } from 'idb';

/**
 * Has the browser begin a fresh log for what it is about to be given.
 *
 * Chromium writes what a page keeps to the end of a log, and goes on with the log of the time before. Where it was
 * ended in the middle of a record then, what is written behind that piece is there until it is started once more, and
 * lost after that: a whole sitting, though each step of it was told to be on the disk (the issue of LevelDB,
 * https://github.com/google/leveldb/issues/1287). Deleting a database makes it put the log away and begin another one;
 * so a database is made and deleted that holds nothing. It takes some milliseconds in Chromium;
 * what other browsers make of it was not tried, and nothing waits for it longer than half a second.
 */
export async function beginFreshLog(): Promise<void> {
  // Another page may do the same just now, and may have been put to sleep over it.
  const patience = new Promise((resolve) => {
    setTimeout(resolve, 500);
  });
  // Without it all can still be read and written; whether that goes well is told there.
  await Promise.race([madeAndDeleted('cardwright, fresh log').catch(() => {}), patience]);
}

async function madeAndDeleted(name: string): Promise<void> {
  const database = await openDB(name, 1, {
    upgrade(made, _from, _to, transaction) {
      transaction.done.catch(() => {});
      made.createObjectStore('nothing');
    },
  });
  database.close();
  await deleteDB(name);
}
