// Faults of IndexedDB on demand. Each function runs in the page before the app does. They remove workers, so that the
// page itself writes the journal. Faults of the worker are in journal-worker.test.mjs.

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
export function failCommits() {
  delete globalThis.Worker;
  window.storage = { fail: null, failed: 0 };
  const transaction = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...all) {
    const started = transaction.apply(this, all);
    if (window.storage.fail) {
      window.storage.failed += 1;
      const { fail } = window.storage;
      Object.defineProperty(started, "error", { get: () => new DOMException("simulated", fail) });
      // The app calls `commit` after its requests; that is what fails.
      started.commit = () => started.abort();
    }
    return started;
  };
}

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

/** Keeps every write transaction open while `storage.hang` is set, as a storage process does that hangs. */
export function hangWrites() {
  delete globalThis.Worker;
  window.storage = { hang: false, held: 0 };
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (...all) {
    const request = put.apply(this, all);
    if (window.storage.hang) {
      window.storage.held += 1;
      // A transaction stays open as long as something is asked of it.
      const hold = () => { if (window.storage.hang) this.count().onsuccess = hold; };
      hold();
      this.transaction.commit = () => {};
    }
    return request;
  };
}

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
