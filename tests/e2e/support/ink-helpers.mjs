// A pot at the scale and beside it, as a person handles it.
import { go, press, save, write } from "./shop.mjs";
import { Teller } from "./facts.mjs";

/** A component of the shop; leaves off on its page. */
export async function component(page, name, kind = 1) {
  await go(page, "#/ink/component/new", "#name");
  await page.locator("#name").fill(name);
  await press(page, page.locator("fieldset:has([name=kind]) input").nth(kind));
  await save(page);
  await page.locator("#name").waitFor({ state: "detached" });
}

/** A recipe of parts of the whole, of components the shop has; leaves off on its card and gives its place. */
export async function recipe(page, name, parts) {
  await go(page, "#/ink/new", "#name");
  await page.locator("#name").fill(name);
  for (const [component, share] of parts) {
    const at = await page.locator(".ink-part").count();
    await press(page, "#add-part");
    await press(page, `dialog [data-component="${component}"]`);
    await page.locator("dialog[open]").waitFor({ state: "detached" });
    await page.locator(`#percent-${at}`).fill(String(share));
  }
  await save(page);
  await page.locator("#best").waitFor();
  return page.evaluate(() => location.hash);
}

/** The shop has these components, and a recipe of them where one is named; leaves off on its card and gives its place. */
export async function inStock(page, components, name, parts) {
  const teller = new Teller();
  const ids = {};
  for (const [component, kind] of components) ids[component] = teller.say({ ink: { component_set: [{ name: component }, { kind }, { hiding: "transparent" }] } });
  const recipe = name && teller.say({ ink: { recipe_set: [{ name }] } });
  if (recipe) {
    const shares = parts.map(([component, percent]) => ({ component: ids[component], share: Math.round(percent * 1e7), on_top: false }));
    teller.say({ ink: { revision_saved: { recipe, number: 1, parts: shares, parent: null, pot: null, note: "", by: null } } });
  }
  await teller.bringTo(page);
  if (!recipe) return "";
  await go(page, `#/ink/${recipe}`, "#best");
  return `#/ink/${recipe}`;
}

/** A pot of the recipe on screen; leaves off at the scale and gives its place. */
export async function pot(page, fields) {
  await press(page, "#mix");
  await page.locator("#size").waitFor();
  await write(page, fields);
  await save(page);
  await page.locator("#now").waitFor();
  return page.evaluate(() => location.hash);
}

/** Types a number on the big keys. */
export async function keys(page, number) {
  for (const letter of String(number)) await press(page, `[data-key="${letter === "." ? "mark" : letter}"]`);
}

/** Tells what the scale shows. */
export async function reads(page, number) {
  await keys(page, number);
  await press(page, "[data-key=enter]");
}

/** Waits until the scale is to show this. */
export const shall = (page, words) => page.locator("#target").filter({ hasText: words }).waitFor();

/** A correction of the pot on screen; leaves off on the pot. */
export async function add(page, name, number, { total = false, note } = {}) {
  await press(page, "#add");
  await pick(page, name);
  if (total) await press(page, "#way");
  await keys(page, number);
  if (note) await page.locator("#note").fill(note);
  await page.locator("#after ul").waitFor();
  await press(page, "[data-key=enter]");
  await press(page, "#to-pot");
  await page.locator("#holds").waitFor();
}

/** Picks what is added; what was added last is picked already. */
export async function pick(page, name) {
  await page.locator("#picked, #component").first().waitFor();
  if ((await page.locator("#picked").count()) > 0) await press(page, "#picked");
  await press(page, page.locator(".pot-component").filter({ hasText: name }));
}

/** The client's yes to the pot on screen. */
export async function sayYes(page, client) {
  await press(page, "#yes");
  await page.locator("dialog #client").fill(client);
  await press(page, "#yes-save");
  await page.locator("#stage[data-stage=Approved]").waitFor();
}

/** Opens what is folded. */
export async function unfold(page, id) {
  if ((await page.locator(`#${id}[open]`).count()) === 0) await press(page, `#${id} > summary`);
}

/** What the pot on screen holds: its parts by name, in percent and grams as they are written. */
export const holds = (page) =>
  page.locator("#parts tbody tr").evaluateAll((rows) => Object.fromEntries(rows.map((row) => [
    row.querySelector("th").innerText.trim(),
    [row.querySelector("td").firstChild.textContent, row.querySelector("td:last-child").innerText],
  ])));

/** The grams of each component by the ledger on screen: what is struck out does not count. */
export async function ledger(page) {
  await unfold(page, "history");
  const lines = await page.locator(".pot-ledger li:not(.deleted)").evaluateAll((rows) => rows.map((row) => [
    row.querySelector(".row-words strong").innerText,
    row.querySelector(".pot-line-grams strong")?.innerText ?? "",
  ]));
  const sums = {};
  for (const [what, grams] of lines) {
    const name = what.match(/^(.+), (weighed in|added|topped up)$/)?.[1];
    if (name) sums[name] = (sums[name] ?? 0) + Number(grams.replace(/[^0-9.]/g, ""));
  }
  return sums;
}
