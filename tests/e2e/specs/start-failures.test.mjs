// An app that cannot start, or stops: a message and a way out, never an empty page.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { serve } from "../../../src/build/serve.mjs";
import { folderOf, lookForUpdate, newerBuildDuringRun, replaceBuild, waitUntilCached } from "../support/builds.mjs";
import { pull, waitForCount } from "../support/counting.mjs";
import { fillForm, go, hashOf, press, save } from "../support/page.mjs";
import { newDevice, openFirst, openShop, ownServer, testServer } from "../support/setup.mjs";
import { putJobOnPress } from "../support/shop.mjs";
import { hangWrites } from "../support/storage-faults.mjs";

const shared = testServer({ whole: true });
const ANY_ERROR = { expectedErrors: [/./] };

test("a new worker is refused until the page of its build is there", async (t) => {
  const { app, folder } = await ownServer(t, shared, "/shop/");
  const page = await openShop(t, app, ANY_ERROR);
  await waitUntilCached(page);
  const { next, putPage } = replaceBuild(folder, { page: false });
  assert.equal(await lookForUpdate(page), "redundant");
  await page.reload();
  await page.locator(".page.day").waitFor();
  assert.equal(await page.locator("#update-banner").count(), 0);
  putPage();
  assert.equal(await lookForUpdate(page), "installed");
  const loaded = page.waitForEvent("load");
  await press(page, "#update-banner button");
  await loaded;
  await page.locator(".page.day").waitFor();
  assert.match(await folderOf(page), new RegExp(next));
});

test("a new build opens while the worker before it is still at work", async (t) => {
  const { app, folder } = await ownServer(t, shared, "/shop/");
  const script = join(folder, "sw.js");
  const workOn = (event) => {
    if (event.data !== "work on") return;
    event.waitUntil(new Promise(() => {}));
    event.source.postMessage("at work");
  };
  writeFileSync(script, `${readFileSync(script, "utf8")}self.addEventListener("message", ${workOn});\n`);
  const page = await openShop(t, app, ANY_ERROR);
  await waitUntilCached(page);
  const { next } = replaceBuild(folder);
  assert.equal(await lookForUpdate(page), "installed");
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    const answered = new Promise((done) => navigator.serviceWorker.addEventListener("message", ({ data }) => data === "at work" && done()));
    active.postMessage("work on");
    await answered;
  });
  const loaded = page.waitForEvent("load");
  await press(page, "#update-banner button");
  await loaded;
  await page.locator(".page.day").waitFor();
  assert.match(await folderOf(page), new RegExp(next));
  await waitUntilCached(page);
  assert.equal(await page.locator("#update-banner").count(), 0, "the worker at work is not taken for a newer one");
});

test("a page without its code says so and loads by itself when it can", async (t) => {
  const { app, folder } = await ownServer(t, shared, "/shop/");
  const countLoads = () => sessionStorage.setItem("test.loads", Number(sessionStorage.getItem("test.loads")) + 1);
  const context = await newDevice(t, app, { ...ANY_ERROR, initScript: countLoads });
  const page = await context.tab();
  const index = join(folder, "index.html");
  const whole = readFileSync(index, "utf8");
  writeFileSync(index, whole.replaceAll(/app-[0-9a-f]{16}/g, "app-ffffffffffffffff"));
  await page.goto(app.server.url);
  // Once it has tried by itself.
  await page.waitForFunction(() => sessionStorage.getItem("test.loads") === "2" && document.querySelector("#trouble:not([hidden])"));
  await page.getByText("Lastpull does not start.").waitFor();
  await page.getByText("Lastpull no arranca.").waitFor();
  writeFileSync(index, whole);
  await press(page, "#trouble-fresh");
  await page.locator("#start-shop").waitFor();
  assert.equal(await page.locator("#trouble").isVisible(), false);
});

test("code that cannot run says so", async (t) => {
  const context = await newDevice(t, shared, ANY_ERROR);
  await context.route("**/lastpull_bg.wasm", (route) => route.fulfill({ contentType: "application/wasm", body: "no code" }));
  const page = await context.tab();
  await page.goto(shared.server.url);
  await page.locator("#trouble-words").filter({ hasText: /./ }).waitFor();
  await page.getByText("Lastpull does not start.").waitFor();
});

test("an error that stops the app is shown, and loading again opens the shop", async (t) => {
  const page = await openShop(t, shared, ANY_ERROR);
  await putJobOnPress(page);
  await pull(page, 2);
  const run = await hashOf(page);
  // The browser fails under the app: it can draw no other page.
  await page.evaluate(() => {
    Document.prototype.createElement = () => { throw new Error("simulated"); };
    Node.prototype.cloneNode = () => { throw new Error("simulated"); };
  });
  await page.evaluate(() => { location.hash = "#/jobs"; });
  await page.getByText("Lastpull has stopped").waitFor();
  await press(page, "#trouble-reload");
  await page.locator(".page").first().waitFor();
  await go(page, run, "#zone");
  await waitForCount(page, 2);
});

for (const [title, fail] of Object.entries({
  "code that must not be reached": () => {
    // (module (func (export "f") unreachable))
    const bytes = [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 102, 0, 0, 10, 5, 1, 3, 0, 0, 11];
    WebAssembly.instantiate(new Uint8Array(bytes)).then(({ instance }) => setTimeout(instance.exports.f));
  },
  "an error in a promise": () => { Promise.reject(new WebAssembly.RuntimeError("unreachable")); },
})) {
  test(`an engine error comes with a way out: ${title}`, async (t) => {
    const page = await openShop(t, shared, ANY_ERROR);
    await putJobOnPress(page);
    await pull(page, 2);
    // An error of something else, such as an extension, stops nothing.
    await page.evaluate(() => new Promise((done) => {
      addEventListener("error", () => setTimeout(done), { once: true });
      setTimeout(() => { throw new Error("not of the app"); });
    }));
    assert.equal(await page.locator("#trouble").isVisible(), false);
    await page.evaluate(fail);
    await page.getByText("Lastpull has stopped").waitFor();
    await page.locator("#trouble-words").filter({ hasText: "unreachable" }).waitFor();
    const loaded = page.waitForEvent("load");
    await press(page, "#trouble-reload");
    await loaded;
    await go(page, "#/press", "#zone");
    await waitForCount(page, 2);
    assert.equal(await page.locator("#trouble").isVisible(), false);
  });
}

test("a database that does not answer says so, and opens once it answers", async (t) => {
  const context = await newDevice(t, shared, {
    initScript: () => {
      delete globalThis.Worker;
      let isSilent = true;
      const held = [];
      const { open } = IDBFactory.prototype;
      IDBFactory.prototype.open = function (...all) {
        const request = open.apply(this, all);
        request.addEventListener("success", (event) => {
          if (!isSilent) return;
          event.stopImmediatePropagation();
          held.push(request);
        });
        return request;
      };
      window.letAnswer = () => {
        isSilent = false;
        for (const request of held) request.dispatchEvent(new Event("success"));
      };
    },
  });
  const page = await context.tab();
  await page.goto(shared.server.url);
  await page.getByRole("heading", { name: "Can't open the shop" }).waitFor();
  await page.getByText("The browser's storage does not respond").waitFor();
  await page.evaluate(() => window.letAnswer());
  await page.locator("#start-shop").waitFor();
});

test("a database held by another window says so, and opens once let go", async (t) => {
  const context = await newDevice(t, shared, ANY_ERROR);
  const holder = await context.tab();
  await holder.goto(`${shared.server.url}icons/icon-48.png`);
  await holder.evaluate(() => new Promise((done) => {
    const request = indexedDB.open("lastpull", 1);
    request.onupgradeneeded = () => { for (const store of ["meta", "tail", "segments", "checkpoint"]) request.result.createObjectStore(store); };
    request.onsuccess = () => { window.database = request.result; done(); };
  }));
  const page = await context.tab();
  await page.goto(shared.server.url);
  await page.getByRole("heading", { name: "Can't open the shop" }).waitFor();
  await page.getByText("An older version is open in another window").waitFor();
  await holder.evaluate(() => window.database.close());
  await page.locator("#start-shop").waitFor();
});

test("an app whose stored copy is gone says so and stores it again", async (t) => {
  const { app, server, folder } = await ownServer(t, shared, "/shop/");
  const page = await openShop(t, app, ANY_ERROR);
  await waitUntilCached(page);
  const stored = () => page.evaluate(async () => {
    let files = 0;
    for (const name of await caches.keys()) files += (await (await caches.open(name)).keys()).length;
    return files;
  });
  const before = await stored();
  // Without a network it cannot be stored again: then it is not called stored.
  await server.close();
  await page.evaluate(async () => { for (const name of await caches.keys()) await caches.delete(name); });
  await go(page, "#/more/about", "#offline-ready[data-ready=false]");
  const again = await serve(folder, server.port, "/shop/");
  t.after(() => again.close());
  await go(page, "#/", ".page.day");
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  // The state of the worker has one entry, made again when a build is chosen.
  assert.ok((await stored()) >= before - 1);
  await again.close();
  await page.reload();
  await page.locator(".page.about").waitFor();
});

test("closing and opening the app during a run does not bring a new build", async (t) => {
  const { page, old, next } = await newerBuildDuringRun(t, shared);
  const context = page.context();
  const run = page.url();
  await page.close();
  const again = await context.tab();
  await again.goto(run);
  await waitForCount(again, 2);
  assert.equal(await folderOf(again), old);
  await again.locator("#update-banner").getByText("can load when no run is on press").waitFor();
  await press(again, "#stop");
  await press(again, "#end-anyway");
  const loaded = again.waitForEvent("load");
  await press(again, "#update-banner button");
  await loaded;
  await again.locator("#ended-good").waitFor();
  assert.match(await folderOf(again), new RegExp(next));
});

test("an update waits until what was recorded is saved", async (t) => {
  const { page, next } = await newerBuildDuringRun(t, shared, { initScript: hangWrites });
  await press(page, "#stop");
  await press(page, "#end-anyway");
  await page.locator("#update-banner button").waitFor();
  await page.evaluate(() => { window.storage.hang = true; });
  await go(page, "#/job/new", "#client");
  await fillForm(page, { client: "Harbour Night Choir", title: "Aprons" });
  await save(page);
  await page.waitForFunction(() => window.storage.held > 0);
  const loaded = page.waitForEvent("load");
  await press(page, "#update-banner button");
  await page.evaluate(() => { window.storage.hang = false; });
  await loaded;
  await go(page, "#/jobs", ".job-row");
  await page.getByText("Aprons").waitFor();
  assert.match(await folderOf(page), new RegExp(next));
});

test("a page loaded past the worker keeps the build of the run", async (t) => {
  const { page, old } = await newerBuildDuringRun(t, shared);
  const cdp = await page.context().newCDPSession(page);
  await page.evaluate(() => { window.isOldPage = true; });
  // As a forced reload does.
  await cdp.send("Page.reload", { ignoreCache: true });
  await page.waitForFunction(() => !window.isOldPage && navigator.serviceWorker.controller !== null && document.querySelector("#zone"));
  await waitForCount(page, 2);
  assert.equal(await folderOf(page), old);
});

test("the app does not run inside another page", async (t) => {
  const context = await newDevice(t, shared, ANY_ERROR);
  const page = await context.tab();
  await page.goto(`${shared.server.url}icons/icon-48.png`);
  await page.evaluate((url) => {
    const frame = document.createElement("iframe");
    frame.src = url;
    document.body.append(frame);
  }, shared.server.url);
  await page.frameLocator("iframe").locator("#trouble-words").filter({ hasText: "inside another page" }).waitFor({ state: "attached" });
  assert.equal(await page.frameLocator("iframe").locator(".shell").count(), 0);
});

test("a first start works without anything stored", async (t) => {
  const page = await openFirst(t, shared);
  assert.equal(await page.locator("#trouble").isVisible(), false);
});
