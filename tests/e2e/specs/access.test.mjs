// An empty shop and one that cannot save against axe's rules for WCAG 2.2 AA, and the focus after navigating.
import assert from "node:assert/strict";
import { test } from "node:test";
import { THEMES, judge } from "../support/axe.mjs";
import { closeDialog, go, press } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";
import { failWrites } from "../support/storage-faults.mjs";

const app = testServer();

test("after navigating, the heading of the new page has the focus", async (t) => {
  const page = await openShop(t, app);
  for (const [link, shown] of [["nav a[href='#/more']", ".page.more"], ["a[href='#/more/settings']", ".page.settings"], [".head-back", ".page.more"]]) {
    await press(page, link);
    await page.waitForFunction((shown) => document.activeElement === document.querySelector(`${shown} #heading`), shown);
  }
});

for (const { name, colorScheme } of [THEMES.light, THEMES.dark]) {
  test(`an empty shop and one that cannot save pass axe in ${name}`, async (t) => {
    const page = await openShop(t, app, { colorScheme, initScript: failWrites });
    await page.locator("#first-steps").waitFor();
    const violations = await judge(page, "empty day");
    for (const [hash, wait] of [["#/jobs", ".empty"], ["#/press", ".empty"], ["#/screens", ".empty"], ["#/ink", ".empty"], ["#/ink/stock", ".empty"], ["#/more", ".menu"], ["#/heat/units", ".empty"], ["#/heat/inks", ".empty"], ["#/heat/tests", ".empty"], ["#/heat/trials", ".empty"], ["#/heat/settling", ".page.form"], ["#/heat/room", "#temperature"], ["#/more/about", "#erase"]]) {
      await go(page, hash, wait);
      violations.push(...(await judge(page, `empty ${hash}`)));
    }
    await press(page, "#erase");
    violations.push(...(await judge(page, "erase")));
    await closeDialog(page);
    await go(page, "#/", "#closing");
    await page.evaluate(() => { window.storage.fail = "QuotaExceededError"; });
    await press(page, page.locator(".closing button").last());
    await page.locator(".fault.retrying").waitFor();
    violations.push(...(await judge(page, "saving is tried again")));
    await page.locator("#blocked").waitFor();
    violations.push(...(await judge(page, "saving is blocked")));
    assert.ok(violations.length === 0, violations.join("\n"));
  });
}
