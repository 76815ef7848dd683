// Cautions: each where the hazard is.
import { test } from "node:test";
import { addComponent } from "../support/ink-helpers.mjs";
import { openStep, reportFailure } from "../support/failure.mjs";
import { fillForm, go, press, save, waitForText } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks, startCounting } from "../support/shop.mjs";

const app = testServer();
const waitForCaution = (page, text, within = "main") => waitForText(page, `${within} .caution`, text);

/** A shop at the checks of a run. */
async function atChecks(t) {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { screens: "A3" });
  await openChecks(page);
  return page;
}

test("the checks warn of the heat, and of where the phone is", async (t) => {
  const page = await atChecks(t);
  await waitForCaution(page, "Never reach into a running dryer");
  await waitForCaution(page, "Prop the phone where you don't reach across");
  await waitForCaution(page, "spray adhesive away from the heat");
  // The first run ever says how it ends early.
  await page.locator("#first-run").getByText("tap Stop, then End short").waitFor();
});

test("a stop and a failure say to clear the flash and the belt", async (t) => {
  const page = await atChecks(t);
  await startCounting(page);
  await press(page, "#stop");
  await waitForCaution(page, "Swing the flash off the platen", "dialog");
  await press(page, "dialog .sheet-head .icon-button");
  await page.locator("dialog").waitFor({ state: "detached" });
  await reportFailure(page);
  await waitForCaution(page, "Swing the flash off the platen");
});

test("each remedy has the caution of what it takes", async (t) => {
  const page = await atChecks(t);
  await startCounting(page);
  await reportFailure(page);
  await press(page, "[data-kind=Ghost]");
  await press(page, ".failure-screen");
  await openStep(page, "remedy");
  await press(page, "[data-remedy=Clean]");
  await waitForCaution(page, "Haze removers are caustic");
  await press(page, "[data-remedy=BlockOut]");
  await waitForCaution(page, "Block-out: gloves and goggles");
  await openStep(page, "kind");
  await press(page, "[data-kind=Spot]");
  await openStep(page, "remedy");
  await press(page, "[data-remedy=Clean]");
  await waitForCaution(page, "Spot remover and screen cleaner");
  await press(page, "[data-remedy=BurnAgain]");
  await page.locator("dialog #label").fill("B1");
  await press(page, "dialog [type=submit]");
  await page.locator("#burning").waitFor();
  for (const text of ["Degreaser, emulsion and sensitizer", "keep eyes and skin out of its light", "Pressure washer: goggles"]) {
    await waitForCaution(page, text, "#burning");
  }
  // A caution goes with its step.
  await press(page, "[data-step=Coat]");
  await page.locator("#burning .caution").filter({ hasText: "Degreaser" }).waitFor({ state: "detached" });
});

test("dryers, flash units and exposure units say what power they need", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/heat/units", ".page.heat");
  await waitForCaution(page, "no extension cords");
  await waitForCaution(page, "Vent fumes");
  await go(page, "#/heat/unit/new", "#name");
  await waitForCaution(page, "no extension cords");
  await go(page, "#/stencil/lamp/new", "#name");
  await waitForCaution(page, "no extension cord");
  await waitForCaution(page, "Unplug the unit");
});

test("the dip tank's cautions come before hands go into it", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/stencil/bath", "#put-in");
  await waitForCaution(page, "Never mix products");
  await waitForCaution(page, "GFCI-protected outlets");
  await press(page, "#put-in");
  await waitForCaution(page, "Before you open the tank", "dialog");
  await fillForm(page, { count: 1 });
  await press(page, "#put-in-now");
  await press(page, ".stencil-batch .button");
  await waitForCaution(page, "Before you open the tank", "dialog");
});

test("a step of a screen has its caution where it is ticked", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { screens: "A3" });
  await go(page, "#/screens/new", "#label");
  await fillForm(page, { label: "A3" });
  await save(page);
  await page.locator("#needs").waitFor();
  await waitForCaution(page, "Degreaser, emulsion and sensitizer", "#needs");
  for (const step of ["Coat", "Dry"]) await press(page, `#needs [data-step=${step}] .button`);
  await waitForCaution(page, "keep eyes and skin out of its light", "#needs");
  await press(page, ".screen-row");
  await page.locator("#state").waitFor();
  await waitForCaution(page, "keep eyes and skin out of its light", ".screen-stand");
});

test("an additive is handled with gloves", async (t) => {
  const page = await openShop(t, app);
  await addComponent(page, "Bonding additive", 2);
  await waitForCaution(page, "Some additives irritate or sensitize");
});

test("signs of heat illness are there without a reading", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/heat/room", "#temperature");
  await press(page, "#room-symptoms summary");
  await page.getByText("call 911 or your emergency number first").waitFor();
});

test("the app says who decides", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/more/about", "#who-decides");
  await page.locator("#who-decides").getByText("Manufacturers' data sheets, local code and licensed people come first").waitFor();
});
