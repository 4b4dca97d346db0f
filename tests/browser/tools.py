"""A server that can be killed, and a watch over what a page does."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import BrowserContext

from build_scripts.engine import BOUND

PROJECT = Path(__file__).resolve().parents[2]

VIEWPORTS = {"phone": {"width": 360, "height": 780}, "desktop": {"width": 1280, "height": 800}}

CHROMIUM = {
    "executable_path": os.environ.get("LUGWISE_CHROMIUM", "/usr/bin/chromium"),
    "args": [
        "--no-sandbox",  # CI runs as root, where the sandbox cannot start
        "--disable-gpu",
        # The optimising compilers would work longer on each new page and Python than most tests
        # last, and threads that collect garbage beside it find both cores in use.
        "--js-flags=--liftoff-only --no-opt --single-threaded-gc",
        "--disable-background-networking",
        "--disable-component-update",
        # No name but this machine's resolves, so that a request to outside fails loudly.
        "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
    ],
}
"""How to start the browser."""

NO_PYTHON = """
    window.OwnWorker = window.Worker;
    window.Worker = class { postMessage() {} terminate() {} };
"""
"""A script for pages on which Python is not to start: what stands there is what was built."""


class Server:
    """A server as a process of its own, on a port of its own, that can be killed and come back.

    A process, because a server inside the test would leave sockets that still answer.
    """

    def __init__(self, root: Path, module: str = "build_scripts.server", **environment: str):
        self.root, self.module = root, module
        self.environment = {**os.environ, **environment}
        self.port = 0
        self.start()

    @property
    def url(self) -> str:
        """The site's address, with its last slash."""
        return f"http://127.0.0.1:{self.port}/"

    def start(self) -> None:
        """Start, on the same port as before if there was one."""
        command = [sys.executable, "-m", self.module, "--root", self.root, "--port", str(self.port)]
        self.process = subprocess.Popen(
            [*BOUND, *command], cwd=PROJECT, env=self.environment, stdout=subprocess.PIPE, text=True
        )
        ready = self.process.stdout.readline()
        assert "http://" in ready, f"the server did not start: {ready!r}"
        self.port = int(ready.split("http://")[1].split("/")[0].rpartition(":")[2])

    def kill(self) -> None:
        """End at once, connections and all: the signal is gone."""
        self.process.kill()
        self.process.wait()
        self.process.stdout.close()


class Watch:
    """What went wrong in a context's pages: console errors, exceptions, requests to outside."""

    def __init__(self, context: BrowserContext, origin: str) -> None:
        self.errors: list[str] = []
        self.outside: list[str] = []
        self.origin = origin
        context.on("request", self._request)
        context.on("console", self._console)
        context.on("weberror", lambda error: self.errors.append(error.error.stack))

    def _request(self, request) -> None:
        if not request.url.startswith((self.origin, "data:", "blob:")):
            self.outside.append(request.url)

    def _console(self, message) -> None:
        if message.type == "error":
            place = message.location.get("url", "")
            self.errors.append(f"{message.text} ({place})")

    def check(self, allow: Callable[[str], bool] = lambda error: False) -> None:
        """Fail on any request to outside and on any error that is not allowed."""
        assert not self.outside, f"requests to outside: {self.outside}"
        errors = [error for error in self.errors if not allow(error)]
        assert not errors, f"errors in the console: {errors}"
