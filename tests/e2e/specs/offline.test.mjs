// Service worker: the app opens and counts without a network; a new build waits until no run is on the press.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { waitUntilCached } from "../support/builds.mjs";
import { OFFLINE_ERRORS } from "../support/console-errors.mjs";
import { pull, waitForCount } from "../support/counting.mjs";
import { press, waitUntil } from "../support/page.mjs";
import { openShop, ownServer, testServer } from "../support/setup.mjs";
import { putJobOnPress } from "../support/shop.mjs";

const shared = testServer({ whole: true });

for (const base of ["/", "/some/path/"]) {
  test(`below ${base} the app opens offline during a run and counts on`, async (t) => {
    const { app, server } = await ownServer(t, shared, base);
    const page = await openShop(t, app, { expectedErrors: OFFLINE_ERRORS });
    await putJobOnPress(page);
    await pull(page, 3);
    await waitUntilCached(page);
    await server.close();

    await page.reload();
    await waitForCount(page, 3);
    await pull(page, 2);
    await waitForCount(page, 5);
    await page.reload();
    await waitForCount(page, 5);
    await pull(page, 1);
    await waitUntilCached(page);
    // Also from the plain URL, as from the home screen, in another tab.
    const again = await page.context().tab();
    await again.goto(server.url);
    await again.locator("#verdict").waitFor();
    await again.getByText("6 of 36").waitFor();
    const foreign = await page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name).filter((name) => !name.startsWith(location.origin)));
    assert.deepEqual(foreign, [], "nothing is asked of another host");
  });
}

/** Replaces the served build with a new one; returns the old cache name. */
function replaceBuild(folder) {
  const page = join(folder, "index.html");
  writeFileSync(page, readFileSync(page, "utf8").replace("</title>", "</title><!-- a later build -->"));
  const worker = join(folder, "sw.js");
  const text = readFileSync(worker, "utf8");
  const [name] = text.match(/lastpull-[0-9a-f]{16}/);
  writeFileSync(worker, text.replaceAll(name, "lastpull-later"));
  return name;
}

/** Names of the stored builds, without the path below which the app is. */
const cacheNames = (page) => page.evaluate(async () => (await caches.keys()).map((name) => name.split(":").at(-1)).filter((name) => name !== "state"));
const isNewBuild = (page) => page.evaluate(() => document.head.innerHTML.includes("a later build"));

test("a new build waits for the run to end and for a person to load it", async (t) => {
  const { app, folder } = await ownServer(t, shared, "/some/path/");
  const page = await openShop(t, app);
  await putJobOnPress(page);
  await pull(page, 2);
  await waitUntilCached(page);
  const old = replaceBuild(folder);
  assert.deepEqual(await cacheNames(page), [old]);

  await page.reload();
  const banner = page.locator("#update-banner");
  await banner.getByText("can load when no run is on press").waitFor();
  assert.equal(await banner.locator("button").count(), 0, "nothing to press while the run is on");
  await waitForCount(page, 2);
  await pull(page, 1);
  await page.reload();
  await banner.waitFor();
  assert.equal(await isNewBuild(page), false, "a reload during the run stays with the old build");
  await waitForCount(page, 3);
  await press(page, "#stop");
  await press(page, "#end-anyway");
  await banner.locator("button").waitFor();
  assert.equal(await isNewBuild(page), false, "and nothing changes by itself");

  const loaded = page.waitForEvent("load");
  await press(page, banner.locator("button"));
  await loaded;
  await page.locator("#ended-good").waitFor();
  assert.equal(await isNewBuild(page), true);
  await waitUntil(page, async () => JSON.stringify(await caches.keys()) === JSON.stringify(["lastpull:/some/path/:state", "lastpull:/some/path/:lastpull-later"]));
  assert.equal(await page.locator("#ended-good").innerText(), "3 of 36");
  assert.equal(await banner.count(), 0);
});

test("an incomplete new build is ignored and the old one stays", async (t) => {
  const { app, folder } = await ownServer(t, shared, "/some/path/");
  const page = await openShop(t, app, { expectedErrors: [/404/, /Failed to (update|load)/] });
  await waitUntilCached(page);
  const old = replaceBuild(folder);
  const worker = join(folder, "sw.js");
  writeFileSync(worker, readFileSync(worker, "utf8").replace('"./manifest', '"./is-not-there.css", "./manifest'));
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    const gone = new Promise((done) => registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker.addEventListener("statechange", () => worker.state === "redundant" && done());
    }));
    registration.update().catch(() => {});
    await gone;
  });
  await page.reload();
  await page.locator(".page.day").waitFor();
  assert.equal(await isNewBuild(page), false);
  assert.ok((await cacheNames(page)).includes(old));
  assert.equal(await page.locator("#update-banner").count(), 0);
});
