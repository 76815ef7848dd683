// Starts the app. The WebAssembly code compiles while its script loads and while a worker reads the journal
// (src/platform/workers/disk.js): the three take about equally long. The journal is waited for 120 ms at most.
// Not inside another site's page, where a click could be led to the erase button unseen.
if (globalThis.top !== globalThis.self) throw new Error("Lastpull does not run inside another page.");

globalThis.lastpullFolder = new URL("./", import.meta.url).href;

/** Whether a run on the press began with another build than this page's. Answers yes only once in a row. */
async function runHoldsAnotherBuild() {
  try {
    if (sessionStorage.getItem("lastpull.past-worker")) {
      sessionStorage.removeItem("lastpull.past-worker");
      return false;
    }
    // Written by the service worker: public/sw.js.
    const page = new URL("./", location.href);
    const state = { cacheName: `lastpull:${page.pathname}:state` };
    const build = await caches.match(`${page.href}?build`, state);
    if (!build || !(await caches.match(`${page.href}?held`, state))) return false;
    const held = await caches.match(page.href, { cacheName: await build.text() });
    const folder = new URL(globalThis.lastpullFolder).pathname.split("/").at(-2);
    if (!held || (await held.text()).includes(folder)) return false;
    sessionStorage.setItem("lastpull.past-worker", "1");
    return true;
  } catch {
    return false;
  }
}

// The browser may load a page past the service worker: by force, or because the worker did not start in time. That page
// is the host's newest, and no build may change while a run is on the press. Loading again goes through the worker.
if (navigator.serviceWorker && !navigator.serviceWorker.controller && (await runHoldsAnotherBuild())) {
  location.reload();
  await new Promise(() => {});
}

const code = WebAssembly.compileStreaming(fetch(new URL("./lastpull_bg.wasm", import.meta.url)));
// Streaming fails if a host serves the file under another content type; `init()` below then loads it itself.
code.catch(() => {});

// Two copies of the app below one origin do not share their data: the first that is opened has the plain names, every
// other adds its path (src/platform/scope.rs).
const path = new URL("./", location.href).pathname;
globalThis.lastpullHome = path;
try {
  globalThis.lastpullHome = localStorage.getItem("lastpull.home") ?? path;
  localStorage.setItem("lastpull.home", globalThis.lastpullHome);
} catch {
  // Local storage is switched off, and with it every other storage.
}
globalThis.lastpullScope = globalThis.lastpullHome === path ? "" : `:${path}`;

let early;
try {
  const disk = new Worker(new URL("./disk.js", import.meta.url));
  // The worker's first answer, kept until the app reads it (src/platform).
  early = new Promise((resolve) => {
    disk.onmessage = ({ data }) => resolve(data);
    disk.onerror = () => resolve(null);
  });
  // The demo shop has its own database (src/store/mod.rs).
  const demo = JSON.parse(localStorage.getItem(`lastpull.device${globalThis.lastpullScope}`) ?? "{}")?.demo === true;
  Object.assign(disk, { early, earlyName: `${demo ? "lastpull-demo" : "lastpull"}${globalThis.lastpullScope}` });
  disk.postMessage([0, disk.earlyName]);
  globalThis.lastpullJournalWorker = disk;
} catch {
  // No workers in this browser, or unreadable settings: the app reads the journal on the main thread.
}

const { default: init, start } = await import("./lastpull.js");
await code.then((module) => init({ module_or_path: module }), () => init());
// With the journal read, the first frame already shows the shop. Wait for it, but not for a noticeable time.
await Promise.race([early, new Promise((resolve) => setTimeout(resolve, 120))]);
if (document.readyState === "loading") await new Promise((resolve) => document.addEventListener("DOMContentLoaded", resolve, { once: true }));
start();
document.getElementById("trouble")?.setAttribute("hidden", "");
