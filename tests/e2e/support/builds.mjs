// Builds of the app on a host: stored for offline use, and replaced by a later one. The server is one of `ownServer`.
import assert from "node:assert/strict";
import { readFileSync, readdirSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pull } from "./counting.mjs";
import { go, hashOf, waitUntil } from "./page.mjs";
import { openShop, ownServer } from "./setup.mjs";
import { putJobOnPress } from "./shop.mjs";

/** Waits until the app is cached, and returns to the current page. */
export async function waitUntilCached(page) {
  const hash = await hashOf(page);
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  await go(page, hash);
}

/** Puts a later build on the host: its files in another folder, another worker, and the new page or still the old one. */
export function replaceBuild(folder, { page = true } = {}) {
  const old = readdirSync(folder).find((name) => name.startsWith("app-"));
  const next = "app-0123456789abcdef";
  renameSync(join(folder, old), join(folder, next));
  const worker = join(folder, "sw.js");
  writeFileSync(worker, readFileSync(worker, "utf8").replaceAll(old, next).replaceAll(/lastpull-[0-9a-f]{16}/g, "lastpull-fedcba9876543210"));
  const index = join(folder, "index.html");
  const fresh = readFileSync(index, "utf8").replaceAll(old, next);
  if (page) writeFileSync(index, fresh);
  return { next, putPage: () => writeFileSync(index, fresh) };
}

/** Waits until the service worker knows that a run is on the press. */
export const waitUntilHeld = (page) => waitUntil(page, async () => Boolean(await caches.match(`${new URL("./", location.href).href}?held`)));

/** Address of the build that the page runs. */
export const folderOf = (page) => page.evaluate(() => lastpullFolder);

/** Makes the browser look for a new worker, and waits until it has refused or installed it. */
export const lookForUpdate = (page) => page.evaluate(async () => {
  const registration = await navigator.serviceWorker.ready;
  const found = new Promise((done) => registration.addEventListener("updatefound", () => {
    const worker = registration.installing;
    worker.addEventListener("statechange", () => ["installed", "redundant"].includes(worker.state) && done(worker.state));
  }));
  registration.update().catch(() => {});
  return found;
});

/** A run with two pieces on the press, and a newer build that is installed: the page, its server, and the folders of both builds. */
export async function newerBuildDuringRun(t, shared, options = {}) {
  const { app, server, folder } = await ownServer(t, shared, "/shop/");
  const page = await openShop(t, app, { ...options, expectedErrors: [/./] });
  await putJobOnPress(page);
  await pull(page, 2);
  await waitUntilCached(page);
  const old = await folderOf(page);
  await waitUntilHeld(page);
  const { next } = replaceBuild(folder);
  assert.equal(await lookForUpdate(page), "installed");
  return { page, server, old, next };
}
