// Heat: cure by calculation, fabric limits, wash tests, trials, room climate.
import assert from "node:assert/strict";
import { test } from "node:test";
import { installTimers } from "../support/clock.mjs";
import { OFFLINE_ERRORS } from "../support/console-errors.mjs";
import { addPolyesterJob, settled } from "../support/heat.mjs";
import { fillForm, go, hashOf, press, save, waitForText } from "../support/page.mjs";
import { openDemo, openShop, ownServer, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks, startCounting } from "../support/shop.mjs";
import { NBSP, degrees } from "../support/units.mjs";

const app = testServer();

test("the ink's data sheet and a measurement determine the cure", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { ink: "Brick", dryer: 340, dwell: 150 });
  await openChecks(page);
  const run = await hashOf(page);
  await waitForText(page, "#on-paper summary", "Can't tell if it cures: missing the dryer offset, the ink data sheet");
  await press(page, "#on-paper summary");
  await press(page, page.locator("#on-paper .heat-fixes a").first());
  await fillForm(page, { name: "Tunnel", heated_length: 48 });
  await save(page);
  await waitForText(page, ".heat-cards li", "never measured");
  await press(page, page.locator(".heat-cards .button").first());
  await fillForm(page, { setting: 340, found: 330 });
  await save(page);
  await waitForText(page, ".heat-cards li", `${degrees(10)} cooler than set`);

  await go(page, run, "#on-paper");
  await waitForText(page, "#on-paper summary", "Can't tell if it cures: missing the ink data sheet");
  await press(page, "#on-paper summary");
  await press(page, page.locator("#on-paper .heat-fixes a").first());
  assert.equal(await page.locator("#ink").inputValue(), "Brick", "the run's ink");
  await fillForm(page, { cure: 320, hold: 120, highest: 300 });
  await save(page);
  await waitForText(page, "#highest-help .problem", "Can't be lower");
  await fillForm(page, { highest: 350 });
  await save(page);
  await waitForText(page, "#on-paper summary", `Should cure (calculated), 30${NBSP}s to spare`);
  await press(page, "#on-paper summary");
  await waitForText(page, "#on-paper", "Go by the wash test");
  await waitForText(page, "#on-paper .lines", degrees(330));

  await go(page, "#/heat/inks", ".menu");
  await press(page, page.locator(".menu-row").first());
  await fillForm(page, { cure: 335 });
  await save(page);
  await waitForText(page, ".menu-row", degrees(335));
  await go(page, run, "#on-paper");
  await waitForText(page, "#on-paper summary", `Won't cure (calculated): ${degrees(5)} too cool`);
});

test("a shop's own heat limit needs a reason and can be reset", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/heat", ".menu");
  await press(page, page.locator(".menu-row", { hasText: "Fabric heat limits" }));
  const row = page.locator("a[href='#/heat/limit/4']");
  await row.getByText("an ink manufacturer's bulletin").waitFor();
  await row.getByText(`Also published: ${degrees(280)}, a trade glossary.`).waitFor();
  await press(page, row);
  await fillForm(page, { temperature: 275 });
  await save(page);
  await waitForText(page, "#note-help .problem", "Required.");
  await fillForm(page, { note: "Garment maker's sheet, March" });
  await save(page);
  await row.getByText(degrees(275)).waitFor();
  await row.getByText("above the cautious default").waitFor();
  await row.getByText(`Instead of ${degrees(265)}, an ink manufacturer's bulletin.`).waitFor();
  await press(page, row);
  await press(page, "#limit-back");
  await row.getByText(degrees(265)).waitFor();
  await press(page, ".notice-undo");
  await row.getByText(degrees(275)).waitFor();
});

test("a passed wash test is due again when the run's heat changes", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { ink: "Brick", dryer: 340, dwell: 150 });
  await openChecks(page);
  const run = await hashOf(page);
  await waitForText(page, "#run-tests summary", "Wash test due: never passed");
  await press(page, "#run-tests summary");
  await press(page, "#run-tests .button");
  assert.equal(await page.locator("#ink").inputValue(), "Brick");
  await page.locator("#went-through").getByText(degrees(340)).waitFor();
  await press(page, "#result-1");
  await fillForm(page, { times: 5, grade: "4.2" });
  await save(page);
  await waitForText(page, "#grade-help .problem", "half steps");
  await fillForm(page, { grade: "4.5" });
  await save(page);
  await page.locator(".heat-photos .photos").waitFor();
  await go(page, run, "#run-tests");
  await waitForText(page, "#run-tests summary", "Wash test passed");

  await go(page, run.replace("press", "run"), "#dryer");
  await fillForm(page, { dryer: 330 });
  await save(page);
  // Back where the form was opened.
  await waitForText(page, "#run-tests summary", "Wash test due: different dryer temperature");
  await go(page, "#/heat/tests", "[data-due]");
  await waitForText(page, "[data-due]", "Brick on cotton");
  await go(page, "#/heat", ".menu");
  await waitForText(page, ".menu-row", "1 due");
});

test("a trial is shown with the next run of its ink", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { ink: "Brick", dryer: 340, dwell: 150 });
  await openChecks(page);
  assert.equal(await page.locator("#run-trials").count(), 0);
  await press(page, ".heat-row-links .button:not(#to-heat)");
  assert.equal(await page.locator("#dryer").inputValue(), "340");
  await fillForm(page, { outcome: "Soft hand, no shine." });
  await press(page, "#verdict-1");
  await save(page);
  await waitForText(page, "#run-trials summary", "1 trial with this ink");
  await addPolyesterJob(page, { ink: "brick" });
  await press(page, "#run-trials summary");
  await waitForText(page, "#run-trials", "Soft hand, no shine.");
  await waitForText(page, "#run-trials", "on another fabric");
  await press(page, "#run-trials .menu-row");
  await press(page, "#delete");
  await page.getByText("Trial deleted.").waitFor();
  await page.locator(".empty").waitFor();
  await press(page, ".notice-undo");
  await waitForText(page, ".menu-row", "Brick on cotton");
});

test("a room reading gives heat level and water, and expires", async (t) => {
  const page = await openShop(t, app);
  await installTimers(page);
  assert.equal(await page.locator("#room-strip").count(), 0);
  await go(page, "#/heat/room", "#temperature");
  await fillForm(page, { temperature: 180, humidity: 101 });
  await press(page, "#room-save");
  await waitForText(page, "#temperature-help .problem", "131 or less.");
  await waitForText(page, "#humidity-help .problem", "100 or less.");
  await fillForm(page, { temperature: 99, humidity: "" });
  await press(page, "[data-step=temperature-more]");
  await press(page, "[data-step=humidity-more]");
  assert.deepEqual(await page.locator("#temperature, #humidity").evaluateAll((fields) => fields.map((field) => field.value)), ["100", "50"]);
  await press(page, "#room-save");
  // NWS Tulsa, "Heat Index Information": 118 at 100 °F and 50 %. OSHA: 115 and more is very high to extreme.
  await waitForText(page, "#room-feels", `feels like ${degrees(118)}`);
  await waitForText(page, "#room-level", "Very high to extreme heat risk");
  // CDC/NIOSH, "Heat Stress: Hydration": no more than 48 fluid ounces an hour.
  await waitForText(page, "#room-water", `At least 4 cups (1${NBSP}L) of water per hour, never more than 6`);
  await page.getByText("call 911 or your emergency number first").waitFor();
  // The level says to put the work off, so the table's minutes for dry air are not shown beside it.
  await waitForText(page, "#room-rest", "postpone the work");
  await waitForText(page, "#room-rest-why", "At this heat index the table's minutes don't apply");
  await go(page, "#/", "#room-strip");
  await waitForText(page, "#room-strip", "just now");

  await page.clock.fastForward("02:01:00");
  await waitForText(page, "#room-strip", "log again");
  await press(page, "#room-strip");
  await waitForText(page, "#room-old", "More than two hours old");
  await waitForText(page, "#room-now", `2${NBSP}h${NBSP}1${NBSP}min ago`);
  assert.ok((await page.locator("#room-now").innerText()).includes(`2${NBSP}h${NBSP}1${NBSP}min`), "a duration does not break across lines");
  await fillForm(page, { temperature: 92, humidity: 45 });
  await press(page, "#room-save");
  await waitForText(page, "#room-level", "Moderate heat risk");
  await waitForText(page, "#room-water", "About 4 cups");
  await page.locator("#room-old").waitFor({ state: "detached" });
  await waitForText(page, "#room-rest", "More rest than usual");
  await waitForText(page, "#room-rest-why", "The table is for 30% humidity");
  await press(page, ".notice-undo");
  await waitForText(page, "#room-level", "Very high to extreme");
  // CDC/NIOSH, "Work/Rest Schedules", in the dry air it is for: moderate work at 100 °F is 45 minutes, then 15 of rest.
  await fillForm(page, { temperature: 100, humidity: 20 });
  await press(page, "#room-save");
  await waitForText(page, "#room-rest", `45${NBSP}min work, 15${NBSP}min rest`);
  await press(page, "#work-2");
  await waitForText(page, "#room-rest", `30${NBSP}min work, 30${NBSP}min rest`);
  assert.equal(await page.locator("#room-rest-why").count(), 0);
  // Damper than the table at the lower level: as usual, with the reason in plain view.
  await fillForm(page, { temperature: 90, humidity: 35 });
  await press(page, "#room-save");
  await waitForText(page, "#room-level", "Lower heat risk");
  await waitForText(page, "#room-rest-why", "this air is more humid");
});

test("heat entries survive a reload without a network", async (t) => {
  const { app: own, server } = await ownServer(t, app);
  const page = await openShop(t, own, { expectedErrors: OFFLINE_ERRORS });
  await go(page, "#/heat/unit/new", "#name");
  await fillForm(page, { name: "Tunnel", heated_length: 48 });
  await save(page);
  await waitForText(page, ".heat-cards li", "Tunnel");
  await go(page, "#/heat/room", "#temperature");
  await fillForm(page, { temperature: 95, humidity: 40 });
  await press(page, "#room-save");
  await page.locator("#room-level").waitFor();
  await newJob(page);
  await addGarments(page);
  await addRun(page, { ink: "Brick", dryer: 340, dwell: 150 });
  await openChecks(page);
  const run = await hashOf(page);
  await press(page, "#settle-start");
  await page.locator("#settling").waitFor();
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  await server.close();

  await page.reload();
  await page.locator("#facts").waitFor();
  await go(page, run, "#settling");
  await settled(page);
  await page.locator("[data-item=Dryer] .badge.good").waitFor();
  await page.reload();
  await page.locator("[data-item=Dryer] .badge.good").waitFor();
  await go(page, "#/heat/settling", ".heat-list li");
  await go(page, "#/heat/units", ".heat-cards");
  await waitForText(page, ".heat-cards li", "Tunnel");
  await go(page, "#/heat/room", "#room-level");
  await go(page, run, "#start");
  await startCounting(page);
});

test("the demo shop has every kind of heat entry", async (t) => {
  const page = await openDemo(t, app);
  await waitForText(page, "#room-strip", "Moderate heat risk");
  await go(page, await page.locator(".run-link").nth(1).getAttribute("href"), "#changeover");
  await waitForText(page, "#heat-wait", "from 3 changes you timed");
  await waitForText(page, "#run-trials summary", "1 trial with this ink");
  await waitForText(page, "#on-paper summary", "Should cure (calculated)");
  await press(page, "#to-heat");
  for (const words of ["Tunnel, Swing-out flash", "3 inks · 2 upcoming inks have none", "3 due", "1 trial", "6 changes timed"]) {
    await waitForText(page, ".menu-row", words);
  }
});
