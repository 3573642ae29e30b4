// Keeps each build of the site as one unit. A build's listing names every file with its hash, type
// and size; its cache holds the listing and each file under its hash, so what did not change is
// taken from the build before. A newer build is kept beside the one in use, and used when the user
// says so: closing the browser does not change it.
"use strict";

const OWN = /* the build's listing */ null;
const PREFIX = "build ";
const CHOICE = "choice";
const SCOPE = new URL(self.registration.scope);
const AT_ONCE = 6;

// Chromium asks for its own, smaller variant of the drawing engine; the others for the full one.
const UNUSED_HERE = "v8BreakIterator" in Intl ? /^canvaskit\/[^/]+$/ : /^canvaskit\/chromium\//;

const inScope = (name) => new URL(name, SCOPE).href;
const keyOf = (file) => inScope(`?kept=${encodeURIComponent(file.hash)}`);
const LISTING_KEY = inScope("?listing");
const CHOICE_KEY = inScope("?chosen");

const keptFiles = (listing) =>
  Object.entries(listing.files)
    .filter(([path, file]) => file.kept && !UNUSED_HERE.test(path))
    .map(([path, file]) => ({ path, ...file }));

function answer(body, file, listing) {
  return new Response(body, { headers: { ...listing.headers, "Content-Type": file.type } });
}

async function fetchBody(path, integrity) {
  const response = await fetch(inScope(path), { integrity, cache: "no-cache" });
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return response.body;
}

async function fetchUnpacked(path, file) {
  const packed = await fetchBody(`${path}.gz`, file.packed);
  return packed.pipeThrough(new DecompressionStream("gzip"));
}

// Some hosts hand out a copy unpacked or not at all: then the file itself is asked for.
async function fetchFile(path, file, listing) {
  const packed = file.packed && fetchUnpacked(path, file).catch(() => null);
  return answer((await packed) ?? (await fetchBody(path, file.hash)), file, listing);
}

async function tellPages(message) {
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  for (const page of pages) page.postMessage(message);
}

// ---- keeping a build ----

const openBuild = (version) => caches.open(PREFIX + version);

async function keptVersions() {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(PREFIX)).map((name) => name.slice(PREFIX.length));
}

async function keepAll(listing) {
  const cache = await openBuild(listing.version);
  const others = (await keptVersions()).filter((version) => version !== listing.version);
  const older = await Promise.all(others.map(openBuild));
  const waiting = keptFiles(listing).sort((a, b) => b.size - a.size);
  const total = waiting.reduce((sum, file) => sum + file.size, 0);
  let done = 0;
  const keepNext = async () => {
    for (let file = waiting.shift(); file; file = waiting.shift()) {
      await keepOne(file, listing, cache, older);
      done += file.size;
      await tellPages({ kind: "progress", done, total });
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, keepNext));
  await cache.put(LISTING_KEY, new Response(JSON.stringify(listing)));
}

async function keepOne(file, listing, cache, older) {
  const key = keyOf(file);
  if (await cache.match(key)) return; // an earlier, interrupted try got this far
  const found = await fromOlder(key, older);
  const response = found
    ? answer(found.body, file, listing)
    : await fetchFile(file.path, file, listing);
  await cache.put(key, response);
}

async function fromOlder(key, older) {
  for (const cache of older) {
    const found = await cache.match(key);
    if (found) return found;
  }
  return null;
}

async function isComplete(listing) {
  const cache = await openBuild(listing.version);
  const keys = new Set((await cache.keys()).map((request) => request.url));
  return keptFiles(listing).every((file) => keys.has(keyOf(file)));
}

async function dropAllBut(versions) {
  const dropped = (await keptVersions()).filter((version) => !versions.includes(version));
  await Promise.all(dropped.map((version) => caches.delete(PREFIX + version)));
}

// ---- which build is in use ----

async function chosenListing() {
  const choice = await (await caches.open(CHOICE)).match(CHOICE_KEY);
  if (!choice) return null;
  const version = await choice.text();
  const listing = await (await openBuild(version)).match(LISTING_KEY);
  return listing ? listing.json() : null;
}

async function choose(version) {
  await (await caches.open(CHOICE)).put(CHOICE_KEY, new Response(version));
}

let inUse = null;

// Asked anew with each page, so that a page and everything it loads come from one build.
function listingInUse(anew) {
  if (anew || !inUse) inUse = chosenListing().then((listing) => listing ?? OWN);
  return inUse;
}

async function install() {
  await keepAll(OWN);
  if (!(await chosenListing())) await choose(OWN.version);
}

async function activate() {
  await self.clients.claim();
  await dropAllBut([(await listingInUse(true)).version, OWN.version]);
}

async function useOwn() {
  await choose(OWN.version);
  await self.skipWaiting();
  await dropAllBut([OWN.version]);
  await tellPages({ kind: "changed" });
}

async function tellWhenComplete() {
  const listing = await listingInUse(true);
  if (!(await isComplete(listing))) await keepAll(listing);
  await tellPages({ kind: "complete", newer: listing.version !== OWN.version });
}

// ---- answering ----

async function fromCache(path, request) {
  const listing = await listingInUse(request.mode === "navigate");
  const file = listing.files[path];
  if (!file) return fetch(request).then(withPolicy);
  const cache = await openBuild(listing.version);
  return (await cache.match(keyOf(file))) ?? fetchFile(path, file, listing);
}

async function withPolicy(response) {
  const headers = new Headers(response.headers);
  for (const [name, value] of Object.entries(OWN.headers)) headers.set(name, value);
  const { status, statusText } = response;
  return new Response(response.body, { status, statusText, headers });
}

// For a sign that no font of ours has, the engine asks for another font, again with each frame until
// it gets one. It gets ours, and draws a box for the sign.
const OTHER_FONT = /^assets\/fonts\/noto/;
const OWN_FONT = "assets/fonts/roboto.woff2";

function pathOf(request) {
  if (request.mode === "navigate") return "index.html";
  const url = new URL(request.url);
  const path = decodeURIComponent(url.pathname.slice(SCOPE.pathname.length));
  return OTHER_FONT.test(path) ? OWN_FONT : path;
}

function respond(request) {
  if (new URL(request.url).origin !== SCOPE.origin) return Response.error();
  if (request.method !== "GET") return fetch(request).then(withPolicy);
  return fromCache(pathOf(request), request);
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("fetch", (event) => event.respondWith(respond(event.request)));
self.addEventListener("message", (event) => {
  if (event.data === "use-new-version") event.waitUntil(useOwn());
  if (event.data === "complete?") event.waitUntil(tellWhenComplete());
});
