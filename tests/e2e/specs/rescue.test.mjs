// A shop that cannot save, or cannot be opened, still lets its data out.
import assert from "node:assert/strict";
import { test } from "node:test";
import { downloadBackup, downloadOnly, factCount, importBackup, prepareBackup } from "../support/backup.mjs";
import { DESK, PHONE } from "../support/browser.mjs";
import { waitForCount } from "../support/counting.mjs";
import { fillForm, go, hashOf, press, save } from "../support/page.mjs";
import { QUOTA_EXCEEDED, blockWithTwoUnsaved, setStorageFault, tryAgain, waitForZone, waitUntilBlocked } from "../support/saving-blocked.mjs";
import { newDevice, openShop, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { failWrites } from "../support/storage-faults.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();

for (const [name, device] of Object.entries({ "a phone": PHONE, "a desk": DESK })) {
  test(`on ${name} unsaved entries are exported and import once`, async (t) => {
    const page = await openCounting(t, app, { device, initScript: failWrites });
    const run = await hashOf(page);
    await blockWithTwoUnsaved(page);
    await press(page, "#blocked a");
    await page.locator("#prepare").waitFor();
    await prepareBackup(page);
    await page.getByText("Includes 2 entries that could not be saved here").waitFor();
    const { bytes } = await downloadOnly(page);
    assert.equal(journalLines(bytes).filter((line) => line.includes('"pulled"')).length, 4);
    await page.getByText("Until you confirm, 2 entries stay here unsaved").waitFor();
    assert.equal(await page.locator("#blocked").count(), 1, "a download that only began drops nothing");
    await press(page, "#have-backup");
    await page.locator("#blocked").waitFor({ state: "detached" });
    await setStorageFault(page, null);
    await go(page, run, "#zone");
    await waitForCount(page, 2);
    assert.match(await importBackup(page, bytes), /^2 entries new/);
    assert.match(await importBackup(page, bytes), /^Nothing new/);
    await go(page, run, "#zone");
    await waitForCount(page, 4);
  });
}

test("an export of unsaved entries does not count twice once they are saved", async (t) => {
  const page = await openCounting(t, app, { device: DESK, initScript: failWrites });
  const run = await hashOf(page);
  await blockWithTwoUnsaved(page);
  await press(page, "#blocked a");
  await prepareBackup(page);
  await setStorageFault(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await go(page, run, "#zone");
  await waitForCount(page, 4);
  await go(page, "#/more/backup", "#prepare, #download");
  if (await page.locator("#prepare").count()) await prepareBackup(page);
  const { bytes } = await downloadBackup(page);
  await importBackup(page, bytes);
  await go(page, run, "#zone");
  await waitForCount(page, 4);
});

test("a failed download loses nothing, and what is saved later counts once", async (t) => {
  const page = await openCounting(t, app, { device: DESK, initScript: failWrites, acceptDownloads: false });
  const run = await hashOf(page);
  await blockWithTwoUnsaved(page);
  await press(page, "#blocked a");
  await prepareBackup(page);
  const downloading = page.waitForEvent("download");
  await press(page, "#download");
  assert.ok(await (await downloading).failure(), "the download did not arrive");
  await page.locator("#sent").waitFor();
  await go(page, run, "#zone");
  await waitForZone(page, 4, 2);
  await setStorageFault(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 4);
  await page.reload();
  await waitForCount(page, 4);
});

test("unsaved entries that are in two files and saved later count once", async (t) => {
  const page = await openCounting(t, app, { device: DESK, initScript: failWrites });
  const run = await hashOf(page);
  await blockWithTwoUnsaved(page);
  const files = [];
  for (let file = 0; file < 2; file += 1) {
    await go(page, run, "#zone");
    await press(page, "#blocked a");
    await page.locator("#prepare, #download").first().waitFor();
    if (await page.locator("#prepare").count()) await prepareBackup(page);
    files.push((await downloadOnly(page)).bytes);
  }
  await go(page, run, "#zone");
  await setStorageFault(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 4);
  for (const bytes of files) assert.match(await importBackup(page, bytes), /^Nothing new/);
  await go(page, run, "#zone");
  await waitForCount(page, 4);
  await page.reload();
  await waitForCount(page, 4);
});

test("a job saved repeatedly while blocked exists once", async (t) => {
  const page = await openShop(t, app, { initScript: failWrites });
  await go(page, "#/job/new", "#client");
  await fillForm(page, { client: "Harbour Night Choir", title: "Tour tees" });
  await setStorageFault(page, QUOTA_EXCEEDED);
  await save(page);
  await waitUntilBlocked(page);
  await page.locator(".save-bar [type=submit]:enabled").waitFor();
  assert.equal(await page.locator("#title").inputValue(), "Tour tees");
  await save(page);
  await setStorageFault(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await go(page, "#/jobs", ".job-row");
  assert.equal(await page.locator(".job-row").count(), 1);
});

test("a window without storage says so and opens no shop", async (t) => {
  const page = await newDevice(t, app, {
    initScript: () => { delete globalThis.Worker; IDBFactory.prototype.open = () => { throw new DOMException("simulated", "SecurityError"); }; },
  }).then((context) => context.tab());
  await page.goto(app.server.url);
  await page.getByRole("heading", { name: "Can't open the shop" }).waitFor();
  await page.getByText("can't save data").waitFor();
});

test("a database of a newer version is left untouched", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/job/new", "#client");
  await fillForm(page, { client: "Harbour Night Choir", title: "Tour tees" });
  await save(page);
  await page.locator(".page.job").waitFor();
  const before = await factCount(page);
  const setVersion = (version) => page.evaluate((version) => new Promise((done) => {
    indexedDB.open("lastpull").onsuccess = ({ target: { result: database } }) => {
      const work = database.transaction("meta", "readwrite");
      const store = work.objectStore("meta");
      store.get("head").onsuccess = ({ target: { result } }) => { result[0] = version; store.put(result, "head"); };
      work.oncomplete = () => { database.close(); done(); };
    };
  }), version);
  await setVersion(9);
  await page.reload();
  await page.getByText("last opened by a newer Lastpull").waitFor();
  await setVersion(1);
  await press(page, page.getByRole("button", { name: "Try again" }));
  await page.locator("#facts").waitFor();
  assert.equal(await factCount(page), before);
});
