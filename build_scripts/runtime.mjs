// Starts the browser's own Python once under node, for build_scripts/runtime.py.
// Usage: node runtime.mjs JOB.json   (the job names its kind, its inputs and its output file)
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const job = JSON.parse(readFileSync(process.argv[2], "utf8"));
const { loadPyodide } = await import(pathToFileURL(`${job.pyodide}/pyodide.mjs`));
const python = await loadPyodide({
  // -B: no .pyc beside what is mounted from the builder's own folders.
  args: job.optimise ? ["-B", "-OO"] : ["-B"],
  // A given date makes py_compile write hashes instead of file times, so that two builds agree.
  env: { HOME: "/home/pyodide", SOURCE_DATE_EPOCH: "315532800" },
  stdLibURL: job.stdlib,
  lockFileContents: { info: job.info, packages: {} },
});

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

// Unpacks one archive after the other, asks each one's questions through the page's bridge, and
// tells which files Python has read its modules from by then. `imports` are names that the library
// would import only on some path that is not asked here.
function ask({ folder, sitePackages, parts }) {
  const answers = [];
  const files = [];
  for (const { archive, imports, requests } of parts) {
    const bytes = new Uint8Array(readFileSync(`${folder}/${archive}`));
    python.unpackArchive(bytes, "zip", { extractDir: sitePackages });
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
  return { answers, files };
}

try {
  writeFileSync(job.output, JSON.stringify({ compile, ask }[job.kind](job)));
} catch (error) {
  console.error(error.message); // node itself would print the failing line of Python's own loader
  process.exit(1);
}
