// What a printer does when something fails on the press.
import assert from "node:assert/strict";
import { press } from "./shop.mjs";

/** Something fails: one tap at the count. Returns the hash of the failure. */
export async function fails(page) {
  await press(page, "#failed");
  await page.locator("#downtime").waitFor();
  return page.evaluate(() => location.hash);
}

/** Opens a step, unless it is open. */
export async function openStep(page, step) {
  const head = page.locator(`#step-${step}`);
  await head.waitFor();
  if ((await head.getAttribute("aria-expanded")) !== "true") await press(page, head);
  await page.locator(`#step-${step}[aria-expanded=true]`).waitFor();
}

/** Waits until a step says that this was told. */
export const told = (page, step, words) => page.locator(`#step-${step} small`).filter({ hasText: words }).waitFor();

/** Tells how many were pulled since the last good one. */
export async function tellSince(page, pieces) {
  await openStep(page, "since");
  await press(page, `[data-since="${pieces}"]`);
  await page.waitForFunction((pieces) => pieces === "all" || document.querySelector("#since")?.innerText === String(pieces), pieces);
}

/** Waits until the three heaps stand like this. */
export async function heaps(page, good, suspect, spoiled) {
  const read = () => page.locator("#heap-good, #heap-suspect, #heap-spoiled").allInnerTexts();
  const wanted = [good, suspect, spoiled].map(String);
  await page
    .waitForFunction((wanted) => ["good", "suspect", "spoiled"].every((heap, at) => document.querySelector(`#heap-${heap}`)?.innerText === wanted[at]), wanted, { polling: 50 })
    .catch(async () => assert.deepEqual(await read(), wanted));
}

/** One more, or one less, of a size is good or spoiled. */
export function judge(page, size, verdict, by = 1) {
  const buttons = page.locator(`[data-size="Some(${size})"] [data-verdict=${verdict}] button`);
  return press(page, by > 0 ? buttons.last() : buttons.first());
}

/** Decides on a new frame, and ticks its steps until it can print. */
export async function burnAgain(page, label, wind = async () => {}) {
  await openStep(page, "remedy");
  await press(page, "[data-remedy=BurnAgain]");
  await page.locator("dialog #label").fill(label);
  await press(page, "dialog [type=submit]");
  for (const step of ["Coat", "Dry", "Expose", "WashDry", "Tape"]) {
    await wind();
    await press(page, `[data-step=${step}]`);
    await page.locator(`[data-step=${step}][aria-pressed=true]`).waitFor();
  }
  await page.locator("#burning .failure-ready").waitFor();
}

/** The press goes on. */
export async function goOn(page) {
  await press(page, "#go-on");
  await page.locator("#zone:not(.stopped)").waitFor();
}

/** Waits until a part of the screen reads like this: the clock on it moves once a second. */
export const reads = (page, part, words) => page.locator(part).filter({ hasText: words }).waitFor();
