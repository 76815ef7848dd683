// A browser with a profile on the disk that can be killed at any moment and started again.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { DESK, args, executablePath } from "./browser.mjs";
import { ZONE, installClock } from "./clock.mjs";
import { preparePage } from "./setup.mjs";

/**
 * Runs in the page before the app does: when the last touch was, and on the console the stores that it writes to and the
 * steps that its worker of long work takes.
 */
function report() {
  for (const kind of ["pointerdown", "pointerup"]) addEventListener(kind, (event) => { window.lastTouched = event.timeStamp; }, true);
  for (const method of ["put", "clear", "delete"]) {
    const original = IDBObjectStore.prototype[method];
    IDBObjectStore.prototype[method] = function (...all) {
      console.debug(`${method} ${this.name}`);
      return original.apply(this, all);
    };
  }
  window.Worker = class extends Worker {
    constructor(...all) {
      super(...all);
      this.addEventListener("message", ({ data }) => { if (data?.progress) console.debug(`step ${data.progress[0]}`); });
    }
  };
}

/** A folder for a browser's data, removed after the test; a copy of another one if that is given. */
export function profile(t, copyOf) {
  const folder = mkdtempSync(join(tmpdir(), "lastpull-kill-"));
  if (copyOf) cpSync(copyOf, folder, { recursive: true, filter: (path) => !/Singleton|DevToolsActivePort/.test(path) });
  t.after(() => discard(folder));
  return folder;
}

/** Removes a folder before the end of the test: a thousand kills would fill the disk. */
export function discard(folder) {
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}

/** Starts a browser that keeps its data in `folder`, in a process group of its own: `{ page, folder, kill, wrote }`. */
export async function startKillable(folder) {
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
  await page.addInitScript(report);
  /** Resolves when the page writes to this object store next, or its worker takes the step of this number. */
  const wrote = (store) => page.waitForEvent("console", (message) => message.type() === "debug" && message.text().endsWith(` ${store}`));
  return { page: preparePage(page, DESK, [/net::ERR/]), folder, kill, wrote };
}
