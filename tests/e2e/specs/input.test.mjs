// Touch, mouse and keyboard input on the counting screen, intended and accidental.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK } from "../support/browser.mjs";
import { centreOf, pull, waitForCount, waitTwoFrames, waitUntilSaved } from "../support/counting.mjs";
import { press, save } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openCounting } from "../support/shop.mjs";
import { touchInput } from "../support/touch.mjs";

const app = testServer();

/** Dispatches the events of a key that is held down: with repeats, then released. */
function hold(page, key) {
  return page.evaluate((key) => {
    const dispatch = (kind, repeat) => document.body.dispatchEvent(new KeyboardEvent(kind, { key, repeat, bubbles: true, cancelable: true }));
    dispatch("keydown", false);
    for (let n = 0; n < 10; n += 1) dispatch("keydown", true);
    // Some clickers repeat without setting `repeat`.
    dispatch("keydown", false);
    dispatch("keyup", false);
  }, key);
}

test("each clicker key counts once when held; Backspace undoes", async (t) => {
  const page = await openCounting(t, app, { device: DESK });
  let good = 0;
  for (const key of [" ", "Enter", "ArrowRight", "ArrowLeft", "ArrowUp", "ArrowDown", "PageDown", "PageUp", "AudioVolumeUp", "AudioVolumeDown", "MediaTrackNext"]) {
    await hold(page, key);
    await waitForCount(page, (good += 1));
  }
  await hold(page, "Backspace");
  await waitForCount(page, (good -= 1));
  await hold(page, "q");
  await page.keyboard.press("Control+ArrowRight");
  await waitTwoFrames(page);
  await waitForCount(page, good);
});

test("a held keyboard key counts once and does not scroll the page", async (t) => {
  const page = await openCounting(t, app, { device: { ...DESK, viewport: { width: 900, height: 400 } } });
  for (const key of ["Space", "PageDown", "ArrowDown", "Enter"]) {
    for (let n = 0; n < 6; n += 1) await page.keyboard.down(key);
    await page.keyboard.up(key);
  }
  await waitForCount(page, 4);
  assert.equal(await page.evaluate(() => scrollY), 0);
  await page.keyboard.press("Backspace");
  await waitForCount(page, 3);
});

test("keys typed in a dialog or on a button do not count", async (t) => {
  const page = await openCounting(t, app, { device: DESK });
  await pull(page, 1);
  await press(page, "#number");
  await page.locator("#pieces").fill("");
  await page.keyboard.type("1 2");
  await page.keyboard.press("Backspace");
  await page.keyboard.press("Escape");
  await page.locator("dialog").waitFor({ state: "detached" });
  await waitForCount(page, 1);
  await page.locator("#failed").focus();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.locator("dialog [data-cause=Break]").waitFor();
  await page.keyboard.press("Escape");
  await waitForCount(page, 1);
});

for (const key of ["Enter", "Space"]) {
  test(`after touching a button, ${key} of a clicker counts`, async (t) => {
    const page = await openCounting(t, app);
    await pull(page, 3);
    await press(page, "#undo");
    await waitForCount(page, 2);
    await page.keyboard.press(key);
    await waitForCount(page, 3);
    await press(page, page.locator(".size-button").nth(1));
    await page.keyboard.press(key);
    await waitForCount(page, 4);
    await press(page, "#misprint");
    await press(page, "[data-cause=Smudge]");
    await waitForCount(page, 3);
    await page.keyboard.press(key);
    await waitForCount(page, 4);
  });
}

test("a second finger, a palm and the screen's edge do not count", async (t) => {
  const page = await openCounting(t, app);
  const touch = await touchInput(page);
  const [x, y] = await centreOf(page.locator("#zone"));
  await touch.down({ id: 1, x, y });
  await touch.down({ id: 1, x, y }, { id: 2, x: x + 60, y: y + 40 });
  await touch.up({ id: 1, x, y });
  await touch.up();
  await waitUntilSaved(page, 1);
  await waitForCount(page, 1);
  // A palm: 120 × 140 px.
  await touch.down({ id: 1, x, y, radiusX: 60, radiusY: 70 });
  await touch.up();
  await waitTwoFrames(page);
  await waitForCount(page, 1);
  await waitUntilSaved(page, 1);
  for (const edge of [{ x: 3, y }, { x: 387, y }]) {
    await touch.down({ id: 1, ...edge });
    await touch.up();
    await waitUntilSaved(page, 1);
  }
  await page.locator("#zone").evaluate((zone) => {
    const finger = { pointerId: 9, pointerType: "touch", clientX: 4, clientY: 500, width: 30, height: 30, bubbles: true, cancelable: true };
    zone.dispatchEvent(new PointerEvent("pointerdown", finger));
    zone.dispatchEvent(new PointerEvent("pointerup", finger));
  });
  await waitTwoFrames(page);
  await waitForCount(page, 1);
  await waitUntilSaved(page, 1);
  await touch.down({ id: 1, x, y, radiusX: 12, radiusY: 12 });
  await touch.up();
  await waitForCount(page, 2);
});

test("a bounce does not count; a resting or sliding finger counts once", async (t) => {
  const page = await openCounting(t, app);
  await page.locator("#zone").evaluate((zone) => {
    for (const pointerId of [11, 12, 13]) {
      const finger = { pointerId, pointerType: "touch", clientX: 195, clientY: 500, width: 30, height: 30, bubbles: true, cancelable: true };
      zone.dispatchEvent(new PointerEvent("pointerdown", finger));
      zone.dispatchEvent(new PointerEvent("pointerup", finger));
    }
  });
  await waitForCount(page, 1);
  await waitUntilSaved(page, 1);
  const touch = await touchInput(page);
  const [x, y] = await centreOf(page.locator("#zone"));
  await touch.down({ id: 1, x, y });
  for (const by of [20, 60, 120]) await touch.move({ id: 1, x: x + by / 2, y: y - by });
  await touch.up();
  await waitForCount(page, 2);
  assert.equal(await page.evaluate(() => scrollY), 0, "the page stays where it is");
  // A touch that leaves the zone before it is lifted counts too.
  await waitUntilSaved(page, 2);
  await touch.down({ id: 1, x, y });
  const [sx, sy] = await centreOf(page.locator("#stop"));
  await touch.move({ id: 1, x: sx, y: sy });
  await touch.up();
  await waitForCount(page, 3);
  await pull(page, 1);
  await waitForCount(page, 4);
});

test("a screen reader's click counts", async (t) => {
  const page = await openCounting(t, app);
  await page.locator("#zone").evaluate((zone) => zone.click());
  await waitForCount(page, 1);
});

test("keys do not count while a dialog is open", async (t) => {
  const page = await openCounting(t, app, { device: DESK });
  await pull(page, 6);
  for (const opener of [".checks-button", "#pace", "#stop"]) {
    await press(page, opener);
    await page.locator("dialog[open]").waitFor();
    await page.keyboard.press("PageDown");
    // Touching plain text moves the focus off the dialog's buttons.
    await press(page, "dialog .sheet-head h2");
    await page.keyboard.press("PageDown");
    await waitTwoFrames(page);
    await press(page, "dialog .sheet-head .icon-button");
    await page.locator("dialog").waitFor({ state: "detached" });
  }
  await waitForCount(page, 6);
});

test("where the region writes a decimal comma, forms show it and also accept a point", async (t) => {
  const page = await openShop(t, app, { locale: "es-ES" });
  await newJob(page);
  await addGarments(page);
  await addRun(page, { guess: "27,5" });
  const edit = () => press(page, page.locator(".run-row .icon-button").first());
  await edit();
  const guess = page.locator("#guess");
  await guess.waitFor();
  assert.equal(await guess.inputValue(), "27,5");
  await guess.fill("");
  await guess.pressSequentially("31.25");
  assert.equal(await guess.inputValue(), "31.25", "as it was typed");
  await save(page);
  await page.locator(".run-row").first().waitFor();
  await edit();
  await guess.waitFor();
  assert.equal(await guess.inputValue(), "31,25");
});
