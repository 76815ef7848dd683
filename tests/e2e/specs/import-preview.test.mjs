// A backup file is shown before it is merged; it can be left, and taken back.
import assert from "node:assert/strict";
import { test } from "node:test";
import { exportBackup, importBackup, pickBackup, shopState } from "../support/backup.mjs";
import { now } from "../support/clock.mjs";
import { pull, waitForCount } from "../support/counting.mjs";
import { backupFile, id } from "../support/journal-file.mjs";
import { fillForm, go, hashOf, press, save } from "../support/page.mjs";
import { openDemo, openFirst, openShop, testServer } from "../support/setup.mjs";
import { newJob, openCounting } from "../support/shop.mjs";
import { journalLines, zipOf } from "../support/zip.mjs";

const app = testServer();

async function nameShop(page, name) {
  await go(page, "#/more/settings", "#crew");
  await fillForm(page, { shop_name: name });
  await save(page);
  await page.getByText("Saved.").waitFor();
}

async function shopName(page) {
  await go(page, "#/", ".page.day");
  await go(page, "#/more/settings", "#crew");
  return page.locator("#shop_name").inputValue();
}

const origin = (page) => page.locator("#preview").getAttribute("data-origin");

test("a file of the demo is shown before its merge, left, and taken back", async (t) => {
  const { bytes } = await exportBackup(await openDemo(t, app));
  const facts = journalLines(bytes).length - 1;
  const page = await openShop(t, app);
  await nameShop(page, "Harbour Prints");
  await newJob(page);
  const before = await shopState(page);

  await pickBackup(page, bytes);
  assert.equal(await origin(page), "demo");
  await page.locator("#preview").getByText("Its made-up jobs would be mixed with yours").waitFor();
  await page.locator("#preview-shop").getByText("Two Kettles Print Shop").waitFor();
  await page.locator("#preview").getByText(`${facts} entries new`).first().waitFor();
  await page.locator("#preview-changes").getByText(/\d+ new jobs/).waitFor();
  await press(page, "#leave-file");
  await page.locator("#preview").waitFor({ state: "detached" });
  assert.deepEqual(await shopState(page), before, "leaving the file changes nothing");

  await pickBackup(page, bytes);
  await press(page, "#import-file");
  await page.locator("#import-result").getByText(`${facts} entries new`).waitFor();
  await press(page, "#take-back");
  await page.locator("#import-result").getByText(`${facts} entries removed from this device`).waitFor();
  assert.deepEqual(await shopState(page), before);
  assert.equal(await shopName(page), "Harbour Prints");
  await page.reload();
  assert.deepEqual(await shopState(page), before, "also after a reload");
});

test("a shop whose only data were taken back is empty, not lost", async (t) => {
  const { bytes } = await exportBackup(await openDemo(t, app));
  const page = await openShop(t, app);
  await importBackup(page, bytes);
  await press(page, "#take-back");
  await page.locator("#import-result").getByText("removed from this device").waitFor();
  await page.reload();
  await page.locator("#file").waitFor();
  await go(page, "#/", ".page.day");
});

test("what was recorded after an import stays when it is taken back", async (t) => {
  const { bytes } = await exportBackup(await openDemo(t, app));
  const page = await openCounting(t, app);
  const run = await hashOf(page);
  await pull(page, 2);
  await importBackup(page, bytes);
  await go(page, run, "#zone");
  await pull(page, 3);
  // Also after the app was closed.
  await page.reload();
  await waitForCount(page, 5);
  await go(page, "#/more/backup", "#take-back");
  await page.locator("#import-at").getByText("Last import").waitFor();
  await press(page, "#take-back");
  await page.locator("#import-result").getByText("removed from this device").waitFor();
  await go(page, run, "#zone");
  await waitForCount(page, 5);
  await pull(page, 1);
  await page.reload();
  await waitForCount(page, 6);
  await go(page, "#/jobs", ".job-row");
  assert.equal(await page.locator(".job-row").count(), 1);
  await go(page, "#/more/backup", "#file");
  await page.locator("#import-result").waitFor({ state: "attached" });
  assert.equal(await page.locator("#take-back").count(), 0, "what was taken back cannot be taken back again");
});

test("a file of one's own other device is recognised, another shop's not", async (t) => {
  const one = await openCounting(t, app);
  const run = await hashOf(one);
  await pull(one, 2);
  const two = await openFirst(t, app);
  await press(two, "#have-file");
  await two.locator("#file").waitFor();
  await pickBackup(two, (await exportBackup(one)).bytes);
  assert.equal(await origin(two), "first");
  await press(two, "#import-file");
  await two.locator("#import-result .verdict").waitFor();
  await go(two, run, "#zone");
  await pull(two, 4);
  await pickBackup(one, (await exportBackup(two)).bytes);
  assert.equal(await origin(one), "same");
  await one.locator("#preview-changes").getByText("Pieces counted: 4").waitFor();
  await one.locator("#preview-changes").getByText("Adds to 1 job here").waitFor();
  await press(one, "#import-file");
  await one.locator("#import-result .verdict").waitFor();
  await go(one, run, "#zone");
  await waitForCount(one, 6);

  const stranger = await openShop(t, app);
  await nameShop(stranger, "Elsewhere");
  await nameShop(one, "Harbour Prints");
  await pickBackup(one, (await exportBackup(stranger)).bytes);
  assert.equal(await origin(one), "other");
  await one.locator("#preview").getByText("no device in common with this shop").waitFor();
  await one.locator("#preview-changes").getByText("may change to Elsewhere").waitFor();
  await press(one, "#leave-file");
  assert.equal(await shopName(one), "Harbour Prints");
});

test("a file packed again with its folder is read", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 1);
  const { bytes } = await exportBackup(page);
  const text = `${journalLines(bytes).join("\n")}\n`;
  assert.match(await importBackup(page, zipOf("lastpull-2026-06-17-0930/journal.ndjson", text)), /^Nothing new/);
});

/** A file with one fact, of this device of the shop and dated so many days ahead. */
const fileAhead = (device, days) => {
  const at = now() + days * 24 * 3600_000;
  return backupFile([JSON.stringify({ device: id(device), seq: 1, stamp: [at, 0], subject: id(0), fact: { shop_named: "Harbour Prints" } })], now());
};

test("a file dated years ahead is told of once, not at each opening", async (t) => {
  const page = await openCounting(t, app);
  const run = await hashOf(page);
  await pull(page, 2);
  assert.match(await importBackup(page, fileAhead(1, 4000)), /1 entry has a future date/);
  await page.locator("#clock-banner").getByText("This device's clock is").waitFor();
  await press(page, "#clock-banner button");
  await page.locator("#clock-banner").waitFor({ state: "detached" });
  await go(page, run, "#zone");
  for (const pieces of [3, 4]) {
    // What is counted from now on is ordered after that fact.
    await pull(page, 1);
    await page.reload();
    await waitForCount(page, pieces);
    assert.equal(await page.locator("#clock-banner").count(), 0);
  }
  await importBackup(page, fileAhead(2, 5000));
  await page.locator("#clock-banner").waitFor();
});
