// The keyboard focus: after navigating, after a dialog, and when a form is refused.
import assert from "node:assert/strict";
import { test } from "node:test";
import { DESK, PHONE } from "../support/browser.mjs";
import { pull, waitForCount, waitTwoFrames } from "../support/counting.mjs";
import { addComponent, typeOnKeypad } from "../support/ink-helpers.mjs";
import { closeDialog, fillForm, go, press, save, waitForDialog } from "../support/page.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { addGarments, newJob, openCounting } from "../support/shop.mjs";

const app = testServer();

/** Waits until the element that the selector matches has the keyboard focus. */
const waitForFocus = (page, selector) => page.waitForFunction((selector) => document.activeElement?.matches(selector), selector);

/** Presses a key on an element. */
const key = (page, selector, name) => page.locator(selector).press(name);

test("after Enter on a tab the heading of its page has the focus", async (t) => {
  const page = await openDemo(t, app, { device: DESK });
  for (const [route, shown] of [["#/more", ".page.more"], ["#/ink", ".page.ink"], ["#/screens", ".page.screens"], ["#/press", ".page.count"], ["#/", ".page.day"]]) {
    await key(page, `nav a[href="${route}"]`, "Enter");
    await waitForFocus(page, `${shown} #heading`);
  }
});

test("Escape closes a dialog and gives the focus back to its button", async (t) => {
  const page = await openCounting(t, app, { device: DESK });
  await pull(page, 1);
  const closed = async (button) => {
    await key(page, button, "Enter");
    await waitForDialog(page);
    await page.keyboard.press("Escape");
    await page.locator("dialog").waitFor({ state: "detached" });
    await waitForFocus(page, button);
  };
  for (const button of ["#misprint", "#number", "#stop", ".checks-button"]) await closed(button);
  await go(page, "#/ink/new", "#name");
  await closed("#add-part");
});

test("after a dialog that was opened by touch the next key counts", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 1);
  await press(page, "#number");
  await waitForDialog(page);
  await closeDialog(page);
  await page.keyboard.press("Enter");
  await waitForCount(page, 2);
  await page.keyboard.press("Space");
  await waitForCount(page, 3);
  assert.equal(await page.locator("dialog").count(), 0);
});

test("a dialog that takes the place of another stays open", async (t) => {
  const page = await openCounting(t, app);
  await press(page, "#number");
  await waitForDialog(page);
  await page.evaluate(() => {
    document.querySelector("dialog .sheet-head .icon-button").click();
    document.querySelector("#misprint").click();
  });
  await page.locator("dialog[open] [data-cause=Smudge]").waitFor();
  // The event of the first one's closing comes later.
  await waitTwoFrames(page);
  assert.equal(await page.locator("dialog[open] [data-cause=Smudge]").count(), 1);
});

/** Whether the field with the focus and its message are above the bar at the foot, and below the top of the window. */
const isClear = (page, id) => page.evaluate((id) => {
  const [field, help, bar] = [`#${id}`, `#${id}-help`, ".save-bar"].map((selector) => document.querySelector(selector).getBoundingClientRect());
  return field.top >= 0 && help.bottom <= bar.top + 0.5;
}, id);

for (const [name, viewport] of Object.entries({ portrait: PHONE.viewport, "a small phone": { width: 360, height: 640 } })) {
  test(`in ${name} a refused form shows its first problem above the button`, async (t) => {
    const page = await openShop(t, app, { device: { ...PHONE, viewport } });
    const refused = async (fields, first) => {
      await fillForm(page, fields);
      await page.evaluate(() => { scrollTo(0, document.documentElement.scrollHeight); });
      await save(page);
      await waitForFocus(page, `#${first}`);
      assert.ok(await isClear(page, first), `${first} is in view`);
    };
    await newJob(page);
    await addGarments(page);
    await refused({ ink: "Brick", off_contact: "far", below_collar: "low" }, "off_contact");
    await refused({ off_contact: "" }, "below_collar");
    await refused({ dryer: "hot" }, "dryer");
    await go(page, "#/pot/new", "#tare");
    await refused({ tare: "light" }, "name");
    await go(page, "#/job/new", "#client");
    await refused({ title: "Tour tees", due_day: "2020-01-02" }, "client");
    await refused({ client: "Harbour Night Choir" }, "due_day");
  });
}

test("a refused dialog moves the focus to its field", async (t) => {
  const page = await openCounting(t, app);
  await press(page, "#number");
  await waitForDialog(page);
  await press(page, "#number-add");
  await waitForFocus(page, "#pieces[aria-invalid=true]");
});

test("what Tab reaches in a form is not under the bar at the foot", async (t) => {
  const page = await openShop(t, app, { device: { ...DESK, viewport: { width: 390, height: 700 } } });
  await newJob(page);
  await addGarments(page);
  await page.locator("#heading").focus();
  for (let steps = 0; ; steps += 1) {
    await page.keyboard.press("Tab");
    const [done, covered] = await page.evaluate(() => {
      const [active, bar] = [document.activeElement, document.querySelector(".save-bar")];
      return [bar.contains(active), active.id && active.getBoundingClientRect().bottom > bar.getBoundingClientRect().top + 1 && active.id];
    });
    if (done) break;
    assert.ok(!covered, `${covered} is under the bar`);
    assert.ok(steps < 80, "the button is reached");
  }
});

test("after an addition to a batch the page begins at its top again", async (t) => {
  const page = await openDemo(t, app);
  await go(page, "#/ink", "#pots .ink-row");
  await press(page, page.locator("#pots .ink-row").nth(2));
  await press(page, "#add");
  await typeOnKeypad(page, 1);
  await press(page, page.locator(".pot-chips .button").first());
  await page.evaluate(() => { scrollTo(0, document.documentElement.scrollHeight); });
  await press(page, "[data-key=enter]");
  await page.locator("#added").waitFor();
  await waitForFocus(page, "#heading");
  assert.ok(await page.locator("#same").evaluate((same) => same.getBoundingClientRect().top > 0), "the next steps are in view");
  await press(page, "#same");
  await page.locator("#picked").waitFor();
  await waitForFocus(page, "#heading");
});

test("after an undo in a notice the heading of the page has the focus", async (t) => {
  const page = await openCounting(t, app, { device: DESK });
  await pull(page, 2);
  await press(page, "#number");
  await waitForDialog(page);
  await fillForm(page, { pieces: 3 });
  await press(page, "#number-add");
  await waitForCount(page, 5);
  await key(page, ".notice-undo", "Enter");
  await waitForFocus(page, "#heading");
  await waitForCount(page, 2);
  await page.keyboard.press("PageDown");
  await waitForCount(page, 3);
});

test("after a draft was discarded the heading of its page or dialog has the focus", async (t) => {
  const page = await openShop(t, app);
  await go(page, "#/job/new", "#client");
  await fillForm(page, { title: "Tour tees" });
  await page.reload();
  await key(page, "#draft-discard", "Enter");
  await waitForFocus(page, "#heading");
  await addComponent(page, "Base");
  await go(page, "#/ink/stock", ".ink-row");
  await press(page, page.locator(".ink-row").first());
  await press(page, "#came-in");
  await fillForm(page, { note: "lot 7" });
  await page.reload();
  await press(page, "#came-in");
  await key(page, "#dialog-draft-discard", "Enter");
  await waitForFocus(page, "dialog .sheet-head h2");
});
