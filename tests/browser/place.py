"""A copy of the built site that a test may break, change and take off line."""

import re
import shutil
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from build_scripts.server import headers_for
from build_scripts.site_list import list_files, write_worker
from tests.browser.tools import NO_PYTHON, Server, Watch

SAVED = re.compile(r"^Saved for use without signal: (\d+) of \1$")
SECOND = " (second edition)"


class Place:
    """A copy of the site with a server that can fail, and pages in one browser profile."""

    def __init__(self, site: Path, folder: Path, browser, viewport) -> None:
        self.root, self.control = folder / "site", folder / "control"
        self.browser, self.viewport = browser, viewport
        shutil.copytree(site, self.root)
        self.control.mkdir()
        self.server = Server(
            self.root, "tests.browser.breakable_server", LUGWISE_TEST_CONTROL=str(self.control)
        )
        self.context = browser.new_context(viewport=viewport, locale="en-GB")
        self.watch = Watch(self.context, self.server.url)
        self.expected: list[str] = []  # parts of console errors that the test itself brings about

    def check(self) -> None:
        """Fail on what went wrong since the last check, but for what was expected to."""
        self.watch.check(allow=lambda error: any(part in error for part in self.expected))
        self.watch.errors.clear()
        self.expected = []

    def close(self) -> None:
        self.context.close()
        self.server.kill()
        self.check()

    @property
    def files(self) -> dict[str, tuple[str, int]]:
        return list_files(self.root)

    @property
    def largest(self) -> str:
        return list(self.files)[-1]

    def open(self, path: str = "", python: bool = False) -> Page:
        """Open a page anew; Python starts in it only where that is asked for."""
        page = self.context.new_page()
        if not python:
            page.add_init_script(NO_PYTHON)
        page.goto(self.server.url + path)
        return page

    def open_saved(self, python: bool = False) -> Page:
        page = self.open(python=python)
        expect(line_of(page)).to_have_text(SAVED, timeout=60_000)
        return page

    def lighten(self) -> None:
        """Leave little of the large files: what they hold matters only where Python starts."""
        for file in self.root.rglob("*.bin"):
            file.write_bytes(file.read_bytes()[:1_000])
        write_worker(self.root, self.security_headers())

    def renew(self) -> None:
        """Go on in a fresh profile, which has kept nothing."""
        self.context.close()
        self.check()
        self.context = self.browser.new_context(viewport=self.viewport, locale="en-GB")
        self.watch = Watch(self.context, self.server.url)

    def fail(self, how: str, path: str) -> None:
        (self.control / how).write_text(f"/{path}")

    def mend(self) -> None:
        for control in self.control.iterdir():
            control.unlink(missing_ok=True)

    def asked(self) -> list[str]:
        """The paths asked for since the last `mend`, without the leading slash."""
        log = self.control / "requests"
        return [line[1:] for line in log.read_text().splitlines()] if log.exists() else []

    def release(self, but: str = "") -> None:
        """Deploy a second edition: every page's title changes; `but` names a file left old."""
        old = {path: (self.root / path).read_bytes() for path in [but] if path}
        for file in self.root.rglob("*.html"):
            file.write_text(file.read_text().replace("</title>", f"{SECOND}</title>"))
        write_worker(self.root, self.security_headers())
        for path, content in old.items():
            (self.root / path).write_bytes(content)

    def security_headers(self) -> dict[str, str]:
        headers = headers_for(self.root, "/")
        return {name: headers[name] for name in headers if name != "Cache-Control"}

    def edit_worker(self, old: str, new: str) -> None:
        file = self.root / "sw.js"
        assert old in file.read_text()
        file.write_text(file.read_text().replace(old, new))


def line_of(page: Page) -> Locator:
    return page.locator("[data-offline-line]")


def kept_by(page: Page) -> list[str]:
    """The last part of every key in the cache: hashes, and "active"."""
    return page.evaluate(
        """async () => (await (await caches.open("lugwise-files")).keys())
            .map((request) => request.url.split("/_b/")[1])"""
    )


def drop(page: Page, digest: str) -> None:
    page.evaluate(
        """async (digest) => {
            const cache = await caches.open("lugwise-files");
            for (const request of await cache.keys())
                if (request.url.endsWith(digest)) await cache.delete(request);
        }""",
        digest,
    )


def is_active(page: Page) -> bool:
    return page.evaluate("async () => !!(await navigator.serviceWorker.getRegistration())?.active")
