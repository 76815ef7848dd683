// The journal's own thread fails in each way it can: the page does the work itself, and no piece counts twice.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { jobOnPress, newDevice, premises, press } from "../support/shop.mjs";
import { pull, shows, touchZone } from "../support/counting.mjs";

const place = premises();
const script = readFileSync(fileURLToPath(new URL("../../../src/platform/workers/disk.js", import.meta.url)), "utf8");

/** A shop with a run on the press, whose journal's thread runs what `change` makes of it. */
async function countingWith(t, change, expected = []) {
  const context = await newDevice(t, place, {
    expected,
    before: () => {
      // Keeps the thread, and how many appends it answered for.
      window.appends = 0;
      window.Worker = class extends Worker {
        constructor(...all) {
          super(...all);
          window.thread = this;
          this.addEventListener("message", ({ data }) => { if (data.saved) window.appends += 1; });
        }
      };
    },
  });
  await context.route("**/disk.js", (route) => route.fulfill({ contentType: "text/javascript", body: change(script) }));
  const page = await context.tab();
  await page.goto(place.server.url);
  await press(page, "#start-shop");
  await jobOnPress(page);
  return page;
}

const appends = (page) => page.evaluate(() => window.appends);

test("a count is written on the journal's own thread and is there after a reload", async (t) => {
  const page = await countingWith(t, (script) => script);
  const before = await appends(page);
  await pull(page, 3);
  assert.equal(await appends(page), before + 3);
  await page.reload();
  await shows(page, 3);
});

test("a thread that ends in the middle is done without, and nothing counts twice", async (t) => {
  const page = await countingWith(t, (script) => script);
  await pull(page, 2);
  await page.evaluate(() => window.thread.terminate());
  await touchZone(page);
  await shows(page, 3);
  await pull(page, 2);
  await page.reload();
  await shows(page, 5);
});

test("a thread that writes but does not say so makes no piece count twice", async (t) => {
  const page = await countingWith(t, (script) => `${script}
    const tell = postMessage;
    postMessage = (answer) => answer.saved || tell(answer);`);
  await pull(page, 2);
  assert.equal(await appends(page), 0);
  await page.reload();
  await shows(page, 2);
});

for (const [how, change] of Object.entries({
  "writes nothing": (script) => `IDBObjectStore.prototype.put = () => { throw new DOMException("to order", "QuotaExceededError"); };\n${script}`,
  "opens nothing": (script) => `indexedDB.open = () => { throw new DOMException("to order", "SecurityError"); };\n${script}`,
  "has no code that runs": () => "this is no script",
})) {
  test(`a thread that ${how} leaves the work to the page`, async (t) => {
    const page = await countingWith(t, change, [/SyntaxError/]);
    await pull(page, 3);
    assert.equal(await appends(page), 0);
    await page.reload();
    await shows(page, 3);
  });
}

test("a thread whose connection is closed underneath opens it again", async (t) => {
  const page = await countingWith(t, (script) => `const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...all) { const begun = begin.apply(this, all); begun.addEventListener("complete", () => this.close()); return begun; };
    ${script}`);
  const before = await appends(page);
  await pull(page, 3);
  assert.equal(await appends(page), before + 3);
  await page.reload();
  await shows(page, 3);
});
