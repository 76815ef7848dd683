// Text at twice its size, as people set it in the browser who see badly.
import assert from "node:assert/strict";
import { test } from "node:test";
import { PHONE } from "../support/browser.mjs";
import { visitPages } from "../support/pages.mjs";
import { openDemo, testServer } from "../support/setup.mjs";

const app = testServer();

/** Runs in the page before the app does. */
function doubleText() {
  document.addEventListener("DOMContentLoaded", () => { document.documentElement.style.fontSize = "200%"; });
}

// In Spanish, whose words are longer.
test("with text at twice its size every page fits a phone", async (t) => {
  const page = await openDemo(t, app, { device: { ...PHONE, viewport: { width: 390, height: 844 } }, settings: { language: "spanish" }, initScript: doubleText });
  const wide = [];
  await visitPages(page, async (name) => {
    const found = await page.evaluate(() => {
      const [room, width] = [document.documentElement.clientWidth, document.documentElement.scrollWidth];
      if (width <= room) return null;
      const out = [...document.body.querySelectorAll("*")].filter((element) => element.getBoundingClientRect().right > room + 1);
      return `${width} px wide in ${room}, because of ${out.slice(0, 3).map((element) => `${element.localName}.${element.className}`).join(", ")}`;
    });
    if (found) wide.push(`${name}: ${found}`);
  });
  assert.deepEqual(wide, []);
});
