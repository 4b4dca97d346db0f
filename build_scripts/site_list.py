"""The list of a built site's files, and the service worker that carries it."""

import hashlib
import json
import posixpath
import re
from pathlib import Path

TEMPLATE = Path(__file__).with_name("sw.template.js")
PAGE = Path(__file__).parents[1] / "docs" / "assets" / "offline.js"
SAID = ("BROKE", "LOGIN", "REFUSED", "ERROR")
"""Sentences that the page has and the service worker says too."""

NOT_LISTED = frozenset({"sw.js", "_headers", ".htaccess", "sitemap.xml"})
"""The list's own carrier, files that only a host reads, and the site map, which names full
addresses that no build can know: the service worker makes its own."""

TYPES = {
    ".css": "text/css; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".ico": "image/x-icon",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".xml": "application/xml",
    ".zip": "application/zip",
}
OTHER_TYPE = "application/octet-stream"

FileList = dict[str, tuple[str, int]]


def type_of(path: str) -> str:
    """The Content-Type of a file, by its ending.

    What the runtime packs is plain bytes, never a Content-Encoding: the page inflates it itself.
    """
    return TYPES.get(posixpath.splitext(path)[1], OTHER_TYPE)


def list_files(site: Path) -> FileList:
    """Every file that a reader's browser may ask for: path -> (SHA-256 in hex, bytes).

    In the order to save them: pages first, then small before large, so that the pages read
    without signal long before the large runtime has come.
    """
    found = []
    for file in site.rglob("*"):
        path = file.relative_to(site).as_posix()
        if file.is_file() and path not in NOT_LISTED:
            content = file.read_bytes()
            later = not path.endswith(".html")
            found.append((later, len(content), path, hashlib.sha256(content).hexdigest()))
    return {path: (digest, size) for _, size, path, digest in sorted(found)}


def sentences() -> dict[str, str]:
    """Return the sentences of `SAID` by their names, as the page's script has them."""
    text = PAGE.read_text("utf-8")
    found = dict(re.findall(r'^const ([A-Z]+) = "(.*)";', text, re.MULTILINE))
    return {name: found[name] for name in SAID}


def version_of(files: FileList) -> str:
    """Twelve hex digits that change when any file changes."""
    return hashlib.sha256(json.dumps(sorted(files.items())).encode()).hexdigest()[:12]


def write_worker(site: Path, headers: dict[str, str]) -> FileList:
    """Write `sw.js` with the list inside it, so that version and content cannot part.

    `headers` are put on every response from the cache, as a host puts them on its own.
    """
    files = list_files(site)
    text = TEMPLATE.read_text("utf-8")
    for mark, value in {
        "__VERSION__": version_of(files),
        "__FILES__": files,
        "__TYPES__": TYPES,
        "__HEADERS__": headers,
        **{f"__{name}__": sentence for name, sentence in sentences().items()},
    }.items():
        if text.count(mark) != 1:
            raise ValueError(f"{TEMPLATE.name} must hold {mark} exactly once")
        text = text.replace(mark, json.dumps(value, ensure_ascii=False))
    (site / "sw.js").write_text(text, "utf-8")
    return files
