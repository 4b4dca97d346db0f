// Starts the browser's own Python once under node, for build_scripts/runtime.py.
// Usage: node runtime.mjs JOB.json   (the job names its kind, its inputs and its output file)
import nodeCrypto from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const job = JSON.parse(readFileSync(process.argv[2], "utf8"));
// As the page does it; node takes a file whose name ends so for something else.
const script = readFileSync(new URL("../docs/assets/place.js", import.meta.url), "utf8");
const { place, passing } = await import(`data:text/javascript,${encodeURIComponent(script)}`);
if (job.kind === "remember") standStill();
if (job.exports) {
  const { instantiate } = WebAssembly;
  WebAssembly.instantiate = async (bytes, imports) => {
    const { module, instance } = await instantiate(bytes, imports);
    return { module, instance: passing(instance, job.exports) };
  };
}
const { loadPyodide } = await import(pathToFileURL(`${job.pyodide}/pyodide.mjs`));
const python = await loadPyodide({
  // -B: no .pyc beside what is mounted from the builder's own folders.
  args: job.optimise ? ["-B", "-OO"] : ["-B"],
  // A given date makes py_compile write hashes instead of file times, so that two builds agree.
  env: { HOME: "/home/pyodide", SOURCE_DATE_EPOCH: "315532800", PYTHONHASHSEED: "0" },
  stdLibURL: job.stdlib,
  lockFileContents: { info: job.info, packages: {} },
  ...(job.kind === "remember" ? { _makeSnapshot: true } : {}),
  ...(job.memory ? await restoring(new Uint8Array(readFileSync(job.memory))) : {}),
});

// Clock and chance stand in the memory of a Python that has started: held still, two builds agree.
function standStill() {
  const Moving = Date;
  globalThis.Date = class extends Moving {
    constructor(...given) {
      super(...(given.length ? given : [315532800000]));
    }
    static now() {
      return 315532800000;
    }
  };
  performance.now = () => 0;
  Math.random = () => 0.5;
  const fill = (bytes) => {
    new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength).fill(7);
    return bytes;
  };
  [nodeCrypto.randomFillSync, crypto.getRandomValues] = [fill, fill];
  process.argv[1] = "/python"; // Python keeps the name of its program, which is a place on this machine
}

// As docs/assets/memory.js does it. What a new module holds is written down.
async function restoring(memory) {
  const { default: create } = await import(pathToFileURL(`${job.pyodide}/pyodide.asm.mjs`));
  const heap = memory.length - new Uint32Array(memory.buffer, memory.byteOffset, 2)[1];
  const createPyodideModule = async (settings) => {
    const made = await create(settings);
    writeFileSync(job.fresh, made.HEAPU8.subarray(0, made._sbrk(0)));
    if (made.HEAP8.length < heap) made.growMemory(heap);
    return made;
  };
  return { createPyodideModule, _loadSnapshot: memory };
}

// pyodide-build's own compile step, unchanged. It brings in that package's logger, and so rich:
// both lie in the same folder and run here, so nothing has to be stubbed.
function compile({ packages, folder, archives, own }) {
  python.mountNodeFS("/packages", packages);
  python.mountNodeFS("/job", folder);
  python.mountNodeFS("/own", own);
  python.runPython("import sys; sys.path += ['/packages', '/own']");
  const step = python.pyimport("pyodide_build._py_compile");
  const { Path } = python.pyimport("pathlib");
  for (const [source, target] of archives) {
    const paths = [Path(`/job/${source}`), Path(`/job/${target}`)];
    step._compile.callKwargs(...paths, { verbose: false, compression_level: 0 });
    python.pyimport("runtime_bare").strip_archive(`/job/${target}`);
  }
  return {};
}

function put(folder, archives, sitePackages) {
  for (const name of archives) place(python, name.replace(".zip", ""), new Uint8Array(readFileSync(`${folder}/${name}`)), { sitePackages });
}

// Unpacks archives, those of one part after those of the other, asks each one's questions through the page's bridge, and
// tells which files Python has read its modules from by then. `imports` are names that the library
// would import only on some path that is not asked here. With `own`, it listens to what `dataclasses`
// writes, and tells that compiled, by the file of the class.
function ask({ folder, sitePackages, parts, own }) {
  const answers = [];
  const files = [];
  if (own) {
    python.runPython(`
import dataclasses
texts = {}
def listening(text, scope, names):
    texts.setdefault(scope.get("__file__"), []).append(text)
    exec(text, scope, names)
vars(dataclasses)["exec"] = listening`);
  }
  for (const { archives, imports, requests } of parts) {
    put(folder, archives, sitePackages);
    const bridge = python.pyimport("calc.render.bridge");
    answers.push(...requests.map((request) => bridge.ask(request)));
    try {
      answers.push(bridge.ask(null)); // not a request: a fault, and what it takes to tell of one
    } catch (error) {
      answers.push(error.message);
    }
    python.globals.set("names", python.toPy(imports));
    const read = python.runPython(`
import importlib, sys
for name in names:
    try:
        importlib.import_module(name)
    except ModuleNotFoundError:  # "from a import b" does not say whether a.b is a module
        pass
[m.__file__ for m in list(sys.modules.values())
 if getattr(m, "__file__", None) and getattr(m.__spec__, "origin", "") != "frozen"]`);
    files.push(read.toJs());
  }
  return { answers, files, made: own ? made(own) : {} };
}

function made(own) {
  python.mountNodeFS("/own", own);
  const compiled = python.runPython(`
sys.path.append("/own")
from runtime_bare import made
{path: made(written) for path, written in texts.items() if path}`);
  return compiled.toJs({ dict_converter: Object.fromEntries });
}

// Opens every worksheet once and writes down the memory as it is then.
function remember({ folder, sitePackages, archives, requests, target }) {
  put(folder, archives, sitePackages);
  const ask = python.pyimport("calc.render.bridge").ask;
  const collect = python.pyimport("gc").collect;
  for (const request of requests) {
    ask(request);
    collect(); // what lies about between two sheets would make the heap grow
  }
  // What was read from files that are no longer there when the memory is restored.
  python.runPython(`
import gc, linecache, re, sys, zipimport
linecache.clearcache(); re.purge(); sys.path_importer_cache.clear(); zipimport._zip_directory_cache.clear()
gc.collect(); gc.collect(); sys._clear_internal_caches()`);
  writeFileSync(target, python.makeMemorySnapshot());
  return {};
}

// Asks a Python whose memory was restored, without any file, be it of its own library.
function recall({ requests }) {
  const bridge = python.pyimport("calc.render.bridge");
  return { answers: requests.map((request) => bridge.ask(request)) };
}

try {
  writeFileSync(job.output, JSON.stringify({ compile, ask, remember, recall }[job.kind](job)));
} catch (error) {
  console.error(error.message); // node itself would print the failing line of Python's own loader
  process.exit(1);
}
