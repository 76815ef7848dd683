// Two versions of the app in one browser: an old tab beside a new one counts, exports without a network, and says what to
// do about what it does not read.
import assert from "node:assert/strict";
import { test } from "node:test";
import { downloadOnly, exportBackup, importBackup, prepareBackup } from "../support/backup.mjs";
import { folderOf, lookForUpdate, newerBuildDuringRun, replaceBuild, waitUntilCached } from "../support/builds.mjs";
import { pull as pullOn, touchZone, waitForCount } from "../support/counting.mjs";
import { go, hashOf, press } from "../support/page.mjs";
import { tryAgain, waitForZone, waitUntilBlocked } from "../support/saving-blocked.mjs";
import { openShop, ownServer, testServer } from "../support/setup.mjs";
import { newJob, openCounting, putJobOnPress } from "../support/shop.mjs";
import { truncateStored } from "../support/storage-faults.mjs";
import { journalLines } from "../support/zip.mjs";

const shared = testServer({ whole: true });
const NEWER = "last opened by a newer Lastpull. Go online once";

const pull = async (page, pieces) => { await page.bringToFront(); await pullOn(page, pieces); };
const pulledIn = (bytes) => journalLines(bytes).filter((line) => line.includes('"pulled"')).length;

/** Runs before the app: refuses the code that exports while the tab's mark says so, as if the tab had not fetched it yet. */
function withoutArchive() {
  const { fetch } = window;
  window.fetch = (...all) => {
    const { href } = new URL(all[0].url ?? all[0], location.href);
    return window.holdsArchive && href.includes("archive") ? Promise.reject(new TypeError("simulated")) : fetch(...all);
  };
  window.holdsArchive = true;
}

/** A tab of the old build that lacks the code that exports, beside a tab that has loaded the build after it. */
async function oldTabBesideNew(t) {
  const { app, server, folder } = await ownServer(t, shared, "/shop/");
  const old = await openShop(t, app, { expectedErrors: [/./], initScript: withoutArchive });
  await waitUntilCached(old);
  const fresh = await old.context().tab();
  await fresh.goto(server.url);
  await fresh.locator(".page.day").waitFor();
  const before = await folderOf(old);
  const { next } = replaceBuild(folder);
  assert.equal(await lookForUpdate(fresh), "installed");
  const loaded = fresh.waitForEvent("load");
  await press(fresh, "#update-banner button");
  await loaded;
  await fresh.locator(".page.day").waitFor();
  assert.match(await folderOf(fresh), new RegExp(next));
  return { old, fresh, server, folders: { before, next } };
}

test("tabs of two builds count one run and show the sum", async (t) => {
  const { old, fresh, folders } = await oldTabBesideNew(t);
  await old.bringToFront();
  await putJobOnPress(old);
  await go(fresh, await hashOf(old), "#zone");
  for (let turn = 1; turn <= 3; turn += 1) {
    await pull(old, 1);
    await waitForCount(fresh, 2 * turn - 1);
    await pull(fresh, 1);
    await waitForCount(old, 2 * turn);
  }
  assert.equal(await folderOf(old), folders.before);
  await old.locator("#update-banner").getByText("can load when no run is on press").waitFor();
  await old.bringToFront();
  await press(old, "#stop");
  await press(old, "#end-anyway");
  await fresh.locator("#ended-good").waitFor();
  const loaded = old.waitForEvent("load");
  await press(old, "#update-banner button");
  await loaded;
  await old.locator("#ended-good").waitFor();
  assert.equal(await old.locator("#ended-good").innerText(), "6 of 36");
  assert.match(await folderOf(old), new RegExp(folders.next));
});

test("an old tab beside a new one exports without a network", async (t) => {
  const { old, server, folders } = await oldTabBesideNew(t);
  await server.close();
  await old.bringToFront();
  await newJob(old, { title: "Tour tees" });
  await go(old, "#/more/backup", "#prepare");
  await press(old, "#prepare");
  await old.getByText("It downloads once").waitFor();
  await old.evaluate(() => { window.holdsArchive = false; });
  const { bytes } = await exportBackup(old);
  assert.ok(journalLines(bytes).some((line) => line.includes("Tour tees")));
  assert.equal(await folderOf(old), folders.before);
});

test("an old tab that is left alone exports without a network", async (t) => {
  const { old, fresh, server, folders } = await oldTabBesideNew(t);
  await fresh.close();
  await old.bringToFront();
  await newJob(old, { title: "Tour tees" });
  // Asks the newer worker whether all is stored: that one must not delete what this tab still needs.
  for (let asked = 0; asked < 2; asked += 1) await waitUntilCached(old);
  await server.close();
  await old.evaluate(() => { window.holdsArchive = false; });
  const { bytes } = await exportBackup(old);
  assert.ok(journalLines(bytes).some((line) => line.includes("Tour tees")));
  assert.equal(await folderOf(old), folders.before);
});

test("during a run the old build opens and exports without a network", async (t) => {
  const { page, server, old } = await newerBuildDuringRun(t, shared);
  const context = page.context();
  const run = page.url();
  // The browser puts the newer worker in place of the old one when no window is left.
  await page.close();
  await server.close();
  const again = await context.tab();
  await again.goto(run);
  await waitForCount(again, 2);
  assert.equal(await folderOf(again), old);
  assert.equal(pulledIn((await exportBackup(again)).bytes), 2);
});

test("during a run the old build rescues damaged data without a network", async (t) => {
  const { page, server, old } = await newerBuildDuringRun(t, shared);
  const context = page.context();
  await truncateStored(page, "tail", 2, 0);
  await page.close();
  await server.close();
  const again = await context.tab();
  await again.goto(server.url);
  await again.getByRole("heading", { name: "Can't open the shop" }).waitFor();
  assert.equal(await folderOf(again), old);
  await press(again, again.getByRole("link", { name: "Save a backup" }));
  await prepareBackup(again);
  assert.equal(pulledIn((await downloadOnly(again)).bytes), 2);
});

/** Says of the stored shop that it is of this version, as a newer build does that stores it in another way. */
const setVersion = (page, version) => page.evaluate((version) => new Promise((done) => {
  indexedDB.open("lastpull").onsuccess = ({ target: { result: database } }) => {
    const work = database.transaction("meta", "readwrite");
    const store = work.objectStore("meta");
    store.get("head").onsuccess = ({ target: { result } }) => { result[0] = version; store.put(result, "head"); };
    work.oncomplete = () => { database.close(); done(); };
  };
}), version);

test("an old tab that cannot read on says so, and its count waits", async (t) => {
  const page = await openCounting(t, shared);
  const run = await hashOf(page);
  await pull(page, 2);
  await setVersion(page, 9);
  await touchZone(page);
  await waitUntilBlocked(page);
  await page.locator("#blocked").getByText(NEWER).waitFor();
  await waitForZone(page, 3, 1);
  await press(page, "#blocked a");
  await prepareBackup(page);
  const { bytes } = await downloadOnly(page);
  assert.equal(pulledIn(bytes), 3, "what both have counted comes out");
  // A version that reads it.
  await setVersion(page, 1);
  await go(page, run, "#zone");
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 3);
  assert.match(await importBackup(page, bytes), /^Nothing new/);
  await go(page, run, "#zone");
  await page.reload();
  await waitForCount(page, 3);
});

test("an old tab lets a newer build have the database, and says so", async (t) => {
  const page = await openCounting(t, shared, { expectedErrors: [/favicon/] });
  await pull(page, 2);
  const newer = await page.context().tab();
  await newer.goto(`${shared.server.url}icons/icon-48.png`);
  await newer.evaluate(async () => {
    const [{ version }] = (await indexedDB.databases()).filter(({ name }) => name === "lastpull");
    await new Promise((done, failed) => {
      const request = indexedDB.open("lastpull", version + 1);
      request.onupgradeneeded = () => request.result.createObjectStore("newer");
      request.onsuccess = done;
      request.onerror = () => failed(request.error);
    });
  });
  await page.bringToFront();
  await touchZone(page);
  await waitUntilBlocked(page);
  await page.locator("#blocked").getByText(NEWER).waitFor();
  await waitForZone(page, 3, 1);
  await press(page, "#blocked a");
  await prepareBackup(page);
  await page.locator("#part-only").waitFor();
  assert.equal(pulledIn((await downloadOnly(page)).bytes), 3, "what this tab has seen and what it could not save");
});
