// Keeps the whole site on the device, so that it works without signal. finish.py fills in the
// marked constants: any change of content changes this file, so version and content cannot part.
// Files are kept by their SHA-256 in one cache that all versions share. Only the list inside the
// active worker decides what is served, so versions never mix, whatever the host has by then.
"use strict";

const VERSION = __VERSION__;
const FILES = __FILES__; // path: [SHA-256, bytes], in the order to save them
const TYPES = __TYPES__;
const HEADERS = __HEADERS__; // as the host sends them, the security policy among them
const CACHE = "lugwise-files";
const STALL_MS = 30000; // a connection that gives no byte for this long is dead
const LANES = 3; // files fetched at once: more would only share the same thin line

// Why a file is not saved, as a page says it; what the page finds by itself it says in the same words.
const BROKE = __BROKE__;
const LOGIN = __LOGIN__;
const CHANGING =
  "a file came that is not of this version: the site is being changed, or the connection spoils it. It goes on later";
const FULL = "there is not enough room left on this device";
const REFUSED = __REFUSED__;
const ERROR = __ERROR__;
const OURS = "lw-mark-of-site"; // stands in every page of ours

const SCOPE = self.registration.scope;
const HASHES = new Set(Object.values(FILES).map(([hash]) => hash));
const TOTAL = {
  total: Object.keys(FILES).length,
  totalBytes: Object.values(FILES).reduce((sum, [, bytes]) => sum + bytes, 0),
};
const keyOf = (hash) => `${SCOPE}_b/${hash}`;

async function tell(message) {
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  for (const page of pages) if (page.url.startsWith(SCOPE)) page.postMessage(message);
}

// A Response with no more than the host would have sent: type and security headers.
function response(body, path, status = 200) {
  const ending = path.slice(path.lastIndexOf("."));
  const type = TYPES[ending] || "application/octet-stream";
  return new Response(body, { status, headers: { ...HEADERS, "Content-Type": type } });
}

async function store() {
  try {
    return await caches.open(CACHE);
  } catch {
    throw new Error(REFUSED);
  }
}

async function download(path, cache) {
  const stop = new AbortController();
  const url = new URL(path.split("/").map(encodeURIComponent).join("/"), SCOPE);
  let timer = setTimeout(() => stop.abort(), STALL_MS);
  try {
    const reply = await fetch(url, { cache, signal: stop.signal });
    const parts = [];
    for (let reader = reply.body.getReader(), read; !(read = await reader.read()).done; ) {
      parts.push(read.value);
      clearTimeout(timer);
      timer = setTimeout(() => stop.abort(), STALL_MS);
    }
    return { reply, bytes: await new Blob(parts).arrayBuffer() };
  } catch {
    const isLedAway = !stop.signal.aborted && (await leadsAway(url));
    throw new Error(isLedAway ? LOGIN : BROKE);
  } finally {
    clearTimeout(timer);
  }
}

// To another origin: a fetch that would follow looks like a connection that broke.
async function leadsAway(url) {
  const options = { method: "HEAD", cache: "no-store", redirect: "manual" };
  const reply = await fetch(url, options).catch(() => null);
  return reply?.type === "opaqueredirect";
}

// Why `bytes` are not the listed ones.
function whyOthers(path, { ok, status, headers }, bytes) {
  if (status >= 500) return `${ERROR} ${status}. It goes on when that is over`;
  const isPage = /html/.test(headers.get("Content-Type"));
  if (ok && isPage && !new TextDecoder().decode(bytes).includes(OURS)) return LOGIN;
  return CHANGING;
}

// Fetches one listed file, and gives it only if it is byte for byte the listed one. The status
// of the reply does not matter: hosts differ on 404.html, and the bytes decide.
async function fetchListed(path) {
  let why;
  // The page has just fetched many of these: "no-cache" asks the host whether its copy still
  // holds, and spares the reader's data. "reload" is for a copy that proves wrong.
  for (const mode of ["no-cache", "reload"]) {
    const { reply, bytes } = await download(path, mode);
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    if (Array.from(digest, (b) => b.toString(16).padStart(2, "0")).join("") === FILES[path][0]) return bytes;
    why = whyOthers(path, reply, bytes);
  }
  throw new Error(why);
}

async function keep(path, bytes) {
  const cache = await store();
  try {
    await cache.put(keyOf(FILES[path][0]), response(bytes, path));
  } catch (error) {
    throw new Error(error.name === "QuotaExceededError" ? FULL : REFUSED);
  }
}

async function status() {
  const kept = new Set((await (await store()).keys()).map((request) => request.url));
  const missing = Object.keys(FILES).filter((path) => !kept.has(keyOf(FILES[path][0])));
  const have = TOTAL.total - missing.length;
  const bytes = missing.reduce((left, path) => left - FILES[path][1], TOTAL.totalBytes);
  return { type: "status", edition: VERSION, have, bytes, missing, list: kept.has(keyOf("active")), ...TOTAL };
}

let saving = null; // one save at a time, whoever asks
const save = () => (saving ??= saveMissing().finally(() => (saving = null)));

async function saveMissing() {
  try {
    await fetchMissing();
  } catch ({ message }) {
    await tell({ type: "save-failed", edition: VERSION, reason: message });
    throw new Error(message);
  }
}

// What arrived stays, so that the next try goes on from there.
async function fetchMissing() {
  let { missing, have, bytes } = await status();
  let failure = null;
  const lane = async () => {
    for (let path; !failure && (path = missing.shift()); ) {
      try {
        await keep(path, await fetchListed(path));
        have += 1;
        bytes += FILES[path][1];
        await tell({ type: "progress", edition: VERSION, have, bytes, ...TOTAL });
      } catch (error) {
        failure ??= error;
      }
    }
  };
  await Promise.all(Array.from({ length: LANES }, lane));
  if (failure) throw failure;
}

self.addEventListener("install", (event) => event.waitUntil(save()));

// What the page's worker reads where the browser keeps its requests from us.
async function keepList() {
  const cache = await store();
  await cache.put(keyOf("active"), response(JSON.stringify(FILES), "active.json"));
}

async function takeOver() {
  const cache = await store();
  const first = !(await cache.match(keyOf("active")));
  for (const { url } of await cache.keys()) {
    const ours = url.startsWith(keyOf("")); // another site of this origin may share the cache
    if (ours && !HASHES.has(url.slice(keyOf("").length))) await cache.delete(url);
  }
  await keepList();
  if (first) await self.clients.claim(); // later versions wait until they are asked to take over
}

self.addEventListener("activate", (event) => event.waitUntil(takeOver()));

self.addEventListener("message", (event) => {
  const reply = async () => (event.ports[0] ?? event.source)?.postMessage(await status());
  const act = {
    status: () => reply().catch(({ message }) => tell({ type: "save-failed", edition: VERSION, reason: message })),
    repair: () => save().then(keepList).then(reply, () => {}), // what is lacking is asked for again
    "use-new": () => self.skipWaiting(),
  }[event.data?.type];
  if (act) event.waitUntil(act());
});

// Whether a kept response is, headers and all, what is now to be sent. Sent as it is, its bytes go to
// the page without passing through here.
const isAsSent = (kept, path) => {
  const { headers } = response(null, path);
  return [...headers].every(([name, value]) => kept.headers.get(name) === value);
};

// Where nothing can be kept, what the host sends is served all the same, if it is the listed file.
async function fromCache(path, code) {
  const kept = await store().then((cache) => cache.match(keyOf(FILES[path][0])), () => null);
  if (kept) return !code && isAsSent(kept, path) ? kept : response(kept.body, path, code);
  const bytes = await fetchListed(path);
  await keep(path, bytes).catch(() => {});
  return response(bytes, path, code);
}

// The theme moves without a reload between pages that its site map names by full address.
function siteMap() {
  const pages = Object.keys(FILES).filter((path) => path.endsWith("index.html"));
  return `<urlset>${pages.map((path) => `<url><loc>${SCOPE}${path.slice(0, -10)}</loc></url>`).join("")}</urlset>`;
}

const listed = (path) => Object.hasOwn(FILES, path);

// The listed path that a request means, whatever follows "?"; or what was asked, if not listed.
function pathOf({ pathname }) {
  let path = pathname.slice(new URL(SCOPE).pathname.length);
  try {
    path = decodeURIComponent(path);
  } catch {} // a stray "%" names no file of ours
  return path === "" || path.endsWith("/") ? `${path}index.html` : path;
}

// This version can no longer be served whole; one that waits can.
function gone({ message }) {
  self.registration.waiting?.postMessage({ type: "use-new" });
  return response(`This page is no longer saved on this device, and ${message}.\n`, "sentence.txt", 503);
}

async function answer(request) {
  const url = new URL(request.url);
  const path = pathOf(url);
  try {
    if (listed(path)) return await fromCache(path);
    if (path === "sitemap.xml") return response(siteMap(), path);
    // Without its last slash a folder's page would look for its files one folder too high.
    if (listed(`${path}/index.html`)) {
      return Response.redirect(`${url.origin}${url.pathname}/${url.search}`);
    }
    return await fetch(request);
  } catch (error) {
    if (request.mode !== "navigate") return Response.error();
    if (!listed(path)) return fromCache("404.html", 404).catch(gone);
    return gone(error);
  }
}

self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(SCOPE)) event.respondWith(answer(event.request));
});
