// Two tabs of one device at the same run.
import assert from "node:assert/strict";
import { test } from "node:test";
import { go, openCounting, premises, press as pressOn } from "../support/shop.mjs";
import { pull as pullOn, settled, shows } from "../support/counting.mjs";

const place = premises();

/** Only the tab in front is touched. */
const press = async (page, what) => { await page.bringToFront(); await pressOn(page, what); };
const pull = async (page, pieces) => { await page.bringToFront(); await pullOn(page, pieces); };

/** A second tab at what the first shows. */
async function another(page) {
  const second = await page.context().tab();
  await second.goto(page.url());
  await second.locator("#zone").waitFor();
  return second;
}

test("two tabs count one run in turn, and both show the sum", async (t) => {
  const one = await openCounting(t, place);
  const two = await another(one);
  for (let turn = 1; turn <= 4; turn += 1) {
    await pull(one, 1);
    await shows(two, 2 * turn - 1);
    await pull(two, 1);
    await shows(one, 2 * turn);
  }
  await Promise.all([one.reload(), two.reload()]);
  await shows(one, 8);
  await shows(two, 8);
});

test("two tabs count one run at the same time, and no piece is lost or counted twice", async (t) => {
  const one = await openCounting(t, place);
  const two = await another(one);
  // By key: in each tab as fast as it takes them, so that the tabs write into each other's stride.
  const clicker = (page, pieces) => page.evaluate(async (pieces) => {
    for (let piece = 0; piece < pieces; piece += 1) {
      for (const kind of ["keydown", "keyup"]) document.body.dispatchEvent(new KeyboardEvent(kind, { key: "PageDown", bubbles: true, cancelable: true }));
      await new Promise((next) => setTimeout(next, piece % 3));
    }
  }, pieces);
  await Promise.all([clicker(one, 15), clicker(two, 15)]);
  await Promise.all([shows(one, 30), shows(two, 30)]);
  await pull(one, 3);
  await pull(two, 3);
  await Promise.all([shows(one, 36), shows(two, 36)]);
  await Promise.all([one.reload(), two.reload()]);
  await Promise.all([shows(one, 36), shows(two, 36)]);
  await go(one, "#/more/about", "#facts");
  await go(two, "#/more/about", "#facts");
  assert.equal(await one.locator("#facts").getAttribute("data-facts"), await two.locator("#facts").getAttribute("data-facts"));
});

test("a stop, an undo and the end in one tab are seen in the other", async (t) => {
  const one = await openCounting(t, place);
  const two = await another(one);
  await pull(one, 2);
  await press(one, "#stop");
  await press(one, "[data-cause=Break]");
  await two.locator("#stopped").waitFor();
  await shows(two, 2);
  await settled(two, 2);
  await press(two, "#undo");
  await shows(one, 1);
  await press(two, "#end");
  await press(two, "#end-anyway");
  await one.locator("#ended-good").waitFor();
  assert.equal(await one.locator("#ended-good").innerText(), "1 of 36");
});

test("erasing the device in one tab empties the other", async (t) => {
  const one = await openCounting(t, place);
  const two = await another(one);
  await pull(one, 1);
  await go(one, "#/more/about", "#erase");
  await press(one, "#erase");
  await press(one, "#erase-yes");
  await one.locator("#start-shop").waitFor();
  await two.locator(".not-here, #start-shop").first().waitFor();
});
