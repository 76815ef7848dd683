// Dryers, and cotton printed before polyester.
import { PHONE } from "./browser.mjs";
import { pull } from "./counting.mjs";
import { fillForm, press, save } from "./page.mjs";
import { openShop } from "./setup.mjs";
import { addRun, newJob, openChecks, putJobOnPress } from "./shop.mjs";

/** Ends the run on the press before all pieces are pulled. */
async function endRun(page) {
  await press(page, "#stop");
  await press(page, "#end-anyway");
  await page.locator("#ended-good").waitFor();
}

/** Ends a timing. If it was too short for a dryer, its time is left out. */
export async function settled(page) {
  await press(page, "#settle-done");
  const leaveOut = page.locator("#settle-leave-out");
  await leaveOut.or(page.locator("[data-item=Dryer] .badge.good")).first().waitFor();
  if (await leaveOut.isVisible()) await press(page, "#settle-leave-out");
}

/** Records a dryer temperature, measured by probe or strip unless `infrared`. */
export async function measureDryer(page, number, { infrared = false } = {}) {
  await press(page, "[data-item=Dryer] [aria-expanded]");
  await page.locator("#measure-Dryer").fill(String(number));
  await press(page, infrared ? "#way-1" : "#way-0");
  await press(page, "[data-item=Dryer] [type=submit]");
  await page.locator("#measure-Dryer").waitFor({ state: "detached" });
  await page.locator("[data-item=Dryer] .badge").first().waitFor();
}

/** Enters a job of polyester; ends on the form of its first run. */
export async function addPolyesterLot(page) {
  await newJob(page, { title: "Crew jerseys" });
  await press(page, ".lots > .button");
  await fillForm(page, { garment: "Sport jersey", "size-m": 6 });
  await press(page, "#fabric-2");
  await save(page);
  await page.locator("#ink").waitFor();
}

/** Enters a job of polyester and opens the checks of its run. */
export async function addPolyesterJob(page, run = {}) {
  await addPolyesterLot(page);
  await addRun(page, { ink: "Jersey white", dryer: 260, ...run });
  await openChecks(page);
}

/** A shop that printed cotton at 340 °F, at the checks of polyester at 260 °F. */
export async function cottonThenPolyester(t, app, { run, before } = {}) {
  const page = await openShop(t, app, { device: PHONE });
  if (before) await before(page);
  await putJobOnPress(page, { run: { ink: "Brick", dryer: 340 } });
  await pull(page, 1);
  await endRun(page);
  await addPolyesterJob(page, run);
  return page;
}
