// Takes pictures of every screen of the demo shop from the built app.
// ./dev pictures            the set in public/pictures, for the README and the manifest
// ./dev pictures --review   every screen × size × theme × language into /tmp/lastpull-review
import { mkdirSync, rmSync } from "node:fs";
import { DESK, PHONE, launch } from "../e2e/support/browser.mjs";
import { installClock } from "../e2e/support/clock.mjs";
import { serve } from "../../src/build/serve.mjs";

const review = process.argv.includes("--review");
const only = process.argv.slice(2).find((word) => !word.startsWith("--"));
const server = await serve("dist");
const browser = await launch();

/** Opens the demo shop as a device of this kind, theme and language. */
async function open(kind, theme, language, settings = {}) {
  const context = await browser.newContext({ ...(kind === "phone" ? PHONE : DESK), colorScheme: theme === "dark" ? "dark" : "light" });
  await context.addInitScript(
    (device) => localStorage.getItem("lastpull.device") ?? localStorage.setItem("lastpull.device", JSON.stringify(device)),
    { language, theme, metric: language === "spanish", clock_24: language === "spanish", ...settings },
  );
  await installClock(context);
  const page = await context.newPage();
  await page.goto(server.url);
  await page.locator("#open-demo").click();
  await page.locator("#verdict").waitFor();
  return page;
}

const go = (page, hash) => page.evaluate((hash) => { location.hash = hash; }, hash);
const runs = (page) => page.locator(".run-link").evaluateAll((links) => links.map((link) => link.getAttribute("href")));
const heading = (page) => page.locator("#heading").waitFor();

/** Every screen: its name and how to come to it. */
const SCREENS = {
  welcome: async (page) => { await page.locator(".banner-button").first().click(); await page.locator("#open-demo").waitFor(); },
  day: async (page) => { await go(page, "#/"); await page.locator("#verdict").waitFor(); },
  count: async (page) => { await go(page, "#/press"); await page.locator("#zone").waitFor(); },
  stopped: async (page) => { await SCREENS.count(page); await page.locator("#stop").click(); await page.locator("[data-cause=Ink]").click(); await page.locator("#stopped").waitFor(); },
  misprint: async (page) => { await SCREENS.count(page); await page.locator("#misprint").click(); await page.locator("[data-cause=Pinhole]").waitFor(); },
  number: async (page) => { await SCREENS.count(page); await page.locator("#number").click(); await page.locator("#pieces").waitFor(); },
  failed: async (page) => { await SCREENS.count(page); await page.locator("#failed").click(); await page.locator("[data-kind=Spot]").waitFor(); },
  "failed-where": async (page) => { await SCREENS.failed(page); await page.locator("[data-kind=Spot]").click(); await page.locator("#step-mark").click(); await page.locator("#art").click({ position: { x: 60, y: 70 } }); await page.locator(".failure-mark").waitFor(); },
  "failed-burning": async (page) => {
    await SCREENS["failed-where"](page);
    await page.locator("#step-since").click();
    await page.locator('[data-since="5"]').click();
    await page.locator("#judge").waitFor();
    await page.locator("#step-remedy").click();
    await page.locator("[data-remedy=BurnAgain]").click();
    await page.locator("dialog #label").fill("B1");
    await page.locator("dialog [type=submit]").click();
    await page.locator("[data-step=Coat]").click();
    await page.locator("[data-step=Coat][aria-pressed=true]").waitFor();
  },
  "failed-judge": async (page) => { await SCREENS["failed-burning"](page); await page.locator("#go-on").click(); await page.locator(".failure-bar").click(); await page.locator("#judge").waitFor(); },
  checks: async (page) => { await SCREENS.day(page); await go(page, (await runs(page))[1]); await page.locator("#changes").waitFor(); },
  changeover: async (page) => { await SCREENS.checks(page); await page.locator("#settle-start").waitFor(); },
  room: async (page) => { await go(page, "#/heat/room"); await page.locator("#room-now").waitFor(); },
  "fabric-limits": async (page) => { await go(page, "#/heat/limits"); await page.locator(".heat-limit").first().waitFor(); },
  heat: async (page) => { await go(page, "#/heat"); await page.locator(".page.heat .menu").waitFor(); },
  pick: async (page) => { await SCREENS.ended(page); await SCREENS.day(page); await go(page, "#/press"); await page.locator(".press-pick").waitFor(); },
  ended: async (page) => { await SCREENS.count(page); await page.locator("#stop").click(); await page.locator("#end-anyway").click(); await page.locator("#ended-good").waitFor(); },
  jobs: async (page) => { await go(page, "#/jobs"); await page.locator(".job-row").first().waitFor(); },
  job: async (page) => { await SCREENS.jobs(page); await page.locator(".job-row").first().click(); await page.locator(".lot").first().waitFor(); },
  "job-form": async (page) => { await go(page, "#/job/new"); await page.locator("#client").waitFor(); },
  "lot-form": async (page) => { await SCREENS.job(page); await page.locator(".lots > .button").click(); await page.locator("#garment").waitFor(); },
  "run-form": async (page) => { await SCREENS.job(page); await page.locator(".lot > .button").first().click(); await page.locator("#ink").waitFor(); },
  stencil: async (page) => { await go(page, "#/stencil"); await page.locator(".stencil-door").first().waitFor(); },
  exposure: async (page) => { await go(page, "#/stencil/exposure"); await page.locator("#answer").waitFor(); },
  "exposure-test": async (page) => { await go(page, "#/stencil/exposure/find"); await page.locator("#time").fill("120"); await page.locator("#solid-5").click(); await page.locator("#factor").waitFor(); },
  kit: async (page) => { await go(page, "#/stencil/kit"); await page.locator(".stencil-row").first().waitFor(); },
  bath: async (page) => { await go(page, "#/stencil/bath"); await page.locator("#bath-chart").waitFor(); },
  volume: async (page) => { await go(page, "#/stencil/volume"); await page.locator("#width").fill("12"); await page.locator("#height").fill("10"); await page.locator("#pieces").fill("72"); },
  ink: async (page) => { await go(page, "#/ink"); await page.locator("#needs").waitFor(); },
  "ink-recipe": async (page) => { await SCREENS.ink(page); await page.locator("#recipes .ink-row").nth(1).click(); await page.locator("#best").waitFor(); },
  "ink-again": async (page) => { await SCREENS["ink-recipe"](page); await page.locator("#again").click(); await page.locator("#grams").fill("20"); await page.locator("#total").waitFor(); },
  "ink-form": async (page) => {
    await SCREENS.ink(page);
    await page.locator(".ink-need .ink-act").last().click();
    for (const [at, name, percent] of [[0, "Base, clear", "90"], [1, "Blue", "6"], [2, "Black", "3"]]) {
      await page.locator("#add-part").click();
      await page.locator(`[data-component="${name}"]`).click();
      await page.locator(`#percent-${at}`).fill(percent);
    }
    await page.locator("[data-fix=fill]").waitFor();
  },
  "pot-weigh": async (page) => { await SCREENS.ink(page); await page.locator("#pots .ink-row").first().click(); await page.locator("#now").waitFor(); },
  "pot-over": async (page) => { await SCREENS["pot-weigh"](page); const target = Number((await page.locator("#target").innerText()).replace(",", ".").replace(/[^0-9.]/g, "")); for (const key of (target * 1.02).toFixed(1)) await page.locator(`[data-key="${key === "." ? "mark" : key}"]`).click(); await page.locator("[data-key=enter]").click(); await page.locator("#over").waitFor(); },
  pot: async (page) => { await SCREENS.ink(page); await page.locator("#pots .ink-row").nth(2).click(); await page.locator("#holds").waitFor(); },
  "pot-add": async (page) => { await SCREENS.pot(page); await page.locator("#add").click(); await page.locator('[data-key="2"]').click(); await page.locator("#after ul").waitFor(); },
  "pot-label": async (page) => { await SCREENS.ink(page); await page.locator("#pots .ink-row").nth(1).click(); await page.locator(".head-aside a").first().click(); await page.locator("#keep").waitFor(); },
  "ink-stock": async (page) => { await go(page, "#/ink/stock"); await page.locator("#buy").waitFor(); },
  "ink-component": async (page) => { await SCREENS["ink-stock"](page); await page.locator("main .ink-row").first().click(); await page.locator("#left").waitFor(); },
  match: async (page) => { await go(page, "#/ink"); await page.locator("#pots a").filter({ hasText: "Fern" }).first().click(); await page.locator("#to-match").click(); await page.locator(".colour-way").first().waitFor(); },
  target: async (page) => { await SCREENS.match(page); await page.locator("#to-target").click(); await page.locator("#target-clear").waitFor(); },
  cover: async (page) => { await go(page, "#/ink"); await page.locator("#recipes a").filter({ hasText: "Apricot" }).first().click(); await page.locator('a[href^="#/colour/cover/"]').first().click(); await page.locator("#cover-answer").waitFor(); },
  "component-colour": async (page) => { await go(page, "#/ink/stock"); await page.locator("main .ink-row").filter({ hasText: /Blue|Azul/ }).first().click(); await page.locator('a[href^="#/colour/component/"]').first().click(); await page.locator(".colour-lines").waitFor(); },
  drawdown: async (page) => { await go(page, "#/ink/stock"); await page.locator("main .ink-row").filter({ hasText: "Black" }).first().click(); await page.locator('a[href^="#/colour/component/"]').first().click(); await page.locator("#next-drawdown").click(); await page.locator("#share").waitFor(); },
  "drawdown-beside": async (page) => { await SCREENS.drawdown(page); await page.locator("#seen-1").click(); await page.locator("#beside").waitFor(); },
  screens: async (page) => { await go(page, "#/screens"); await page.locator(".screen-row").first().waitFor(); },
  "screens-board": async (page) => { await SCREENS.screens(page); await page.locator(".screen-board").evaluate((board) => board.scrollIntoView()); },
  "screens-picked": async (page) => { await SCREENS["screens-board"](page); await page.locator("#select").click(); await page.locator("[data-state=Coated] .screen-group-head .button").click(); await page.locator("#select-bar [data-to]").first().waitFor(); },
  "screen-card": async (page) => { await SCREENS.screens(page); await page.locator("[data-state=Ready] .screen-row").nth(1).click(); await page.locator("#state").waitFor(); },
  "screen-form": async (page) => { await go(page, "#/screens/new"); await page.locator("#label").fill("A1–A6"); await page.locator("#adds").waitFor(); },
  "screen-room": async (page) => { await go(page, "#/screens/room"); await page.locator("#coat").waitFor(); },
  more: async (page) => { await go(page, "#/more"); await page.locator(".menu").waitFor(); },
  settings: async (page) => { await go(page, "#/more/settings"); await page.locator("#crew").waitFor(); },
  backup: async (page) => { await go(page, "#/more/backup"); await page.locator("#prepare").waitFor(); },
  about: async (page) => { await go(page, "#/more/about"); await page.locator("#facts").waitFor(); },
};

async function take(folder, kind, theme, language, names, fullPage) {
  for (const name of names) {
    if (only && name !== only) continue;
    const page = await open(kind, theme, language);
    await SCREENS[name](page);
    await heading(page);
    // Let the last frame be drawn.
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
    await page.screenshot({ path: `${folder}/${name}-${kind}-${theme}-${language}.png`, fullPage: fullPage && !["count", "stopped", "misprint", "number"].includes(name) });
    await page.context().close();
  }
}

if (review) {
  const folder = "/tmp/lastpull-review";
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const kind of ["phone", "desk"])
    for (const theme of ["light", "dark"])
      for (const language of ["english", "spanish"]) {
        if (process.argv.includes("--quick") && (theme === "dark") !== (language === "spanish")) continue;
        await take(folder, kind, theme, language, Object.keys(SCREENS), true);
      }
  console.log(folder);
} else {
  const folder = "public/pictures";
  mkdirSync(folder, { recursive: true });
  await take(folder, "phone", "light", "english", Object.keys(SCREENS), false);
  await take(folder, "phone", "dark", "spanish", ["day", "count", "checks"], false);
  await take(folder, "phone", "amber", "english", ["count", "screens"], false);
  await take(folder, "desk", "light", "english", ["day", "count"], false);
  console.log(folder);
}
await browser.close();
await server.close();
