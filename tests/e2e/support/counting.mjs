// Counting by hand: touches that land, and what the zone says of them.
import assert from "node:assert/strict";

/** Pieces on the zone, and how many of them wait to be saved. */
export function zone(page) {
  return page.locator("#zone").evaluate((zone) => ({ good: Number(zone.dataset.saved), unsaved: Number(zone.dataset.unsaved) }));
}

/** Waits until the zone shows at least so many pieces, all saved, and the hand may touch again. */
export function settled(page, least) {
  return page.waitForFunction(
    (least) => {
      const zone = document.querySelector("#zone");
      // A touch sooner than this after the last is a bounce and does not count.
      const rested = performance.now() - (window.lastTouched ?? -1000) > 130;
      return zone && Number(zone.dataset.saved) >= least && zone.dataset.unsaved === "0" && rested;
    },
    least,
    { polling: 20 },
  );
}

/** The middle of an element. */
export async function middle(locator) {
  const box = await locator.boundingBox();
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** One touch on the zone, as soon as the hand may touch again: at its middle, or so far down it. */
export async function touchZone(page, down = 0.5) {
  await page.waitForFunction(() => performance.now() - (window.lastTouched ?? -1000) > 130, null, { polling: 20 });
  const box = await page.locator("#zone").boundingBox();
  const at = [box.x + box.width / 2, box.y + box.height * down];
  await (page.hand === "tap" ? page.touchscreen.tap(...at) : page.mouse.click(...at));
}

/** So many pulls by touch, each waited for until it is saved. */
export async function pull(page, pieces) {
  for (let piece = 0; piece < pieces; piece += 1) {
    const { good } = await zone(page);
    await touchZone(page);
    await settled(page, good + 1);
  }
}

/** The zone shows exactly this, all of it saved. */
export async function shows(page, good) {
  await page.waitForFunction(
    (good) => {
      const zone = document.querySelector("#zone");
      return zone?.dataset.saved === String(good) && zone.dataset.unsaved === "0";
    },
    good,
    { polling: 50 },
  ).catch(async (error) => assert.fail(`the zone should come to show ${good}: ${JSON.stringify(await zone(page))} (${error.message.split("\n")[0]})`));
  assert.equal(await page.locator("#count").innerText(), String(good));
}

/** Lets a frame or two pass in which a touch that counts would show. */
export function aMoment(page) {
  return page.evaluate(() => new Promise((done) => setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(done)), 60)));
}
