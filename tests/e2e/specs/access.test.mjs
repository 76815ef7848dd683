// Every page against axe's rules for WCAG 2.2 AA in both languages, and its colours in light, dark and amber.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { DESK, PHONE } from "../support/browser.mjs";
import { closeDialog, go, press } from "../support/page.mjs";
import { visitPages } from "../support/pages/index.mjs";
import { openDemo, openShop, testServer } from "../support/setup.mjs";
import { failWrites } from "../support/storage-faults.mjs";

const app = testServer();
const axe = readFileSync(fileURLToPath(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url)), "utf8");
/** All rules, or one. */
const ALL = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
const CONTRAST = { type: "rule", values: ["color-contrast"] };

/** Violations that axe finds on the page as it is shown, as text. */
async function findViolations(page, name, rules) {
  // Colours are measured when no animation is running.
  await page.evaluate(() => Promise.all(document.getAnimations().map((animation) => animation.finished.catch(() => {}))));
  const { violations } = await page.evaluate((rules) => axe.run(document, { runOnly: rules, resultTypes: ["violations"] }), rules);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${name}: ${id}\n    ${node.html.slice(0, 300)}\n    ${node.failureSummary.replace(/\s+/g, " ")}`));
}

/** Violations on the page as it is, by all rules, and the contrast of its colours in other themes. */
async function judge(page, name, others = []) {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe);
  // As tall as the page: what the bottom bar covers depends only on the scroll position.
  const device = page.viewportSize();
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  if (height > device.height) await page.setViewportSize({ ...device, height });
  const violations = await findViolations(page, name, ALL);
  for (const light of others) {
    await show(page, light);
    violations.push(...(await findViolations(page, `${name}, ${light.name}`, CONTRAST)));
  }
  if (height > device.height) await page.setViewportSize(device);
  return violations;
}

function assertNone(violations) {
  assert.ok(violations.length === 0, `${violations.length} violations\n${[...new Set(violations)].join("\n")}`);
}

/** Shows the page in a theme, chosen by the device or by the setting. */
async function show(page, { colorScheme, theme }) {
  await page.emulateMedia({ colorScheme });
  await page.evaluate((theme) => { document.documentElement.dataset.theme = theme; }, theme);
}

/** Themes chosen by the setting and by the device, so that both ways are tested. */
const LIGHTS = {
  light: { colorScheme: "light", theme: "device" },
  dark: { colorScheme: "dark", theme: "device" },
  "dark by setting": { colorScheme: "light", theme: "dark" },
  amber: { colorScheme: "light", theme: "amber" },
};

/**
 * Visits every page once: all rules in the first of these themes, in the others the contrast of colours, which is all that
 * a theme changes.
 */
async function judgeEveryPage(t, { lights, language, device }) {
  const [first, ...others] = lights.map((name) => ({ name, ...LIGHTS[name] }));
  const page = await openDemo(t, app, { device, colorScheme: first.colorScheme, settings: { language, theme: first.theme } });
  const violations = [];
  await visitPages(page, async (name) => {
    violations.push(...(await judge(page, name, others)));
    await show(page, first);
  });
  assertNone(violations);
}

test("every page passes axe in Spanish on a phone in all themes", (t) =>
  judgeEveryPage(t, { lights: ["dark", "light", "amber"], language: "spanish", device: PHONE }));
test("every page passes axe in English on a desktop in light and dark", (t) =>
  judgeEveryPage(t, { lights: ["light", "dark by setting"], language: "english", device: DESK }));

test("after navigating, the heading of the new page has the focus", async (t) => {
  const page = await openShop(t, app);
  for (const [link, shown] of [["nav a[href='#/more']", ".page.more"], ["a[href='#/more/settings']", ".page.settings"], [".head-back", ".page.more"]]) {
    await press(page, link);
    await page.waitForFunction((shown) => document.activeElement === document.querySelector(`${shown} #heading`), shown);
  }
});

for (const [light, { colorScheme }] of Object.entries({ light: LIGHTS.light, dark: LIGHTS.dark })) {
  test(`an empty shop and one that cannot save pass axe in ${light}`, async (t) => {
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
    assertNone(violations);
  });
}
