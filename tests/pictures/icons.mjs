// Draws the PNG icons from the SVG files in public/icons. Run it after changing one: ./dev icons
import { readFileSync, writeFileSync } from "node:fs";
import { launch } from "../e2e/support/browser.mjs";

const browser = await launch();
const page = await browser.newPage({ deviceScaleFactor: 1 });
for (const [source, size, name] of [
  // Favicon as PNG: drawing an SVG takes a phone 16 ms while the app starts.
  ["lastpull", 48, "icon-48"],
  ["lastpull", 192, "icon-192"],
  ["lastpull", 512, "icon-512"],
  ["maskable", 180, "icon-180"],
  ["maskable", 512, "maskable-512"],
]) {
  const svg = readFileSync(`public/icons/${source}.svg`).toString("base64");
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(`<style>body{margin:0}img{display:block}</style><img width="${size}" height="${size}" src="data:image/svg+xml;base64,${svg}">`);
  writeFileSync(`public/icons/${name}.png`, await page.screenshot({ omitBackground: true }));
}
await browser.close();
