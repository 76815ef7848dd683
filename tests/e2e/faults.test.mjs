// The browser's database fails: nothing that was counted is lost, and the person is told what to do.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, PHONE, go, newDevice, openCounting, openShop, premises, press, save, write } from "./shop.mjs";
import { aMoment, pull, settled, shows, touchZone, zone } from "./counting.mjs";
import { bringIn, download, facts, makeFile } from "./files.mjs";
import { linesOf } from "./archive.mjs";
import { closeUnderneath, failCommitting, failSaving, keepConnections } from "./storage.mjs";

const place = premises();
const FULL = "QuotaExceededError";

const fail = (page, fault, only = null) => page.evaluate(([fault, only]) => Object.assign(window.storage, { fail: fault, only }), [fault, only]);
const blocked = (page) => page.locator("#blocked").waitFor();
const tryAgain = (page) => press(page, "#blocked button");

/** The zone shows these pieces, so many of them not saved. */
async function waits(page, good, unsaved) {
  await page.waitForFunction(([good, unsaved]) => {
    const { dataset } = document.querySelector("#zone");
    return dataset.saved === good && dataset.unsaved === unsaved;
  }, [String(good), String(unsaved)], { polling: 20 }).catch(async () => assert.deepEqual(await zone(page), { good, unsaved }));
}

/** Counts two, then touches in two more that cannot be saved, until the app gives up. */
async function blockedWithTwo(page) {
  await pull(page, 2);
  await fail(page, FULL);
  await touchZone(page);
  await waits(page, 3, 1);
  await touchZone(page);
  await waits(page, 4, 2);
  await blocked(page);
}

for (const [name, before] of Object.entries({ "each write fails": failSaving, "the whole transaction fails": failCommitting })) {
  test(`with no room left counting is blocked, and nothing is lost: ${name}`, async (t) => {
    const page = await openCounting(t, place, { before });
    await blockedWithTwo(page);
    await page.getByText("no room left").waitFor();
    await page.getByText("2 entries are not saved yet").waitFor();
    await touchZone(page);
    await aMoment(page);
    await waits(page, 4, 2);
    await tryAgain(page);
    await blocked(page);
    await waits(page, 4, 2);

    await fail(page, null);
    await tryAgain(page);
    await page.locator("#blocked").waitFor({ state: "detached" });
    await shows(page, 4);
    await settled(page, 4);
    await pull(page, 1);
    await page.reload();
    await shows(page, 5);
  });
}

test("a fault that passes is mended without a word to do", async (t) => {
  const page = await openCounting(t, place, { before: failSaving });
  await pull(page, 1);
  await fail(page, FULL);
  await touchZone(page);
  await page.waitForFunction(() => window.storage.failed > 1);
  await fail(page, null);
  await shows(page, 2);
  assert.equal(await page.locator("#blocked").count(), 0);
  await page.reload();
  await shows(page, 2);
});

test("a connection closed underneath is opened again, and counting goes on", async (t) => {
  const page = await openCounting(t, place, { before: keepConnections });
  await pull(page, 2);
  for (let round = 0; round < 3; round += 1) {
    assert.ok((await closeUnderneath(page)) > 0, "there was a connection to close");
    await pull(page, 2);
    assert.equal(await page.locator(".fault").count(), 0, "nothing to see");
  }
  await shows(page, 8);
  await closeUnderneath(page);
  await Promise.all([touchZone(page), closeUnderneath(page)]);
  await shows(page, 9);
  await page.reload();
  await shows(page, 9);
});

test("undo takes back, one after another, pieces that are not saved", async (t) => {
  const page = await openCounting(t, place, { before: failSaving });
  await blockedWithTwo(page);
  const good = async (pieces) => page.waitForFunction((pieces) => document.querySelector("#zone").dataset.saved === pieces, String(pieces), { polling: 20, timeout: 5000 })
    .catch(async () => assert.equal((await zone(page)).good, pieces));
  await press(page, "#undo");
  await good(3);
  await press(page, "#undo");
  await good(2);
  await fail(page, null);
  await tryAgain(page);
  await shows(page, 2);
  await page.reload();
  await shows(page, 2);
});

test("undo takes back a misprint that is not saved, not the pull before it", async (t) => {
  const page = await openCounting(t, place, { before: failSaving });
  await pull(page, 3);
  await fail(page, FULL);
  await press(page, "#misprint");
  await press(page, "[data-cause=Smudge]");
  await blocked(page);
  await press(page, "#undo");
  await fail(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await shows(page, 3);
  await go(page, "#/", "#done-misprints");
  assert.equal(await page.locator("#done-misprints").innerText(), "0");
});

test("a save that fails half way leaves nothing half saved: the shop opens again", async (t) => {
  const page = await openCounting(t, place, { before: failSaving });
  await pull(page, 2);
  await fail(page, "UnknownError", "meta");
  await touchZone(page);
  await blocked(page);
  await page.reload();
  await page.locator("#zone, .failed").first().waitFor();
  assert.equal(await page.locator(".failed").count(), 0, "the shop opens");
  await shows(page, 2);
  await pull(page, 1);
  await page.reload();
  await shows(page, 3);
});

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
    before: () => { IDBFactory.prototype.open = () => { throw new DOMException("to order", "SecurityError"); }; },
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
