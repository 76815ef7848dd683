// Exporting and importing the backup file on the backup page.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { go, press } from "./page.mjs";
import { journalLines } from "./zip.mjs";

/** Prepares the backup file; ends with it ready to download. */
export async function prepareBackup(page) {
  await go(page, "#/more/backup", "#prepare, #download");
  await press(page, "#prepare");
  await page.locator("#ready").waitFor();
}

/** Downloads the file that is ready, without saying that it arrived. */
export async function downloadOnly(page) {
  const downloading = page.waitForEvent("download");
  await press(page, "#download");
  const file = await downloading;
  return { bytes: readFileSync(await file.path()), path: await file.path(), name: file.suggestedFilename() };
}

/** Downloads the file that is ready, and says that it is there. */
export async function downloadBackup(page) {
  const file = await downloadOnly(page);
  await press(page, "#have-backup");
  await page.locator("#sent").waitFor({ state: "detached" });
  return file;
}

/** Prepares and downloads the backup file. */
export async function exportBackup(page) {
  await prepareBackup(page);
  return downloadBackup(page);
}

/** Picks a file; ends with what is in it, or with the app's message if there is nothing to decide. */
export async function pickBackup(page, bytes, name = "lastpull.zip") {
  await go(page, "#/", ".page.day");
  await go(page, "#/more/backup", "#file");
  await page.locator("#import-result > *").evaluateAll((elements) => elements.forEach((element) => element.setAttribute("data-old", "")));
  await page.locator("#file").setInputFiles({ name, mimeType: "application/zip", buffer: bytes });
  await page.locator("#preview, #import-result > p:not([data-old])").first().waitFor();
}

/** Imports a file, whosever it is, and returns the app's message about it. */
export async function importBackup(page, bytes, name) {
  await pickBackup(page, bytes, name);
  if (await page.locator("#preview").count()) await press(page, "#import-file");
  await page.locator("#import-result > p:not([data-old])").first().waitFor();
  return (await page.locator("#import-result").innerText()).trim();
}

/** Number of facts stored on the device. */
export async function factCount(page) {
  await go(page, "#/more/about", "#facts");
  return Number(await page.locator("#facts").getAttribute("data-facts"));
}

/** What the pages show of the shop's work, in texts that do not change with the time of day. */
export async function shopState(page) {
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
  return { done, runs, rows, cards, facts: await factCount(page) };
}

/** A hash of every byte that the app has stored in its database, by object store. */
export function storedBytes(page) {
  return page.evaluate(async () => {
    const database = await new Promise((give) => { indexedDB.open("lastpull").onsuccess = ({ target }) => give(target.result); });
    const ended = (request) => new Promise((give, fail) => { request.onsuccess = () => give(request.result); request.onerror = () => fail(request.error); });
    const hashes = {};
    for (const name of database.objectStoreNames) {
      const store = database.transaction(name).objectStore(name);
      const [keys, values] = await Promise.all([ended(store.getAllKeys()), ended(store.getAll())]);
      const text = JSON.stringify([keys, values], (_, value) => (ArrayBuffer.isView(value) ? [...new Uint8Array(value.buffer, value.byteOffset, value.byteLength)] : value));
      const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
      hashes[name] = `${keys.length} values: ${[...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("")}`;
    }
    database.close();
    return hashes;
  });
}

/** Imports a file that must be refused with a message that matches, and must change no stored byte. */
export async function expectRefused(page, bytes, message) {
  const before = await storedBytes(page);
  const text = await importBackup(page, bytes);
  assert.match(text, message);
  assert.match(text, /Nothing was changed\./);
  assert.deepEqual(await storedBytes(page), before, `nothing changed: ${text}`);
}

/** The journal of a backup: the number of facts, of which each device has 1, 2, 3 … */
export async function expectWholeJournal(page) {
  const [, ...lines] = journalLines((await exportBackup(page)).bytes);
  const numbers = new Map();
  for (const { device, seq } of lines.map((line) => JSON.parse(line))) numbers.set(device, [...(numbers.get(device) ?? []), seq]);
  for (const [device, found] of numbers) {
    found.sort((one, other) => one - other);
    assert.deepEqual(found, found.map((_, index) => index + 1), `${device} has each number once`);
  }
  assert.equal(lines.length, await factCount(page), "every fact that the shop counts can be read");
  return lines.length;
}
