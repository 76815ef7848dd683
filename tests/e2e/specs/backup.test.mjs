// One file with everything, out and in; and files that are not what they say.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { test } from "node:test";
import { go, openCounting, openFirst, premises, press } from "../support/shop.mjs";
import { pull, shows } from "../support/counting.mjs";
import { archive, backupOf, linesOf } from "../support/zip.mjs";
import { bringIn, facts, refuses, state, takeOut } from "../support/backup.mjs";

const place = premises();

/** A shop with counts, a misprint and a stop. */
async function workedShop(t) {
  const page = await openCounting(t, place, { job: { notes: "Fold in tens, “sizes” on top · ñ 🧵" } });
  await pull(page, 5);
  await press(page, "#misprint");
  await press(page, "[data-cause=Pinhole]");
  await press(page, "#stop");
  await press(page, "[data-cause=Ink]");
  await page.locator("#stopped").waitFor();
  await shows(page, 4);
  return page;
}

/** A new device that takes the file instead of starting a shop. */
async function deviceWith(t, bytes) {
  const page = await openFirst(t, place);
  await press(page, "#have-file");
  await page.locator("#file").waitFor();
  assert.match(await bringIn(page, bytes), /new; 0 facts were here already/);
  return page;
}

test("a backup reads with any archive tool, and brings an erased device back to where it was, once or twice", async (t) => {
  const page = await workedShop(t);
  const before = await state(page);
  assert.ok(before.facts >= 10);
  const { bytes, path, name } = await takeOut(page);
  assert.match(name, /^lastpull-\d{4}-\d\d-\d\d-\d{4}\.zip$/);
  assert.match(execFileSync("python3", ["-m", "zipfile", "-l", path], { encoding: "utf8" }), /journal\.ndjson/);
  const text = execFileSync("python3", ["-c", "import sys,zipfile; sys.stdout.buffer.write(zipfile.ZipFile(sys.argv[1]).read('journal.ndjson'))", path], { encoding: "utf8" });
  assert.deepEqual(text.trimEnd().split("\n"), linesOf(bytes));
  const [heading, ...entries] = linesOf(bytes).map((line) => JSON.parse(line));
  assert.deepEqual([heading.journal, heading.version, heading.entries], ["lastpull", 1, before.facts]);
  assert.equal(entries.length, before.facts);
  await page.getByText("0 facts since.").waitFor();

  await go(page, "#/more/about", "#erase");
  await press(page, "#erase");
  await press(page, "#erase-yes");
  await page.locator("#have-file").waitFor();
  await page.reload();
  await press(page, "#have-file");
  await page.locator("#file").waitFor();
  assert.match(await bringIn(page, bytes), new RegExp(`^${before.facts} facts new; 0 facts were here already`));
  assert.deepEqual(await state(page), before);
  assert.match(await bringIn(page, bytes), new RegExp(`^Nothing new: all ${before.facts} facts were here already`));
  assert.deepEqual(await state(page), before);
  await page.reload();
  assert.deepEqual(await state(page), before, "also after a reload");
});

test("two devices that count the same run exchange files both ways and add up", async (t) => {
  const one = await openCounting(t, place);
  const run = await one.evaluate(() => location.hash);
  await pull(one, 3);
  const two = await deviceWith(t, (await takeOut(one)).bytes);
  await go(two, run, "#zone");
  await shows(two, 3);
  await pull(two, 4);
  await go(one, run, "#zone");
  await pull(one, 2);

  const [fromOne, fromTwo] = [await takeOut(one), await takeOut(two)];
  assert.match(await bringIn(one, fromTwo.bytes), /^4 facts new/);
  assert.match(await bringIn(two, fromOne.bytes), /^2 facts new/);
  for (const page of [one, two]) {
    await go(page, run, "#zone");
    await shows(page, 9);
  }
  assert.deepEqual(await state(one), await state(two));
  // And on from there, in the other order, and an older file late.
  await go(one, run, "#zone");
  await pull(one, 1);
  assert.match(await bringIn(two, (await takeOut(one)).bytes), /^1 fact new/);
  assert.match(await bringIn(two, fromOne.bytes), /^Nothing new/);
  assert.deepEqual(await state(one), await state(two));
  await two.reload();
  await go(two, run, "#zone");
  await shows(two, 10);
});

test("a device undoes its own pieces, not those of another", async (t) => {
  const one = await openCounting(t, place);
  const run = await one.evaluate(() => location.hash);
  await pull(one, 2);
  const two = await deviceWith(t, (await takeOut(one)).bytes);
  await go(two, run, "#zone");
  await shows(two, 2);
  assert.ok(await two.locator("#undo").isDisabled());
});

test("a file that brings new facts is seen at once in the device's other tab", async (t) => {
  const one = await openCounting(t, place);
  const run = await one.evaluate(() => location.hash);
  const two = await deviceWith(t, (await takeOut(one)).bytes);
  await go(two, run, "#zone");
  await pull(two, 2);
  const { bytes } = await takeOut(two);
  const tab = await one.context().tab();
  await tab.goto(`${place.server.url}${run}`);
  await shows(tab, 0);
  await one.bringToFront();
  await bringIn(one, bytes);
  await tab.bringToFront();
  await shows(tab, 2);
});

test("cut, damaged and foreign files are refused in words, and nothing is changed", async (t) => {
  const page = await workedShop(t);
  const { bytes } = await takeOut(page);
  const before = await state(page);
  for (const cut of [0, 1, 30, Math.floor(bytes.length / 2), bytes.length - 1]) {
    await refuses(page, bytes.subarray(0, cut), /no archive|cut short|could not be read/);
  }
  const damaged = Buffer.from(bytes);
  damaged[Math.floor(bytes.length / 3)] ^= 0x55;
  await refuses(page, damaged, /damaged|nothing a Lastpull device wrote|no Lastpull backup|ends before|no archive/);
  await refuses(page, Buffer.from("hello"), /no archive/);
  await refuses(page, archive("photos.txt", "hello"), /no Lastpull backup/);
  await refuses(page, archive("../journal.ndjson", linesOf(bytes).join("\n")), /no Lastpull backup/);
  await refuses(page, archive("journal.ndjson", `{"journal":"other","version":1,"entries":0,"made":1}\n`), /no Lastpull backup/);
  await refuses(page, archive("journal.ndjson", `{"journal":"lastpull","version":2,"entries":0,"made":1}\n`), /newer Lastpull/);
  assert.deepEqual(await state(page), before);
});

test("hostile files are refused in words, and nothing is changed", async (t) => {
  const page = await workedShop(t);
  const lines = linesOf((await takeOut(page)).bytes);
  const before = await state(page);
  const last = JSON.parse(lines.at(-1));
  const next = (change) => backupOf([...lines, JSON.stringify({ ...last, seq: last.seq + 1, ...change })]);
  const bad = new RegExp(`Line ${lines.length + 1} of the file is nothing`);
  for (const change of [{ seq: -1 }, { seq: 0 }, { seq: 1.5 }, { seq: 2 ** 60 }, { stamp: null }, { device: "../../x" }, { extra: 1 }, { fact: { pulled: { pieces: 2_000_000, size: null } } }, { fact: { shop_named: "x".repeat(5_000) } }]) {
    await refuses(page, next(change), bad);
  }
  await refuses(page, next({ fact: { later: "x".repeat(70_000) } }), bad);
  await refuses(page, backupOf([...lines, "[".repeat(60_000)]), bad);
  await refuses(page, backupOf(lines, lines.length + 7), /ends before its last fact/);
  await refuses(page, backupOf(lines, lines.length - 2), /is nothing a Lastpull device wrote/);
  await refuses(page, backupOf(lines, 3_000_000), /larger than any backup/);
  // A bomb: a hundred megabytes in a hundred kilobytes; and one that says it is larger than it may be.
  await refuses(page, archive("journal.ndjson", Buffer.concat([Buffer.from(`${lines[0]}\n`), Buffer.alloc(100_000_000, "[")])), /Line 2 of the file/);
  await refuses(page, archive("journal.ndjson", lines.join("\n"), { claims: 0xf0000000 }), /larger than any backup|damaged|no archive/);
  // A different fact under a number that is taken.
  const forged = lines.map((line) => line.replace('{"pulled":{"pieces":1,', '{"pulled":{"pieces":900,'));
  assert.notDeepEqual(forged, lines);
  await refuses(page, backupOf(forged), /other facts under numbers that are taken/);
  assert.deepEqual(await state(page), before);
});

test("facts of a newer version are carried along unread", async (t) => {
  const page = await workedShop(t);
  const lines = linesOf((await takeOut(page)).bytes);
  const last = JSON.parse(lines.at(-1));
  const other = "0192f0c0-0000-7000-8000-000000000001";
  const later = JSON.stringify({ ...last, device: other, seq: 1, fact: { later: { words: "<b>kept</b>", n: 7 } } });
  const before = await facts(page);
  assert.match(await bringIn(page, backupOf([...lines, later])), /^1 fact new/);
  assert.equal(await facts(page), before + 1);
  await page.getByText("1 fact of a newer version").waitFor();
  const out = linesOf((await takeOut(page)).bytes).find((line) => line.includes(other));
  assert.deepEqual(JSON.parse(out).fact, { later: { words: "<b>kept</b>", n: 7 } });
});

test("markup in names is shown as it was written", async (t) => {
  const title = `<img src=x onerror="document.title='run'"> & "tees"`;
  const page = await openCounting(t, place, { job: { title } });
  assert.equal(await page.locator("#heading").innerText(), title);
});
