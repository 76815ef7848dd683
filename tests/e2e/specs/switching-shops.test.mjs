// The demo is opened or left, or the device erased, while a write is under way: what is recorded meanwhile goes to the
// shop that it is of.
import assert from "node:assert/strict";
import { test } from "node:test";
import { exportBackup } from "../support/backup.mjs";
import { pull, touchZone, waitForCount, waitUntilSaved } from "../support/counting.mjs";
import { fillForm, go, hashOf, press, save, waitUntil } from "../support/page.mjs";
import { blockWithTwoUnsaved, setStorageFault, waitForZone } from "../support/saving-blocked.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { newJob, openCounting } from "../support/shop.mjs";
import { failWrites, hangWrites } from "../support/storage-faults.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();

/** Keeps writes to all databases open, or to the one of this name, or to none. */
const hang = (page, what) => page.evaluate((what) => { window.storage.hang = what; }, what);

async function enterDemo(page) {
  await go(page, "#/more", ".menu");
  await press(page, ".more .card button");
}

/** Fills in and saves the form of a job without waiting for it to be saved. */
async function submitJob(page, title) {
  await go(page, "#/job/new", "#client");
  await fillForm(page, { client: "Harbour Night Choir", title });
  await save(page);
}

async function erase(page) {
  await go(page, "#/more/about", "#erase");
  await press(page, "#erase");
  await press(page, "#erase-yes");
}

test("what is entered while the demo is being left is in the shop", async (t) => {
  const page = await openShop(t, app, { initScript: hangWrites });
  await newJob(page, { title: "Tour tees" });
  await enterDemo(page);
  await page.locator("#demo-banner").waitFor();
  await go(page, "#/press", "#zone");
  await waitUntilSaved(page, 17);
  await hang(page, "lastpull-demo");
  await touchZone(page);
  await waitForZone(page, 18, 1);
  await press(page, "#demo-banner button");
  await page.locator("#demo-banner").waitFor({ state: "detached" });
  await submitJob(page, "Crew jerseys");
  await hang(page, false);
  await waitUntil(page, async () => !(await indexedDB.databases()).some(({ name }) => name === "lastpull-demo"));
  await go(page, "#/jobs", ".job-row");
  await page.locator(".job-row").filter({ hasText: "Crew jerseys" }).waitFor();
  await page.reload();
  await page.locator(".job-row").filter({ hasText: "Crew jerseys" }).waitFor();
  assert.equal(await page.locator(".job-row").count(), 2);
});

test("what is counted while the demo is being opened is in the shop", async (t) => {
  const page = await openCounting(t, app, { initScript: hangWrites });
  const run = await hashOf(page);
  await pull(page, 2);
  await hang(page, true);
  await enterDemo(page);
  // The demo's first write.
  await page.waitForFunction(() => window.storage.held > 0);
  await go(page, run, "#zone");
  await touchZone(page);
  await waitForZone(page, 3, 1);
  await touchZone(page);
  await waitForZone(page, 4, 2);
  await hang(page, "lastpull");
  await waitUntil(page, () => new Promise((give) => {
    indexedDB.open("lastpull-demo").onsuccess = ({ target: { result: database } }) => {
      database.transaction("tail").objectStore("tail").count().onsuccess = ({ target: { result } }) => { database.close(); give(result > 0); };
    };
  }));
  await hang(page, false);
  await go(page, "#/jobs", ".job-row");
  await page.locator(".job-row").nth(5).waitFor();
  await press(page, "#demo-banner button");
  await page.locator("#demo-banner").waitFor({ state: "detached" });
  await page.locator(".page.day").waitFor();
  await go(page, run, "#zone");
  await waitForCount(page, 4);
});

test("nothing is written any more into a device that is erased", async (t) => {
  const page = await openCounting(t, app, { initScript: hangWrites });
  await pull(page, 2);
  await hang(page, true);
  await touchZone(page);
  await waitForZone(page, 3, 1);
  await erase(page);
  // It says so, and the device is erased as soon as the storage answers.
  await page.locator(".page.failed").getByText("does not respond").waitFor();
  await hang(page, false);
  await press(page, "#start-shop");
  await page.locator(".page.day").waitFor();
  await newJob(page);
  const { bytes } = await exportBackup(page);
  assert.deepEqual(journalLines(bytes).filter((line) => line.includes('"pulled"')), []);
  await go(page, "#/jobs", ".job-row");
  assert.equal(await page.locator(".job-row").count(), 1);
});

test("a device that could not save is erased and saves again", async (t) => {
  const page = await openCounting(t, app, { initScript: failWrites });
  await blockWithTwoUnsaved(page);
  await setStorageFault(page, null);
  await erase(page);
  await page.locator("#start-shop").waitFor();
  await page.locator("#blocked").waitFor({ state: "detached" });
  await press(page, "#start-shop");
  await newJob(page);
  await page.reload();
  await page.locator(".page.job").waitFor();
});
