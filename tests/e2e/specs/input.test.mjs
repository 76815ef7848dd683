// Everything a hand can do to the counting screen, on purpose or not.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, addGarments, addRun, newJob, openCounting, openShop, premises, press, save } from "../support/shop.mjs";
import { aMoment, middle, pull, settled, shows } from "../support/counting.mjs";
import { fingers } from "../support/touch.mjs";

const place = premises();

/** A key goes down, repeats for a while and comes up, as the browser tells of it. */
function hold(page, key) {
  return page.evaluate((key) => {
    const tell = (kind, repeat) => document.body.dispatchEvent(new KeyboardEvent(kind, { key, repeat, bubbles: true, cancelable: true }));
    tell("keydown", false);
    for (let n = 0; n < 10; n += 1) tell("keydown", true);
    // Some clickers repeat without saying so.
    tell("keydown", false);
    tell("keyup", false);
  }, key);
}

test("every key of a clicker or pedal counts once, however long it is held, and Backspace takes it back", async (t) => {
  const page = await openCounting(t, place, { device: DESK });
  let good = 0;
  for (const key of [" ", "Enter", "ArrowRight", "ArrowLeft", "ArrowUp", "ArrowDown", "PageDown", "PageUp", "AudioVolumeUp", "AudioVolumeDown", "MediaTrackNext"]) {
    await hold(page, key);
    await shows(page, (good += 1));
  }
  await hold(page, "Backspace");
  await shows(page, (good -= 1));
  await hold(page, "q");
  await page.keyboard.press("Control+ArrowRight");
  await aMoment(page);
  await shows(page, good);
});

test("a real key held down on the keyboard counts once, and the page does not scroll under it", async (t) => {
  const page = await openCounting(t, place, { device: { ...DESK, viewport: { width: 900, height: 400 } } });
  for (const key of ["Space", "PageDown", "ArrowDown", "Enter"]) {
    for (let n = 0; n < 6; n += 1) await page.keyboard.down(key);
    await page.keyboard.up(key);
  }
  await shows(page, 4);
  assert.equal(await page.evaluate(() => scrollY), 0);
  await page.keyboard.press("Backspace");
  await shows(page, 3);
});

test("keys write into a sheet and press the button they stand on, and do not count there", async (t) => {
  const page = await openCounting(t, place, { device: DESK });
  await pull(page, 1);
  await press(page, "#number");
  await page.locator("#pieces").fill("");
  await page.keyboard.type("1 2");
  await page.keyboard.press("Backspace");
  await page.keyboard.press("Escape");
  await page.locator("dialog").waitFor({ state: "detached" });
  await shows(page, 1);
  await page.locator("#failed").focus();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await page.locator("dialog [data-cause=Break]").waitFor();
  await page.keyboard.press("Escape");
  await shows(page, 1);
});

for (const key of ["Enter", "Space"]) {
  test(`a button that was touched leaves no hold on the keys: ${key} of a clicker counts next`, async (t) => {
    const page = await openCounting(t, place);
    await pull(page, 3);
    await press(page, "#undo");
    await shows(page, 2);
    await page.keyboard.press(key);
    await shows(page, 3);
    await press(page, page.locator(".size-button").nth(1));
    await page.keyboard.press(key);
    await shows(page, 4);
    await press(page, "#misprint");
    await press(page, "[data-cause=Smudge]");
    await shows(page, 3);
    await page.keyboard.press(key);
    await shows(page, 4);
  });
}

test("a second finger, a palm and the screen's edge do not count", async (t) => {
  const page = await openCounting(t, place);
  const hand = await fingers(page);
  const [x, y] = await middle(page.locator("#zone"));
  await hand.down({ id: 1, x, y });
  await hand.down({ id: 1, x, y }, { id: 2, x: x + 60, y: y + 40 });
  await hand.up({ id: 1, x, y });
  await hand.up();
  await settled(page, 1);
  await shows(page, 1);
  // A palm: 64 mm across at a phone's density.
  await hand.down({ id: 1, x, y, radiusX: 60, radiusY: 70 });
  await hand.up();
  await aMoment(page);
  await shows(page, 1);
  await settled(page, 1);
  for (const edge of [{ x: 3, y }, { x: 387, y }]) {
    await hand.down({ id: 1, ...edge });
    await hand.up();
    await settled(page, 1);
  }
  await page.locator("#zone").evaluate((zone) => {
    const finger = { pointerId: 9, pointerType: "touch", clientX: 4, clientY: 500, width: 30, height: 30, bubbles: true, cancelable: true };
    zone.dispatchEvent(new PointerEvent("pointerdown", finger));
    zone.dispatchEvent(new PointerEvent("pointerup", finger));
  });
  await aMoment(page);
  await shows(page, 1);
  await settled(page, 1);
  await hand.down({ id: 1, x, y, radiusX: 12, radiusY: 12 });
  await hand.up();
  await shows(page, 2);
});

test("a bounce does not count, a finger that lies or slides counts once", async (t) => {
  const page = await openCounting(t, place);
  await page.locator("#zone").evaluate((zone) => {
    for (const pointerId of [11, 12, 13]) {
      const finger = { pointerId, pointerType: "touch", clientX: 195, clientY: 500, width: 30, height: 30, bubbles: true, cancelable: true };
      zone.dispatchEvent(new PointerEvent("pointerdown", finger));
      zone.dispatchEvent(new PointerEvent("pointerup", finger));
    }
  });
  await shows(page, 1);
  await settled(page, 1);
  const hand = await fingers(page);
  const [x, y] = await middle(page.locator("#zone"));
  await hand.down({ id: 1, x, y });
  for (const by of [20, 60, 120]) await hand.move({ id: 1, x: x + by / 2, y: y - by });
  await hand.up();
  await shows(page, 2);
  assert.equal(await page.evaluate(() => scrollY), 0, "the page stays where it is");
  // A contact that leaves the zone before it lifts is over too.
  await settled(page, 2);
  await hand.down({ id: 1, x, y });
  const [sx, sy] = await middle(page.locator("#stop"));
  await hand.move({ id: 1, x: sx, y: sy });
  await hand.up();
  await shows(page, 3);
  await pull(page, 1);
  await shows(page, 4);
});

test("a screen reader's press counts", async (t) => {
  const page = await openCounting(t, place);
  await page.locator("#zone").evaluate((zone) => zone.click());
  await shows(page, 1);
});

test("keys do not count while a sheet is up", async (t) => {
  const page = await openCounting(t, place, { device: DESK });
  await pull(page, 6);
  for (const opener of [".checks-button", "#pace", "#stop"]) {
    await press(page, opener);
    await page.locator("dialog[open]").waitFor();
    await page.keyboard.press("PageDown");
    // A touch on plain words takes the keyboard's place out of the sheet's buttons.
    await press(page, "#sheet-title");
    await page.keyboard.press("PageDown");
    await aMoment(page);
    await press(page, "dialog .sheet-head .icon-button");
    await page.locator("dialog").waitFor({ state: "detached" });
  }
  await shows(page, 6);
});

test("a form in Spanish shows numbers with a comma, and reads a point as well", async (t) => {
  const page = await openShop(t, place, { settings: { language: "spanish", metric: true } });
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
  assert.equal(await guess.inputValue(), "31,25");
  await save(page);
  await page.locator(".run-row").first().waitFor();
  await edit();
  await guess.waitFor();
  assert.equal(await guess.inputValue(), "31,25");
});
