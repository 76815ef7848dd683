// What a person does on any page: press, type, save, open and close. And waiting for what the page says asynchronously.
import assert from "node:assert/strict";
import { setTimeout } from "node:timers/promises";

/** Taps (on a phone) or clicks (on a desktop) an element, given as a selector or a locator. */
export function press(page, target) {
  return (typeof target === "string" ? page.locator(target) : target)[page.pressMethod]();
}

/** Navigates to a hash route and waits for an element of the new page. */
export async function go(page, hash, element) {
  await page.evaluate((hash) => { location.hash = hash; }, hash);
  if (element) await page.locator(element).first().waitFor();
}

/** Hash route of the page. */
export const hashOf = (page) => page.evaluate(() => location.hash);

/** Fills in form fields by id. A boolean sets a switch. */
export async function fillForm(page, fields) {
  for (const [id, value] of Object.entries(fields)) {
    const field = page.locator(`#${id}`);
    if (typeof value === "boolean") {
      if ((await field.isChecked()) !== value) await press(page, `label[for="${id}"]`);
    } else {
      await field.fill(String(value));
    }
  }
}

/** Presses the form's save button. */
export const save = (page) => press(page, ".save-bar [type=submit]");

/** Waits for a dialog to be open. */
export const waitForDialog = (page) => page.locator("dialog[open]").waitFor();

/** Closes the open dialog, if there is one. */
export async function closeDialog(page) {
  if (await page.locator("dialog[open]").count()) {
    await press(page, "dialog[open] .sheet-head .icon-button");
    await page.locator("dialog[open]").waitFor({ state: "detached" });
  }
}

/** Opens all collapsed sections. */
export async function openAllSections(page) {
  const collapsed = page.locator(":is(.screen-fold, .pot-fold):not([open]) > summary");
  while (await collapsed.count()) await press(page, collapsed.first());
}

/** Waits until an element that the selector matches contains this text. */
export const waitForText = (page, selector, text) => page.locator(selector).filter({ hasText: text }).first().waitFor();

/** Waits until an async function in the page gives something true. (To `page.waitForFunction` its promise is true.) */
export async function waitUntil(page, condition, arg) {
  for (const end = Date.now() + 15_000; !(await page.evaluate(condition, arg)); await setTimeout(20)) {
    assert.ok(Date.now() < end, `not true in time: ${condition}`);
  }
}
