// Exposure and bath; the inventory of screens.
import { go, openAllSections, press, waitForDialog } from "../page.mjs";

const openScreens = (page) => go(page, "#/screens", ".screen-row");

export const STENCIL = [
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
      await waitForDialog(page);
      await press(page, page.locator(".stencil-ticks input").first());
    },
  },
  {
    name: "bath: take out", from: "bath",
    open: async (page) => {
      await press(page, page.locator(".stencil-batch button").first());
      await waitForDialog(page);
      await press(page, page.locator("fieldset:has([name=time-kind]) input").last());
      await page.locator("#minutes").waitFor();
    },
  },
  { name: "bath: charge", from: "bath", open: async (page) => { await press(page, "#charge"); await waitForDialog(page); } },
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
];

export const SCREENS = [
  { name: "screens", picture: ["screens"], open: openScreens },
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
      await openScreens(page);
      await press(page, page.locator("[data-state=Ready] .screen-row").nth(1));
      await page.locator("#state").waitFor();
    },
  },
  {
    name: "screen, wet",
    open: async (page) => {
      await openScreens(page);
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
];
