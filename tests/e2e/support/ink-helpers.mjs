// Recipes, pots and the scale, as a person uses them.
import { FactRecorder } from "./facts.mjs";
import { fillForm, go, hashOf, press, save } from "./page.mjs";
import { openShop } from "./setup.mjs";
import { METRIC } from "./units.mjs";

/** Adds a component to the shelf; `kind` is the index of the choice in its form. */
export async function addComponent(page, name, kind = 1) {
  await go(page, "#/ink/component/new", "#name");
  await page.locator("#name").fill(name);
  await press(page, page.locator("fieldset:has([name=kind]) input").nth(kind));
  await save(page);
  await page.locator("#name").waitFor({ state: "detached" });
}

/** Adds a recipe of components on the shelf, `[name, percent]` each. Ends on its card; returns its hash route. */
export async function addRecipe(page, name, parts) {
  await go(page, "#/ink/new", "#name");
  await page.locator("#name").fill(name);
  for (const [component, percent] of parts) {
    const index = await page.locator(".ink-part").count();
    await press(page, "#add-part");
    await press(page, `dialog [data-component="${component}"]`);
    await page.locator("dialog[open]").waitFor({ state: "detached" });
    await page.locator(`#percent-${index}`).fill(String(percent));
  }
  await save(page);
  await page.locator("#best").waitFor();
  return hashOf(page);
}

/** Imports components (`[name, kind]` each) and, if named, a recipe of them. Ends on the recipe's card; returns its hash route. */
export async function importStock(page, components, name, parts) {
  const recorder = new FactRecorder();
  const ids = {};
  for (const [component, kind] of components) ids[component] = recorder.record({ ink: { component_set: [{ name: component }, { kind }, { hiding: "transparent" }] } });
  const recipe = name && recorder.record({ ink: { recipe_set: [{ name }] } });
  if (recipe) {
    const shares = parts.map(([component, percent]) => ({ component: ids[component], share: Math.round(percent * 1e7), on_top: false }));
    recorder.record({ ink: { revision_saved: { recipe, number: 1, parts: shares, parent: null, pot: null, note: "", by: null } } });
  }
  await recorder.importInto(page);
  if (!recipe) return "";
  await go(page, `#/ink/${recipe}`, "#best");
  return `#/ink/${recipe}`;
}

/** The published recipe: 20, 30 and 50 percent (`ink_recipe_by_weight.csv`). */
export const BRICK = [["Yellow", 20], ["Tinting white", 30], ["Mixing clear", 50]];

export const SHELF = [["Yellow", "pigment"], ["Tinting white", "pigment"], ["Mixing clear", "base"], ["Blue", "pigment"]];

/** A shop with the recipe of a brick red on screen. */
export async function withRecipe(t, app, options = {}) {
  const page = await openShop(t, app, { ...METRIC, ...options });
  await importStock(page, SHELF, "Brick", BRICK);
  return page;
}

/** Starts a pot of the recipe on screen. Ends at the scale; returns the pot's hash route. */
export async function startPot(page, fields) {
  await press(page, "#mix");
  await page.locator("#size").waitFor();
  await fillForm(page, fields);
  await save(page);
  await page.locator("#now").waitFor();
  return hashOf(page);
}

/** Types a number on the on-screen keypad. */
export async function typeOnKeypad(page, number) {
  for (const letter of String(number)) await press(page, `[data-key="${letter === "." ? "mark" : letter}"]`);
}

/** Enters a reading of the scale. */
export async function enterReading(page, number) {
  await typeOnKeypad(page, number);
  await press(page, "[data-key=enter]");
}

/** Waits until the target reading of the scale is this text. */
export const waitForTarget = (page, text) => page.locator("#target").filter({ hasText: text }).waitFor();

/** Adds a component to the pot on screen: its own weight, or with `total` the reading with the pot on the scale. Ends on the pot. */
export async function addToPot(page, name, number, { total = false, note } = {}) {
  await press(page, "#add");
  await pickComponent(page, name);
  if (total) await press(page, "#way");
  await typeOnKeypad(page, number);
  if (note) await page.locator("#note").fill(note);
  await page.locator("#after ul").waitFor();
  await press(page, "[data-key=enter]");
  await press(page, "#to-pot");
  await page.locator("#holds").waitFor();
}

/** Picks the component to add, also if the one added last is already picked. */
export async function pickComponent(page, name) {
  await page.locator("#picked, #component").first().waitFor();
  if ((await page.locator("#picked").count()) > 0) await press(page, "#picked");
  await press(page, page.locator(".pot-component").filter({ hasText: name }));
}

/** Records that the client approved the pot on screen. */
export async function approvePot(page, client) {
  await press(page, "#yes");
  await page.locator("dialog #client").fill(client);
  await press(page, "#yes-save");
  await page.locator("#stage[data-stage=Approved]").waitFor();
}

/** Opens a collapsible section by its id, unless it is open. */
export async function openSection(page, id) {
  if ((await page.locator(`#${id}[open]`).count()) === 0) await press(page, `#${id} > summary`);
}

/** Contents of the pot on screen: by component name, percent and grams as shown. */
export const potContents = (page) =>
  page.locator("#parts tbody tr").evaluateAll((rows) => Object.fromEntries(rows.map((row) => [
    row.querySelector("th").innerText.trim(),
    [row.querySelector("td").firstChild.textContent, row.querySelector("td:last-child").innerText],
  ])));

/** Grams of each component by the ledger on screen, without deleted lines. */
export async function ledgerTotals(page) {
  await openSection(page, "history");
  const lines = await page.locator(".pot-ledger li:not(.deleted)").evaluateAll((rows) => rows.map((row) => [
    row.querySelector(".row-words strong").innerText,
    row.querySelector(".pot-line-grams strong")?.innerText ?? "",
  ]));
  const totals = {};
  for (const [text, grams] of lines) {
    const name = text.match(/^(.+), (weighed in|added|topped up)$/)?.[1];
    if (name) totals[name] = (totals[name] ?? 0) + Number(grams.replace(/[^0-9.]/g, ""));
  }
  return totals;
}
