// Every screen against the rules of WCAG 2.2 AA that a machine can judge: light and dark, in English
// and in Spanish.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { DESK, PHONE, go, openFirst, openShop, premises, press } from "../support/shop.mjs";
import { SCREENS, putAway } from "../support/pages.mjs";
import { failSaving } from "../support/storage-faults.mjs";

const place = premises();
const axe = readFileSync(fileURLToPath(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url)), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** What axe finds wrong on the screen as it stands, in words. */
async function judge(page, screen) {
  // Colours are judged when nothing is on its way from one to another.
  await page.evaluate(() => Promise.all(document.getAnimations().map((animation) => animation.finished.catch(() => {}))));
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe);
  // As tall as the page: what a bar at the foot hides is only where the page happens to be scrolled to.
  const device = page.viewportSize();
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  if (height > device.height) await page.setViewportSize({ ...device, height });
  const { violations } = await page.evaluate((tags) => axe.run(document, { runOnly: tags, resultTypes: ["violations"] }), TAGS);
  if (height > device.height) await page.setViewportSize(device);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${screen}: ${id}\n    ${node.html.slice(0, 300)}\n    ${node.failureSummary.replace(/\s+/g, " ")}`));
}

function nothingWrong(found) {
  assert.ok(found.length === 0, `${found.length} violations\n${[...new Set(found)].join("\n")}`);
}

/** Theme by setting and by device, so that both ways to a theme are judged. */
const LIGHTS = {
  light: { colorScheme: "light", theme: "device" },
  dark: { colorScheme: "dark", theme: "device" },
  "dark by setting": { colorScheme: "light", theme: "dark" },
  amber: { colorScheme: "light", theme: "amber" },
};

async function judgeEveryScreen(t, { light, language, device }) {
  const { colorScheme, theme } = LIGHTS[light];
  const page = await openFirst(t, place, { device, colorScheme, settings: { language, theme } });
  const found = await judge(page, "welcome");
  await press(page, "#open-demo");
  await page.locator("#verdict").waitFor();
  for (const [screen, show] of Object.entries(SCREENS)) {
    await show(page).catch((error) => { throw new Error(`${screen}: ${error.message}`); });
    found.push(...(await judge(page, screen)));
    await putAway(page);
  }
  nothingWrong(found);
}

test("every screen is in order in light and English on a phone", (t) => judgeEveryScreen(t, { light: "light", language: "english", device: PHONE }));
test("every screen is in order in dark and English on a desk", (t) => judgeEveryScreen(t, { light: "dark", language: "english", device: DESK }));
test("every screen is in order in light and Spanish on a desk", (t) => judgeEveryScreen(t, { light: "light", language: "spanish", device: DESK }));
test("every screen is in order in dark and Spanish on a phone", (t) => judgeEveryScreen(t, { light: "dark by setting", language: "spanish", device: PHONE }));
test("every screen is in order in amber", (t) => judgeEveryScreen(t, { light: "amber", language: "english", device: PHONE }));

for (const [light, { colorScheme }] of Object.entries({ light: LIGHTS.light, dark: LIGHTS.dark })) {
  test(`a shop without anything, and one that does not save, are in order in ${light}`, async (t) => {
    const page = await openShop(t, place, { colorScheme, before: failSaving });
    const found = await judge(page, "empty day");
    for (const [hash, wait] of [["#/jobs", ".empty"], ["#/press", ".empty"], ["#/screens", ".empty"], ["#/ink", ".empty"], ["#/ink/stock", ".empty"], ["#/more", ".menu"], ["#/heat/units", ".empty"], ["#/heat/inks", ".empty"], ["#/heat/tests", ".empty"], ["#/heat/trials", ".empty"], ["#/heat/settling", ".page.form"], ["#/heat/room", "#temperature"], ["#/more/about", "#erase"]]) {
      await go(page, hash, wait);
      found.push(...(await judge(page, `empty ${hash}`)));
    }
    await press(page, "#erase");
    found.push(...(await judge(page, "erase")));
    await putAway(page);
    await go(page, "#/", "#closing");
    await page.evaluate(() => { window.storage.fail = "QuotaExceededError"; });
    await press(page, page.locator(".closing button").last());
    await page.locator(".fault.retrying").waitFor();
    found.push(...(await judge(page, "saving is tried again")));
    await page.locator("#blocked").waitFor();
    found.push(...(await judge(page, "saving is blocked")));
    nothingWrong(found);
  });
}
