// A pot: weighed in, poured over, corrected, approved, made again; split, topped up, used, labelled.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { DESK, DIST, addGarments, addRun, go, newJob, openShop, premises, press, save, write } from "../support/shop.mjs";
import { add, component, holds, inStock, keys, ledger, pick, pot, reads, recipe, sayYes, shall, unfold } from "../support/ink-helpers.mjs";
import { serve } from "../../../src/build/serve.mjs";

const place = premises();
const NO_NETWORK = [/net::ERR_(CONNECTION_REFUSED|CONNECTION_RESET|FAILED|EMPTY_RESPONSE)/, /Failed to update a ServiceWorker|unknown error occurred when fetching the script/];

const METRIC = { settings: { language: "english", metric: true } };
const NBSP = "\u00a0";
const g = (number) => `${number}${NBSP}g`;
const percent = (number) => `${number}${NBSP}%`;
const says = (page, where, words) => page.locator(where).filter({ hasText: words }).first().waitFor();
const told = (page, where) => page.locator(where).innerText();

/** The published recipe: 20, 30 and 50 percent (`ink_recipe_by_weight.csv`), and blue beside it. */
const BRICK = [["Yellow", 20], ["Tinting white", 30], ["Mixing clear", 50]];

const SHELF = [["Yellow", "pigment"], ["Tinting white", "pigment"], ["Mixing clear", "base"], ["Blue", "pigment"]];

/** A shop with that recipe on screen. */
async function withRecipe(t, options = {}) {
  const page = await openShop(t, place, { ...METRIC, ...options });
  await inStock(page, SHELF, "Brick", BRICK);
  return page;
}

/** From a recipe to 750 g of what the client said yes to. Every figure is worked out by hand beside it. */
async function journey(page, name) {
  const card = await recipe(page, name, BRICK);
  const here = await pot(page, { size: "500", tare: "48", capacity: "700" });
  // 500 g: 100, 150 and 250, on a pot of 48.
  await shall(page, g("148.0"));
  await press(page, "#exact");
  await shall(page, g("298.0"));
  // Six grams too much of the white: 156 are 30 % of 520.
  await keys(page, "304");
  await says(page, "#comes-to", `${g("156.0")} more: ${g("6.0")} too much`);
  await press(page, "[data-key=enter]");
  await says(page, "#over h2", `${g("6.0")} too much Tinting white`);
  const table = (await page.locator(".pot-ways tbody td, .pot-ways tfoot td").allInnerTexts()).map((cell) => cell.split("\n"));
  assert.deepEqual(table, [
    [g("104.0"), `+${g("4.0")}`, percent(20)], [g("100.0"), "all in", percent(19.8)],
    [g("156.0"), "all in", percent(30)], [g("156.0"), "all in", percent(30.8)],
    [g("260.0"), `+${g("260.0")}`, percent(50)], [g("250.0"), `+${g("250.0")}`, percent(49.4)],
    [g("520.0"), `${g("20.0")} more`], [g("506.0"), `${g("6.0")} more`],
    ["kept"], ["off by 0.8 points"],
  ]);
  assert.equal(await page.locator("[data-key]").count(), 0, "nothing goes on until it is decided");
  await press(page, "#scale-rest");
  await shall(page, g("308.0"));
  await reads(page, "308");
  await shall(page, g("568.0"));
  await press(page, "#exact");
  await says(page, "#grams", g("520.0"));
  await says(page, "#revision", "Revision 1");

  // Two corrections: one by its own weight, one read off the scale with the pot on.
  await add(page, "Blue", "2.6", { note: "a touch more Blue" });
  await says(page, "#last", "a touch more Blue");
  await add(page, "Blue", "572", { total: true });
  await says(page, "#grams", g("524.0"));
  await says(page, "#revision", "Revision 1, changed 2 times since");
  // 104, 156, 260 and 4 of 524.
  assert.deepEqual(await holds(page), {
    Yellow: [percent(19.8), g("104.0")], "Tinting white": [percent(29.8), g("156.0")],
    "Mixing clear": [percent(49.6), g("260.0")], Blue: [percent(0.76), g("4.0")],
  });
  await press(page, "#matches");
  await page.locator("#stage[data-stage=Matched]").waitFor();
  await sayYes(page, "Moss and Daughters");
  await says(page, "#revision", "Revision 2");
  const poured = await ledger(page);
  assert.deepEqual(poured, { Yellow: 104, "Tinting white": 156, "Mixing clear": 260, Blue: 4 });

  await again750(page, card, poured);
  return { card, here, poured };
}

/** 750 g of it again: what the ledger gives, to a tenth of a gram. */
async function again750(page, card, poured) {
  await go(page, card, "#best");
  await says(page, "#best", "Revision 2");
  await press(page, "#again");
  await says(page, "#which", "Moss and Daughters");
  await page.locator("#grams").fill("750");
  await says(page, "#total", g(750));
  const weighed = await page.locator("#rows .ink-line").evaluateAll((rows) =>
    Object.fromEntries(rows.map((row) => [row.dataset.component, Number(row.querySelector(".ink-grams").textContent.replace(/[^0-9.]/g, ""))])));
  const sum = Object.values(poured).reduce((all, grams) => all + grams, 0);
  const byHand = Object.fromEntries(Object.entries(poured).map(([name, grams]) => [name, Math.round((grams * 7500) / sum) / 10]));
  assert.deepEqual(weighed, byHand);
  // The same worked out on paper, lest both be wrong.
  assert.deepEqual(weighed, { Yellow: 148.9, "Tinting white": 223.3, "Mixing clear": 372.1, Blue: 5.7 });
}

test("recipe, over-pour, two corrections, match, yes, 750 g again: the grams are those of the ledger, and all of it once more without a network", async (t) => {
  const server = await serve(DIST);
  t.after(() => server.close());
  const page = await openShop(t, { server, browser: place.browser }, { ...METRIC, expected: NO_NETWORK });
  for (const [name, kind] of SHELF) await component(page, name, kind === "base" ? 0 : 1);
  const { card, here, poured } = await journey(page, "Brick");
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  await server.close();

  await go(page, here, "#holds");
  await page.reload();
  await says(page, "#grams", g("524.0"));
  await says(page, "#stage", "Approved by Moss and Daughters");
  assert.deepEqual(await ledger(page), poured);
  await again750(page, card, poured);
  await journey(page, "Brick, second shirt");
});

test("an over-pour that is taken as it is becomes the recipe of the pot, and undo takes one thing back at a time", async (t) => {
  const page = await withRecipe(t);
  await pot(page, { size: "500" });
  await reads(page, "110");
  await page.locator("#over").waitFor();
  await press(page, "#undo");
  await shall(page, g("100.0"));
  assert.equal(await told(page, "#in-now"), g("0.0"));
  await reads(page, "110");
  await press(page, "#accept");
  await shall(page, g("260.0"));
  await press(page, "#exact");
  await shall(page, g("510.0"));
  await press(page, "#undo");
  await shall(page, g("260.0"));
  await reads(page, "260");
  await shall(page, g("510.0"));
  await reads(page, "510");
  // 110, 150 and 250 of 510.
  await says(page, "#grams", g("510.0"));
  assert.deepEqual(await holds(page), { Yellow: [percent(21.6), g("110.0")], "Tinting white": [percent(29.4), g("150.0")], "Mixing clear": [percent(49), g("250.0")] });
  await says(page, "#revision", "Revision 1, changed 1 time since");
});

test("what the pot does not hold or the shelf does not have is refused with the reason", async (t) => {
  const page = await withRecipe(t);
  const here = await pot(page, { size: "500", capacity: "510" });
  await reads(page, "120");
  // 120 g are 20 % of 600.
  await says(page, ".pot-way-choice", `${g("90.0")} more than the pot takes.`);
  assert.ok(await page.locator("#scale-rest").isDisabled());
  assert.ok(await page.locator("#accept").isDisabled(), "520 g do not fit either");
  await press(page, page.getByText("A larger pot").first());
  await write(page, { capacity: "515" });
  await save(page);
  await says(page, ".pot-way-choice", `${g("5.0")} more than the pot takes.`);
  await go(page, `${here}/edit`, "#capacity");
  await write(page, { capacity: "800" });
  await save(page);
  await page.locator("#scale-rest:enabled").waitFor();
  await press(page, "#scale-rest");
  await shall(page, g("300.0"));
});

test("the scale is read by keyboard at the desk, in any order, and a reading below the last is refused", async (t) => {
  const page = await withRecipe(t, { device: DESK });
  await pot(page, { size: "500" });
  await page.locator("#heading").focus();
  await page.keyboard.type("60");
  await page.keyboard.press("Enter");
  await says(page, "#to-go", g("40.0"));
  await page.keyboard.type("55");
  await page.keyboard.press("Enter");
  await says(page, "#comes-to", "no more than it showed before");
  await page.keyboard.press("Escape");
  await unfold(page, "all");
  await press(page, page.locator("button.pot-step").filter({ hasText: "Mixing clear" }));
  await shall(page, g("310.0"));
  // A scale zeroed before this one shows it by itself.
  await press(page, "#way");
  await shall(page, g("250.0"));
  await page.keyboard.type("25.x0.");
  assert.equal((await told(page, "#typed strong")), "25.0", "only a number can be typed");
  await page.keyboard.press("Enter");
  await says(page, "#in-now", g("0.0"));
  await page.reload();
  await says(page, "#to-go", g("40.0"));
});

test("a pot is split, topped up, poured together, used on a run and thrown away, and every line has its way back", async (t) => {
  const page = await withRecipe(t);
  const here = await pot(page, { size: "500", tare: "48" });
  for (const words of ["148.0", "298.0", "548.0"]) {
    await shall(page, g(words));
    await reads(page, words);
  }
  await says(page, "#grams", g("500.0"));
  // 200 g into a new pot: the scale then shows 348.
  await unfold(page, "more");
  await press(page, "#move-out");
  await page.locator("dialog #grams").fill("348");
  await press(page, "#move-save");
  await says(page, "#grams", g("300.0"));
  await says(page, "#revision", /^Revision 1$/);
  // Topped up to 360 in its own proportions: 12, 18 and 30.
  await press(page, "#top-up");
  await page.locator("#total").fill("360");
  assert.deepEqual((await page.locator("#additions strong").allInnerTexts()), [`+${g("12.0")}`, `+${g("18.0")}`, `+${g("30.0")}`]);
  await press(page, "#top-up-save");
  await says(page, "#grams", g("360.0"));
  await press(page, "#waste");
  await page.locator("dialog #grams").fill("1000");
  await press(page, "#waste-save");
  await page.locator("#grams-help .problem").waitFor();
  await page.locator("dialog #grams").fill("60");
  await press(page, "#waste-save");
  await says(page, "#grams", g("300.0"));
  await press(page, "#used");
  await page.locator("dialog #grams").fill("98");
  await page.locator("#pieces").fill("50");
  await press(page, "#used-save");
  await says(page, "#grams", g("50.0"));
  // The other half comes back in; it is the same ink, so the revision stands.
  await press(page, "#move-in");
  await press(page, "#all-of-it");
  await press(page, "#move-save");
  await says(page, "#grams", g("250.0"));
  await says(page, "#revision", /^Revision 1$/);
  await unfold(page, "history");
  await says(page, ".pot-ledger", "Printed: 50 pieces");
  // The waste taken back: 60 g more were there when the rest was used.
  await press(page, page.getByRole("button", { name: "Take back: Thrown away" }));
  await says(page, "#grams", g("310.0"));
  await press(page, page.getByRole("button", { name: "Put back: Thrown away" }));
  await says(page, "#grams", g("250.0"));
  await press(page, "#close");
  await page.locator("#stage[data-stage=Closed]").waitFor();
  await press(page, "#open");
  await unfold(page, "more");
  await press(page, "#delete");
  await says(page, ".notice", "is deleted");
  await press(page, ".notice-undo");
  await go(page, here, "#holds");
  await says(page, "#grams", g("250.0"));
});

test("a pot mixed by eye says what it will hold before it is said, and becomes a recipe with the client's yes", async (t) => {
  const page = await openShop(t, place, METRIC);
  await go(page, "#/pot/new", "#name");
  await write(page, { name: "Violet", capacity: "45" });
  await save(page);
  await page.locator("#holds").waitFor();
  const here = await page.evaluate(() => location.hash);
  await press(page, "#add");
  await says(page, ".empty", "Nothing to add yet");
  await inStock(page, SHELF);
  await go(page, here, "#holds");
  await add(page, "Blue", "30");
  await press(page, "#add");
  await pick(page, "Tinting white");
  await press(page, "[data-key=enter]");
  await page.locator(".pot-entry .problem").filter({ hasText: /\S/ }).waitFor();
  await keys(page, "20");
  await says(page, "#after h2", `Then it holds ${g("50.0")}`);
  await says(page, "#after", `The pot will be ${g("5.0")} too full.`);
  await press(page, "[data-key=back]");
  await press(page, "[data-key=back]");
  await keys(page, "10");
  assert.deepEqual((await page.locator("#after li").allInnerTexts()).map((row) => row.replace(/\s*\n\s*/g, "|").replaceAll(NBSP, " ")), ["Blue|was 100 %|75 %", "Tinting white|was 0 %|25 %"]);
  await press(page, "[data-key=enter]");
  // What is likely next is at hand: the same again, a reading of it, something else.
  await says(page, "#added", `The pot holds ${g("40.0")}`);
  await press(page, "#read-it");
  for (const [field, value] of [["l", "52"], ["a", "20"], ["b", "-31"]]) await page.locator(`#swatch-${field}`).fill(value);
  await press(page, "#reading-save");
  await says(page, "#read", "L* 52");
  await press(page, ".notice-undo");
  await page.locator("#read").filter({ hasNotText: "L* 52" }).waitFor();
  await press(page, "#same");
  await says(page, "#picked", "Tinting white");
  await keys(page, "2");
  await press(page, "[data-key=enter]");
  await says(page, "#added", `The pot holds ${g("42.0")}`);
  await press(page, ".notice-undo");
  await page.locator("#picked").waitFor();
  await go(page, here, "#holds");
  await unfold(page, "more");
  await sayYes(page, "");
  // From what was approved to its recipe, and to more of it.
  await press(page, "#to-recipe");
  await page.locator("#best").waitFor();
  await go(page, here, "#holds");
  await press(page, "#again");
  await page.locator("#which").waitFor();
  await go(page, here, "#holds");
  await says(page, "#revision", /^Revision 1$/);
  await go(page, "#/ink", ".ink-row");
  await says(page, "#recipes .ink-row", "Violet");
  // A change after the yes is told apart from it.
  await go(page, here, "#holds");
  await add(page, "Blue", "1");
  await says(page, "#revision", "Revision 1, changed 1 time since");
  await page.locator("#stage[data-stage=Mixed]").waitFor();
  await press(page, "#undo-last");
  await page.locator("#stage[data-stage=Approved]").waitFor();
});

test("what a print takes suggests the batch, and the pot begins with it", async (t) => {
  const page = await withRecipe(t);
  await newJob(page);
  await addGarments(page, { "size-s": 40, "size-m": 40, "size-l": 20 });
  await addRun(page, { ink: "brick" });
  await go(page, "#/ink", "#needs");
  await press(page, "#needs .ink-act");
  await write(page, { width: "25", height: "20", volume: "40" });
  // 0.05 m² × 40 cm³/m² × 1 g/cm³ × 100 pieces, and a tenth.
  await says(page, "#suggested", g("220.0"));
  await says(page, "#suggested", `${g("200.0")} go onto the garments, ${g("20.0")} stay`);
  await save(page);
  await page.locator("#size").waitFor();
  assert.equal(await page.locator("#size").inputValue(), "220");
  await press(page, page.locator("fieldset:has([name=run]) input").last());
  assert.equal(await page.locator("#size").inputValue(), "", "without a run nothing is suggested");
  await press(page, page.locator("fieldset:has([name=run]) input").first());
  assert.equal(await page.locator("#size").inputValue(), "220");
  await save(page);
  // 44, 66 and 110.
  await shall(page, g("44.0"));
});

test("a label says what the pot holds, is printed alone, and goes out as a picture", async (t) => {
  const page = await withRecipe(t);
  const here = await pot(page, { size: "100", name: "Brick, an uncommonly long name for a pot that is to be read across the room" });
  await reads(page, "20");
  await shall(page, g("50.0"));
  await reads(page, "50");
  await shall(page, g("100.0"));
  await reads(page, "100");
  await page.locator("#holds").waitFor();
  await go(page, `${here}/label`, "#paper");
  const alt = await page.locator("#paper").getAttribute("alt");
  for (const words of ["Brick", "Revision 1", `Yellow ${percent(20)}`, `Mixing clear ${percent(50)}`, g("100.0")]) assert.ok(alt.includes(words), `${words} in ${alt}`);
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

test("a device set to ounces weighs in ounces, as finely as the scale reads", async (t) => {
  const page = await withRecipe(t, { settings: { language: "english", metric: false } });
  await pot(page, { size: "16" });
  // A pound is 453.592 g (international avoirdupois): a fifth of it is 90.7 g on a scale of tenths, 3.199 oz.
  await shall(page, `3.199${NBSP}oz`);
  await reads(page, "3.2");
  await shall(page, `8.001${NBSP}oz`);
});

test("what is less than the scale shows is asked for and said, and left out it is another recipe", async (t) => {
  const page = await openShop(t, place, METRIC);
  await inStock(page, SHELF, "Hint", [["Mixing clear", 99], ["Yellow", 0.99], ["Blue", 0.01]]);
  await pot(page, { size: "300" });
  await reads(page, "297");
  await shall(page, g("300.0"));
  await reads(page, "300");
  // 30 mg, of which a scale of tenths shows nothing.
  await shall(page, g("300.1"));
  await says(page, "#too-fine", /asks for 0\.030\sg of it, less than the scale's 0\.1\sg\. From 50(\.0+)?\skg on/);
  await press(page, "#leave-out");
  await says(page, "#grams", g("300.0"));
  await says(page, "#revision", "Revision 1, changed 1 time since");
});

test("another size typed for a pot holds at the scale, and half of it is not called its revision", async (t) => {
  const page = await withRecipe(t);
  const here = await pot(page, { size: "500" });
  await reads(page, "104");
  await press(page, "#scale-rest");
  await go(page, `${here}/edit`, "#size");
  assert.equal(await page.locator("#size").inputValue(), "520");
  await write(page, { size: "600" });
  await save(page);
  await shall(page, g("120.0"));
  await press(page, "#undo");
  await shall(page, g("260.0"));
  await unfold(page, "all");
  await press(page, "#leave");
  await says(page, "#revision", "Revision 1, not as written");
});

test("a pot mixed by eye joins the recipe of its name unless another is typed", async (t) => {
  const page = await withRecipe(t);
  await go(page, "#/pot/new", "#name");
  await write(page, { name: "brick" });
  await save(page);
  await add(page, "Blue", "30");
  await unfold(page, "more");
  await press(page, "#yes");
  await says(page, "#joins", "Brick is a recipe already: this becomes its revision 2.");
  await page.locator("dialog #recipe").fill("Brick, dark");
  await says(page, "#joins", "It becomes the recipe Brick, dark");
  await page.locator("dialog #recipe").fill("Brick");
  await says(page, "#joins", "revision 2");
  await press(page, "#yes-save");
  await says(page, "#revision", /^Revision 2$/);
  await go(page, "#/ink", "#recipes .ink-row");
  assert.equal(await page.locator("#recipes .ink-row").count(), 1);
});

test("ounces with all their decimals stand on one line at the scale, and in their own columns after an over-pour", async (t) => {
  const page = await withRecipe(t, { settings: { language: "english", metric: false } });
  await pot(page, { size: "200" });
  // Rounded to the tenth of a gram that the scale shows, and told to the thousandth of an ounce.
  await shall(page, /^40\.00\d.oz$/);
  const lines = () => page.locator("#target").evaluate((target) => target.getBoundingClientRect().height / parseFloat(getComputedStyle(target).fontSize));
  await reads(page, "40");
  await shall(page, /^100\.00\d.oz$/);
  assert.ok((await lines()) < 1.5, "it is read in one line");
  await reads(page, "110");
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
  assert.ok(smalls.includes("all in") && !smalls.some((words) => words.startsWith("+0.000")), smalls.join("; "));
});
