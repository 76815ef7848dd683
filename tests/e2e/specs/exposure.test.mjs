// Exposure times from step guides, lamps and emulsions, ink volume, and the reclaiming bath.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK } from "../support/browser.mjs";
import { OFFLINE_ERRORS } from "../support/console-errors.mjs";
import { fillForm, go, press, save } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob } from "../support/shop.mjs";

const app = testServer();
const chooseRadio = (page, name, words) => press(page, page.locator(`fieldset:has([name="${name}"])`).getByRole("radio", { name: words, exact: true }));

/** Adds a lamp of a kind at a distance. */
async function lamp(page, name, kind, distance) {
  await go(page, "#/stencil/lamp/new", "#name");
  await fillForm(page, { name });
  await chooseRadio(page, "kind", kind);
  if (distance) await fillForm(page, { distance });
  await save(page);
  await page.locator(".stencil-row", { hasText: name }).waitFor();
}

/** Adds an emulsion. */
async function emulsion(page, name, family = "Dual-cure") {
  await go(page, "#/stencil/emulsion/new", "#name");
  await fillForm(page, { name });
  await chooseRadio(page, "family", family);
  await save(page);
  await page.locator(".stencil-row", { hasText: name }).waitFor();
}

/** Waits until the answer is this time. */
const waitForAnswer = (page, time) => page.locator("#answer .stencil-time strong").getByText(time, { exact: true }).waitFor();

/** A shop with one bulb at 20 inches and one emulsion. */
async function screenRoom(t, options) {
  const page = await openShop(t, app, options);
  await lamp(page, "Bulb", "Single bulb", 20);
  await emulsion(page, "Harbour blue");
  return page;
}

/** Enters a step guide test for a mesh. */
async function enterStepGuide(page, { mesh, time, step }) {
  await go(page, "#/stencil/exposure/find", "#time");
  if (!(await page.locator("#which").evaluate((fold) => fold.open))) await press(page, "#which summary");
  await fillForm(page, { mesh, time });
  await press(page, `#solid-${step}`);
}

test("the emulsion form requires a family and preselects none", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/stencil/emulsion/new", "#name");
  assert.equal(await page.locator("[name=family]:checked").count(), 0);
  await fillForm(page, { name: "Harbour blue" });
  await press(page, ".save-bar [type=submit]");
  await page.locator("#family-problem").waitFor();
  await chooseRadio(page, "family", "Diazo");
  await page.locator("#family-problem").waitFor({ state: "detached" });
  await save(page);
  await page.locator(".stencil-row", { hasText: "Harbour blue" }).waitFor();
});

test("step 5 of a guide gives 1.995 times the test time as answer", async (t) => {
  const page = await screenRoom(t);
  await go(page, "#/stencil/exposure", "#answer");
  await enterStepGuide(page, { mesh: 156, time: 120, step: 5 });
  await page.locator("#factor").getByText("× 1.995").waitFor();
  await page.locator("#preview").getByText("239\u00a0s").waitFor();
  await page.locator("#preview").getByText("check it before you rely on it").waitFor();
  await save(page);
  const answer = page.locator("#answer");
  await waitForAnswer(page, "239\u00a0s");
  await answer.getByText("3:59 min").waitFor();
  await answer.getByText("step 5 was the last solid one; target is step 7").waitFor();
  assert.equal(await page.locator("#scaled").count(), 0);

  // After leaving and returning, the inputs are as before. The menu counts the time.
  await go(page, "#/stencil", ".stencil-door");
  await page.locator(".stencil-door").first().getByText("saved time").waitFor();
  await go(page, "#/stencil/exposure", "#answer");
  await waitForAnswer(page, "239\u00a0s");

  // There is no answer for a mesh that was never tested.
  await chooseRadio(page, "cloth", "Other mesh");
  await fillForm(page, { count: 230 });
  await answer.getByText("No time for this yet. Run a test first.").waitFor();
  await answer.getByText("Mesh: 156\u00a0mesh instead of 230\u00a0mesh").waitFor();
});

test("a moved bulb's time is computed and marked untested", async (t) => {
  const page = await screenRoom(t);
  await enterStepGuide(page, { mesh: 156, time: 100, step: 7 });
  await save(page);
  await waitForAnswer(page, "100\u00a0s");
  await go(page, "#/stencil/kit", ".stencil-equipment");
  await press(page, page.locator(".stencil-row", { hasText: "Bulb" }));
  await fillForm(page, { distance: 30 });
  await save(page);
  await page.locator(".stencil-equipment").waitFor();
  await go(page, "#/stencil/exposure", "#scaled");
  // (30/20)² by the inverse-square law.
  await page.locator("#scaled").getByText("225\u00a0s").waitFor();
  await page.locator("#scaled").getByText("not tested").waitFor();
  await press(page, page.locator("#scaled a"));
  await page.locator("#factor").getByText("× 2.25").waitFor();
  await save(page);
  await page.locator("#answer").getByText("Calculated, not tested").waitFor();
});

test("for tubes no time is computed from a distance", async (t) => {
  const page = await openShop(t, app);
  await lamp(page, "Tube bed", "Tubes", 8);
  await emulsion(page, "Harbour blue");
  await go(page, "#/stencil/exposure/find", "#time");
  await chooseRadio(page, "kind", "New distance");
  await page.locator("#refused").getByText("No calculation for tubes").waitFor();
  await fillForm(page, { time: 90, from: 12 });
  await page.locator("#refused").getByText("Test at the new distance").waitFor();
  await save(page);
  await page.locator("#time").waitFor();
  await go(page, "#/stencil/exposure", "#edge");
  await press(page, "#edge summary");
  await page.locator("#edge").getByText("put a 21-step scale in a corner").waitFor();
});

test("a guide with no solid step gives no time and says what to do", async (t) => {
  const page = await screenRoom(t);
  await enterStepGuide(page, { mesh: 156, time: 20, step: 0 });
  await page.locator("#refused").getByText("expose the test much longer").waitFor();
  await save(page);
  await page.locator("#refused").waitFor();
  await press(page, "#solid-21");
  await page.locator("#refused").getByText("expose the test much shorter").waitFor();
  await press(page, "#solid-7");
  await page.locator("#preview").getByText("20\u00a0s").waitFor();
});

test("correcting and deleting an exposure time can be undone", async (t) => {
  const page = await screenRoom(t, { device: DESK });
  await enterStepGuide(page, { mesh: 156, time: 100, step: 7 });
  await save(page);
  const answer = page.locator("#answer");
  await waitForAnswer(page, "100\u00a0s");
  await press(page, answer.getByRole("link", { name: "Correct" }));
  await fillForm(page, { time: 110 });
  await save(page);
  await waitForAnswer(page, "110\u00a0s");
  await press(page, ".notice-undo");
  await waitForAnswer(page, "100\u00a0s");
  await press(page, answer.getByRole("link", { name: "Correct" }));
  await press(page, "#delete");
  await answer.getByText("No times for this emulsion yet").waitFor();
  await press(page, ".notice-undo");
  await waitForAnswer(page, "100\u00a0s");
});

test("a deleted lamp can be restored, and the goal is at least 7", async (t) => {
  const page = await screenRoom(t);
  await press(page, page.locator(".stencil-row", { hasText: "Bulb" }));
  await press(page, "#delete");
  await page.getByText("No exposure unit yet").waitFor();
  await press(page, ".notice-undo");
  await page.locator(".stencil-row", { hasText: "Bulb" }).waitFor();
  await fillForm(page, { goal: 6 });
  await save(page);
  await page.locator("#goal-help").getByText("7 or more.").waitFor();
  await fillForm(page, { goal: 8 });
  await save(page);
  await page.getByText("Target: step 8.").waitFor();
});

/** Enters a finished batch: number of screens, minutes per screen. */
async function addBatch(page, count, minutes) {
  await press(page, "#note-out");
  await fillForm(page, { count });
  await chooseRadio(page, "time-kind", "Minutes per screen");
  await fillForm(page, { minutes });
  await press(page, "#out-now");
  await page.locator("dialog").waitFor({ state: "detached" });
}

async function charge(page, chemistry) {
  await press(page, "#charge");
  await page.locator("dialog .caution").getByText("gloves, goggles and ventilation").waitFor();
  await fillForm(page, { chemistry });
  await press(page, "#charge-now");
  await page.locator("dialog").waitFor({ state: "detached" });
  await page.locator("#bath-state").getByText("6 more").waitFor();
}

test("three slower batches advise recharging the bath; a charge resets", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/stencil/bath", "#bath-state");
  await page.locator("#bath-state").getByText("Log when you charge the tank").waitFor();
  await charge(page, "Dip, one to four");
  const state = page.locator("#bath-state");
  await state.getByText("Need 6 more batches to tell.").waitFor();
  for (const minutes of [5, 5, 5]) await addBatch(page, 4, minutes);
  await state.getByText("Need 3 more batches to tell.").waitFor();
  for (const minutes of [9, 9]) await addBatch(page, 4, minutes);
  await state.getByText("Need 1 more batch to tell.").waitFor();
  await addBatch(page, 4, 9);
  await state.getByText("Time to recharge the tank").waitFor();
  assert.equal(await page.locator("#bath-now").innerText(), "9");
  const chart = page.locator("#bath-chart svg");
  assert.equal(await chart.locator("circle").count(), 6);
  assert.equal(
    await chart.getAttribute("aria-label"),
    "Minutes per screen, batch by batch: 5, 5, 5, 9, 9, 9. fresh 5. recharge 7.5.",
  );
  // Deleting a batch removes the advice as well.
  await press(page, "#batches summary");
  await press(page, page.locator("#batches .icon-button").first());
  await state.getByText("Need 1 more batch to tell.").waitFor();
  await press(page, ".notice-undo");
  await state.getByText("Time to recharge the tank").waitFor();
  await charge(page, "Dip, one to four");
  await state.getByText("Need 6 more batches to tell.").waitFor();
  await press(page, "#charges summary");
  await page.locator("#charges").getByText("24 screens").waitFor();
});

/** Labels of screens to reclaim in the demo shop. */
const TO_RECLAIM = ["23", "24"];

/** Opens the demo shop's bath. */
async function demoBath(t) {
  const page = await openDemo(t, app);
  await go(page, "#/stencil/bath", "#put-in");
  return page;
}

const waitingScreens = async (page) => Number((await page.locator(".stencil-queue strong").innerText()).split(" ")[0]);
const batches = (page) => page.locator(".stencil-batch");

test("a batch moves its screens in and out of the bath, with undo", async (t) => {
  const page = await demoBath(t);
  const before = await waitingScreens(page);
  const toggle = (label) => press(page, page.locator(".stencil-ticks").getByRole("checkbox", { name: new RegExp(`^${label}\\b`) }));
  await press(page, "#put-in");
  for (const label of TO_RECLAIM) await toggle(label);
  await press(page, "#put-in-now");
  await batches(page).filter({ hasText: "2 screens: 23, 24" }).waitFor();
  assert.equal(await waitingScreens(page), before - 2);
  await press(page, ".notice-undo");
  await batches(page).filter({ hasText: "23, 24" }).waitFor({ state: "detached" });
  assert.equal(await waitingScreens(page), before);

  await press(page, "#put-in");
  for (const label of TO_RECLAIM) await toggle(label);
  await press(page, "#put-in-now");
  await press(page, batches(page).filter({ hasText: "23, 24" }).locator("button"));
  // One of the two is not clean and waits again.
  await toggle("24");
  await chooseRadio(page, "time-kind", "Minutes for the batch");
  await fillForm(page, { minutes: 12 });
  await press(page, "#out-now");
  await batches(page).filter({ hasText: "23, 24" }).waitFor({ state: "detached" });
  assert.equal(await waitingScreens(page), before - 1);
  await press(page, ".notice-undo");
  await batches(page).filter({ hasText: "2 screens: 23, 24" }).waitFor();
  assert.equal(await waitingScreens(page), before - 2);
});

test("a screen to expose shows its tested time beside the time to allow", async (t) => {
  const page = await screenRoom(t);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { screens: "A3" });
  await go(page, "#/screens/new", "#label");
  await fillForm(page, { label: "A3", count: 156, emulsion: "Harbour blue" });
  await save(page);
  const step = (name) => page.locator(`#needs [data-step=${name}]`);
  await step("Expose").getByText("allow 5\u00a0min").waitFor();
  for (const name of ["Coat", "Dry"]) await press(page, step(name).locator(".button"));
  // No time is known yet: the link leads to where one is found.
  await step("Expose").locator(".screen-exposure").getByText("Exposure time").waitFor();
  await go(page, "#/stencil/exposure/find", "#time");
  if (!(await page.locator("#which").evaluate((fold) => fold.open))) await press(page, "#which summary");
  await chooseRadio(page, "kind", "Already known");
  await fillForm(page, { mesh: 156, time: 239 });
  await save(page);
  await waitForAnswer(page, "239\u00a0s");
  await go(page, "#/screens", "#needs");
  await step("Expose").locator(".screen-exposure").getByText("Expose for 239\u00a0s (Bulb)").waitFor();
  await press(page, ".screen-exposure");
  await waitForAnswer(page, "239\u00a0s");
});

test("ink volume comes from the mesh's data sheet or says what is missing", async (t) => {
  const page = await openDemo(t, app);
  await go(page, "#/stencil/volume", "#volume");
  await chooseRadio(page, "mesh", "110 · 80\u00a0µm");
  await page.locator("#lacks").getByText("Thread diameter can't replace them").waitFor();
  assert.equal(await page.locator("#need").count(), 0);
  await chooseRadio(page, "mesh", "Other mesh");
  // Ao 31 %, D 60 µm: 18.6 cm³/m², "Theoretical ink volume", Vth = Ao × D.
  await fillForm(page, { count: 305, open_area: 31, thickness: 60 });
  await page.locator("#volume").getByText("18.6", { exact: true }).waitFor();
  // 12 × 10 in, fully printed: 0.0774192 m² × 18.6 = 1.44 cm³ a print.
  await fillForm(page, { width: 12, height: 10, pieces: 100 });
  await page.locator("#need").getByText("144 g").waitFor();
  await press(page, "#finer summary");
  await fillForm(page, { weighed: 115.2 });
  await page.locator("#real-transfer").getByText("That was 80%.").waitFor();
  await press(page, "#real-transfer button");
  await page.locator("#need").getByText("115 g").waitFor();
});

test("times, lamps and batches survive a reload without a network", async (t) => {
  const page = await screenRoom(t, { expectedErrors: OFFLINE_ERRORS });
  await enterStepGuide(page, { mesh: 156, time: 120, step: 5 });
  await save(page);
  await waitForAnswer(page, "239\u00a0s");
  await go(page, "#/stencil/bath", "#bath-state");
  await charge(page, "Dip, one to four");
  await addBatch(page, 4, 5);
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  await go(page, "#/stencil/bath", "#bath-state");
  await page.context().setOffline(true);
  await page.reload();
  await page.locator("#bath-state").getByText("Need 5 more batches to tell.").waitFor();
  await go(page, "#/stencil/exposure", "#answer");
  await waitForAnswer(page, "239\u00a0s");
  await go(page, "#/stencil/kit", ".stencil-equipment");
  await page.locator(".stencil-row", { hasText: "Harbour blue" }).waitFor();
});
