// A double tap, as of a gloved or an impatient finger, does a thing once.
import assert from "node:assert/strict";
import { test } from "node:test";
import { exportBackup } from "../support/backup.mjs";
import { fillForm, go, hashOf } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();

/** Taps a button twice before the page can do anything about the first tap. */
const tapTwice = (page, selector) => page.locator(selector).evaluate((button) => { button.click(); button.click(); });

/** Submits the form of the room's climate by a tap at this time, in milliseconds since the page was opened. */
const submitAt = (page, time) =>
  page.locator(".room-read form").evaluate((form, time) => {
    const event = new SubmitEvent("submit", { bubbles: true, cancelable: true });
    Object.defineProperty(event, "timeStamp", { value: time });
    form.dispatchEvent(event);
  }, time);

test("a second tap on a reading's button notes no second reading", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/heat/room", "#temperature");
  await fillForm(page, { temperature: 80, humidity: 50 });
  const earlier = page.locator(".heat-list li");
  await submitAt(page, 10_000);
  await page.locator("#room-feels").waitFor();
  await page.locator("#room-save:enabled").waitFor();
  await submitAt(page, 10_400);
  // What is noted later comes after anything that the second tap would have noted.
  await submitAt(page, 11_000);
  // The latest is not among the earlier ones.
  await earlier.first().waitFor({ state: "attached" });
  assert.equal(await earlier.count(), 1);
});

test("two taps on the failure button open one failure", async (t) => {
  const page = await openCounting(t, app);
  await tapTwice(page, "#failed");
  await page.locator("#downtime").waitFor();
  const first = await hashOf(page);
  await tapTwice(page, "#another");
  await page.waitForFunction((first) => location.hash !== first, first);
  const [, ...lines] = journalLines((await exportBackup(page)).bytes);
  const failures = lines.map((line) => JSON.parse(line)).filter(({ fact }) => fact.failure).map(({ subject }) => subject);
  assert.equal(new Set(failures).size, 2);
});
