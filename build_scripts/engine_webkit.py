"""WebKitGTK's MiniBrowser by WebDriver, JSON over HTTP, on a display that nobody sees."""

import http.client
import json
import os
import shutil
import socket
from contextlib import suppress
from pathlib import Path
from random import randrange
from typing import Any, ClassVar

from build_scripts.engine import PATIENCE, Engine, EngineError, written
from build_scripts.engine_firefox import ELEMENT

DRIVER = os.environ.get("LUGWISE_WEBKIT_DRIVER", "WebKitWebDriver")
BROWSER = os.environ.get("LUGWISE_MINI_BROWSER", "")

BESIDE_LIBRARY = "*/webkit2gtk-4.*/MiniBrowser"
"""Where Debian has it: in the library's own folder."""

OWN = {
    "GDK_BACKEND": "x11",
    "GSETTINGS_BACKEND": "memory",
    "JSC_useOMGJIT": "0",
    "LIBGL_ALWAYS_SOFTWARE": "1",
    "NO_AT_BRIDGE": "1",
    "WEBKIT_DISABLE_COMPOSITING_MODE": "1",
    "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1",  # as root it cannot start
}

LISTEN = """() => {
    if (window.engineErrors) return;
    window.engineErrors = [];
    const note = (...words) => window.engineErrors.push(words.map(String).join(" "));
    addEventListener("error", ({ message, filename }) => note(message, filename));
    addEventListener("unhandledrejection", ({ reason }) => note(reason));
    addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) =>
        note(violatedDirective, blockedURI));
    const say = console.error;
    console.error = (...words) => {
        note(...words);
        say.apply(console, words);
    };
}"""


def _free_port() -> int:
    """Return a port that nobody has, below those that the system gives out by itself."""
    while True:
        with (
            suppress(OSError),
            socket.create_server(("127.0.0.1", randrange(20_000, 32_000))) as own,
        ):
            return own.getsockname()[1]


def _mini_browser() -> str:
    return BROWSER or next(map(str, sorted(Path("/usr/lib").glob(BESIDE_LIBRARY))), "")


class WebKit(Engine):
    """WebKitGTK, with a display of its own; its settings are variables of its environment."""

    name = "WebKit"
    full_speed: ClassVar = {"JSC_useOMGJIT": "1"}

    @classmethod
    def is_here(cls) -> bool:
        return all(map(shutil.which, (DRIVER, "Xvfb"))) and bool(_mini_browser())

    def start(self) -> None:
        if not _mini_browser():
            raise EngineError("WebKitGTK's MiniBrowser is not here: LUGWISE_MINI_BROWSER names it")
        number = self.home / "display"
        # It takes a display that is free, and writes down which.
        command = f'exec Xvfb -displayfd 3 -screen 0 1280x900x24 -nolisten tcp 3>"{number}"'
        self.programs.start("sh", "-c", command)
        display = self.programs.wait_for("the display", lambda: written(number))
        self.port = _free_port()
        self.session = ""
        self.found: list[str] = []
        self.programs.start(
            DRIVER, f"--port={self.port}", DISPLAY=f":{display}", **{**OWN, **self.settings}
        )
        self.programs.wait_for("the driver", self._is_up)
        wanted = {
            "webkitgtk:browserOptions": {
                "binary": _mini_browser(),
                "args": ["--automation"],
            },
            "proxy": {
                "proxyType": "manual",
                "httpProxy": self.trap.address,
                "sslProxy": self.trap.address,
                "noProxy": ["127.0.0.1"],
            },
        }
        made = self._ask("POST", "/session", {"capabilities": {"alwaysMatch": wanted}})
        self.session = f"/session/{made['sessionId']}"
        limits = {"script": PATIENCE * 1000, "pageLoad": PATIENCE * 1000}
        self._ask("POST", "/timeouts", limits)

    def _is_up(self) -> bool:
        with suppress(OSError, http.client.HTTPException):
            return self._ask("GET", "/status")["ready"]
        return False

    def _ask(self, method: str, path: str, body: Any = None) -> Any:
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE + 10)
        words = json.dumps(body) if body is not None else None
        try:
            connection.request(method, self.session + path, words)
            value = json.load(connection.getresponse())["value"]
        finally:
            connection.close()
        if isinstance(value, dict) and "error" in value:
            raise EngineError(f"{path}: {value['error']}: {value['message']}")
        return value

    def open(self, address: str) -> None:
        self.found += self._heard()
        self._ask("POST", "/url", {"url": address})
        self.run(LISTEN)

    def execute(self, script: str, arguments: list[Any]) -> dict[str, Any]:
        return self._ask("POST", "/execute/async", {"script": script, "args": arguments})

    def press(self, selector: str, text: str) -> None:
        found = self._ask("POST", "/element", {"using": "css selector", "value": selector})
        self._ask("POST", f"/element/{found[ELEMENT]}/value", {"text": text})

    def errors(self) -> list[str]:
        """Its console cannot be had while it is driven: what a page told since it was loaded."""
        found = [*self.found, *self._heard()]
        self.found.clear()
        return found

    def _heard(self) -> list[str]:
        return self.run("() => window.engineErrors?.splice(0) ?? []")
