// Ink: recipes in both conventions, making them again, components and stock.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, PHONE } from "../support/browser.mjs";
import { importStock } from "../support/ink-helpers.mjs";
import { fillForm, go, hashOf, openAllSections, press, save, waitForText } from "../support/page.mjs";
import { visitPages } from "../support/pages/index.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks } from "../support/shop.mjs";
import { smallTargets } from "../support/touch.mjs";
import { METRIC, NBSP, g, percent } from "../support/units.mjs";

const app = testServer();

const texts = (page, where) => page.locator(where).allInnerTexts();

/** Adds a row to the recipe form; a component that is not on the shelf yet is created in the dialog. */
async function part(page, name, share, { kind = 0, onTop = false } = {}) {
  const at = await page.locator(".ink-part").count();
  await press(page, onTop ? "#add-on-top" : "#add-part");
  await page.locator("dialog[open]").waitFor();
  const known = page.locator(`dialog [data-component="${name}"]`);
  if (await known.count()) {
    await press(page, known);
  } else {
    if (await page.locator("#new-component").count()) await press(page, "#new-component");
    await page.locator("#component-name").fill(name);
    await press(page, `#kind-${kind}`);
    await press(page, "#add-component");
  }
  await page.locator("dialog[open]").waitFor({ state: "detached" });
  await page.locator(`#percent-${at}`).fill(share);
}

/** Saves a recipe with these parts; ends on its card. */
async function recipe(page, name, parts) {
  await go(page, "#/ink/new", "#name");
  await page.locator("#name").fill(name);
  for (const [component, share, how] of parts) await part(page, component, share, how);
  await save(page);
  await page.locator("#best").waitFor();
}

/** Grams to weigh by component, as shown. */
const weighed = (page) =>
  page.locator("#rows .ink-line").evaluateAll((rows) => Object.fromEntries(rows.map((row) => [row.dataset.component, row.querySelector(".ink-grams").textContent])));

test("a recipe that does not add up is repaired and saved", async (t) => {
  const page = await openShop(t, app, METRIC);
  await press(page, ".places a:nth-child(3)");
  await press(page, ".empty .button");
  await page.locator("#name").fill("Brick");
  await part(page, "Mixing clear", "48");
  await part(page, "Yellow", "20", { kind: 1 });
  await part(page, "Tinting white", "30", { kind: 1 });
  await waitForText(page, "#sum", `Adds up to ${percent(98)}. ${percent(2)} is missing.`);
  await save(page);
  await page.locator("#sum .problem").waitFor();
  assert.equal(await page.locator("#percent-1").inputValue(), "20", "nothing typed is lost");
  await waitForText(page, "[data-fix=fill]", "Set Mixing clear to 50");
  await press(page, "[data-fix=fill]");
  await waitForText(page, "#sum", `Adds up to ${percent(100).replace(NBSP, " ")}`);
  await save(page);
  await waitForText(page, "#best h2", "Version 1");
  await waitForText(page, "#best", "Not approved yet.");
  // The published recipe of three components: 20, 30 and 50 percent.
  assert.deepEqual(await texts(page, "#best .ink-number"), ["50.00", "20.00", "30.00"].map(percent));
  await page.reload();
  await waitForText(page, "#best h2", "Version 1");
  await go(page, "#/ink", "#recipes .ink-row");
  await waitForText(page, "#recipes .ink-row", "Brick");
});

test("500 g of ink with 10 % and 3 % on top weigh 565 g", async (t) => {
  // Source of 565 g, 50 g and 15 g: `ink_recipe_by_weight.csv`, published_500g_additives.
  const page = await openShop(t, app, METRIC);
  await go(page, "#/ink/new", "#name");
  await page.locator("#name").fill("Soft clear");
  await press(page, "#convention-1");
  await part(page, "Base", "100");
  await part(page, "Softener", "10", { kind: 2, onTop: true });
  await part(page, "Bonder", "3", { kind: 2, onTop: true });
  await waitForText(page, "#sum", "100 g of ink weighs 113 g");
  await save(page);
  await press(page, "#again");
  await page.locator("#grams").fill("500");
  await press(page, "#of-ink-1");
  await waitForText(page, "#total", g(565));
  assert.deepEqual(await weighed(page), { Base: g(500), Softener: g(50), Bonder: g(15) });
  await press(page, "#of-ink-0");
  await waitForText(page, "#total", g(500));
});

test("a sum over 100 % is offered as additions on top", async (t) => {
  const page = await openShop(t, app, METRIC);
  await go(page, "#/ink/new", "#name");
  await page.locator("#name").fill("Tinted");
  await part(page, "Base", "100");
  await part(page, "Blue", "6", { kind: 1 });
  await waitForText(page, "#sum", "The others look like additives on top.");
  await press(page, "[data-fix=on-top]");
  await waitForText(page, "#sum", "100 g of ink weighs 106 g");
  assert.ok(await page.locator("#convention-1").isChecked(), "the form is in the other convention now");
});

test("a missing or repeated component is reported beside its row", async (t) => {
  const page = await openShop(t, app, METRIC);
  await go(page, "#/ink/new", "#name");
  await save(page);
  await page.locator("#name-help .problem").waitFor();
  await page.locator("#parts-missing").waitFor();
  await page.locator("#name").fill("Fern");
  await part(page, "Base", "50");
  await part(page, "Base", "50");
  await waitForText(page, ".ink-part .problem", "Listed twice");
  await page.locator("#percent-1").fill("fifty");
  await page.locator(".ink-part.wrong").waitFor();
  assert.equal(await page.locator("#percent-1").inputValue(), "fifty");
  await press(page, page.locator(".ink-part .icon-button").last());
  await page.locator("#percent-0").fill("100");
  await save(page);
  await page.locator("#best").waitFor();
});

test("making again uses the approved revision, not a newer one", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await go(page, "#/ink", "#recipes");
  await press(page, page.locator("#recipes .ink-row").filter({ hasText: "Bone" }));
  await waitForText(page, "#newer", "Version 2 is newer but not approved yet. Mixing uses version 1.");
  await press(page, "#again");
  await waitForText(page, "#which", "Approved by Saltgrass Seed Library");
  await page.locator("#grams").fill("750");
  await waitForText(page, "#total", g(750));
  // By hand: 97.2, 1.8, 0.6 and 0.4 percent of 750 g.
  assert.deepEqual(await weighed(page), { "Base, white-filled": g(729), Yellow: g(13.5), "Brick red": g(4.5), Black: g(3) });

  await press(page, '#which [data-revision="2"]');
  await waitForText(page, "#which h2", "This is version 2");
  await waitForText(page, "#which .ink-choose", "Version 1 is the one Saltgrass Seed Library approved.");
  assert.equal((await weighed(page)).Yellow, g(15));
  await press(page, '#which [data-revision="1"]');
  await waitForText(page, "#which h2", "This is version 1");
});

test("making again creates a pot for its run", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await go(page, "#/ink", "#recipes");
  await press(page, page.locator("#recipes .ink-row").filter({ hasText: "Fern" }));
  await press(page, "#again");
  await press(page, "#by-1");
  await page.locator("#pieces").fill("40");
  await waitForText(page, "#batch", "similar run");
  const total = await page.locator("#total").innerText();
  assert.equal(total, (await page.locator("#batch strong").innerText()), "the batch of so many pieces, to the scale's step");
  await page.locator("#pieces").fill("none");
  await page.locator("#pieces-help .problem").waitFor();
  assert.ok(await page.locator("#weigh").isDisabled(), "nothing is weighed of nobody knows how much");
  await page.locator("#pieces").fill("40");
  await press(page, "#weigh");
  await page.waitForFunction(() => /^#\/pot\/[0-9a-f-]{36}$/.test(location.hash));
  await go(page, "#/ink", "#pots");
  await waitForText(page, "#pots .ink-row", "Fern, Swap day totes");
  await waitForText(page, "#pots .ink-row", "Weighing");
});

test("a coarse scale shows its error and the batch size that avoids it", async (t) => {
  const page = await openShop(t, app, METRIC);
  await go(page, "#/ink/scale", "#step");
  await fillForm(page, { step: "0" });
  await save(page);
  await page.locator("#step-help .problem").waitFor();
  await fillForm(page, { step: "0.5" });
  await save(page);
  await waitForText(page, "#scale, .empty", /0.5|stock/i);
  await recipe(page, "Grey", [["Base", "99.5"], ["Black", "0.5", { kind: 1 }]]);
  await press(page, "#again");
  await page.locator("#grams").fill("730");
  // By hand: 3.65 g reads 3.5 g, 4.1 % too little; half a step is 1 % of 25 g, which is 0.5 % of 5 kg.
  await waitForText(page, "#rounding", `Rounded to the scale's ${g(0.5)}: off by ${percent(4.1)} at most. From 5${NBSP}kg up`);
  assert.deepEqual(await weighed(page), { Base: g(726.5), Black: g(3.5) });
  await waitForText(page, '[data-component="Black"]', `exactly ${g(3.65)}, −${percent(4.1)}`);
});

test("exceeding a data sheet's limit is reported while typing", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await go(page, "#/ink", "#needs");
  await press(page, page.locator(".ink-need").filter({ hasText: "Night" }).locator(".ink-act"));
  await page.locator("#name").waitFor();
  assert.equal(await page.locator("#name").inputValue(), "Night");
  assert.equal(await page.locator("#ink_colour").inputValue(), "#1f2440", "the run's colour");
  await part(page, "Base, clear", "85.5");
  await part(page, "Blue", "14.5");
  await waitForText(page, ".ink-limits", `${percent(14.5)} of Blue: its data sheet allows ${percent(8)}.`);
  await page.locator("#percent-1").fill("7.5");
  await page.locator("#percent-0").fill("92.5");
  await page.locator(".ink-limits").waitFor({ state: "detached" });
  await save(page);
  await page.locator("#best").waitFor();
  await go(page, "#/ink", "#needs");
  await waitForText(page, ".ink-need", "Ink per print not calculated yet");
});

test("a revision shows its parent and reason and can be deleted", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await go(page, "#/ink", "#recipes");
  await press(page, page.locator("#recipes .ink-row").filter({ hasText: "Fern" }));
  await press(page, "#revise");
  await page.locator("#why").waitFor();
  await save(page);
  await waitForText(page, "#same", "Same as version 1");
  await page.locator("#percent-0").fill("89");
  await page.locator("#percent-2").fill("4.4");
  await page.locator("#why").fill("Bluer, for the natural canvas");
  await save(page);
  await waitForText(page, "#best h2", "Version 2");
  await press(page, "#revisions summary");
  await waitForText(page, '[data-number="2"]', "from version 1");
  await waitForText(page, '[data-number="2"]', "Bluer, for the natural canvas");
  await press(page, '[data-number="2"] button');
  await waitForText(page, "#best h2", "Version 1");
  await press(page, ".notice-undo");
  await waitForText(page, "#best h2", "Version 2");
  await press(page, "#delete");
  await page.locator("#recipes").waitFor();
  await page.locator("#recipes .ink-row").filter({ hasText: "Fern" }).waitFor({ state: "detached" });
  await press(page, ".notice-undo");
  await waitForText(page, "#recipes .ink-row", "Fern");
});

test("deliveries and stock counts are entered at the shelf and undone", async (t) => {
  const page = await openShop(t, app, METRIC);
  await go(page, "#/ink/stock", ".empty");
  await press(page, ".empty .button");
  await save(page);
  await page.locator("#name-help .problem").waitFor();
  await fillForm(page, { name: "Yellow" });
  await press(page, "#kind-1");
  await openAllSections(page);
  await fillForm(page, { density: "1.12", most: "8", tub: "500", low_at: "100", cost: "62" });
  await save(page);
  await waitForText(page, "#left", "Not weighed yet");
  await press(page, "#count");
  await press(page, "dialog [type=submit]");
  await page.locator("#grams-help .problem").waitFor();
  await page.locator("#grams").fill("61");
  await press(page, "dialog [type=submit]");
  await waitForText(page, "#left", g(61));
  await go(page, "#/ink/stock", "#buy");
  // 39 g below the limit: one tub of 500 g, at 62 a kilogram.
  await waitForText(page, "#buy .ink-line", `1 × ${g(500)}`);
  await waitForText(page, "#buy", "31.00");
  await press(page, page.locator(".ink-row").first());
  await press(page, "#came-in");
  await fillForm(page, { grams: "500", note: "lot 7" });
  await press(page, "dialog [type=submit]");
  await waitForText(page, "#left", g(561));
  await waitForText(page, "#story", "lot 7");
  await press(page, ".notice-undo");
  await waitForText(page, "#left", g(61));
  await press(page, page.locator("#story .icon-button").first());
  await waitForText(page, "#left", "Not weighed yet");
  await press(page, ".notice-undo");
  await waitForText(page, "#left", g(61));
});

test("the shopping list is copied as text", async (t) => {
  const page = await openDemo(t, app, { ...METRIC, device: DESK });
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await go(page, "#/ink/stock", "#buy");
  await waitForText(page, "#buy .ink-line", "short for Swap day totes");
  await press(page, "#share-list");
  await waitForText(page, ".notice", "copied");
  const list = await page.evaluate(() => navigator.clipboard.readText());
  assert.equal(list, `To buy\nBase, clear: 1 × 5${NBSP}kg\nYellow: 1 × ${g(500)}`);
});

test("a run takes its ink's colour and links to the recipe", async (t) => {
  const page = await openShop(t, app, { ...METRIC, device: PHONE });
  await go(page, "#/ink/new", "#name");
  await fillForm(page, { name: "Brick", ink_colour: "#a04a32" });
  await part(page, "Base", "100");
  await save(page);
  await page.locator("#best").waitFor();
  await newJob(page);
  await addGarments(page);
  await page.locator("#ink").fill("brick");
  assert.equal(await page.locator("#ink_colour").inputValue(), "#a04a32");
  assert.deepEqual(await page.locator("#ink-list option").evaluateAll((options) => options.map((option) => option.value)), ["Brick"]);
  await addRun(page, { ink: "Brick" });
  await openChecks(page);
  await waitForText(page, "#run-ink", "Recipe");
  await press(page, "#run-ink a");
  await page.locator("#best").waitFor();
  assert.match(await hashOf(page), /^#\/ink\//);
});

test("the ink page shows the day's needs, low stock and open pots", async (t) => {
  const page = await openDemo(t, app, METRIC);
  await press(page, ".places a:nth-child(3)");
  await page.locator("#needs").waitFor();
  const needs = await texts(page, ".ink-need .row-words strong");
  assert.deepEqual(needs, ["Apricot", "Jersey white", "Fern", "Night"], "in the order of the day");
  await page.locator(".ink-need.ready").filter({ hasText: "Apricot" }).waitFor();
  await waitForText(page, ".ink-need", "Continue weighing");
  await waitForText(page, ".ink-need", "No recipe yet");
  await waitForText(page, "#low", "2 components are low");
  assert.deepEqual(await texts(page, "#pots .row-words strong"), ["White, jerseys", "Apricot, choir", "Fern, totes", "Bone"]);
  await press(page, page.locator(".ink-need").filter({ hasText: "Fern" }).locator(".ink-act"));
  await page.locator("#size").waitFor();
  assert.match(await hashOf(page), /^#\/pot\/for\//);
});

test("a recipe says how its ink cures, by the ink's data sheet", async (t) => {
  const page = await openShop(t, app);
  const recipe = await importStock(page, [["Blue", "pigment"]], "Brick", [["Blue", 100]]);
  await waitForText(page, "#ink-sheet", "Add ink data sheet");
  await press(page, "#ink-sheet a");
  await page.locator("#cure").waitFor();
  await fillForm(page, { ink: "brick", cure: 320, hold: 90 });
  await save(page);
  await page.locator("#cure").waitFor({ state: "detached" });
  await go(page, recipe, "#best");
  await waitForText(page, "#ink-sheet", /Cure: 320\s°F for 90\ss/);
});

for (const language of ["english", "spanish"]) {
  test(`ink pages fit a small phone in ${language}`, async (t) => {
    const device = { ...PHONE, viewport: { width: 360, height: 640 } };
    const page = await openDemo(t, app, { device, settings: { language } });
    const found = [];
    await visitPages(page, async (name) => {
      found.push(...(await smallTargets(page, name)));
      const [width, room] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
      if (width > room) found.push(`${name}: ${width} px wide on ${room}`);
    }, (name) => /^ink(:|$)/.test(name));
    assert.ok(found.length === 0, [...new Set(found)].join("\n"));
  });
}
