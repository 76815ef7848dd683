// Faults of the browser's database, to order. Each runs in the page before the app does, and takes the journal's
// own thread away, so that it is the page that writes: src/platform/disk.rs. Faults of the thread: disk.test.mjs.

/**
 * Writes fail for as long as `storage.fail` names a fault, in all stores or only in `storage.only`.
 */
export function failSaving() {
  delete globalThis.Worker;
  window.storage = { fail: null, only: null, failed: 0 };
  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (...all) {
    const { fail, only } = window.storage;
    if (fail && (!only || this.name === only)) {
      window.storage.failed += 1;
      throw new DOMException("to order", fail);
    }
    return put.apply(this, all);
  };
}

/** Writes are taken and then fail as a whole, as a full disk makes them: `storage.fail` is on. */
export function failCommitting() {
  delete globalThis.Worker;
  window.storage = { fail: null, failed: 0 };
  const transaction = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...all) {
    const begun = transaction.apply(this, all);
    if (window.storage.fail) {
      window.storage.failed += 1;
      const { fail } = window.storage;
      Object.defineProperty(begun, "error", { get: () => new DOMException("to order", fail) });
      // After the app's own requests: it asks for the commit, and that is what fails.
      begun.commit = () => begun.abort();
    }
    return begun;
  };
}

/** Keeps every connection that is opened, to be closed underneath the app by `closeUnderneath`. */
export function keepConnections() {
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
export function closeUnderneath(page) {
  return page.evaluate(() => {
    const open = window.connections.splice(0);
    for (const connection of open) connection.close();
    return open.length;
  });
}
