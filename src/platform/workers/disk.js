// Worker that reads the journal while the app is still being compiled, and appends to it without waiting for a frame
// of the page.
//
// It knows no format: it stores and returns bytes in the schema of src/platform/indexed_db/, which also creates and
// upgrades the database. It appends only if the stored head is the one that the page built on. If anything fails, the
// page accesses the database itself.
"use strict";

let connection = null;

function close() {
  connection?.database?.close();
  connection = null;
}

/** The database of this name, or `null` if the page has not created it yet. */
async function open(name) {
  if (connection?.name !== name) {
    close();
    const database = await new Promise((resolve) => {
      const request = indexedDB.open(name);
      request.onupgradeneeded = () => request.transaction.abort();
      request.onerror = () => resolve(null);
      request.onsuccess = () => resolve(request.result);
    });
    if (!database) return null;
    const opened = { name, database };
    const forget = () => {
      database.close();
      if (connection === opened) connection = null;
    };
    database.onversionchange = forget;
    database.onclose = forget;
    connection = opened;
  }
  return connection.database;
}

/** Everything that opening the journal needs, read in one transaction. */
function read(database) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(["meta", "tail", "checkpoint"]);
    const meta = transaction.objectStore("meta").getAll();
    const checkpoint = transaction.objectStore("checkpoint").get("shop");
    const tail = transaction.objectStore("tail").getAll();
    transaction.oncomplete = () => resolve({ version: database.version, meta: meta.result, checkpoint: checkpoint.result, tail: tail.result });
    transaction.onabort = () => reject(transaction.error);
  });
}

/** One byte array cut into slices of these lengths. */
function slices(bytes, lengths) {
  let start = 0;
  return lengths.map((length) => bytes.slice(start, (start += length)));
}

const equal = (a, b) =>
  a.length === b.length && a.every((bytes, index) => bytes.length === b[index].length && bytes.every((byte, n) => byte === b[index][n]));

/**
 * Appends records to the tail and replaces the head, if the values in `meta` are those that the append builds on;
 * otherwise changes nothing and returns the stored values. `bytes` holds, one after another, the expected values of
 * `meta` (`metaCount` of them), the new head, and the records.
 */
function append(database, version, bytes, lengths, metaCount, keys) {
  if (database.version !== version) return {};
  const parts = slices(bytes, lengths);
  const expected = parts.slice(0, metaCount);
  return new Promise((resolve, reject) => {
    // Strict: the transaction completes when the bytes are on the disk.
    const transaction = database.transaction(["meta", "tail"], "readwrite", { durability: "strict" });
    const [meta, tail] = [transaction.objectStore("meta"), transaction.objectStore("tail")];
    const stored = meta.getAll();
    let changed = false;
    stored.onsuccess = () => {
      changed = !equal(stored.result, expected);
      if (changed) transaction.abort();
      else transaction.commit?.();
    };
    // Requested at once, without waiting for the comparison; the abort above undoes them.
    keys.forEach((key, index) => tail.put(parts[metaCount + 1 + index], key));
    meta.put(parts[metaCount], "head");
    transaction.oncomplete = () => resolve({ saved: true, at: performance.timeOrigin + performance.now() });
    transaction.onabort = () => (changed ? resolve({ meta: stored.result }) : reject(transaction.error));
  });
}

async function answer(name, ...appendArguments) {
  for (let retry = true; ; retry = false) {
    try {
      const database = await open(name);
      if (!database) return {};
      return await (appendArguments.length ? append(database, ...appendArguments) : read(database));
    } catch (error) {
      close();
      // The browser may have closed the connection: try a new one, once.
      if (!retry) return {};
    }
  }
}

onmessage = async ({ data: [id, ...request] }) => {
  const { checkpoint, ...rest } = await answer(...request);
  // Moved, not copied: it holds years of work.
  postMessage({ id, checkpoint, ...rest }, checkpoint instanceof Uint8Array ? [checkpoint.buffer] : []);
};
