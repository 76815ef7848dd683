// The main journey, the same in every engine: a job from entry to the press, checks, the count, a photo, a killed
// browser, a relaunch without a network, the backup out and in.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { serve } from "../../../src/build/serve.mjs";
import { journalLines } from "../support/zip.mjs";
import { downloaded, expectNoErrors, go, press, pull, reads, shows, textOf, typeInto, waitFor, waitForCount } from "./window.mjs";

/** A JPEG drawn by the browser, as bytes. */
async function drawJpeg(window) {
  const base64 = await window.run(async () => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [2400, 1200];
    const context = canvas.getContext("2d");
    context.fillStyle = "#d8c9a8";
    context.fillRect(0, 0, 2400, 1200);
    context.fillStyle = "#24304a";
    context.fillRect(800, 400, 300, 300);
    return canvas.toDataURL("image/jpeg", 0.9).split(",")[1];
  });
  return Buffer.from(base64, "base64");
}

/** Enters a job with 36 tees and one print. Ends on its card. */
async function enterJob(window) {
  await go(window, "#/job/new", "#client");
  await typeInto(window, "#client", "Harbour Night Choir");
  await typeInto(window, "#title", "Tour tees");
  await press(window, ".save-bar [type=submit]");
  await press(window, ".page.job .lots > .button");
  await shows(window, "#garment");
  await typeInto(window, "#garment", "Midweight tee");
  for (const size of ["s", "m", "l"]) await typeInto(window, `#size-${size}`, "12");
  await press(window, ".save-bar [type=submit]");
  await shows(window, "#ink");
  await typeInto(window, "#ink", "Brick");
  await press(window, ".save-bar [type=submit]");
  await shows(window, ".run-row");
}

/** Ticks two checks and starts the run with the others skipped. Ends on the count. */
async function startRun(window) {
  await press(window, ".run-row-link");
  for (const item of ["Garment", "Ink"]) {
    await press(window, `[data-item=${item}] .tick`);
    await shows(window, `[data-item=${item}] .badge.good`);
  }
  await press(window, "#start");
  await press(window, "#start-anyway");
  await waitForCount(window, 0);
}

/** Opens the photos of the failure on screen, once the photos section is there. */
async function openPhotos(window) {
  await shows(window, "#step-photos");
  if (!(await window.run(() => document.querySelector("#step-photos").ariaExpanded === "true"))) await press(window, "#step-photos");
  await shows(window, "#step-photos[aria-expanded=true]");
}

/** Waits until the one photo on screen is drawn, and returns its size in pixels. */
const photoSize = (window) => waitFor(window, "a photo", () => {
  const image = document.querySelector(".photo-tile img");
  return image?.complete && image.naturalWidth > 0 && !document.querySelector(".photo-status progress") ? [image.naturalWidth, image.naturalHeight] : null;
});

/** Reports a failure on the press with a photo, and goes on counting. Returns the failure's hash route. */
async function addPhoto(window, folder) {
  const path = join(folder, "spot.jpg");
  writeFileSync(path, await drawJpeg(window));
  await press(window, "#failed");
  await shows(window, "#downtime");
  await openPhotos(window);
  await window.chooseFile("input[data-photos=picture]", path);
  const [width, height] = await photoSize(window);
  assert.ok(width > height && width <= 1600, `${width} × ${height}`);
  const failure = await window.run(() => location.hash);
  await press(window, "#go-on");
  await shows(window, "#zone:not(.stopped)");
  return failure;
}

const factCount = async (window) => {
  await go(window, "#/more/about", "#facts");
  return Number(await window.run(() => document.querySelector("#facts").dataset.facts));
};

/** Waits until one of these elements is there, and presses it if `selector` matches it. */
async function pressIfAsked(window, selector, otherwise) {
  const asked = await waitFor(window, `${selector} or ${otherwise}`, (selector, otherwise) => (document.querySelector(selector) ? "asked" : document.querySelector(otherwise) && "no"), selector, otherwise);
  if (asked === "asked") await press(window, selector);
}

/** Prepares and downloads the backup, and says that it arrived if the app asks. */
async function exportBackup(window) {
  await go(window, "#/more/backup", "#prepare");
  await press(window, "#prepare");
  await shows(window, "#ready");
  await press(window, "#download");
  const bytes = await downloaded(window, /^lastpull-[-\d]+\.zip$/);
  await pressIfAsked(window, "#have-backup", "#prepare");
  return bytes;
}

/** Chooses the backup file, merges it if the app asks, and returns the app's message. */
async function importBackup(window, path) {
  await shows(window, "#file");
  await window.chooseFile("#file", path);
  await pressIfAsked(window, "#import-file", "#import-result > p");
  return waitFor(window, "a message about the file", () => document.querySelector("#import-result > p")?.innerText);
}

/** Defines the journey as a test of this engine, or a skipped test that says what is missing. */
export function testJourney(engine, dist, needs) {
  const skip = engine.program ? false : `NOT RUN: this system lacks ${needs}`;
  test(`in ${engine.NAME} a job survives kill, offline relaunch and backup`, { skip }, async (t) => {
    const folder = mkdtempSync(join(tmpdir(), "lastpull-engine-"));
    const server = await serve(dist);
    let window;
    t.after(async () => {
      await window?.kill();
      await server.close();
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    });
    window = await engine.start(folder);
    t.diagnostic(window.name);
    await window.goto(server.url);
    await press(window, "#start-shop");
    await shows(window, ".page.day");
    await enterJob(window);
    await startRun(window);
    const run = await window.run(() => location.hash);
    await pull(window, 0, 3);
    const failure = await addPhoto(window, folder);
    await pull(window, 3, 2);
    await go(window, "#/more/about", "#offline-ready[data-ready=true]");
    const facts = await factCount(window);
    await go(window, run, "#zone");
    await pull(window, 5, 1);
    await expectNoErrors(window);

    // Killed as soon as the sixth piece is shown as saved; and no server from here on.
    await window.kill();
    await server.close();
    window = await engine.start(folder);
    await window.goto(`${server.url}${run}`);
    await waitForCount(window, 6);
    await pull(window, 6, 1);
    await go(window, failure, "#downtime");
    await openPhotos(window);
    const size = await photoSize(window);
    assert.equal(await factCount(window), facts + 2);

    const backup = await exportBackup(window);
    assert.equal(journalLines(backup).length, 1 + facts + 2);
    const path = join(folder, "backup.zip");
    writeFileSync(path, backup);
    await go(window, "#/more/about", "#erase");
    await press(window, "#erase");
    await press(window, "#erase-yes");
    await press(window, "#have-file");
    assert.match(await importBackup(window, path), new RegExp(`^${facts + 2} entries new; 0 entries already here`));
    await go(window, run, "#zone");
    await waitForCount(window, 7);
    await go(window, failure, "#downtime");
    await openPhotos(window);
    assert.deepEqual(await photoSize(window), size);
    await window.reload();
    await go(window, run, "#zone");
    await waitForCount(window, 7);
    await go(window, "#/", "#done-pieces");
    assert.equal(await textOf(window, "#done-pieces"), "7");
    await expectNoErrors(window);
  });
}
