// The browser's Back: it closes a dialog before it leaves a page, and never leads to a form that was saved.
import assert from "node:assert/strict";
import { test } from "node:test";
import { pull, waitForCount } from "../support/counting.mjs";
import { fillForm, go, hashOf, press, save } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openCounting } from "../support/shop.mjs";

const app = testServer();

const dialog = (page) => page.locator("dialog[open]");
/** Waits until a dialog is open and has its entry in the history. */
async function waitForDialog(page) {
  await dialog(page).waitFor();
  await page.waitForFunction(() => Number.parseInt(history.state, 10) > 0);
}
const noDialog = (page) => dialog(page).waitFor({ state: "detached" });
/** Waits until the page of this hash is shown. */
const waitForHash = (page, hash) => page.waitForFunction((hash) => location.hash === hash, hash);

test("back closes the open dialog and the count stays", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 1);
  const counting = await hashOf(page);
  for (const control of ["#number", "#misprint", "#stop"]) {
    await press(page, control);
    await waitForDialog(page);
    await page.goBack();
    await noDialog(page);
    assert.equal(await hashOf(page), counting);
  }
  await pull(page, 1);
  await waitForCount(page, 2);
});

test("a dialog that was closed by its button costs back no press", async (t) => {
  const page = await openCounting(t, app);
  await go(page, "#/jobs", ".job-row");
  await go(page, "#/press", "#zone");
  await press(page, "#number");
  await press(page, "dialog .sheet-head .icon-button");
  await noDialog(page);
  await page.goBack();
  await page.locator(".page.jobs").waitFor();
});

test("back closes a dialog over a form and what was typed is still there", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/ink/new", "#name");
  await fillForm(page, { name: "Tour violet" });
  await press(page, "#add-part");
  await waitForDialog(page);
  await page.goBack();
  await noDialog(page);
  assert.equal(await page.locator("#name").inputValue(), "Tour violet");
});

test("back from a job leads past the forms that made it", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/jobs", ".page.jobs");
  await press(page, ".head-aside a[href='#/job/new']");
  await newJobHere(page);
  const job = await hashOf(page);
  await addGarments(page);
  await addRun(page);
  assert.equal(await hashOf(page), job, "a saved run leads back to its job");
  await page.goBack();
  await page.locator(".page.jobs").waitFor();
  assert.equal(await hashOf(page), "#/jobs");
});

async function newJobHere(page) {
  await fillForm(page, { client: "Harbour Night Choir", title: "Tour tees" });
  await save(page);
  await page.locator(".page.job").waitFor();
}

test("back after adding garments never opens the spent form", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  const job = await hashOf(page);
  await addGarments(page);
  assert.match(await hashOf(page), /^#\/lot\/.*\/run$/);
  await page.goBack();
  await page.locator(".page.job").waitFor();
  assert.equal(await hashOf(page), job);
});

test("the back arrow of a page goes back in the history", async (t) => {
  const page = await openDemo(t, app);
  await go(page, "#/jobs", ".job-row");
  await press(page, page.locator(".job-row").first());
  await page.locator(".page.job").waitFor();
  await press(page, ".head-back");
  await page.locator(".page.jobs").waitFor();
  await page.goBack();
  await waitForHash(page, "#/");
  await page.locator(".page.day").waitFor();
});

test("back after deleting a job does not lead to it", async (t) => {
  const page = await openDemo(t, app);
  await go(page, "#/jobs", ".job-row");
  await press(page, page.locator(".job-row").first());
  await press(page, "#delete-job");
  await waitForDialog(page);
  await page.goBack();
  await noDialog(page);
  await page.locator(".page.job").waitFor();
  await press(page, "#delete-job");
  await press(page, "#delete-yes");
  await page.locator(".page.jobs").waitFor();
  await page.goBack();
  await page.locator(".page.day").waitFor();
});

test("after a reload with an open dialog back still leads to the page before", async (t) => {
  const page = await openCounting(t, app);
  await go(page, "#/jobs", ".job-row");
  await go(page, "#/press", "#zone");
  await press(page, "#number");
  await waitForDialog(page);
  await page.reload();
  await page.locator("#zone").waitFor();
  await page.goBack();
  await page.locator(".page.jobs").waitFor();
});

/** Goes to the day, once asked to, just before the app learns that its write is committed. Runs in the page before it. */
function leaveAtCommit() {
  delete globalThis.Worker;
  window.leave = false;
  let committed = false;
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (...all) {
    const begun = transaction.apply(this, all);
    begun.addEventListener("complete", () => { committed = window.leave && all[1] === "readwrite"; });
    return begun;
  };
  const { setTimeout } = window;
  window.setTimeout = (action, delay, ...rest) => setTimeout(() => {
    if (committed && delay === 4) {
      [committed, window.leave] = [false, false];
      location.hash = "#/";
    }
    action(...rest);
  }, delay);
}

test("a link that is followed while a form is saved is not left again", async (t) => {
  const page = await openShop(t, app, { initScript: leaveAtCommit });
  await newJob(page, { title: "Club tees" });
  await press(page, ".page.job a[href$='/edit']");
  await fillForm(page, { title: "Team tees" });
  await page.evaluate(() => { window.leave = true; });
  await save(page);
  await page.locator(".page.day").waitFor();
  await page.waitForFunction(() => !window.leave);
  assert.equal(await hashOf(page), "#/");
  await go(page, "#/jobs", ".job-row");
  await page.getByText("Team tees").waitFor();
});

/** Goes to the day, once asked to, just after the app has asked to go back. Runs in the page before it. */
function leaveWhileGoingBack() {
  window.leave = false;
  const { back } = History.prototype;
  History.prototype.back = function () {
    if (!window.leave) return back.call(this);
    window.leave = false;
    addEventListener("hashchange", () => back.call(this), { once: true });
    location.hash = "#/";
  };
}

/** The same in a browser that is so busy that it goes back after most of a second. */
function leaveWhileSlowlyGoingBack() {
  const { back } = History.prototype;
  window.leave = false;
  History.prototype.back = function () {
    if (!window.leave) return back.call(this);
    window.leave = false;
    location.hash = "#/";
    setTimeout(() => back.call(this), 700);
  };
}

for (const [speed, initScript] of Object.entries({ "goes back": leaveWhileGoingBack, "slowly goes back": leaveWhileSlowlyGoingBack })) {
  test(`a link that is followed while the app ${speed} is followed after that`, async (t) => {
    const page = await openShop(t, app, { initScript });
    await newJob(page, { title: "Club tees" });
    await press(page, ".page.job a[href$='/edit']");
    await fillForm(page, { title: "Team tees" });
    await page.evaluate(() => {
      window.leave = true;
      window.moves = 0;
      addEventListener("hashchange", () => { window.moves += 1; });
    });
    await save(page);
    // To the day, back, and to the day again.
    await page.waitForFunction(() => window.moves === 3);
    await page.locator(".page.day").waitFor();
    assert.equal(await hashOf(page), "#/");
  });
}

test("an update that going back stops is loaded after it", async (t) => {
  // Without a worker: the test answers the load.
  const initScript = () => { ServiceWorkerContainer.prototype.register = () => new Promise(() => {}); };
  const page = await openCounting(t, app, { initScript });
  await press(page, "#stop");
  await waitForDialog(page);
  await page.waitForFunction(() => navigator.serviceWorker.onmessage);
  // The first load gets no answer: going back, once it has begun, ends it. While it waits, the page can be told so only by
  // the answer to a request that it made before.
  let loads = 0;
  const asked = new Promise((resolve) => page.route("**/load-has-begun", resolve));
  await page.route(app.server.url, async (route) => {
    loads += 1;
    if (loads > 1) return route.continue();
    await (await asked).fulfill({ body: "" });
  });
  await page.evaluate(() => {
    window.isOldPage = true;
    fetch("load-has-begun").then(() => history.back());
    // As the service worker says it once the update is chosen.
    navigator.serviceWorker.dispatchEvent(new MessageEvent("message", { data: "reload" }));
  });
  await page.waitForFunction(() => !window.isOldPage && document.querySelector("#zone"));
  assert.equal(await dialog(page).count(), 0);
  assert.ok(loads > 1, "the first load had no answer");
});
