// Python in the page, in a worker of its own so that a sum never holds up typing. It begins to
// start as soon as it is made. It knows no worksheet: JSON text in, JSON text out.
//
// page -> worker   {type: "ask", id, key, request, needs}   of asks with one key only the newest
//                  counts; `needs` names an archive of further code, fetched when it is first needed
// worker -> page   {type: "ready", ms} | {type: "loading"} | {type: "answer", id, response}
//                  | {type: "failed", message, id}, which without an id is that of Python itself
//
// A start or a sum can hang where no error is thrown, so the page holds the clock and ends this worker.

const started = performance.now();
const SITE = new URL("../", import.meta.url);
const RUNTIME = new URL("./runtime/", import.meta.url);
const network = self.fetch.bind(self);

const fail = (error, id) => {
  console.error(error);
  // Python's message is a whole traceback; its last line is what went wrong.
  const message = String(error?.message ?? error).trim().split("\n").pop();
  self.postMessage({ type: "failed", message, id });
};

// What the service worker has saved of a file, by its list in the same cache.
async function saved(url) {
  const cache = await caches.open("lugwise-files");
  const list = await (await cache.match(new URL("_b/active", SITE)))?.json();
  const [hash] = list?.[url.href.slice(SITE.href.length)] ?? [];
  return hash && cache.match(new URL(`_b/${hash}`, SITE));
}

// Without signal some browsers refuse a worker's fetch before the service worker sees it, so the
// worker looks into the cache itself.
async function load(name) {
  const url = new URL(name, RUNTIME);
  let reason;
  try {
    const response = await network(url);
    if (response.ok) return response;
    reason = response.status;
  } catch (error) {
    reason = error.message;
  }
  const response = self.caches && (await saved(url));
  if (response) return response;
  throw new Error(`The file ${name} could not be loaded (${reason})`);
}

// The large files are packed by us, not by the host: the same few bytes on every host, and in the
// cache as well, where a host's own packing would not last.
async function inflated(name, type) {
  const { body } = await load(`${name}.bin`);
  const unpacked = body.pipeThrough(new DecompressionStream("gzip"));
  return new Response(unpacked, { headers: { "Content-Type": type } });
}

// Everything is asked for at once: one after the other, each file would wait for the last.
const boot = load("boot.json").then((response) => response.json());
const stdlib = inflated("stdlib.zip", "application/zip");
const archive = (name) => inflated(`${name}.zip`, "application/zip").then((response) => response.arrayBuffer());
const app = archive("app");
const further = new Map(); // archives that not every page needs, by name: on their way, or come

// An archive that did not come is asked for again by the next who needs it.
function fetchFurther(name) {
  if (!further.has(name)) {
    const coming = archive(name);
    coming.catch(() => further.delete(name));
    further.set(name, coming);
  }
  return further.get(name);
}

const wasm = WebAssembly.compileStreaming(inflated("pyodide.asm.wasm", "application/wasm"));
const loader = import("./runtime/pyodide.js");
// The loader puts a name of its own behind this address. Some hosts send that name as mere bytes,
// which no browser runs; behind the question mark no host reads it.
const INDEX = new URL("pyodide.asm.js?/", RUNTIME).href;
const code = import(`${INDEX}pyodide.asm.mjs`); // the loader imports it later, from the same URL

// The loader fetches and compiles by itself; it is handed what is already on its way. It would
// also wait for ever for a wasm that is refused, where `wasm` fails.
const early = new Map([
  [new URL("stdlib.zip", RUNTIME).href, stdlib],
  [`${INDEX}pyodide.asm.wasm`, new Response()],
]);
self.fetch = async (input, options) => early.get(String(input?.url ?? input)) ?? network(input, options);
WebAssembly.instantiateStreaming = async (_, imports) => {
  const module = await wasm;
  return { module, instance: await WebAssembly.instantiate(module, imports) };
};

async function startPython() {
  const { loadPyodide } = await loader;
  const { info } = await boot;
  // A memory snapshot, where one is built, would join these options; the rest stays as it is.
  return loadPyodide({
    indexURL: INDEX,
    stdLibURL: new URL("stdlib.zip", RUNTIME).href,
    lockFileContents: { info, packages: {} },
  });
}

async function unpack(name, bytes) {
  python.unpackArchive(bytes, "zip", { extractDir: (await boot).sitePackages });
  unpacked.add(name);
}

async function openDoor() {
  python = await startPython();
  await unpack("app", await app);
  return python.pyimport("calc.render.bridge").ask;
}

const waiting = new Map(); // the newest ask of each key, oldest key first
const unpacked = new Set();
let python = null;
let door = null;
let busy = false;
// A posted message waits its turn behind those that came while Python was working, so that asks
// overtaken in the meantime are dropped before they are worked.
const turn = new MessageChannel();

function goOn() {
  if (!door || busy || !waiting.size) return;
  busy = true;
  turn.port2.postMessage(null);
}

turn.port1.onmessage = async () => {
  const [key, { id, request, needs }] = waiting.entries().next().value;
  waiting.delete(key);
  try {
    if (needs && !unpacked.has(needs)) {
      self.postMessage({ type: "loading" });
      await unpack(needs, await fetchFurther(needs));
    }
    self.postMessage({ type: "answer", id, response: door(request) });
  } catch (error) {
    // An exception of Python's own is its reply, and a file may not come; anything else leaves it
    // broken, and names no ask.
    const told = error instanceof python.ffi.PythonError || (needs && !unpacked.has(needs));
    fail(error, told ? id : undefined);
  }
  busy = false;
  goOn();
};

self.onmessage = ({ data }) => {
  if (data.type !== "ask") return;
  const key = data.key ?? data.id;
  waiting.delete(key);
  waiting.set(key, data);
  if (data.needs) fetchFurther(data.needs).catch(() => {}); // told to whoever awaits it
  goOn();
};

// Each is watched by itself: a file that does not come can leave the loader waiting.
Promise.all([openDoor(), boot, stdlib, app, wasm, loader, code]).then(([ask]) => {
  door = ask;
  self.postMessage({ type: "ready", ms: performance.now() - started });
  goOn();
}, fail);
