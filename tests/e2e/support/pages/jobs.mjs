// Jobs, garments and the set-up of runs.
import { go, press, waitForDialog } from "../page.mjs";

/** Opens the first job of the list. */
async function openJob(page) {
  await go(page, "#/");
  await go(page, "#/jobs", ".job-row");
  await press(page, page.locator(".job-row").first());
  await page.locator(".lot").first().waitFor();
}

export const JOBS = [
  { name: "jobs", picture: ["jobs"], open: (page) => go(page, "#/jobs", ".job-row") },
  {
    name: "no jobs found", from: "jobs",
    open: async (page) => { await page.locator("#search").fill("zzz"); await page.locator(".jobs .quiet-line").waitFor(); },
  },
  { name: "job", picture: ["job"], open: openJob },
  {
    name: "job: finish short", from: "job",
    open: async (page) => { await press(page, page.locator(".job-actions .button").first()); await waitForDialog(page); },
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
      await openJob(page);
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
      await openJob(page);
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
  { name: "not here", open: (page) => go(page, "#/job/0192f0c0-0000-7000-8000-000000000000", ".not-here") },
];
