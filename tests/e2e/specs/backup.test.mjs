// Exporting and importing the backup file, and refusing files that are not what they claim.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { test } from "node:test";
import { crc32 } from "node:zlib";
import { expectRefused, exportBackup, factCount, importBackup, shopState } from "../support/backup.mjs";
import { pull, waitForCount } from "../support/counting.mjs";
import { go, hashOf, press } from "../support/page.mjs";
import { openFirst, testServer } from "../support/setup.mjs";
import { openCounting } from "../support/shop.mjs";
import { backupZip, journalLines, zipOf } from "../support/zip.mjs";

const app = testServer();
/** Where the packed journal begins in a backup: after the local header and its name (APPNOTE 6.3, 4.3.7). */
const PACKED_FROM = 30 + "journal.ndjson".length;

/** A shop with counts, a misprint and a stop. */
async function workedShop(t) {
  const page = await openCounting(t, app, { job: { notes: "Fold in tens, “sizes” on top · ñ 🧵" } });
  await pull(page, 5);
  await press(page, "#misprint");
  await press(page, "[data-cause=Pinhole]");
  await press(page, "#stop");
  await press(page, "[data-cause=Ink]");
  await page.locator("#stopped").waitFor();
  await waitForCount(page, 4);
  return page;
}

/** A new device that imports the file instead of starting a shop. */
async function deviceWith(t, bytes) {
  const page = await openFirst(t, app);
  await press(page, "#have-file");
  await page.locator("#file").waitFor();
  assert.match(await importBackup(page, bytes), /new; 0 entries already here/);
  return page;
}

test("a backup is a plain ZIP and restores an erased device", async (t) => {
  const page = await workedShop(t);
  const before = await shopState(page);
  assert.ok(before.facts >= 10);
  const { bytes, path, name } = await exportBackup(page);
  assert.match(name, /^lastpull-\d{4}-\d\d-\d\d-\d{4}\.zip$/);
  assert.match(execFileSync("python3", ["-m", "zipfile", "-l", path], { encoding: "utf8" }), /journal\.ndjson/);
  const text = execFileSync("python3", ["-c", "import sys,zipfile; sys.stdout.buffer.write(zipfile.ZipFile(sys.argv[1]).read('journal.ndjson'))", path], { encoding: "utf8" });
  assert.deepEqual(text.trimEnd().split("\n"), journalLines(bytes));
  const [heading, ...entries] = journalLines(bytes).map((line) => JSON.parse(line));
  assert.deepEqual([heading.journal, heading.version, heading.entries], ["lastpull", 1, before.facts]);
  assert.equal(entries.length, before.facts);
  await page.getByText("0 entries since.").waitFor();

  await go(page, "#/more/about", "#erase");
  await press(page, "#erase");
  await press(page, "#erase-yes");
  await page.locator("#have-file").waitFor();
  await page.reload();
  await press(page, "#have-file");
  await page.locator("#file").waitFor();
  assert.match(await importBackup(page, bytes), new RegExp(`^${before.facts} entries new; 0 entries already here`));
  assert.deepEqual(await shopState(page), before);
  assert.match(await importBackup(page, bytes), new RegExp(`^Nothing new: all ${before.facts} entries already here`));
  assert.deepEqual(await shopState(page), before);
  await page.reload();
  assert.deepEqual(await shopState(page), before, "also after a reload");
});

test("two devices that count one run exchange files and agree", async (t) => {
  const one = await openCounting(t, app);
  const run = await hashOf(one);
  await pull(one, 3);
  const two = await deviceWith(t, (await exportBackup(one)).bytes);
  await go(two, run, "#zone");
  await waitForCount(two, 3);
  await pull(two, 4);
  await go(one, run, "#zone");
  await pull(one, 2);

  const [fromOne, fromTwo] = [await exportBackup(one), await exportBackup(two)];
  assert.match(await importBackup(one, fromTwo.bytes), /^4 entries new/);
  assert.match(await importBackup(two, fromOne.bytes), /^2 entries new/);
  for (const page of [one, two]) {
    await go(page, run, "#zone");
    await waitForCount(page, 9);
  }
  assert.deepEqual(await shopState(one), await shopState(two));
  // Once more in the other order, and an older file late.
  await go(one, run, "#zone");
  await pull(one, 1);
  assert.match(await importBackup(two, (await exportBackup(one)).bytes), /^1 entry new/);
  assert.match(await importBackup(two, fromOne.bytes), /^Nothing new/);
  assert.deepEqual(await shopState(one), await shopState(two));
  await two.reload();
  await go(two, run, "#zone");
  await waitForCount(two, 10);
});

test("undo removes a device's own pieces, not those of another", async (t) => {
  const one = await openCounting(t, app);
  const run = await hashOf(one);
  await pull(one, 2);
  const two = await deviceWith(t, (await exportBackup(one)).bytes);
  await go(two, run, "#zone");
  await waitForCount(two, 2);
  assert.ok(await two.locator("#undo").isDisabled());
});

test("imported facts appear at once in the device's other tab", async (t) => {
  const one = await openCounting(t, app);
  const run = await hashOf(one);
  const two = await deviceWith(t, (await exportBackup(one)).bytes);
  await go(two, run, "#zone");
  await pull(two, 2);
  const { bytes } = await exportBackup(two);
  const tab = await one.context().tab();
  await tab.goto(`${app.server.url}${run}`);
  await waitForCount(tab, 0);
  await one.bringToFront();
  await importBackup(one, bytes);
  await tab.bringToFront();
  await waitForCount(tab, 2);
});

test("truncated, damaged and foreign files are refused unchanged", async (t) => {
  const page = await workedShop(t);
  const { bytes } = await exportBackup(page);
  const before = await shopState(page);
  for (const cut of [0, 1, 30, Math.floor(bytes.length / 2), bytes.length - 1]) {
    await expectRefused(page, bytes.subarray(0, cut), /^The file is not a backup, or part of it is missing\./);
  }
  const text = journalLines(bytes).join("\n") + "\n";
  await expectRefused(page, zipOf("journal.ndjson", text, { sum: 1 }), /^The file is damaged\./);
  await expectRefused(page, zipOf("journal.ndjson", text, { claims: Buffer.byteLength(text) - 1 }), /^The file is damaged\./);
  await expectRefused(page, zipOf("journal.ndjson", text.slice(0, -20)), /^The file ends before its last entry\./);
  // The file says how many bytes the facts are, and their sum: a letter that is another one is a damaged file, and a line
  // that is no line is named first.
  const [heading, first] = text.split("\n");
  await expectRefused(page, zipOf("journal.ndjson", text.replace("Tour tees", "Four tees"), { sum: crc32(Buffer.from(text)) }), /^The file is damaged\./);
  await expectRefused(page, zipOf("journal.ndjson", text.replace(first, first.replace("{", "["))), /^Line 2 of the file was not written by Lastpull\./);
  await expectRefused(page, zipOf("journal.ndjson", text.replace(heading, heading.replace("{", "["))), /not a Lastpull backup/);
  // Bytes of the packed facts: what is wrong with them depends on where the unpacking notices.
  for (const place of [0.2, 0.4, 0.6, 0.8]) {
    const damaged = Buffer.from(bytes);
    damaged[PACKED_FROM + Math.floor(bytes.readUInt32LE(18) * place)] ^= 0x55;
    await expectRefused(page, damaged, /^(The file is damaged|Line \d+ of the file was not written by Lastpull|The file ends before its last entry)\. Nothing was changed\.$/);
  }
  await expectRefused(page, Buffer.from("hello"), /not a backup/);
  await expectRefused(page, zipOf("photos.txt", "hello"), /not a Lastpull backup/);
  await expectRefused(page, zipOf("../journal.ndjson", journalLines(bytes).join("\n")), /not a Lastpull backup/);
  await expectRefused(page, zipOf("journal.ndjson", `{"journal":"other","version":1,"entries":0,"made":1}\n`), /not a Lastpull backup/);
  await expectRefused(page, zipOf("journal.ndjson", `{"journal":"lastpull","version":2,"entries":0,"made":1}\n`), /newer Lastpull/);
  assert.deepEqual(await shopState(page), before);
});

test("hostile files are refused and change nothing", async (t) => {
  const page = await workedShop(t);
  const lines = journalLines((await exportBackup(page)).bytes);
  const before = await shopState(page);
  const last = JSON.parse(lines.at(-1));
  const next = (change) => backupZip([...lines, JSON.stringify({ ...last, seq: last.seq + 1, ...change })]);
  const bad = new RegExp(`Line ${lines.length + 1} of the file was not written`);
  for (const change of [{ seq: -1 }, { seq: 0 }, { seq: 1.5 }, { seq: 2 ** 60 }, { stamp: null }, { device: "../../x" }, { extra: 1 }, { fact: { pulled: { pieces: 2_000_000, size: null } } }, { fact: { shop_named: "x".repeat(5_000) } }]) {
    await expectRefused(page, next(change), bad);
  }
  await expectRefused(page, next({ fact: { later: "x".repeat(70_000) } }), bad);
  await expectRefused(page, backupZip([...lines, "[".repeat(60_000)]), bad);
  await expectRefused(page, backupZip(lines, lines.length + 7), /ends before its last entry/);
  await expectRefused(page, backupZip(lines, lines.length - 2), /was not written by Lastpull/);
  await expectRefused(page, backupZip(lines, 3_000_000), /too large for a backup/);
  // A ZIP bomb of 100 MB in 100 kB, and an entry that claims to be larger than allowed.
  await expectRefused(page, zipOf("journal.ndjson", Buffer.concat([Buffer.from(`${lines[0]}\n`), Buffer.alloc(100_000_000, "[")])), /Line 2 of the file/);
  await expectRefused(page, zipOf("journal.ndjson", lines.join("\n"), { claims: 0xf0000000 }), /too large for a backup|damaged|not a backup/);
  // A number of millions after the others.
  await expectRefused(page, next({ seq: 2 ** 41 }), /than a shop can have/);
  assert.deepEqual(await shopState(page), before);
});

test("other facts under the same numbers are kept beside those that are here", async (t) => {
  const page = await workedShop(t);
  const lines = journalLines((await exportBackup(page)).bytes);
  const before = await factCount(page);
  const forked = lines.map((line) => line.replace('{"pulled":{"pieces":1,', '{"pulled":{"pieces":2,'));
  assert.notDeepEqual(forked, lines);
  assert.match(await importBackup(page, backupZip(forked)), /Two devices counted as one[\s\S]*counts separately/);
  assert.ok((await factCount(page)) > before);
  // The same file again changes nothing.
  assert.match(await importBackup(page, backupZip(forked)), /Nothing new/);
});

test("facts of a newer version are kept and exported unread", async (t) => {
  const page = await workedShop(t);
  const lines = journalLines((await exportBackup(page)).bytes);
  const last = JSON.parse(lines.at(-1));
  const other = "0192f0c0-0000-7000-8000-000000000001";
  const later = JSON.stringify({ ...last, device: other, seq: 1, fact: { later: { words: "<b>kept</b>", n: 7 } } });
  const before = await factCount(page);
  assert.match(await importBackup(page, backupZip([...lines, later])), /^1 entry new/);
  assert.equal(await factCount(page), before + 1);
  await page.getByText("1 entry from a newer version").waitFor();
  const out = journalLines((await exportBackup(page)).bytes).find((line) => line.includes(other));
  assert.deepEqual(JSON.parse(out).fact, { later: { words: "<b>kept</b>", n: 7 } });
});

test("markup in names is shown as text", async (t) => {
  const title = `<img src=x onerror="document.title='run'"> & "tees"`;
  const page = await openCounting(t, app, { job: { title } });
  assert.equal(await page.locator("#heading").innerText(), title);
});
