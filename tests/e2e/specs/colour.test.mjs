// Colour: matching a pot to its target, reading a difference from a photo, targets, coverage.
import assert from "node:assert/strict";
import { test } from "node:test";
import { MIDDLES, fillLab, mark, photo } from "../support/colour.mjs";
import { go, press, waitForText } from "../support/page.mjs";
import { openDemo, testServer } from "../support/setup.mjs";
import { METRIC } from "../support/units.mjs";

const app = testServer();

/** The match page of the demo pot that is being corrected. */
async function openFern(t) {
  const page = await openDemo(t, app, METRIC);
  await go(page, "#/ink", "#pots");
  await press(page, page.locator("#pots .menu-row, #pots a").filter({ hasText: "Fern" }).first());
  await press(page, "#to-match");
  await page.locator(".colour-words").waitFor();
  return page;
}

/** Opens the page of the target of a recipe of the demo. */
async function openColourTarget(page, recipe) {
  await go(page, "#/ink", "#recipes");
  await press(page, page.locator("#recipes a").filter({ hasText: recipe }).first());
  await press(page, page.locator('a[href^="#/colour/target/"]').first());
}

/** The offered correction: grams and component. */
async function offer(page) {
  const text = await page.locator(".colour-way.first strong").innerText();
  const [, grams, name] = text.replaceAll("\u00a0", " ").match(/Add ([\d.]+) g of (\w+)/);
  return { grams: Number(grams), name };
}

/** Opens the photo dialog of the pot's reading with a picture in it. */
async function openPhoto(page, picture) {
  await press(page, "#read-pot");
  await press(page, "#swatch-1");
  await page.locator("[data-colour=picture]").setInputFiles(picture);
  await page.locator("#board").waitFor();
}

test("a pot's match offers a correction, which undo removes", async (t) => {
  const page = await openFern(t);
  // The demo's fern lacks blue by construction: shared/src/demo/colour.rs.
  await waitForText(page, ".colour-words", /yellower|redder/);
  await waitForText(page, ".colour-says", "by instrument");
  const way = await offer(page);
  assert.equal(way.name, "Blue");
  assert.ok(way.grams > 0.4 && way.grams < 3, `${way.grams} g`);
  await press(page, ".colour-way.first");
  assert.equal(Number(await page.locator("#grams_1").inputValue()), way.grams);
  await page.locator("#grams_1").fill("lots");
  await press(page, "#poured");
  await page.locator("#grams_1-help .problem").waitFor();
  await page.locator("#grams_1").fill(String(way.grams));
  await press(page, "#poured");
  await waitForText(page, ".notice", `${way.grams} g of Blue added to the batch.`.replace(" g", "\u00a0g"));
  // The page asks for a new reading; until then the colour is computed.
  await page.locator("#swatch").waitFor();
  await page.keyboard.press("Escape");
  await waitForText(page, ".colour-says", "one addition since the last reading");
  await page.locator(".verdict.good").waitFor();
  await press(page, ".notice-undo");
  await waitForText(page, ".colour-says", "by instrument");
  assert.deepEqual(await offer(page), way);
});

test("a reading replaces the computed colour, also after a reload", async (t) => {
  const page = await openFern(t);
  await press(page, "#read-pot");
  await page.locator("#swatch-l").fill("40");
  assert.ok(await page.locator("#reading-save").isDisabled(), "one number is no colour");
  await page.locator("#swatch-a").fill("x");
  await page.locator("#swatch-help .problem").waitFor();
  await fillLab(page, "swatch", ["58,2", "-31.5", "28"]);
  await press(page, "#reading-save");
  await page.locator("#swatch").waitFor({ state: "detached" });
  const before = await page.locator(".colour-words").innerText();
  await page.reload();
  await page.locator(".colour-words").waitFor();
  assert.equal(await page.locator(".colour-words").innerText(), before);
});

test("coverage is shown on the garments of runs and on any colour", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await go(page, "#/ink", "#recipes");
  await press(page, page.locator("#recipes a").filter({ hasText: "Apricot" }).first());
  await press(page, page.locator('a[href^="#/colour/cover/"]').first());
  await page.locator("#cover-answer").waitFor();
  assert.equal(await page.locator(".colour-cover-row").count(), 5);
  await waitForText(page, "#cover-answer", "covers");
  const minutes = () => page.locator(".colour-cover-row .colour-covers").allInnerTexts();
  const before = await minutes();
  await press(page, page.locator("summary").last());
  await page.locator("#pieces").fill("4000");
  await page.locator(".colour-cover-row").filter({ hasText: "h" }).first().waitFor();
  assert.notDeepEqual(await minutes(), before);
  await page.locator("#pieces").fill("many");
  await page.locator("#pieces-help .problem").waitFor();
  await page.locator("#pieces").fill("40");
  await press(page, page.locator("fieldset:has([name=cover-on]) input").last());
  // On cloth of the ink's own colour one hit covers.
  await page.locator("#cloth-hex").fill("#f0b384");
  await waitForText(page, ".colour-cover-row.best", "One stroke");
});

test("a target is set from the recipe's screen colour and undone", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await openColourTarget(page, "Bone");
  await waitForText(page, ".lead", "No target yet");
  assert.equal(await page.locator("#target-hex").inputValue(), "#ece4d2");
  await press(page, "#target-save");
  await page.locator("#target-clear").waitFor();
  await press(page, ".notice-undo");
  await waitForText(page, ".lead", "No target yet");
});

test("a mistyped number is named by its axis as it is written", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await openColourTarget(page, "Bone");
  await press(page, "#target-0");
  for (const [field, axis] of [["l", "L*"], ["a", "a*"], ["b", "b*"]]) {
    await page.locator(`#target-${field}`).fill("light");
    await waitForText(page, "#target-help .problem", `${axis}: Enter a number.`);
    assert.match(await page.locator("#target-help .problem").innerText(), axis === "L*" ? /^L\*/ : /^[ab]\*/);
    await page.locator(`#target-${field}`).fill("");
  }
});

test("three marks on a photo give the difference to the target", async (t) => {
  const page = await openFern(t);
  await openPhoto(page, await photo(page));
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says .colour-words", /redder|yellower/);
  await waitForText(page, "#photo-says", "added to the known target");
  await press(page, "#reading-save");
  await waitForText(page, ".colour-says", "from a photo");
  // Target and sample the same: no difference is left.
  await openPhoto(page, await photo(page, { sample: "#5a7a3c" }));
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says", "Looks the same");
  await press(page, "#reading-save");
  await waitForText(page, ".colour-says", "Looks the same");
  // The pot is marked as matched, and the photo is stored with the reading.
  await press(page, "#matches");
  await page.locator("#stage[data-stage=Matched]").waitFor();
  await press(page, "#history > summary");
  await waitForText(page, ".pot-ledger li >> nth=0", "reading");
  const read = page.locator(".pot-line").filter({ hasText: "Swatch measured" }).first();
  await read.filter({ hasText: "1 photo" }).waitFor();
  await press(page, read);
  await page.locator(".photo-tile img").waitFor();
  await waitForText(page, "#read", "from a photo");
});

test("a garment's colour is read from a photo if there is a target", async (t) => {
  const page = await openFern(t);
  await press(page, "#to-target");
  await press(page, page.locator(".colour-garment").first());
  await page.locator("dialog #garment").waitFor();
  await press(page, "#garment-1");
  await waitForText(page, "dialog", "Lay target, garment and something white");
  await page.locator("dialog [data-colour=picture]").setInputFiles(await photo(page));
  await page.locator("#board").waitFor();
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says", "compared with the target, the garment is");
  await press(page, "#garment-save");
  await page.locator("dialog[open]").waitFor({ state: "detached" });
  await waitForText(page, ".colour-garment", /^(?!on-screen color)[\s\S]*measured/);
  await press(page, page.locator(".colour-garment").first());
  await page.locator("dialog .photo-tile").waitFor();
  await page.keyboard.press("Escape");
  // With the garment's colour known, a target can be read beside it.
  await press(page, "#target-1");
  await waitForText(page, "form", "Lay garment, target and something white");
  await press(page, "#target-0");
  await press(page, "#target-clear");
  await press(page, page.locator(".colour-garment").first());
  await waitForText(page, "dialog", "only shows the difference from a known color");
});

test("clipped, patchy and unevenly lit photos are refused with advice", async (t) => {
  const page = await openFern(t);
  await openPhoto(page, await photo(page, { card: "#ffffff" }));
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says", "White or gray is overexposed");
  assert.ok(await page.locator("#reading-save").isDisabled(), "nothing is kept of it");
  await page.locator("[data-colour=picture]").setInputFiles(await photo(page, { sample: "#2a2a6c" }));
  await page.locator("#photo-says:empty").waitFor({ state: "attached" });
  await mark(page, [[1 / 3, 0.5], [0.5, 0.5], [5 / 6, 0.5]]);
  await waitForText(page, "#photo-says", "Target is not one plain color there");
  await page.locator("[data-colour=picture]").setInputFiles(await photo(page, { falls: 45 }));
  await page.locator("#photo-says:empty").waitFor({ state: "attached" });
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says", "The light differs too much");
  await page.locator("[data-colour=picture]").setInputFiles({ name: "x.png", mimeType: "image/png", buffer: Buffer.from("no picture") });
  await waitForText(page, "dialog .problem", "could not be read");
});

test("the marks can be placed and moved with the keyboard alone", async (t) => {
  const page = await openFern(t);
  await openPhoto(page, await photo(page));
  await page.locator("#board").focus();
  for (let which = 0; which < 3; which++) {
    await page.locator(`#mark-${which}`).focus();
    await page.keyboard.press("Space");
    await page.locator("#board").focus();
    await page.keyboard.press("Shift+ArrowUp");
  }
  await waitForText(page, "#photo-says .colour-words", /redder|yellower|lighter/);
  await waitForText(page, ".colour-sizes", "45% down");
});
