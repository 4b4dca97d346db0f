"""Firefox without a window, by Marionette: JSON over a socket, each message after its length."""

import json
import os
import re
import shutil
import socket
from typing import Any, ClassVar

from build_scripts.engine import PATIENCE, Engine, EngineError, written

FIREFOX = os.environ.get("LUGWISE_FIREFOX", "firefox-esr")

ELEMENT = "element-6066-11e4-a52e-4f735466cecf"
"""By this name the protocol speaks of an element."""

OWN = {
    "marionette.port": 0,  # any that is free
    "javascript.options.ion": False,
    "javascript.options.wasm_optimizingjit": False,
    "devtools.console.stdout.content": True,
    "devtools.console.stdout.chrome": False,
    # It asks nothing of any network by itself.
    "app.normandy.enabled": False,
    "app.shield.optoutstudies.enabled": False,
    "app.update.enabled": False,
    "browser.newtabpage.enabled": False,
    "browser.safebrowsing.blockedURIs.enabled": False,
    "browser.safebrowsing.downloads.enabled": False,
    "browser.safebrowsing.malware.enabled": False,
    "browser.safebrowsing.phishing.enabled": False,
    "browser.search.update": False,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.homepage_override.mstone": "ignore",
    "browser.startup.page": 0,
    "browser.topsites.contile.enabled": False,
    "datareporting.healthreport.uploadEnabled": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "dom.push.connection.enabled": False,
    "extensions.getAddons.cache.enabled": False,
    "extensions.systemAddon.update.enabled": False,
    "extensions.update.enabled": False,
    "media.gmp-manager.updateEnabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "network.trr.mode": 5,
    "nimbus.rollouts.enabled": False,
    "security.OCSP.enabled": 0,
    "services.settings.server": "data:,none",
    "toolkit.telemetry.enabled": False,
    "toolkit.telemetry.server": "",
}

ERRORS = """
const found = Services.console.getMessageArray()
    .filter((one) => one instanceof Ci.nsIScriptError && !(one.flags & one.warningFlag))
    .filter(({ sourceName, innerWindowID }) => innerWindowID || sourceName.startsWith("http"))
    // Its own scripts fail on their own, such as that of the history over a long address.
    .filter(({ sourceName }) => !/^(resource|chrome):/.test(sourceName))
    // What was still being loaded as its page was left has lost its address.
    .filter(({ errorMessage }) => !errorMessage.startsWith("Failed to load ‘’"));
Services.console.reset();
return found.map(String);
"""

OF_A_PAGE = re.compile(r"console\.error: (?!\w+: $)")
"""What a page says; Firefox's own scripts put their name before."""


class Firefox(Engine):
    """Firefox; its settings are preferences."""

    name = "Firefox"
    full_speed: ClassVar = {
        "javascript.options.ion": True,
        "javascript.options.wasm_optimizingjit": True,
    }

    wire: socket.socket | None = None

    @classmethod
    def is_here(cls) -> bool:
        return shutil.which(FIREFOX) is not None

    def start(self) -> None:
        through = {
            "network.proxy.type": 1,
            "network.proxy.http": "127.0.0.1",
            "network.proxy.http_port": self.trap.port,
            "network.proxy.ssl": "127.0.0.1",
            "network.proxy.ssl_port": self.trap.port,
            "network.proxy.no_proxies_on": "127.0.0.1",
        }
        profile = self.home / "profile"
        profile.mkdir()
        lines = {**OWN, **through, **self.settings}.items()
        (profile / "user.js").write_text(
            "".join(
                f"user_pref({json.dumps(name)}, {json.dumps(value)});\n" for name, value in lines
            )
        )
        self.programs.start(
            FIREFOX,
            "--headless",
            "--no-remote",
            "--marionette",
            "--remote-allow-system-access",  # for its console
            "--profile",
            profile,
            MOZ_CRASHREPORTER_DISABLE="1",
            MOZ_REMOTE_SETTINGS_DEVTOOLS="1",  # or it minds no other settings.server
        )
        port = self.programs.wait_for(
            "Firefox's port", lambda: written(profile / "MarionetteActivePort")
        )
        self.wire = socket.create_connection(("127.0.0.1", int(port)), timeout=PATIENCE + 10)
        self.stream = self.wire.makefile("rb")
        self.sent = 0
        self._receive()  # its greeting
        self._tell("WebDriver:NewSession", capabilities={})
        self._tell("WebDriver:SetTimeouts", script=PATIENCE * 1000, pageLoad=PATIENCE * 1000)

    def close(self) -> None:
        if self.wire:
            self.stream.close()
            self.wire.close()
        super().close()

    def _receive(self) -> Any:
        length = b""
        while (sign := self.stream.read(1)) != b":":
            if not sign:
                raise EngineError(f"Firefox has gone:\n{self.programs.said()}")
            length += sign
        return json.loads(self.stream.read(int(length)))

    def _tell(self, command: str, **words: Any) -> Any:
        """Give a command and return its result."""
        assert self.wire
        self.sent += 1
        message = json.dumps([0, self.sent, command, words]).encode()
        self.wire.sendall(b"%d:%b" % (len(message), message))
        _, number, error, result = self._receive()
        if error or number != self.sent:
            raise EngineError(f"{command}: {error}")
        return result

    def open(self, address: str) -> None:
        self._tell("WebDriver:Navigate", url=address)

    def execute(self, script: str, arguments: list[Any]) -> dict[str, Any]:
        return self._tell("WebDriver:ExecuteAsyncScript", script=script, args=arguments)["value"]

    def press(self, selector: str, text: str) -> None:
        found = self._tell("WebDriver:FindElement", using="css selector", value=selector)
        self._tell("WebDriver:ElementSendKeys", id=found["value"][ELEMENT], text=text)

    def errors(self) -> list[str]:
        self._tell("Marionette:SetContext", value="chrome")
        found = self._tell("WebDriver:ExecuteScript", script=ERRORS, args=[])["value"]
        self._tell("Marionette:SetContext", value="content")
        lines = self.programs.said_since()
        return found + [line for line in lines if OF_A_PAGE.match(line)]
