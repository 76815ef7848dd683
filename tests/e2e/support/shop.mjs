// Entering a job with garments and runs, up to the count on the press.
import { day } from "./clock.mjs";
import { fillForm, go, press, save } from "./page.mjs";
import { openShop } from "./setup.mjs";

/** Enters a job; ends on its card. */
export async function newJob(page, fields = {}) {
  await go(page, "#/job/new", "#client");
  await fillForm(page, { client: "Harbour Night Choir", title: "Tour tees", due_day: day(), ...fields });
  await save(page);
  await page.locator(".page.job").waitFor();
}

/** Adds garments to the job on screen; ends on the form of their first run. */
export async function addGarments(page, fields = {}) {
  await press(page, ".lots > .button");
  await fillForm(page, { garment: "Midweight tee", "size-s": 12, "size-m": 12, "size-l": 12, ...fields });
  await save(page);
  await page.locator("#ink").waitFor();
}

/** Fills in and saves the run form on screen; ends on the job's card. */
export async function addRun(page, fields = {}) {
  await fillForm(page, { ink: "Brick", ...fields });
  await save(page);
  await page.locator(".run-row").first().waitFor();
}

/** Opens the checks of the job's first run. */
export async function openChecks(page) {
  await press(page, page.locator(".run-row-link").first());
  await page.locator("#start").waitFor();
}

/** Starts the run with every check skipped. */
export async function startCounting(page) {
  await press(page, "#start");
  await press(page, "#start-anyway");
  await page.locator("#zone").waitFor();
}

/** A new shop with one run on the press, nothing counted. */
export async function openCounting(t, app, options = {}) {
  const page = await openShop(t, app, options);
  await putJobOnPress(page, options);
  return page;
}

/** Enters a job and starts its run. */
export async function putJobOnPress(page, { job, garments, run } = {}) {
  await newJob(page, job);
  await addGarments(page, garments);
  await addRun(page, run);
  await openChecks(page);
  await startCounting(page);
}
