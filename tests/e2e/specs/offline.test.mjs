// Without a network: the app opens and counts on; a new build waits for the press.
import assert from "node:assert/strict";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { DIST, go, jobOnPress, openShop, premises, press } from "../support/shop.mjs";
import { serve } from "../../../src/build/serve.mjs";
import { pull, shows } from "../support/counting.mjs";

const shop = premises();
/** What a browser says of a network that is not there. */
const NO_NETWORK = [/net::ERR_(CONNECTION_REFUSED|CONNECTION_RESET|FAILED|EMPTY_RESPONSE)/, /Failed to update a ServiceWorker|unknown error occurred when fetching the script/];

/** A host of its own for one test, whose build can be replaced and which can be switched off. */
async function host(t, base) {
  const folder = mkdtempSync(join(tmpdir(), "lastpull-host-"));
  cpSync(DIST, folder, { recursive: true });
  const server = await serve(folder, 0, base);
  t.after(async () => {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return { place: { server, get browser() { return shop.browser; } }, folder, server };
}

/** Waits until the app is kept on the device, and goes back to where it was. */
async function kept(page) {
  const hash = await page.evaluate(() => location.hash);
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  await go(page, hash);
}

for (const base of ["/", "/some/path/"]) {
  test(`below ${base} the app opens without a network in the middle of a run, and counts on`, async (t) => {
    const { place, server } = await host(t, base);
    const page = await openShop(t, place, { expected: NO_NETWORK });
    await jobOnPress(page);
    await pull(page, 3);
    await kept(page);
    await server.close();

    await page.reload();
    await shows(page, 3);
    await pull(page, 2);
    await shows(page, 5);
    await page.reload();
    await shows(page, 5);
    await pull(page, 1);
    await kept(page);
    // Also from the address itself, as from the home screen, and in another tab.
    const again = await page.context().tab();
    await again.goto(server.url);
    await again.locator("#verdict").waitFor();
    await again.getByText("6 of 36").waitFor();
    const wrong = await page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name).filter((name) => !name.startsWith(location.origin)));
    assert.deepEqual(wrong, [], "nothing is asked of another host");
  });
}

/** Puts a new build in the place of the old one. */
function renew(folder) {
  const page = join(folder, "index.html");
  writeFileSync(page, readFileSync(page, "utf8").replace("</title>", "</title><!-- a later build -->"));
  const worker = join(folder, "sw.js");
  const text = readFileSync(worker, "utf8");
  const [name] = text.match(/lastpull-[0-9a-f]{16}/);
  writeFileSync(worker, text.replaceAll(name, "lastpull-later"));
  return name;
}

const builds = (page) => page.evaluate(() => caches.keys());
const isLater = (page) => page.evaluate(() => document.head.innerHTML.includes("a later build"));

test("a new build waits while a run is on the press, and is loaded when somebody asks for it", async (t) => {
  const { place, folder } = await host(t, "/some/path/");
  const page = await openShop(t, place);
  await jobOnPress(page);
  await pull(page, 2);
  await kept(page);
  const old = renew(folder);
  assert.deepEqual(await builds(page), [old]);

  await page.reload();
  const banner = page.locator("#update-banner");
  await banner.getByText("waits until no run is on the press").waitFor();
  assert.equal(await banner.locator("button").count(), 0, "nothing to press while the run is on");
  await shows(page, 2);
  await pull(page, 1);
  await page.reload();
  await banner.waitFor();
  assert.equal(await isLater(page), false, "a reload during the run stays with the old build");
  await shows(page, 3);
  await press(page, "#stop");
  await press(page, "#end-anyway");
  await banner.locator("button").waitFor();
  assert.equal(await isLater(page), false, "and nothing changes by itself");

  const loaded = page.waitForEvent("load");
  await press(page, banner.locator("button"));
  await loaded;
  await page.locator("#ended-good").waitFor();
  assert.equal(await isLater(page), true);
  await page.waitForFunction(async () => JSON.stringify(await caches.keys()) === JSON.stringify(["lastpull-later"]), null, { polling: 100 });
  assert.equal(await page.locator("#ended-good").innerText(), "3 of 36");
  assert.equal(await banner.count(), 0);
});

test("a build that arrives in part is not taken, and the old one goes on", async (t) => {
  const { place, folder } = await host(t, "/some/path/");
  const page = await openShop(t, place, { expected: [/404/, /Failed to (update|load)/] });
  await kept(page);
  const old = renew(folder);
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
  assert.equal(await isLater(page), false);
  assert.ok((await builds(page)).includes(old));
  assert.equal(await page.locator("#update-banner").count(), 0);
});
