// A failure on the press, from the report to its outcome, with the clock moved forward and without a network.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { test } from "node:test";
import { exportBackup, importBackup } from "../support/backup.mjs";
import { DESK } from "../support/browser.mjs";
import { advance } from "../support/clock.mjs";
import { OFFLINE_ERRORS } from "../support/console-errors.mjs";
import { pull, touchZone, waitForCount } from "../support/counting.mjs";
import { burnNewScreen, enterPiecesSince, judge, openStep, reportFailure, resumePress, waitForPieces, waitForStepSummary } from "../support/failure.mjs";
import { drawJpeg, metadataSegments, withCameraMetadata } from "../support/jpeg.mjs";
import { go, hashOf, press, waitForText, waitUntil } from "../support/page.mjs";
import { openFirst, openShop, ownServer, testServer } from "../support/setup.mjs";
import { addGarments, addRun, newJob, openChecks, openCounting, putJobOnPress, startCounting } from "../support/shop.mjs";
import { touchInput } from "../support/touch.mjs";

const app = testServer();

/** Bytes of the stored photos, without their version byte. */
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

/** Opens each photo and returns their sizes in pixels. */
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

/** Counts this many pieces, forty seconds apart by the page's clock. */
async function pullEveryFortySeconds(page, pieces) {
  for (let piece = 0; piece < pieces; piece += 1) {
    await advance(page, 40);
    await pull(page, 1);
  }
}

test("a failed screen is photographed, burned again and finished offline", async (t) => {
  const { app: own, server } = await ownServer(t, app);
  const page = await openShop(t, own, { expectedErrors: OFFLINE_ERRORS });
  const photos = [withCameraMetadata(await drawJpeg(page)), withCameraMetadata(await drawJpeg(page, 480, 640))];
  for (const photo of photos) {
    const metadata = Buffer.concat(metadataSegments(photo).map(({ body }) => body)).toString("latin1");
    for (const trace of ["Exif", "Invented Camera", "xmpmeta", "taken at the press"]) assert.ok(metadata.includes(trace), `the camera's file holds ${trace}`);
  }
  await putJobOnPress(page, { garments: { "size-s": 12, "size-m": 4, "size-l": "" }, run: { screens: "A3" } });
  const run = await hashOf(page);
  await go(page, "#/more/about", "#offline-ready[data-ready=true]");
  await server.close();
  await go(page, run, "#zone");

  await pullEveryFortySeconds(page, 14);
  await advance(page, 20);
  const failure = await reportFailure(page);
  await press(page, "[data-kind=Spot]");
  await press(page, page.locator(".failure-screen"));
  await waitForStepSummary(page, "kind", "Spot · A3");
  await page.locator("input[data-photos=camera]").setInputFiles(photos.map((buffer, at) => ({ name: `shot-${at}.jpg`, mimeType: "image/jpeg", buffer })));
  assert.deepEqual((await openPhotos(page, 2)).sort(), [[480, 640], [640, 480]]);
  await press(page, ".failure-next");
  // Where it is once it stands still: the photos above it are drawn when they have been read.
  const art = page.locator("#art");
  const { width, height } = await art.boundingBox();
  await art.tap({ position: { x: width * 0.9, y: height * 0.1 } });
  await page.getByText(/^top right: (89|90|91)% from the left, (9|10|11)% from the top$/i).first().waitFor();
  await press(page, ".failure-next");
  await press(page, '[data-since="5"]');
  await waitForPieces(page, 9, 5, 0);
  assert.equal(await page.locator("#since-sizes").innerText(), "S × 3 · M × 2");

  await advance(page, 300);
  await burnNewScreen(page, "B1", () => advance(page, 300));
  // Half an hour has passed; set-up began when the screen was ready.
  await waitForText(page, "#downtime", /^30:\d\d$/);
  await waitForText(page, "#pulls-again", /^Printing again about \d+:\d\d/);
  await judge(page, "M", "Spoiled");
  await waitForPieces(page, 9, 4, 1);
  await press(page, "#all-good");
  await waitForPieces(page, 13, 0, 1);
  await resumePress(page);
  await waitForCount(page, 13);
  await advance(page, 20);
  await pull(page, 1);
  await pullEveryFortySeconds(page, 2);
  await waitForCount(page, 16);
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
  await waitForStepSummary(page, "mark", /^top right/);
  await waitForStepSummary(page, "remedy", "Expose again · B1");

  const stored = await storedPhotos(page);
  assert.equal(stored.length, 2);
  for (const bytes of stored) assert.deepEqual(metadataSegments(bytes), [], "nothing but the picture is kept");
  const { bytes } = await exportBackup(page);
  const other = await openFirst(t, app);
  await press(other, "#have-file");
  await other.locator("#file").waitFor();
  assert.match(await importBackup(other, bytes), /2 new photos/);
  await go(other, failure, "#downtime");
  await waitForText(other, "#downtime", /^3\d:\d\d$/);
  await openStep(other, "photos");
  assert.deepEqual((await openPhotos(other, 2)).sort(), [[480, 640], [640, 480]]);
  const hashes = (photos) => photos.map((photo) => createHash("sha256").update(photo).digest("hex")).sort();
  assert.deepEqual(hashes(await storedPhotos(other)), hashes(stored));
});

test("suspect pieces are judged by size or at once, and the sums agree", async (t) => {
  const page = await openCounting(t, app, { garments: { "size-s": 3, "size-m": 12, "size-l": "" } });
  await pull(page, 6);
  await reportFailure(page);
  await press(page, "[data-kind=Pinhole]");
  await waitForPieces(page, 6, 0, 0);
  await enterPiecesSince(page, 5);
  await waitForPieces(page, 1, 5, 0);
  // One more than the quick choice.
  await press(page, "#since-more");
  await waitForPieces(page, 0, 6, 0);
  await judge(page, "S", "Spoiled");
  await waitForPieces(page, 0, 5, 1);
  await judge(page, "M", "Good");
  await waitForPieces(page, 1, 4, 1);
  await judge(page, "S", "Spoiled", -1);
  await waitForPieces(page, 1, 5, 0);
  await press(page, "#all-spoiled");
  await waitForPieces(page, 1, 0, 5);
  await press(page, ".notice-undo");
  await waitForPieces(page, 1, 5, 0);
  await judge(page, "S", "Spoiled");
  await judge(page, "M", "Spoiled");
  await waitForPieces(page, 1, 3, 2);
  await resumePress(page);
  // Spoiled pieces are off the count; it says how many are still to be judged.
  await waitForCount(page, 4);
  await page.locator(".failure-bar.open:not(.stands)").getByText("3 pieces to check").waitFor();
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
  await waitForPieces(page, 4, 0, 2);
  await page.locator("#judge .failure-ready").waitFor();
});

test("undo at the count removes a judgement and its spoiled piece", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 3);
  const failure = await reportFailure(page);
  await press(page, "[data-kind=Clog]");
  await enterPiecesSince(page, 2);
  await judge(page, "S", "Spoiled");
  await waitForPieces(page, 1, 1, 1);
  await resumePress(page);
  await waitForCount(page, 2);
  await press(page, "#undo");
  await waitForCount(page, 3);
  await go(page, failure, "#downtime");
  await waitForPieces(page, 1, 2, 0);
});

test("deleting a failure resumes the press, and undo stops it again", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 4);
  const failure = await reportFailure(page);
  await press(page, "[data-kind=Tear]");
  await enterPiecesSince(page, 2);
  await press(page, "#all-spoiled");
  await waitForPieces(page, 2, 0, 2);
  await advance(page, 120);
  await press(page, "#delete-failure");
  await page.locator("#zone:not(.stopped)").waitFor();
  await waitForCount(page, 4);
  assert.equal(await page.locator(".failure-bar").count(), 0);
  await press(page, ".notice-undo");
  await page.locator("#zone.stopped").waitFor();
  await waitForCount(page, 2);
  await press(page, ".failure-bar.stands");
  await waitForText(page, "#downtime", /^2:\d\d$/);
  assert.equal(await hashOf(page), failure);
  await waitForPieces(page, 2, 0, 2);
});

test("two failures of a run share no suspect pieces", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 4);
  const first = await reportFailure(page);
  await press(page, "[data-kind=Pinhole]");
  await enterPiecesSince(page, 2);
  await openStep(page, "remedy");
  await press(page, "[data-remedy=Tape]");
  await resumePress(page);
  await pull(page, 2);
  const second = await reportFailure(page);
  assert.notEqual(second, first);
  await press(page, "[data-kind=RegistrationDrift]");
  await enterPiecesSince(page, "all");
  await waitForPieces(page, 0, 6, 0);
  assert.equal(await page.locator("#since-sizes").innerText(), "S × 4", "two are the first one's");
  // The day page and the count show it first; reporting again opens no third failure.
  await go(page, "#/", "#verdict");
  const bar = page.locator(".page.day > .failure-bar.stands");
  await bar.getByText("Out of register").waitFor();
  await bar.getByText(/^Press down \d+:\d\d$/).waitFor();
  await press(page, bar);
  await page.locator("#go-on").waitFor();
  await press(page, ".head-back");
  await page.locator(".count .failure-bar.stands").waitFor();
  await press(page, "#failed");
  await page.locator("#go-on").waitFor();
  assert.equal(await hashOf(page), second);
  await press(page, ".head-back");
  // A touch on the zone resumes the run.
  await touchZone(page);
  await page.locator("#zone:not(.stopped)").waitFor();
  await waitForCount(page, 6);
  await press(page, "#stop");
  await press(page, "#end-anyway");
  await page.locator("#ended-good").waitFor();
  assert.deepEqual(await page.locator(".page.ended .failure-bar strong").allInnerTexts(), ["Pinhole", "Out of register"]);
  await press(page, page.locator(".head-aside a"));
  // The job's card lists them too.
  await page.locator(".run-row .failure-bar").nth(1).waitFor();
});

test("the keyboard moves the mark, and its position is announced", async (t) => {
  const page = await openCounting(t, app, { device: DESK });
  await pull(page, 1);
  await reportFailure(page);
  await openStep(page, "mark");
  await page.locator("#art").focus();
  await page.keyboard.press("ArrowLeft");
  const markText = page.locator("#mark-words");
  await markText.getByText("center: 50% from the left, 50% from the top").waitFor();
  await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("Shift+ArrowLeft");
  await page.keyboard.press("ArrowDown");
  await markText.getByText("left: 30% from the left, 52% from the top").waitFor();
  assert.match(await page.locator("#art").getAttribute("aria-label"), /left: 30%/);
  // The last position is saved when the page is left.
  await press(page, ".head-back");
  await press(page, ".failure-bar");
  await waitForStepSummary(page, "mark", "left");
  await openStep(page, "mark");
  await press(page, "#mark-clear");
  await waitForStepSummary(page, "mark", "not entered");
});

test("a second finger moves no mark; a cancelled drag puts it back", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 1);
  await reportFailure(page);
  await openStep(page, "mark");
  await page.locator("#art").evaluate((art) => {
    art.scrollIntoView({ block: "center" });
    window.marks = [];
    const words = document.querySelector("#mark-words");
    new MutationObserver(() => window.marks.push(words.innerText)).observe(words, { childList: true, characterData: true, subtree: true });
  });
  let art = await page.locator("#art").boundingBox();
  const finger = (id, right, down) => ({ id, x: art.x + art.width * right, y: art.y + art.height * down });
  /** In these tens of percent: a finger is placed by whole pixels. */
  const waitForMark = (right, down) => waitForText(page, "#mark-words", new RegExp(`: ${right}\\d% from the left, ${down}\\d% from the top`));
  const touch = await touchInput(page);
  await touch.down(finger(1, 0.25, 0.25));
  await touch.move(finger(1, 0.35, 0.35));
  await waitForMark(3, 3);
  await touch.down(finger(1, 0.35, 0.35), finger(2, 0.85, 0.85));
  await touch.move(finger(1, 0.35, 0.35), finger(2, 0.95, 0.95));
  await touch.up(finger(2, 0.95, 0.95));
  await touch.move(finger(1, 0.45, 0.35));
  await waitForMark(4, 3);
  await touch.up();
  const marks = await page.evaluate(() => window.marks);
  assert.deepEqual(marks.filter((words) => /[89]\d%/.test(words)), [], "where the second finger was");
  await waitForStepSummary(page, "mark", "center");

  // What was recorded may take a line more above.
  art = await page.locator("#art").boundingBox();
  await touch.down(finger(1, 0.75, 0.75));
  await touch.move(finger(1, 0.95, 0.75));
  await waitForMark(9, 7);
  await touch.cancel();
  await waitForMark(4, 3);
  // Not dragged on.
  await touch.down(finger(1, 0.65, 0.65));
  await waitForMark(6, 6);
  await touch.cancel();
  await waitForMark(4, 3);
  await press(page, ".head-back");
  await press(page, ".failure-bar");
  await waitForStepSummary(page, "mark", "center");
});

test("another remedy cancels the new screen; a used label is refused", async (t) => {
  const page = await openShop(t, app);
  await newJob(page);
  await addGarments(page, { "size-s": 5, "size-m": "", "size-l": "" });
  await addRun(page, { screens: "A3" });
  await openChecks(page);
  await startCounting(page);
  await reportFailure(page);
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
  await page.locator(".caution").getByText("safety data sheets (SDS)").waitFor();
  await waitForStepSummary(page, "remedy", /^Clean it$/);
});

test("a burned screen is offered again after a tap on another remedy", async (t) => {
  const page = await openCounting(t, app, { run: { screens: "A3" } });
  await pull(page, 1);
  await reportFailure(page);
  await press(page, "[data-kind=Spot]");
  await press(page, page.locator(".failure-screen"));
  await waitForStepSummary(page, "kind", "Spot · A3");
  await openStep(page, "remedy");
  await press(page, "[data-remedy=BurnAgain]");
  await page.locator("dialog #label").fill("B6");
  await press(page, "dialog [type=submit]");
  for (const step of ["Coat", "Dry", "Expose"]) {
    await press(page, `[data-step=${step}]`);
    await page.locator(`[data-step=${step}][aria-pressed=true]`).waitFor();
  }
  await press(page, "[data-remedy=Tape]");
  await page.locator("#burning").waitFor({ state: "detached" });
  await openStep(page, "remedy");
  await press(page, "[data-remedy=BurnAgain]");
  await page.locator("dialog [data-stock=B6]").getByText("already exposed for this").waitFor();
  await press(page, "dialog [data-stock=B6]");
  await page.locator("[data-step=Expose][aria-pressed=true]").waitFor();
  await page.locator("[data-step=WashDry][aria-pressed=false]").waitFor();
});

test("notes are saved as soon as the page is hidden", async (t) => {
  const page = await openCounting(t, app);
  await pull(page, 1);
  await reportFailure(page);
  // A hidden page may get no time to wait for a pause in the typing.
  await page.evaluate(() => {
    const { setTimeout } = window;
    window.setTimeout = (then, wait, ...rest) => (wait < 500 ? setTimeout(then, wait, ...rest) : 0);
  });
  await page.locator("#failure-notes").fill("Tape came off");
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange", { bubbles: true })));
  // In the tail of the journal, as bytes.
  await waitUntil(page, async () => {
    const asked = (request) => new Promise((give, fail) => { request.onsuccess = () => give(request.result); request.onerror = () => fail(request.error); });
    const database = await asked(indexedDB.open("lastpull"));
    const rows = await asked(database.transaction("tail").objectStore("tail").getAll());
    database.close();
    return rows.some((row) => new TextDecoder().decode(row).includes("Tape came off"));
  });
  await page.reload();
  await page.waitForFunction(() => document.querySelector("#failure-notes")?.value === "Tape came off");
});
