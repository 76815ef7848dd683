// Long work in a worker: how far it is, cancelling it, and doing without it.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { expectWholeJournal, exportBackup, factCount, importBackup, storedBytes } from "../support/backup.mjs";
import { now } from "../support/clock.mjs";
import { countByKeyboard, pull, waitForCount, zoneState } from "../support/counting.mjs";
import { backupFile, id, shopLines } from "../support/journal-file.mjs";
import { LONG_TAIL, MORE_THAN_LONG_TAIL, recordPacking, tailLength } from "../support/long-tail.mjs";
import { go, press } from "../support/page.mjs";
import { newDevice, testServer } from "../support/setup.mjs";
import { truncateStored } from "../support/storage-faults.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();
const script = readFileSync(fileURLToPath(new URL("../../../src/platform/workers/work.js", import.meta.url)), "utf8");
/** More facts than the page reads by itself. */
const LINES = shopLines(24_000, now());
const FILE = backupFile(LINES, now());

/** A shop whose worker runs the script that `change` returns. The page keeps what the worker says of its progress. */
async function shopWith(t, change = (script) => script, expectedErrors = []) {
  const context = await newDevice(t, app, {
    expectedErrors,
    initScript: () => {
      // It would keep the changed script for later workers.
      delete Navigator.prototype.serviceWorker;
      window.shares = [];
      window.answers = 0;
      window.Worker = class extends Worker {
        constructor(...all) {
          super(...all);
          this.addEventListener("message", ({ data }) => { 
            if (data?.progress) window.shares.push(data.progress);
            if (data?.answer) window.answers += 1;
          });
        }
      };
    },
  });
  await context.route("**/work.js", (route) => {
    const body = change(script);
    return body === null ? route.abort() : route.fulfill({ contentType: "text/javascript", body });
  });
  await context.addInitScript(recordPacking);
  const page = await context.tab();
  await page.goto(app.server.url);
  await press(page, "#start-shop");
  await page.locator(".page.day").waitFor();
  return page;
}

async function pick(page) {
  await go(page, "#/more/backup", "#file");
  await page.locator("#file").setInputFiles({ name: "lastpull.zip", mimeType: "application/zip", buffer: FILE });
}

test("a worker reads, merges and writes a long file, and says how far it is", async (t) => {
  const page = await shopWith(t);
  assert.match(await importBackup(page, FILE), new RegExp(`${LINES.length} entries new`));
  const steps = await page.evaluate(() => window.shares.map(([step]) => step));
  assert.ok(steps.includes(0) && steps.includes(1) && steps.includes(2), `read, folded and stored: ${[...new Set(steps)]}`);
  assert.equal(await factCount(page), LINES.length);
  const [, ...lines] = journalLines((await exportBackup(page)).bytes);
  assert.deepEqual(lines, LINES, "what is written is what was read");
  assert.ok(await page.evaluate(() => window.shares.some(([step]) => step === 3) && window.shares.some(([step]) => step === 4)));
});

test("a cancelled import changes nothing and can be done again", async (t) => {
  let stuck = true;
  const page = await shopWith(t, (script) => {
    if (!stuck) return script;
    return script.replace("const answer = await", "tell({ progress: [0, 7, 24000] });\n  await new Promise(() => {});\n  const answer = await");
  });
  const before = await storedBytes(page);
  await pick(page);
  await page.locator("#work-words").filter({ hasText: "7" }).waitFor();
  await press(page, "#cancel-work");
  await page.locator("#work").waitFor({ state: "detached" });
  await page.locator("#file:not(:disabled)").waitFor();
  assert.deepEqual(await storedBytes(page), before);
  stuck = false;
  assert.match(await importBackup(page, FILE), new RegExp(`${LINES.length} entries new`));
});

/** The steps of which the worker has told, each once. */
const steps = (page) => page.evaluate(() => [...new Set(window.shares.map(([step]) => step))]);

for (const [title, change] of [
  ["in the worker", (script) => script],
  ["on the page if the worker fails", (script) => script.replace("const answer = await", "if (task[0] === 2) throw new Error('simulated');\n  const answer = await")],
]) {
  test(`a long journal's import is taken back ${title}`, async (t) => {
    const page = await shopWith(t, change, [/simulated/]);
    await importBackup(page, FILE);
    const few = shopLines(100, now()).map((line) => line.replace(`"device":"${id(1)}"`, `"device":"${id(7)}"`));
    const other = backupFile(few, now());
    assert.match(await importBackup(page, other), new RegExp(`${few.length} entries new`));
    await page.evaluate(() => { window.shares = []; });
    await press(page, "#take-back");
    await page.locator("#import-result").getByText(`${few.length} entries removed from this device`).waitFor();
    assert.deepEqual(await steps(page), title === "in the worker" ? [1] : [], "who folded what remains");
    assert.equal(await factCount(page), LINES.length);
    await page.reload();
    assert.equal(await factCount(page), LINES.length);
    assert.match(await importBackup(page, other), new RegExp(`${few.length} entries new`));
  });
}

for (const [title, change] of [
  ["by the worker", (script) => script],
  ["by the page if the worker fails", (script) => script.replace("const answer = await", "if (task[0] === 4) throw new Error('simulated');\n  const answer = await")],
]) {
  test(`a damaged checkpoint is made again ${title}`, async (t) => {
    const page = await shopWith(t, change, [/simulated/]);
    await importBackup(page, FILE);
    await go(page, "#/", ".page.day");
    const done = await page.locator("#done-pieces").innerText();
    const packed = await storedBytes(page);
    await truncateStored(page, "checkpoint", 3);
    await page.reload();
    await page.locator("#done-pieces").filter({ hasText: done }).waitFor();
    const told = await steps(page);
    assert.equal(await factCount(page), LINES.length);
    if (title === "by the worker") {
      assert.deepEqual(told, [1, 2], "folded, and stored");
      assert.equal((await storedBytes(page)).segments, packed.segments, "no fact was written again");
      await page.reload();
      await page.locator(".page.about").waitFor();
      assert.deepEqual(await steps(page), [], "once");
    }
  });
}

for (const [title, change] of [
  ["cannot be started", () => null],
  ["fails before it has begun", () => "throw new Error('simulated');"],
  ["fails in the middle", (script) => script.replace("const answer = await", "throw new Error('simulated');\n  const answer = await")],
]) {
  test(`the page does the work if the worker ${title}`, async (t) => {
    const page = await shopWith(t, change, [/work\.js|simulated|ERR_FAILED/]);
    assert.match(await importBackup(page, FILE), new RegExp(`${LINES.length} entries new`));
    assert.equal(await factCount(page), LINES.length);
  });
}

/** The same facts, with room in the order that is on the press. */
const LARGE_ORDER = backupFile(LINES.map((line) => line.replace('"size":"m","pieces":60', '"size":"m","pieces":900')), now());

/** Brings in many facts, and counts so many pieces that the tail is packed when the app opens next. Returns the count. */
async function countOnMany(page) {
  await importBackup(page, LARGE_ORDER);
  await go(page, "#/press", "#zone");
  const { good } = await zoneState(page);
  await countByKeyboard(page, MORE_THAN_LONG_TAIL);
  await waitForCount(page, good + MORE_THAN_LONG_TAIL);
  assert.ok((await tailLength(page)) >= LONG_TAIL);
  return good + MORE_THAN_LONG_TAIL;
}

/** Runs in the worker before its script: calls `then` when it is about to pack, having read what it packs. */
const whenItPacks = (then) => `const begin = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (stores, mode, ...rest) {
    if (mode === "readwrite" && [...stores].includes("segments")) (${then})();
    return begin.call(this, stores, mode, ...rest);
  };
`;

/** Asks the test whether to go on, and waits for the answer. */
function waitForTest() {
  const request = new XMLHttpRequest();
  request.open("GET", "./packing", false);
  request.send();
}

test("a worker packs a long tail, with what is counted meanwhile", async (t) => {
  let waits = false;
  const page = await shopWith(t, (script) => `${waits ? whenItPacks(waitForTest) : ""}${script}`);
  let packing;
  const isPacking = new Promise((done) => { packing = done; });
  let goOn;
  const mayGoOn = new Promise((done) => { goOn = done; });
  await page.route("**/packing", async (route) => {
    packing();
    await mayGoOn;
    await route.fulfill({ body: "" });
  });
  const good = await countOnMany(page);
  waits = true;
  await page.reload();
  await isPacking;
  await pull(page, 1);
  goOn();
  await page.waitForFunction(() => window.answers === 1);
  assert.equal(await tailLength(page), 0);
  assert.deepEqual(await page.evaluate(() => window.packings), [], "the page packs nothing itself");
  await pull(page, 1);
  await page.reload();
  await waitForCount(page, good + 2);
  assert.equal(await expectWholeJournal(page), LINES.length + MORE_THAN_LONG_TAIL + 2);
});

test("a tail that the worker does not pack stays, and the page packs it if the worker fails", async (t) => {
  const fails = (...tasks) => (script) =>
    script.replace("const answer = await", `if (${JSON.stringify(tasks)}.includes(task[0])) throw new Error("simulated");\n  const answer = await`);
  let change = (script) => script;
  const page = await shopWith(t, (script) => change(script), [/simulated/]);
  await importBackup(page, LARGE_ORDER);
  await go(page, "#/press", "#zone");
  const { good } = await zoneState(page);
  await pull(page, 2);
  // Folded by the page, a shop is packed whatever the length of its tail.
  await truncateStored(page, "checkpoint", 3);
  change = (script) => `${whenItPacks(() => { throw new DOMException("simulated", "InvalidStateError"); })}${fails(4)(script)}`;
  await page.reload();
  await page.waitForFunction(() => window.answers === 1);
  await pull(page, 1);
  assert.equal(await tailLength(page), 3, "nothing was packed");
  change = fails(4, 5);
  await page.reload();
  await page.waitForFunction(() => window.packings.includes("complete"));
  assert.equal(await tailLength(page), 0);
  await waitForCount(page, good + 3);
  assert.equal(await expectWholeJournal(page), LINES.length + 3);
});
