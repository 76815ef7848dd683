// Measures the built app in Chromium with the CPU slowed down four times, and prints each figure beside its budget and
// a reference measured in the same run. A missed budget is printed; it is no error. Nothing asks the page anything while
// it is measured, since Playwright's own script took up to 100 ms of a relaunch: the page reports on its console.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PHONE, launch, launchPersistent } from "../../e2e/support/browser.mjs";
import { openStep, reportFailure } from "../../e2e/support/failure.mjs";
import { backupFile, shopLines } from "../../e2e/support/journal-file.mjs";
import { serve } from "../../../src/build/serve.mjs";
import { appFiles } from "./sizes.mjs";

const SLOW = 4;
const quantile = (values, q) => values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.ceil(values.length * q) - 1)];
const row = (what, value, unit, budget, reference = "") =>
  console.log(`${what.padEnd(52)} ${`${value.toFixed(1)} ${unit}`.padStart(11)}   budget ${budget} ${unit}${value > budget ? "  MISSED" : ""}   ${reference}`);

// Only this figure, which needs no build of the app.
if (process.argv.includes("--advice")) {
  await advice(500);
  process.exit();
}

// `./dev bench --sizes` says which files and crates these are.
const files = appFiles();
const sum = (which) => files.filter(which).reduce((total, { brotli }) => total + brotli, 0) / 1000;
const first = (pattern) => sum(({ name, first }) => first && pattern.test(name)).toFixed(1);
row("first load: wasm + script + style, brotli 11", sum(({ first }) => first), "kB", 400, `wasm ${first(/wasm$/)}, script ${first(/js$/)}, style ${first(/css$/)}`);
console.log(`${"loaded after the first screen, brotli 11".padEnd(52)} ${`${sum(({ first }) => !first).toFixed(1)} kB`.padStart(11)}   the whole app ${sum(() => true).toFixed(1)} kB`);

/** Runs in the page before the app does: keeps how much memory the WebAssembly code of the page and of its workers has. */
function watchMemory() {
  const memory = { page: null, worker: 0 };
  window.wasmMegabytes = () => ({ page: (memory.page?.buffer.byteLength ?? 0) / 2 ** 20, worker: memory.worker / 2 ** 20 });
  window.forgetWorkerMemory = () => { memory.worker = 0; };
  const instantiate = WebAssembly.instantiate;
  WebAssembly.instantiate = async (...all) => {
    const made = await instantiate.apply(WebAssembly, all);
    memory.page ??= (made.instance ?? made).exports.memory ?? null;
    return made;
  };
  window.Worker = class extends Worker {
    constructor(...all) {
      super(...all);
      this.addEventListener("message", ({ data }) => { memory.worker = Math.max(memory.worker, data?.memory ?? 0); });
    }
  };
}

/** Does something; returns the seconds until `done` is there, and the memory of page and worker in MB. */
async function measured(page, begin, done) {
  await page.evaluate(() => window.forgetWorkerMemory());
  const begun = performance.now();
  await begin();
  await page.locator(done).waitFor({ timeout: 300_000 });
  return { seconds: (performance.now() - begun) / 1000, ...(await page.evaluate(() => window.wasmMegabytes())) };
}

/** A phone with a shop of this many counted pieces that was opened before and is cached for offline use. */
async function phone(pulls) {
  const folder = mkdtempSync(join(tmpdir(), "lastpull-bench-"));
  const server = await serve("dist");
  const context = await launchPersistent(folder, PHONE);
  const page = await context.newPage();
  await page.addInitScript(watchMemory);
  await page.addInitScript(() => localStorage.setItem("lastpull.device", JSON.stringify({ started: true, metric: false })));
  await page.goto(`${server.url}#/more/backup`);
  await page.locator("#file").waitFor();
  const lines = shopLines(pulls, Date.now());
  const file = join(folder, "bench.zip");
  writeFileSync(file, backupFile(lines, Date.now(), { packed: true }));
  const read = await measured(page, () => page.locator("#file").setInputFiles(file), "#import-file");
  const merged = await measured(page, () => page.locator("#import-file").tap(), "#import-result .verdict");
  const backup = await measured(page, () => page.locator("#prepare").tap(), "#ready");
  await page.evaluate(() => { location.hash = "#/more/about"; });
  await page.locator("#offline-ready[data-ready=true]").waitFor({ timeout: 60_000 });
  await page.close();
  await server.close();
  return { folder, context, url: server.url, facts: lines.length, read, merged, backup };
}

/** Text of the next console message that begins with this word. The page reports by itself, because asking it would
 * run a third of a megabyte of Playwright's script, which takes 60 ms of the measured time when slowed down. */
const nextReport = async (page, word) => (await page.waitForEvent("console", { predicate: (message) => message.text().startsWith(word), timeout: 60_000 })).text();

/** Milliseconds from navigation to a usable count, without a network. */
async function relaunch({ context, url }) {
  const times = [];
  for (let round = 0; round < 7; round++) {
    const page = await context.newPage();
    const cdp = await context.newCDPSession(page);
    await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOW });
    await page.addInitScript(() => {
      const look = () => {
        if (!document.querySelector("#zone")) return requestAnimationFrame(look);
        // In the next frame: the one with the zone has been drawn.
        requestAnimationFrame(() => console.debug("usable", performance.now()));
      };
      look();
    });
    const usable = nextReport(page, "usable");
    await page.goto(`${url}#/press`, { waitUntil: "commit" });
    times.push(Number((await usable).split(" ")[1]));
    await page.close();
  }
  return times;
}

// A first run, a year, and ten years of a shop.
const phones = [];
for (const pulls of [60, 50_000, 909_000]) phones.push(await phone(pulls));
const [empty, full, old] = phones;
const grouped = (value) => value.toLocaleString("en-US");
const relaunches = [];
for (const shop of phones) relaunches.push(quantile(await relaunch(shop), 0.5));
// Reference: how long the browser takes to open an empty page.
const emptyPage = mkdtempSync(join(tmpdir(), "lastpull-empty-"));
writeFileSync(join(emptyPage, "index.html"), '<!doctype html><title>Empty</title><p id="zone">Empty</p>');
const server = await serve(emptyPage);
const bareTimes = await relaunch({ context: full.context, url: server.url });
await server.close();
rmSync(emptyPage, { recursive: true, force: true });
row(
  `relaunch offline to a usable count, ${grouped(full.facts)} facts, ${SLOW}×`, relaunches[1], "ms", 500,
  `with ${empty.facts} facts ${relaunches[0].toFixed(1)} ms; an empty page ${quantile(bareTimes, 0.5).toFixed(1)} ms`,
);
row(`the same, ${grouped(old.facts)} facts, ${SLOW}×`, relaunches[2], "ms", Math.round(1.25 * relaunches[1]), `${(relaunches[2] / relaunches[1]).toFixed(2)} times as long`);
for (const { facts, read, merged, backup } of phones.slice(1)) {
  const most = (step) => step.page + step.worker;
  row(`import of ${grouped(facts)} facts, read and merged`, read.seconds + merged.seconds, "s", 15, `${read.seconds.toFixed(1)} + ${merged.seconds.toFixed(1)} s`);
  row(`WebAssembly memory while it is imported`, Math.max(most(read), most(merged)), "MB", 150, `page ${merged.page.toFixed(0)}, worker ${Math.max(read.worker, merged.worker).toFixed(0)} MB`);
  row(`WebAssembly memory while it is exported`, most(backup), "MB", 150, `page ${backup.page.toFixed(0)}, worker ${backup.worker.toFixed(0)} MB; ${backup.seconds.toFixed(1)} s`);
}

/** Touches the zone and measures when the count was painted and when it was on the disk. */
async function touches({ context, url }, rounds) {
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  await page.addInitScript(() => {
    // The time of the commit as the journal's worker reports it, not the time at which the page handled that message.
    window.Worker = class extends Worker {
      constructor(...all) {
        super(...all);
        this.addEventListener("message", ({ data }) => {
          const touch = window.touches?.at(-1);
          if (data.saved && touch && !touch.committed) touch.committed = data.at - performance.timeOrigin - touch.at;
        });
      }
    };
  });
  await page.goto(`${url}#/press`);
  await page.locator("#zone").waitFor();
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOW });
  await page.evaluate(() => {
    const zone = document.querySelector("#zone");
    window.touches = [];
    const report = (touch) => { if (touch.saved && touch.painted > 0) console.debug("touched"); };
    zone.addEventListener("pointerdown", (event) => window.touches.push({ at: performance.now(), lag: performance.now() - event.timeStamp }), { capture: true });
    new MutationObserver(() => {
      const touch = window.touches.at(-1);
      if (!touch || touch.painted) return;
      touch.painted = -1;
      // Most counts are on the disk before they are drawn.
      if (zone.dataset.unsaved === "0") touch.saved = performance.now() - touch.at;
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => {
          touch.painted = performance.now() - touch.at;
          report(touch);
        };
        channel.port2.postMessage(0);
      });
    }).observe(document.querySelector("#count"), { characterData: true, subtree: true, childList: true });
    new MutationObserver(() => {
      const touch = window.touches.at(-1);
      if (!touch || touch.saved || zone.dataset.unsaved !== "0") return;
      touch.saved = performance.now() - touch.at;
      report(touch);
    }).observe(zone, { attributes: true, attributeFilter: ["data-unsaved"] });
  });
  const box = await page.locator("#zone").boundingBox();
  for (let round = 0; round < rounds; round++) {
    const done = nextReport(page, "touched");
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await done;
    // Nobody pulls faster, and the app ignores a sooner touch as a bounce.
    await new Promise((go) => setTimeout(go, 250));
  }
  const times = await page.evaluate(() => window.touches);
  const bare = await page.evaluate(async () => {
    const open = indexedDB.open("bench-bare", 1);
    open.onupgradeneeded = () => open.result.createObjectStore("x");
    await new Promise((done) => { open.onsuccess = done; });
    const times = [];
    for (let key = 0; key < 200; key++) {
      const from = performance.now();
      const transaction = open.result.transaction("x", "readwrite", { durability: "strict" });
      transaction.objectStore("x").put(new Uint8Array(150), key);
      await new Promise((done) => { transaction.oncomplete = done; });
      times.push(performance.now() - from);
    }
    open.result.close();
    indexedDB.deleteDatabase("bench-bare");
    return times;
  });
  await page.close();
  return { lag: times.map((touch) => touch.lag), painted: times.map((touch) => touch.painted), saved: times.map((touch) => touch.committed), bare };
}

const { lag, painted, saved, bare } = await touches(full, 200);
const last = await touches(old, 200);
const paint = quantile(painted, 0.95);
row(`touch → painted count, p95, ${SLOW}×`, paint, "ms", 50, `p50 ${quantile(painted, 0.5).toFixed(1)} ms; the browser took ${quantile(lag, 0.5).toFixed(1)} ms more to hand the touch over`);
row(`the same, ${grouped(old.facts)} facts, ${SLOW}×`, quantile(last.painted, 0.95), "ms", Math.round(1.25 * paint), `${(quantile(last.painted, 0.95) / paint).toFixed(2)} times as long`);
row(`touch → strict commit, p99, ${SLOW}×`, quantile(saved, 0.99), "ms", 10, `p50 ${quantile(saved, 0.5).toFixed(1)} ms; a bare strict put p50 ${quantile(bare, 0.5).toFixed(1)}, p99 ${quantile(bare, 0.99).toFixed(1)} ms`);
row(`the same, ${grouped(old.facts)} facts, ${SLOW}×`, quantile(last.saved, 0.99), "ms", 10, `p50 ${quantile(last.saved, 0.5).toFixed(1)} ms`);

for (const { context, folder } of phones) {
  await context.close();
  rmSync(folder, { recursive: true, force: true });
}

/** A shop with a failure, at its photos. */
async function failure() {
  const folder = mkdtempSync(join(tmpdir(), "lastpull-bench-"));
  const server = await serve("dist");
  const context = await launchPersistent(folder, PHONE);
  const page = await context.newPage();
  page.pressMethod = "tap";
  await page.addInitScript(() => localStorage.setItem("lastpull.device", JSON.stringify({ started: true, metric: false })));
  await page.goto(`${server.url}#/more/backup`);
  await page.locator("#file").setInputFiles({ name: "bench.zip", mimeType: "application/zip", buffer: backupFile(shopLines(60, Date.now()), Date.now()) });
  await page.locator("#import-file").tap({ timeout: 60_000 });
  await page.locator("#import-result .verdict").waitFor({ timeout: 60_000 });
  await page.evaluate(() => { location.hash = "#/press"; });
  await reportFailure(page);
  await openStep(page, "photos");
  return { folder, server, context, page };
}

/** Draws pictures of this size with as much detail as a print on cloth; returns the bytes of one. */
const drawPictures = (page, width, height, count) => page.evaluate(async ([width, height, count]) => {
  window.pictures = [];
  for (let number = 0; number < count; number++) {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [width, height];
    const context = canvas.getContext("2d");
    let seed = number + 1;
    const next = () => (seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0);
    for (let n = 0; n < 4_000; n++) {
      context.fillStyle = `#${(next() >>> 8).toString(16).padStart(6, "0")}`;
      context.fillRect(next() % width, next() % height, width / 40, height / 60);
    }
    const blob = await new Promise((give) => canvas.toBlob(give, "image/jpeg", 0.9));
    window.pictures.push(new File([blob], `photo-${number}.jpg`, { type: "image/jpeg" }));
  }
  return window.pictures[0].size;
}, [width, height, count]);

/** Adds some of the drawn pictures; resolves to the milliseconds until `shown` photos are stored and visible. */
const addPhotos = (page, from, to, shown) => page.evaluate(async ([from, to, shown]) => {
  const input = document.querySelector("input[data-photos]");
  const transfer = new DataTransfer();
  for (const file of window.pictures.slice(from, to)) transfer.items.add(file);
  input.files = transfer.files;
  const begun = performance.now();
  input.dispatchEvent(new Event("change", { bubbles: true }));
  await new Promise((done) => {
    const look = () => (document.querySelectorAll(".photo-tile").length >= shown && !document.querySelector(".photo-status progress") ? done() : setTimeout(look, 2));
    look();
  });
  return performance.now() - begun;
}, [from, to, shown]);

async function photos() {
  const shop = await failure();
  const { page, context } = shop;
  const cdp = await context.newCDPSession(page);
  const size = await drawPictures(page, 4032, 3024, 9);
  await addPhotos(page, 0, 1, 1);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOW });
  const times = [];
  for (let number = 1; number < 9; number++) times.push(await addPhotos(page, number, number + 1, number + 1));
  const stored = await page.evaluate(async () => {
    const open = indexedDB.open("lastpull");
    await new Promise((done) => { open.onsuccess = done; });
    const all = open.result.transaction("photos").objectStore("photos").getAll();
    await new Promise((done) => { all.onsuccess = done; });
    open.result.close();
    return Math.max(...all.result.map((value) => value.byteLength ?? value.length ?? 0));
  });
  row(`photo of 12 MP → stored, p50, ${SLOW}×`, quantile(times, 0.5), "ms", 400, `p95 ${quantile(times, 0.95).toFixed(0)} ms; ${(size / 1e6).toFixed(1)} MB in`);
  row("largest photo stored", stored / 1000, "kB", 300);

  await cdp.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await drawPictures(page, 480, 360, 191);
  await addPhotos(page, 0, 191, 200);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOW });
  const frames = await page.evaluate(async () => {
    const times = [];
    let last = performance.now();
    const height = document.documentElement.scrollHeight;
    for (let top = 0; top < height; top += 120) {
      scrollTo(0, top);
      await new Promise((done) => requestAnimationFrame(done));
      times.push(performance.now() - last);
      last = performance.now();
    }
    return times;
  });
  console.log(`${`scroll past ${await page.locator(".photo-tile").count()} photos, a frame, p95, ${SLOW}×`.padEnd(52)} ${`${quantile(frames, 0.95).toFixed(1)} ms`.padStart(11)}   p50 ${quantile(frames, 0.5).toFixed(1)} ms, ${frames.length} frames`);
  await context.close();
  await shop.server.close();
  rmSync(shop.folder, { recursive: true, force: true });
}

await photos();

/** How long it takes to advise what to add to random pots: `tests/timing`, compiled like the app, in an empty page. */
async function advice(pots) {
  const target = process.env.CARGO_TARGET_DIR ?? "target";
  const folder = mkdtempSync(join(tmpdir(), "lastpull-timing-"));
  const run = (program, ...args) => execFileSync(program, args, { stdio: ["ignore", 2, 2] });
  run("cargo", "build", "--quiet", "--release", "--package", "lastpull-timing", "--target", "wasm32-unknown-unknown");
  run("wasm-bindgen", "--target", "web", "--no-typescript", "--out-dir", folder, "--out-name", "timing", join(target, "wasm32-unknown-unknown", "release", "lastpull_timing.wasm"));
  writeFileSync(join(folder, "index.html"), "<!doctype html><title>Timing</title>");
  const server = await serve(folder);
  const browser = await launch();
  const page = await browser.newPage();
  await page.goto(server.url);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOW });
  const { times, worse } = await page.evaluate(async (pots) => {
    const { default: init, advise } = await import("./timing.js");
    await init();
    for (let seed = 0; seed < 20; seed++) advise(1_000_000 + seed);
    const times = [];
    let worse = 0;
    for (let seed = 0; seed < pots; seed++) {
      // Each in its own task, as after a touch.
      await new Promise((done) => setTimeout(done));
      const begun = performance.now();
      const closer = advise(seed);
      times.push(performance.now() - begun);
      if (!(closer >= 0)) worse++;
    }
    return { times, worse };
  }, pots);
  row(`what to add, p99 of ${pots} random pots, ${SLOW}×`, quantile(times, 0.99), "ms", 50, `p50 ${quantile(times, 0.5).toFixed(1)} ms, most ${Math.max(...times).toFixed(1)} ms; ${worse} made worse`);
  await browser.close();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
}

await advice(500);
