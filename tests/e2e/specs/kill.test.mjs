// The browser is killed again and again on every path that writes: nothing that was shown as saved is lost, and the
// shop opens. A few kills by default; at least a thousand with LASTPULL_LONG=1.
import assert from "node:assert/strict";
import { test } from "node:test";
import { setTimeout } from "node:timers/promises";
import { expectWholeJournal, factCount } from "../support/backup.mjs";
import { now } from "../support/clock.mjs";
import { pull, touchZone, waitForCount, waitUntilSaved, zoneState } from "../support/counting.mjs";
import { openStep, reportFailure } from "../support/failure.mjs";
import { backupFile, id, shopLines } from "../support/journal-file.mjs";
import { drawJpeg } from "../support/jpeg.mjs";
import { discard, profile, startKillable } from "../support/killable.mjs";
import { LONG_TAIL, MORE_THAN_LONG_TAIL, countLongTail, tailLength } from "../support/long-tail.mjs";
import { go, hashOf, press } from "../support/page.mjs";
import { testServer } from "../support/setup.mjs";
import { putJobOnPress } from "../support/shop.mjs";

const app = testServer();
const LONG = Boolean(process.env.LASTPULL_LONG);
/** Kills on each path. */
const KILLS = LONG
  ? { counting: 240, packing: 200, importing: 200, merging: 60, photos: 200, erasing: 120, opening: 60 }
  : { counting: 9, packing: 3, importing: 3, merging: 3, photos: 3, erasing: 3, opening: 1 };

/** Numbers from 0 to 1, the same ones in each run (mulberry32). */
function randomNumbers(seed) {
  return () => {
    seed = (seed + 0x6d2b79f5) | 0;
    let word = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    word = (word + Math.imul(word ^ (word >>> 7), 61 | word)) ^ word;
    return ((word ^ (word >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * Kills the browser while it works, in turn: some time after the work began, soon after its first write, and as soon as
 * the page says that it is done. Returns whether the page had said so.
 */
async function killWhile(context, round, { began, wrote, done }) {
  let acknowledged = false;
  const told = done.then(() => { acknowledged = true; }, () => {});
  wrote.catch(() => {});
  await began;
  if (round % 3 === 0) await setTimeout(context.random() * 300);
  if (round % 3 === 1) await wrote.then(() => setTimeout(context.random() * 30));
  if (round % 3 === 2) await told;
  const answer = acknowledged;
  await context.kill();
  return answer;
}

/** A test of one path. `work` gets what it needs to kill the browser and start it again. */
function killTest(path, title, work) {
  test(`${title} (${KILLS[path]} kills)`, async (t) => {
    const random = randomNumbers(path.length);
    const total = { kills: 0, acknowledged: 0, lost: 0, unfinished: 0 };
    const context = {
      t,
      random,
      total,
      browser: null,
      /** Starts the browser on a folder and opens the app. */
      async open(folder, hash = "") {
        context.browser = await startKillable(folder);
        await context.browser.page.goto(`${app.server.url}${hash}`);
        return context.browser.page;
      },
      async kill() {
        await context.close();
        total.kills += 1;
      },
      /** The end of a shop: killed as well, at rest. */
      async close() {
        await context.browser.kill();
        assert.deepEqual(context.browser.page.errors, [], "no errors inside the page");
      },
    };
    t.after(() => context.browser?.kill());
    await work(context);
    await context.close();
    t.diagnostic(`${path}: ${total.kills} kills, ${total.acknowledged} acknowledged, ${total.lost} lost, ${total.unfinished} in flight and not there`);
    assert.equal(total.lost, 0);
    assert.ok(total.kills >= KILLS[path]);
  });
}

/** Opens a shop with a run on the press. Returns the run's hash route. */
async function openPress(context, folder) {
  const page = await context.open(folder);
  await press(page, "#start-shop");
  await putJobOnPress(page, { garments: { "size-s": 900, "size-m": 900, "size-l": 900 } });
  return hashOf(page);
}

/** A folder with what `prepare` did in the app, to be copied for each round. The browser in it was killed at rest. */
async function template(context, prepare) {
  const folder = profile(context.t);
  const prepared = await prepare(folder);
  await context.close();
  return { folder, ...prepared };
}

killTest("counting", "no saved piece is lost to a kill while counting", async (context) => {
  const { random, total } = context;
  const folder = profile(context.t);
  const run = await openPress(context, folder);
  let saved = 0;
  for (let round = 0; total.kills < KILLS.counting; round += 1) {
    const { page } = context.browser;
    for (let piece = 0; piece <= round % 3; piece += 1) {
      await touchZone(page);
      await waitUntilSaved(page, saved + 1);
      saved += 1;
      total.acknowledged += 1;
    }
    // Every other round the browser is killed during a touch.
    const inFlight = round % 2;
    if (inFlight) touchZone(page).catch(() => {});
    if (inFlight) await setTimeout(random() * 12);
    await context.kill();
    const opened = await context.open(folder, run);
    await opened.locator("#zone").waitFor();
    const { good, unsaved } = await zoneState(opened);
    assert.equal(unsaved, 0);
    total.lost += Math.max(0, saved - good);
    assert.ok(good >= saved && good <= saved + inFlight, `round ${round}: ${saved} were saved, ${inFlight} in flight, ${good} are there`);
    total.unfinished += saved + inFlight - good;
    saved = good;
  }
  await waitForCount(context.browser.page, saved);
  await expectWholeJournal(context.browser.page);
});

killTest("packing", "a browser killed while it packs the journal loses no fact", async (context) => {
  const { random, total } = context;
  const long = await template(context, async (folder) => {
    const run = await openPress(context, folder);
    return { run, facts: await countLongTail(context.browser.page) };
  });
  while (total.kills < KILLS.packing) {
    const folder = profile(context.t, long.folder);
    let pieces = MORE_THAN_LONG_TAIL;
    let facts = long.facts;
    // Killed again and again in one shop, until it has been packed.
    for (let packed = false; !packed && total.kills < KILLS.packing; ) {
      let page = await context.open(folder, long.run);
      await waitForCount(page, pieces);
      const packing = context.browser.wrote("segments");
      await pull(page, 1);
      pieces += 1;
      facts += 1;
      total.acknowledged += 1;
      await packing;
      await setTimeout(random() * 25);
      await context.kill();
      page = await context.open(folder, long.run);
      await waitForCount(page, pieces).catch((error) => { total.lost += 1; throw error; });
      assert.equal(await expectWholeJournal(page), facts);
      packed = (await tailLength(page)) < LONG_TAIL;
      await context.close();
    }
    discard(folder);
  }
});

/** Size in bytes of a file from which on a worker reads and merges it, and how its step is told that comes before it writes. */
const LARGE_FILE = 400_000;
const STORING = "2";

for (const [path, title, pulls, wrote] of [
  ["importing", "a kill during an import leaves the whole file or nothing", 300, "segments"],
  ["merging", "a kill while a worker merges leaves the whole file or nothing", 2700, STORING],
]) {
  killTest(path, title, async (context) => {
    const { total } = context;
    const folder = profile(context.t);
    const run = await openPress(context, folder);
    await pull(context.browser.page, 2);
    let pieces = 2;
    let facts = await factCount(context.browser.page);
    for (let round = 0; total.kills < KILLS[path]; round += 1) {
      const { page } = context.browser;
      await go(page, run, "#zone");
      await pull(page, 1);
      pieces += 1;
      facts += 1;
      // Each round's file is another device's.
      const lines = shopLines(pulls, now()).map((line) => line.replace(id(1), id(0x1000 + round)));
      const buffer = backupFile(lines, now());
      assert.equal(buffer.length >= LARGE_FILE, path === "merging");
      await go(page, "#/more/backup", "#file");
      // The app may show what is in the file first.
      press(page, "#import-file").catch(() => {});
      const acknowledged = await killWhile(context, round, {
        wrote: context.browser.wrote(wrote),
        began: page.locator("#file").setInputFiles({ name: "other.zip", mimeType: "application/zip", buffer }),
        done: page.locator("#import-result").filter({ hasText: `${lines.length} entries new` }).waitFor(),
      });
      const opened = await context.open(folder, run);
      await waitForCount(opened, pieces).catch((error) => { total.lost += 1; throw error; });
      const there = await expectWholeJournal(opened);
      assert.ok(there === facts + lines.length || (there === facts && !acknowledged), `round ${round}: ${facts} facts and ${lines.length} in the file, acknowledged: ${acknowledged}; ${there} are there`);
      total.acknowledged += acknowledged ? lines.length : 0;
      total.unfinished += there === facts ? lines.length : 0;
      facts = there;
    }
  });
}

/** Opens the photos of a failure, and each of them in full: a tile is drawn from a small copy. Returns their number. */
async function drawnPhotos(page, failure) {
  await go(page, failure, "#downtime");
  await openStep(page, "photos");
  const tiles = await page.locator(".photo-tile").all();
  for (const tile of tiles) {
    await press(page, tile);
    await page.waitForFunction(() => document.querySelector(".photo-stage img")?.naturalWidth >= 640);
    await page.keyboard.press("Escape");
    await page.locator(".photo-view").waitFor({ state: "detached" });
  }
  return tiles.length;
}

killTest("photos", "a kill while a photo is stored leaves all of it or nothing", async (context) => {
  const { total } = context;
  const empty = await template(context, async (folder) => {
    await openPress(context, folder);
    return { failure: await reportFailure(context.browser.page) };
  });
  for (let round = 0; total.kills < KILLS.photos; ) {
    const folder = profile(context.t, empty.folder);
    let photos = 0;
    await context.open(folder, empty.failure);
    for (const end = round + 8; round < end && total.kills < KILLS.photos; round += 1) {
      const { page } = context.browser;
      assert.equal(await drawnPhotos(page, empty.failure), photos);
      const buffer = await drawJpeg(page, 640 + round, 480);
      const acknowledged = await killWhile(context, round, {
        wrote: context.browser.wrote("photos"),
        began: page.locator("input[data-photos=picture]").setInputFiles({ name: "spot.jpg", mimeType: "image/jpeg", buffer }),
        done: page.waitForFunction((n) => document.querySelectorAll(".photo-tile img").length === n && !document.querySelector(".photo-status progress"), photos + 1, { polling: 10 }),
      });
      const opened = await context.open(folder, empty.failure);
      const there = await drawnPhotos(opened, empty.failure);
      assert.ok(there === photos + 1 || (there === photos && !acknowledged), `round ${round}: ${photos} photos and one more, acknowledged: ${acknowledged}; ${there} are there`);
      total.acknowledged += acknowledged ? 1 : 0;
      total.unfinished += there === photos ? 1 : 0;
      photos = there;
    }
    await expectWholeJournal(context.browser.page);
    await context.close();
    discard(folder);
  }
});

killTest("erasing", "a kill during an erasure leaves everything or nothing", async (context) => {
  const { total } = context;
  const full = await template(context, async (folder) => {
    const run = await openPress(context, folder);
    await pull(context.browser.page, 3);
    const failure = await reportFailure(context.browser.page);
    await drawnPhotos(context.browser.page, failure);
    await context.browser.page.locator("input[data-photos=picture]").setInputFiles({ name: "spot.jpg", mimeType: "image/jpeg", buffer: await drawJpeg(context.browser.page) });
    await context.browser.page.locator(".photo-tile img").waitFor();
    return { run, failure, facts: await factCount(context.browser.page) };
  });
  let folder = null;
  for (let round = 0; total.kills < KILLS.erasing; round += 1) {
    folder ??= profile(context.t, full.folder);
    let page = await context.open(folder);
    await page.locator(".page.day").waitFor();
    await go(page, "#/more/about", "#erase");
    await press(page, "#erase");
    const acknowledged = await killWhile(context, round, {
      wrote: context.browser.wrote("segments"),
      began: press(page, "#erase-yes"),
      done: page.locator("#start-shop").waitFor(),
    });
    page = await context.open(folder);
    await page.locator("#start-shop, .page.day").first().waitFor();
    // The settings go after the facts: killed in between, the shop opens empty instead of with the welcome.
    if (await page.locator("#start-shop").count()) {
      await press(page, "#start-shop");
      await page.locator(".page.day").waitFor();
    }
    const erased = (await factCount(page)) === 0;
    assert.ok(erased || !acknowledged, "what was shown as erased is gone");
    total.acknowledged += acknowledged ? 1 : 0;
    total.unfinished += erased ? 0 : 1;
    if (erased) {
      await putJobOnPress(page);
      await pull(page, 1);
    } else {
      assert.equal(await expectWholeJournal(page), full.facts);
      assert.equal(await drawnPhotos(page, full.failure), 1);
    }
    await context.close();
    if (erased) discard(folder);
    folder = erased ? null : folder;
  }
});

killTest("opening", "after a kill at the first start the shop opens", async (context) => {
  const { random, total } = context;
  while (total.kills < KILLS.opening) {
    const folder = profile(context.t);
    for (let round = 0; round < 3 && total.kills < KILLS.opening; round += 1) {
      context.browser = await startKillable(folder);
      context.browser.page.goto(app.server.url).catch(() => {});
      await setTimeout(random() * 900);
      await context.kill();
    }
    const page = await context.open(folder);
    await press(page, "#start-shop");
    await page.locator(".page.day").waitFor();
    await putJobOnPress(page);
    await pull(page, 1);
    total.acknowledged += 1;
    await context.close();
    discard(folder);
  }
});
