// The journal on a thread of its own: read while the app is still being compiled, and appended to where no
// frame stands in the way of a count.
//
// It knows no format. Bytes go in and out as src/platform/indexed_db.rs lays them down, which also makes and
// upgrades the database. It appends only on top of the very head that the page worked from, and for everything
// else, and wherever it fails, the page goes to the database itself.
"use strict";

let connection = null;

function close() {
  connection?.database?.close();
  connection = null;
}

/** The database of this name; none where the page has yet to make it. */
async function open(name) {
  if (connection?.name !== name) {
    close();
    const database = await new Promise((give) => {
      const request = indexedDB.open(name);
      request.onupgradeneeded = () => request.transaction.abort();
      request.onerror = () => give(null);
      request.onsuccess = () => give(request.result);
    });
    if (!database) return null;
    const mine = { name, database };
    const forget = () => {
      database.close();
      if (connection === mine) connection = null;
    };
    database.onversionchange = forget;
    database.onclose = forget;
    connection = mine;
  }
  return connection.database;
}

/** What opening the journal reads, as of one moment. */
function read(database) {
  return new Promise((give, fail) => {
    const transaction = database.transaction(["meta", "tail", "checkpoint"]);
    const meta = transaction.objectStore("meta").getAll();
    const checkpoint = transaction.objectStore("checkpoint").get("shop");
    const tail = transaction.objectStore("tail").getAll();
    transaction.oncomplete = () => give({ version: database.version, meta: meta.result, checkpoint: checkpoint.result, tail: tail.result });
    transaction.onabort = () => fail(transaction.error);
  });
}

/** One row of bytes cut into pieces of these lengths. */
function pieces(row, lengths) {
  let at = 0;
  return lengths.map((length) => row.slice(at, (at += length)));
}

const same = (some, others) =>
  some.length === others.length && some.every((bytes, at) => bytes.length === others[at].length && bytes.every((byte, n) => byte === others[at][n]));

/**
 * Appends to the tail and moves the head on, if what is stored of `meta` is what this builds on; else says what is,
 * and changes nothing. The row holds those values (`values` of them), the head afterwards, and the records.
 */
function appended(database, version, row, lengths, values, keys) {
  if (database.version !== version) return {};
  const bytes = pieces(row, lengths);
  const meta = bytes.slice(0, values);
  return new Promise((give, fail) => {
    // Resolves when the bytes are on the disk, not when they are on their way.
    const transaction = database.transaction(["meta", "tail"], "readwrite", { durability: "strict" });
    const [about, tail] = [transaction.objectStore("meta"), transaction.objectStore("tail")];
    const stored = about.getAll();
    let changed = false;
    stored.onsuccess = () => {
      changed = !same(stored.result, meta);
      if (changed) transaction.abort();
      else transaction.commit?.();
    };
    // Asked for in one breath; taken back above should the head be another.
    keys.forEach((key, at) => tail.put(bytes[values + 1 + at], key));
    about.put(bytes[values], "head");
    transaction.oncomplete = () => give({ saved: true, at: performance.timeOrigin + performance.now() });
    transaction.onabort = () => (changed ? give({ meta: stored.result }) : fail(transaction.error));
  });
}

async function answer(name, ...append) {
  for (let again = true; ; again = false) {
    try {
      const database = await open(name);
      if (!database) return {};
      return await (append.length ? appended(database, ...append) : read(database));
    } catch (error) {
      close();
      // Closed underneath: a new connection may do.
      if (!again) return {};
    }
  }
}

onmessage = async ({ data: [id, ...ask] }) => postMessage({ id, ...(await answer(...ask)) });
