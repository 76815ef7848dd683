// A server and a browser for a test file, devices of their own for each test, and a shop on them.
import assert from "node:assert/strict";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { fileURLToPath } from "node:url";
import { serve } from "../../../src/build/serve.mjs";
import { PHONE, launch, launchEngine } from "./browser.mjs";
import { ZONE, installClock } from "./clock.mjs";
import { collectErrors, reportPolicyViolations } from "./console-errors.mjs";
import { press } from "./page.mjs";

/** Folder of the built app under test. */
export const DIST = process.env.LASTPULL_DIST ?? fileURLToPath(new URL("../../../dist", import.meta.url));

/** Default timeout in milliseconds, for slow shared cores. */
const TIMEOUT = 15_000;

/** Starts a server, and the engine or the whole browser, for all tests of a file: `{ server, browser }`. */
export function testServer({ whole = false } = {}) {
  const app = {};
  before(async () => {
    app.server = await serve(DIST);
    app.browser = await (whole ? launch() : launchEngine());
  });
  after(async () => {
    await app.browser?.close();
    await app.server?.close();
  });
  return app;
}

/** A server for one test, with a copy of the app that the test may change: `{ app, server, folder }`. */
export async function ownServer(t, { browser }, base) {
  const folder = mkdtempSync(join(tmpdir(), "lastpull-host-"));
  cpSync(DIST, folder, { recursive: true });
  const server = await serve(folder, 0, base);
  t.after(async () => {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return { app: { server, browser }, server, folder };
}

/** Sets up a page: taps or clicks by device, collected errors, timeout. */
export function preparePage(page, device, expectedErrors) {
  page.pressMethod = device.hasTouch ? "tap" : "click";
  page.errors = collectErrors(page, expectedErrors);
  page.setDefaultTimeout(TIMEOUT);
  return page;
}

/** Runs in the page before the app does: records when the last touch was, because the app ignores bounces. */
function recordTouches() {
  const record = (event) => { window.lastTouched = event.timeStamp; };
  for (const kind of ["pointerdown", "pointerup", "pointercancel"]) addEventListener(kind, record, true);
}

/**
 * A browser context with nothing stored; `tab()` opens a page in it. It is closed after the test, which fails if
 * there were errors in its pages.
 *
 * `now` is the local date and time at which its clock starts, `settings` the device settings, `initScript` a function or
 * text that runs in each page before the app does, `scripts` texts that it gets instead of the app's own by address.
 */
export async function newDevice(t, { browser }, { device = PHONE, expectedErrors = [], settings, initScript, scripts = {}, now, ...options } = {}) {
  const context = await browser.newContext({ ...device, timezoneId: ZONE, ...options });
  await installClock(context, now);
  await context.addInitScript(recordTouches);
  await context.addInitScript(reportPolicyViolations);
  if (settings) {
    await context.addInitScript((settings) => {
      localStorage.getItem("lastpull.device") ?? localStorage.setItem("lastpull.device", JSON.stringify(settings));
    }, settings);
  }
  if (initScript) await context.addInitScript(initScript);
  for (const [address, body] of Object.entries(scripts)) await context.route(address, (route) => route.fulfill({ contentType: "text/javascript", body }));
  context.tab = async () => preparePage(await context.newPage(), device, expectedErrors);
  t.after(async () => {
    const errors = context.pages().flatMap((page) => page.errors ?? []);
    await context.close();
    assert.deepEqual(errors, [], "no errors inside the page");
  });
  return context;
}

/** The welcome page on a new device. */
export async function openFirst(t, app, options = {}) {
  const context = await newDevice(t, app, options);
  const page = await context.tab();
  await page.goto(app.server.url);
  await page.locator("#start-shop").waitFor();
  return page;
}

/** An empty shop on a new device. */
export async function openShop(t, app, options = {}) {
  const page = await openFirst(t, app, options);
  await press(page, "#start-shop");
  await page.locator(".page.day").waitFor();
  return page;
}

/** The demo shop on a new device. */
export async function openDemo(t, app, options = {}) {
  const page = await openFirst(t, app, options);
  await press(page, "#open-demo");
  await page.locator("#verdict").waitFor();
  return page;
}
