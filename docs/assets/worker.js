// Python in the page, in a worker of its own so that a sum never holds up typing. It begins to
// start as soon as it is made. It knows no worksheet: JSON text in, JSON text out.
//
// page -> worker   {type: "ask", id, key, request, needs}   of asks with one key only the newest
//                  counts; `needs` names an archive of further code, fetched when it is first needed
// worker -> page   {type: "ready", ms, rung} | {type: "loading"} | {type: "answer", id, response}
//                  | {type: "failed", message, id, reason}, which without an id is that of Python
//                  itself; `reason` is "file" where one did not come, "edition" where it is another one's
//
// Its name says how it may start: "memory" restores a Python that had started, where one is saved;
// "files" starts it from the beginning. Behind it stands the hash of boot.json as the page knows it:
// Python of another edition must not answer to the page's fields; and those of the saved memory and its program,
// which can so be looked for before anything else has come. A start or a sum can hang where no error is thrown, so the page holds the clock and ends this worker.

const started = performance.now();
const SITE = new URL("../", import.meta.url);
const RUNTIME = new URL("./runtime/", import.meta.url);
const network = fetch.bind(self);
const IDLE = 500;
const ZIP = "application/zip";
const LIBRARY = "stdlib.zip";
const mark = (name) => performance.mark(name); // for build_scripts/bench
mark("worker runs");

// As the page's own policy (guard.html): a script comes from here alone.
self.trustedTypes?.createPolicy("default", {
  createScriptURL(url) {
    if (new URL(url, SITE).origin === SITE.origin) return url;
    throw new TypeError("A script from elsewhere is refused");
  },
});

const failure = (reason, message) => Object.assign(new Error(message), { reason });

// The file must be the one whose hash is known. An old copy may lie in the browser's own cache, so that
// what is wrong is asked for once more, past that.
async function checked(name, fetched, hash) {
  const { digest } = await ofArchives;
  for (const cache of ["default", "reload"]) {
    const bytes = await fetched(cache);
    const found = hash && (await digest(bytes));
    if (!found || found === hash) return bytes;
  }
  throw failure("edition", `The file ${name} is of another edition`);
}

const fail = (error, id) => {
  console.error(error);
  // Python's message is a whole traceback; its last line is what went wrong.
  const message = String(error?.message ?? error).trim().split("\n").pop();
  self.postMessage({ type: "failed", message, id, reason: error?.reason });
};

// What the service worker has saved of a file, by its hash, and by its list in the same cache.
const cache = () => caches.open("lugwise-files");
const kept = async (hash) => (await cache()).match(new URL(`_b/${hash}`, SITE));

async function saved(url) {
  const list = await (await kept("active"))?.json();
  const [hash] = list?.[url.href.slice(SITE.href.length)] ?? [];
  return hash && kept(hash);
}

// Without signal some browsers refuse a worker's fetch before the service worker sees it, so the
// worker looks into the cache itself.
async function load(name, cache = "default") {
  const url = new URL(name, RUNTIME);
  let reason;
  try {
    const response = await network(url, { cache });
    if (response.ok) return response;
    reason = response.status;
  } catch (error) {
    reason = error.message;
  }
  const response = self.caches && (await saved(url));
  if (response) return response;
  throw failure("file", `The file ${name} could not be loaded (${reason})`);
}

// The large files are packed by us, not by the host: the same few bytes on every host, and in the
// cache as well, where a host's own packing would not last.
async function inflated(name, type, cache) {
  const { body } = await load(`${name}.bin`, cache);
  const unpacked = body.pipeThrough(new DecompressionStream("gzip"));
  return new Response(unpacked, { headers: { "Content-Type": type } });
}

// Everything is asked for at once: one after the other, each file would wait for the last.
const [way, edition, ...saving] = self.name.split(" ");
const ofArchives = import("./place.js");
const bootFile = async (cache) => (await load("boot.json", cache)).arrayBuffer();
const boot = checked("boot.json", bootFile, edition).then((bytes) => JSON.parse(new TextDecoder().decode(bytes)));
async function bytesOf(file, cache = "default") {
  const response = await inflated(file, ZIP, cache);
  return response.arrayBuffer().catch((error) => {
    throw failure("file", `The file ${file} broke off (${error.message})`);
  });
}

// What has come is looked at as soon as its hash is known.
async function archive(name) {
  const file = `${name}.zip`;
  const first = bytesOf(file);
  first.catch(() => {}); // told to whoever awaits this
  const { archives } = await boot;
  return checked(file, (cache) => (cache === "default" ? first : bytesOf(file, cache)), archives[file]);
}

const further = new Map(); // archives by name: on their way, or come

// An archive that did not come is asked for again by the next who needs it.
function fetchFurther(name) {
  if (!further.has(name)) {
    const coming = archive(name);
    coming.catch(() => further.delete(name));
    further.set(name, coming);
  }
  return further.get(name);
}

// Found with its program by their hashes alone. Another worker unpacks them, where a worker may make one.
async function findMemory() {
  if (saving.length < 2 || !self.caches) return null;
  if (!self.Worker) return (await ofMemory).find(...saving, SITE);
  const helper = new Worker(new URL("inflate.js", import.meta.url), { type: "module", name: saving.join(" ") });
  // While this worker is busy several messages may come: what hears each is there from the start.
  const hear = (part) => {
    const heard = new Promise((take, stop) => {
      const failed = () => stop(new Error("the saved memory could not be unpacked"));
      for (const kind of ["error", "messageerror"]) helper.addEventListener(kind, failed);
      helper.addEventListener("message", ({ data }) => {
        if (data.error) stop(new Error(data.error));
        else if (part in data) take(data[part]);
      });
    });
    heard.catch(() => {}); // told to whoever awaits it
    return heard;
  };
  const [found, program, coming] = ["found", "program", "memory"].map(hear);
  return (await found) ? { program, coming } : null;
}

const ofMemory = way === "memory" ? import("./memory.js") : null;
const memory = ofMemory && findMemory();
if (!memory) fetchFurther("app");

// A restored Python gets its library later.
const stdlib = (async () => new Response((await memory) ? (await ofArchives).NO_LIBRARY : await fetchFurther("stdlib")))();

const everything = async () => (await ofArchives).all((await boot).chapters, rung === "memory");
const archivesOf = async (ask) => (await ofArchives).archivesFor(ask, (await boot).chapters, rung === "memory");
const prefetch = (ask) => archivesOf(ask).then((names) => names.forEach(fetchFurther), () => {});

const wasm = (async () =>
  (await memory)?.program ?? WebAssembly.compileStreaming(inflated("pyodide.asm.wasm", "application/wasm")))();
const loader = import("./runtime/pyodide.js");
// The loader puts a name of its own behind this address. Some hosts send that name as mere bytes,
// which no browser runs; behind the question mark no host reads it.
const INDEX = new URL("pyodide.asm.js?/", RUNTIME).href;
const code = import(`${INDEX}pyodide.asm.mjs`); // the loader imports it later, from the same URL

// The loader fetches and compiles by itself; it is handed what is already on its way. It would
// also wait for ever for a wasm that is refused, where `wasm` fails.
const early = new Map([
  [new URL(LIBRARY, RUNTIME).href, stdlib],
  [`${INDEX}pyodide.asm.wasm`, new Response()],
]);
self.fetch = async (input, options) => early.get(String(input?.url ?? input)) ?? network(input, options);
WebAssembly.instantiateStreaming = async (_, imports) => {
  const module = await wasm;
  mark("wasm compiled");
  const instance = await WebAssembly.instantiate(module, imports);
  mark("wasm instantiated");
  return { module, instance: (await ofArchives).passing(instance, (await boot).exports) };
};

// The loader compiles a module around each of some 260 functions, of 30 kinds or so.
const around = new Map(); // by the bytes of a small one
WebAssembly.Module = new Proxy(WebAssembly.Module, {
  construct(Module, [bytes]) {
    if (bytes.length > 200) return new Module(bytes);
    const kind = String(bytes);
    if (!around.has(kind)) around.set(kind, new Module(bytes));
    return around.get(kind);
  },
});

async function startPython(found) {
  const { loadPyodide } = await loader;
  const { info, memory } = await boot;
  found?.coming.then(() => mark("memory inflated"), () => {}); // told to whoever awaits it
  return loadPyodide({
    indexURL: INDEX,
    stdLibURL: new URL(LIBRARY, RUNTIME).href,
    lockFileContents: { info, packages: {} },
    ...(found && (await ofMemory).restoring(memory.head, found, (await code).default)),
  });
}

// Puts archives where Python reads its modules, in this order.
async function place(...names) {
  for (const name of names) {
    const bytes = new Uint8Array(await fetchFurther(name));
    const { place: put } = await ofArchives;
    const places = await boot;
    if (placed.has(name)) continue;
    put(python, name, bytes, places);
    placed.add(name);
  }
  isWhole = (await everything()).every((name) => placed.has(name));
}

async function openDoor() {
  const found = await memory;
  if (!found) waiting.forEach(prefetch);
  rung = found ? "memory" : "files";
  python = await startPython(found);
  mark("Python runs");
  if (!found) await place("app");
  const ask = python.pyimport("calc.render.bridge").ask;
  const first = found && [...waiting.values()].find(({ needs }) => !needs);
  // Mostly its reply is one of those that prove the memory: it is not worked twice.
  const given = found && (await (await ofMemory).proved(ask, first?.request, (await boot).memory, found));
  if (given) answers.set(first.id, given);
  mark("calc answers");
  return ask;
}

// A restored Python remembers what its modules hold, but has neither their files nor its library; another one has
// the files of one chapter. The rest comes once the first answers are given; what needs it before waits for it.
async function reply(asked) {
  const { id, request } = asked;
  const absent = (await archivesOf(asked)).filter((name) => !placed.has(name));
  if (absent.length) {
    self.postMessage({ type: "loading" });
    await place(...absent);
  }
  const given = answers.get(id); // of its first stage: the next ones are asked by the same id
  answers.delete(id);
  try {
    return given ?? door(request);
  } catch (error) {
    if (isWhole) throw error;
    await place(...(await everything()));
    return door(request);
  }
}

const waiting = new Map(); // the newest ask of each key, oldest key first
const placed = new Set();
const answers = new Map(); // given already, by the id of the ask
let python = null;
let door = null;
let rung = ""; // of the ladder, on which it started
let isWhole = false; // whether every chapter is placed
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
  const [key, asked] = waiting.entries().next().value;
  waiting.delete(key);
  try {
    self.postMessage({ type: "answer", id: asked.id, response: await reply(asked) });
  } catch (error) {
    // An exception of Python's own is its reply, and a file may not come; anything else leaves it
    // broken, and names no ask.
    const told = error instanceof python.ffi.PythonError || error.reason;
    fail(error, told ? asked.id : undefined);
  }
  busy = false;
  goOn();
  if (!isWhole) setTimeout(whenIdle, IDLE);
};

// Between two asks, so that none waits for it.
async function whenIdle() {
  const names = await everything();
  if (!busy && !waiting.size) place(...names).catch(() => {}); // told to whoever needs it
}

self.onmessage = ({ data }) => {
  if (data.type !== "ask") return;
  const key = data.key ?? data.id;
  waiting.delete(key);
  waiting.set(key, data);
  if (data.needs || rung === "files" || !memory) prefetch(data);
  goOn();
};

// Each is watched by itself: a file that does not come can leave the loader waiting.
Promise.all([openDoor(), boot, stdlib, wasm, loader, code]).then(([ask]) => {
  door = ask;
  self.postMessage({ type: "ready", ms: performance.now() - started, rung });
  goOn();
}, fail);
