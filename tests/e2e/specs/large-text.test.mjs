// Large text on narrow phones: every page in both languages.
import assert from "node:assert/strict";
import { test } from "node:test";
import { PHONE } from "../support/browser.mjs";
import { overflows, windowSizes } from "../support/layout.mjs";
import { visitPages } from "../support/pages/index.mjs";
import { openDemo, testServer } from "../support/setup.mjs";

const app = testServer();

/** With a page that may zoom out, what was pressed after another size would be missed. */
const NARROW = { ...PHONE, isMobile: false, deviceScaleFactor: 1, viewport: { width: 360, height: 844 } };
/** Width of the window in pixels, and size of the text in percent of the usual one. */
const SIZES = [[390, 200], [360, 130]];

for (const language of ["english", "spanish"]) {
  test(`in ${language} every page fits a narrow phone with large text`, async (t) => {
    const page = await openDemo(t, app, { device: NARROW, settings: { language } });
    const resize = await windowSizes(page);
    const found = [];
    await visitPages(page, async (name) => {
      for (const [width, percent] of SIZES) {
        await resize(width, percent);
        found.push(...(await overflows(page, `${name}, ${width} px, text at ${percent} %`)));
      }
    });
    assert.ok(found.length === 0, `${found.length} found\n${found.join("\n")}`);
  });
}
