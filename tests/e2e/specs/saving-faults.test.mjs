// The browser's database fails: nothing that was counted is lost, and the person is told what to do.
import assert from "node:assert/strict";
import { test } from "node:test";
import { go, openCounting, premises, press } from "../support/shop.mjs";
import { aMoment, pull, settled, shows, touchZone, zone } from "../support/counting.mjs";
import { closeUnderneath, failCommitting, failSaving, keepConnections } from "../support/storage-faults.mjs";
import { FULL, blocked, blockedWithTwo, fail, tryAgain, waits } from "../support/saving-blocked.mjs";

const place = premises();
for (const [name, before] of Object.entries({ "each write fails": failSaving, "the whole transaction fails": failCommitting })) {
  test(`with no room left counting is blocked, and nothing is lost: ${name}`, async (t) => {
    const page = await openCounting(t, place, { before });
    await blockedWithTwo(page);
    await page.getByText("no room left").waitFor();
    await page.getByText("2 entries are not saved yet").waitFor();
    // Below the panel, where the zone is still in sight.
    await touchZone(page, 0.9);
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
