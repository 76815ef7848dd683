// Pots: from recipe to approval and making again; by eye, splitting, topping up, using, labels.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { OFFLINE_ERRORS } from "../support/console-errors.mjs";
import { BRICK, SHELF, addComponent, addRecipe, addToPot, approvePot, enterReading, importStock, ledgerTotals, openSection, pickComponent, potContents, startPot, typeOnKeypad, waitForTarget, withRecipe } from "../support/ink-helpers.mjs";
import { fillForm, go, hashOf, press, save, waitForText } from "../support/page.mjs";
import { openShop, ownServer, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob } from "../support/shop.mjs";
import { METRIC, NBSP, g, percent } from "../support/units.mjs";

const app = testServer();

/** From a recipe to 750 g of the approved ink. Every figure is worked out by hand beside it. */
async function recipeToPot(page, name) {
  const recipeHash = await addRecipe(page, name, BRICK);
  const potHash = await startPot(page, { size: "500", tare: "48", capacity: "700" });
  // 500 g: 100, 150 and 250, in a pot of 48 g.
  await waitForTarget(page, g("148.0"));
  await press(page, "#exact");
  await waitForTarget(page, g("298.0"));
  // Six grams too much white: 156 g are 30 % of 520 g.
  await typeOnKeypad(page, "304");
  await waitForText(page, "#comes-to", `${g("156.0")} more: ${g("6.0")} too much`);
  await press(page, "[data-key=enter]");
  await waitForText(page, "#over h2", `${g("6.0")} too much Tinting white`);
  const table = (await page.locator(".pot-ways tbody td, .pot-ways tfoot td").allInnerTexts()).map((cell) => cell.split("\n"));
  assert.deepEqual(table, [
    [g("104.0"), `+${g("4.0")}`, percent(20)], [g("100.0"), "done", percent(19.8)],
    [g("156.0"), "done", percent(30)], [g("156.0"), "done", percent(30.8)],
    [g("260.0"), `+${g("260.0")}`, percent(50)], [g("250.0"), `+${g("250.0")}`, percent(49.4)],
    [g("520.0"), `${g("20.0")} more`], [g("506.0"), `${g("6.0")} more`],
    ["unchanged"], ["off by 0.8 percentage points"],
  ]);
  assert.equal(await page.locator("[data-key]").count(), 0, "nothing goes on until it is decided");
  await press(page, "#scale-rest");
  await waitForTarget(page, g("308.0"));
  await enterReading(page, "308");
  await waitForTarget(page, g("568.0"));
  await press(page, "#exact");
  await waitForText(page, "#held", g("520.0"));
  await waitForText(page, "#revision", "Version 1");

  // Two corrections: one by its own weight, one read off the scale with the pot on.
  await addToPot(page, "Blue", "2.6", { note: "a little more Blue" });
  await waitForText(page, "#last", "a little more Blue");
  await addToPot(page, "Blue", "572", { total: true });
  await waitForText(page, "#held", g("524.0"));
  await waitForText(page, "#revision", "Version 1, changed 2 times since");
  // 104, 156, 260 and 4 of 524.
  assert.deepEqual(await potContents(page), {
    Yellow: [percent(19.8), g("104.0")], "Tinting white": [percent(29.8), g("156.0")],
    "Mixing clear": [percent(49.6), g("260.0")], Blue: [percent(0.76), g("4.0")],
  });
  await press(page, "#matches");
  await page.locator("#stage[data-stage=Matched]").waitFor();
  await approvePot(page, "Moss and Daughters");
  await waitForText(page, "#revision", "Version 2");
  const totals = await ledgerTotals(page);
  assert.deepEqual(totals, { Yellow: 104, "Tinting white": 156, "Mixing clear": 260, Blue: 4 });

  await expect750Again(page, recipeHash, totals);
  return { recipeHash, potHash, totals };
}

/** Checks that making 750 g again gives the ledger's proportions, to a tenth of a gram. */
async function expect750Again(page, recipeHash, totals) {
  await go(page, recipeHash, "#best");
  await waitForText(page, "#best", "Version 2");
  await press(page, "#again");
  await waitForText(page, "#which", "Moss and Daughters");
  await page.locator("#grams").fill("750");
  await waitForText(page, "#total", g(750));
  const weighed = await page.locator("#rows .ink-line").evaluateAll((rows) =>
    Object.fromEntries(rows.map((row) => [row.dataset.component, Number(row.querySelector(".ink-grams").textContent.replace(/[^0-9.]/g, ""))])));
  const sum = Object.values(totals).reduce((all, grams) => all + grams, 0);
  const byHand = Object.fromEntries(Object.entries(totals).map(([name, grams]) => [name, Math.round((grams * 7500) / sum) / 10]));
  assert.deepEqual(weighed, byHand);
  // The same by hand, in case both are wrong.
  assert.deepEqual(weighed, { Yellow: 148.9, "Tinting white": 223.3, "Mixing clear": 372.1, Blue: 5.7 });
}

test("from recipe to approved pot and 750 g again, online and offline", async (t) => {
  const { app: own, server } = await ownServer(t, app);
  const page = await openShop(t, own, { ...METRIC, expectedErrors: OFFLINE_ERRORS });
  for (const [name, kind] of SHELF) await addComponent(page, name, kind === "base" ? 0 : 1);
  const { recipeHash, potHash, totals } = await recipeToPot(page, "Brick");
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  await server.close();

  await go(page, potHash, "#holds");
  await page.reload();
  await waitForText(page, "#held", g("524.0"));
  await waitForText(page, "#stage", "Approved by Moss and Daughters");
  assert.deepEqual(await ledgerTotals(page), totals);
  await expect750Again(page, recipeHash, totals);
  await recipeToPot(page, "Brick, second shirt");
});

test("splitting, topping up, using and discarding ink can be undone", async (t) => {
  const page = await withRecipe(t, app);
  const potHash = await startPot(page, { size: "500", tare: "48" });
  for (const words of ["148.0", "298.0", "548.0"]) {
    await waitForTarget(page, g(words));
    await enterReading(page, words);
  }
  await waitForText(page, "#held", g("500.0"));
  // 200 g into a new pot: the scale then shows 348 g.
  await openSection(page, "more");
  await press(page, "#move-out");
  await page.locator("dialog #grams").fill("348");
  await press(page, "#move-save");
  await waitForText(page, "#held", g("300.0"));
  await waitForText(page, "#revision", /^Version 1$/);
  // Topped up to 360 in its own proportions: 12, 18 and 30.
  await press(page, "#top-up");
  await page.locator("#total").fill("360");
  assert.deepEqual((await page.locator("#additions strong").allInnerTexts()), [`+${g("12.0")}`, `+${g("18.0")}`, `+${g("30.0")}`]);
  await press(page, "#top-up-save");
  await waitForText(page, "#held", g("360.0"));
  await press(page, "#waste");
  await page.locator("dialog #grams").fill("1000");
  await press(page, "#waste-save");
  await page.locator("#grams-help .problem").waitFor();
  await page.locator("dialog #grams").fill("60");
  await press(page, "#waste-save");
  await waitForText(page, "#held", g("300.0"));
  await press(page, "#used");
  await page.locator("dialog #grams").fill("98");
  await page.locator("#pieces").fill("50");
  await press(page, "#used-save");
  await waitForText(page, "#held", g("50.0"));
  // The other part is poured back; it is the same ink, so the revision is unchanged.
  await press(page, "#move-in");
  await press(page, "#all-of-it");
  await press(page, "#move-save");
  await waitForText(page, "#held", g("250.0"));
  await waitForText(page, "#revision", /^Version 1$/);
  await openSection(page, "history");
  await waitForText(page, ".pot-ledger", "Printed: 50 pieces");
  // Without the waste there were 60 g more when the rest was used.
  await press(page, page.getByRole("button", { name: "Remove: Thrown away" }));
  await waitForText(page, "#held", g("310.0"));
  await press(page, page.getByRole("button", { name: "Put back: Thrown away" }));
  await waitForText(page, "#held", g("250.0"));
  await press(page, "#close");
  await page.locator("#stage[data-stage=Closed]").waitFor();
  await press(page, "#open");
  await openSection(page, "more");
  await press(page, "#delete");
  await waitForText(page, ".notice", "deleted");
  await press(page, ".notice-undo");
  await go(page, potHash, "#holds");
  await waitForText(page, "#held", g("250.0"));
});

test("a pot mixed by eye becomes a recipe when the client approves", async (t) => {
  const page = await openShop(t, app, METRIC);
  await go(page, "#/pot/new", "#name");
  await fillForm(page, { name: "Violet", capacity: "45" });
  await save(page);
  await page.locator("#holds").waitFor();
  const potHash = await hashOf(page);
  await press(page, "#add");
  await waitForText(page, ".empty", "No components yet");
  await importStock(page, SHELF);
  await go(page, potHash, "#holds");
  await addToPot(page, "Blue", "30");
  await press(page, "#add");
  await pickComponent(page, "Tinting white");
  await press(page, "[data-key=enter]");
  await page.locator(".pot-entry .problem").filter({ hasText: /\S/ }).waitFor();
  await typeOnKeypad(page, "20");
  await waitForText(page, "#after h2", `Batch will be ${g("50.0")}`);
  await waitForText(page, "#after", `The container will be overfull by ${g("5.0")}.`);
  await press(page, "[data-key=back]");
  await press(page, "[data-key=back]");
  await typeOnKeypad(page, "10");
  assert.deepEqual((await page.locator("#after li").allInnerTexts()).map((row) => row.replace(/\s*\n\s*/g, "|").replaceAll(NBSP, " ")), ["Blue|was 100%|75%", "Tinting white|was 0%|25%"]);
  await press(page, "[data-key=enter]");
  // Next steps are offered: a reading, or the same component again.
  await waitForText(page, "#added", `Batch is now ${g("40.0")}`);
  await press(page, "#read-it");
  for (const [field, value] of [["l", "52"], ["a", "20"], ["b", "-31"]]) await page.locator(`#swatch-${field}`).fill(value);
  await press(page, "#reading-save");
  await waitForText(page, "#read", "L* 52");
  await press(page, ".notice-undo");
  await page.locator("#read").filter({ hasNotText: "L* 52" }).waitFor();
  await press(page, "#same");
  await waitForText(page, "#picked", "Tinting white");
  await typeOnKeypad(page, "2");
  await press(page, "[data-key=enter]");
  await waitForText(page, "#added", `Batch is now ${g("42.0")}`);
  await press(page, ".notice-undo");
  await page.locator("#picked").waitFor();
  await go(page, potHash, "#holds");
  await openSection(page, "more");
  await approvePot(page, "");
  // The approved pot links to its recipe and to making it again.
  await press(page, "#to-recipe");
  await page.locator("#best").waitFor();
  await go(page, potHash, "#holds");
  await press(page, "#again");
  await page.locator("#which").waitFor();
  await go(page, potHash, "#holds");
  await waitForText(page, "#revision", /^Version 1$/);
  await go(page, "#/ink", ".ink-row");
  await waitForText(page, "#recipes .ink-row", "Violet");
  // A change after the approval is shown as such.
  await go(page, potHash, "#holds");
  await addToPot(page, "Blue", "1");
  await waitForText(page, "#revision", "Version 1, changed 1 time since");
  await page.locator("#stage[data-stage=Mixed]").waitFor();
  await press(page, "#undo-last");
  await page.locator("#stage[data-stage=Approved]").waitFor();
});

test("the ink per print suggests the batch size of a pot", async (t) => {
  const page = await withRecipe(t, app);
  await newJob(page);
  await addGarments(page, { "size-s": 40, "size-m": 40, "size-l": 20 });
  await addRun(page, { ink: "brick" });
  await go(page, "#/ink", "#needs");
  await press(page, "#needs .ink-act");
  await fillForm(page, { width: "25", height: "20", volume: "40" });
  // 0.05 m² × 40 cm³/m² × 1 g/cm³ × 100 pieces, and a tenth.
  await waitForText(page, "#suggested", g("220.0"));
  await waitForText(page, "#suggested", `${g("200.0")} on the garments, ${g("20.0")} left`);
  await save(page);
  await page.locator("#size").waitFor();
  assert.equal(await page.locator("#size").inputValue(), "220");
  await press(page, page.locator("fieldset:has([name=run]) input").last());
  assert.equal(await page.locator("#size").inputValue(), "", "without a run nothing is suggested");
  await press(page, page.locator("fieldset:has([name=run]) input").first());
  assert.equal(await page.locator("#size").inputValue(), "220");
  await save(page);
  // 44, 66 and 110.
  await waitForTarget(page, g("44.0"));
});

test("a small run's pot is as large as the charge of a screen", async (t) => {
  const page = await withRecipe(t, app);
  await newJob(page);
  await addGarments(page, { "size-s": 18, "size-m": "", "size-l": "" });
  await addRun(page, { ink: "brick" });
  await go(page, "#/ink", "#needs");
  await press(page, "#needs .ink-act");
  await fillForm(page, { width: "25", height: "20", volume: "40" });
  // Two grams each for 18 pieces, and a tenth: no screen is flooded with 39.6 g.
  await waitForText(page, "#suggested", g("150.0"));
  await waitForText(page, "#charge", `The run uses ${g("39.6")}`);
  await save(page);
  await page.locator("#size").waitFor();
  assert.equal(await page.locator("#size").inputValue(), "150");
  await go(page, "#/ink", "#needs");
  await waitForText(page, "#needs", `${g("150")} to mix`);
  await waitForText(page, "#needs", `The run uses ${g("39.6")}`);
  // With less in the field that much is mixed.
  await press(page, "#needs .ink-act");
  await fillForm(page, { size: "80" });
  await save(page);
  await waitForTarget(page, g("16.0"));
});

test("a pot's label is printed alone and downloads as a picture", async (t) => {
  const page = await withRecipe(t, app);
  const potHash = await startPot(page, { size: "100", name: "Brick, an uncommonly long name for a pot that is to be read across the room" });
  await enterReading(page, "20");
  await waitForTarget(page, g("50.0"));
  await enterReading(page, "50");
  await waitForTarget(page, g("100.0"));
  await enterReading(page, "100");
  await page.locator("#holds").waitFor();
  await go(page, `${potHash}/label`, "#paper");
  const alt = await page.locator("#paper").getAttribute("alt");
  for (const words of ["Brick", "Version 1", `Yellow ${percent(20)}`, `Mixing clear ${percent(50)}`, g("100.0")]) assert.ok(alt.includes(words), `${words} in ${alt}`);
  await page.locator("#paper").evaluate((paper) => paper.decode());
  const arrives = page.waitForEvent("download");
  await press(page, "#keep");
  const file = await arrives;
  assert.match(file.suggestedFilename(), /^Brick.*1\.png$/);
  assert.deepEqual([...readFileSync(await file.path()).subarray(0, 8)], [137, 80, 78, 71, 13, 10, 26, 10]);
  await page.evaluate(() => { window.print = () => { window.printed = true; }; });
  await press(page, "#print");
  assert.ok(await page.evaluate(() => window.printed));
  await page.emulateMedia({ media: "print" });
  const seen = await page.locator("body *").evaluateAll((all) => all.filter((one) => one.checkVisibility() && one.getClientRects().length > 0 && one.textContent.trim() !== "").map((one) => one.tagName));
  assert.deepEqual(seen.filter((tag) => ["P", "A", "BUTTON", "H1", "NAV"].includes(tag)), [], "only the label is on paper");
  assert.ok(await page.locator("#paper").isVisible());
});

test("a pot mixed by eye joins the recipe of its name by default", async (t) => {
  const page = await withRecipe(t, app);
  await go(page, "#/pot/new", "#name");
  await fillForm(page, { name: "brick" });
  await save(page);
  await addToPot(page, "Blue", "30");
  await openSection(page, "more");
  await press(page, "#yes");
  await waitForText(page, "#joins", "Brick is already a recipe: this becomes its version 2.");
  await page.locator("dialog #recipe").fill("Brick, dark");
  await waitForText(page, "#joins", "Creates the recipe Brick, dark");
  await page.locator("dialog #recipe").fill("Brick");
  await waitForText(page, "#joins", "version 2");
  await press(page, "#yes-save");
  await waitForText(page, "#revision", /^Version 2$/);
  await go(page, "#/ink", "#recipes .ink-row");
  assert.equal(await page.locator("#recipes .ink-row").count(), 1);
});

test("making a recipe again opens without a mistake", async (t) => {
  const page = await withRecipe(t, app);
  await press(page, page.locator("a[href$='/again']").first());
  await page.locator("#grams").waitFor();
  assert.equal(await page.locator(".problem:visible").count(), 0);
  assert.ok(await page.locator("#weigh").isDisabled());
});
