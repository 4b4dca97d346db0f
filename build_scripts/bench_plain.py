"""The same sheet started in the plain way, for the built site to be measured against.

Plain means: the loader, Python's own library and the packages as they are published, as source, and
`calc` as source, all unpacked in the page. The page is bare, and is saved by the same service
worker as the site.
"""

import gzip
import io
import json
import shutil
import zipfile
from pathlib import Path

from build_scripts.runtime import (
    OWN,
    PYODIDE,
    SITE_PACKAGES,
    Files,
    boot_options,
    read_files,
    read_packages,
)
from build_scripts.runtime_files import packed
from build_scripts.site_list import write_worker

LOADER = (
    "pyodide.mjs",
    "pyodide.asm.mjs",
    "pyodide.asm.wasm",
    "pyodide-lock.json",
    "python_stdlib.zip",
)

PAGE = """<!doctype html>
<meta charset="utf-8">
<title>Plain</title>
<p>Nothing yet</p>
<script type="module" src="page.js"></script>
"""

PAGE_SCRIPT = """
const worker = new Worker("worker.js", { type: "module" });
worker.onmessage = ({ data }) => {
  document.querySelector("p").textContent = data;
  document.documentElement.dataset.lugwise = "ready";
};
addEventListener("load", () => navigator.serviceWorker?.register("sw.js"));
"""

WORKER_SCRIPT = """
import { loadPyodide } from "./pyodide.mjs";
const python = await loadPyodide();
for (const name of ["packages.zip", "calc.zip"]) {
  const archive = await (await fetch(name)).arrayBuffer();
  python.unpackArchive(archive, "zip", { extractDir: SITE_PACKAGES });
}
postMessage(ANSWER);
"""


FLOOR_SCRIPT = """
const started = performance.now();
const { body } = await fetch("python.wasm.bin");
const headers = { "Content-Type": "application/wasm" };
const unpacked = body.pipeThrough(new DecompressionStream("gzip"));
const wasm = WebAssembly.compileStreaming(new Response(unpacked, { headers }));
const { loadPyodide } = await import("./pyodide.mjs");
self.fetch = async () => new Response();
WebAssembly.instantiateStreaming = async (_, imports) => {
  await WebAssembly.instantiate(await wasm, imports);
  postMessage(performance.now() - started);
  return new Promise(() => {}); // Python itself is not started
};
loadPyodide({ lockFileContents: { info: INFO, packages: {} }, packageBaseUrl: "./" });
"""


def worked(sheet: str) -> str:
    """The JavaScript that works the worksheet `sheet`."""
    request = json.dumps({"sheet": sheet, "values": {}})
    return f'python.pyimport("calc.render.bridge").ask({json.dumps(request)})'


def evaluated(module: Path, expression: str) -> str:
    """The JavaScript that runs a Python file and gives the value of an expression as JSON."""
    code = f"{module.read_text('utf-8')}\nimport json\njson.dumps({expression})\n"
    return f"python.runPython({json.dumps(code)})"


def write_plain_site(to: Path, answer: str) -> None:
    """Fill the folder `to` with a bare page that shows an `answer` found in the plain way."""
    to.mkdir(parents=True)
    for name in LOADER:
        shutil.copyfile(PYODIDE / name, to / name)
    (to / "packages.zip").write_bytes(deflated(read_packages(SITE_PACKAGES)))
    (to / "calc.zip").write_bytes(deflated(read_files(OWN.parent, [OWN])))
    script = WORKER_SCRIPT.replace("ANSWER", answer)
    script = script.replace("SITE_PACKAGES", json.dumps(boot_options()["sitePackages"]))
    (to / "worker.js").write_text(script)
    (to / "page.js").write_text(PAGE_SCRIPT)
    (to / "index.html").write_text(PAGE)
    (to / "404.html").write_text(PAGE)
    write_worker(to, {})


def write_floor_site(to: Path) -> None:
    """Fill the folder `to` with a page that loads and instantiates Python's wasm, and no more."""
    to.mkdir(parents=True)
    for name in LOADER[:2]:
        shutil.copyfile(PYODIDE / name, to / name)
    (to / "python.wasm.bin").write_bytes(packed((PYODIDE / "pyodide.asm.wasm").read_bytes()))
    info = json.dumps(boot_options()["info"])
    (to / "worker.js").write_text(FLOOR_SCRIPT.replace("INFO", info))
    (to / "page.js").write_text(PAGE_SCRIPT)
    (to / "index.html").write_text(PAGE)
    (to / "404.html").write_text(PAGE)
    write_worker(to, {})


def spared_by_host(site: Path) -> int:
    """Bytes that most hosts spare by packing the wasm; our own server has no need to."""
    wasm = (site / "pyodide.asm.wasm").read_bytes()
    return len(wasm) - len(gzip.compress(wasm))


def deflated(files: Files) -> bytes:
    """An archive as a package index serves it, without the tests that some packages ship."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files.items():
            if "/testsuite/" not in name:
                archive.writestr(name, content)
    return buffer.getvalue()
