// Every screen of the demo shop and how a person comes to it.
import { go, press } from "./shop.mjs";

const runs = (page) => page.locator(".run-link").evaluateAll((links) => links.map((link) => link.getAttribute("href")));
const counting = (page) => go(page, "#/press", "#zone");
const sheet = (page) => page.locator("dialog[open]").waitFor();

/** Puts the sheet on screen away. */
export async function putAway(page) {
  if (await page.locator("dialog[open]").count()) {
    await press(page, "dialog[open] .sheet-head .icon-button");
    await page.locator("dialog[open]").waitFor({ state: "detached" });
  }
}

/** Screens in an order in which each can be reached from the one before. */
export const SCREENS = {
  day: (page) => go(page, "#/", "#verdict"),
  jobs: (page) => go(page, "#/jobs", ".job-row"),
  "no jobs found": async (page) => { await page.locator("#search").fill("zzz"); await page.locator(".jobs .quiet-line").waitFor(); },
  job: async (page) => { await go(page, "#/"); await go(page, "#/jobs", ".job-row"); await press(page, page.locator(".job-row").first()); await page.locator(".lot").first().waitFor(); },
  "job: finish short": async (page) => { await press(page, page.locator(".job-actions .button").first()); await sheet(page); },
  "job form": (page) => go(page, "#/job/new", "#client"),
  "job form with mistakes": async (page) => { await press(page, ".save-bar [type=submit]"); await page.locator("#client-help .problem").waitFor(); },
  "garment form": async (page) => { await SCREENS.job(page); await press(page, ".lots > .button"); await page.locator("#garment").waitFor(); },
  "garment form with mistakes": async (page) => { await page.locator("#size-s").fill("-4"); await press(page, ".save-bar [type=submit]"); await page.locator("#pieces-problem").waitFor(); },
  "run form": async (page) => { await SCREENS.job(page); await press(page, page.locator(".lot > .button").first()); await page.locator("#ink").waitFor(); },
  "run form with mistakes": async (page) => { await page.locator("#dryer").fill("900"); await press(page, ".save-bar [type=submit]"); await page.locator("#dryer-help .problem").waitFor(); },
  count: counting,
  "count: misprint": async (page) => { await counting(page); await press(page, "#misprint"); await sheet(page); },
  "count: number": async (page) => { await counting(page); await press(page, "#number"); await sheet(page); await press(page, "#number-add"); await page.locator("dialog .problem").filter({ hasText: /\S/ }).waitFor(); },
  "count: stop": async (page) => { await counting(page); await press(page, "#stop"); await sheet(page); },
  "count: end": async (page) => { await counting(page); await press(page, "#end"); await sheet(page); },
  "count: checks": async (page) => { await counting(page); await press(page, ".checks-button"); await sheet(page); },
  "count: pace": async (page) => { await counting(page); await press(page, "#pace"); await sheet(page); },
  stopped: async (page) => { await counting(page); await press(page, "#stop"); await press(page, "[data-cause=Ink]"); await page.locator("#stopped").waitFor(); },
  checks: async (page) => { await SCREENS.day(page); await go(page, (await runs(page))[1], "#changes"); },
  "checks: measuring": async (page) => { await press(page, "[data-item=Dryer] [aria-expanded]"); await page.locator("#measure-Dryer").fill("x"); await press(page, "[data-item=Dryer] [type=submit]"); await page.locator("[data-item=Dryer] .problem").filter({ hasText: /\S/ }).waitFor(); },
  "checks made": async (page) => {
    await page.locator("#measure-Dryer").fill("262");
    await page.locator("#measure-Dryer").press("Enter");
    await page.locator("[data-item=Dryer] .badge").waitFor();
    await press(page, page.locator("[data-item=Dwell] .check-buttons .quiet"));
    await press(page, page.locator("[data-item=Ink] .tick"));
    await page.locator("[data-item=Ink] .badge").waitFor();
  },
  "checks: start with open ones": async (page) => { await press(page, "#start"); await sheet(page); },
  ended: async (page) => { await counting(page); await press(page, "#end"); await press(page, "#end-anyway"); await page.locator("#ended-good").waitFor(); },
  "press, which run": async (page) => { await SCREENS.day(page); await go(page, "#/press", ".press-pick"); },
  "exposure and bath": (page) => go(page, "#/stencil", ".stencil-door"),
  "exposure known": async (page) => { await go(page, "#/stencil/exposure", "#answer"); await press(page, "#edge summary"); await press(page, "#known summary"); },
  "exposure not known": async (page) => { await press(page, page.locator("fieldset:has([name=cloth]) input").last()); await page.locator("#count").fill("305"); await page.locator("#answer .stencil-differs").waitFor(); },
  "exposure from a test": async (page) => {
    await go(page, "#/stencil/exposure/find", "#time");
    await page.locator("#time").fill("120");
    await press(page, "#solid-5");
    await page.locator("#factor").waitFor();
    await press(page, "#which summary");
  },
  "exposure refused": async (page) => { await press(page, "#solid-0"); await page.locator("#mesh").fill("x"); await press(page, ".save-bar [type=submit]"); await page.locator("#mesh-help .problem").waitFor(); },
  "exposure corrected": async (page) => { await go(page, "#/stencil/exposure", "#known"); await press(page, "#known summary"); await press(page, page.locator("#known .stencil-row").first()); await page.locator("#delete").waitFor(); },
  "lamps and emulsions": (page) => go(page, "#/stencil/kit", ".stencil-row"),
  lamp: async (page) => { await press(page, page.locator(".stencil-row").first()); await page.locator("#distance").waitFor(); },
  "emulsion with mistakes": async (page) => { await go(page, "#/stencil/emulsion/new", "#name"); await press(page, ".save-bar [type=submit]"); await page.locator("#name-help .problem").waitFor(); },
  bath: async (page) => { await go(page, "#/stencil/bath", "#bath-chart"); await press(page, "#batches summary"); await press(page, "#charges summary"); },
  "bath: put in": async (page) => { await press(page, "#put-in"); await sheet(page); await press(page, page.locator(".stencil-ticks input").first()); },
  "bath: take out": async (page) => { await press(page, page.locator(".stencil-batch button").first()); await sheet(page); await press(page, page.locator("fieldset:has([name=time-kind]) input").last()); await page.locator("#minutes").waitFor(); },
  "bath: charge": async (page) => { await press(page, "#charge"); await sheet(page); },
  "bath settings": (page) => go(page, "#/stencil/bath/settings", "#capacity"),
  "ink volume": async (page) => { await go(page, "#/stencil/volume", "#volume"); await press(page, "#finer summary"); },
  "ink volume typed": async (page) => { await press(page, page.locator("fieldset:has([name=mesh]) input").last()); await page.locator("#count").fill("305"); await page.locator("#thickness").fill("x"); await page.locator("#thickness-help .problem").waitFor(); },
  more: (page) => go(page, "#/more", ".menu"),
  settings: (page) => go(page, "#/more/settings", "#crew"),
  backup: (page) => go(page, "#/more/backup", "#prepare"),
  "backup ready, a file refused": async (page) => {
    await press(page, "#prepare");
    await page.locator("#ready").waitFor();
    await page.locator("#file").setInputFiles({ name: "x.zip", mimeType: "application/zip", buffer: Buffer.from("hello") });
    await page.locator("#brought .problem").waitFor();
  },
  "storage and app": (page) => go(page, "#/more/about", "#facts"),
  "not here": (page) => go(page, "#/job/0192f0c0-0000-7000-8000-000000000000", ".not-here"),
};
