// What people do in the shop, in the shop's words: open it, enter a job with its garments and runs.
import assert from "node:assert/strict";
import { after, before } from "node:test";
import { fileURLToPath } from "node:url";
import { DESK, PHONE, launch } from "./browser.mjs";
import { ZONE, day, installClock } from "./clock.mjs";
import { serve } from "../../../src/build/serve.mjs";

export { DESK, PHONE, day };

/** The built app under test. */
export const DIST = process.env.LASTPULL_DIST ?? fileURLToPath(new URL("../../../dist", import.meta.url));

/** How long anything may take before it counts as not coming, on slow shared cores. */
const PATIENCE = 15_000;

/** A browser and a server for the tests of one file. */
export function premises({ folder = DIST, base = "/" } = {}) {
  const place = {};
  before(async () => {
    place.server = await serve(folder, 0, base);
    place.browser = await launch();
  });
  after(async () => {
    await place.browser?.close();
    await place.server?.close();
  });
  return place;
}

/** Everything that goes wrong inside a page: errors, refusals by the security policy, rejections. */
export function watch(page, expected = []) {
  const wrong = [];
  const note = (words) => expected.some((pattern) => pattern.test(words)) || wrong.push(words);
  page.on("console", (message) => message.type() === "error" && note(`${message.text()} ${message.location().url}`));
  page.on("pageerror", (error) => note(`${error.name}: ${error.message}`));
  return wrong;
}

/** Gives a page its hand: fingers on a phone, a mouse on a desk. */
export function outfit(page, device, expected) {
  page.hand = device.hasTouch ? "tap" : "click";
  page.wrong = watch(page, expected);
  page.setDefaultTimeout(PATIENCE);
  return page;
}

/** A device of its own, with nothing stored. It is put away after the test, and tells what went wrong in it. */
export async function newDevice(t, { browser }, { device = PHONE, expected = [], settings, before, now, ...options } = {}) {
  const context = await browser.newContext({ ...device, timezoneId: ZONE, ...options });
  await installClock(context, now);
  await context.addInitScript(() => {
    const note = (event) => { window.lastTouched = event.timeStamp; };
    for (const kind of ["pointerdown", "pointerup", "pointercancel"]) addEventListener(kind, note, true);
    addEventListener("securitypolicyviolation", (event) => console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`));
  });
  if (settings) {
    await context.addInitScript((device) => {
      localStorage.getItem("lastpull.device") ?? localStorage.setItem("lastpull.device", JSON.stringify(device));
    }, settings);
  }
  if (before) await context.addInitScript(before);
  context.tab = async () => outfit(await context.newPage(), device, expected);
  t.after(async () => {
    const wrong = context.pages().flatMap((page) => page.wrong ?? []);
    await context.close();
    assert.deepEqual(wrong, [], "nothing goes wrong inside the page");
  });
  return context;
}

/** The first screen of a new device. */
export async function openFirst(t, place, options = {}) {
  const context = await newDevice(t, place, options);
  const page = await context.tab();
  await page.goto(place.server.url);
  await page.locator("#start-shop").waitFor();
  return page;
}

/** A clean shop on a new device. */
export async function openShop(t, place, options = {}) {
  const page = await openFirst(t, place, options);
  await press(page, "#start-shop");
  await page.locator(".page.day").waitFor();
  return page;
}

/** The demo shop on a new device. */
export async function openDemo(t, place, options = {}) {
  const page = await openFirst(t, place, options);
  await press(page, "#open-demo");
  await page.locator("#verdict").waitFor();
  return page;
}

/** Touches or clicks one thing. */
export function press(page, what) {
  return (typeof what === "string" ? page.locator(what) : what)[page.hand]();
}

/** Goes to a place by its hash. */
export async function go(page, hash, wait) {
  await page.evaluate((hash) => { location.hash = hash; }, hash);
  if (wait) await page.locator(wait).first().waitFor();
}

/** Writes into a form, field by field. */
export async function write(page, fields) {
  for (const [id, text] of Object.entries(fields)) {
    const field = page.locator(`#${id}`);
    if (typeof text === "boolean") {
      if ((await field.isChecked()) !== text) await press(page, `label[for="${id}"]`);
    } else {
      await field.fill(String(text));
    }
  }
}

/** Presses save at the foot of a form. */
export const save = (page) => press(page, ".save-bar [type=submit]");

/** A new job; leaves off on its card. */
export async function newJob(page, fields = {}) {
  await go(page, "#/job/new", "#client");
  await write(page, { client: "Harbour Night Choir", title: "Tour tees", due_day: day(), ...fields });
  await save(page);
  await page.locator(".page.job").waitFor();
}

/** Garments of the job on screen; leaves off on the form of their first run. */
export async function addGarments(page, fields = {}) {
  await press(page, ".lots > .button");
  await write(page, { garment: "Midweight tee", "size-s": 12, "size-m": 12, "size-l": 12, ...fields });
  await save(page);
  await page.locator("#ink").waitFor();
}

/** The run whose form is on screen; leaves off on the job's card. */
export async function addRun(page, fields = {}) {
  await write(page, { ink: "Brick", ...fields });
  await save(page);
  await page.locator(".run-row").first().waitFor();
}

/** The checks of the job's first run. */
export async function toChecks(page) {
  await press(page, page.locator(".run-row-link").first());
  await page.locator("#start").waitFor();
}

/** Starts the count with every check left open. */
export async function startCounting(page) {
  await press(page, "#start");
  await press(page, "#start-anyway");
  await page.locator("#zone").waitFor();
}

/** A shop with one run on the press, nothing counted. */
export async function openCounting(t, place, options = {}) {
  const page = await openShop(t, place, options);
  await jobOnPress(page, options);
  return page;
}

/** Enters a job and puts its run on the press. */
export async function jobOnPress(page, { job, garments, run } = {}) {
  await newJob(page, job);
  await addGarments(page, garments);
  await addRun(page, run);
  await toChecks(page);
  await startCounting(page);
}
