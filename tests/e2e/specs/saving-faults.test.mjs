// IndexedDB errors: nothing counted is lost, and the app says what to do.
import assert from "node:assert/strict";
import { test } from "node:test";
import { pull, touchZone, waitForCount, waitTwoFrames, waitUntilSaved, zoneState } from "../support/counting.mjs";
import { go, press } from "../support/page.mjs";
import { QUOTA_EXCEEDED, blockWithTwoUnsaved, setStorageFault, tryAgain, waitForZone, waitUntilBlocked } from "../support/saving-blocked.mjs";
import { testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { closeConnections, failCommits, failWrites, recordConnections } from "../support/storage-faults.mjs";

const app = testServer();
for (const [name, initScript] of Object.entries({ "each write fails": failWrites, "the whole transaction fails": failCommits })) {
  test(`a full disk blocks counting and loses nothing: ${name}`, async (t) => {
    const page = await openCounting(t, app, { initScript });
    await blockWithTwoUnsaved(page);
    await page.getByText("no room left").waitFor();
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
