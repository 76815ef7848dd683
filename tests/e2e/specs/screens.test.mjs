// Screens (frames with mesh): adding them, what to burn, changing state, following their run.
import assert from "node:assert/strict";
import { test } from "node:test";
import { WEDNESDAY } from "../support/clock.mjs";
import { pull } from "../support/counting.mjs";
import { fillForm, go, press, save, waitUntil } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks, startCounting } from "../support/shop.mjs";

const app = testServer();

const home = (page) => go(page, "#/screens", ".screen-row, .empty");
const group = (page, state) => page.locator(`.screen-group[data-state=${state}]`);
const labels = (page, state) => group(page, state).locator(".screen-label").allInnerTexts();
const waitForScreens = (page, state, count) =>
  page.waitForFunction(
    ([state, count]) => document.querySelectorAll(`.screen-group[data-state=${state}] .screen-row`).length === count,
    [state, count],
  );
const undo = (page) => press(page, ".notice-undo");
const openScreen = async (page, label) => {
  await home(page);
  await press(page, page.locator(".screen-row").filter({ has: page.getByText(label, { exact: true }) }));
  await page.locator("#state").waitFor();
};
const waitForState = (page, state) => page.locator(`#state[data-state=${state}]`).waitFor();

/** Adds screens, all in one state. */
async function addScreens(page, fields, state = "Clean") {
  await go(page, "#/screens/new", "#label");
  await fillForm(page, fields);
  await press(page, page.locator(".choice-option").filter({ hasText: state }).locator("input"));
  await save(page);
  await page.locator(".screen-row").first().waitFor();
}

/** Ends the run on screen, complete or not. */
async function endRun(page) {
  await press(page, (await page.locator("#end").count()) ? "#end" : "#stop");
  await press(page, "#end-anyway");
  await page.locator("#ended-good").waitFor();
}

test("an empty screen list is filled with a range of labels", async (t) => {
  const page = await openShop(t, app);
  await home(page);
  await press(page, ".empty .button");
  await page.locator("#label").fill("A1–A6, 12");
  assert.match(await page.locator("#adds").innerText(), /7 screens: A1, A2, A3, A4, A5, A6, 12/);
  await fillForm(page, { count: 156, tension: 22.5, emulsion: "Harbour blue" });
  await save(page);
  await waitForScreens(page, "Clean", 7);
  await page.getByText("7 screens added.").waitFor();
  assert.deepEqual(await labels(page, "Clean"), ["12", "A1", "A2", "A3", "A4", "A5", "A6"]);
  await openScreen(page, "A4");
  await page.getByText("156 mesh").waitFor();
  await page.getByText("22.5 N/cm").waitFor();
  assert.match(await page.locator("#volume").innerText(), /open area or mesh opening/);

  await go(page, "#/screens/new", "#label");
  await page.locator("#label").fill("A6-A8");
  await page.getByText("Already on the list: A6").waitFor();
  await save(page);
  await page.locator("#label-help .problem").waitFor();
  await page.locator("#label").fill("1-99");
  await page.locator("#label-help").getByText("At most 60.").waitFor();
  await page.locator("#label").fill("A7, A8");
  await save(page);
  await waitForScreens(page, "Clean", 9);
});

test("a mesh's data sheet is copied from another screen of that mesh", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/screens/new", "#label");
  await fillForm(page, { label: "1", count: 156 });
  await press(page, page.locator("summary").filter({ hasText: "Data sheet" }));
  await fillForm(page, { open_area: 34, thickness: 100 });
  await save(page);
  await page.locator(".screen-row").waitFor();
  await go(page, "#/screens/new", "#label");
  await fillForm(page, { label: "2", count: 156 });
  await press(page, "#take-sheet");
  assert.equal(await page.locator("#thickness").inputValue(), "100");
  await save(page);
  await waitForScreens(page, "Clean", 2);
  await openScreen(page, "2");
  // 34 % of 100 µm.
  assert.match(await page.locator("#volume").innerText(), /^34\s*cm³\/m²/);
});

test("selected screens change state together, with one undo", async (t) => {
  const page = await openDemo(t, app);
  await home(page);
  const before = await labels(page, "Coated");
  const ages = () => group(page, "Coated").locator(".screen-row").allInnerTexts();
  const agesBefore = await ages();
  await press(page, "#select");
  await press(page, group(page, "Coated").locator(".screen-group-head .button"));
  await page.locator("#select-bar").getByText(`${before.length} selected`).waitFor();
  // One of them is deselected.
  await press(page, group(page, "Coated").locator("input").nth(2));
  await page.locator("#select-bar").getByText(`${before.length - 1} selected`).waitFor();
  await press(page, "#select-bar [data-to=ToReclaim]");
  await waitForScreens(page, "Coated", 1);
  assert.ok((await labels(page, "ToReclaim")).includes(before[0]));
  assert.equal(await page.locator("#select-bar").count(), 0);
  await undo(page);
  await waitForScreens(page, "Coated", before.length);
  assert.deepEqual(await ages(), agesBefore, "as old as they were, the warning with them");

  // A clean and a coated screen have only one next state in common.
  await press(page, "#select");
  await press(page, group(page, "Clean").locator("input").first());
  await press(page, group(page, "Coated").locator("input").first());
  await page.locator("#select-bar [data-to=Failed]").waitFor();
  assert.equal(await page.locator("#select-bar [data-to]").count(), 1);
});

test("the board filters by state, age and search text", async (t) => {
  const page = await openDemo(t, app);
  await home(page);
  const chip = (text) => press(page, page.locator(".screen-chips .choice-option").filter({ hasText: text }).locator("input"));
  await chip("Past limit");
  await page.waitForFunction(() => document.querySelectorAll(".screen-row").length === 1);
  await page.locator(".screen-row .badge").getByText("Past limit: 15 days").waitFor();
  await chip("Ready");
  await page.waitForFunction(() => document.querySelectorAll(".screen-group").length === 1);
  await chip("All");
  await page.locator("#search").fill("jerseys");
  await waitForScreens(page, "Ready", 2);
  assert.equal(await page.locator(".screen-row").count(), 2);
  await page.locator("#search").fill("zzz");
  await page.getByText("No matching screens.").waitFor();
});

test("screens to burn are scheduled back from their run and ticked off", async (t) => {
  const page = await openShop(t, app, { now: WEDNESDAY });
  await go(page, "#/screens/room", "#coat");
  await fillForm(page, { coat: 10, dry: 60, expose: 5, wash_dry: 40, tape: 5 });
  await save(page);
  await page.getByText("Saved.").waitFor();
  await newJob(page);
  await addGarments(page);
  await addRun(page, { screens: "B1, B2" });
  await addScreens(page, { label: "B1, C1" });
  await page.locator("#needs").getByText("B2: not on the list").waitFor();
  await press(page, page.locator("#needs .button").filter({ hasText: "Add to the list" }));
  await page.locator("#label").waitFor();
  assert.equal(await page.locator("#label").inputValue(), "B2");
  await save(page);
  await waitForScreens(page, "Clean", 3);

  const steps = page.locator("#needs .screen-step");
  assert.equal(await steps.count(), 5);
  const late = page.locator("#needs .screen-when.late");
  // Two screens by hand: 20 to coat, 60 to dry, 10 to expose, 40 to wash out and dry, 10 to tape.
  await late.filter({ hasText: /2\sh\s20\smin late/ }).waitFor();
  assert.equal(await page.locator("#needs .screen-step .button").count(), 1, "nothing is exposed before it is coated");
  const tick = (step) => press(page, `#needs [data-step=${step}] .button`);
  await tick("Coat");
  await waitForScreens(page, "Coated", 2);
  await late.filter({ hasText: /2\sh late/ }).waitFor();
  await undo(page);
  await late.filter({ hasText: /2\sh\s20\smin late/ }).waitFor();
  await tick("Coat");
  for (const step of ["Dry", "Expose", "WashDry"]) await tick(step);
  await late.filter({ hasText: /10\smin late/ }).waitFor();
  await tick("Tape");
  await page.locator("#needs-none").waitFor();
  assert.deepEqual(await labels(page, "Ready"), ["B1", "B2"]);
  await group(page, "Ready").getByText("Tour tees").first().waitFor();
});

test("screens follow their run onto the press and off it", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page, { "size-s": 2, "size-m": 0, "size-l": 0 });
  await addRun(page, { screens: "7" });
  await addScreens(page, { label: "7" }, "Coated");
  await go(page, "#/jobs", ".job-row");
  await press(page, ".job-row");
  await openChecks(page);
  await page.locator("[data-item=Screens]").getByText("Not ready: 7").waitFor();
  await press(page, "[data-item=Screens] a.badge");
  await page.locator("#needs").waitFor();
  await page.goBack();
  await page.locator("#start").waitFor();
  await startCounting(page);
  await openScreen(page, "7");
  await waitForState(page, "OnPress");
  await page.locator(".screen-carries").getByText("Tour tees").waitFor();

  await go(page, "#/press", "#zone");
  await pull(page, 1);
  await endRun(page);
  await page.locator("#ended-screens").getByText("Screens 7 kept ready").waitFor();
  await press(page, "#ended-screens .button");
  await page.locator("#ended-screens").getByText("Screens 7: to reclaim").waitFor();
  await press(page, "#again");
  await page.locator("#zone").waitFor();
  await openScreen(page, "7");
  await waitForState(page, "OnPress");

  await go(page, "#/press", "#zone");
  await pull(page, 1);
  await press(page, "#end");
  await page.locator("#ended-screens").getByText("Screens 7: to reclaim").waitFor();
});

test("a screen's card changes its state, with undo, also of deletion", async (t) => {
  const page = await openShop(t, app);
  await addScreens(page, { label: "A1" });
  await openScreen(page, "A1");
  await page.locator(".screen-moves [data-to=Coated]").getByText("Mark coated").waitFor();
  await press(page, ".screen-moves [data-to=Coated]");
  await waitForState(page, "Coated");
  await press(page, "#dry");
  await page.locator(".screen-way li.done").nth(1).waitFor();
  await press(page, ".screen-moves [data-to=Exposed]");
  await waitForState(page, "Exposed");
  await press(page, "#take-back");
  await waitForState(page, "Coated");
  assert.equal(await page.locator("#dry").count(), 0, "dry as it was");
  await press(page, "summary");
  await press(page, ".screen-fold [data-to=OnPress]");
  await waitForState(page, "OnPress");
  await press(page, ".head-aside a");
  await fillForm(page, { label: "A9", tension: "tight" });
  await save(page);
  await page.locator("#tension-help .problem").waitFor();
  await fillForm(page, { tension: 21 });
  await save(page);
  await page.locator("#state").waitFor();
  assert.equal(await page.locator("#heading").innerText(), "A9");
  await press(page, "#delete");
  await page.locator(".empty").waitFor();
  await undo(page);
  await page.locator(".screen-row").filter({ hasText: "A9" }).waitFor();
});

test("screens survive a reload without a network", async (t) => {
  const page = await openShop(t, app);
  await addScreens(page, { label: "1-3" }, "Ready");
  await page.evaluate(() => navigator.serviceWorker.ready);
  await waitUntil(page, async () => (await caches.keys()).length > 0);
  await go(page, "#/more/about", "#facts");
  await page.getByText("works offline").waitFor();
  await page.context().setOffline(true);
  await go(page, "#/screens", ".screen-row");
  await page.reload();
  await waitForScreens(page, "Ready", 3);
  await openScreen(page, "2");
  await press(page, ".screen-moves [data-to=ToReclaim]");
  await waitForState(page, "ToReclaim");
  await page.reload();
  await waitForState(page, "ToReclaim");
});

test("the amber theme shows no blue on the screens pages", async (t) => {
  const page = await openDemo(t, app, { settings: { theme: "amber" } });
  await home(page);
  const blue = async () => {
    await page.evaluate(() => Promise.all(document.getAnimations().map((animation) => animation.finished.catch(() => {}))));
    const picture = (await page.screenshot()).toString("base64");
    return page.evaluate(async (picture) => {
      const image = new Image();
      image.src = `data:image/png;base64,${picture}`;
      await image.decode();
      const canvas = new OffscreenCanvas(image.width, image.height).getContext("2d");
      canvas.drawImage(image, 0, 0);
      const { data } = canvas.getImageData(0, 0, image.width, image.height);
      let [most, lit] = [0, 0];
      for (let at = 0; at < data.length; at += 4) {
        lit += data[at] > 100;
        most = Math.max(most, data[at + 2]);
      }
      return { most, lit };
    }, picture);
  };
  const board = await blue();
  assert.ok(board.lit > 1000, "something is shown");
  assert.equal(board.most, 0);
  await openScreen(page, "14");
  assert.equal((await blue()).most, 0, "garments and inks in their colours");
});

test("a screen of another mesh is named in the form and before counting", async (t) => {
  const page = await openShop(t, app);
  await addScreens(page, { label: "2", count: 156 });
  await newJob(page);
  await addGarments(page);
  await fillForm(page, { screens: "2", mesh: "110" });
  await page.locator("#other-mesh").getByText("Screen 2 is listed as 156").waitFor();
  await addRun(page);
  await openChecks(page);
  await page.locator("[data-item=Mesh] #other-mesh").getByText("Screen 2 is listed as 156").waitFor();
});

test("the day and the press name the screens waited for, each frame once", async (t) => {
  const page = await openShop(t, app, { now: WEDNESDAY });
  await addScreens(page, { label: "1" });
  for (const title of ["Tour tees", "Tone on tone"]) {
    await newJob(page, { title });
    await addGarments(page);
    await addRun(page, { screens: "1", guess: 30 });
  }
  await go(page, "#/", ".run-block");
  await page.locator(".waits").first().getByText("Waiting for screens 1 until").waitFor();
  await go(page, "#/press", ".press-pick .job-row");
  await page.locator(".press-pick .waits").first().getByText("Waiting for screens 1 until").waitFor();
  await go(page, "#/screens", ".screen-need");
  assert.equal(await page.locator(".screen-need").count(), 1);
  await page.locator(".screen-also").getByText("Tone on tone").waitFor();
});
