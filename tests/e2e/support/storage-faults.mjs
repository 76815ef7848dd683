// Faults of IndexedDB on demand. What is exported runs in the page before the app does. Workers are removed, so that the
// page itself writes the journal; `inWorker` gives the journal's worker the same faults. Others are in
// journal-worker.test.mjs.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** The same faults in a page without workers. */
const withoutWorkers = (faults) => `delete globalThis.Worker;\n(${faults})();`;

/** Options of a device on which the page has these faults, and the journal's worker too: see `setWorkerFault`. */
export function inWorker(faults) {
  const script = readFileSync(fileURLToPath(new URL("../../../src/platform/workers/disk.js", import.meta.url)), "utf8");
  const body = `(${faults})();\n${script}
    const hear = onmessage;
    onmessage = (event) => event.data.fault ? Object.assign(storage, event.data.fault) : hear(event);`;
  return { initScript: `(${faults})();`, scripts: { "**/disk.js": body } };
}

/** Sets these fields of `storage` in the journal's worker. */
export const setWorkerFault = (page, fault) => page.evaluate((fault) => globalThis.lastpullJournalWorker.postMessage({ fault }), fault);

/** Makes each write fail while `storage.fail` names an error, in all object stores or only in `storage.only`. */
export function failWrites() {
  delete globalThis.Worker;
  window.storage = { fail: null, only: null, failed: 0 };
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (...all) {
    const { fail, only } = window.storage;
    if (fail && (!only || this.name === only)) {
      window.storage.failed += 1;
      throw new DOMException("simulated", fail);
    }
    return put.apply(this, all);
  };
}

/** Accepts writes and then aborts their transaction, as a full disk does, while `storage.fail` names an error. */
export function commitsFail() {
  globalThis.storage = { fail: null, failed: 0, writes: 0 };
  const transaction = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...all) {
    const started = transaction.apply(this, all);
    if (all[1] !== "readwrite") return started;
    storage.writes += 1;
    if (storage.fail) {
      storage.failed += 1;
      const { fail } = storage;
      Object.defineProperty(started, "error", { get: () => new DOMException("simulated", fail) });
      // The app calls `commit` after its requests; that is what fails.
      started.commit = () => started.abort();
    }
    return started;
  };
}

export const failCommits = withoutWorkers(commitsFail);

/** Keeps every connection that the app opens, for `closeConnections`. */
export function recordConnections() {
  delete globalThis.Worker;
  window.connections = [];
  const open = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...all) {
    const request = open.apply(this, all);
    request.addEventListener("success", () => window.connections.push(request.result));
    return request;
  };
}

/** Closes every connection the app holds. Returns how many there were. */
export function closeConnections(page) {
  return page.evaluate(() => {
    const open = window.connections.splice(0);
    for (const connection of open) connection.close();
    return open.length;
  });
}

/**
 * Makes each write on a connection that is open when `storage.broken` is set begin and then abort, as on one whose storage
 * process has died. A new connection writes.
 */
export function connectionsBreak() {
  let broken = 0;
  const numbers = new WeakMap();
  globalThis.storage = { opened: 0, writes: 0, aborted: 0, set broken(_) { broken = this.opened; } };
  const { open } = IDBFactory.prototype;
  IDBFactory.prototype.open = function (...all) {
    const request = open.apply(this, all);
    request.addEventListener("success", () => numbers.set(request.result, (storage.opened += 1)));
    return request;
  };
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (...all) {
    const started = transaction.apply(this, all);
    if (all[1] !== "readwrite") return started;
    storage.writes += 1;
    if (numbers.get(this) <= broken) {
      storage.aborted += 1;
      Object.defineProperty(started, "error", { get: () => new DOMException("simulated", "UnknownError") });
      started.commit = () => started.abort();
    }
    return started;
  };
}

export const breakConnections = withoutWorkers(connectionsBreak);

/**
 * Keeps every write transaction open while `storage.hang` is set, as a storage process does that hangs: of all databases, or
 * of the one that it names.
 */
export function writesHang() {
  globalThis.storage = { hang: false, held: 0 };
  const isHeld = (name) => storage.hang === true || storage.hang === name;
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (...all) {
    const request = put.apply(this, all);
    const { name } = this.transaction.db;
    if (isHeld(name)) {
      storage.held += 1;
      // A transaction stays open as long as something is asked of it.
      const hold = () => { if (isHeld(name)) this.count().onsuccess = hold; };
      hold();
      this.transaction.commit = () => {};
    }
    return request;
  };
}

export const hangWrites = withoutWorkers(writesHang);

/** Cuts the last bytes off stored values of an object store: all of them, or the one at this index. */
export function truncateStored(page, store, bytes, only = null) {
  return page.evaluate(([name, bytes, only]) => new Promise((done, failed) => {
    indexedDB.open("lastpull").onsuccess = ({ target: { result: database } }) => {
      const work = database.transaction(name, "readwrite");
      let index = 0;
      work.objectStore(name).openCursor().onsuccess = ({ target: { result: cursor } }) => {
        if (!cursor) return;
        if (only === null || index === only) cursor.update(cursor.value.slice(0, cursor.value.length - bytes));
        index += 1;
        cursor.continue();
      };
      work.oncomplete = () => { database.close(); done(); };
      work.onabort = () => failed(work.error);
    };
  }), [store, bytes, only]);
}

/**
 * Puts other bytes in place of the fact of the last counted piece in the tail. A record ends with its fact: a byte 1, and
 * those of the piece (16, its number, its size), or a byte 0, and an unknown fact's kind and JSON.
 */
export function replaceLastPiece(page, fact) {
  return page.evaluate((fact) => new Promise((done, failed) => {
    indexedDB.open("lastpull").onsuccess = ({ target: { result: database } }) => {
      const work = database.transaction("tail", "readwrite");
      work.objectStore("tail").openCursor(null, "prev").onsuccess = ({ target: { result: cursor } }) => {
        const { value } = cursor;
        const start = value.length - 5;
        if (value[start] === 1 && value[start + 1] === 16 && value[start + 2] === 2) cursor.update(new Uint8Array([...value.slice(0, start), ...fact]));
        else cursor.continue();
      };
      work.oncomplete = () => { database.close(); done(); };
      work.onabort = () => failed(work.error);
    };
  }), [...fact]);
}
