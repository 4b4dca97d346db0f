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

async function download(path, cache) {
  const stop = new AbortController();
  let timer = setTimeout(() => stop.abort(), STALL_MS);
  try {
    const url = new URL(path.split("/").map(encodeURIComponent).join("/"), SCOPE);
    const reply = await fetch(url, { cache, signal: stop.signal });
    const parts = [];
    for (let reader = reply.body.getReader(), read; !(read = await reader.read()).done; ) {
      parts.push(read.value);
      clearTimeout(timer);
      timer = setTimeout(() => stop.abort(), STALL_MS);
    }
    return await new Blob(parts).arrayBuffer();
  } catch {
    throw new Error("the connection broke. It goes on when there is signal");
  } finally {
    clearTimeout(timer);
  }
}

// Fetches one listed file, and keeps it only if it is byte for byte the listed one. The status
// of the reply does not matter: hosts differ on 404.html, and the bytes decide.
async function fetchListed(path) {
  const [hash] = FILES[path];
  // The page has just fetched many of these: "no-cache" asks the host whether its copy still
  // holds, and spares the reader's data. "reload" is for a copy that proves wrong.
  for (const mode of ["no-cache", "reload"]) {
    const bytes = await download(path, mode);
    const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    if (Array.from(digest, (b) => b.toString(16).padStart(2, "0")).join("") !== hash) continue;
    try {
      await (await caches.open(CACHE)).put(keyOf(hash), response(bytes, path));
    } catch {
      throw new Error("there is not enough room left on this device");
    }
    return bytes;
  }
  throw new Error("the site is being changed. It goes on when that is done");
}

async function status() {
  const kept = new Set((await (await caches.open(CACHE)).keys()).map((request) => request.url));
  const missing = Object.keys(FILES).filter((path) => !kept.has(keyOf(FILES[path][0])));
  const have = TOTAL.total - missing.length;
  const bytes = missing.reduce((left, path) => left - FILES[path][1], TOTAL.totalBytes);
  return { type: "status", version: VERSION, have, bytes, missing, ...TOTAL };
}

let saving = null; // one save at a time, whoever asks
const save = () => (saving ??= saveMissing().finally(() => (saving = null)));

// Fetches what is missing. What arrived stays, so that the next try goes on from there.
async function saveMissing() {
  let { missing, have, bytes } = await status();
  let failure = null;
  const lane = async () => {
    for (let path; !failure && (path = missing.shift()); ) {
      try {
        await fetchListed(path);
        have += 1;
        bytes += FILES[path][1];
        await tell({ type: "progress", version: VERSION, have, bytes, ...TOTAL });
      } catch (error) {
        failure ??= error;
      }
    }
  };
  await Promise.all(Array.from({ length: LANES }, lane));
  if (failure) {
    await tell({ type: "save-failed", version: VERSION, reason: failure.message });
    throw failure;
  }
}

self.addEventListener("install", (event) => event.waitUntil(save()));

// What the page's worker reads where the browser keeps its requests from us.
async function keepList() {
  const cache = await caches.open(CACHE);
  await cache.put(keyOf("active"), response(JSON.stringify(FILES), "active.json"));
}

async function takeOver() {
  const cache = await caches.open(CACHE);
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
    status: reply,
    repair: () => save().then(keepList).then(reply, () => {}), // the failure has been told
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

async function fromCache(path, code) {
  const kept = await (await caches.open(CACHE)).match(keyOf(FILES[path][0]));
  if (kept && !code && isAsSent(kept, path)) return kept;
  return response(kept ? kept.body : await fetchListed(path), path, code);
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
    if (!listed(path)) return fromCache("404.html", 404);
    // This version can no longer be served whole; one that waits can.
    self.registration.waiting?.postMessage({ type: "use-new" });
    const sentence = `This page is no longer saved on this device, and ${error.message}.\n`;
    return response(sentence, "sentence.txt", 503);
  }
}

self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(SCOPE)) event.respondWith(answer(event.request));
});
