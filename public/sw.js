// Keeps one complete build of the app in a cache, so that it opens without a network, and decides which build opens.
//
// A new build is stored beside the old one. It opens when a person asks for it, or when the app is opened anew while no
// run is on the press; until then this worker serves the old build, even if the browser has replaced the old worker.
// It refuses a new build unless the page names its folder: the page that shows is of the old one.
"use strict";

// src/build/build.mjs replaces this value: the build's name, the folder of the app's files, and every file to cache.
const MANIFEST = { cache: "", folder: "", files: [] };

// Caches belong to the origin: another copy of the app below it has another path, and caches of its own.
const SCOPE = new URL("./", self.location);
const PREFIX = `lastpull:${SCOPE.pathname}:`;
const CACHE = `${PREFIX}${MANIFEST.cache}`;
const STATE = `${PREFIX}state`;
const PAGE = SCOPE.href;
// Keys of the state: the cache of the build that opens, and whether a run is on the press.
const OPENS = `${PAGE}?build`;
const HELD = `${PAGE}?held`;

const isOfThisBuild = async (page) => (await page.clone().text()).includes(MANIFEST.folder);

async function fetchFile(file) {
  const response = await fetch(new Request(file, { cache: "reload" }));
  if (!response.ok) throw new TypeError(`${file}: ${response.status}`);
  // A navigation takes no answer that was redirected.
  return response.redirected ? new Response(await response.blob(), { headers: response.headers }) : response;
}

/** Stores every file that is missing. The page comes last: a cache that has it is complete. */
async function fill() {
  const cache = await caches.open(CACHE);
  const stored = new Set((await cache.keys()).map((request) => request.url));
  const missing = MANIFEST.files.filter((file) => !stored.has(new URL(file, SCOPE).href));
  if (!missing.length) return;
  const page = missing.includes("./") ? await fetchFile("./") : null;
  // A host that is copied file by file, or whose edge still has the old page, must not give a build that cannot start.
  if (page && !(await isOfThisBuild(page))) throw new TypeError("the page is of another build");
  await Promise.all(missing.filter((file) => file !== "./").map(async (file) => cache.put(file, await fetchFile(file))));
  if (page) await cache.put(PAGE, page);
}

async function install() {
  try {
    await fill();
  } catch (error) {
    // A part of a build is of no use. A whole one may be in use by the worker before this one.
    if (!(await (await caches.open(CACHE)).match(PAGE))) await caches.delete(CACHE);
    throw error;
  }
  if (!(await opens())) await choose(CACHE);
}

self.addEventListener("install", (event) => {
  serveAppFilesFromCache(event);
  event.waitUntil(install());
});

// Browsers with the static routing API serve the app's files from the cache without starting this worker first.
// In the others, or if they refuse, the "fetch" handler below does. Files in this folder never change under their name.
function serveAppFilesFromCache(event) {
  if (!event.addRoutes || !self.URLPattern) return;
  const pathname = `${new URL(MANIFEST.folder, SCOPE).pathname.replace(/[\\{}()*+?:]/g, "\\$&")}*`;
  const route = async () => event.addRoutes({ condition: { urlPattern: new URLPattern({ pathname }) }, source: { cacheName: CACHE } });
  event.waitUntil(route().catch(() => {}));
}

/** The cache of the build that opens, as chosen; `undefined` if none was. */
async function opens() {
  const chosen = await (await caches.open(STATE)).match(OPENS);
  return chosen && (await chosen.text());
}

const choose = async (cache) => (await caches.open(STATE)).put(OPENS, new Response(cache));

/** The cache that a navigation is served from. */
async function cacheOfPage() {
  const chosen = await opens();
  if (!chosen || chosen === CACHE || !(await caches.has(chosen))) return CACHE;
  if (!(await (await caches.open(chosen)).match(PAGE))) return CACHE;
  const held = await (await caches.open(STATE)).match(HELD);
  const others = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  // Nothing may change while a run is on the press, or beside a window of the old build.
  if (held || others.some(({ url }) => url.startsWith(PAGE))) return chosen;
  await choose(CACHE);
  return CACHE;
}

/** Deletes the caches of builds that no window can need. */
async function tidy() {
  if (self.registration.waiting || self.registration.installing) return;
  const windows = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  if (windows.filter(({ url }) => url.startsWith(PAGE)).length > 1) return;
  const keep = [CACHE, STATE, await opens()];
  for (const name of await caches.keys()) {
    // Caches had no path in their name once: such a one is ours if it has our page.
    const own = name.startsWith(PREFIX) || (/^lastpull-[0-9a-f]{16}$/.test(name) && (await (await caches.open(name)).match(PAGE)));
    if (own && !keep.includes(name)) await caches.delete(name);
  }
}

self.addEventListener("activate", (event) => {
  event.waitUntil(tidy().then(() => self.clients.claim()));
});

async function takeOver(source) {
  await choose(CACHE);
  // The browser first lets the worker before this one finish what it does, which may take minutes. That one serves what was
  // chosen too.
  self.skipWaiting();
  source?.postMessage("reload");
}

async function report(source) {
  const stored = await fill().then(() => true, () => false);
  const chosen = await opens();
  const isChosen = !chosen || chosen === CACHE || !(await caches.has(chosen));
  source?.postMessage({ stored, folder: MANIFEST.folder, opens: isChosen });
}

self.addEventListener("message", (event) => {
  const { data, source } = event;
  const hold = async (held) => (held ? (await caches.open(STATE)).put(HELD, new Response("")) : (await caches.open(STATE)).delete(HELD));
  if (data === "take over") event.waitUntil(takeOver(source));
  if (data === "skip waiting") self.skipWaiting();
  if (data === "is it stored?") event.waitUntil(report(source));
  // A window of an older build does not say so: what that build stored is kept for it.
  if (data === "this build is open") event.waitUntil(tidy());
  if (data === "a run is on the press") event.waitUntil(hold(true));
  if (data === "no run is on the press") event.waitUntil(hold(false));
});

async function respond(event, isPage) {
  const cache = await caches.open(isPage ? await cacheOfPage() : CACHE);
  const key = isPage ? PAGE : event.request;
  const cached = await cache.match(key, { ignoreSearch: true });
  if (cached) return cached;
  // A file of the old build, which a window still runs.
  const older = isPage ? undefined : await caches.match(key, { ignoreSearch: true });
  if (older) return older;
  const response = await fetch(event.request);
  // The browser may have dropped the cache: keep what comes, so that the app opens without a network again.
  const belongs = MANIFEST.files.some((file) => new URL(file, SCOPE).href === (isPage ? PAGE : event.request.url));
  if (response.ok && !response.redirected && belongs) {
    const copy = response.clone();
    const keep = async () => {
      if (!isPage || (await isOfThisBuild(copy))) await (await caches.open(CACHE)).put(key, copy);
    };
    event.waitUntil(keep().catch(() => {}));
  }
  return response;
}

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== SCOPE.origin || !url.pathname.startsWith(SCOPE.pathname)) return;
  const path = url.pathname.slice(SCOPE.pathname.length);
  if (event.request.mode !== "navigate") event.respondWith(respond(event, false));
  // Below this path there may be other pages, even another copy of the app: they are not ours.
  else if (path === "" || path === "index.html") event.respondWith(respond(event, true));
});
