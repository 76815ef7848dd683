// The change of heat between two runs, as the checks of the second show it: its steps, the hold on the ink, the timer.
import assert from "node:assert/strict";
import { test } from "node:test";
import { installTimers } from "../support/clock.mjs";
import { cottonThenPolyester, measureDryer, settled } from "../support/heat.mjs";
import { fillForm, go, press, save, waitForText } from "../support/page.mjs";
import { testServer } from "../support/setup.mjs";
import { NBSP, degrees } from "../support/units.mjs";

const app = testServer();

test("after cotton the heat change for polyester is shown first", async (t) => {
  const page = await cottonThenPolyester(t, app);
  await waitForText(page, "#changeover h2", "too hot for polyester");
  await waitForText(page, "#heat-stands", `It's at ${degrees(340)}, from Tour tees.`);
  // The lower of the two published limits for dye migration: an ink maker's bulletin.
  await waitForText(page, ".heat-limits li", `${degrees(265)}dye migrationan ink manufacturer's bulletin`);
  await waitForText(page, ".heat-limits li", `${degrees(300)}scorching`);
  await waitForText(page, ".heat-steps li", `Dryer ${degrees(260)}was ${degrees(340)}`);
  // 44.4 °C down at 20 s per degree (our own assumption).
  await waitForText(page, "#heat-wait", `Allow about 15${NBSP}min`);
  await waitForText(page, "#heat-wait", "a cautious estimate");

  const bar = await page.locator(".places").boundingBox();
  for (const part of ["#changeover h2", ".heat-limits", ".heat-steps", "#heat-wait", "#settle-start"]) {
    const box = await page.locator(part).boundingBox();
    assert.ok(box.y >= 0 && box.y + box.height <= bar.y, `${part} is in sight without scrolling: ${JSON.stringify(box)}`);
  }
  const order = await page.evaluate(() => {
    const all = [...document.querySelectorAll("main *")];
    const at = (part) => all.indexOf(document.querySelector(part));
    return [at("#changeover"), at("#changes"), at("[data-item=Ink]"), at("#start")];
  });
  assert.deepEqual(order, [...order].sort((a, b) => a - b), "the change, then the checks, ink among the last, then the start");
  const start = await page.locator("#start").boundingBox();
  assert.ok(start.y > bar.y, "the start is not at the thumb");
});

test("the start asks while ink is held, until the dryer has settled", async (t) => {
  const page = await cottonThenPolyester(t, app);
  await page.locator("#hold").waitFor();
  await press(page, "#start");
  await waitForText(page, ".heat-reasons li", `${degrees(265)}: dye migration`);
  await waitForText(page, ".heat-reasons li", "1 dryer or flash change not made yet.");
  await press(page, "#hold-back");
  await page.locator("dialog[open]").waitFor({ state: "detached" });
  assert.equal(await page.locator("#zone").count(), 0);

  // The shop has no dryer yet: starting the timer adds it.
  await press(page, "#settle-start");
  await waitForText(page, "#settling", `Changing to ${degrees(260)}`);
  await waitForText(page, "#heat-stands", `may still be at ${degrees(340)}`);
  await page.locator("#hold").waitFor();
  await press(page, "#start");
  await waitForText(page, ".heat-reasons li", "still changing temperature");
  await press(page, "#hold-back");
  await page.reload();
  await waitForText(page, "#settling", `Changing to ${degrees(260)}`);
  await settled(page);
  await page.locator("#heat-ready").waitFor();
  await page.locator("[data-item=Dryer] .badge.good").waitFor();
  assert.equal(await page.locator("#hold, #changeover").count(), 0);
  await press(page, "#start");
  assert.equal(await page.locator("#hold-back").count(), 0, "only what else is open is asked for");
  await press(page, "#start-anyway");
  await page.locator("#zone").waitFor();
  await press(page, ".checks-button");
  await page.locator("dialog [data-item=Dryer]").getByText("Checked").waitFor();
});

test("starting despite a hold records the check as skipped", async (t) => {
  const page = await cottonThenPolyester(t, app);
  await measureDryer(page, 300);
  // The lowest limit that was published.
  await waitForText(page, "[data-item=Dryer] .badge.bad", `${degrees(300)}: the limit is ${degrees(265)}, dye migration`);
  await press(page, "#start");
  await page.locator("#hold-back").waitFor();
  await press(page, "#start-anyway");
  await page.locator(".checks-button.skipped").waitFor();
  await press(page, ".checks-button");
  await page.locator("dialog [data-item=Dryer]").getByText("Skipped").waitFor();
});

test("a set-up that is too hot says so and links to the run form", async (t) => {
  const page = await cottonThenPolyester(t, app, { run: { dryer: 340 } });
  await waitForText(page, "#changeover h2", "This setup is too hot for polyester");
  await waitForText(page, "#heat-stands", `This run calls for ${degrees(340)}.`);
  await press(page, "#changeover .button");
  await fillForm(page, { dryer: 255 });
  await save(page);
  // Back at the press.
  await waitForText(page, "#changeover h2", "The dryer is too hot for polyester");
});

test("the next day the dryer is not said to stand at yesterday's temperature", async (t) => {
  const page = await cottonThenPolyester(t, app, { before: installTimers });
  await waitForText(page, "#heat-stands", `It's at ${degrees(340)}, from Tour tees.`);
  await page.clock.fastForward("24:00:00");
  await waitForText(page, "#heat-stands", `Last set to ${degrees(340)} for Tour tees, yesterday`);
  await waitForText(page, "#changeover h2", "The dryer was last set too hot for polyester");
  await page.locator("#hold").waitFor();
});

test("a mistaken touch on the timer is asked about and teaches nothing", async (t) => {
  const page = await cottonThenPolyester(t, app, { before: installTimers });
  await press(page, "#settle-start");
  await page.locator("#settling").waitFor();
  await page.clock.fastForward("00:02");
  await press(page, "#settle-done");
  await waitForText(page, "#settle-doubt", `Expected for this change: about 15${NBSP}min`);
  assert.equal(await page.locator("#settle-count").count(), 0, "no dryer is so quick");
  await press(page, "#settle-keep");
  await page.locator("dialog[open]").waitFor({ state: "detached" });
  await waitForText(page, "#settling", `Changing to ${degrees(260)}`);
  await page.clock.fastForward("11:58");
  await press(page, "#settle-done");
  await page.locator("#heat-ready").waitFor();
  // Undo deletes the time and the dryer's check.
  await press(page, ".notice-undo");
  await waitForText(page, "#changeover h2", "too hot for polyester");
  await page.locator("#hold").waitFor();
  assert.equal(await page.locator("[data-item=Dryer] .badge").count(), 0);
  await press(page, "#settle-start");
  await page.locator("#settling").waitFor();
  await page.clock.fastForward("12:00");
  await press(page, "#settle-done");
  await page.locator("#heat-ready").waitFor();
  await go(page, "#/heat/settling", ".heat-list li");
  await waitForText(page, ".heat-list li", `12${NBSP}min`);
});

test("the expected wait is learned from the shop's own timings", async (t) => {
  const page = await cottonThenPolyester(t, app, {
    before: async (page) => {
      await go(page, "#/heat/unit/new", "#name");
      await fillForm(page, { name: "Tunnel", heated_length: 48, slowest: 3, fastest: 1 });
      await save(page);
      await waitForText(page, "#fastest-help .problem", "Can't be lower");
      await fillForm(page, { fastest: 9 });
      await save(page);
      await waitForText(page, ".heat-cards li", "Tunnel");
      await go(page, "#/heat/settling", "#minutes");
      await fillForm(page, { from: 340, to: 260, minutes: 8 });
      await save(page);
      await waitForText(page, ".heat-list li", `${degrees(340)} → ${degrees(260)}`);
      assert.equal(await page.locator("#minutes").inputValue(), "", "room for another");
      // One alone, which may be a slip, does not shorten the wait.
      await fillForm(page, { from: 340, to: 260, minutes: 7 });
      await save(page);
      await page.locator(".heat-list li").nth(1).waitFor();
    },
  });
  await waitForText(page, "#heat-wait", `Allow about 8${NBSP}min`);
  await waitForText(page, "#heat-wait", "from 2 changes you timed");
  // A finished timing is added to the log; a dropped one is not.
  await press(page, "#settle-start");
  await press(page, "#settle-drop");
  await page.locator("#settle-start").waitFor();
  await press(page, "#settle-start");
  await settled(page);
  await page.locator("#heat-ready").waitFor();
  await go(page, "#/heat/settling", ".heat-list");
  assert.equal(await page.locator(".heat-list li").count(), 3);
  await waitForText(page, ".heat-list li", "time not saved");
});
