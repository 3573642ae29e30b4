// Keeps one build of the site as one unit. The listing names every file with its hash, type and
// size; a cache holds each file under its hash, so what did not change is taken from the build
// before. A new build waits until the user asks for it.
"use strict";

const LISTING = /* the build's listing */ null;
const PREFIX = "build ";
const CACHE = PREFIX + LISTING.version;
const SCOPE = new URL(self.registration.scope);
const AT_ONCE = 6;

// Chromium asks for its own, smaller variant of the drawing engine; the others for the full one.
const UNUSED_HERE = "v8BreakIterator" in Intl ? /^canvaskit\/[^/]+$/ : /^canvaskit\/chromium\//;

const kept = Object.entries(LISTING.files)
  .filter(([path]) => !UNUSED_HERE.test(path))
  .map(([path, file]) => ({ path, ...file }));

const keyOf = (file) => new URL(`?kept=${encodeURIComponent(file.hash)}`, SCOPE).href;

function answer(body, file) {
  return new Response(body, { headers: { ...LISTING.headers, "Content-Type": file.type } });
}

async function fetchFile(path, file) {
  const url = new URL(path, SCOPE);
  const response = await fetch(url, { integrity: file.hash, cache: "no-cache" });
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return answer(response.body, file);
}

async function fromOlderBuild(file, older) {
  for (const cache of older) {
    const found = await cache.match(keyOf(file));
    if (found) return answer(found.body, file);
  }
  return null;
}

async function olderCaches() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  return Promise.all(names.map((name) => caches.open(name)));
}

async function tellPages(message) {
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  for (const page of pages) page.postMessage(message);
}

// ---- keeping ----

async function keepAll() {
  const cache = await caches.open(CACHE);
  const older = await olderCaches();
  const total = kept.reduce((sum, file) => sum + file.size, 0);
  const waiting = [...kept].sort((a, b) => b.size - a.size);
  let done = 0;
  const keepNext = async () => {
    for (let file = waiting.shift(); file; file = waiting.shift()) {
      await keepOne(file, cache, older);
      done += file.size;
      await tellPages({ kind: "progress", done, total });
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, keepNext));
}

async function keepOne(file, cache, older) {
  const key = keyOf(file);
  if (await cache.match(key)) return; // an earlier, interrupted try got this far
  const response = (await fromOlderBuild(file, older)) ?? (await fetchFile(file.path, file));
  await cache.put(key, response);
}

async function isComplete() {
  const cache = await caches.open(CACHE);
  const keys = new Set((await cache.keys()).map((request) => request.url));
  return kept.every((file) => keys.has(keyOf(file)));
}

async function tellWhenComplete() {
  if (!(await isComplete())) await keepAll();
  await tellPages({ kind: "complete" });
}

async function dropOlder() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(names.map((name) => caches.delete(name)));
}

// ---- answering ----

async function fromCache(path) {
  const file = LISTING.files[path];
  const cache = await caches.open(CACHE);
  return (await cache.match(keyOf(file))) ?? fetchFile(path, file);
}

async function withPolicy(response) {
  const headers = new Headers(response.headers);
  for (const [name, value] of Object.entries(LISTING.headers)) headers.set(name, value);
  const { status, statusText } = response;
  return new Response(response.body, { status, statusText, headers });
}

function pathOf(request) {
  const url = new URL(request.url);
  if (request.mode === "navigate") return "index.html";
  return decodeURIComponent(url.pathname.slice(SCOPE.pathname.length));
}

function respond(request) {
  const url = new URL(request.url);
  if (url.origin !== SCOPE.origin) return Response.error();
  const path = pathOf(request);
  if (request.method === "GET" && path in LISTING.files) return fromCache(path);
  return fetch(request).then(withPolicy);
}

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => {
  event.waitUntil(dropOlder().then(() => self.clients.claim()));
});
self.addEventListener("fetch", (event) => event.respondWith(respond(event.request)));
self.addEventListener("message", (event) => {
  if (event.data === "use-new-version") self.skipWaiting();
  if (event.data === "complete?") event.waitUntil(tellWhenComplete());
});
