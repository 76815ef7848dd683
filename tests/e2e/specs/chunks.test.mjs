// Code splitting: the press loads first, the other chunks after it.
import assert from "node:assert/strict";
import { readdirSync, renameSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { go, press } from "../support/page.mjs";
import { openShop, ownServer, testServer } from "../support/setup.mjs";

const shared = testServer();
// File names of chunks: `split_` and the name in the app.
const JOBS_CHUNK = "split_jobs_and_settings.wasm";
const BACKUP_CHUNK = "split_archive.wasm";
const waitForResource = (page, name) => page.waitForFunction((name) => performance.getEntriesByType("resource").some((entry) => entry.name.endsWith(name)), name);

test("the first screen needs one WebAssembly file, chunks load later", async (t) => {
  const page = await openShop(t, shared);
  await waitForResource(page, JOBS_CHUNK);
  const order = await page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name.split("/").at(-1)).filter((name) => name.endsWith(".wasm")));
  assert.equal(order[0], "lastpull_bg.wasm");
  const backup = order.indexOf(BACKUP_CHUNK);
  assert.ok(backup < 0 || backup > order.indexOf(JOBS_CHUNK), "the backup chunk does not hold up that of the pages");
});

for (const [what, name] of [["a chunk", JOBS_CHUNK], ["the chunks' style sheet", "lazy.css"]]) test(`${what} that fails to load says so and loads on retry`, async (t) => {
  const { app, folder } = await ownServer(t, shared);
  const file = join(folder, readdirSync(folder).find((entry) => entry.startsWith("app-")), name);
  renameSync(file, `${file}.away`);
  const page = await openShop(t, app, { expectedErrors: [/404/, /TypeError: Failed to execute 'compile'|HTTP status code is not ok/] });
  await go(page, "#/job/new", ".failed");
  renameSync(`${file}.away`, file);
  await press(page, ".failed button");
  await page.locator("#client").waitFor();
});
