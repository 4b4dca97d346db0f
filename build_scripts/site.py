"""Build the whole site into `site/`: `python -m build_scripts.site`.

It is made aside and put in place only when it is whole, so a failed build leaves the last good
site standing.
"""

import hashlib
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import calc
from build_scripts import client_files
from build_scripts.finish import SiteError, finish
from build_scripts.runtime import EVERY, build_runtime
from build_scripts.runtime_files import page_files
from build_scripts.search_index import complete, wait

PROJECT = Path(__file__).resolve().parent.parent
RUNTIME = PROJECT / "build" / "runtime"
RUNTIME_STAMP = PROJECT / "build" / "runtime.key"


def main() -> int:
    """Build, report, and return the exit code."""
    site, new = PROJECT / "site", PROJECT / "build" / "site"
    try:
        runtime()
        guides(new)
        complete(new)
        wait(new)
        shortcuts(new)
        client_files.write(new)
        shutil.copytree(RUNTIME, new / "assets" / "runtime")
        files = finish(new)
    except (SiteError, subprocess.CalledProcessError) as error:
        print(error, file=sys.stderr)
        return 1
    shutil.rmtree(site, ignore_errors=True)
    new.rename(site)
    size = sum(size for _, size in files.values())
    print(f"Built site/: {len(files)} files, {size / 1e6:.1f} MB to save for use without signal.")
    return 0


def runtime() -> None:
    """Make the bundle that the page's Python starts from, unless nothing it is made of changed."""
    key = runtime_key()
    if RUNTIME.is_dir() and RUNTIME_STAMP.is_file() and RUNTIME_STAMP.read_text() == key:
        return
    print("Building the Python that runs in the page …", flush=True)
    RUNTIME_STAMP.unlink(missing_ok=True)
    shutil.rmtree(RUNTIME, ignore_errors=True)
    RUNTIME.parent.mkdir(exist_ok=True)
    build_runtime(RUNTIME)
    RUNTIME_STAMP.write_text(key)


def runtime_key() -> str:
    """SHA-256 over everything the bundle is made of, and how much of it was asked again."""
    sources = [
        *page_files(PROJECT / "calc"),
        *(PROJECT / "build_scripts").glob("runtime*"),
        PROJECT / "package-lock.json",
        PROJECT / "requirements.txt",
    ]
    digest = hashlib.sha256(f"every {EVERY}\n".encode())
    for file in sorted(sources):
        if file.is_file():
            content = file.read_bytes()
            digest.update(f"{file.relative_to(PROJECT)} {len(content)}\n".encode() + content)
    return digest.hexdigest()


def shortcuts(site: Path) -> None:
    """Put a shortcut to each quick check into the web manifest: a phone shows only a few."""
    file = site / "manifest.webmanifest"
    manifest = json.loads(file.read_text("utf-8"))
    manifest["shortcuts"] = [
        {"name": sheet.title, "description": sheet.about, "url": f"./checks/{sheet.id}/"}
        for sheet in map(calc.find, calc.chapters()[0][1])
    ]
    file.write_text(json.dumps(manifest, ensure_ascii=False), "utf-8")


def guides(to: Path) -> None:
    """Turn the Markdown guides into pages; any warning stops the build."""
    print("Building the pages …", flush=True)
    mkdocs = [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet"]
    # The theme's long notice about its own future would drown a warning about ours.
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    subprocess.run([*mkdocs, "--site-dir", to], cwd=PROJECT, env=environment, check=True)


if __name__ == "__main__":
    sys.exit(main())
