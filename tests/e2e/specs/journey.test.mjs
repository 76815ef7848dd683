// One job from entry to finished, by touch on a phone in portrait.
import assert from "node:assert/strict";
import { test } from "node:test";
import { day } from "../support/clock.mjs";
import { pull, touchZone, waitForCount } from "../support/counting.mjs";
import { go, press } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks } from "../support/shop.mjs";

const app = testServer({ whole: true });

test("a job runs from first start to finished, with one misprint", async (t) => {
  const page = await openShop(t, app);
  await newJob(page, { client: "Harbour Night Choir", title: "Tour tees", due_day: day() });
  await addGarments(page, { garment: "Midweight tee", "size-s": 12, "size-m": 12, "size-l": 12 });
  await addRun(page, { ink: "Brick", hits: 2, flash: true, flash_seconds: 6, dryer: 320, dwell: 150 });

  await openChecks(page);
  const check = (item) => page.locator(`[data-item=${item}]`);
  for (const item of ["Flash", "Garment", "Ink"]) {
    await press(page, check(item).locator(".tick"));
    await check(item).locator(".badge.good").waitFor();
  }
  await press(page, check("Dryer").locator("[aria-expanded]"));
  await page.locator("#measure-Dryer").fill("324");
  await press(page, "#way-0");
  await press(page, check("Dryer").locator("[type=submit]"));
  await check("Dryer").getByText("324\u00a0°F: within tolerance").waitFor();
  await press(page, check("Dwell").locator(".check-buttons .quiet"));
  await check("Dwell").getByText("Skipped").waitFor();
  const open = await page.locator(".check-buttons").count();
  assert.ok(open > 0, "a check is left open");

  await press(page, "#start");
  await page.getByText("logged as skipped").waitFor();
  await press(page, "#start-anyway");
  await page.locator("#zone").waitFor();
  await press(page, ".checks-button");
  await page.locator("dialog [data-item=Hits]").getByText("Skipped").waitFor();
  await press(page, "dialog .sheet-head .icon-button");

  await pull(page, 36);
  await waitForCount(page, 36);
  await page.getByText("All printed").waitFor();
  assert.deepEqual(await page.locator(".size-button strong").allInnerTexts(), ["0", "0", "0"], "each size had its twelve");

  await press(page, "#misprint");
  assert.ok(await page.locator("#was-counted").isChecked(), "a misprint is seen after its pull");
  await press(page, "[data-cause=Pinhole]");
  await waitForCount(page, 35);

  // Undo removes the last action, the number added by mistake, not the misprint before it.
  await press(page, "#number");
  await page.locator("#pieces").fill("3");
  await press(page, "#number-add");
  await waitForCount(page, 38);
  await press(page, "#undo");
  await waitForCount(page, 35);

  await press(page, "#stop");
  await press(page, "[data-cause=Ink]");
  await page.locator("#stopped").waitFor();
  await touchZone(page);
  await page.locator("#stopped").waitFor({ state: "detached" });
  await waitForCount(page, 35);

  await pull(page, 1);
  await waitForCount(page, 36);
  await press(page, "#end");
  assert.equal(await page.locator("#ended-good").innerText(), "36 of 36");
  await page.getByText("Pinhole or spot × 1").waitFor();

  await press(page, "#finish-job");
  await page.getByText("Tour tees is finished.").waitFor();
  await go(page, "#/", "#done-jobs");
  assert.equal(await page.locator("#done-jobs").innerText(), "1");
  assert.equal(await page.locator("#done-pieces").innerText(), "36");
  assert.equal(await page.locator("#done-misprints").innerText(), "1");
});

test("a misprint is undone from its notice", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page, { "size-s": 3, "size-m": "", "size-l": "" });
  await addRun(page);
  await openChecks(page);
  await press(page, "#start");
  await press(page, "#start-anyway");
  await pull(page, 2);
  await press(page, "#misprint");
  await press(page, "[data-cause=Smudge]");
  await waitForCount(page, 1);
  await press(page, ".notice-undo");
  await waitForCount(page, 2);
  await press(page, "#stop");
  await press(page, "#end-anyway");
  assert.equal(await page.locator("#ended-good").innerText(), "2 of 3");
  await page.locator(".lines").getByText("S × 1").waitFor();
});
