// The app comes in parts: the press first, the rest behind it.
import assert from "node:assert/strict";
import { cpSync, mkdtempSync, readdirSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { serve } from "../../../src/build/serve.mjs";
import { DIST, go, openShop, premises, press } from "../support/shop.mjs";

const shop = premises();
const OFFICE = "split_office.wasm";
const comes = (page, name) => page.waitForFunction((name) => performance.getEntriesByType("resource").some((entry) => entry.name.endsWith(name)), name);

test("the first screen waits for one WebAssembly file, and the office is fetched behind it", async (t) => {
  const page = await openShop(t, shop);
  await comes(page, OFFICE);
  const order = await page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name.split("/").at(-1)).filter((name) => name.endsWith(".wasm")));
  assert.equal(order[0], "lastpull_bg.wasm");
  assert.ok(!order.includes("split_archive.wasm"), "the backup comes when it is asked for");
});

for (const [what, name] of [["a part", OFFICE], ["the style of the parts", "later.css"]]) test(`${what} that does not come says so, loses nothing, and comes when it is asked for again`, async (t) => {
  const folder = mkdtempSync(join(tmpdir(), "lastpull-host-"));
  cpSync(DIST, folder, { recursive: true });
  const office = join(folder, readdirSync(folder).find((name) => name.startsWith("app-")), name);
  renameSync(office, `${office}.away`);
  const server = await serve(folder);
  t.after(async () => {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const place = { server, get browser() { return shop.browser; } };
  const page = await openShop(t, place, { expected: [/404/, /TypeError: Failed to execute 'compile'|HTTP status code is not ok/] });
  await go(page, "#/job/new", ".failed");
  renameSync(`${office}.away`, office);
  await press(page, ".failed button");
  await page.locator("#client").waitFor();
});
