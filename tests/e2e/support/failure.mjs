// Reporting a failure on the press and dealing with it.
import assert from "node:assert/strict";
import { hashOf, press } from "./page.mjs";

/** Reports a failure from the count with one tap. Returns the failure's hash route. */
export async function reportFailure(page) {
  await press(page, "#failed");
  await page.locator("#downtime").waitFor();
  return hashOf(page);
}

/** Opens a step of the failure page, unless it is open. */
export async function openStep(page, step) {
  const head = page.locator(`#step-${step}`);
  await head.waitFor();
  if ((await head.getAttribute("aria-expanded")) !== "true") await press(page, head);
  await page.locator(`#step-${step}[aria-expanded=true]`).waitFor();
}

/** Waits until the head of a step sums up what was entered with this text. */
export const waitForStepSummary = (page, step, text) => page.locator(`#step-${step} small`).filter({ hasText: text }).waitFor();

/** Enters how many pieces were pulled since the last good one. */
export async function enterPiecesSince(page, pieces) {
  await openStep(page, "since");
  await press(page, `[data-since="${pieces}"]`);
  await page.waitForFunction((pieces) => pieces === "all" || document.querySelector("#since")?.innerText === String(pieces), pieces);
}

/** Waits until the failure page shows these numbers of good, suspect and spoiled pieces. */
export async function waitForPieces(page, good, suspect, spoiled) {
  const read = () => page.locator("#heap-good, #heap-suspect, #heap-spoiled").allInnerTexts();
  const expected = [good, suspect, spoiled].map(String);
  await page
    .waitForFunction((expected) => ["good", "suspect", "spoiled"].every((heap, at) => document.querySelector(`#heap-${heap}`)?.innerText === expected[at]), expected, { polling: 50 })
    .catch(async () => assert.deepEqual(await read(), expected));
}

/** Judges one more piece of a size (one less if `by` is negative) as good or spoiled. */
export function judge(page, size, verdict, by = 1) {
  const buttons = page.locator(`[data-size="Some(${size})"] [data-verdict=${verdict}] button`);
  return press(page, by > 0 ? buttons.last() : buttons.first());
}

/** Chooses to burn a new screen and ticks its steps until it can print. */
export async function burnNewScreen(page, label, beforeStep = async () => {}) {
  await openStep(page, "remedy");
  await press(page, "[data-remedy=BurnAgain]");
  await page.locator("dialog #label").fill(label);
  await press(page, "dialog [type=submit]");
  for (const step of ["Coat", "Dry", "Expose", "WashDry", "Tape"]) {
    await beforeStep();
    await press(page, `[data-step=${step}]`);
    await page.locator(`[data-step=${step}][aria-pressed=true]`).waitFor();
  }
  await page.locator("#burning .failure-ready").waitFor();
}

/** Resumes the run from the failure page. */
export async function resumePress(page) {
  await press(page, "#go-on");
  await page.locator("#zone:not(.stopped)").waitFor();
}
