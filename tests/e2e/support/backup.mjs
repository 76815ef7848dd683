// The backup file, out and in, as a person handles it.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { go, press } from "./shop.mjs";

/** Makes the file, leaving it ready on screen. */
export async function makeFile(page) {
  await go(page, "#/more/backup", "#prepare, #download");
  await press(page, "#prepare");
  await page.locator("#ready").waitFor();
}

/** Downloads the file that is ready. */
export async function download(page) {
  const arrives = page.waitForEvent("download");
  await press(page, "#download");
  const file = await arrives;
  return { bytes: readFileSync(await file.path()), path: await file.path(), name: file.suggestedFilename() };
}

/** Makes the file and takes it out. */
export async function takeOut(page) {
  await makeFile(page);
  return download(page);
}

/** Brings a file in and returns what the app says of it. */
export async function bringIn(page, bytes, name = "lastpull.zip") {
  await go(page, "#/", ".page.day");
  await go(page, "#/more/backup", "#file");
  await page.locator("#brought > *").evaluateAll((words) => words.forEach((said) => said.setAttribute("data-old", "")));
  await page.locator("#file").setInputFiles({ name, mimeType: "application/zip", buffer: bytes });
  const said = page.locator("#brought > p:not([data-old])").first();
  await said.waitFor();
  return (await page.locator("#brought").innerText()).trim();
}

/** How many facts the device keeps. */
export async function facts(page) {
  await go(page, "#/more/about", "#facts");
  return Number(await page.locator("#facts").getAttribute("data-facts"));
}

/** What the shop's screens say of its work, in words that the clock does not move. */
export async function state(page) {
  await go(page, "#/", ".page.day");
  const done = await page.locator("#done-jobs, #done-pieces, #done-misprints").allInnerTexts();
  const runs = await page.locator(".rail-runs .run-words").allInnerTexts();
  await go(page, "#/jobs", ".job-row");
  const rows = await page.locator(".job-row").allInnerTexts();
  const cards = [];
  for (const href of await page.locator(".job-row").evaluateAll((links) => links.map((link) => link.getAttribute("href")))) {
    await go(page, href, ".page.job");
    cards.push(await page.locator(".page.job").innerText());
  }
  return { done, runs, rows, cards, facts: await facts(page) };
}

/** Brings in a file that must be refused with these words, and change nothing. */
export async function refuses(page, bytes, words) {
  const before = await facts(page);
  const said = await bringIn(page, bytes);
  assert.match(said, words);
  assert.match(said, /Nothing was changed\./);
  assert.equal(await facts(page), before, `nothing changed: ${said}`);
}
