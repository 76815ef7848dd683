// Drawdowns: which to make next, read by an instrument or from a photo.
import assert from "node:assert/strict";
import { test } from "node:test";
import { exportBackup } from "../support/backup.mjs";
import { MIDDLES, fillLab, mark, newComponentColour, openColour, photo } from "../support/colour.mjs";
import { press, save, waitForText } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { METRIC } from "../support/units.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();

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

/** Opens the form of a new drawdown from the colour page of its component, with the photo input. */
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

test("without drawdowns the page names the next drawdown to make", async (t) => {
  const page = await openShop(t, app, METRIC);
  await newComponentColour(page, "Violet");
  await waitForText(page, ".verdict", "Not known yet");
  await waitForText(page, ".colour-next", "Straight, thick enough that nothing shows through");
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
  await waitForText(page, ".colour-lines", /100\s?%/);
  await waitForText(page, ".verdict", "Partly known");
  await waitForText(page, ".page", "estimated from three numbers");
  await press(page, ".colour-lines .icon-button");
  await waitForText(page, ".verdict", "Not known yet");
  await press(page, ".notice-undo");
  await waitForText(page, ".verdict", "Partly known");
});

test("an instrument's curve can be pasted; an invalid one says why", async (t) => {
  const page = await openShop(t, app, METRIC);
  await newComponentColour(page, "Violet");
  await press(page, "#next-drawdown");
  await press(page, page.locator("summary").first());
  await page.locator("#values").fill("12 14 blue");
  await page.locator("#values-help .problem").waitFor();
  const values = Array.from({ length: 31 }, (_, band) => (band < 8 ? 30 - band : 6 + band / 10).toFixed(1));
  await page.locator("#values").fill(values.join("\t"));
  await waitForText(page, "[role=status]", "Curve of 31 bands");
  await save(page);
  await waitForText(page, ".colour-lines", "curve");
  await waitForText(page, ".page", "All curves were measured.");
});

test("a drawdown photo adds its difference to a measured patch", async (t) => {
  const page = await openDemo(t, app, METRIC);
  const [patch, drawdown] = ["#8b4a3c", "#8b503c"];
  const seen = difference(labOf(drawdown), labOf(patch));
  assert.ok(Math.hypot(...seen) > 3, "there is a difference to read");
  await openColour(page, "Brick red");
  await toDrawdownPhoto(page);
  // No photo before a patch is chosen; the component's own drawdowns are listed first.
  await waitForText(page, "#beside", "What's next to it?");
  assert.equal(await page.locator("[data-colour=picture]").count(), 0);
  const first = page.locator("button.colour-beside-row").first();
  assert.match(await first.innerText(), /Brick red\s+100/);
  await press(page, first);
  await page.locator("[data-colour=picture]").setInputFiles(await photo(page, { target: patch, sample: drawdown, card: "#f1f1f1" }));
  await page.locator("#board").waitFor();
  for (const [at, name] of ["Known patch", "Drawdown", "White or gray"].entries()) await waitForText(page, `label[for=mark-${at}]`, name);
  await mark(page, MIDDLES);
  await waitForText(page, "#photo-says", "compared with the known patch, the drawdown is");
  await waitForText(page, "#photo-says", "added to the known patch");
  // Without a patch nothing is saved; the photo and its marks stay.
  await press(page, "#beside-change");
  await waitForText(page, "#photo-says", "Choose what's next to it before the photo can be read.");
  await save(page);
  await waitForText(page, "p.problem", /./);
  await press(page, first);
  await waitForText(page, "#photo-says", "added to the known patch");
  assert.equal(await page.locator("#photo-says .caution").count(), 0, "these two are near each other");
  await save(page);
  await waitForText(page, ".colour-lines li >> nth=0", "from a photo");
  await waitForText(page, ".colour-lines li >> nth=0", "next to Brick red, 100");
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
  assert.equal(offer.filter((name) => name === "Brick red").length, 2);
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
  await newComponentColour(page, "Violet");
  await toDrawdownPhoto(page);
  await waitForText(page, "#beside", "Nothing measured by instrument yet");
  assert.equal(await page.locator("[data-colour=picture]").count(), 0);
  await fillLab(page, "card", [38, 14, -20]);
  await page.locator("[data-colour=picture]").setInputFiles(await photo(page, { target: patch, sample: drawdown, card: "#f1f1f1" }));
  await page.locator("#board").waitFor();
  await mark(page, MIDDLES);
  // Cameras disagree about the difference between blue-violet and green.
  await waitForText(page, "#photo-says .caution", "These two are far apart");
  await save(page);
  await waitForText(page, ".colour-rests", "Read from photos: 1 of 1");
  await waitForText(page, ".colour-lines", "next to Control card, L* 38 a* 14 b*");
  // Its picture is stored after it.
  await page.locator(".colour-lines li").first().getByRole("button", { name: /^1 photo/ }).waitFor();
  const [{ seen }] = await storedDrawdowns(page);
  const off = labDistance(seen.colour, plus([38, 14, -20], difference(labOf(drawdown), labOf(patch))));
  assert.ok(seen.colour.by === "photo" && off < 1.5, `off by ${off}`);
});
