// Keeps one complete build of the app in a cache, so that it opens without a network.
"use strict";

// src/build/build.mjs replaces this value: the cache's name, the folder of the app's files, and every file to cache.
const MANIFEST = { cache: "", folder: "", files: [] };

// All files or none: an incomplete build never serves a page.
self.addEventListener("install", (event) => {
  serveAppFilesFromCache(event);
  event.waitUntil(
    caches.open(MANIFEST.cache).then((cache) => cache.addAll(MANIFEST.files.map((file) => new Request(file, { cache: "reload" })))),
  );
});

// Browsers with the static routing API serve the app's files from the cache without starting this worker first.
// In the others, or if they refuse, the "fetch" handler below does. Files in this folder never change under their name.
function serveAppFilesFromCache(event) {
  if (!event.addRoutes || !self.URLPattern) return;
  const pathname = `${new URL(MANIFEST.folder, self.registration.scope).pathname.replace(/[\\{}()*+?:]/g, "\\$&")}*`;
  const route = async () => event.addRoutes({ condition: { urlPattern: new URLPattern({ pathname }) }, source: { cacheName: MANIFEST.cache } });
  event.waitUntil(route().catch(() => {}));
}

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name.startsWith("lastpull-") && name !== MANIFEST.cache).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

// A new build waits until a person asks for it: nothing may change while a run is on the press.
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  const scope = new URL(self.registration.scope);
  if (event.request.method !== "GET" || url.origin !== scope.origin || !url.pathname.startsWith(scope.pathname)) return;
  const cacheKey = event.request.mode === "navigate" ? new Request(scope.href) : event.request;
  event.respondWith(
    caches
      .open(MANIFEST.cache)
      .then((cache) => cache.match(cacheKey, { ignoreSearch: true }))
      .then((cached) => cached ?? fetch(event.request)),
  );
});
