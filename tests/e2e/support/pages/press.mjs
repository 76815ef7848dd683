// The press: count and stops, and the checks before and the summary after them.
import { go, press, waitForDialog } from "../page.mjs";
import { openDay } from "./day.mjs";

export const openCount = (page) => go(page, "#/press", "#zone");
const runs = (page) => page.locator(".run-link").evaluateAll((links) => links.map((link) => link.getAttribute("href")));

export const COUNT = [
  { name: "count", picture: ["count"], open: openCount },
  {
    name: "count: misprint", picture: ["misprint"],
    open: async (page) => { await openCount(page); await press(page, "#misprint"); await waitForDialog(page); },
  },
  {
    name: "count: number", picture: ["number"],
    open: async (page) => { await openCount(page); await press(page, "#number"); await waitForDialog(page); },
  },
  {
    name: "count: number with a mistake", from: "count: number",
    open: async (page) => {
      await press(page, "#number-add");
      await page.locator("dialog .problem").filter({ hasText: /\S/ }).waitFor();
    },
  },
  { name: "count: stop", open: async (page) => { await openCount(page); await press(page, "#stop"); await waitForDialog(page); } },
  {
    name: "count: checks",
    open: async (page) => { await openCount(page); await press(page, ".checks-button"); await waitForDialog(page); },
  },
  { name: "count: pace", open: async (page) => { await openCount(page); await press(page, "#pace"); await waitForDialog(page); } },
  {
    name: "stopped", picture: ["stopped"],
    open: async (page) => {
      await openCount(page);
      await press(page, "#stop");
      await press(page, "[data-cause=Ink]");
      await page.locator("#stopped").waitFor();
    },
  },
  { name: "stopped: end", from: "stopped", open: async (page) => { await press(page, "#end"); await waitForDialog(page); } },
];

export const CHECKS_AND_SUMMARY = [
  {
    name: "checks", picture: ["checks", "changeover"],
    open: async (page) => { await openDay(page); await go(page, (await runs(page))[1], "#changes"); },
  },
  {
    name: "checks: what is known of the heat", from: "checks",
    open: async (page) => {
      for (const row of ["#on-paper", "#run-tests", "#run-trials"]) await press(page, `${row} summary`);
      await page.locator("#run-trials .menu-row").waitFor();
    },
  },
  { name: "checks: the ink is held", from: "checks", open: async (page) => { await press(page, "#start"); await waitForDialog(page); } },
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
    open: async (page) => { await press(page, "#start"); await waitForDialog(page); },
  },
  {
    name: "ended", picture: ["ended"],
    open: async (page) => {
      await openCount(page);
      await press(page, "#stop");
      await press(page, "#end-anyway");
      await page.locator("#ended-good").waitFor();
    },
  },
  {
    name: "press, which run", from: "ended", picture: ["pick"],
    open: async (page) => { await openDay(page); await go(page, "#/press", ".press-pick"); },
  },
];
