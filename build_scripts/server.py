"""Serve the built site as a static host would: `python -m build_scripts.server --root site`.

It obeys the site's own `_headers`, so what is tested here is what a host will send.
"""

import argparse
import fnmatch
import functools
import gzip
import re
import sys
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import quote, unquote, urlsplit

from build_scripts.site_list import type_of

COMPRESSED = ("text/", "application/json", "application/xml", "application/manifest", "image/svg")


class SiteServer(ThreadingHTTPServer):
    """A threading server that knows its site's folder."""

    daemon_threads = True

    def __init__(self, address: tuple[str, int], handler: type, root: Path) -> None:
        self.root = root.resolve()
        super().__init__(address, handler)

    def handle_error(self, request, client_address):
        # A browser that leaves a page cuts its connections; that is no fault of ours.
        if not isinstance(sys.exception(), ConnectionError | TimeoutError):
            super().handle_error(request, client_address)


class SiteHandler(BaseHTTPRequestHandler):
    """Answers GET and HEAD from the site's folder."""

    server: SiteServer
    protocol_version = "HTTP/1.1"
    timeout = 60  # an idle connection gives its thread back
    server_version, sys_version = "Lugwise", ""

    def do_GET(self):
        path = unquote(urlsplit(self.path).path)
        file = self.file_for(path)
        if file is None:
            self.send_file(self.server.root / "404.html", path, HTTPStatus.NOT_FOUND)
        elif file.is_dir():
            self.send_to_folder(path)
        else:
            self.send_file(file, path, HTTPStatus.OK)

    do_HEAD = do_GET

    def file_for(self, path: str) -> Path | None:
        """The file or the slashless folder that a path names, or None."""
        try:
            file = (self.server.root / path.lstrip("/")).resolve()
            if path.endswith("/"):
                file /= "index.html"
            inside = file.is_relative_to(self.server.root) and file.name not in {
                "_headers",
                ".htaccess",
            }
            if inside and (file.is_file() or (file / "index.html").is_file()):
                return file
        except (OSError, ValueError):  # a name too long, a null byte
            pass
        return None

    def send_to_folder(self, path: str) -> None:
        query = urlsplit(self.path).query
        self.send_response(HTTPStatus.MOVED_PERMANENTLY)
        # One leading slash: two would name another host.
        self.send_header("Location", "/" + quote(path.strip("/")) + "/" + (query and f"?{query}"))
        self.send_header("Content-Length", "0")
        self.end_headers()

    def send_file(self, file: Path, path: str, status: HTTPStatus) -> None:
        """Send one file with its type, its compression and the site's own headers."""
        try:
            info = file.stat()
            body = file.read_bytes()
            if file.name == "sitemap.xml":
                body = with_own_address(body, self.headers.get("Host", ""))
        except OSError:
            body, info = b"There is nothing at this address.\n", None
        kind = type_of(file.name) if info else type_of(".txt")
        headers = {"Content-Type": kind, **headers_for(self.server.root, path)}
        tag = ""
        # Without validators a page or sw.js that was put back to an older state is seen at once.
        untagged = file.name in ("sw.js", "sitemap.xml") or file.suffix == ".html"
        if info and status == HTTPStatus.OK and not untagged:
            tag = f"{info.st_mtime_ns:x}-{info.st_size:x}"
        if info and kind.startswith(COMPRESSED) and file.name != "sitemap.xml":
            headers["Vary"] = "Accept-Encoding"
            if "gzip" in self.headers.get("Accept-Encoding", ""):
                headers["Content-Encoding"] = "gzip"
                body = compressed(file, info.st_mtime_ns, info.st_size)
                tag = tag and f"{tag}-gz"
        if tag:
            headers["ETag"] = f'"{tag}"'
            if self.headers.get("If-None-Match") == headers["ETag"]:
                status, body = HTTPStatus.NOT_MODIFIED, b""
        self.send_response(status)
        for name, value in headers.items():
            self.send_header(name, value)
        if status != HTTPStatus.NOT_MODIFIED:
            self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.send_body(body)

    def send_body(self, body: bytes) -> None:
        self.wfile.write(body)

    def log_message(self, format, *args):
        """Say nothing: the terminal keeps the line that tells where to look."""


def with_own_address(site_map: bytes, host: str) -> bytes:
    """The site map with the address it is really served at, which no build can know."""
    if not re.fullmatch(r"[\w.\[\]:-]+", host):
        return site_map
    return re.sub(rb"<loc>https?://[^/<]+", b"<loc>http://" + host.encode(), site_map)


@functools.lru_cache(maxsize=512)
def compressed(file: Path, changed: int, size: int) -> bytes:
    """The file's bytes through gzip, kept in memory until the file changes."""
    return gzip.compress(file.read_bytes(), mtime=0)


def headers_for(root: Path, path: str) -> dict[str, str]:
    """What the site's `_headers` says for a path; later blocks win."""
    file = root / "_headers"
    if not file.is_file():
        return {}
    blocks = read_headers(file, file.stat().st_mtime_ns)
    return {
        name: value
        for pattern, block in blocks
        if fnmatch.fnmatchcase(path, pattern)
        for name, value in block.items()
    }


@functools.lru_cache(maxsize=4)
def read_headers(file: Path, changed: int) -> list[tuple[str, dict[str, str]]]:
    """Read `_headers`: a path pattern at the margin, its headers indented below it."""
    blocks: list[tuple[str, dict[str, str]]] = []
    for line in file.read_text("utf-8").splitlines():
        if line.startswith(" "):
            name, _, value = line.strip().partition(": ")
            blocks[-1][1][name] = value
        elif line:
            blocks.append((line, {}))
    return blocks


def serve(arguments: list[str] | None = None, handler: type = SiteHandler) -> int:
    """Serve until interrupted; returns the exit code."""
    parser = argparse.ArgumentParser(prog="python -m build_scripts.server", description=__doc__)
    parser.add_argument("--root", type=Path, default=Path("site"), help="folder of the built site")
    parser.add_argument("--port", type=int, default=8000, help="0 takes any free port")
    parser.add_argument("--host", default="127.0.0.1", help="0.0.0.0 opens it to your own network")
    options = parser.parse_args(arguments)
    if not (options.root / "index.html").is_file():
        print(f"There is no built site in {options.root}.", file=sys.stderr)
        return 1
    try:
        server = SiteServer((options.host, options.port), handler, options.root)
    except (OSError, OverflowError) as error:
        sentence = f"Port {options.port} cannot be used ({error}): choose another with --port."
        print(sentence, file=sys.stderr)
        return 1
    host = "127.0.0.1" if options.host == "0.0.0.0" else options.host
    more = "; from your network by this machine's own name" if host != options.host else ""
    address = f"http://{host}:{server.server_port}/"
    print(f"Lugwise is at {address}{more} (Ctrl+C ends it)", flush=True)
    try:
        server.serve_forever()
    except KeyboardInterrupt:
        print()
    return 0


if __name__ == "__main__":
    sys.exit(serve())
