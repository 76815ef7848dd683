// What is typed into a dialog or at the scale is kept until it is recorded; readings are not.
import assert from "node:assert/strict";
import { test } from "node:test";
import { pull } from "../support/counting.mjs";
import { openStep, reportFailure } from "../support/failure.mjs";
import { addComponent, addToPot, importStock, openSection, pickComponent, startPot, typeOnKeypad } from "../support/ink-helpers.mjs";
import { fillForm, go, hashOf, press, save, waitForText } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { METRIC } from "../support/units.mjs";

const app = testServer();
const STOCK = [["Base", "base"], ["Blue", "pigment"]];

const value = (page, id) => page.locator(`#${id}`).inputValue();
const drafts = (page) => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("lastpull.draft.")));
const restored = (page) => page.locator("#dialog-draft-restored");

/** The dialog of a delivery of a component, opened from the stock. */
async function openDelivery(t) {
  const page = await openShop(t, app, METRIC);
  await addComponent(page, "Base");
  await go(page, "#/ink/stock", ".ink-row");
  await press(page, page.locator(".ink-row").first());
  await press(page, "#came-in");
  return page;
}

test("a delivery half typed is kept for its dialog until it is recorded", async (t) => {
  const page = await openDelivery(t);
  await fillForm(page, { grams: "500", note: "lot 7" });
  await page.reload();
  await press(page, "#came-in");
  await restored(page).waitFor();
  assert.deepEqual([await value(page, "grams"), await value(page, "note")], ["500", "lot 7"]);
  await press(page, "dialog [type=submit]");
  await waitForText(page, "#story", "lot 7");
  await press(page, "#came-in");
  assert.deepEqual([await value(page, "grams"), await restored(page).count(), await drafts(page)], ["", 0, []]);
});

test("a dialog's draft can be discarded, and a weighing of stock has none", async (t) => {
  const page = await openDelivery(t);
  await fillForm(page, { note: "lot 8" });
  await page.goBack();
  await page.locator("dialog").waitFor({ state: "detached" });
  await press(page, "#count");
  await fillForm(page, { grams: "61" });
  await page.reload();
  await press(page, "#count");
  assert.deepEqual([await value(page, "grams"), await restored(page).count()], ["", 0]);
  await page.goBack();
  await press(page, "#came-in");
  await restored(page).waitFor();
  await press(page, "#dialog-draft-discard");
  await restored(page).waitFor({ state: "detached" });
  assert.deepEqual([await value(page, "note"), await drafts(page)], ["", []]);
});

test("a reload keeps why something is added, not what the scale showed", async (t) => {
  const page = await openShop(t, app, METRIC);
  await importStock(page, STOCK, "Violet", [["Base", 96.9], ["Blue", 3.1]]);
  const pot = await startPot(page, { size: "500" });
  await go(page, `${pot}/add`, "#after");
  await pickComponent(page, "Blue");
  await typeOnKeypad(page, "3.4");
  await fillForm(page, { note: "too light beside the swatch" });
  await page.reload();
  await restored(page).waitFor();
  assert.equal(await value(page, "note"), "too light beside the swatch");
  assert.match(await page.locator("#typed").innerText(), /^0/);
  await pickComponent(page, "Blue");
  await typeOnKeypad(page, "3.4");
  await press(page, "[data-key=enter]");
  await press(page, "#same");
  assert.deepEqual([await value(page, "note"), await drafts(page)], ["", []]);
});

test("a colour target half typed is kept over a reload", async (t) => {
  const page = await openShop(t, app, METRIC);
  await importStock(page, STOCK, "Violet", [["Base", 96.9], ["Blue", 3.1]]);
  await press(page, "#target");
  await fillForm(page, { "target-l": "35.5", "target-a": "20" });
  await page.reload();
  await page.locator("#draft-restored").waitFor();
  assert.deepEqual([await value(page, "target-l"), await value(page, "target-a"), await value(page, "target-b")], ["35.5", "20", ""]);
  await press(page, "#draft-discard");
  await page.locator("#draft-restored").waitFor({ state: "detached" });
  assert.equal(await value(page, "target-l"), "");
  await fillForm(page, { "target-l": "35.5", "target-a": "20", "target-b": "-30" });
  await press(page, "#target-save");
  await waitForText(page, ".colour-target", "L* 35.5");
  assert.deepEqual(await drafts(page), []);
});

test("a client's approval half typed is kept while another page is shown", async (t) => {
  const page = await openShop(t, app, METRIC);
  await importStock(page, STOCK);
  await go(page, "#/pot/new", "#name");
  await fillForm(page, { name: "Violet" });
  await save(page);
  await addToPot(page, "Blue", "30");
  const pot = await hashOf(page);
  await openSection(page, "more");
  await press(page, "#yes");
  await page.locator("dialog #client").fill("Moss and Daughters");
  await page.goBack();
  await go(page, "#/", ".page.day");
  await go(page, pot, "#holds");
  await openSection(page, "more");
  await press(page, "#yes");
  await restored(page).waitFor();
  assert.equal(await page.locator("dialog #client").inputValue(), "Moss and Daughters");
  await press(page, "#yes-save");
  await page.locator("dialog").waitFor({ state: "detached" });
  assert.deepEqual(await drafts(page), []);
});

test("a component half typed in a recipe's form is kept until it is added", async (t) => {
  const page = await openShop(t, app, METRIC);
  await go(page, "#/ink/new", "#add-part");
  await press(page, "#add-part");
  await fillForm(page, { "component-name": "Base" });
  await page.reload();
  await press(page, "#add-part");
  await restored(page).waitFor();
  assert.equal(await value(page, "component-name"), "Base");
  await press(page, "#add-component");
  await page.locator("dialog[open]").waitFor({ state: "detached" });
  await press(page, "#add-part");
  await press(page, "#new-component");
  assert.deepEqual([await value(page, "component-name"), await restored(page).count()], ["", 0]);
});

test("what was thrown away and why is kept, what the pot weighed is not", async (t) => {
  const page = await openShop(t, app, METRIC);
  await importStock(page, STOCK);
  await go(page, "#/pot/new", "#name");
  await fillForm(page, { name: "Violet" });
  await save(page);
  await addToPot(page, "Blue", "30");
  const openWaste = async () => {
    await page.locator("#holds").waitFor();
    await openSection(page, "more");
    await press(page, "#waste");
    await page.locator("dialog #note").waitFor();
  };
  await openWaste();
  await fillForm(page, { grams: "12", note: "skinned over" });
  await page.reload();
  await openWaste();
  await restored(page).waitFor();
  assert.deepEqual([await value(page, "grams"), await value(page, "note")], ["12", "skinned over"]);
  await press(page, "dialog #way-0");
  await fillForm(page, { grams: "18" });
  await page.goBack();
  await page.locator("dialog").waitFor({ state: "detached" });
  await openWaste();
  assert.deepEqual([await value(page, "grams"), await value(page, "note")], ["", "skinned over"]);
  await fillForm(page, { grams: "18" });
  await press(page, "#waste-save");
  await page.locator("dialog").waitFor({ state: "detached" });
  assert.deepEqual(await drafts(page), []);
});

test("the chemistry of a new bath is kept until the charge is recorded", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/stencil/bath", "#charge");
  await press(page, "#charge");
  await fillForm(page, { chemistry: "Dip, one to four" });
  await page.reload();
  await press(page, "#charge");
  await restored(page).waitFor();
  assert.equal(await value(page, "chemistry"), "Dip, one to four");
  await page.goBack();
  await page.locator("dialog").waitFor({ state: "detached" });
  await press(page, "#charge");
  assert.equal(await value(page, "chemistry"), "Dip, one to four");
  await press(page, "#charge-now");
  await page.locator("dialog").waitFor({ state: "detached" });
  assert.deepEqual(await drafts(page), []);
});

test("how much to make again is kept until it is weighed", async (t) => {
  const page = await openShop(t, app, METRIC);
  await importStock(page, STOCK, "Violet", [["Base", 96.9], ["Blue", 3.1]]);
  await press(page, "#again");
  await fillForm(page, { grams: "640", tare: "48" });
  await page.reload();
  await page.locator("#draft-restored").waitFor();
  assert.deepEqual([await value(page, "grams"), await value(page, "tare")], ["640", "48"]);
  await press(page, "#draft-discard");
  await page.locator("#draft-restored").waitFor({ state: "detached" });
  assert.deepEqual([await value(page, "grams"), await value(page, "tare")], ["", ""]);
  await fillForm(page, { grams: "640" });
  await press(page, "#weigh");
  await page.locator("#now").waitFor();
  assert.deepEqual(await drafts(page), []);
});

test("the label of a screen to burn again is kept until it is chosen", async (t) => {
  const page = await openCounting(t, app, { run: { screens: "A3" } });
  await pull(page, 1);
  await reportFailure(page);
  await press(page, "[data-kind=Spot]");
  await press(page, page.locator(".failure-screen"));
  const choose = async () => {
    await openStep(page, "remedy");
    await press(page, "[data-remedy=BurnAgain]");
    await page.locator("dialog #label").waitFor();
  };
  await choose();
  await page.locator("dialog #label").fill("B6");
  await page.reload();
  await choose();
  await restored(page).waitFor();
  assert.equal(await value(page, "label"), "B6");
  await press(page, "dialog [type=submit]");
  await page.locator("#burning").waitFor();
  assert.deepEqual(await drafts(page), []);
});
