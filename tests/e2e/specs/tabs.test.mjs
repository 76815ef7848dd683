// Two tabs of one device with the same run.
import assert from "node:assert/strict";
import { test } from "node:test";
import { expectWholeJournal } from "../support/backup.mjs";
import { countByKeyboard, pull as pullOn, waitForCount, waitUntilSaved } from "../support/counting.mjs";
import { FactRecorder } from "../support/facts.mjs";
import { id } from "../support/journal-file.mjs";
import { LONG_TAIL, MORE_THAN_LONG_TAIL, countLongTail, recordPacking, tailLength } from "../support/long-tail.mjs";
import { fillForm, go, press as pressOn } from "../support/page.mjs";
import { testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";

const app = testServer();

/** Brings the tab to the front before pressing. */
const press = async (page, what) => { await page.bringToFront(); await pressOn(page, what); };
const pull = async (page, pieces) => { await page.bringToFront(); await pullOn(page, pieces); };

/** Opens a second tab on the same page. */
async function openSecondTab(page) {
  const second = await page.context().tab();
  await second.goto(page.url());
  await second.locator("#zone").waitFor();
  return second;
}

test("two tabs count one run in turn and show the sum", async (t) => {
  const one = await openCounting(t, app);
  const two = await openSecondTab(one);
  for (let turn = 1; turn <= 4; turn += 1) {
    await pull(one, 1);
    await waitForCount(two, 2 * turn - 1);
    await pull(two, 1);
    await waitForCount(one, 2 * turn);
  }
  await Promise.all([one.reload(), two.reload()]);
  await waitForCount(one, 8);
  await waitForCount(two, 8);
});

test("two tabs count one run at once; no piece is lost or doubled", async (t) => {
  const one = await openCounting(t, app);
  const two = await openSecondTab(one);
  // By keyboard, in each tab as fast as possible, so that their writes interleave.
  await Promise.all([countByKeyboard(one, 15, 2), countByKeyboard(two, 15, 2)]);
  await Promise.all([waitForCount(one, 30), waitForCount(two, 30)]);
  await pull(one, 3);
  await pull(two, 3);
  await Promise.all([waitForCount(one, 36), waitForCount(two, 36)]);
  await Promise.all([one.reload(), two.reload()]);
  await Promise.all([waitForCount(one, 36), waitForCount(two, 36)]);
  await go(one, "#/more/about", "#facts");
  await go(two, "#/more/about", "#facts");
  assert.equal(await one.locator("#facts").getAttribute("data-facts"), await two.locator("#facts").getAttribute("data-facts"));
});

test("while one tab packs and the other counts, each piece is stored once", async (t) => {
  const one = await openCounting(t, app, { initScript: recordPacking, garments: { "size-s": 900, "size-m": 900 } });
  await countLongTail(one);
  await go(one, "#/press", "#zone");
  let pieces = MORE_THAN_LONG_TAIL;
  const ends = [];
  // What was recorded while the tail was read has not been packed: that attempt is given up, and made again by the next
  // tab that opens.
  for (let opened = 0; opened < 3; opened += 1) {
    const two = await openSecondTab(one);
    const counting = one.evaluate(async () => {
      window.goesOn = true;
      for (let piece = 0; ; piece += 1) {
        if (!window.goesOn) return piece;
        for (const kind of ["keydown", "keyup"]) document.body.dispatchEvent(new KeyboardEvent(kind, { key: "PageDown", bubbles: true, cancelable: true }));
        await new Promise((next) => setTimeout(next, 5 + 20 * (piece % 3)));
      }
    });
    await two.waitForFunction(() => window.packings.length > 0);
    ends.push(...(await two.evaluate(() => window.packings)));
    await one.evaluate(() => { window.goesOn = false; });
    pieces += await counting;
    await Promise.all([waitForCount(one, pieces), waitForCount(two, pieces)]);
    await two.close();
    if ((await tailLength(one)) < LONG_TAIL) break;
  }
  t.diagnostic(`packing ended with ${ends.join(", ")}`);
  await one.reload();
  await waitForCount(one, pieces);
  await expectWholeJournal(one);
});

test("a stop, an undo and the end of a run show in the other tab", async (t) => {
  const one = await openCounting(t, app);
  const two = await openSecondTab(one);
  await pull(one, 2);
  await press(one, "#stop");
  await press(one, "[data-cause=Break]");
  await two.locator("#stopped").waitFor();
  await waitForCount(two, 2);
  await waitUntilSaved(two, 2);
  await press(two, "#undo");
  await waitForCount(one, 1);
  await press(two, "#end");
  await press(two, "#end-anyway");
  await one.locator("#ended-good").waitFor();
  assert.equal(await one.locator("#ended-good").innerText(), "1 of 36");
});

test("erasing the device in one tab empties the other", async (t) => {
  const one = await openCounting(t, app);
  const two = await openSecondTab(one);
  await pull(one, 1);
  await go(one, "#/more/about", "#erase");
  await press(one, "#erase");
  await press(one, "#erase-yes");
  await one.locator("#start-shop").waitFor();
  await two.locator(".not-here, #start-shop").first().waitFor();
});

test("after an erasure another tab writes no setting or draft again", async (t) => {
  const one = await openCounting(t, app, { settings: { crew: "Ines Vela" } });
  const two = await openSecondTab(one);
  await go(two, "#/job/new", "#client");
  await fillForm(two, { client: "Harbour Night Choir", title: "Tour tees" });
  const stored = () => two.evaluate(() => JSON.stringify({ ...localStorage, ...sessionStorage }));
  assert.match(await stored(), /Ines Vela/);
  assert.match(await stored(), /Harbour Night Choir/);
  await go(one, "#/more/about", "#erase");
  await press(one, "#erase");
  await press(one, "#erase-yes");
  await one.locator("#start-shop").waitFor();
  // Each of these changes the settings.
  await press(two, "#start-shop");
  await two.locator("#client").waitFor({ state: "detached" });
  await go(two, "#/more/settings", "#crew");
  await press(two, "label[for=buzz]");
  const { buzz, crew } = await two.evaluate(() => JSON.parse(localStorage.getItem("lastpull.device")));
  assert.deepEqual({ buzz, crew }, { buzz: false, crew: null });
  assert.doesNotMatch(await stored(), /Ines|Harbour|Tour tees/);
});

test("a page that is shown again writes no name erased meanwhile", async (t) => {
  const page = await openCounting(t, app, { settings: { crew: "Ines Vela" } });
  await go(page, "#/more/settings", "#crew");
  // As from the back/forward cache: nothing told this page of the change.
  await page.evaluate(() => {
    localStorage.removeItem("lastpull.device");
    dispatchEvent(new PageTransitionEvent("pageshow", { persisted: true }));
  });
  await go(page, "#/more", ".menu");
  await go(page, "#/more/settings", "#crew");
  await press(page, "label[for=buzz]");
  const { buzz, crew } = await page.evaluate(() => JSON.parse(localStorage.getItem("lastpull.device")));
  assert.deepEqual({ buzz, crew }, { buzz: false, crew: null });
});

test("a tab that opens while another counts shows what it missed", async (t) => {
  // Without the service worker, so that the code comes from the server.
  const one = await openCounting(t, app, { initScript: () => { delete Navigator.prototype.serviceWorker; } });
  await pull(one, 1);
  const context = one.context();
  // The second tab's code comes only when the first has counted on, as on a slow phone.
  let letThrough;
  const counted = new Promise((done) => { letThrough = done; });
  let asked;
  const isAsked = new Promise((done) => { asked = done; });
  await context.route("**/lastpull_bg.wasm", async (route) => { asked(); await counted; await route.continue(); });
  const two = await context.tab();
  await two.goto(one.url(), { waitUntil: "commit" });
  await isAsked;
  // Its worker has read the journal by now.
  await two.waitForFunction(() => globalThis.lastpullJournalWorker?.early);
  await two.evaluate(() => globalThis.lastpullJournalWorker.early.then(() => true));
  await pull(one, 2);
  letThrough();
  await two.locator("#zone").waitFor();
  await waitForCount(two, 3);
  await pull(two, 1);
  await waitForCount(one, 4);
  await waitForCount(two, 4);
});

test("without messages, a tab that comes to the front shows the sum", async (t) => {
  const one = await openCounting(t, app, { initScript: () => { delete globalThis.BroadcastChannel; } });
  const two = await openSecondTab(one);
  await pull(one, 3);
  await two.bringToFront();
  await two.evaluate(() => dispatchEvent(new Event("focus")));
  await waitForCount(two, 3);
  await pull(two, 1);
  await one.bringToFront();
  await one.evaluate(() => dispatchEvent(new Event("focus")));
  await waitForCount(one, 4);
});

/** Runs before the app: counts how often the journal's worker is asked to read and has read; `holdReadings` keeps it from reading. */
function countReadings() {
  window.readings = { asked: 0, done: 0 };
  let held = null;
  window.Worker = class extends Worker {
    constructor(...all) {
      super(...all);
      this.addEventListener("message", ({ data }) => { if (data?.tail) window.readings.done += 1; });
    }

    postMessage(message, ...rest) {
      const ask = () => super.postMessage(message, ...rest);
      // A number and the shop's name; what is to be written has more.
      if (!Array.isArray(message) || message.length !== 2) return ask();
      window.readings.asked += 1;
      return held ? held.push(ask) : ask();
    }
  };
  window.holdReadings = () => { held = []; };
  window.letRead = () => { for (const ask of held.splice(0)) ask(); held = null; };
}

test("changes heard while a tab reads again lead to one more reading", async (t) => {
  const page = await openCounting(t, app, { initScript: countReadings });
  await pull(page, 2);
  const before = await page.evaluate(() => window.readings);
  const asked = await page.evaluate(async () => {
    window.holdReadings();
    const [speaker, hearer] = [new BroadcastChannel("lastpull"), new BroadcastChannel("lastpull")];
    // Younger than the app's own, and so it hears after it.
    const heard = new Promise((done) => {
      let messages = 0;
      hearer.onmessage = () => (messages += 1) === 20 && setTimeout(done);
    });
    for (let change = 0; change < 20; change += 1) speaker.postMessage([]);
    await heard;
    const { asked } = window.readings;
    window.letRead();
    for (const channel of [speaker, hearer]) channel.close();
    return asked;
  });
  assert.equal(asked, before.asked + 1, "the first reading was under way");
  await page.waitForFunction((readings) => window.readings.done === readings, before.done + 2);
  await pull(page, 1);
  await waitForCount(page, 3);
  assert.equal(await page.evaluate(() => window.readings.asked), before.asked + 2);
});

/** Makes reading the database fail while `failing` is set; writing goes on. Runs in the page before the app does. */
function failReads() {
  delete globalThis.Worker;
  window.failing = false;
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function (stores, mode, ...rest) {
    if (window.failing && mode !== "readwrite") throw new DOMException("simulated", "UnknownError");
    return transaction.call(this, stores, mode, ...rest);
  };
}

test("a shop that cannot be read again stays on screen and counts on", async (t) => {
  const one = await openCounting(t, app, { initScript: failReads });
  const two = await openSecondTab(one);
  await pull(one, 2);
  await waitForCount(two, 2);
  const run = new URL(one.url()).hash;
  await one.evaluate(() => { window.failing = true; });
  // What is imported in one tab is read again in the other.
  const facts = new FactRecorder();
  facts.record({ shop_named: "Harbour" }, id(0));
  facts.record({ shop_named: "Harbour Prints" }, id(0));
  await two.bringToFront();
  await facts.importInto(two);
  await one.bringToFront();
  await one.getByText("could not be reloaded").waitFor();
  await waitForCount(one, 2);
  await pull(one, 1);
  await waitForCount(one, 3);
  assert.equal(await one.locator(".failed").count(), 0);
  await one.evaluate(() => { window.failing = false; });
  await one.evaluate(() => dispatchEvent(new Event("focus")));
  await go(two, run, "#zone");
  await waitForCount(two, 3);
  await pull(two, 1);
  await one.bringToFront();
  await waitForCount(one, 4);
  await go(one, "#/more/settings", "#shop_name");
  assert.equal(await one.locator("#shop_name").inputValue(), "Harbour Prints");
});

test("settings that one tab changes are not put back by another", async (t) => {
  const one = await openCounting(t, app);
  const two = await openSecondTab(one);
  await go(one, "#/more/settings", "#crew");
  await press(one, "label[for=buzz]");
  await go(two, "#/more/settings", "#crew");
  await press(two, "label[for=click]");
  const { buzz, click } = await one.evaluate(() => JSON.parse(localStorage.getItem("lastpull.device")));
  assert.deepEqual({ buzz, click }, { buzz: false, click: true });
});
