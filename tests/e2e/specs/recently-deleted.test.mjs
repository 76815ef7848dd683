// What was deleted can be restored for as long as the journal has it.
import assert from "node:assert/strict";
import { test } from "node:test";
import { advance } from "../support/clock.mjs";
import { pull, waitForCount } from "../support/counting.mjs";
import { go, hashOf, press, waitForText } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";

const app = testServer();

/** Deletes the job of the run on screen; returns the run's route. */
async function deleteJob(page) {
  const run = await hashOf(page);
  await go(page, "#/jobs", ".job-row");
  await press(page, page.locator(".job-row").first());
  await page.locator(".page.job").waitFor();
  await press(page, ".job-actions .danger");
  await press(page, "#delete-yes");
  await page.locator(".page.jobs").waitFor();
  return run;
}

test("a deleted job is restored with its count, long after the notice", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 3);
  const run = await deleteJob(page);
  await advance(page, 5 * 24 * 3600);
  await page.reload();
  await page.locator(".page.jobs").waitFor();
  assert.equal(await page.locator(".notice-undo").count(), 0, "the notice is gone");
  assert.equal(await page.locator(".job-row").count(), 0);

  await go(page, "#/more", ".menu");
  await press(page, ".menu-row[href='#/more/deleted']");
  await waitForText(page, ".deleted-row", "Harbour Night Choir · Tour tees");
  await press(page, ".deleted-row button");
  await page.locator("#nothing-deleted").waitFor();
  await go(page, "#/jobs", ".job-row");
  await go(page, run, "#zone");
  await waitForCount(page, 3);
  await page.reload();
  await waitForCount(page, 3);
});

test("a run restored from under its deleted job brings the job back", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 1);
  const run = await hashOf(page);
  await go(page, "#/jobs", ".job-row");
  await press(page, page.locator(".job-row").first());
  await page.locator(".page.job").waitFor();
  await press(page, page.locator(".run-row").getByRole("button", { name: /delete/i }).first());
  await page.locator(".run-row").first().waitFor({ state: "detached" });
  await press(page, ".job-actions .danger");
  await press(page, "#delete-yes");
  await page.locator(".page.jobs").waitFor();
  await go(page, "#/more/deleted", ".deleted-row");
  await page.locator(".deleted-row").nth(1).waitFor();
  await press(page, page.locator(".deleted-row").filter({ hasText: "Brick" }).locator("button"));
  await page.locator("#nothing-deleted").waitFor();
  await go(page, run, "#zone");
  await waitForCount(page, 1);
});

test("a shop in which nothing was deleted says so", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/more/deleted", "#nothing-deleted");
  assert.equal(await page.locator(".deleted-row").count(), 0);
});
