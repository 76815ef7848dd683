// Pots: at the scale, what is in them, their labels.
import { typeOnKeypad } from "../../ink-helpers.mjs";
import { go, openAllSections, press, waitForDialog, waitForText } from "../../page.mjs";
import { openInk } from "./shelf.mjs";

/** Opens the pot at this position of the ink page. */
async function openPot(page, index) {
  await go(page, "#/ink", "#pots .ink-row");
  await press(page, page.locator("#pots .ink-row").nth(index));
  await page.locator(".pot-weigh, #holds").first().waitFor();
}

export const POTS = [
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
  { name: "pot: client says yes", from: "pot", open: async (page) => { await press(page, "#yes"); await waitForDialog(page); } },
  { name: "pot: save as a revision", from: "pot", open: async (page) => { await press(page, "#save"); await waitForDialog(page); } },
  {
    name: "pot: top up", from: "pot",
    open: async (page) => {
      await press(page, "#top-up");
      await waitForDialog(page);
      await page.locator("#total").fill("900");
      await page.locator("#additions").waitFor();
    },
  },
  { name: "pot: into another", from: "pot", open: async (page) => { await press(page, "#move-out"); await waitForDialog(page); } },
  { name: "pot: another in", from: "pot", open: async (page) => { await press(page, "#move-in"); await waitForDialog(page); } },
  {
    name: "pot: thrown away", from: "pot",
    open: async (page) => {
      await press(page, "#waste");
      await waitForDialog(page);
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
      for (const key of ["back", "back", "back", "2", "8"]) await press(page, `[data-key="${key}"]`);
      await waitForText(page, "#typed", /^28/);
      await press(page, "[data-key=enter]");
      await page.locator("#added").waitFor();
      await press(page, "#read-it");
      await page.locator("#swatch-l").waitFor();
    },
  },
  {
    name: "pot: used on a run",
    open: async (page) => { await openPot(page, 1); await press(page, "#used"); await waitForDialog(page); },
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
      await openInk(page);
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
];
