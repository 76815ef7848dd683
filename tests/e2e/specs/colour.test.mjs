// Colour: matching a pot to its target, reading a difference from a photo, drawdowns, coverage.
import assert from "node:assert/strict";
import { test } from "node:test";
import { exportBackup } from "../support/backup.mjs";
import { go, press, save, waitForText } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();

const METRIC = { settings: { language: "english", metric: true } };

/** The match page of the demo pot that is being corrected. */
async function openFern(t, options = METRIC) {
  const page = await openDemo(t, app, options);
  await toFern(page);
  return page;
}

async function toFern(page) {
  await go(page, "#/ink", "#pots");
  await press(page, page.locator("#pots .menu-row, #pots a").filter({ hasText: "Fern" }).first());
  await press(page, "#to-match");
  await page.locator(".colour-words").waitFor();
}

/** The offered correction: grams and component. */
async function offer(page) {
  const text = await page.locator(".colour-way.first strong").innerText();
  const [, grams, name] = text.replaceAll("\u00a0", " ").match(/Add ([\d.]+) g of (\w+)/);
  return { grams: Number(grams), name };
}

/** Types a Lab reading into the field of that name. */
async function fillLab(page, name, [l, a, b]) {
  await page.locator(`#${name}-l`).fill(String(l));
  await page.locator(`#${name}-a`).fill(String(a));
  await page.locator(`#${name}-b`).fill(String(b));
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
  await waitForText(page, ".notice", `${way.grams} g of Blue in the pot.`.replace(" g", "\u00a0g"));
  // The page asks for a new reading; until then the colour is computed.
  await page.locator("#swatch").waitFor();
  await page.keyboard.press("Escape");
  await waitForText(page, ".colour-says", "one addition went in since it was read");
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

test("without drawdowns the page names the next drawdown to make", async (t) => {
  const page = await openShop(t, app, METRIC);
  await go(page, "#/ink/component/new", "#name");
  await page.locator("#name").fill("Violet");
  await press(page, "#kind-1");
  await save(page);
  await press(page, page.locator('a[href^="#/colour/component/"]').first());
  await waitForText(page, ".verdict", "Not known yet");
  await waitForText(page, ".colour-next", "It alone, so thick that nothing shines through");
  await press(page, "#next-drawdown");
  await page.locator("#share").waitFor();
  await save(page);
  await page.locator('[role="alert"].problem').first().waitFor();
  await fillLab(page, "seen", [28, 22, -34]);
  await page.locator("#share").fill("10");
  await save(page);
  await waitForText(page, "p.problem", /./);
  await page.locator("#share").fill("100");
  await save(page);
  await waitForText(page, ".colour-lines", "100\u00a0%");
  await waitForText(page, ".verdict", "Half known");
  await waitForText(page, ".page", "reconstructed from three numbers");
  await press(page, ".colour-lines .icon-button");
  await waitForText(page, ".verdict", "Not known yet");
  await press(page, ".notice-undo");
  await waitForText(page, ".verdict", "Half known");
});

test("an instrument's curve can be pasted; an invalid one says why", async (t) => {
  const page = await openShop(t, app, METRIC);
  await go(page, "#/ink/component/new", "#name");
  await page.locator("#name").fill("Violet");
  await press(page, "#kind-1");
  await save(page);
  await press(page, page.locator('a[href^="#/colour/component/"]').first());
  await press(page, "#next-drawdown");
  await press(page, page.locator("summary").first());
  await page.locator("#values").fill("12 14 blue");
  await page.locator("#values-help .problem").waitFor();
  const values = Array.from({ length: 31 }, (_, band) => (band < 8 ? 30 - band : 6 + band / 10).toFixed(1));
  await page.locator("#values").fill(values.join("\t"));
  await waitForText(page, "[role=status]", "Curve of 31 bands");
  await save(page);
  await waitForText(page, ".colour-lines", "curve");
  await waitForText(page, ".page", "Every curve behind it was measured.");
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
  await waitForText(page, ".colour-cover-row.best", "One hit");
});

test("a target is set from the recipe's screen colour and undone", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await go(page, "#/ink", "#recipes");
  await press(page, page.locator("#recipes a").filter({ hasText: "Bone" }).first());
  await press(page, page.locator('a[href^="#/colour/target/"]').first());
  await waitForText(page, ".lead", "No target yet");
  assert.equal(await page.locator("#target-hex").inputValue(), "#ece4d2");
  await press(page, "#target-save");
  await page.locator("#target-clear").waitFor();
  await press(page, ".notice-undo");
  await waitForText(page, ".lead", "No target yet");
});

/** A photo of target, sample and a white card side by side; `falls` darkens it to the right, in percent. */
async function photo(page, { target = "#5a7a3c", sample = "#6a7a3c", card = "#d8d8d8", falls = 0 } = {}) {
  const base64 = await page.evaluate(async ([target, sample, card, falls]) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [900, 600];
    const context = canvas.getContext("2d");
    [target, sample, card].forEach((colour, at) => {
      context.fillStyle = colour;
      context.fillRect(at * 300, 0, 300, 600);
    });
    if (falls) {
      const shade = context.createLinearGradient(0, 0, 900, 0);
      shade.addColorStop(0, "rgb(0 0 0 / 0%)");
      shade.addColorStop(1, `rgb(0 0 0 / ${falls}%)`);
      context.fillStyle = shade;
      context.fillRect(0, 0, 900, 600);
    }
    const blob = await new Promise((give) => canvas.toBlob(give, "image/png"));
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let text = "";
    for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
    return btoa(text);
  }, [target, sample, card, falls]);
  return { name: "swatches.png", mimeType: "image/png", buffer: Buffer.from(base64, "base64") };
}

/** Opens the photo dialog of the pot's reading with a picture in it. */
async function openPhoto(page, picture) {
  await press(page, "#read-pot");
  await press(page, "#swatch-1");
  await page.locator("[data-colour=picture]").setInputFiles(picture);
  await page.locator("#board").waitFor();
}

/** Presses the photo at these shares of its width and height, one after another. */
async function mark(page, at) {
  for (const [x, y] of at) {
    const box = await page.locator("#board").boundingBox();
    const position = { x: box.width * x, y: box.height * y };
    await page.locator("#board")[page.pressMethod]({ position });
  }
}

const MIDDLES = [[1 / 6, 0.5], [0.5, 0.5], [5 / 6, 0.5]];

test("three marks on a photo give the difference to the target", async (t) => {
  const page = await openFern(t);
  await openPhoto(page, await photo(page));
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says .colour-words", /redder|yellower/);
  await waitForText(page, "#photo-says", "laid on the target");
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
  const read = page.locator(".pot-line").filter({ hasText: "Swatch read" }).first();
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
  await waitForText(page, "#photo-says", "against the target, the garment is");
  await press(page, "#garment-save");
  await page.locator("dialog[open]").waitFor({ state: "detached" });
  await waitForText(page, ".colour-garment", /^(?!screen colour)[\s\S]*read/);
  await press(page, page.locator(".colour-garment").first());
  await page.locator("dialog .photo-tile").waitFor();
  await page.keyboard.press("Escape");
  // With the garment's colour known, a target can be read beside it.
  await press(page, "#target-1");
  await waitForText(page, "form", "Lay garment, target and something white");
  await press(page, "#target-0");
  await press(page, "#target-clear");
  await press(page, page.locator(".colour-garment").first());
  await waitForText(page, "dialog", "only the difference to a known colour is trusted");
});

test("clipped, patchy and unevenly lit photos are refused with advice", async (t) => {
  const page = await openFern(t);
  await openPhoto(page, await photo(page, { card: "#ffffff" }));
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says", "White or grey is overexposed");
  assert.ok(await page.locator("#reading-save").isDisabled(), "nothing is kept of it");
  await page.locator("[data-colour=picture]").setInputFiles(await photo(page, { sample: "#2a2a6c" }));
  await page.locator("#photo-says:empty").waitFor({ state: "attached" });
  await mark(page, [[1 / 3, 0.5], [0.5, 0.5], [5 / 6, 0.5]]);
  await waitForText(page, "#photo-says", "Target is not one plain colour there");
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
  await waitForText(page, ".colour-sizes", "45 % down");
});

/** Lab under D65 of an sRGB colour: IEC 61966-2-1 and CIE 15. */
function labOf(hex) {
  const linear = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4));
  const rows = [[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.072175], [0.0193339, 0.119192, 0.9503041]];
  const [x, y, z] = rows.map((row) => row.reduce((sum, weight, at) => sum + weight * linear[at], 0))
    .map((value, at) => value / [0.95047, 1, 1.08883][at])
    .map((value) => (value > 216 / 24389 ? Math.cbrt(value) : (value * 24389 / 27 + 16) / 116));
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Opens the colour page of a component of the demo. */
async function openColour(page, component) {
  await go(page, "#/ink/stock", "main .ink-row");
  await press(page, page.locator("main .ink-row").filter({ hasText: component }).first());
  await press(page, page.locator('a[href^="#/colour/component/"]').first());
  await page.locator(".colour-lines").waitFor();
}

/** Opens the form of a new drawdown from there, with the photo input. */
async function toDrawdownPhoto(page) {
  await press(page, page.locator('a[href$="/new"]').first());
  await press(page, "#seen-1");
  await page.locator("#beside").waitFor();
}

/** Drawdowns in this device's backup, oldest first. */
async function storedDrawdowns(page) {
  const { bytes } = await exportBackup(page);
  assert.ok(bytes.includes("photos/"), "the picture goes with it");
  const entries = journalLines(bytes).slice(1).map((line) => JSON.parse(line));
  return entries.flatMap(({ fact }) => fact?.ink?.drawn_down ?? []);
}

const difference = (to, from) => to.map((value, at) => value - from[at]);
const plus = (one, other) => one.map((value, at) => value + other[at]);
/** Euclidean Lab distance of a stored reading (in thousandths) from the expected one. */
const labDistance = ({ l, a, b }, [wantedL, wantedA, wantedB]) => Math.hypot(l / 1000 - wantedL, a / 1000 - wantedA, b / 1000 - wantedB);

test("a drawdown photo adds its difference to a measured patch", async (t) => {
  const page = await openDemo(t, app, METRIC);
  const [patch, drawdown] = ["#8b4a3c", "#8b503c"];
  const seen = difference(labOf(drawdown), labOf(patch));
  assert.ok(Math.hypot(...seen) > 3, "there is a difference to read");
  await openColour(page, "Warm red");
  await toDrawdownPhoto(page);
  // No photo before a patch is chosen; the component's own drawdowns are listed first.
  await waitForText(page, "#beside", "What lies beside it?");
  assert.equal(await page.locator("[data-colour=picture]").count(), 0);
  const first = page.locator("button.colour-beside-row").first();
  assert.match(await first.innerText(), /Warm red\s+100/);
  await press(page, first);
  await page.locator("[data-colour=picture]").setInputFiles(await photo(page, { target: patch, sample: drawdown, card: "#f1f1f1" }));
  await page.locator("#board").waitFor();
  for (const [at, name] of ["Known patch", "Drawdown", "White or grey"].entries()) await waitForText(page, `label[for=mark-${at}]`, name);
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says", "against the known patch, the drawdown is");
  await waitForText(page, "#photo-says", "laid on the known patch");
  // Without a patch nothing is saved; the photo and its marks stay.
  await press(page, "#beside-change");
  await waitForText(page, "#photo-says", "Nothing is read until it is known what lies beside it.");
  await save(page);
  await waitForText(page, "p.problem", /./);
  await press(page, first);
  await waitForText(page, "#photo-says", "laid on the known patch");
  assert.equal(await page.locator("#photo-says .caution").count(), 0, "these two are near each other");
  await save(page);
  await waitForText(page, ".colour-lines li >> nth=0", "from a photo");
  await waitForText(page, ".colour-lines li >> nth=0", "beside Warm red, 100");
  await waitForText(page, ".colour-rests", "Read from photos: 1 of 3");
  await page.locator(".colour-lines li").first().getByRole("button", { name: /^1 photo/ }).waitFor();
  // It is there after a reload, with its photo.
  await page.reload();
  await waitForText(page, ".colour-lines li >> nth=0", "from a photo");
  await press(page, page.locator(".colour-lines li").first().getByRole("button", { name: /^1 photo/ }));
  await page.locator("dialog .photo-tile img").waitFor();
  await page.keyboard.press("Escape");
  // A drawdown read from a photo is not offered as a patch.
  await toDrawdownPhoto(page);
  const offer = await page.locator("button.colour-beside-row strong").allTextContents();
  assert.equal(offer.filter((name) => name === "Warm red").length, 2);
  // Stored is the patch as the instrument read it plus the true difference.
  const stored = await storedDrawdowns(page);
  const read = stored.at(-1);
  const on = stored.find(({ component, share, seen }) => component === read.component && share === read.share && seen.colour?.by === "instrument");
  assert.equal(read.seen.colour.by, "photo");
  const { l, a, b } = on.seen.colour;
  const off = labDistance(read.seen.colour, plus([l, a, b].map((value) => value / 1000), seen));
  assert.ok(off < 1.5, `off by ${off}`);
});

test("without measured patches a drawdown photo uses a control card", async (t) => {
  const page = await openShop(t, app, METRIC);
  const [patch, drawdown] = ["#5a4a7a", "#3a7a5c"];
  await go(page, "#/ink/component/new", "#name");
  await page.locator("#name").fill("Violet");
  await press(page, "#kind-1");
  await save(page);
  await press(page, page.locator('a[href^="#/colour/component/"]').first());
  await toDrawdownPhoto(page);
  await waitForText(page, "#beside", "No instrument has read anything in this shop yet");
  assert.equal(await page.locator("[data-colour=picture]").count(), 0);
  await fillLab(page, "card", [38, 14, -20]);
  await page.locator("[data-colour=picture]").setInputFiles(await photo(page, { target: patch, sample: drawdown, card: "#f1f1f1" }));
  await page.locator("#board").waitFor();
  await mark(page, MIDDLES);
  // Cameras disagree about the difference between blue-violet and green.
  await waitForText(page, "#photo-says .caution", "These two are far apart");
  await save(page);
  await waitForText(page, ".colour-rests", "Read from photos: 1 of 1");
  await waitForText(page, ".colour-lines", "beside A control card, L* 38 a* 14 b*");
  const [{ seen }] = await storedDrawdowns(page);
  const off = labDistance(seen.colour, plus([38, 14, -20], difference(labOf(drawdown), labOf(patch))));
  assert.ok(seen.colour.by === "photo" && off < 1.5, `off by ${off}`);
});
