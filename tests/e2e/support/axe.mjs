// Whether everybody can read and use a page: axe's rules for WCAG 2.2 AA, and the contrast of the colours in every theme.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const axe = readFileSync(fileURLToPath(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url)), "utf8");
/** All rules, or one. */
const ALL = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
const CONTRAST = { type: "rule", values: ["color-contrast"] };

/** Themes chosen by the setting and by the device, so that both ways are tested. */
export const THEMES = {
  light: { name: "light", colorScheme: "light", theme: "device" },
  dark: { name: "dark", colorScheme: "dark", theme: "device" },
  darkBySetting: { name: "dark by setting", colorScheme: "light", theme: "dark" },
  amber: { name: "amber", colorScheme: "light", theme: "amber" },
};

/** Shows the page in a theme, chosen by the device or by the setting. */
async function show(page, { colorScheme, theme }) {
  await page.emulateMedia({ colorScheme });
  await page.evaluate((theme) => { document.documentElement.dataset.theme = theme; }, theme);
}

/** Violations that axe finds on the page as it is shown, as text. */
async function findViolations(page, name, rules) {
  // Colours are measured when no animation is running.
  await page.evaluate(() => document.getAnimations().filter((animation) => Number.isFinite(animation.effect.getComputedTiming().endTime)).forEach((animation) => animation.finish()));
  const { violations } = await page.evaluate((rules) => axe.run(document, { runOnly: rules, resultTypes: ["violations"] }), rules);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${name}: ${id}\n    ${node.html.slice(0, 300)}\n    ${node.failureSummary.replace(/\s+/g, " ")}`));
}

/**
 * Violations on the page: all rules in the first theme, which it is shown in, and in the others the contrast of colours,
 * which is all that a theme changes.
 */
export async function judge(page, name, [first, ...others] = []) {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe);
  // As tall as the page: what the bottom bar covers depends only on the scroll position.
  const device = page.viewportSize();
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  if (height > device.height) await page.setViewportSize({ ...device, height });
  const violations = await findViolations(page, name, ALL);
  for (const theme of others) {
    await show(page, theme);
    violations.push(...(await findViolations(page, `${name}, ${theme.name}`, CONTRAST)));
  }
  if (others.length) await show(page, first);
  if (height > device.height) await page.setViewportSize(device);
  return violations;
}
