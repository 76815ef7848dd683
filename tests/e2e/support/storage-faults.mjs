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
