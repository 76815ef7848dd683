// Dryers, ink sheets, limits, tests, trials, and the climate of the room.
import { go, press, waitForDialog } from "../page.mjs";

export const HEAT = [
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
    name: "heat: what a term means", from: "heat: limits",
    open: async (page) => { await press(page, ".head-aside .help button"); await waitForDialog(page); },
  },
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
];
