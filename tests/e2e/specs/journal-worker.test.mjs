// Faults of the journal's worker: the page writes instead, and no piece counts twice.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { downloadOnly, importBackup, prepareBackup } from "../support/backup.mjs";
import { pull, touchZone, waitForCount } from "../support/counting.mjs";
import { go, hashOf, press } from "../support/page.mjs";
import { tryAgain, waitUntilBlocked } from "../support/saving-blocked.mjs";
import { newDevice, testServer } from "../support/setup.mjs";
import { putJobOnPress } from "../support/shop.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();
const script = readFileSync(fileURLToPath(new URL("../../../src/platform/workers/disk.js", import.meta.url)), "utf8");

/** A shop with a run on the press; its journal worker runs the script that `change` returns. */
async function countingWith(t, change, expectedErrors = []) {
  const context = await newDevice(t, app, {
    expectedErrors,
    initScript: () => {
      // Makes the page's own use of the database fail while `failing` is set; the worker's goes on.
      window.failing = false;
      window.failed = 0;
      const { open } = IDBFactory.prototype;
      IDBFactory.prototype.open = function (...all) {
        if (!window.failing) return open.apply(this, all);
        window.failed += 1;
        throw new DOMException("simulated", "UnknownError");
      };
      const { transaction } = IDBDatabase.prototype;
      IDBDatabase.prototype.transaction = function (...all) {
        if (window.failing) throw new DOMException("simulated", "InvalidStateError");
        return transaction.apply(this, all);
      };
      // Keeps the worker and the number of appends it confirmed.
      window.appends = 0;
      window.Worker = class extends Worker {
        constructor(...all) {
          super(...all);
          window.worker = this;
          this.addEventListener("message", ({ data }) => { if (data.saved) window.appends += 1; });
        }
      };
    },
  });
  await context.route("**/disk.js", (route) => route.fulfill({ contentType: "text/javascript", body: change(script) }));
  const page = await context.tab();
  await page.goto(app.server.url);
  await press(page, "#start-shop");
  await putJobOnPress(page);
  return page;
}

const appends = (page) => page.evaluate(() => window.appends);

test("a count is written by the worker and survives a reload", async (t) => {
  const page = await countingWith(t, (script) => script);
  const before = await appends(page);
  await pull(page, 3);
  assert.equal(await appends(page), before + 3);
  await page.reload();
  await waitForCount(page, 3);
});

test("counting goes on without a terminated worker, nothing twice", async (t) => {
  const page = await countingWith(t, (script) => script);
  await pull(page, 2);
  await page.evaluate(() => window.worker.terminate());
  await touchZone(page);
  await waitForCount(page, 3);
  await pull(page, 2);
  await page.reload();
  await waitForCount(page, 5);
});

test("a worker that writes but does not answer counts nothing twice", async (t) => {
  const page = await countingWith(t, (script) => `${script}
    const tell = postMessage;
    postMessage = (answer) => answer.saved || tell(answer);`);
  await pull(page, 2);
  assert.equal(await appends(page), 0);
  await page.reload();
  await waitForCount(page, 2);
});

for (const [how, change] of Object.entries({
  "writes nothing": (script) => `IDBObjectStore.prototype.put = () => { throw new DOMException("simulated", "QuotaExceededError"); };\n${script}`,
  "opens nothing": (script) => `indexedDB.open = () => { throw new DOMException("simulated", "SecurityError"); };\n${script}`,
  "has no code that runs": () => "this is no script",
})) {
  test(`if the worker ${how}, the page writes instead`, async (t) => {
    const page = await countingWith(t, change, [/SyntaxError/]);
    await pull(page, 3);
    assert.equal(await appends(page), 0);
    await page.reload();
    await waitForCount(page, 3);
  });
}

test("the worker reopens a connection that was closed", async (t) => {
  const page = await countingWith(t, (script) => `const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...all) { const begun = begin.apply(this, all); begun.addEventListener("complete", () => this.close()); return begun; };
    ${script}`);
  const before = await appends(page);
  await pull(page, 3);
  assert.equal(await appends(page), before + 3);
  await page.reload();
  await waitForCount(page, 3);
});

test("a piece stored by a silent worker is the same entry in a file", async (t) => {
  const page = await countingWith(t, (script) => `${script}
    const tell = postMessage;
    postMessage = (answer) => answer.saved || tell(answer);`);
  const run = await hashOf(page);
  await page.evaluate(() => { window.failing = true; });
  await touchZone(page);
  await waitUntilBlocked(page);
  await page.evaluate(() => { window.failing = false; });
  await press(page, "#blocked a");
  await prepareBackup(page);
  const { bytes } = await downloadOnly(page);
  assert.equal(journalLines(bytes).filter((line) => line.includes('"pulled"')).length, 1);
  await go(page, run, "#zone");
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 1);
  assert.match(await importBackup(page, bytes), /^Nothing new/);
  await go(page, run, "#zone");
  // Another touch of the same size is another piece.
  await pull(page, 1);
  await page.reload();
  await waitForCount(page, 2);
});

test("a count recorded while an earlier one is unanswered is stored too", async (t) => {
  const page = await countingWith(t, (script) => `${script}
    let mute = false;
    const tell = postMessage;
    postMessage = (answer) => (mute && answer.saved) || tell(answer);
    const hear = onmessage;
    onmessage = (event) => { if (event.data === "mute") mute = true; else hear(event); };`);
  await pull(page, 2);
  await page.evaluate(() => { window.worker.postMessage("mute"); window.failing = true; });
  await touchZone(page);
  // The worker has stored the third piece and does not answer; the page's own try fails once.
  await page.waitForFunction(() => window.failed > 0, null, { polling: 5 });
  await touchZone(page);
  await page.waitForFunction(() => document.querySelector("#zone").dataset.unsaved === "2", null, { polling: 5 });
  await page.evaluate(() => { window.failing = false; });
  await waitForCount(page, 4);
  await page.reload();
  await waitForCount(page, 4);
  await pull(page, 1);
  await page.reload();
  await waitForCount(page, 5);
});
