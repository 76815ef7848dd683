// Stored values that do not decode: the shop's data come out as far as they read, and the app says how far.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { test } from "node:test";
import { downloadBackup, downloadOnly, expectRefused, exportBackup, factCount, importBackup, prepareBackup } from "../support/backup.mjs";
import { now } from "../support/clock.mjs";
import { pull, touchZone, waitForCount, waitTwoFrames } from "../support/counting.mjs";
import { backupFile, id, shopLines } from "../support/journal-file.mjs";
import { go, hashOf, press } from "../support/page.mjs";
import { tryAgain, waitForZone, waitUntilBlocked } from "../support/saving-blocked.mjs";
import { openFirst, openShop, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { hangWrites, replaceLastPiece, truncateStored } from "../support/storage-faults.mjs";
import { journalLines } from "../support/zip.mjs";

const app = testServer();

/** Names of the files in an archive, as another tool lists them. */
const filesIn = (path) => execFileSync("python3", ["-c", "import sys,zipfile; print('\\n'.join(zipfile.ZipFile(sys.argv[1]).namelist()))", path], { encoding: "utf8" }).trim().split("\n");
/** The bytes of one of them. */
const fileIn = (path, name) => execFileSync("python3", ["-c", "import sys,zipfile; sys.stdout.buffer.write(zipfile.ZipFile(sys.argv[1]).read(sys.argv[2]))", path, name], { maxBuffer: 1e8 });

const deviceSettings = (page) => page.evaluate(() => JSON.parse(localStorage.getItem("lastpull.device")));

test("one damaged record costs no other when the shop does not open", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 5);
  const facts = await factCount(page);
  await truncateStored(page, "tail", 2, 0);
  await page.reload();
  await page.getByRole("heading", { name: "Can't open the shop" }).waitFor();
  await press(page, page.getByRole("link", { name: "Save a backup" }));
  await page.locator("#prepare").waitFor();
  assert.equal(await page.locator("#file").count(), 0, "nothing is brought into a shop that does not open");
  await prepareBackup(page);
  await page.locator("#part-only").getByText(`${facts - 1} of ${facts} entries are in the file`).waitFor();
  await page.locator("#part-only").getByText("2 saved parts can't be read").or(page.locator("#part-only").getByText("1 saved part can't be read")).waitFor();
  const { bytes, path } = await downloadBackup(page);
  assert.equal(journalLines(bytes).length - 1, facts - 1);
  assert.equal(filesIn(path).filter((name) => name.startsWith("unreadable/tail-")).length, 1);
  assert.equal((await deviceSettings(page)).backed_up, null, "a part is no backup");

  const other = await openFirst(t, app);
  await press(other, "#have-file");
  await other.locator("#file").waitFor();
  assert.match(await importBackup(other, bytes), new RegExp(`^${facts - 1} entries new`));
});

/** Deletes the database, as a browser does that finds it damaged when it starts, and opens the app again. */
async function loseDatabase(page) {
  await page.evaluate(() => new Promise((done, failed) => {
    Object.assign(indexedDB.deleteDatabase("lastpull"), { onsuccess: done, onerror: failed });
  }));
  await page.reload();
  await go(page, "#/", "#start-shop");
  await page.getByRole("heading", { name: "The data of this shop is gone" }).waitFor();
}

test("a shop whose data the browser has removed says so, and is restored from a backup", async (t) => {
  const page = await openCounting(t, app);
  const run = await hashOf(page);
  await pull(page, 5);
  const { bytes } = await exportBackup(page);
  await loseDatabase(page);
  await page.locator("#last-backup").getByText(/^Last backup: /).waitFor();
  // Wherever the app is opened, until there are data.
  await go(page, "#/jobs", "#last-backup");
  await press(page, "#have-file");
  await page.locator("#file").waitFor();
  await page.locator("#file").setInputFiles({ name: "lastpull.zip", mimeType: "application/zip", buffer: bytes });
  await press(page, "#import-file");
  await page.locator("#import-result").getByText("entries new").waitFor();
  await page.reload();
  await go(page, run, "#zone");
  await waitForCount(page, 5);
});

test("a shop whose data the browser has removed can start anew", async (t) => {
  const page = await openCounting(t, app);
  await exportBackup(page);
  await loseDatabase(page);
  await press(page, "#start-shop");
  await page.locator(".page.day").waitFor();
  await page.reload();
  await page.locator(".page.day").waitFor();
  assert.equal((await deviceSettings(page)).backed_up, null, "the backup is of the shop before");
});

test("a damaged segment under a good checkpoint is not called a backup", async (t) => {
  const page = await openShop(t, app);
  await importBackup(page, backupFile(shopLines(100, now() - 3600_000), now()));
  const facts = await factCount(page);
  await truncateStored(page, "segments", 1, 0);
  await page.reload();
  await go(page, "#/press", "#zone");
  await pull(page, 2);
  await prepareBackup(page);
  await page.locator("#part-only").getByText(`of ${facts + 2} entries are in the file`).waitFor();
  const { bytes, path } = await downloadBackup(page);
  assert.ok(journalLines(bytes).length - 1 < facts);
  const files = filesIn(path);
  assert.equal(files.filter((name) => name.startsWith("unreadable/segment-")).length, 1);
  const shop = await page.evaluate(() => new Promise((give, fail) => {
    indexedDB.open("lastpull").onsuccess = ({ target: { result: database } }) => {
      const request = database.transaction("checkpoint").objectStore("checkpoint").get("shop");
      request.onsuccess = () => { database.close(); give([...request.result]); };
      request.onerror = () => fail(request.error);
    };
  }));
  assert.deepEqual([...fileIn(path, "unreadable/checkpoint.bin")], shop, "what they added up to goes along, beside the record of the import");
  await page.getByText("No backup made on this device yet").waitFor();
  assert.equal((await deviceSettings(page)).backed_up, null);
});

test("a file that damage keeps out comes in once the device is erased", async (t) => {
  const page = await openShop(t, app);
  // What three devices of the shop have recorded; one of them is kept out at first.
  const [phone, tablet, news] = [1, 2, 3].map((device) => shopLines(100, now() - 3600_000).map((line) => line.replaceAll(id(1), id(device))));
  await importBackup(page, backupFile(phone, now()));
  await importBackup(page, backupFile(tablet, now()));
  await truncateStored(page, "segments", 1, 0);
  await page.reload();
  await expectRefused(page, backupFile(news, now()), /can't be read.*Make a backup.*erase this device.*import that file and this one/s);
  const { bytes } = await exportBackup(page);
  const read = journalLines(bytes).length - 1;
  assert.ok(read >= tablet.length);
  await go(page, "#/more/about", "#erase");
  await press(page, "#erase");
  await press(page, "#erase-yes");
  await page.locator("#have-file").waitFor();
  await press(page, "#have-file");
  await page.locator("#file").waitFor();
  assert.match(await importBackup(page, bytes), new RegExp(`^${read} entries new`));
  assert.match(await importBackup(page, backupFile(news, now())), new RegExp(`^${news.length} entries new`));
});

test("a damaged head is said, and every fact still comes out", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 2);
  const facts = await factCount(page);
  // The device's id and the head are the values of this store, in this order.
  await truncateStored(page, "meta", 3, 1);
  await page.reload();
  await page.getByRole("heading", { name: "Can't open the shop" }).waitFor();
  await press(page, page.getByRole("link", { name: "Save a backup" }));
  await prepareBackup(page);
  await page.locator("#part-only").getByText("the total can't be read either").waitFor();
  const { bytes } = await downloadBackup(page);
  assert.equal(journalLines(bytes).length - 1, facts);
});

test("a stored fact that no file may hold is kept beside the backup", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 3);
  const facts = await factCount(page);
  // Two million pieces in one touch: they read here, and are refused from a file.
  await replaceLastPiece(page, [1, 16, 0x80, 0x92, 0xf4, 0x01, 0]);
  await prepareBackup(page);
  await page.locator("#part-only").getByText(`${facts - 1} of ${facts} entries are in the file`).waitFor();
  const { bytes, path } = await downloadBackup(page);
  assert.equal(journalLines(bytes).length - 1, facts - 1);
  const [kept, ...others] = filesIn(path).filter((name) => name.startsWith("unreadable/"));
  assert.match(kept, /^unreadable\/line-[0-9a-f-]{36}-\d+/);
  assert.deepEqual(others, []);
  assert.deepEqual(JSON.parse(fileIn(path, kept)).fact, { pulled: { pieces: 2_000_000, size: null } });
  assert.equal((await deviceSettings(page)).backed_up, null, "a part is no backup");
  const other = await openFirst(t, app);
  await press(other, "#have-file");
  await other.locator("#file").waitFor();
  assert.match(await importBackup(other, bytes), new RegExp(`^${facts - 1} entries new`));
});

test("what a version did not know counts once a version knows it", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 3);
  const [kind, json] = ["pulled", '{"pulled":{"pieces":1,"size":"s"}}'].map((text) => [text.length, ...Buffer.from(text)]);
  await replaceLastPiece(page, [0, ...kind, ...json]);
  await page.reload();
  await waitForCount(page, 3);
  await pull(page, 1);
  await page.reload();
  await waitForCount(page, 4);
});

test("what a write that hangs would have stored is exported and counts once", async (t) => {
  const page = await openCounting(t, app, { initScript: hangWrites });
  const run = await hashOf(page);
  await pull(page, 2);
  await page.evaluate(() => { window.storage.hang = true; });
  await touchZone(page);
  await waitForZone(page, 3, 1);
  await waitUntilBlocked(page);
  await press(page, "#blocked a");
  await prepareBackup(page);
  await page.getByText("Includes 1 entry that could not be saved here").waitFor();
  const { bytes } = await downloadOnly(page);
  assert.equal(journalLines(bytes).filter((line) => line.includes('"pulled"')).length, 3);
  await page.evaluate(() => { window.storage.hang = false; });
  await go(page, run, "#zone");
  await tryAgain(page);
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 3);
  assert.match(await importBackup(page, bytes), /^Nothing new/);
  await go(page, run, "#zone");
  await waitForCount(page, 3);
  await page.reload();
  await waitForCount(page, 3);
});

test("a write that hangs blocks counting after a while, and loses nothing", async (t) => {
  const page = await openCounting(t, app, { initScript: hangWrites });
  const run = await hashOf(page);
  await pull(page, 2);
  await page.evaluate(() => { window.storage.hang = true; });
  await touchZone(page);
  await waitForZone(page, 3, 1);
  await touchZone(page);
  await waitForZone(page, 4, 2);
  await waitUntilBlocked(page);
  await page.getByText("does not respond").waitFor();
  await touchZone(page, 0.9);
  await waitTwoFrames(page);
  await waitForZone(page, 4, 2);
  await page.evaluate(() => { window.storage.hang = false; });
  await page.locator("#blocked").waitFor({ state: "detached" });
  await waitForCount(page, 4);
  await page.reload();
  await go(page, run, "#zone");
  await waitForCount(page, 4);
});
