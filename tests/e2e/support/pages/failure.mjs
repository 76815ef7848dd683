// A failure on the press, from the report to its end.
import { press } from "../page.mjs";
import { openDay } from "./day.mjs";
import { openCount } from "./press.mjs";

export const FAILURE = [
  {
    name: "failed", picture: ["failed"],
    open: async (page) => {
      await openCount(page);
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
  { name: "count: press stopped by a failure", from: "failed: burning", open: openCount },
  {
    name: "day: press stopped by a failure", from: "failed: burning",
    open: async (page) => { await openDay(page); await page.locator(".failure-bar.stands").waitFor(); },
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
        await openDay(page);
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
    name: "day: failed today", from: "failed, judged",
    open: async (page) => { await openDay(page); await page.locator("#failed-today").waitFor(); },
  },
];
