"""Make the bundle that the page's Python starts from: `python -m build_scripts.runtime`.

Python's own library, pint and `calc` go in as `.pyc`, made by the same Python that will read them:
compiling source is what makes a plain start slow. Only modules that are used go in. The bundle is
then started under node, and every worksheet must answer as it did before the trimming.

The memory of a Python that was started from the bundle goes in as well: once the site is saved, a
page restores it, and starts from the files only where that fails.

The code of the van, with what it alone needs of Python's library, and the questions of the
practice sets are archives of their own: the page fetches each when it is first asked for, and no
other page's start pays for it.
"""

import argparse
import gzip
import hashlib
import json
import os
import shutil
import subprocess
import sys
import sysconfig
import tempfile
from pathlib import Path

import calc
from build_scripts import runtime_client, runtime_practice, runtime_sheets, runtime_van
from build_scripts.finish import SiteError
from build_scripts.runtime_exports import used_exports
from build_scripts.runtime_files import (
    CLIENT,
    CORE,
    PRACTICE,
    VAN,
    Files,
    archive_of,
    chapters_of,
    lean,
    packed,
    page_files,
    read_files,
    read_zip,
    zipped,
)
from build_scripts.runtime_memory import written
from build_scripts.runtime_short import shortened
from build_scripts.runtime_used import PACKAGES, imported_by, made_beside, only_later, used_of
from calc.units.kinds import KINDS
from calc.units.quantities import UNIT_LINES, unit_lines

PROJECT = Path(__file__).resolve().parent.parent
PYODIDE = PROJECT / "node_modules" / "pyodide"
LIBRARY = PYODIDE / "python_stdlib.zip"
QUICK = Path(__file__).parent / "runtime_quick.py"
LOADER = ("pyodide.mjs", "pyodide.asm.mjs")
"""Served as `.js`: a host that does not know `.mjs` sends it as bytes, which no browser runs."""

PACKED = ".bin"
"""The ending of what we pack ourselves: at `.gz` some hosts say that they have packed it."""

OWN = Path(calc.__file__).parent
SITE_PACKAGES = Path(sysconfig.get_path("purelib"))

ALSO = ("encodings.ascii", "encodings.latin_1", "_pylong")
"""Modules that Python itself imports late, on paths that no question of this build takes."""

WIRE_BUDGET = 5_100_000
"""Bytes until the first live answer, of the 5.4 MB promised; the rest is for the page itself."""

MEMORY = "memory"
"""Python as it is after its start: saved with the site, so that no first visit waits for it."""

EVERY = 1 if os.environ.get("LUGWISE_SOAK") else 4
"""Of the questions that told what is in use, every fourth is put to the trimmed Python again.

It holds the same compiled code, and all that any of them used. A long night puts them all.
"""


def build_runtime(out: Path, own: Path = OWN, packages: Path = SITE_PACKAGES) -> None:
    """Fill the folder `out` with the files that `docs/assets/worker.js` starts from.

    `own` is the folder of `calc`; `packages` is the site-packages that the others come from.
    Raises SiteError if the bundle is too large, or does not answer as the untrimmed one does.
    """
    boot = boot_options()
    with tempfile.TemporaryDirectory() as name:
        work = Path(name)
        library, others, ours = compiled(work, boot, own, packages)
        ours[f"calc/units/{UNIT_LINES}"] = json.dumps(unit_lines(KINDS)).encode()
        boot["chapters"] = chapters_of(ours, calc.worksheets())
        of_sheets = [CORE, *chapters(boot)]
        apart = {
            name: {n: c for n, c in ours.items() if archive_of(n) == name}
            for name in (*of_sheets, PRACTICE, CLIENT, VAN)
        }
        parts = [
            {
                "archives": of_sheets,
                "requests": runtime_sheets.requests(),
                "imports": imported_by(own, *of_sheets),
            },
            {
                "archives": [PRACTICE],
                "requests": runtime_practice.requests(),
                "imports": imported_by(own, *of_sheets, PRACTICE),
            },
            {"archives": [CLIENT], "requests": runtime_client.requests(), "imports": []},
            {"archives": [VAN], "requests": runtime_van.requests(), "imports": imported_by(own)},
        ]
        whole = {"stdlib.zip": library} | apart | {CORE: others | apart[CORE]}
        before = ask(work / "whole", boot | {"own": QUICK.parent}, all_zipped(whole), parts)
        start, practised, explained, later = (used_of(paths, boot) for paths in before["files"])
        start |= {f"{name.replace('.', '/')}.pyc" for name in ALSO}
        # A question, or a link for a client, must do without what comes with a van.
        start |= practised | explained
        more = only_later(start, later)
        start |= later - more
        apart[VAN] |= {n: (library | others)[n] for n in more & (library | others).keys()}
        library, others = (
            {n: files[n] for n in start & files.keys()} for files in (library, others)
        )
        archives = {"stdlib.zip": library} | apart | {CORE: others | apart[CORE]}
        for files in archives.values():
            files |= made_beside(files, before["made"], boot)
        write_bundle(out, boot, all_zipped(archives))
        again = [repeated(part["requests"]) for part in parts]
        some = [
            part | {"requests": [part["requests"][at] for at in places], "imports": []}
            for part, places in zip(parts, again, strict=True)
        ]
        after = ask(work / "bundle", boot, read_bundle(out), some)
        told = iter(before["answers"])
        known = [[next(told) for _ in (*part["requests"], "a fault")] for part in parts]
        for part, places, whole_replies in zip(parts, again, known, strict=True):
            for at in (*places, -1):
                request = [*part["requests"], "a fault"][at]
                one, other = whole_replies[at], after["answers"].pop(0)
                if one != other:
                    said = f"Trimmed, the page's Python answers {request}\n{other}\nnot\n{one}"
                    raise SiteError(said)
        replies = dict(zip(parts[0]["requests"], known[0][:-1], strict=True))
        for name, ids in chapters(boot).items():
            opened = [runtime_sheets.as_it_opens(sheet) for sheet in ids]
            part = {"archives": [CORE, name], "requests": opened, "imports": []}
            alone = ask(work / f"only {name}", boot, read_bundle(out), [part])["answers"]
            if alone[:-1] != [replies[request] for request in opened]:
                raise SiteError(f"The worksheets of {name} do not work without another chapter.")
        remember(out, work / "bundle", boot, replies)
    if (size := wire_size(out)) > WIRE_BUDGET:
        raise SiteError(f"The page's Python is {size:,} bytes on the wire, over {WIRE_BUDGET:,}")


def chapters(boot: dict) -> dict[str, list[str]]:
    """The ids of the worksheets in each archive of a chapter."""
    found: dict[str, list[str]] = {}
    for sheet, folder in boot["chapters"].items():
        found.setdefault(f"{folder}.zip", []).append(sheet)
    return found


def all_zipped(archives: dict[str, Files]) -> Files:
    """Each archive, packed of its files."""
    return {name: zipped(files) for name, files in archives.items()}


def repeated(requests: list[str]) -> list[int]:
    """The places of the questions that are put again: each stage goes with its first one."""
    first = ('"values": {}', '"rest": true', '"shut": true')
    return [
        at
        for at, request in enumerate(requests)
        if at % EVERY == 0 or any(one in request for one in first)
    ]


def boot_options() -> dict:
    """What the worker must know to start.

    The loader's own check values, where packages go, and what the loader uses of Python's program.
    """
    info = json.loads((PYODIDE / "pyodide-lock.json").read_bytes())["info"]
    version = ".".join(info["python"].split(".")[:2])
    wasm, script = (PYODIDE / f"pyodide.asm.{kind}" for kind in ("wasm", "mjs"))
    exports = used_exports(wasm.read_bytes(), script.read_text("utf-8"))
    places = {
        "sitePackages": f"/lib/python{version}/site-packages",
        "library": f"/lib/python{version.replace('.', '')}.zip",
    }
    return places | {"info": info, "exports": exports}


def compiled(work: Path, boot: dict, own: Path, packages: Path) -> list[Files]:
    """Return Python's library, the packages and `calc` as `.pyc`, with their data files.

    Docstrings and asserts go from all but `calc`, whose asserts are there to be heard; its
    docstrings and the annotations of its functions go.
    """
    library = read_zip(LIBRARY) | shortened(boot["sitePackages"])
    library["sitecustomize.py"] = QUICK.read_bytes()
    (work / "library.zip").write_bytes(zipped(library))
    (work / "others.zip").write_bytes(zipped(read_packages(packages)))
    ours = read_files(own.parent, page_files(own))
    ours = {n: lean(content) if n.endswith(".py") else content for n, content in ours.items()}
    (work / "own.zip").write_bytes(zipped(ours))
    shared = {"kind": "compile", "pyodide": PYODIDE, "stdlib": LIBRARY, "info": boot["info"]}
    for optimise, names in (True, ("library", "others")), (False, ("own",)):
        archives = [(f"{name}.zip", f"{name}-pyc.zip") for name in names]
        folders = {"folder": work, "packages": packages, "own": Path(__file__).parent}
        node(shared | folders | {"optimise": optimise, "archives": archives})
    return [read_zip(work / f"{name}-pyc.zip") for name in ("library", "others", "own")]


def read_packages(packages: Path) -> Files:
    """The files of what `calc` needs from outside. Raises SiteError if it is not installed."""
    roots = [packages / name for name in PACKAGES]
    roots = [root if root.is_dir() else root.with_suffix(".py") for root in roots]
    if missing := [root.name for root in roots if not root.exists()]:
        raise SiteError(f"Packages for the page are not installed: {', '.join(missing)}")
    return read_files(packages, roots)


def ask(folder: Path, boot: dict, archives: Files, parts: list[dict]) -> dict:
    """Start from these archives (and the loader, if it is among them) and put the questions."""
    folder.mkdir()
    for name, content in archives.items():
        (folder / name).write_bytes(content)
    places = {
        "pyodide": folder if "pyodide.mjs" in archives else PYODIDE,
        "stdlib": folder / "stdlib.zip",
        "folder": folder,
    }
    return node(boot | places | {"kind": "ask", "parts": parts, "optimise": False})


def node(job: dict) -> dict:
    """Run one job in the browser's own Python under node; see runtime.mjs."""
    file, output = (job["folder"] / name for name in ("job.json", "output.json"))
    file.write_text(json.dumps(job | {"output": output}, default=str))
    command = ["node", Path(__file__).with_suffix(".mjs"), file]
    # Python compiles file times of zones west of UTC into .pyc files that it then refuses.
    done = subprocess.run(command, text=True, capture_output=True, env=os.environ | {"TZ": "UTC"})
    if done.returncode:
        # node prints the failing line of a file whose lines are a million characters long.
        lines = [line[:500] for line in (done.stdout + done.stderr).splitlines()]
        raise SiteError("The page's Python failed under node:\n" + "\n".join(lines))
    return json.loads(output.read_bytes())


def remember(out: Path, folder: Path, boot: dict, replies: dict[str, str]) -> None:
    """Add to the bundle the memory of a Python started from it, which lies in `folder` as well.

    Raises SiteError if that Python, restored without any file, does not give the `replies`
    that the bundle gives to the same questions.
    """
    taken, fresh, nothing = (folder / name for name in (MEMORY, "fresh", "nothing.zip"))
    nothing.write_bytes(zipped({}))
    places = {"pyodide": folder, "stdlib": folder / "stdlib.zip", "folder": folder}
    shared = boot | places | {"optimise": False, "requests": runtime_sheets.opened()}
    node(shared | {"kind": "remember", "archives": [CORE, *chapters(boot)], "target": taken})
    restored = {"kind": "recall", "memory": taken, "fresh": fresh, "stdlib": nothing}
    recalled = node(shared | restored)["answers"]
    if recalled != [replies[request] for request in runtime_sheets.opened()]:
        raise SiteError("The page's Python answers in another way once its memory is restored.")
    head, content = written(taken.read_bytes(), fresh.read_bytes(), packed)
    (out / f"{MEMORY}{PACKED}").write_bytes(content)
    known = sorted({digest(replies[request].encode()) for request in runtime_sheets.known()})
    told = {
        "hash": digest(content),
        "program": digest((out / f"pyodide.asm.wasm{PACKED}").read_bytes()),
        "head": head,
        "sample": json.dumps(runtime_sheets.SAMPLE),
        "replies": known,
    }
    start = out / "boot.json"
    start.write_text(json.dumps(json.loads(start.read_bytes()) | {MEMORY: told}))


def digest(content: bytes) -> str:
    """SHA-256 in hex, as the page works it out."""
    return hashlib.sha256(content).hexdigest()


def write_bundle(out: Path, boot: dict, archives: Files) -> None:
    """Write the files in the form in which the worker fetches them."""
    out.mkdir(parents=True, exist_ok=True)
    for name in LOADER:
        shutil.copyfile(PYODIDE / name, out / f"{name.removesuffix('.mjs')}.js")
    wasm = (PYODIDE / "pyodide.asm.wasm").read_bytes()
    for name, content in {"pyodide.asm.wasm": wasm, **archives}.items():
        (out / f"{name}{PACKED}").write_bytes(packed(content))
    hashes = {"archives": {name: digest(content) for name, content in archives.items()}}
    (out / "boot.json").write_text(json.dumps(boot | hashes))


def read_bundle(out: Path) -> Files:
    """The bundle's files as the worker has them after unpacking."""
    named = {f"{name.removesuffix('.mjs')}.js": name for name in LOADER}
    files = {named.get(file.name, file.name): file.read_bytes() for file in out.iterdir()}
    return {
        name.removesuffix(PACKED): gzip.decompress(content) if name.endswith(PACKED) else content
        for name, content in files.items()
    }


def wire_size(out: Path) -> int:
    """Bytes of what a page starts from as a host sends it; it packs what is not packed yet.

    Of the chapters it has one, here the largest.
    """
    later = {f"{name}{PACKED}" for name in (VAN, PRACTICE, CLIENT, MEMORY)}
    contents = {file.name: file.read_bytes() for file in out.iterdir() if file.name not in later}
    sizes = {n: len(c if n.endswith(PACKED) else gzip.compress(c)) for n, c in contents.items()}
    of_sheets = chapters(json.loads(contents["boot.json"]))
    *others, _ = sorted(sizes[f"{name}{PACKED}"] for name in of_sheets)
    return sum(sizes.values()) - sum(others)


def main() -> int:
    """Build, report, and return the exit code."""
    parser = argparse.ArgumentParser(prog="python -m build_scripts.runtime", description=__doc__)
    parser.add_argument("--out", type=Path, default=PROJECT / "build" / "runtime")
    options = parser.parse_args()
    try:
        build_runtime(options.out)
    except SiteError as error:
        print(error, file=sys.stderr)
        return 1
    for file in sorted(options.out.iterdir()):
        print(f"{file.stat().st_size:>12,} {file.name}")
    print(f"{wire_size(options.out):>12,} bytes on the wire until the first answer")
    return 0


if __name__ == "__main__":
    sys.exit(main())
