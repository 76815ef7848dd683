// What a shop that does not save, or does not open, still gives its people.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, PHONE, go, newDevice, openCounting, openShop, premises, press, save, write } from "../support/shop.mjs";
import { shows } from "../support/counting.mjs";
import { bringIn, download, facts, makeFile } from "../support/backup.mjs";
import { linesOf } from "../support/zip.mjs";
import { failSaving } from "../support/storage-faults.mjs";
import { FULL, blocked, blockedWithTwo, fail, tryAgain } from "../support/saving-blocked.mjs";

const place = premises();

for (const [name, device] of Object.entries({ "a phone": PHONE, "a desk": DESK })) {
  test(`on ${name} what is not saved goes out with the file, and comes back in once`, async (t) => {
    const page = await openCounting(t, place, { device, before: failSaving });
    const run = await page.evaluate(() => location.hash);
    await blockedWithTwo(page);
    await press(page, "#blocked a");
    await page.locator("#prepare").waitFor();
    await makeFile(page);
    await page.getByText("2 entries that could not be saved here go with it").waitFor();
    const { bytes } = await download(page);
    assert.equal(linesOf(bytes).filter((line) => line.includes('"pulled"')).length, 4);
    await page.locator("#blocked").waitFor({ state: "detached" });
    await fail(page, null);
    await go(page, run, "#zone");
    await shows(page, 2);
    assert.match(await bringIn(page, bytes), /^2 facts new/);
    assert.match(await bringIn(page, bytes), /^Nothing new/);
    await go(page, run, "#zone");
    await shows(page, 4);
  });
}

test("what was saved after all is not counted twice by a file made while it was not", async (t) => {
  const page = await openCounting(t, place, { device: DESK, before: failSaving });
  const run = await page.evaluate(() => location.hash);
  await blockedWithTwo(page);
  await press(page, "#blocked a");
  await makeFile(page);
  await fail(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await go(page, run, "#zone");
  await shows(page, 4);
  await go(page, "#/more/backup", "#prepare, #download");
  if (await page.locator("#prepare").count()) await makeFile(page);
  const { bytes } = await download(page);
  await bringIn(page, bytes);
  await go(page, run, "#zone");
  await shows(page, 4);
});

test("a job written while saving is blocked is there once, however often save was pressed", async (t) => {
  const page = await openShop(t, place, { before: failSaving });
  await go(page, "#/job/new", "#client");
  await write(page, { client: "Harbour Night Choir", title: "Tour tees" });
  await fail(page, FULL);
  await save(page);
  await blocked(page);
  await page.locator(".save-bar [type=submit]:enabled").waitFor();
  assert.equal(await page.locator("#title").inputValue(), "Tour tees");
  await save(page);
  await fail(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await go(page, "#/jobs", ".job-row");
  assert.equal(await page.locator(".job-row").count(), 1);
});

test("a window that keeps no data says so, and opens nothing that would be lost", async (t) => {
  const page = await newDevice(t, place, {
    before: () => { delete globalThis.Worker; IDBFactory.prototype.open = () => { throw new DOMException("to order", "SecurityError"); }; },
  }).then((context) => context.tab());
  await page.goto(place.server.url);
  await page.getByRole("heading", { name: "The shop does not open" }).waitFor();
  await page.getByText("keeps no data").waitFor();
});

test("a shop of a newer version is not touched, and opens once it can be read", async (t) => {
  const page = await openShop(t, place);
  await go(page, "#/job/new", "#client");
  await write(page, { client: "Harbour Night Choir", title: "Tour tees" });
  await save(page);
  await page.locator(".page.job").waitFor();
  const before = await facts(page);
  const mark = (version) => page.evaluate((version) => new Promise((done) => {
    indexedDB.open("lastpull").onsuccess = ({ target: { result: database } }) => {
      const work = database.transaction("meta", "readwrite");
      const store = work.objectStore("meta");
      store.get("head").onsuccess = ({ target: { result } }) => { result[0] = version; store.put(result, "head"); };
      work.oncomplete = () => { database.close(); done(); };
    };
  }), version);
  await mark(9);
  await page.reload();
  await page.getByText("last opened by a newer Lastpull").waitFor();
  await mark(1);
  await press(page, page.getByRole("button", { name: "Try again" }));
  await page.locator("#facts").waitFor();
  assert.equal(await facts(page), before);
});
