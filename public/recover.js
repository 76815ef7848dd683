// The message for an app that does not start or has stopped, and the way out of it. Its texts are in index.html: the
// catalogue is in the app, which may be what is missing.
//
// What is stored in the database is never touched here.
"use strict";

(() => {
  const trouble = document.getElementById("trouble");
  const start = document.querySelector("script[data-start]")?.src;
  const page = new URL("./", location.href).href;
  const path = new URL(page).pathname;

  /** Shows the message: "failed" if the app did not start, "stopped" if it ran. */
  function show(kind, error) {
    if (!trouble) return;
    trouble.dataset.kind = kind;
    trouble.classList.add("now");
    trouble.hidden = false;
    const words = document.getElementById("trouble-words");
    if (words && error) words.textContent = String(error?.message ?? error);
  }
  globalThis.lastpullStopped = (words) => show("stopped", words);

  // Running out of memory, and errors of the engine, pass by the app's own hook.
  const isEngine = (error) => typeof WebAssembly === "object" && error instanceof WebAssembly.RuntimeError;
  addEventListener("error", ({ error }) => isEngine(error) && show("stopped", error));
  addEventListener("unhandledrejection", ({ reason }) => isEngine(reason) && show("stopped", reason));

  /** Drops the stored copy of the app (not the data) and loads it from the host, if the host can be reached. */
  async function loadAfresh() {
    const answer = await fetch(`./sw.js?${Date.now()}`, { cache: "no-store" });
    if (!answer.ok) throw new Error(`${answer.status}`);
    const registration = await navigator.serviceWorker?.getRegistration("./");
    await registration?.unregister();
    for (const name of await caches.keys()) {
      // Caches had no path in their name once: such a one is ours if it has our page.
      const own = name.startsWith(`lastpull:${path}:`) || (/^lastpull-[0-9a-f]{16}$/.test(name) && (await (await caches.open(name)).match(page)));
      if (own) await caches.delete(name);
    }
    location.reload();
  }
  document.getElementById("trouble-fresh")?.addEventListener("click", () => loadAfresh().catch((error) => show("failed", error)));

  if (!start) return;
  // The same module as the page's own script: this only asks how it ended.
  import(start).catch(async (error) => {
    show("failed", error);
    // Once by itself: a stored copy of which a part is missing never starts again.
    try {
      if (sessionStorage.getItem("lastpull.fresh")) return;
      sessionStorage.setItem("lastpull.fresh", "1");
      await loadAfresh();
    } catch {
      // Without a network the message stays.
    }
  });
})();
