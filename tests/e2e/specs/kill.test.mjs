// The browser is killed repeatedly while counting: every piece shown as saved is still there.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { chromium } from "playwright-core";
import { DESK, args, executablePath } from "../support/browser.mjs";
import { ZONE, installClock } from "../support/clock.mjs";
import { touchZone, waitForCount, waitUntilSaved, zoneState } from "../support/counting.mjs";
import { press } from "../support/page.mjs";
import { preparePage, testServer } from "../support/setup.mjs";
import { putJobOnPress } from "../support/shop.mjs";

const app = testServer();
const ROUNDS = 24;

/** Starts a browser that keeps its data in `folder`, in its own process group. */
async function start(folder) {
  const port = join(folder, "DevToolsActivePort");
  rmSync(port, { force: true });
  const process = spawn(executablePath, [...args, "--headless", "--remote-debugging-port=0", `--user-data-dir=${folder}`, "about:blank"], { detached: true, stdio: "ignore", env: { ...globalThis.process.env, TZ: ZONE } });
  const ended = new Promise((done) => process.on("exit", done));
  const running = () => process.exitCode === null && process.signalCode === null;
  while (!existsSync(port) || !readFileSync(port, "utf8").includes("\n")) {
    assert.ok(running(), "the browser starts");
    await new Promise((next) => setTimeout(next, 20));
  }
  const [number, path] = readFileSync(port, "utf8").split("\n");
  const browser = await chromium.connectOverCDP(`ws://127.0.0.1:${number}${path}`);
  const kill = async () => {
    if (running()) globalThis.process.kill(-process.pid, "SIGKILL");
    await ended;
    // Remove the killed browser's lock; its data stay as they were.
    for (const lock of ["SingletonLock", "SingletonCookie", "SingletonSocket"]) rmSync(join(folder, lock), { force: true });
  };
  const page = browser.contexts()[0].pages()[0] ?? (await browser.contexts()[0].newPage());
  await installClock(page);
  await page.addInitScript(() => {
    for (const kind of ["pointerdown", "pointerup"]) addEventListener(kind, (event) => { window.lastTouched = event.timeStamp; }, true);
  });
  return { page: preparePage(page, DESK, [/net::ERR/]), kill };
}

test(`no saved piece is lost when the browser is killed ${ROUNDS} times`, async (t) => {
  const folder = mkdtempSync(join(tmpdir(), "lastpull-kill-"));
  let now;
  t.after(async () => {
    await now?.kill();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });
  now = await start(folder);
  await now.page.goto(app.server.url);
  await press(now.page, "#start-shop");
  await putJobOnPress(now.page, { garments: { "size-s": 60, "size-m": 60, "size-l": 60 } });
  const url = now.page.url();

  let acknowledged = 0;
  let inFlight = 0;
  let lost = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    for (let piece = 0; piece <= round % 3; piece += 1) {
      await touchZone(now.page);
      await waitUntilSaved(now.page, acknowledged + 1);
      acknowledged += 1;
    }
    // Every other round the browser is killed during a touch.
    inFlight = 0;
    if (round % 2) {
      inFlight = 1;
      if (round % 4 === 1) await touchZone(now.page);
      else touchZone(now.page).catch(() => {});
    }
    await now.kill();
    assert.deepEqual(now.page.errors, []);
    now = await start(folder);
    await now.page.goto(url);
    await now.page.locator("#zone").waitFor();
    const { good, unsaved } = await zoneState(now.page);
    assert.equal(unsaved, 0);
    assert.ok(good >= acknowledged && good <= acknowledged + inFlight, `round ${round}: ${acknowledged} were saved, ${inFlight} in flight, ${good} are there`);
    lost += acknowledged + inFlight - good;
    acknowledged = good;
  }
  await waitForCount(now.page, acknowledged);
  t.diagnostic(`${acknowledged} pieces over ${ROUNDS} kills; ${lost} touches that were in flight did not make it`);
  assert.deepEqual(now.page.errors, []);
});
