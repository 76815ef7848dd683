// Lists of a shop of many years: what is drawn is bounded, everything can be reached, and Back leads to the place.
import assert from "node:assert/strict";
import { test } from "node:test";
import { importBackup } from "../support/backup.mjs";
import { now } from "../support/clock.mjs";
import { backupFile, jobLines } from "../support/journal-file.mjs";
import { fillForm, go, press, waitForText } from "../support/page.mjs";
import { openShop, testServer } from "../support/setup.mjs";

const app = testServer({ whole: true });

const JOBS = 3_000;
/** Far more than the drawn rows need, far less than all of them. */
const MOST_ELEMENTS = 2_500;

const elements = (page) => page.evaluate(() => document.querySelectorAll("*").length);
const drawn = (page) => page.locator("#finished-jobs .job-row").count();
const scrolled = (page) => page.evaluate(() => Math.round(scrollY));
/** The titles of the rows of finished jobs that are at least partly in the viewport. */
const inView = (page) => page.locator("#finished-jobs .job-row").evaluateAll((rows) =>
  rows.filter((row) => { const place = row.getBoundingClientRect(); return place.bottom > 0 && place.top < innerHeight; }).map((row) => row.querySelector("strong").textContent));

/** A shop with thousands of finished jobs, the list of jobs open. */
async function oldShop(t, options) {
  const page = await openShop(t, app, options);
  await importBackup(page, backupFile(jobLines(JOBS, now()), now()));
  await go(page, "#/jobs", "#finished-jobs .job-row");
  return page;
}

/** Scrolls to the end again and again, until the last row is drawn: rows that are higher than the first ones move it. */
async function scrollToEnd(page) {
  await page.waitForFunction(() => {
    scrollTo(0, document.documentElement.scrollHeight);
    const last = [...document.querySelectorAll("#finished-jobs .job-row")].at(-1);
    return last?.querySelector("strong").textContent === "Order 0" && last.getBoundingClientRect().top < innerHeight;
  });
}

test("of thousands of jobs few are elements, and the last one is reached", async (t) => {
  const page = await oldShop(t);
  assert.ok((await elements(page)) < MOST_ELEMENTS, `${await elements(page)} elements at the top`);
  const first = page.locator("#finished-jobs li").first();
  assert.deepEqual([await first.getAttribute("aria-posinset"), await first.getAttribute("aria-setsize")], ["1", String(JOBS)]);
  // The scroll bar is that of the whole list, once the first rows are measured.
  await page.waitForFunction((jobs) => {
    const tops = [...document.querySelectorAll("#finished-jobs li")].map((row) => row.offsetTop);
    const all = (jobs * (tops.at(-1) - tops[0])) / (tops.length - 1);
    return Math.abs(document.documentElement.scrollHeight - all) < all / 20;
  }, JOBS);
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.keyboard.press("End");
  await waitForText(page, "#finished-jobs .job-row strong", /^Order 0$/);
  await scrollToEnd(page);
  assert.ok((await elements(page)) < MOST_ELEMENTS, `${await elements(page)} elements at the end`);
  assert.equal(await page.locator("#finished-jobs li").last().getAttribute("aria-posinset"), String(JOBS));
  const after = await page.evaluate(() => document.documentElement.scrollHeight);
  assert.ok(Math.abs(after - height) < height / 50, `the height stays: ${height}, ${after}`);
  await page.keyboard.press("Home");
  await waitForText(page, "#finished-jobs .job-row strong", new RegExp(`^Order ${JOBS - 1}$`));
});

test("the rows follow the text size and the language", async (t) => {
  const page = await oldShop(t, { settings: { language: "spanish" } });
  await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
  await scrollToEnd(page);
  const places = await page.locator("#finished-jobs li").evaluateAll((rows) => rows.map((row) => row.getBoundingClientRect()).map(({ top, bottom }) => [top, bottom]));
  assert.ok(places.every(([top], at) => at === 0 || top >= places[at - 1][1]), "no row lies over another");
  assert.ok((await elements(page)) < MOST_ELEMENTS);
});

test("a search finds the oldest job, and Back leads to what was searched", async (t) => {
  const page = await oldShop(t);
  await fillForm(page, { search: "LANTERN order" });
  await page.waitForFunction(() => document.querySelectorAll(".job-row").length === 1);
  await press(page, ".job-row");
  await page.locator(".page.job").waitFor();
  await page.goBack();
  await waitForText(page, ".job-row strong", "Order 0");
  assert.equal(await page.locator("#search").inputValue(), "LANTERN order");
  await go(page, "#/", ".page.day");
  await go(page, "#/jobs", "#finished-jobs .job-row");
  assert.equal(await page.locator("#search").inputValue(), "", "opened again, it is empty");
});

test("Back leads to the place in the list; opened again it begins at its top", async (t) => {
  const page = await oldShop(t);
  await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight / 2));
  await page.waitForFunction(() => [...document.querySelectorAll("#finished-jobs .job-row")].some((row) => {
    const { top } = row.getBoundingClientRect();
    return top > 0 && top < innerHeight / 2;
  }));
  const place = await scrolled(page);
  const seen = await inView(page);
  // Not a tap, which would scroll a row that is partly covered.
  await page.getByText(seen.at(1), { exact: true }).evaluate((title) => title.click());
  await page.locator(".page.job").waitFor();
  await page.goBack();
  await waitForText(page, "#finished-jobs .job-row strong", new RegExp(`^${seen.at(1)}$`));
  assert.deepEqual([await scrolled(page), await inView(page)], [place, seen]);
  await go(page, "#/", ".page.day");
  await go(page, "#/jobs", "#finished-jobs .job-row");
  assert.equal(await scrolled(page), 0);
});

test("the keyboard goes through the rows, beyond those that were drawn", async (t) => {
  const page = await oldShop(t);
  const before = await drawn(page);
  await page.locator("#search").focus();
  await page.keyboard.press("Tab");
  const place = () => page.evaluate(() => Number(document.activeElement.closest("li")?.getAttribute("aria-posinset")));
  for (let row = 1; row <= before + 5; row++) {
    // The next row is drawn in the frame after the page has scrolled, long before anybody presses the key again.
    await page.waitForFunction((row) => {
      const has = document.activeElement.closest("li");
      return has?.getAttribute("aria-posinset") === String(row) && has.nextElementSibling;
    }, row);
    await page.keyboard.press("Tab");
  }
  assert.equal(await place(), before + 6);
});
