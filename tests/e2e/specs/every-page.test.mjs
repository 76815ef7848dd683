// Every page of the demo shop in both languages, visited once: axe's rules for WCAG 2.2 AA, the colours of every theme,
// large text on narrow phones, and sentences that end with one period.
import assert from "node:assert/strict";
import { test } from "node:test";
import { THEMES, judge } from "../support/axe.mjs";
import { DESK, PHONE } from "../support/browser.mjs";
import { overflows, windowSizes } from "../support/layout.mjs";
import { visitPages } from "../support/pages/index.mjs";
import { openDemo, testServer } from "../support/setup.mjs";

const app = testServer();

/** Width of the window in pixels, and size of the text in percent of the usual one. */
const NARROW = [[360, 130], [390, 200]];

/** Where a sentence ends with the period of an abbreviation and its own: "4:00 p. m..". */
async function doublePeriods(page, name) {
  const text = await page.evaluate(() => document.body.innerText);
  return (text.match(/.{0,60}\.\./g) ?? []).map((words) => `${name}, two periods: ${words}`);
}

async function visitEveryPage(t, { themes, language, device }) {
  const [{ colorScheme, theme }] = themes;
  const page = await openDemo(t, app, { device, colorScheme, settings: { language, theme } });
  const resize = await windowSizes(page);
  const found = [];
  await visitPages(page, async (name) => {
    found.push(...(await judge(page, name, themes)), ...(await doublePeriods(page, name)));
    for (const [width, percent] of NARROW) {
      await resize(width, percent);
      found.push(...(await overflows(page, `${name}, ${width} px, text at ${percent} %`)));
    }
    await resize(device.viewport.width, 100);
  });
  assert.ok(found.length === 0, `${found.length} found\n${[...new Set(found)].join("\n")}`);
}

test("every page in Spanish, opened on a phone, passes axe and fits large text", (t) =>
  visitEveryPage(t, {
    themes: [THEMES.dark, THEMES.light, THEMES.amber],
    language: "spanish",
    // With a page that may zoom out, what is pressed after another size would be missed.
    device: { ...PHONE, isMobile: false, deviceScaleFactor: 1 },
  }));

test("every page in English, opened on a desktop, passes axe and fits large text", (t) =>
  visitEveryPage(t, { themes: [THEMES.light, THEMES.darkBySetting], language: "english", device: DESK }));
