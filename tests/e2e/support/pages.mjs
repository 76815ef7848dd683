// Every screen of the demo shop and how a person comes to it.
import { drawJpeg } from "./jpeg.mjs";
import { go, press } from "./page.mjs";

const runs = (page) => page.locator(".run-link").evaluateAll((links) => links.map((link) => link.getAttribute("href")));
const counting = (page) => go(page, "#/press", "#zone");
const sheet = (page) => page.locator("dialog[open]").waitFor();

/** Puts the sheet on screen away. */
export async function closeDialog(page) {
  if (await page.locator("dialog[open]").count()) {
    await press(page, "dialog[open] .sheet-head .icon-button");
    await page.locator("dialog[open]").waitFor({ state: "detached" });
  }
}

/** Opens everything that is put away. */
export async function openAllSections(page) {
  const folded = page.locator(":is(.screen-fold, .pot-fold):not([open]) > summary");
  while (await folded.count()) await press(page, folded.first());
}

/** Opens a pot of the ink bench, in the order in which they stand there. */
async function openPot(page, place) {
  await go(page, "#/ink", "#pots .ink-row");
  await press(page, page.locator("#pots .ink-row").nth(place));
  await page.locator(".pot-weigh, #holds").first().waitFor();
}

/** Screens in an order in which each can be reached from the one before. */
export const PAGES = {
  day: (page) => go(page, "#/", "#verdict"),
  jobs: (page) => go(page, "#/jobs", ".job-row"),
  "no jobs found": async (page) => { await page.locator("#search").fill("zzz"); await page.locator(".jobs .quiet-line").waitFor(); },
  job: async (page) => { await go(page, "#/"); await go(page, "#/jobs", ".job-row"); await press(page, page.locator(".job-row").first()); await page.locator(".lot").first().waitFor(); },
  "job: finish short": async (page) => { await press(page, page.locator(".job-actions .button").first()); await sheet(page); },
  "job form": (page) => go(page, "#/job/new", "#client"),
  "job form with mistakes": async (page) => { await press(page, ".save-bar [type=submit]"); await page.locator("#client-help .problem").waitFor(); },
  "garment form": async (page) => { await PAGES.job(page); await press(page, ".lots > .button"); await page.locator("#garment").waitFor(); },
  "garment form with mistakes": async (page) => { await page.locator("#size-s").fill("-4"); await press(page, ".save-bar [type=submit]"); await page.locator("#pieces-problem").waitFor(); },
  "run form": async (page) => { await PAGES.job(page); await press(page, page.locator(".lot > .button").first()); await page.locator("#ink").waitFor(); },
  "run form with mistakes": async (page) => { await page.locator("#dryer").fill("900"); await press(page, ".save-bar [type=submit]"); await page.locator("#dryer-help .problem").waitFor(); },
  count: counting,
  "count: misprint": async (page) => { await counting(page); await press(page, "#misprint"); await sheet(page); },
  "count: number": async (page) => { await counting(page); await press(page, "#number"); await sheet(page); await press(page, "#number-add"); await page.locator("dialog .problem").filter({ hasText: /\S/ }).waitFor(); },
  "count: stop": async (page) => { await counting(page); await press(page, "#stop"); await sheet(page); },
  "count: checks": async (page) => { await counting(page); await press(page, ".checks-button"); await sheet(page); },
  "count: pace": async (page) => { await counting(page); await press(page, "#pace"); await sheet(page); },
  stopped: async (page) => { await counting(page); await press(page, "#stop"); await press(page, "[data-cause=Ink]"); await page.locator("#stopped").waitFor(); },
  "stopped: end": async (page) => { await press(page, "#end"); await sheet(page); },
  failed: async (page) => { await counting(page); await press(page, "#failed"); await page.locator("[data-kind=Spot]").waitFor(); },
  "failed: which screen": async (page) => { await press(page, "[data-kind=Spot]"); await press(page, page.locator(".failure-screen").first()); await page.locator(".photos").waitFor(); },
  "failed: where": async (page) => { await press(page, ".failure-next"); await press(page, "#art"); await page.locator(".failure-mark").waitFor(); },
  "failed: how many": async (page) => { await press(page, ".failure-next"); await press(page, '[data-since="5"]'); await page.locator("#judge").waitFor(); },
  "failed: what is done": async (page) => { await press(page, ".failure-next"); await press(page, "[data-remedy=BurnAgain]"); await page.locator("dialog #label").waitFor(); },
  "failed: burning": async (page) => { await press(page, "#step-remedy[aria-expanded=false], [data-remedy=BurnAgain]"); await page.locator("dialog #label").fill("B1"); await press(page, "dialog [type=submit]"); await page.locator("#burning").waitFor(); await press(page, "[data-step=Coat]"); await page.locator("[data-step=Coat][aria-pressed=true]").waitFor(); },
  "count: press stands": (page) => counting(page),
  "day: press stands": async (page) => { await PAGES.day(page); await page.locator(".failure-bar.stands").waitFor(); },
  "failed, judged": async (page) => { await press(page, ".failure-bar.stands"); await press(page, "#all-good"); await page.locator("#judge .failure-ready").waitFor(); },
  "count: failure open": async (page) => { await press(page, "#go-on"); await page.locator("#zone:not(.stopped)").waitFor(); },
  checks: async (page) => { await PAGES.day(page); await go(page, (await runs(page))[1], "#changes"); },
  "checks: what is known of the heat": async (page) => {
    for (const row of ["#on-paper", "#run-tests", "#run-trials"]) await press(page, `${row} summary`);
    await page.locator("#run-trials .menu-row").waitFor();
  },
  "checks: the ink is held": async (page) => { await press(page, "#start"); await sheet(page); },
  "checks: the dryer on its way": async (page) => { await press(page, "#settle-start"); await page.locator("#settling").waitFor(); },
  "checks: measuring": async (page) => { await press(page, "[data-item=Dryer] [aria-expanded]"); await page.locator("#measure-Dryer").fill("x"); await press(page, "[data-item=Dryer] [type=submit]"); await page.locator("[data-item=Dryer] .problem").filter({ hasText: /\S/ }).waitFor(); },
  "checks made": async (page) => {
    await page.locator("#measure-Dryer").fill("262");
    await page.locator("#measure-Dryer").press("Enter");
    await page.locator("[data-item=Dryer] .badge").waitFor();
    await press(page, page.locator("[data-item=Dwell] .check-buttons .quiet"));
    await press(page, page.locator("[data-item=Ink] .tick"));
    await page.locator("[data-item=Ink] .badge").waitFor();
    await press(page, "#settle-done");
    await page.locator("#heat-ready").waitFor();
  },
  "checks: start with open ones": async (page) => { await press(page, "#start"); await sheet(page); },
  ended: async (page) => { await counting(page); await press(page, "#stop"); await press(page, "#end-anyway"); await page.locator("#ended-good").waitFor(); },
  "day: failed today": async (page) => { await PAGES.day(page); await page.locator("#failed-today").waitFor(); },
  "press, which run": async (page) => { await PAGES.day(page); await go(page, "#/press", ".press-pick"); },
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
  ink: (page) => go(page, "#/ink", "#needs"),
  "ink: recipe form": async (page) => { await press(page, page.locator(".ink-need").last().locator(".ink-act")); await page.locator("#convention-1").waitFor(); await press(page, "#convention-1"); await page.locator("#add-on-top").waitFor(); },
  "ink: which component": async (page) => { await press(page, "#add-part"); await sheet(page); },
  "ink: a component in passing": async (page) => { await press(page, "#add-part"); await sheet(page); await press(page, "#new-component"); await press(page, "#kind-1"); await press(page, "#add-component"); await page.locator("#component-name-help .problem").waitFor(); },
  "ink: recipe form with mistakes": async (page) => {
    for (const [at, name, percent] of [[0, "Base, clear", "80"], [1, "Blue", "14.5"], [2, "Black", "two"]]) {
      await press(page, "#add-part");
      await press(page, `[data-component="${name}"]`);
      await page.locator(`#percent-${at}`).fill(percent);
    }
    await press(page, ".save-bar [type=submit]");
    await page.locator(".ink-part.wrong").waitFor();
  },
  "ink: beyond a data sheet": async (page) => { await page.locator("#percent-2").fill("2"); await press(page, "[data-fix=fill]"); await page.locator(".ink-limits").waitFor(); },
  "ink: recipe": async (page) => { await PAGES.ink(page); await press(page, page.locator("#recipes .ink-row").nth(1)); await page.locator("#best").waitFor(); await openAllSections(page); },
  "ink: another revision": async (page) => { await press(page, "#revise"); await page.locator("#why").waitFor(); await press(page, ".save-bar [type=submit]"); await page.locator("#same").waitFor(); },
  "ink: make again": async (page) => { await PAGES.ink(page); await press(page, page.locator("#recipes .ink-row").nth(1)); await press(page, "#again"); await page.locator("#rows").waitFor(); await page.locator("#grams").fill("77"); await page.locator("#rounding").waitFor(); },
  "ink: another than approved": async (page) => { await press(page, '#which [data-revision="2"]'); await page.locator("#which .tight").waitFor(); },
  "ink: make again for pieces": async (page) => { await PAGES.ink(page); await press(page, page.locator("#recipes .ink-row").nth(2)); await press(page, "#again"); await press(page, "#by-1"); await page.locator("#batch").waitFor(); },
  "ink: stock": (page) => go(page, "#/ink/stock", "#buy"),
  "ink: component": async (page) => { await press(page, page.locator("main .ink-row").first()); await page.locator("#left").waitFor(); await openAllSections(page); },
  "ink: it came in": async (page) => { await press(page, "#came-in"); await sheet(page); await press(page, "dialog [type=submit]"); await page.locator("#grams-help .problem").waitFor(); },
  "ink: component form with mistakes": async (page) => { await press(page, ".head-aside a"); await page.locator("#density").waitFor(); await page.locator("#density").fill("heavy"); await press(page, ".save-bar [type=submit]"); await page.locator("#density-help .problem").waitFor(); },
  "ink: scale": (page) => go(page, "#/ink/scale", "#step"),
  "pot: at the scale": async (page) => { await openPot(page, 0); await page.locator("#now").waitFor(); await openAllSections(page); },
  "pot: a reading refused": async (page) => { await openPot(page, 0); await press(page, '[data-key="1"]'); await press(page, "[data-key=enter]"); await page.locator("#comes-to .bad").waitFor(); },
  "pot: too much is in": async (page) => { await openPot(page, 0); for (const key of ["9", "9", "9"]) await press(page, `[data-key="${key}"]`); await press(page, "[data-key=enter]"); await page.locator("#over").waitFor(); },
  "pot: left at the scale": async (page) => { await press(page, "#undo"); await page.locator("#now").waitFor(); await openAllSections(page); await press(page, "#leave"); await page.locator("#go-on").waitFor(); },
  pot: async (page) => { await openPot(page, 2); await page.locator("#holds").waitFor(); await openAllSections(page); },
  "pot: client says yes": async (page) => { await press(page, "#yes"); await sheet(page); },
  "pot: save as a revision": async (page) => { await press(page, "#save"); await sheet(page); },
  "pot: top up": async (page) => { await press(page, "#top-up"); await sheet(page); await page.locator("#total").fill("900"); await page.locator("#additions").waitFor(); },
  "pot: into another": async (page) => { await press(page, "#move-out"); await sheet(page); },
  "pot: another in": async (page) => { await press(page, "#move-in"); await sheet(page); },
  "pot: thrown away": async (page) => { await press(page, "#waste"); await sheet(page); await press(page, "#waste-save"); await page.locator("#grams-help .problem").waitFor(); },
  "pot: a line": async (page) => { await press(page, page.locator(".pot-line").first()); await page.locator("#take-back").waitFor(); await press(page, "#read-it"); await page.locator("#swatch-l").fill("bright"); await page.locator("#swatch-help .problem").waitFor(); },
  "pot: add something": async (page) => { await openPot(page, 2); await press(page, "#add"); await page.locator("#picked, #component").first().waitFor(); if (await page.locator("#picked").count()) await press(page, "#picked"); await press(page, "[data-key=enter]"); await page.locator(".pot-entry .problem").filter({ hasText: /\S/ }).waitFor(); },
  "pot: what it will hold": async (page) => { await press(page, "#component-2"); for (const key of ["9", "9", "9"]) await press(page, `[data-key="${key}"]`); await page.locator("#after .caution").first().waitFor(); },
  "pot: just added": async (page) => { for (const key of ["back", "back", "back", "1"]) await press(page, `[data-key="${key}"]`); await press(page, "[data-key=enter]"); await page.locator("#added").waitFor(); await press(page, "#read-it"); await page.locator("#swatch-l").waitFor(); },
  "pot: used on a run": async (page) => { await openPot(page, 1); await press(page, "#used"); await sheet(page); },
  "pot: label": async (page) => { await openPot(page, 1); await press(page, page.locator(".head-aside a").first()); await page.locator("#keep").waitFor(); },
  "pot: form with mistakes": async (page) => { await openPot(page, 1); await press(page, page.locator(".head-aside a").last()); await page.locator("#tare").fill("light"); await press(page, ".save-bar [type=submit]"); await page.locator("#tare-help .problem").waitFor(); },
  "pot: new for a run": async (page) => { await PAGES.ink(page); await press(page, page.locator("#needs a[href^='#/pot/for/']").first()); await page.locator("#size").waitFor(); },
  "pot: what a print takes": async (page) => { await press(page, "#work-out"); await page.locator("#volume").fill("x"); await press(page, ".save-bar [type=submit]"); await page.locator("#volume-help .problem").waitFor(); },
  "pot: mixed by eye": (page) => go(page, "#/pot/new", "#tare"),
  "colour: match": async (page) => {
    await PAGES.ink(page);
    await press(page, page.locator("#pots a").filter({ hasText: "Fern" }).first());
    await press(page, "#to-match");
    await page.locator(".colour-way").first().waitFor();
    await press(page, ".colour-advice summary");
  },
  "colour: pour with a mistake": async (page) => { await press(page, ".colour-way.first"); await page.locator("#grams_1").fill("x"); await press(page, "#poured"); await page.locator("#grams_1-help .problem").waitFor(); },
  "colour: read the pot": async (page) => { await press(page, "#read-pot"); await page.locator("#swatch-l").fill("x"); await page.locator("#swatch-help .problem").waitFor(); },
  "colour: a screen colour": async (page) => { await press(page, "#read-pot"); await press(page, "#swatch-2"); await page.locator("#swatch-hex").fill("#12"); await page.locator("#swatch-help .problem").waitFor(); },
  "colour: a photo": async (page) => { await press(page, "#read-pot"); await press(page, "#swatch-1"); await page.locator("[data-colour=picture]").waitFor({ state: "attached" }); },
  "colour: its marks": async (page) => {
    await press(page, "#read-pot");
    await press(page, "#swatch-1");
    await page.locator("[data-colour=picture]").setInputFiles({ name: "swatches.jpg", mimeType: "image/jpeg", buffer: await drawJpeg(page) });
    await page.locator("#board").waitFor();
    for (const x of [0.1, 0.2, 0.8]) { const box = await page.locator("#board").boundingBox(); await page.locator("#board")[page.pressMethod]({ position: { x: box.width * x, y: box.height * 0.8 } }); }
    await page.locator("#photo-says .colour-words, #photo-says .caution").first().waitFor();
  },
  "colour: target": async (page) => { await press(page, "#to-target"); await page.locator("#target-clear").waitFor(); },
  "colour: cover": async (page) => { await PAGES.ink(page); await press(page, page.locator("#recipes a").filter({ hasText: "Apricot" }).first()); await press(page, page.locator('a[href^="#/colour/cover/"]').first()); await page.locator("#cover-answer").waitFor(); await press(page, page.locator(".page summary").last()); },
  "colour: another garment": async (page) => { await press(page, page.locator("fieldset:has([name=cover-on]) input").last()); await page.locator("#cloth-hex").waitFor(); },
  "colour: component": async (page) => { await go(page, "#/ink/stock", "main .ink-row"); await press(page, page.locator("main .ink-row").filter({ hasText: "Black" }).first()); await press(page, page.locator('a[href^="#/colour/component/"]').first()); await page.locator(".colour-lines").waitFor(); },
  "colour: drawdown with mistakes": async (page) => { await press(page, "#next-drawdown"); await page.locator("#share").fill("x"); await press(page, page.locator("fieldset:has([name=lay]) input").last()); await press(page, page.locator("summary").first()); await press(page, page.locator("summary").last()); await press(page, ".save-bar [type=submit]"); await page.locator("#share-help .problem").waitFor(); },
  "colour: beside a drawdown": async (page) => { await press(page, "#seen-1"); await page.locator("#beside").waitFor(); await press(page, "#beside summary"); },
  "colour: beside a drawdown, a card with a mistake": async (page) => { await press(page, "#beside-card"); await page.locator("#card-l").fill("x"); await page.locator("#card-help .problem").waitFor(); },
  "colour: its photo": async (page) => { await press(page, "#beside-change"); await press(page, page.locator("button.colour-beside-row").first()); await page.locator("[data-colour=picture]").waitFor({ state: "attached" }); },
  screens: (page) => go(page, "#/screens", ".screen-row"),
  "screens picked": async (page) => { await press(page, "#select"); await press(page, page.locator("[data-state=Coated] .screen-group-head .button")); await page.locator("#select-bar [data-to]").first().waitFor(); await press(page, "#select"); },
  "screen, too old": async (page) => { await press(page, page.locator("[data-state=Coated] .screen-row").first()); await page.locator("#state").waitFor(); await press(page, ".screen-fold summary"); },
  "screen, wet": async (page) => { await PAGES.screens(page); await press(page, page.locator("[data-state=Exposed] .screen-row").first()); await page.locator("#dry").waitFor(); },
  "screen form": async (page) => { await press(page, ".head-aside a"); await page.locator("#label").waitFor(); await openAllSections(page); },
  "screen form with mistakes": async (page) => { await page.locator("#tension").fill("tight"); await press(page, ".save-bar [type=submit]"); await page.locator("#tension-help .problem").waitFor(); },
  "new screens": async (page) => { await go(page, "#/screens/new", "#label"); await page.locator("#label").fill("A1–A6, 7"); await page.locator("#count").fill("156"); await page.locator("#take-sheet").waitFor(); },
  "screen room": (page) => go(page, "#/screens/room", "#coat"),
  more: (page) => go(page, "#/more", ".menu"),
  heat: (page) => go(page, "#/heat", ".page.heat .menu"),
  "heat: units": (page) => go(page, "#/heat/units", ".heat-cards"),
  "heat: unit form": async (page) => { await go(page, "#/heat/unit/new", "#name"); await press(page, ".save-bar [type=submit]"); await page.locator("#name-help .problem").waitFor(); },
  "heat: measuring": async (page) => {
    await go(page, "#/heat/units", ".heat-cards");
    await press(page, page.locator(".heat-cards .button").first());
    await page.locator("#found").fill("x");
    await press(page, ".save-bar [type=submit]");
    await page.locator("#found-help .problem").waitFor();
    await press(page, "#method-2");
  },
  "heat: settlings": (page) => go(page, "#/heat/settling", ".heat-list"),
  "heat: ink sheets": (page) => go(page, "#/heat/inks", ".heat-wanted"),
  "heat: ink sheet": async (page) => { await press(page, page.locator(".menu-row").first()); await page.locator("#cure").waitFor(); },
  "heat: limits": (page) => go(page, "#/heat/limits", ".heat-limit"),
  "heat: a limit of one's own": async (page) => {
    await go(page, "#/heat/limit/4", "#temperature");
    await page.locator("#temperature").fill("140");
    await page.locator("#note").fill("A trial");
    await press(page, ".save-bar [type=submit]");
    await page.locator(".heat-limit[data-own=true]").waitFor();
  },
  "heat: its form": async (page) => { await press(page, ".heat-limit[data-own=true]"); await page.locator("#limit-back").waitFor(); },
  "heat: tests": (page) => go(page, "#/heat/tests", "[data-due]"),
  "heat: a test": async (page) => { await press(page, page.locator(".menu-row:not([data-due])").first()); await page.locator("#went-through").waitFor(); },
  "heat: trials": (page) => go(page, "#/heat/trials", ".menu-row"),
  "heat: a trial": async (page) => { await press(page, page.locator(".menu-row").first()); await page.locator("#outcome").waitFor(); },
  room: (page) => go(page, "#/heat/room", "#room-now"),
  "room with everything open": async (page) => {
    for (const details of await page.locator(".room-details summary").all()) await press(page, details);
    await page.locator("#humidity").fill("300");
    await press(page, "#room-save");
    await page.locator("#humidity-help .problem").waitFor();
  },
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
