// Every page, dialog and state of the demo shop, and how to open it: the one list for the accessibility tests and the
// pictures.
import { now } from "./clock.mjs";
import { typeOnKeypad } from "./ink-helpers.mjs";
import { drawJpeg } from "./jpeg.mjs";
import { backupFile, shopLines } from "./journal-file.mjs";
import { go, press } from "./page.mjs";

const runs = (page) => page.locator(".run-link").evaluateAll((links) => links.map((link) => link.getAttribute("href")));
const counting = (page) => go(page, "#/press", "#zone");
const dialog = (page) => page.locator("dialog[open]").waitFor();

/** Closes the open dialog, if there is one. */
export async function closeDialog(page) {
  if (await page.locator("dialog[open]").count()) {
    await press(page, "dialog[open] .sheet-head .icon-button");
    await page.locator("dialog[open]").waitFor({ state: "detached" });
  }
}

/** Opens all collapsed sections. */
export async function openAllSections(page) {
  const collapsed = page.locator(":is(.screen-fold, .pot-fold):not([open]) > summary");
  while (await collapsed.count()) await press(page, collapsed.first());
}

/** Opens the pot at this position of the ink page. */
async function openPot(page, index) {
  await go(page, "#/ink", "#pots .ink-row");
  await press(page, page.locator("#pots .ink-row").nth(index));
  await page.locator(".pot-weigh, #holds").first().waitFor();
}

/** Opens the colour page of a component. */
async function openColour(page, component) {
  await go(page, "#/ink/stock", "main .ink-row");
  await press(page, page.locator("main .ink-row").filter({ hasText: component }).first());
  await press(page, page.locator('a[href^="#/colour/component/"]').first());
  await page.locator(".colour-lines").waitFor();
}

const find = (name) => PAGES.find((entry) => entry.name === name);
const open = (name, page) => find(name).open(page);

/**
 * `open` shows the page. If it needs another one on screen to start from, `from` names that. `details` expands what is
 * collapsed. `picture` are the names of its pictures.
 *
 * The order is one in which each can be opened after the one before.
 */
const PAGES = [
  { name: "day", picture: ["day"], open: (page) => go(page, "#/", "#verdict") },
  { name: "jobs", picture: ["jobs"], open: (page) => go(page, "#/jobs", ".job-row") },
  {
    name: "no jobs found", from: "jobs",
    open: async (page) => { await page.locator("#search").fill("zzz"); await page.locator(".jobs .quiet-line").waitFor(); },
  },
  {
    name: "job", picture: ["job"],
    open: async (page) => {
      await go(page, "#/");
      await go(page, "#/jobs", ".job-row");
      await press(page, page.locator(".job-row").first());
      await page.locator(".lot").first().waitFor();
    },
  },
  {
    name: "job: finish short", from: "job",
    open: async (page) => { await press(page, page.locator(".job-actions .button").first()); await dialog(page); },
  },
  { name: "job form", picture: ["job-form"], open: (page) => go(page, "#/job/new", "#client") },
  {
    name: "job form with mistakes", from: "job form",
    open: async (page) => {
      await press(page, ".save-bar [type=submit]");
      await page.locator("#client-help .problem").waitFor();
    },
  },
  {
    name: "garment form", picture: ["lot-form"],
    open: async (page) => {
      await open("job", page);
      await press(page, ".lots > .button");
      await page.locator("#garment").waitFor();
    },
  },
  {
    name: "garment form with mistakes", from: "garment form",
    open: async (page) => {
      await page.locator("#size-s").fill("-4");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#pieces-problem").waitFor();
    },
  },
  {
    name: "run form", picture: ["run-form"],
    open: async (page) => {
      await open("job", page);
      await press(page, page.locator(".lot > .button").first());
      await page.locator("#ink").waitFor();
    },
  },
  {
    name: "run form with mistakes", from: "run form",
    open: async (page) => {
      await page.locator("#dryer").fill("900");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#dryer-help .problem").waitFor();
    },
  },
  { name: "count", picture: ["count"], open: counting },
  {
    name: "count: misprint", picture: ["misprint"],
    open: async (page) => { await counting(page); await press(page, "#misprint"); await dialog(page); },
  },
  {
    name: "count: number", picture: ["number"],
    open: async (page) => { await counting(page); await press(page, "#number"); await dialog(page); },
  },
  {
    name: "count: number with a mistake", from: "count: number",
    open: async (page) => {
      await press(page, "#number-add");
      await page.locator("dialog .problem").filter({ hasText: /\S/ }).waitFor();
    },
  },
  { name: "count: stop", open: async (page) => { await counting(page); await press(page, "#stop"); await dialog(page); } },
  {
    name: "count: checks",
    open: async (page) => { await counting(page); await press(page, ".checks-button"); await dialog(page); },
  },
  { name: "count: pace", open: async (page) => { await counting(page); await press(page, "#pace"); await dialog(page); } },
  {
    name: "stopped", picture: ["stopped"],
    open: async (page) => {
      await counting(page);
      await press(page, "#stop");
      await press(page, "[data-cause=Ink]");
      await page.locator("#stopped").waitFor();
    },
  },
  { name: "stopped: end", from: "stopped", open: async (page) => { await press(page, "#end"); await dialog(page); } },
  {
    name: "failed", picture: ["failed"],
    open: async (page) => {
      await counting(page);
      await press(page, "#failed");
      await page.locator("[data-kind=Spot]").waitFor();
    },
  },
  {
    name: "failed: which screen", from: "failed",
    open: async (page) => {
      await press(page, "[data-kind=Spot]");
      await page.locator("[data-kind=Spot][aria-pressed=true]").waitFor();
      await press(page, page.locator(".failure-screen").first());
      await page.locator(".photos").waitFor();
    },
  },
  {
    name: "failed: where", from: "failed: which screen", picture: ["failed-where"],
    open: async (page) => {
      await press(page, ".failure-next");
      await page.locator("#art")[page.pressMethod]({ position: { x: 60, y: 70 } });
      await page.locator(".failure-mark").waitFor();
    },
  },
  {
    name: "failed: how many", from: "failed: where",
    open: async (page) => {
      await press(page, ".failure-next");
      await press(page, '[data-since="5"]');
      await page.locator("#judge").waitFor();
    },
  },
  {
    name: "failed: what is done", from: "failed: how many",
    open: async (page) => {
      await press(page, ".failure-next");
      await press(page, "[data-remedy=BurnAgain]");
      await page.locator("dialog #label").waitFor();
    },
  },
  {
    name: "failed: burning", from: "failed: what is done", picture: ["failed-burning"],
    open: async (page) => {
      await page.locator("dialog #label").fill("B1");
      await press(page, "dialog [type=submit]");
      await page.locator("#burning").waitFor();
      await press(page, "[data-step=Coat]");
      await page.locator("[data-step=Coat][aria-pressed=true]").waitFor();
    },
  },
  { name: "count: press stopped by a failure", from: "failed: burning", open: (page) => counting(page) },
  {
    name: "day: press stopped by a failure", from: "failed: burning",
    open: async (page) => { await open("day", page); await page.locator(".failure-bar.stands").waitFor(); },
  },
  {
    name: "failed, judged", from: "day: press stopped by a failure",
    open: async (page) => {
      await press(page, ".failure-bar.stands");
      await press(page, "#all-good");
      await page.locator("#judge .failure-ready").waitFor();
    },
  },
  {
    name: "count: failure open", from: "failed, judged",
    open: async (page) => { await press(page, "#go-on"); await page.locator("#zone:not(.stopped)").waitFor(); },
  },
  {
    name: "failed: press resumed", from: "failed: burning", picture: ["failed-judge"],
    open: async (page) => {
      const openFailure = async () => {
        await open("day", page);
        await press(page, page.locator(".failure-bar").first());
        await page.locator("#judge").waitFor();
      };
      await openFailure();
      if (await page.locator("#go-on").count()) {
        await press(page, "#go-on");
        await page.locator("#zone:not(.stopped)").waitFor();
        await openFailure();
      }
    },
  },
  {
    name: "checks", picture: ["checks", "changeover"],
    open: async (page) => { await open("day", page); await go(page, (await runs(page))[1], "#changes"); },
  },
  {
    name: "checks: what is known of the heat", from: "checks",
    open: async (page) => {
      for (const row of ["#on-paper", "#run-tests", "#run-trials"]) await press(page, `${row} summary`);
      await page.locator("#run-trials .menu-row").waitFor();
    },
  },
  { name: "checks: the ink is held", from: "checks", open: async (page) => { await press(page, "#start"); await dialog(page); } },
  {
    name: "checks: the dryer on its way", from: "checks",
    open: async (page) => { await press(page, "#settle-start"); await page.locator("#settling").waitFor(); },
  },
  {
    name: "checks: settled too soon", from: "checks: the dryer on its way",
    open: async (page) => { await press(page, "#settle-done"); await page.locator("#settle-doubt").waitFor(); },
  },
  {
    name: "checks: measuring", from: "checks",
    open: async (page) => {
      await press(page, "[data-item=Dryer] [aria-expanded]");
      await page.locator("#measure-Dryer").fill("x");
      await press(page, "[data-item=Dryer] [type=submit]");
      await page.locator("[data-item=Dryer] .problem").filter({ hasText: /\S/ }).waitFor();
    },
  },
  {
    name: "checks made", from: "checks: measuring",
    open: async (page) => {
      await page.locator("#measure-Dryer").fill("262");
      await press(page, "#way-0");
      await page.locator("#measure-Dryer").press("Enter");
      await page.locator("[data-item=Dryer] .badge").waitFor();
      await press(page, page.locator("[data-item=Dwell] .check-buttons .quiet"));
      await press(page, page.locator("[data-item=Ink] .tick"));
      await page.locator("[data-item=Ink] .badge").waitFor();
      await press(page, "#settle-done");
      await press(page, "#settle-leave-out");
      await page.locator("#heat-ready").waitFor();
    },
  },
  {
    name: "checks: start with open ones", from: "checks made",
    open: async (page) => { await press(page, "#start"); await dialog(page); },
  },
  {
    name: "ended", picture: ["ended"],
    open: async (page) => {
      await counting(page);
      await press(page, "#stop");
      await press(page, "#end-anyway");
      await page.locator("#ended-good").waitFor();
    },
  },
  {
    name: "day: failed today", from: "failed, judged",
    open: async (page) => { await open("day", page); await page.locator("#failed-today").waitFor(); },
  },
  {
    name: "press, which run", from: "ended", picture: ["pick"],
    open: async (page) => { await open("day", page); await go(page, "#/press", ".press-pick"); },
  },
  { name: "exposure and bath", picture: ["stencil"], open: (page) => go(page, "#/stencil", ".stencil-door") },
  {
    name: "exposure known", picture: ["exposure"],
    open: (page) => go(page, "#/stencil/exposure", "#answer"),
    details: async (page) => { await press(page, "#edge summary"); await press(page, "#known summary"); },
  },
  {
    name: "exposure not known", from: "exposure known",
    open: async (page) => {
      await press(page, page.locator("fieldset:has([name=cloth]) input").last());
      await page.locator("#count").fill("305");
      await page.locator("#answer .stencil-differs").waitFor();
    },
  },
  {
    name: "exposure from a test", picture: ["exposure-test"],
    open: async (page) => {
      await go(page, "#/stencil/exposure/find", "#time");
      await page.locator("#time").fill("120");
      await press(page, "#solid-5");
      await page.locator("#factor").waitFor();
    },
    details: (page) => press(page, "#which summary"),
  },
  {
    name: "exposure refused", from: "exposure from a test",
    open: async (page) => {
      await press(page, "#solid-0");
      await page.locator("#mesh").fill("x");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#mesh-help .problem").waitFor();
    },
  },
  {
    name: "exposure corrected",
    open: async (page) => {
      await go(page, "#/stencil/exposure", "#known");
      await press(page, "#known summary");
      await press(page, page.locator("#known .stencil-row").first());
      await page.locator("#delete").waitFor();
    },
  },
  { name: "lamps and emulsions", picture: ["kit"], open: (page) => go(page, "#/stencil/kit", ".stencil-row") },
  {
    name: "lamp", from: "lamps and emulsions",
    open: async (page) => {
      await press(page, page.locator(".stencil-row").first());
      await page.locator("#distance").waitFor();
    },
  },
  {
    name: "emulsion with mistakes",
    open: async (page) => {
      await go(page, "#/stencil/emulsion/new", "#name");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#name-help .problem").waitFor();
    },
  },
  {
    name: "bath", picture: ["bath"],
    open: (page) => go(page, "#/stencil/bath", "#bath-chart"),
    details: async (page) => { await press(page, "#batches summary"); await press(page, "#charges summary"); },
  },
  {
    name: "bath: put in", from: "bath",
    open: async (page) => {
      await press(page, "#put-in");
      await dialog(page);
      await press(page, page.locator(".stencil-ticks input").first());
    },
  },
  {
    name: "bath: take out", from: "bath",
    open: async (page) => {
      await press(page, page.locator(".stencil-batch button").first());
      await dialog(page);
      await press(page, page.locator("fieldset:has([name=time-kind]) input").last());
      await page.locator("#minutes").waitFor();
    },
  },
  { name: "bath: charge", from: "bath", open: async (page) => { await press(page, "#charge"); await dialog(page); } },
  { name: "bath settings", open: (page) => go(page, "#/stencil/bath/settings", "#capacity") },
  {
    name: "ink volume", picture: ["volume"],
    open: async (page) => {
      await go(page, "#/stencil/volume", "#volume");
      for (const [id, value] of [["width", "12"], ["height", "10"], ["pieces", "72"]]) await page.locator(`#${id}`).fill(value);
    },
    details: (page) => press(page, "#finer summary"),
  },
  {
    name: "ink volume typed", from: "ink volume",
    open: async (page) => {
      await press(page, page.locator("fieldset:has([name=mesh]) input").last());
      await page.locator("#count").fill("305");
      await page.locator("#thickness").fill("x");
      await page.locator("#thickness-help .problem").waitFor();
    },
  },
  { name: "ink", picture: ["ink"], open: (page) => go(page, "#/ink", "#needs") },
  {
    name: "ink: recipe form", from: "ink",
    open: async (page) => {
      await press(page, page.locator(".ink-need").last().locator(".ink-act"));
      await page.locator("#convention-1").waitFor();
      await press(page, "#convention-1");
      await page.locator("#add-on-top").waitFor();
    },
  },
  {
    name: "ink: which component", from: "ink: recipe form",
    open: async (page) => { await press(page, "#add-part"); await dialog(page); },
  },
  {
    name: "ink: a component in passing", from: "ink: which component",
    open: async (page) => {
      await press(page, "#new-component");
      await press(page, "#kind-1");
      await press(page, "#add-component");
      await page.locator("#component-name-help .problem").waitFor();
    },
  },
  {
    name: "ink: recipe form with mistakes", from: "ink: recipe form",
    open: async (page) => {
      for (const [at, name, percent] of [[0, "Base, clear", "80"], [1, "Blue", "14.5"], [2, "Black", "two"]]) {
        await press(page, "#add-part");
        await press(page, `[data-component="${name}"]`);
        await page.locator(`#percent-${at}`).fill(percent);
      }
      await press(page, ".save-bar [type=submit]");
      await page.locator(".ink-part.wrong").waitFor();
    },
  },
  {
    name: "ink: beyond a data sheet", from: "ink: recipe form with mistakes",
    open: async (page) => {
      await page.locator("#percent-2").fill("2");
      await press(page, "[data-fix=fill]");
      await page.locator(".ink-limits").waitFor();
    },
  },
  {
    name: "ink: recipe that does not add up", picture: ["ink-form"],
    open: async (page) => {
      await open("ink", page);
      await press(page, page.locator(".ink-need .ink-act").last());
      for (const [index, name, percent] of [[0, "Base, clear", "90"], [1, "Blue", "6"], [2, "Black", "3"]]) {
        await press(page, "#add-part");
        await press(page, `[data-component="${name}"]`);
        await page.locator(`#percent-${index}`).fill(percent);
      }
      await page.locator("[data-fix=fill]").waitFor();
    },
  },
  {
    name: "ink: recipe", picture: ["ink-recipe"],
    open: async (page) => {
      await open("ink", page);
      await press(page, page.locator("#recipes .ink-row").nth(1));
      await page.locator("#best").waitFor();
    },
    details: openAllSections,
  },
  {
    name: "ink: another revision", from: "ink: recipe",
    open: async (page) => {
      await press(page, "#revise");
      await page.locator("#why").waitFor();
      await press(page, ".save-bar [type=submit]");
      await page.locator("#same").waitFor();
    },
  },
  {
    name: "ink: make again", picture: ["ink-again"],
    open: async (page) => {
      await open("ink", page);
      await press(page, page.locator("#recipes .ink-row").nth(1));
      await press(page, "#again");
      await page.locator("#rows").waitFor();
      await page.locator("#grams").fill("77");
      await page.locator("#rounding").waitFor();
    },
  },
  {
    name: "ink: another than approved", from: "ink: make again",
    open: async (page) => {
      await press(page, '#which [data-revision="2"]');
      await page.locator("#which .tight").waitFor();
    },
  },
  {
    name: "ink: make again for pieces",
    open: async (page) => {
      await open("ink", page);
      await press(page, page.locator("#recipes .ink-row").nth(2));
      await press(page, "#again");
      await press(page, "#by-1");
      await page.locator("#batch").waitFor();
    },
  },
  { name: "ink: stock", picture: ["ink-stock"], open: (page) => go(page, "#/ink/stock", "#buy") },
  {
    name: "ink: component", from: "ink: stock", picture: ["ink-component"],
    open: async (page) => {
      await press(page, page.locator("main .ink-row").first());
      await page.locator("#left").waitFor();
    },
    details: openAllSections,
  },
  {
    name: "ink: it came in", from: "ink: component",
    open: async (page) => {
      await press(page, "#came-in");
      await dialog(page);
      await press(page, "dialog [type=submit]");
      await page.locator("#grams-help .problem").waitFor();
    },
  },
  {
    name: "ink: component form with mistakes", from: "ink: component",
    open: async (page) => {
      await press(page, ".head-aside a");
      await page.locator("#density").waitFor();
      await page.locator("#density").fill("heavy");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#density-help .problem").waitFor();
    },
  },
  { name: "ink: scale", open: (page) => go(page, "#/ink/scale", "#step") },
  {
    name: "pot: at the scale", picture: ["pot-weigh"],
    open: async (page) => { await openPot(page, 0); await page.locator("#now").waitFor(); },
    details: openAllSections,
  },
  {
    name: "pot: a reading refused",
    open: async (page) => {
      await openPot(page, 0);
      await press(page, '[data-key="1"]');
      await press(page, "[data-key=enter]");
      await page.locator("#comes-to .bad").waitFor();
    },
  },
  {
    name: "pot: a little too much is in", picture: ["pot-over"],
    open: async (page) => {
      await openPot(page, 0);
      await page.locator("#now").waitFor();
      const target = Number((await page.locator("#target").innerText()).replace(",", ".").replace(/[^0-9.]/g, ""));
      await typeOnKeypad(page, (target * 1.02).toFixed(1));
      await press(page, "[data-key=enter]");
      await page.locator("#over").waitFor();
    },
  },
  {
    name: "pot: too much is in", from: "pot: a little too much is in",
    open: async (page) => {
      await press(page, "#undo");
      await page.locator("#now").waitFor();
      await typeOnKeypad(page, 999);
      await press(page, "[data-key=enter]");
      await page.locator("#over").waitFor();
    },
  },
  {
    name: "pot: left at the scale", from: "pot: too much is in",
    open: async (page) => {
      await press(page, "#undo");
      await page.locator("#now").waitFor();
      await openAllSections(page);
      await press(page, "#leave");
      await page.locator("#go-on").waitFor();
    },
  },
  {
    name: "pot", picture: ["pot"],
    open: async (page) => { await openPot(page, 2); await page.locator("#holds").waitFor(); },
    details: openAllSections,
  },
  { name: "pot: client says yes", from: "pot", open: async (page) => { await press(page, "#yes"); await dialog(page); } },
  { name: "pot: save as a revision", from: "pot", open: async (page) => { await press(page, "#save"); await dialog(page); } },
  {
    name: "pot: top up", from: "pot",
    open: async (page) => {
      await press(page, "#top-up");
      await dialog(page);
      await page.locator("#total").fill("900");
      await page.locator("#additions").waitFor();
    },
  },
  { name: "pot: into another", from: "pot", open: async (page) => { await press(page, "#move-out"); await dialog(page); } },
  { name: "pot: another in", from: "pot", open: async (page) => { await press(page, "#move-in"); await dialog(page); } },
  {
    name: "pot: thrown away", from: "pot",
    open: async (page) => {
      await press(page, "#waste");
      await dialog(page);
      await press(page, "#waste-save");
      await page.locator("#grams-help .problem").waitFor();
    },
  },
  {
    name: "pot: a line", from: "pot",
    open: async (page) => {
      await press(page, page.locator(".pot-line").first());
      await page.locator("#take-back").waitFor();
      await press(page, "#read-it");
      await page.locator("#swatch-l").fill("bright");
      await page.locator("#swatch-help .problem").waitFor();
    },
  },
  {
    name: "pot: adding", picture: ["pot-add"],
    open: async (page) => {
      await openPot(page, 2);
      await press(page, "#add");
      await typeOnKeypad(page, 2);
      await page.locator("#after ul").waitFor();
    },
  },
  {
    name: "pot: add something",
    open: async (page) => {
      await openPot(page, 2);
      await press(page, "#add");
      await page.locator("#picked, #component").first().waitFor();
      if (await page.locator("#picked").count()) await press(page, "#picked");
      await press(page, "[data-key=enter]");
      await page.locator(".pot-entry .problem").filter({ hasText: /\S/ }).waitFor();
    },
  },
  {
    name: "pot: what it will hold", from: "pot: add something",
    open: async (page) => {
      await press(page, "#component-2");
      await typeOnKeypad(page, 999);
      await page.locator("#after .caution").first().waitFor();
    },
  },
  {
    name: "pot: just added", from: "pot: what it will hold",
    open: async (page) => {
      for (const key of ["back", "back", "back", "1"]) await press(page, `[data-key="${key}"]`);
      await press(page, "[data-key=enter]");
      await page.locator("#added").waitFor();
      await press(page, "#read-it");
      await page.locator("#swatch-l").waitFor();
    },
  },
  {
    name: "pot: used on a run",
    open: async (page) => { await openPot(page, 1); await press(page, "#used"); await dialog(page); },
  },
  {
    name: "pot: label", picture: ["pot-label"],
    open: async (page) => {
      await openPot(page, 1);
      await press(page, page.locator(".head-aside a").first());
      await page.locator("#keep").waitFor();
    },
  },
  {
    name: "pot: form with mistakes",
    open: async (page) => {
      await openPot(page, 1);
      await press(page, page.locator(".head-aside a").last());
      await page.locator("#tare").fill("light");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#tare-help .problem").waitFor();
    },
  },
  {
    name: "pot: new for a run",
    open: async (page) => {
      await open("ink", page);
      await press(page, page.locator("#needs a[href^='#/pot/for/']").first());
      await page.locator("#size").waitFor();
    },
  },
  {
    name: "pot: what a print takes", from: "pot: new for a run",
    open: async (page) => {
      await press(page, "#work-out");
      await page.locator("#volume").fill("x");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#volume-help .problem").waitFor();
    },
  },
  { name: "pot: mixed by eye", open: (page) => go(page, "#/pot/new", "#tare") },
  {
    name: "colour: match", picture: ["match"],
    open: async (page) => {
      await open("ink", page);
      await press(page, page.locator("#pots a").filter({ hasText: "Fern" }).first());
      await press(page, "#to-match");
      await page.locator(".colour-way").first().waitFor();
    },
    details: (page) => press(page, ".colour-advice summary"),
  },
  {
    name: "colour: pour with a mistake", from: "colour: match",
    open: async (page) => {
      await press(page, ".colour-way.first");
      await page.locator("#grams_1").fill("x");
      await press(page, "#poured");
      await page.locator("#grams_1-help .problem").waitFor();
    },
  },
  {
    name: "colour: read the pot", from: "colour: match",
    open: async (page) => {
      await press(page, "#read-pot");
      await page.locator("#swatch-l").fill("x");
      await page.locator("#swatch-help .problem").waitFor();
    },
  },
  {
    name: "colour: a screen colour", from: "colour: match",
    open: async (page) => {
      await press(page, "#read-pot");
      await press(page, "#swatch-2");
      await page.locator("#swatch-hex").fill("#12");
      await page.locator("#swatch-help .problem").waitFor();
    },
  },
  {
    name: "colour: a photo", from: "colour: match",
    open: async (page) => {
      await press(page, "#read-pot");
      await press(page, "#swatch-1");
      await page.locator("[data-colour=picture]").waitFor({ state: "attached" });
    },
  },
  {
    name: "colour: its marks", from: "colour: match",
    open: async (page) => {
      await press(page, "#read-pot");
      await press(page, "#swatch-1");
      await page.locator("[data-colour=picture]").setInputFiles({ name: "swatches.jpg", mimeType: "image/jpeg", buffer: await drawJpeg(page) });
      await page.locator("#board").waitFor();
      for (const x of [0.1, 0.2, 0.8]) { const box = await page.locator("#board").boundingBox(); await page.locator("#board")[page.pressMethod]({ position: { x: box.width * x, y: box.height * 0.8 } }); }
      await page.locator("#photo-says .colour-words, #photo-says .caution").first().waitFor();
    },
  },
  {
    name: "colour: target", from: "colour: match", picture: ["target"],
    open: async (page) => { await press(page, "#to-target"); await page.locator("#target-clear").waitFor(); },
  },
  {
    name: "colour: cover", picture: ["cover"],
    open: async (page) => {
      await open("ink", page);
      await press(page, page.locator("#recipes a").filter({ hasText: "Apricot" }).first());
      await press(page, page.locator('a[href^="#/colour/cover/"]').first());
      await page.locator("#cover-answer").waitFor();
    },
    details: (page) => press(page, page.locator(".page summary").last()),
  },
  {
    name: "colour: another garment", from: "colour: cover",
    open: async (page) => {
      await press(page, page.locator("fieldset:has([name=cover-on]) input").last());
      await page.locator("#cloth-hex").waitFor();
    },
  },
  { name: "colour: known component", picture: ["component-colour"], open: (page) => openColour(page, /Blue|Azul/) },
  { name: "colour: component", open: (page) => openColour(page, "Black") },
  {
    name: "colour: drawdown", from: "colour: component", picture: ["drawdown"],
    open: async (page) => { await press(page, "#next-drawdown"); await page.locator("#share").waitFor(); },
  },
  {
    name: "colour: drawdown with mistakes", from: "colour: drawdown",
    open: async (page) => {
      await page.locator("#share").fill("x");
      await press(page, page.locator("fieldset:has([name=lay]) input").last());
      await press(page, page.locator("summary").first());
      await press(page, page.locator("summary").last());
      await press(page, ".save-bar [type=submit]");
      await page.locator("#share-help .problem").waitFor();
    },
  },
  {
    name: "colour: beside a drawdown", from: "colour: drawdown", picture: ["drawdown-beside"],
    open: async (page) => { await press(page, "#seen-1"); await page.locator("#beside").waitFor(); },
    details: (page) => press(page, "#beside summary"),
  },
  {
    name: "colour: beside a drawdown, a card with a mistake", from: "colour: beside a drawdown",
    open: async (page) => {
      await press(page, "#beside-card");
      await page.locator("#card-l").fill("x");
      await page.locator("#card-help .problem").waitFor();
    },
  },
  {
    name: "colour: its photo", from: "colour: beside a drawdown, a card with a mistake",
    open: async (page) => {
      await press(page, "#beside-change");
      await press(page, page.locator("button.colour-beside-row").first());
      await page.locator("[data-colour=picture]").waitFor({ state: "attached" });
    },
  },
  { name: "screens", picture: ["screens"], open: (page) => go(page, "#/screens", ".screen-row") },
  {
    name: "screens: board", from: "screens", picture: ["screens-board"],
    open: (page) => page.locator(".screen-board").evaluate((board) => board.scrollIntoView()),
  },
  {
    name: "screens picked", from: "screens: board", picture: ["screens-picked"],
    open: async (page) => {
      await press(page, "#select");
      await press(page, page.locator("[data-state=Coated] .screen-group-head .button"));
      await page.locator("#select-bar [data-to]").first().waitFor();
    },
  },
  {
    name: "screen, too old", from: "screens picked",
    open: async (page) => {
      await press(page, "#select");
      await press(page, page.locator("[data-state=Coated] .screen-row").first());
      await page.locator("#state").waitFor();
      await press(page, ".screen-fold summary");
    },
  },
  {
    name: "screen", picture: ["screen-card"],
    open: async (page) => {
      await open("screens", page);
      await press(page, page.locator("[data-state=Ready] .screen-row").nth(1));
      await page.locator("#state").waitFor();
    },
  },
  {
    name: "screen, wet",
    open: async (page) => {
      await open("screens", page);
      await press(page, page.locator("[data-state=Exposed] .screen-row").first());
      await page.locator("#dry").waitFor();
    },
  },
  {
    name: "screen form", from: "screen, wet",
    open: async (page) => { await press(page, ".head-aside a"); await page.locator("#label").waitFor(); },
    details: openAllSections,
  },
  {
    name: "screen form with mistakes", from: "screen form",
    open: async (page) => {
      await page.locator("#tension").fill("tight");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#tension-help .problem").waitFor();
    },
  },
  {
    name: "new screens", picture: ["screen-form"],
    open: async (page) => {
      await go(page, "#/screens/new", "#label");
      await page.locator("#label").fill("A1–A6, 7");
      await page.locator("#count").fill("156");
      await page.locator("#take-sheet").waitFor();
    },
  },
  { name: "screen room", picture: ["screen-room"], open: (page) => go(page, "#/screens/room", "#coat") },
  { name: "more", picture: ["more"], open: (page) => go(page, "#/more", ".menu") },
  { name: "heat", picture: ["heat"], open: (page) => go(page, "#/heat", ".page.heat .menu") },
  { name: "heat: units", open: (page) => go(page, "#/heat/units", ".heat-cards") },
  {
    name: "heat: unit form",
    open: async (page) => {
      await go(page, "#/heat/unit/new", "#name");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#name-help .problem").waitFor();
    },
  },
  {
    name: "heat: measuring",
    open: async (page) => {
      await go(page, "#/heat/units", ".heat-cards");
      await press(page, page.locator(".heat-cards .button").first());
      await page.locator("#found").fill("x");
      await press(page, ".save-bar [type=submit]");
      await page.locator("#found-help .problem").waitFor();
      await press(page, "#method-2");
    },
  },
  { name: "heat: settlings", open: (page) => go(page, "#/heat/settling", ".heat-list") },
  { name: "heat: ink sheets", open: (page) => go(page, "#/heat/inks", ".heat-wanted") },
  {
    name: "heat: ink sheet", from: "heat: ink sheets",
    open: async (page) => { await press(page, page.locator(".menu-row").first()); await page.locator("#cure").waitFor(); },
  },
  { name: "heat: limits", picture: ["fabric-limits"], open: (page) => go(page, "#/heat/limits", ".heat-limit") },
  {
    name: "heat: a limit of one's own",
    open: async (page) => {
      await go(page, "#/heat/limit/4", "#temperature");
      await page.locator("#temperature").fill("140");
      await page.locator("#note").fill("A trial");
      await press(page, ".save-bar [type=submit]");
      await page.locator(".heat-limit[data-own=true]").waitFor();
    },
  },
  {
    name: "heat: its form", from: "heat: a limit of one's own",
    open: async (page) => { await press(page, ".heat-limit[data-own=true]"); await page.locator("#limit-back").waitFor(); },
  },
  { name: "heat: tests", open: (page) => go(page, "#/heat/tests", "[data-due]") },
  {
    name: "heat: a test", from: "heat: tests",
    open: async (page) => {
      await press(page, page.locator(".menu-row:not([data-due])").first());
      await page.locator("#went-through").waitFor();
    },
  },
  { name: "heat: trials", open: (page) => go(page, "#/heat/trials", ".menu-row") },
  {
    name: "heat: a trial", from: "heat: trials",
    open: async (page) => {
      await press(page, page.locator(".menu-row").first());
      await page.locator("#outcome").waitFor();
    },
  },
  { name: "room", picture: ["room"], open: (page) => go(page, "#/heat/room", "#room-now") },
  {
    name: "room with everything open", from: "room",
    open: async (page) => {
      for (const details of await page.locator(".room-details summary").all()) await press(page, details);
      await page.locator("#humidity").fill("300");
      await press(page, "#room-save");
      await page.locator("#humidity-help .problem").waitFor();
    },
  },
  { name: "settings", picture: ["settings"], open: (page) => go(page, "#/more/settings", "#crew") },
  { name: "backup", picture: ["backup"], open: (page) => go(page, "#/more/backup", "#prepare") },
  {
    name: "backup ready, a file refused", from: "backup",
    open: async (page) => {
      await press(page, "#prepare");
      await page.locator("#ready").waitFor();
      await page.locator("#file").setInputFiles({ name: "x.zip", mimeType: "application/zip", buffer: Buffer.from("hello") });
      await page.locator("#import-result .problem").waitFor();
    },
  },
  {
    name: "a file before it is merged", from: "backup",
    open: async (page) => {
      await page.locator("#file").setInputFiles({ name: "x.zip", mimeType: "application/zip", buffer: backupFile(shopLines(20, now() - 3600_000), now()) });
      await page.locator("#preview").waitFor();
    },
  },
  { name: "recently deleted", open: (page) => go(page, "#/more/deleted", ".page.deleted") },
  { name: "storage and app", picture: ["about"], open: (page) => go(page, "#/more/about", "#facts") },
  { name: "not here", open: (page) => go(page, "#/job/0192f0c0-0000-7000-8000-000000000000", ".not-here") },
  {
    name: "welcome", picture: ["welcome"],
    open: async (page) => {
      await press(page, page.locator(".banner-button").first());
      await page.locator("#open-demo").waitFor();
    },
  },
];

/** What was typed on an earlier page must not come back as the draft of the same form. */
const deleteDrafts = (page) => page.evaluate(() => {
  for (const key of Object.keys(localStorage)) if (key.startsWith("lastpull.draft.")) localStorage.removeItem(key);
});

/**
 * Opens every page (or those whose name `only` accepts) one after another, with everything expanded, and calls
 * `visit` with its name.
 */
export async function visitPages(page, visit, only = () => true) {
  let previous = null;
  for (const { name, from, open, details } of PAGES.filter((entry) => only(entry.name))) {
    try {
      if (from !== previous) {
        await closeDialog(page);
        await deleteDrafts(page);
      }
      await open(page);
      if (details) await details(page);
    } catch (error) {
      throw new Error(`${name}: ${error.message}`);
    }
    await visit(name);
    previous = name;
  }
}

/** Names of all pictures. */
export const PICTURES = PAGES.flatMap(({ picture = [] }) => picture);

/** Opens, in a demo shop just opened, the page of a picture and those it starts from. */
export async function openForPicture(page, picture) {
  const openFrom = async ({ from, open }) => {
    if (from) await openFrom(find(from));
    await open(page);
  };
  await openFrom(PAGES.find((entry) => entry.picture?.includes(picture)));
}
