// Touch targets, layout at the press, and error messages in forms.
import assert from "node:assert/strict";
import { test } from "node:test";
import { PHONE } from "../support/browser.mjs";
import { advance, day } from "../support/clock.mjs";
import { pull, touchZone, waitUntilSaved } from "../support/counting.mjs";
import { burnNewScreen, enterPiecesSince, openStep, reportFailure, resumePress } from "../support/failure.mjs";
import { fillForm, go, press, save } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { brokenLabels, coveredElements, smallTargets } from "../support/touch.mjs";

const app = testServer();
const LANDSCAPE = { ...PHONE, viewport: { width: 844, height: 390 } };

for (const [name, device] of Object.entries({ portrait: PHONE, landscape: LANDSCAPE, "a small phone": { ...PHONE, viewport: { width: 360, height: 640 } } })) {
  test(`in ${name} the zone is visible and targets fit a gloved thumb`, async (t) => {
    const page = await openDemo(t, app, { device });
    const found = [];
    const look = async (screen) => found.push(...(await smallTargets(page, screen)));
    await look("day");
    await go(page, "#/press", "#zone");
    const { width, height } = device.viewport;
    const box = await page.locator("#zone").boundingBox();
    assert.ok(box.width >= 150 && box.height >= 150, `the zone measures ${JSON.stringify(box)}`);
    assert.ok(box.x >= 0 && box.x + box.width <= width && box.y >= 0 && box.y + Math.min(box.height, 150) <= height, `in sight: ${JSON.stringify(box)}`);
    await look("count");
    for (const button of ["#misprint", "#stop", "#number"]) {
      await press(page, button);
      await look(button);
      await press(page, "dialog .sheet-head .icon-button");
    }
    await reportFailure(page);
    for (const step of ["kind", "photos", "mark", "since", "remedy"]) {
      await openStep(page, step);
      await look(`failed: ${step}`);
    }
    await enterPiecesSince(page, 2);
    await look("failed: judging");
    await burnNewScreen(page, "B1");
    await look("failed: burning");
    await resumePress(page);
    await go(page, "#/", "#verdict");
    await press(page, page.locator(".run-link").nth(1));
    await page.locator("#start").waitFor();
    await look("checks");
    for (const [hash, wait] of [["#/jobs", ".job-row"], ["#/job/new", "#client"], ["#/more", ".menu"], ["#/heat", ".page.heat .menu"], ["#/heat/room", "#room-save"], ["#/heat/limits", ".heat-limit"], ["#/heat/units", ".heat-cards"], ["#/heat/settling", ".heat-list"], ["#/more/settings", "#crew"], ["#/more/backup", "#prepare"], ["#/more/about", "#facts"]]) {
      await go(page, hash, wait);
      await look(hash);
    }
    assert.ok(found.length === 0, `too small:\n${[...new Set(found)].join("\n")}`);
  });

  test(`in ${name} nothing on the counting screen is covered or cut off`, async (t) => {
    const page = await openCounting(t, app, { device });
    await pull(page, 6);
    await page.locator("#finish").waitFor();
    assert.deepEqual(await coveredElements(page, "#zone, #count, .zone-left, .control, .size-button, .place, .head-back"), []);
    assert.deepEqual(await brokenLabels(page, ".control span, .place span"), [], "words that are broken in the middle");
    await reportFailure(page);
    await enterPiecesSince(page, 2);
    await press(page, ".head-back");
    await page.locator(".failure-bar.stands").waitFor();
    assert.deepEqual(await coveredElements(page, "#zone, .zone-stop, .failure-bar, .control, .size-button, .place, .head-back"), [], "below a failure");
    await touchZone(page);
    await page.locator(".failure-bar:not(.stands)").waitFor();
    assert.deepEqual(await coveredElements(page, "#zone, #count, .zone-left, .failure-bar, .control, .size-button, .place, .head-back"), [], "with suspects to look at");
  });

  test(`in ${name} a clock gone back is told and leaves the zone room`, async (t) => {
    const page = await openCounting(t, app, { device });
    await pull(page, 6);
    await advance(page, -3 * 3600);
    await page.locator("#clock-banner").getByText("This device's clock is 3 h behind").waitFor();
    assert.deepEqual(await smallTargets(page, "count"), []);
    assert.deepEqual(await coveredElements(page, "#clock-banner .banner-button, #zone, #count, .control, .size-button, .place, .head-back"), []);
    const zone = await page.locator("#zone").boundingBox();
    assert.ok(zone.width >= 150 && zone.height >= 96, `the zone measures ${JSON.stringify(zone)}`);
    await touchZone(page);
    await waitUntilSaved(page, 7);
    await press(page, "#clock-banner button");
    await page.locator("#clock-banner").waitFor({ state: "detached" });
  });
}

test("form errors appear beside the field, and input is kept", async (t) => {
  const page = await openShop(t, app);
  const waitForText = async (field, words) => {
    await page.locator(`${field} .problem, ${field}.problem`).filter({ hasText: words }).waitFor();
  };
  await go(page, "#/job/new", "#client");
  await fillForm(page, { title: "Tour tees", due_day: day(-1), due_time: "16:30", notes: "Fold in tens" });
  await save(page);
  await waitForText("#client-help", "Required.");
  await waitForText("#due_day-help", "That day has passed.");
  assert.equal(await page.locator("#client").getAttribute("aria-invalid"), "true");
  const typed = await page.locator("#title, #due_day, #due_time, #notes").evaluateAll((fields) => fields.map((field) => field.value));
  assert.deepEqual(typed, ["Tour tees", day(-1), "16:30", "Fold in tens"]);
  await fillForm(page, { client: "Harbour Night Choir" });
  await page.locator("#client-help .problem").waitFor({ state: "detached" });
  await fillForm(page, { due_day: day() });
  await page.locator("#due_day-help .problem").waitFor({ state: "detached" });
  await save(page);
  await page.locator(".page.job").waitFor();

  await press(page, ".lots > .button");
  await fillForm(page, { garment: "Midweight tee", "size-s": -5, "size-m": "a dozen", "size-l": 12 });
  await save(page);
  await page.locator("#pieces-problem").waitFor();
  assert.deepEqual(await page.locator("#size-s, #size-m, #size-l").evaluateAll((fields) => fields.map((field) => field.value)), ["-5", "a dozen", "12"]);
  await fillForm(page, { "size-s": -5, "size-m": "" });
  await waitForText("#pieces-problem", "0 or more.");
  await fillForm(page, { "size-s": "" });
  await save(page);
  await page.locator("#ink").waitFor();

  await fillForm(page, { ink: "Brick", dryer: 900, hits: 0, dwell: "long", flash: true, flash_seconds: "" });
  await save(page);
  await waitForText("#dryer-help", "or less.");
  await waitForText("#hits-help", "1 or more.");
  await waitForText("#dwell-help", "Enter a number.");
  await waitForText("#flash_seconds-help", "Enter a number.");
  assert.deepEqual(await page.locator("#ink, #dryer, #hits, #dwell").evaluateAll((fields) => fields.map((field) => field.value)), ["Brick", "0", "900", "long"]);
  await fillForm(page, { dryer: 320, hits: 2, dwell: 150, flash_seconds: 6 });
  await save(page);
  await page.locator(".run-row").waitFor();
});
