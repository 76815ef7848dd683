// A pot at the scale: readings and targets, over-pours, what is too fine or too little.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK } from "../support/browser.mjs";
import { SHELF, enterReading, importStock, openSection, potContents, startPot, waitForTarget, withRecipe } from "../support/ink-helpers.mjs";
import { fillForm, go, press, save, waitForText } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { METRIC, NBSP, OUNCES, g, percent } from "../support/units.mjs";

const app = testServer();

const textOf = (page, where) => page.locator(where).innerText();

test("an accepted over-pour changes the pot's recipe; undo goes step by step", async (t) => {
  const page = await withRecipe(t, app);
  await startPot(page, { size: "500" });
  await enterReading(page, "110");
  await page.locator("#over").waitFor();
  await press(page, "#undo");
  await waitForTarget(page, g("100.0"));
  assert.equal(await textOf(page, "#in-now"), g("0.0"));
  await enterReading(page, "110");
  await press(page, "#accept");
  await waitForTarget(page, g("260.0"));
  await press(page, "#exact");
  await waitForTarget(page, g("510.0"));
  await press(page, "#undo");
  await waitForTarget(page, g("260.0"));
  await enterReading(page, "260");
  await waitForTarget(page, g("510.0"));
  await enterReading(page, "510");
  // 110, 150 and 250 of 510.
  await waitForText(page, "#held", g("510.0"));
  assert.deepEqual(await potContents(page), { Yellow: [percent(21.6), g("110.0")], "Tinting white": [percent(29.4), g("150.0")], "Mixing clear": [percent(49), g("250.0")] });
  await waitForText(page, "#revision", "Version 1, changed 1 time since");
});

test("an over-pour that exceeds the pot's capacity is refused", async (t) => {
  const page = await withRecipe(t, app);
  const potHash = await startPot(page, { size: "500", capacity: "510" });
  await enterReading(page, "120");
  // 120 g are 20 % of 600.
  await waitForText(page, ".pot-way-choice", `${g("90.0")} more than the container holds.`);
  assert.ok(await page.locator("#scale-rest").isDisabled());
  assert.ok(await page.locator("#accept").isDisabled(), "520 g do not fit either");
  await press(page, page.getByText("Larger container").first());
  await fillForm(page, { capacity: "515" });
  await save(page);
  await waitForText(page, ".pot-way-choice", `${g("5.0")} more than the container holds.`);
  await go(page, `${potHash}/edit`, "#capacity");
  await fillForm(page, { capacity: "800" });
  await save(page);
  await page.locator("#scale-rest:enabled").waitFor();
  await press(page, "#scale-rest");
  await waitForTarget(page, g("300.0"));
});

test("readings are typed in any order; one below the last is refused", async (t) => {
  const page = await withRecipe(t, app, { device: DESK });
  await startPot(page, { size: "500" });
  await page.locator("#heading").focus();
  await page.keyboard.type("60");
  await page.keyboard.press("Enter");
  await waitForText(page, "#to-go", g("40.0"));
  await page.keyboard.type("55");
  await page.keyboard.press("Enter");
  await waitForText(page, "#comes-to", "not more than the last reading");
  await page.keyboard.press("Escape");
  await openSection(page, "all");
  await press(page, page.locator("button.pot-step").filter({ hasText: "Mixing clear" }));
  await waitForTarget(page, g("310.0"));
  // With the scale zeroed before it, its own weight is the target.
  await press(page, "#way");
  await waitForTarget(page, g("250.0"));
  await page.keyboard.type("25.x0.");
  assert.equal((await textOf(page, "#typed strong")), "25.0", "only a number can be typed");
  await page.keyboard.press("Enter");
  await waitForText(page, "#in-now", g("0.0"));
  await page.reload();
  await waitForText(page, "#to-go", g("40.0"));
});

test("on a device with ounces the scale works in ounces", async (t) => {
  const page = await withRecipe(t, app, OUNCES);
  await startPot(page, { size: "16" });
  // A pound is 453.592 g (international avoirdupois): a fifth of it is 90.7 g on a scale of tenths, 3.199 oz.
  await waitForTarget(page, `3.199${NBSP}oz`);
  await enterReading(page, "3.2");
  await waitForTarget(page, `8.001${NBSP}oz`);
});

test("an amount below the scale's step is reported and can be left out", async (t) => {
  const page = await openShop(t, app, METRIC);
  await importStock(page, SHELF, "Hint", [["Mixing clear", 99], ["Yellow", 0.99], ["Blue", 0.01]]);
  await startPot(page, { size: "300" });
  await enterReading(page, "297");
  await waitForTarget(page, g("300.0"));
  await enterReading(page, "300");
  // 30 mg, of which a scale of tenths shows nothing.
  await waitForTarget(page, g("300.1"));
  await waitForText(page, "#too-fine", /needs 0\.030\sg of this, less than the scale's 0\.1\sg\. From 50(\.0+)?\skg up/);
  await press(page, "#leave-out");
  await waitForText(page, "#held", g("300.0"));
  await waitForText(page, "#revision", "Version 1, changed 1 time since");
});

test("changing a pot's size changes its targets at the scale", async (t) => {
  const page = await withRecipe(t, app);
  const potHash = await startPot(page, { size: "500" });
  await enterReading(page, "104");
  await press(page, "#scale-rest");
  await waitForTarget(page, g("260.0"));
  await go(page, `${potHash}/edit`, "#size");
  assert.equal(await page.locator("#size").inputValue(), "520");
  await fillForm(page, { size: "600" });
  await save(page);
  await waitForTarget(page, g("120.0"));
  await press(page, "#undo");
  await waitForTarget(page, g("260.0"));
  await openSection(page, "all");
  await press(page, "#leave");
  await waitForText(page, "#revision", "Version 1, changed");
});

test("ounces with three decimals fit the scale and the over-pour table", async (t) => {
  const page = await withRecipe(t, app, OUNCES);
  await startPot(page, { size: "200" });
  // Rounded to the scale's tenth of a gram, shown to the thousandth of an ounce.
  await waitForTarget(page, /^40\.00\d.oz$/);
  const lines = () => page.locator("#target").evaluate((target) => target.getBoundingClientRect().height / parseFloat(getComputedStyle(target).fontSize));
  await enterReading(page, "40");
  await waitForTarget(page, /^100\.00\d.oz$/);
  assert.ok((await lines()) < 1.5, "it is read in one line");
  await enterReading(page, "110");
  await page.locator("#over").waitFor();
  const wide = await page.locator(".pot-ways td strong").evaluateAll((weights) => weights
    .filter((weight) => {
      const range = document.createRange();
      range.selectNodeContents(weight);
      return range.getBoundingClientRect().right > weight.closest("td").getBoundingClientRect().right;
    })
    .map((weight) => weight.innerText));
  assert.deepEqual(wide, []);
  const smalls = await page.locator(".pot-ways small").allInnerTexts();
  assert.ok(smalls.includes("done") && !smalls.some((words) => words.startsWith("+0.000")), smalls.join("; "));
});

test("a component that is a little short can be left at that", async (t) => {
  const page = await withRecipe(t, app);
  await startPot(page, { size: "500" });
  assert.equal(await page.locator("#still-missing").count(), 0);
  await enterReading(page, "99.5");
  await waitForText(page, "#still-missing", `${g("0.5")} of Yellow still to add`);
  await press(page, "#enough");
  await waitForTarget(page, g("249.5"));
  await page.locator("#still-missing").waitFor({ state: "detached" });
});
