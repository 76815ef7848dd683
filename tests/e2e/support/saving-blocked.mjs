// A shop that cannot save. The page was opened with one of the faults of storage.mjs.
import assert from "node:assert/strict";
import { press } from "./shop.mjs";
import { pull, touchZone, zone } from "./counting.mjs";

export const FULL = "QuotaExceededError";

export const fail = (page, fault, only = null) => page.evaluate(([fault, only]) => Object.assign(window.storage, { fail: fault, only }), [fault, only]);
export const blocked = (page) => page.locator("#blocked").waitFor();
export const tryAgain = (page) => press(page, "#blocked button");

/** The zone shows these pieces, so many of them not saved. */
export async function waits(page, good, unsaved) {
  await page.waitForFunction(([good, unsaved]) => {
    const { dataset } = document.querySelector("#zone");
    return dataset.saved === good && dataset.unsaved === unsaved;
  }, [String(good), String(unsaved)], { polling: 20 }).catch(async () => assert.deepEqual(await zone(page), { good, unsaved }));
}

/** Counts two, then touches in two more that cannot be saved, until the app gives up. */
export async function blockedWithTwo(page) {
  await pull(page, 2);
  await fail(page, FULL);
  await touchZone(page);
  await waits(page, 3, 1);
  await touchZone(page);
  await waits(page, 4, 2);
  await blocked(page);
}
