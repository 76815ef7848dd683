// Two tabs of one device with the same run.
import assert from "node:assert/strict";
import { test } from "node:test";
import { pull as pullOn, waitForCount, waitUntilSaved } from "../support/counting.mjs";
import { go, press as pressOn } from "../support/page.mjs";
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
  const pressKeys = (page, pieces) => page.evaluate(async (pieces) => {
    for (let piece = 0; piece < pieces; piece += 1) {
      for (const kind of ["keydown", "keyup"]) document.body.dispatchEvent(new KeyboardEvent(kind, { key: "PageDown", bubbles: true, cancelable: true }));
      await new Promise((next) => setTimeout(next, piece % 3));
    }
  }, pieces);
  await Promise.all([pressKeys(one, 15), pressKeys(two, 15)]);
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
