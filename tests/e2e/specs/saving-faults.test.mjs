// IndexedDB errors: nothing counted is lost, and the app says what to do.
import assert from "node:assert/strict";
import { test } from "node:test";
import { expectRefused, factCount, importBackup } from "../support/backup.mjs";
import { now } from "../support/clock.mjs";
import { pull, touchZone, waitForCount, waitTwoFrames, waitUntilSaved, zoneState } from "../support/counting.mjs";
import { backupFile, shopLines } from "../support/journal-file.mjs";
import { go, press } from "../support/page.mjs";
import { QUOTA_EXCEEDED, blockWithTwoUnsaved, setStorageFault, tryAgain, waitForZone, waitUntilBlocked } from "../support/saving-blocked.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { breakConnections, closeConnections, commitsFail, connectionsBreak, failCommits, failWrites, inWorker, recordConnections, setWorkerFault, writesHang } from "../support/storage-faults.mjs";

const app = testServer();
for (const [name, initScript] of Object.entries({ "each write fails": failWrites, "the transaction fails": failCommits })) {
  test(`a full disk blocks counting and loses nothing: ${name}`, async (t) => {
    const page = await openCounting(t, app, { initScript });
    await blockWithTwoUnsaved(page);
    await page.getByText("no space left").waitFor();
    await page.getByText("2 entries are not saved yet").waitFor();
    // Below the panel, where the zone is still visible.
    await touchZone(page, 0.9);
    await waitTwoFrames(page);
    await waitForZone(page, 4, 2);
    await tryAgain(page);
    await waitUntilBlocked(page);
    await waitForZone(page, 4, 2);

    await setStorageFault(page, null);
    await tryAgain(page);
    await page.locator("#blocked").waitFor({ state: "detached" });
    await waitForCount(page, 4);
    await waitUntilSaved(page, 4);
    await pull(page, 1);
    await page.reload();
    await waitForCount(page, 5);
  });
}

test("a full disk under the worker and then the page loses nothing", async (t) => {
  const page = await openCounting(t, app, inWorker(commitsFail));
  const writes = () => page.evaluate(() => window.storage.writes);
  const before = await writes();
  await pull(page, 1);
  assert.equal(await writes(), before, "the worker writes, not the page");
  await setWorkerFault(page, { fail: QUOTA_EXCEEDED });
  await blockWithTwoUnsaved(page, 1);
  await page.getByText("no space left").waitFor();
  await tryAgain(page);
  await waitUntilBlocked(page);
  await waitForZone(page, 5, 2);
  await setStorageFault(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 5);
  await pull(page, 1);
  await page.reload();
  await waitForCount(page, 6);
});

test("a write that hangs in the worker blocks counting and counts once", async (t) => {
  const page = await openCounting(t, app, inWorker(writesHang));
  await pull(page, 2);
  await setWorkerFault(page, { hang: true });
  await touchZone(page);
  await waitForZone(page, 3, 1);
  // The page's own try waits behind the worker's transaction.
  await waitUntilBlocked(page);
  await page.getByText("does not respond").waitFor();
  await waitForZone(page, 3, 1);
  await setWorkerFault(page, { hang: false });
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 3);
  await pull(page, 1);
  await page.reload();
  await waitForCount(page, 4);
});

test("an import on a full disk changes nothing, and works once there is room", async (t) => {
  const page = await openShop(t, app, { initScript: failWrites });
  const file = backupFile(shopLines(100, now() - 3600_000), now());
  await setStorageFault(page, QUOTA_EXCEEDED);
  await expectRefused(page, file, /^This device has no space left for the shop\./);
  assert.ok(await page.evaluate(() => window.storage.failed > 0), "it was tried");
  assert.equal(await factCount(page), 0);
  await setStorageFault(page, null);
  assert.match(await importBackup(page, file), /^\d+ entries new; 0 entries already here/);
  await page.reload();
  assert.ok((await factCount(page)) > 100);
});

test("a temporary write error is retried without a message", async (t) => {
  const page = await openCounting(t, app, { initScript: failWrites });
  await pull(page, 1);
  await setStorageFault(page, QUOTA_EXCEEDED);
  await touchZone(page);
  await page.waitForFunction(() => window.storage.failed > 1);
  await setStorageFault(page, null);
  await waitForCount(page, 2);
  assert.equal(await page.locator("#blocked").count(), 0);
  await page.reload();
  await waitForCount(page, 2);
});

test("a closed database connection is reopened while counting", async (t) => {
  const page = await openCounting(t, app, { initScript: recordConnections });
  await pull(page, 2);
  for (let round = 0; round < 3; round += 1) {
    assert.ok((await closeConnections(page)) > 0, "there was a connection to close");
    await pull(page, 2);
    assert.equal(await page.locator(".fault").count(), 0, "nothing to see");
  }
  await waitForCount(page, 8);
  await closeConnections(page);
  await Promise.all([touchZone(page), closeConnections(page)]);
  await waitForCount(page, 9);
  await page.reload();
  await waitForCount(page, 9);
});

test("a connection on which every write aborts is given up for a new one", async (t) => {
  const page = await openCounting(t, app, { initScript: breakConnections });
  await pull(page, 2);
  const { opened } = await page.evaluate(() => window.storage);
  await page.evaluate(() => { window.storage.broken = true; });
  await touchZone(page);
  await waitForCount(page, 3);
  const after = await page.evaluate(() => window.storage);
  assert.ok(after.aborted > 0, "a write was tried on the old one");
  assert.equal(after.opened, opened + 1);
  assert.equal(await page.locator("#blocked").count(), 0);
  await pull(page, 1);
  assert.equal(await page.evaluate(() => window.storage.aborted), after.aborted);
  await page.reload();
  await waitForCount(page, 4);
});

test("the worker gives up a connection on which every write aborts", async (t) => {
  const page = await openCounting(t, app, inWorker(connectionsBreak));
  await pull(page, 2);
  const writes = () => page.evaluate(() => window.storage.writes);
  const before = await writes();
  await setWorkerFault(page, { broken: true });
  await pull(page, 2);
  assert.equal(await writes(), before, "the worker writes, not the page");
  await page.reload();
  await waitForCount(page, 4);
});

test("undo removes unsaved pieces one by one", async (t) => {
  const page = await openCounting(t, app, { initScript: failWrites });
  await blockWithTwoUnsaved(page);
  const good = async (pieces) => page.waitForFunction((pieces) => document.querySelector("#zone").dataset.saved === pieces, String(pieces), { polling: 20, timeout: 5000 })
    .catch(async () => assert.equal((await zoneState(page)).good, pieces));
  await press(page, "#undo");
  await good(3);
  await press(page, "#undo");
  await good(2);
  await setStorageFault(page, null);
  await tryAgain(page);
  await waitForCount(page, 2);
  await page.reload();
  await waitForCount(page, 2);
});

test("undo removes an unsaved misprint, not the pull before it", async (t) => {
  const page = await openCounting(t, app, { initScript: failWrites });
  await pull(page, 3);
  await setStorageFault(page, QUOTA_EXCEEDED);
  await press(page, "#misprint");
  await press(page, "[data-cause=Smudge]");
  await waitUntilBlocked(page);
  await press(page, "#undo");
  await setStorageFault(page, null);
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 3);
  await go(page, "#/", "#done-misprints");
  assert.equal(await page.locator("#done-misprints").innerText(), "0");
});

test("a write that fails half way leaves the database consistent", async (t) => {
  const page = await openCounting(t, app, { initScript: failWrites });
  await pull(page, 2);
  await setStorageFault(page, "UnknownError", "meta");
  await touchZone(page);
  await waitUntilBlocked(page);
  await page.reload();
  await page.locator("#zone, .failed").first().waitFor();
  assert.equal(await page.locator(".failed").count(), 0, "the shop opens");
  await waitForCount(page, 2);
  await pull(page, 1);
  await page.reload();
  await waitForCount(page, 3);
});
