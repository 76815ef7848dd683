// Takes pictures of the demo shop's pages from the built app, always as of the same date and time.
// ./dev pictures            the set in public/pictures, for the README and the manifest
// ./dev pictures --review   every page × size × theme × language into a temporary folder (--quick: half of them)
// A name after that takes only that picture. LASTPULL_DIST is the folder of the built app, if it is not dist/;
// LASTPULL_PICTURES the folder for the pictures.
import { mkdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { serve } from "../../src/build/serve.mjs";
import { DESK, PHONE, launch } from "../e2e/support/browser.mjs";
import { START, installClock } from "../e2e/support/clock.mjs";
import { press } from "../e2e/support/page.mjs";
import { PICTURES, openForPicture } from "../e2e/support/pages/index.mjs";
import { DIST, preparePage } from "../e2e/support/setup.mjs";

/** Pages that fit the window: never taken in full height. */
const FIXED_HEIGHT = ["count", "stopped", "misprint", "number"];
const DEVICES = { phone: PHONE, desk: DESK };

const review = process.argv.includes("--review");
const quick = process.argv.includes("--quick");
const only = process.argv.slice(2).find((argument) => !argument.startsWith("--"));
const folder = process.env.LASTPULL_PICTURES ?? (review ? join(tmpdir(), "lastpull-review") : "public/pictures");

if (review) rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const server = await serve(DIST);
const browser = await launch();

/** Opens the demo shop on a device with this theme and language. */
async function openDemo(device, theme, language) {
  const context = await browser.newContext({ ...DEVICES[device], colorScheme: theme === "dark" ? "dark" : "light" });
  // Restarted for each picture, so that the time on it does not depend on how long the others took.
  await installClock(context, START);
  await context.addInitScript(
    (settings) => localStorage.getItem("lastpull.device") ?? localStorage.setItem("lastpull.device", JSON.stringify(settings)),
    { language, theme, metric: language === "spanish", clock_24: language === "spanish" },
  );
  const page = preparePage(await context.newPage(), DEVICES[device]);
  await page.goto(server.url);
  await press(page, "#open-demo");
  await page.locator("#verdict").waitFor();
  return page;
}

async function take(device, theme, language, names) {
  for (const name of names) {
    if (only && name !== only) continue;
    const page = await openDemo(device, theme, language);
    await openForPicture(page, name);
    await page.locator("#heading").waitFor();
    // Two frames, so that the last change is painted.
    await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
    await page.screenshot({ path: join(folder, `${name}-${device}-${theme}-${language}.png`), fullPage: review && !FIXED_HEIGHT.includes(name) });
    await page.context().close();
  }
}

if (review) {
  for (const device of ["phone", "desk"])
    for (const theme of ["light", "dark"])
      for (const language of ["english", "spanish"]) {
        if (quick && (theme === "dark") !== (language === "spanish")) continue;
        await take(device, theme, language, PICTURES);
      }
} else {
  await take("phone", "light", "english", PICTURES);
  await take("phone", "dark", "spanish", ["day", "count", "checks"]);
  await take("phone", "amber", "english", ["count", "screens"]);
  await take("desk", "light", "english", ["day", "count"]);
}
console.log(folder);
await browser.close();
await server.close();
