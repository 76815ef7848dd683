// Units chosen apart, and numbers typed with their unit or with marks between thousands.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK } from "../support/browser.mjs";
import { addComponent, addRecipe, startPot, waitForTarget, withRecipe } from "../support/ink-helpers.mjs";
import { fillForm, go, hashOf, openAllSections, press, save, waitForText } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks } from "../support/shop.mjs";
import { NBSP, OUNCES, g } from "../support/units.mjs";

const app = testServer();

const value = (page, id) => page.locator(`#${id}`).inputValue();
const unitOf = (page, id) => page.locator(`.field-input:has(#${id}) .unit`).innerText();

/** Chooses an option that opens the page again in other units. */
async function choose(page, option) {
  const loaded = page.waitForEvent("load");
  await press(page, option);
  await loaded;
  await page.locator("#crew").waitFor();
}

test("length, temperature and ink weight are chosen apart", async (t) => {
  const page = await openShop(t, app);
  const units = async () => {
    await go(page, "#/heat/unit/new", "#heated_length");
    const length = await unitOf(page, "heated_length");
    await go(page, "#/heat/ink/new", "#cure");
    const temperature = await unitOf(page, "cure");
    await go(page, "#/pot/new", "#tare");
    return [length, temperature, await unitOf(page, "tare")];
  };
  assert.deepEqual(await units(), ["in", "°F", "g"], "a shop in the United States");
  await go(page, "#/more/settings", "#crew");
  await choose(page, "#length-1");
  assert.deepEqual(await units(), ["cm", "°F", "g"]);
  await go(page, "#/more/settings", "#crew");
  await choose(page, "#weight-1");
  await choose(page, "#temperature-1");
  assert.deepEqual(await units(), ["cm", "°C", "oz"]);
});

test("a weight is understood in any unit, and a wrong unit is explained beside the field", async (t) => {
  const page = await withRecipe(t, app, OUNCES);
  await press(page, "#mix");
  await page.locator("#size").waitFor();
  await fillForm(page, { size: "5 cm" });
  await save(page);
  await waitForText(page, "#size-help .problem", "g, kg, oz, lb");
  await fillForm(page, { size: "1,25,3" });
  await save(page);
  await waitForText(page, "#size-help .problem", "1250.5");
  await fillForm(page, { size: "500 g" });
  await save(page);
  // A fifth of it is 100 g, by the definition of the ounce 3.527 oz.
  await waitForTarget(page, /^3\.527.oz$/);
});

test("a comma before three digits is never a decimal mark", async (t) => {
  const page = await withRecipe(t, app);
  await press(page, "#mix");
  await page.locator("#size").waitFor();
  await fillForm(page, { size: "1,250" });
  await save(page);
  await waitForTarget(page, g("250.0"));
});

test("a set-up typed in other units is shown in those of the device", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { dryer: "160 C", belt: "24 in/min", below_collar: "8.89 cm", off_contact: "1/8\"" });
  await press(page, page.locator(".run-row a.icon-button").first());
  await page.locator("#belt").waitFor();
  const shown = ["dryer", "belt", "below_collar", "off_contact"].map((id) => value(page, id));
  assert.deepEqual(await Promise.all(shown), ["320", "2", "3 1/2", "1/8"]);
  assert.equal(await unitOf(page, "belt"), "ft/min");
});

test("a draft is not read back in other units, and is there again in its own", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/heat/ink/new", "#cure");
  await fillForm(page, { cure: "320" });
  await go(page, "#/more/settings", "#crew");
  await choose(page, "#temperature-1");
  await go(page, "#/heat/ink/new", "#cure");
  assert.deepEqual([await value(page, "cure"), await page.locator("#draft-restored").count()], ["", 0]);
  await go(page, "#/more/settings", "#crew");
  await choose(page, "#temperature-0");
  await go(page, "#/heat/ink/new", "#cure");
  await page.locator("#draft-restored").waitFor();
  assert.equal(await value(page, "cure"), "320");
});

test("a tolerance is a fraction of an inch beside a length that is one", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { off_contact: "1/8", below_collar: "3 1/2" });
  await openChecks(page);
  // A millimeter, and a quarter of an inch.
  await waitForText(page, "[data-item=OffContact] .check-expected small", `± 1/32${NBSP}in`);
  await waitForText(page, "[data-item=BelowCollar] .check-expected small", `± 1/4${NBSP}in`);
});

test("a measured length asks for a keyboard with a fraction bar", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page);
  await addRun(page, { dryer: 320, off_contact: "1/8" });
  await openChecks(page);
  const keyboard = async (item) => {
    await press(page, `[data-item=${item}] [aria-expanded]`);
    return page.locator(`#measure-${item}`).getAttribute("inputmode");
  };
  assert.equal(await keyboard("OffContact"), "text");
  assert.equal(await keyboard("Dryer"), "decimal");
});

test("a temperature with its unit can be stepped up and down", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/heat/room", "#temperature");
  await fillForm(page, { temperature: "27 °C" });
  await press(page, "[data-step=temperature-more]");
  // 27 °C is 80.6 °F, by the definition of the scale.
  assert.equal(await value(page, "temperature"), "81.6");
});

test("a price has the sign of the region's currency until another is chosen", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/ink/component/new", "#name");
  await openAllSections(page);
  assert.equal(await unitOf(page, "cost"), "USD");
  await fillForm(page, { name: "Yellow", cost: "62" });
  await press(page, "#kind-1");
  await save(page);
  const price = async (text) => {
    await page.locator("#left").waitFor();
    await openAllSections(page);
    await page.locator(".page").getByText(text, { exact: true }).waitFor();
  };
  await price("$62.00");
  const chosen = async (code, text) => {
    const component = await hashOf(page);
    await go(page, "#/more/settings", "#crew");
    const loaded = page.waitForEvent("load");
    await page.locator("#currency").selectOption(code);
    await loaded;
    await go(page, component);
    await price(text);
  };
  await chosen("GTQ", `Q${NBSP}62.00`);
  await chosen("", "62.00");
});

/** Runs in the page before the app does. */
function preferEnglishFirst() {
  Object.defineProperty(navigator, "languages", { value: ["en-US", "en", "es"] });
}

function preferLatinAmerica() {
  Object.defineProperty(navigator, "languages", { value: ["es-419", "en-US"] });
}

test("a language without a region is written as in the browser's region", async (t) => {
  const page = await openShop(t, app, { settings: { language: "spanish" }, initScript: preferEnglishFirst });
  await newJob(page);
  await addGarments(page);
  await addRun(page, { guess: "27.5" });
  await press(page, page.locator(".run-row .icon-button").first());
  await page.locator("#guess").waitFor();
  assert.equal(await value(page, "guess"), "27.5");
});

test("a region that is no country does not decide the units", async (t) => {
  const page = await openShop(t, app, { initScript: preferLatinAmerica });
  await go(page, "#/heat/ink/new", "#cure");
  assert.equal(await unitOf(page, "cure"), "°F");
});

test("the mark of a number block is the decimal mark where a comma is written", async (t) => {
  const page = await openShop(t, app, { device: DESK, locale: "es-ES" });
  await addComponent(page, "Base");
  await addRecipe(page, "Brick", [["Base", 100]]);
  await startPot(page, { size: "500" });
  await page.locator("#heading").focus();
  await page.keyboard.type("60");
  await page.evaluate(() => document.body.dispatchEvent(new KeyboardEvent("keydown", { key: ".", code: "NumpadDecimal", bubbles: true, cancelable: true })));
  await page.keyboard.type("5");
  await waitForText(page, "#typed strong", "60,5");
});
