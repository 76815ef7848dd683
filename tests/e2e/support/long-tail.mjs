// The tail of the journal: entries stored one by one since the journal was last packed into segments.
import { factCount } from "./backup.mjs";
import { countByKeyboard, waitForCount } from "./counting.mjs";

/** Length of the tail, in entries, from which the app packs it when it opens. */
export const LONG_TAIL = 400;
export const MORE_THAN_LONG_TAIL = LONG_TAIL + 20;

/** Counts so many pieces that the tail is packed when the app opens next. Returns the number of facts. */
export async function countLongTail(page) {
  await countByKeyboard(page, MORE_THAN_LONG_TAIL);
  await waitForCount(page, MORE_THAN_LONG_TAIL);
  return factCount(page);
}

/** Number of entries in the tail. */
export const tailLength = (page) => page.evaluate(() => new Promise((give) => {
  indexedDB.open("lastpull").onsuccess = ({ target: { result: database } }) => {
    database.transaction("tail").objectStore("tail").count().onsuccess = ({ target: { result } }) => { database.close(); give(result); };
  };
}));

/** Runs before the app: notes each transaction in which the page itself packs the journal, and how it ended. */
export function recordPacking() {
  window.packings = [];
  const transaction = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (stores, mode, ...rest) {
    const work = transaction.call(this, stores, mode, ...rest);
    if (mode === "readwrite" && [...stores].includes("segments")) for (const end of ["complete", "abort"]) work.addEventListener(end, () => window.packings.push(end));
    return work;
  };
}
