// A failure on the press, from one tap to what came of it: with a wound watch, without a network.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { test } from "node:test";
import { DESK, DIST, addGarments, addRun, go, jobOnPress, newJob, openCounting, openFirst, openShop, premises, press, startCounting, toChecks } from "../support/shop.mjs";
import { pull, shows, touchZone } from "../support/counting.mjs";
import { bringIn, takeOut } from "../support/backup.mjs";
import { burnAgain, fails, goOn, heaps, judge, openStep, reads, tellSince, told } from "../support/failure.mjs";
import { fromCamera, metadata, picture } from "../support/jpeg.mjs";
import { advance } from "../support/clock.mjs";
import { serve } from "../../../src/build/serve.mjs";

const place = premises();
const NO_NETWORK = [/net::ERR_(CONNECTION_REFUSED|CONNECTION_RESET|FAILED|EMPTY_RESPONSE)/, /Failed to update a ServiceWorker|unknown error occurred when fetching the script/];

/** The photos' bytes as the database keeps them, without the byte of its version. */
async function storedPhotos(page) {
  const stored = await page.evaluate(async () => {
    const asked = (request) => new Promise((give, fail) => { request.onsuccess = () => give(request.result); request.onerror = () => fail(request.error); });
    const database = await asked(indexedDB.open("lastpull"));
    const rows = await asked(database.transaction("photos").objectStore("photos").getAll());
    database.close();
    return rows.map((row) => [...new Uint8Array(row)]);
  });
  return stored.map((bytes) => Buffer.from(bytes.slice(1)));
}

/** Opens each photo on screen as large as the window, and gives their sizes in pixels. */
async function openPhotos(page, expected) {
  await page.waitForFunction((expected) => document.querySelectorAll(".photo-tile img").length === expected, expected);
  const sizes = [];
  for (const tile of await page.locator(".photo-tile").all()) {
    await press(page, tile);
    const image = page.locator(".photo-stage img");
    await image.waitFor();
    sizes.push(await image.evaluate(async (image) => { await image.decode(); return [image.naturalWidth, image.naturalHeight]; }));
    await page.keyboard.press("Escape");
    await page.locator(".photo-view").waitFor({ state: "detached" });
  }
  return sizes;
}

/** So many pulls, each forty seconds after the one before. */
async function pullByTheWatch(page, pieces) {
  for (let piece = 0; piece < pieces; piece += 1) {
    await advance(page, 40);
    await pull(page, 1);
  }
}

test("a spot at the fourteenth piece: two photos, burned again, taken up and finished, all without a network", async (t) => {
  const server = await serve(DIST);
  t.after(() => server.close());
  const page = await openShop(t, { server, browser: place.browser }, { expected: NO_NETWORK });
  const shots = [fromCamera(await picture(page)), fromCamera(await picture(page, 480, 640))];
  for (const shot of shots) {
    const said = Buffer.concat(metadata(shot).map(({ body }) => body)).toString("latin1");
    for (const trace of ["Exif", "Invented Camera", "xmpmeta", "taken at the press"]) assert.ok(said.includes(trace), `the camera's file holds ${trace}`);
  }
  await jobOnPress(page, { garments: { "size-s": 12, "size-m": 4, "size-l": "" }, run: { screens: "A3" } });
  const run = await page.evaluate(() => location.hash);
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  await server.close();
  await go(page, run, "#zone");

  await pullByTheWatch(page, 14);
  await advance(page, 20);
  const failure = await fails(page);
  await press(page, "[data-kind=Spot]");
  await press(page, page.locator(".failure-screen"));
  await told(page, "kind", "Spot · A3");
  await page.locator("input[data-photos=camera]").setInputFiles(shots.map((buffer, at) => ({ name: `shot-${at}.jpg`, mimeType: "image/jpeg", buffer })));
  assert.deepEqual((await openPhotos(page, 2)).sort(), [[480, 640], [640, 480]]);
  await press(page, ".failure-next");
  const art = await page.locator("#art").boundingBox();
  const corner = [art.x + art.width * 0.9, art.y + art.height * 0.1];
  await page.touchscreen.tap(...corner);
  await page.getByText(/^top right: (89|90|91) % from the left, (9|10|11) % from the top$/i).first().waitFor();
  await press(page, ".failure-next");
  await press(page, '[data-since="5"]');
  await heaps(page, 9, 5, 0);
  assert.equal(await page.locator("#since-sizes").innerText(), "S × 3 · M × 2");

  await advance(page, 300);
  await burnAgain(page, "B1", () => advance(page, 300));
  // Half an hour has gone; set-up began when the screen was ready.
  await reads(page, "#downtime", /^30:\d\d$/);
  await reads(page, "#pulls-again", /^Pulls again about \d+:\d\d/);
  await judge(page, "M", "Spoiled");
  await heaps(page, 9, 4, 1);
  await press(page, "#all-good");
  await heaps(page, 13, 0, 1);
  await goOn(page);
  await shows(page, 13);
  await advance(page, 20);
  await pull(page, 1);
  await pullByTheWatch(page, 2);
  await shows(page, 16);
  await press(page, "#end");

  const ended = async () => {
    await page.locator("#ended-good").waitFor();
    assert.equal(await page.locator("#ended-good").innerText(), "16 of 16");
    assert.deepEqual(await page.locator("#ended-suspect, #ended-spoiled").allInnerTexts(), ["0", "1"]);
    assert.equal(await page.locator("#replace").innerText(), "M × 1");
    assert.match(await page.locator("#ended-stood").innerText(), /^3[01]\smin$/);
    assert.match(await page.locator("#ended-active").innerText(), /^1[12]\smin$/, "the stop is no time at work");
    const rate = Number(await page.locator("#ended-rate").innerText());
    assert.ok(rate >= 80 && rate <= 91, `a piece every forty seconds is 90 an hour, not ${rate}`);
  };
  await ended();
  await page.reload();
  await ended();
  await press(page, ".failure-bar");
  await openStep(page, "photos");
  assert.deepEqual((await openPhotos(page, 2)).sort(), [[480, 640], [640, 480]]);
  await told(page, "mark", /^top right/);
  await told(page, "remedy", "Burn again · B1");

  const stored = await storedPhotos(page);
  assert.equal(stored.length, 2);
  for (const bytes of stored) assert.deepEqual(metadata(bytes), [], "nothing but the picture is kept");
  const { bytes } = await takeOut(page);
  const other = await openFirst(t, place);
  await press(other, "#have-file");
  await other.locator("#file").waitFor();
  assert.match(await bringIn(other, bytes), /2 photos new/);
  await go(other, failure, "#downtime");
  await reads(other, "#downtime", /^3\d:\d\d$/);
  await openStep(other, "photos");
  assert.deepEqual((await openPhotos(other, 2)).sort(), [[480, 640], [640, 480]]);
  const hashes = (photos) => photos.map((photo) => createHash("sha256").update(photo).digest("hex")).sort();
  assert.deepEqual(hashes(await storedPhotos(other)), hashes(stored));
});

test("suspect pieces are judged one by one by size or all at once, and the heaps always add up", async (t) => {
  const page = await openCounting(t, place, { garments: { "size-s": 3, "size-m": 12, "size-l": "" } });
  await pull(page, 6);
  await fails(page);
  await press(page, "[data-kind=Pinhole]");
  await heaps(page, 6, 0, 0);
  await tellSince(page, 5);
  await heaps(page, 1, 5, 0);
  // Corrected by hand: one more than the quick one.
  await press(page, "#since-more");
  await heaps(page, 0, 6, 0);
  await judge(page, "S", "Spoiled");
  await heaps(page, 0, 5, 1);
  await judge(page, "M", "Good");
  await heaps(page, 1, 4, 1);
  await judge(page, "S", "Spoiled", -1);
  await heaps(page, 1, 5, 0);
  await press(page, "#all-spoiled");
  await heaps(page, 1, 0, 5);
  await press(page, ".notice-undo");
  await heaps(page, 1, 5, 0);
  await judge(page, "S", "Spoiled");
  await judge(page, "M", "Spoiled");
  await heaps(page, 1, 3, 2);
  await goOn(page);
  // What is spoiled left the count; the rest waits, and the count says so.
  await shows(page, 4);
  await page.locator(".failure-bar.open:not(.stands)").getByText("3 pieces to look at").waitFor();
  await press(page, "#stop");
  await press(page, "#end-anyway");
  assert.equal(await page.locator("#ended-good").innerText(), "1 of 15");
  assert.deepEqual(await page.locator("#ended-suspect, #ended-spoiled").allInnerTexts(), ["3", "2"]);
  assert.match(await page.locator("#ended-look").innerText(), /3 counted pieces are still suspect.*S × 1 · M × 2|3 counted pieces are still suspect.*S × 2 · M × 1/s);
  assert.equal(await page.locator("#replace").innerText(), "S × 1 · M × 1");
  await go(page, "#/", "#done-suspect");
  assert.match(await page.locator("#done-suspect").innerText(), /^3 counted/);
  await press(page, "#failed-today .failure-bar");
  await press(page, "#all-good");
  await heaps(page, 4, 0, 2);
  await page.locator("#judge .failure-ready").waitFor();
});

test("undo at the count takes back a judgement together with the piece it spoiled", async (t) => {
  const page = await openCounting(t, place);
  await pull(page, 3);
  const failure = await fails(page);
  await press(page, "[data-kind=Clog]");
  await tellSince(page, 2);
  await judge(page, "S", "Spoiled");
  await heaps(page, 1, 1, 1);
  await goOn(page);
  await shows(page, 2);
  await press(page, "#undo");
  await shows(page, 3);
  await go(page, failure, "#downtime");
  await heaps(page, 1, 2, 0);
});

test("a failure opened by mistake is deleted, the press goes on, and undo has it stand again", async (t) => {
  const page = await openCounting(t, place);
  await pull(page, 4);
  const failure = await fails(page);
  await press(page, "[data-kind=Tear]");
  await tellSince(page, 2);
  await press(page, "#all-spoiled");
  await heaps(page, 2, 0, 2);
  await advance(page, 120);
  await press(page, "#delete-failure");
  await page.locator("#zone:not(.stopped)").waitFor();
  await shows(page, 4);
  assert.equal(await page.locator(".failure-bar").count(), 0);
  await press(page, ".notice-undo");
  await page.locator("#zone.stopped").waitFor();
  await shows(page, 2);
  await press(page, ".failure-bar.stands");
  assert.equal(await page.evaluate(() => location.hash), failure);
  await reads(page, "#downtime", /^2:\d\d$/);
  await heaps(page, 2, 0, 2);
});

test("two failures on a run share no suspects, and the press tells of the one it stands for", async (t) => {
  const page = await openCounting(t, place);
  await pull(page, 4);
  const first = await fails(page);
  await press(page, "[data-kind=Pinhole]");
  await tellSince(page, 2);
  await openStep(page, "remedy");
  await press(page, "[data-remedy=Tape]");
  await goOn(page);
  await pull(page, 2);
  const second = await fails(page);
  assert.notEqual(second, first);
  await press(page, "[data-kind=RegistrationDrift]");
  await tellSince(page, "all");
  await heaps(page, 0, 6, 0);
  assert.equal(await page.locator("#since-sizes").innerText(), "S × 4", "two are the first one's");
  // The day says so before everything else, and the count too; a second tap opens no third one.
  await go(page, "#/", "#verdict");
  const bar = page.locator(".page.day > .failure-bar.stands");
  await bar.getByText("Out of register").waitFor();
  await bar.getByText(/^Press stands \d+:\d\d$/).waitFor();
  await press(page, bar);
  await page.locator("#go-on").waitFor();
  await press(page, ".head-back");
  await page.locator(".count .failure-bar.stands").waitFor();
  await press(page, "#failed");
  await page.locator("#go-on").waitFor();
  assert.equal(await page.evaluate(() => location.hash), second);
  await press(page, ".head-back");
  // A touch on the zone goes on as everywhere.
  await touchZone(page);
  await page.locator("#zone:not(.stopped)").waitFor();
  await shows(page, 6);
  await press(page, "#stop");
  await press(page, "#end-anyway");
  await page.locator("#ended-good").waitFor();
  assert.deepEqual(await page.locator(".page.ended .failure-bar strong").allInnerTexts(), ["Pinhole", "Out of register"]);
  await press(page, page.locator(".head-aside a"));
  // The job's card leads to them too.
  await page.locator(".run-row .failure-bar").nth(1).waitFor();
});

test("keys place the mark, and it says where it is", async (t) => {
  const page = await openCounting(t, place, { device: DESK });
  await pull(page, 1);
  await fails(page);
  await openStep(page, "mark");
  await page.locator("#art").focus();
  await page.keyboard.press("ArrowLeft");
  const words = page.locator("#mark-words");
  await words.getByText("centre: 50 % from the left, 50 % from the top").waitFor();
  await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("ArrowDown");
  await words.getByText("left: 30 % from the left, 52 % from the top").waitFor();
  assert.match(await page.locator("#art").getAttribute("aria-label"), /left: 30 %/);
  // What the hand left is told when the screen goes.
  await press(page, ".head-back");
  await press(page, ".failure-bar");
  await told(page, "mark", /^left: 30 %/);
  await openStep(page, "mark");
  await press(page, "#mark-clear");
  await told(page, "mark", "not told yet");
});

test("another remedy takes the burning back, and a label that is taken is refused", async (t) => {
  const page = await openShop(t, place);
  await newJob(page);
  await addGarments(page, { "size-s": 5, "size-m": "", "size-l": "" });
  await addRun(page, { screens: "A3" });
  await toChecks(page);
  await startCounting(page);
  await fails(page);
  await press(page, "[data-kind=Breakdown]");
  await press(page, ".failure-screen");
  await openStep(page, "remedy");
  await press(page, "[data-remedy=BurnAgain]");
  await page.locator("dialog #label").fill("a3");
  await press(page, "dialog [type=submit]");
  await page.locator("dialog #label-help .problem").waitFor();
  await page.locator("dialog #label").fill("B1");
  await press(page, "dialog [type=submit]");
  await page.locator("#burning").waitFor();
  await press(page, "[data-step=Coat]");
  await page.locator("[data-step=Coat][aria-pressed=true]").waitFor();
  await press(page, "[data-step=Coat]");
  await page.locator("[data-step=Coat][aria-pressed=false]").waitFor();
  await press(page, "[data-remedy=Clean]");
  await page.locator("#burning").waitFor({ state: "detached" });
  await page.locator(".caution").getByText("safety data sheets decide").waitFor();
  await told(page, "remedy", /^Clean it$/);
});
