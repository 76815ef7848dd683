// The ink shelf: recipes, components, stock.
import { go, openAllSections, press, waitForDialog } from "../../page.mjs";

export const openInk = (page) => go(page, "#/ink", "#needs");

/** Components of the demo, by their names in both languages. */
const CLEAR = '[data-component="Base, clear"], [data-component="Base transparente"]';
const BLUE = '[data-component="Blue"], [data-component="Azul"]';
const BLACK = '[data-component="Black"], [data-component="Negro"]';

/** The demo's recipe with two versions, of which the first is approved, and the one for tomorrow's totes. */
const bone = (page) => page.locator("#recipes .ink-row").filter({ hasText: /Bone|Hueso/ });
const fern = (page) => page.locator("#recipes .ink-row").filter({ hasText: /Fern|Helecho/ });

export const INK = [
  { name: "ink", picture: ["ink"], open: openInk },
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
    open: async (page) => { await press(page, "#add-part"); await waitForDialog(page); },
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
      for (const [at, component, percent] of [[0, CLEAR, "80"], [1, BLUE, "14.5"], [2, BLACK, "two"]]) {
        await press(page, "#add-part");
        await press(page, component);
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
      await openInk(page);
      await press(page, page.locator(".ink-need .ink-act").last());
      for (const [index, component, percent] of [[0, CLEAR, "90"], [1, BLUE, "6"], [2, BLACK, "3"]]) {
        await press(page, "#add-part");
        await press(page, component);
        await page.locator(`#percent-${index}`).fill(percent);
      }
      await page.locator("[data-fix=fill]").waitFor();
    },
  },
  {
    name: "ink: recipe", picture: ["ink-recipe"],
    open: async (page) => {
      await openInk(page);
      await press(page, bone(page));
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
      await openInk(page);
      await press(page, bone(page));
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
      await openInk(page);
      await press(page, fern(page));
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
      await waitForDialog(page);
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
];
