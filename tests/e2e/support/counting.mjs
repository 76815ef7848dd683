// Counting on the press screen: touches on the counting zone, and what the zone shows.
import assert from "node:assert/strict";

/** Pieces shown on the zone, and how many of them are not saved yet. */
export function zoneState(page) {
  return page.locator("#zone").evaluate(({ dataset }) => ({ good: Number(dataset.saved), unsaved: Number(dataset.unsaved) }));
}

/** Waits until the zone shows at least this many pieces, all saved, and takes the next touch. */
export function waitUntilSaved(page, least) {
  return page.waitForFunction(
    (least) => {
      const zone = document.querySelector("#zone");
      // The app ignores a touch sooner than this after the last: a bounce.
      const rested = performance.now() - (window.lastTouched ?? -1000) > 130;
      return zone && Number(zone.dataset.saved) >= least && zone.dataset.unsaved === "0" && rested;
    },
    least,
    { polling: 20 },
  );
}

/** The centre of an element as [x, y]. */
export async function centreOf(locator) {
  const box = await locator.boundingBox();
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** Touches the zone once it takes a touch: in its middle, or at this share of its height. */
export async function touchZone(page, down = 0.5) {
  await page.waitForFunction(() => performance.now() - (window.lastTouched ?? -1000) > 130, null, { polling: 20 });
  const box = await page.locator("#zone").boundingBox();
  const at = [box.x + box.width / 2, box.y + box.height * down];
  await (page.pressMethod === "tap" ? page.touchscreen.tap(...at) : page.mouse.click(...at));
}

/** Counts this many pieces by touch, and waits for each to be saved. */
export async function pull(page, pieces) {
  for (let piece = 0; piece < pieces; piece += 1) {
    const { good } = await zoneState(page);
    await touchZone(page);
    await waitUntilSaved(page, good + 1);
  }
}

/** Waits until the zone shows exactly this count, all saved. */
export async function waitForCount(page, good) {
  await page.waitForFunction(
    (good) => {
      const zone = document.querySelector("#zone");
      return zone?.dataset.saved === String(good) && zone.dataset.unsaved === "0";
    },
    good,
    { polling: 50 },
  ).catch(async (error) => assert.fail(`the zone should show ${good}: ${JSON.stringify(await zoneState(page))} (${error.message.split("\n")[0]})`));
  assert.equal(await page.locator("#count").innerText(), String(good));
}

/** Waits 60 ms and two frames, in which a counted touch would have become visible. */
export function waitTwoFrames(page) {
  return page.evaluate(() => new Promise((resolve) => setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(resolve)), 60)));
}

/** Counts pieces by keyboard, as fast as the app takes them, or with pauses of up to so many milliseconds. */
export const countByKeyboard = (page, pieces, longestPause = 0) => page.evaluate(async ([pieces, pauses]) => {
  for (let piece = 0; piece < pieces; piece += 1) {
    for (const kind of ["keydown", "keyup"]) document.body.dispatchEvent(new KeyboardEvent(kind, { key: "PageDown", bubbles: true, cancelable: true }));
    await new Promise((next) => setTimeout(next, piece % pauses));
  }
}, [pieces, longestPause + 1]);
