// A shop that cannot save. The page was opened with `failWrites` or `failCommits` of storage-faults.mjs.
import assert from "node:assert/strict";
import { pull, touchZone, zoneState } from "./counting.mjs";
import { press } from "./page.mjs";

export const QUOTA_EXCEEDED = "QuotaExceededError";

/** Makes writes fail with this error, in all object stores or in one; `null` lets them succeed again. */
export const setStorageFault = (page, error, store = null) => page.evaluate(([fail, only]) => Object.assign(window.storage, { fail, only }), [error, store]);
/** Waits until the app says that saving is blocked. */
export const waitUntilBlocked = (page) => page.locator("#blocked").waitFor();
/** Presses "Try again" there. */
export const tryAgain = (page) => press(page, "#blocked button");

/** Waits until the zone shows this many pieces, of which this many are not saved. */
export async function waitForZone(page, good, unsaved) {
  await page.waitForFunction(([good, unsaved]) => {
    const { dataset } = document.querySelector("#zone");
    return dataset.saved === good && dataset.unsaved === unsaved;
  }, [String(good), String(unsaved)], { polling: 20 }).catch(async () => assert.deepEqual(await zoneState(page), { good, unsaved }));
}

/** Counts two pieces after `counted`, then two more that cannot be saved, until the app says that saving is blocked. */
export async function blockWithTwoUnsaved(page, counted = 0) {
  await pull(page, 2);
  await setStorageFault(page, QUOTA_EXCEEDED);
  await touchZone(page);
  await waitForZone(page, counted + 3, 1);
  await touchZone(page);
  await waitForZone(page, counted + 4, 2);
  await waitUntilBlocked(page);
}
