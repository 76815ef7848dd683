// Starts the app. While its code is compiled, its script loads and the journal is read on a thread of its own
// (src/platform/disk.js): each alone takes about as long as another.
globalThis.lastpullFolder = new URL("./", import.meta.url).href;
const code = WebAssembly.compileStreaming(fetch(new URL("./lastpull_bg.wasm", import.meta.url)));
// A host that serves it under another type is told of by the second try, below.
code.catch(() => {});

let early;
try {
  const disk = new Worker(new URL("./disk.js", import.meta.url));
  // Until the app listens itself: src/platform/disk.rs.
  early = new Promise((give) => {
    disk.onmessage = ({ data }) => give(data);
    disk.onerror = () => give(null);
  });
  // The demo shop has a journal of its own: src/store/mod.rs.
  const demo = JSON.parse(localStorage.getItem("lastpull.device") ?? "{}")?.demo === true;
  Object.assign(disk, { early, earlyName: demo ? "lastpull-demo" : "lastpull" });
  disk.postMessage([0, disk.earlyName]);
  globalThis.lastpullDisk = disk;
} catch {
  // No threads here, or no settings that read: the page reads the journal itself.
}

const { default: init, start } = await import("./lastpull.js");
await code.then((module) => init({ module_or_path: module }), () => init());
// With the journal at hand the first thing drawn is the shop. It is not waited for longer than anyone notices.
await Promise.race([early, new Promise((go) => setTimeout(go, 120))]);
if (document.readyState === "loading") await new Promise((go) => document.addEventListener("DOMContentLoaded", go, { once: true }));
start();
