// The dryer in the checks of a run: what was measured against the limits of fabric and ink.
import assert from "node:assert/strict";
import { test } from "node:test";
import { PHONE } from "../support/browser.mjs";
import { addPolyesterJob, addPolyesterLot, cottonThenPolyester, measureDryer } from "../support/heat.mjs";
import { fillForm, go, press, save, waitForText } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks } from "../support/shop.mjs";
import { NBSP, degrees } from "../support/units.mjs";

const app = testServer();

test("a dryer at the dye limit holds the ink, however near its setting", async (t) => {
  const page = await cottonThenPolyester(t, app);
  // Nine degrees of tolerance reach from 260 to 269 °F; the limit is at 265.
  await measureDryer(page, 266);
  await waitForText(page, "[data-item=Dryer] .badge.bad", `${degrees(266)}: the limit is ${degrees(265)}`);
  await waitForText(page, "#changeover h2", "The dryer is too hot for polyester");
  await waitForText(page, "#heat-stands", `Measured at ${degrees(266)}.`);
  await waitForText(page, "#heat-again", "measure again");
  await page.locator("#hold").waitFor();
  // Taken back it holds all the same, and a look at the display is not offered.
  await press(page, "[data-item=Dryer] .button.quiet");
  await page.locator("[data-item=Dryer] [data-stands]").waitFor();
  await waitForText(page, "[data-item=Dryer] [data-stands]", "can't clear it");
  assert.equal(await page.locator("[data-item=Dryer] .tick").count(), 0);
  await page.locator("#hold").waitFor();
  await measureDryer(page, 262);
  await page.locator("[data-item=Dryer] .badge.good").waitFor();
  await page.locator("#heat-ready").waitFor();
  assert.equal(await page.locator("#hold").count(), 0);
});

test("an infrared reading does not clear polyester", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/heat/unit/new", "#name");
  await fillForm(page, { name: "Tunnel", heated_length: 48 });
  await save(page);
  await press(page, page.locator(".heat-cards .button").first());
  await fillForm(page, { setting: 290, found: 255 });
  await press(page, "#method-2");
  await save(page);
  await page.locator(".heat-cards li").first().waitFor();
  await addPolyesterJob(page, { dryer: 290 });
  await waitForText(page, "#changeover h2", "This setup is too hot for polyester");
  await press(page, "#on-paper summary");
  await waitForText(page, "#on-paper .heat-findings", `passed by ${degrees(25)}`);
  await waitForText(page, "#on-paper .heat-caveats", "it can rule a fabric out, never clear it");
});

test("an infrared reading is told why it does not check the dryer", async (t) => {
  const page = await cottonThenPolyester(t, app);
  await press(page, "[data-item=Dryer] [aria-expanded]");
  await page.locator("#measure-Dryer").fill("255");
  await press(page, "[data-item=Dryer] [type=submit]");
  await waitForText(page, "[data-item=Dryer] .problem", "Select how it was measured");
  await press(page, "#way-1");
  await waitForText(page, "[data-item=Dryer] .measure", "it can fail this fabric, never pass it");
  await press(page, "[data-item=Dryer] [type=submit]");
  await waitForText(page, "[data-item=Dryer] .badge.tight", `${degrees(255)} by infrared: not enough to pass`);
  await waitForText(page, "#changeover h2", "too hot for polyester");
  await waitForText(page, "#heat-stands", `It's at ${degrees(340)}`);
  await page.locator("#hold").waitFor();
  await measureDryer(page, 268, { infrared: true });
  await waitForText(page, "[data-item=Dryer] .badge.bad", `${degrees(268)}: the limit is ${degrees(265)}`);
  assert.equal(await page.locator("[data-item=Dryer] .tick").count(), 0);
  await measureDryer(page, 258);
  await page.locator("#heat-ready").waitFor();
});

test("a time in the heat measured short of the ink's cure holds the ink", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/heat/ink/new", "#ink");
  await fillForm(page, { ink: "Brick", cure: 320, hold: 90 });
  await save(page);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { ink: "Brick", dryer: 340, dwell: 90 });
  await openChecks(page);
  await press(page, "[data-item=Dwell] [aria-expanded]");
  await page.locator("#measure-Dwell").fill("86");
  await press(page, "[data-item=Dwell] [type=submit]");
  await waitForText(page, "[data-item=Dwell] .badge.bad", `this ink needs 90${NBSP}s`);
  await waitForText(page, "#changeover h2", "Dwell time too short for this ink");
  await page.locator("#hold").waitFor();
});

test("a dryer too hot for the fabric is warned of while the run is entered", async (t) => {
  const page = await openShop(t, app, { device: PHONE });
  await addPolyesterLot(page);
  await fillForm(page, { dryer: 260 });
  assert.equal(await page.locator("#dryer-limits li").count(), 0);
  await fillForm(page, { dryer: 320 });
  await waitForText(page, "#dryer-limits .problem", "too hot for polyester");
  await waitForText(page, "#dryer-limits li", `${degrees(265)}: dye migration`);
  await fillForm(page, { dryer: 255 });
  await page.locator("#dryer-limits li").first().waitFor({ state: "detached" });
});
