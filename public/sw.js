// Keeps one whole build of the app for use without a network. The build's fingerprint and its files
// are written in by src/build/build.mjs.
"use strict";

const CACHE = "lastpull-BUILD_FINGERPRINT";
const FILES = [/* FILES */];
// What never changes under its name.
const APP = "./APP_FOLDER/";

// All files or none: a half-stored build never serves a page.
self.addEventListener("install", (event) => {
  handPastTheWorker(event);
  event.waitUntil(
    caches.open(CACHE).then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: "reload" })))),
  );
});

// Where the browser can, it takes the app's files out of the cache without starting this worker first. Elsewhere, and
// should it refuse, they come through "fetch" below.
function handPastTheWorker(event) {
  if (!event.addRoutes || !self.URLPattern) return;
  const pathname = `${new URL(APP, self.registration.scope).pathname.replace(/[\\{}()*+?:]/g, "\\$&")}*`;
  const route = async () => event.addRoutes({ condition: { urlPattern: new URLPattern({ pathname }) }, source: { cacheName: CACHE } });
  event.waitUntil(route().catch(() => {}));
}

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name.startsWith("lastpull-") && name !== CACHE).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

// A new build waits until a person asks for it: nothing may change under a run on the press.
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  const scope = new URL(self.registration.scope);
  if (event.request.method !== "GET" || url.origin !== scope.origin || !url.pathname.startsWith(scope.pathname)) return;
  const wanted = event.request.mode === "navigate" ? new Request(scope.href) : event.request;
  event.respondWith(
    caches
      .open(CACHE)
      .then((cache) => cache.match(wanted, { ignoreSearch: true }))
      .then((kept) => kept ?? fetch(event.request)),
  );
});
