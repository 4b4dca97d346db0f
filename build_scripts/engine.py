"""Another browser engine in our hands, by the standard library alone.

Every engine is driven by the same few words: `open` an address, `run` a function in the page, wait
until one finds something, `press` keys. All that was started ends with it, or with our own process,
however that ends. What an engine asks of any other machine is caught and can be counted.
"""

import os
import shutil
import signal
import socket
import subprocess
import time
from abc import ABC, abstractmethod
from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any, ClassVar, Self

PATIENCE = 120
"""Seconds for an engine to start or a page to load: two slow cores, both in use."""

BOUND = ("setpriv", "--pdeathsig", "KILL") if shutil.which("setpriv") else ()
"""Before a command: the system ends it if we are ended so that we cannot."""

IN_PAGE = """
const done = arguments[arguments.length - 1];
const failed = (error) => done({ failed: `${error}\\n${error?.stack ?? ""}` });
try {
    Promise.resolve((%s)(...[...arguments].slice(0, -1))).then(
        (value) => done({ value: value === undefined ? null : value }), failed);
} catch (error) {
    failed(error);
}
"""


class EngineError(Exception):
    """What an engine, or a function that runs in its page, says went wrong."""


class Trap:
    """A proxy for every machine but this one: it answers nobody, and knows who came."""

    def __init__(self) -> None:
        self.socket = socket.create_server(("127.0.0.1", 0), backlog=100)
        self.socket.setblocking(False)
        self.port = self.socket.getsockname()[1]
        self.address = f"127.0.0.1:{self.port}"

    def caught(self) -> list[str]:
        """Return the first line of each request since the last look."""
        lines = []
        with suppress(BlockingIOError):
            while True:
                asker, _ = self.socket.accept()
                with asker:
                    asker.settimeout(1)
                    with suppress(OSError):
                        lines.append(asker.recv(500).decode("latin-1").partition("\r")[0])
        return lines


class Programs:
    """Programs that end with us, and with them all that they have started."""

    def __init__(self, home: Path) -> None:
        self.home, self.log = home, home / "log.txt"
        self.out = self.log.open("wb")
        self.read = 0
        self.running: list[subprocess.Popen] = []

    def start(self, *command: str | Path, **environment: str) -> None:
        """Start a program with a home of its own; what it says goes into the log."""
        own = {"HOME": str(self.home), "XDG_RUNTIME_DIR": str(self.home), "LANG": "C.UTF-8"}
        program = subprocess.Popen(
            [*BOUND, *map(str, command)],
            env={"PATH": os.environ["PATH"], **own, **environment},
            stdin=subprocess.DEVNULL,
            stdout=self.out,
            stderr=subprocess.STDOUT,
            start_new_session=True,  # it heads a group, which is ended as a whole
        )
        self.running.append(program)

    def said(self) -> str:
        """Return all that they have said."""
        return self.log.read_text("utf-8", "replace")

    def said_since(self) -> list[str]:
        """Return the lines that they have said since the last look."""
        with self.log.open("rb") as log:
            log.seek(self.read)
            whole, end, _ = log.read().rpartition(b"\n")
        self.read += len(whole + end)
        return whole.decode("utf-8", "replace").splitlines()

    def wait_for(self, what: str, look: Callable[[], Any]) -> Any:
        """Return what `look` finds as soon as it finds it.

        Raises EngineError if a program ends first, or none finds it in time.
        """
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            if found := look():
                return found
            for program in self.running:
                if program.poll() is not None:
                    raise EngineError(f"{program.args} has ended:\n{self.said()}")
            time.sleep(0.02)
        raise EngineError(f"{what} did not come:\n{self.said()}")

    def end(self) -> None:
        """End all, the newest first."""
        for program in reversed(self.running):
            with suppress(ProcessLookupError):
                os.killpg(program.pid, signal.SIGKILL)
            program.wait()
        self.running.clear()
        self.out.close()


def written(file: Path) -> str:
    """Return what a program has written into a file, empty until it has."""
    return file.read_text().strip() if file.is_file() else ""


class Engine(ABC):
    """A browser with one page, in a fresh profile in the folder `home`.

    Its optimising compilers are off, as they work longer on a new page than a test lasts;
    `full_speed` has the settings that switch them on again.
    """

    name: str
    full_speed: ClassVar[Mapping[str, Any]]

    def __init__(self, home: Path, settings: Mapping[str, Any] | None = None) -> None:
        self.home, self.settings = home, settings or {}
        self.trap = Trap()
        self.programs = Programs(home)
        try:
            self.start()
        except BaseException:
            self.close()
            raise

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """End it, and all that it has started."""
        self.programs.end()
        self.trap.socket.close()

    def run(self, function: str, *arguments: Any) -> Any:
        """Return what a function, which may be asynchronous, returns in the page.

        Raises EngineError if it throws.
        """
        reply = self.execute(IN_PAGE % function, list(arguments))
        if "failed" in reply:
            raise EngineError(reply["failed"])
        return reply["value"]

    def wait_for(self, function: str, *arguments: Any, wanted: Any = None) -> Any:
        """Return what a function returns in the page, once that is `wanted`, or is not empty.

        Raises EngineError with what it returned last if that never comes.
        """
        end = time.monotonic() + PATIENCE
        while True:
            found = self.run(function, *arguments)
            if found and wanted in (None, found):
                return found
            if time.monotonic() > end:
                raise EngineError(
                    f"{self.name} has {found!r} where {wanted or function!r} should be"
                )
            time.sleep(0.03)

    @classmethod
    @abstractmethod
    def is_here(cls) -> bool:
        """Whether this machine has it."""

    @abstractmethod
    def start(self) -> None:
        """Start the engine; for `__init__`."""

    @abstractmethod
    def open(self, address: str) -> None:
        """Go to an address as if it was typed, and wait until the page is loaded."""

    @abstractmethod
    def execute(self, script: str, arguments: list[Any]) -> dict[str, Any]:
        """Return what a script hands to the last of its arguments, a function."""

    @abstractmethod
    def press(self, selector: str, text: str) -> None:
        """Press the keys of a text in the box that is found, where the cursor or the mark is."""

    @abstractmethod
    def errors(self) -> list[str]:
        """Return what went wrong in pages since the last look, as the engine's console has it."""
