// Two copies of the app below one origin, as on a host with one address for several pages.
import assert from "node:assert/strict";
import { cpSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { serve } from "../../../src/build/serve.mjs";
import { OFFLINE_ERRORS } from "../support/console-errors.mjs";
import { pull, waitForCount } from "../support/counting.mjs";
import { go, press } from "../support/page.mjs";
import { DIST, newDevice, testServer } from "../support/setup.mjs";
import { putJobOnPress } from "../support/shop.mjs";

const shared = testServer({ whole: true });

/** A host with a copy of the app at each of these paths. */
async function hostWith(t, paths) {
  const folder = mkdtempSync(join(tmpdir(), "lastpull-host-"));
  for (const path of paths) {
    mkdirSync(join(folder, path), { recursive: true });
    cpSync(DIST, join(folder, path), { recursive: true });
  }
  const server = await serve(folder, 0, "/");
  t.after(async () => {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return server;
}

async function startShop(context, url) {
  const page = await context.tab();
  await page.goto(url);
  await press(page, "#start-shop");
  await page.locator(".page.day").waitFor();
  return page;
}

const waitUntilCached = (page) => go(page, "#/more/about", "#offline-ready[data-ready=true]");

test("two copies below one origin keep shops and offline copies of their own", async (t) => {
  const server = await hostWith(t, ["shop", "try"]);
  const context = await newDevice(t, shared, { expectedErrors: OFFLINE_ERRORS });
  const one = await startShop(context, `${server.url}shop/`);
  await putJobOnPress(one);
  await pull(one, 2);
  const run = one.url();
  await waitUntilCached(one);

  const two = await context.tab();
  await two.goto(`${server.url}try/`);
  await two.locator("#other-copy").getByText("/shop/").waitFor();
  await press(two, "#start-shop");
  await putJobOnPress(two);
  await pull(two, 5);
  await waitUntilCached(two);
  const names = await two.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name));
  assert.deepEqual(names.sort(), ["lastpull", "lastpull:/try/"]);

  await server.close();
  await one.goto(run);
  await one.reload();
  await waitForCount(one, 2);
  await two.reload();
  await two.locator(".page.about").waitFor();
  await go(two, "#/press", "#zone");
  await waitForCount(two, 5);
});

test("erasing one copy leaves the other's shop and settings", async (t) => {
  const server = await hostWith(t, ["shop", "try"]);
  const context = await newDevice(t, shared);
  const one = await startShop(context, `${server.url}shop/`);
  await putJobOnPress(one);
  await pull(one, 2);
  const run = one.url();
  const two = await startShop(context, `${server.url}try/`);
  await go(two, "#/more/about", "#erase");
  await press(two, "#erase");
  await press(two, "#erase-yes");
  await two.locator("#start-shop").waitFor();
  await one.goto(run);
  await one.reload();
  await waitForCount(one, 2);
});

test("a shop of the time before copies had names of their own is found", async (t) => {
  const server = await hostWith(t, ["shop"]);
  const context = await newDevice(t, shared);
  const page = await startShop(context, `${server.url}shop/`);
  await putJobOnPress(page);
  await pull(page, 3);
  // What an earlier version left: the plain names, and no note about whose they are.
  await page.evaluate(() => localStorage.removeItem("lastpull.home"));
  await page.reload();
  await waitForCount(page, 3);
});
