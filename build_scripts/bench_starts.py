"""How soon the first live answer stands: each way to start, at full speed and at a quarter of it.

Each start is a fresh browser process on a saved site whose server has been ended. All ways take
turns, so that what else the machine does falls on each alike.
"""

import contextlib
import json
import os
import signal
import statistics
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from playwright.sync_api import BrowserType

from build_scripts.bench_marks import marks
from build_scripts.bench_measures import (
    PATH,
    SAVED,
    SITE,
    browser,
    descendants,
    first_answer,
    served,
    wait_for,
)
from build_scripts.bench_plain import write_floor_site, write_plain_site
from build_scripts.runtime_sheets import FIRST, as_it_opens

FROM_FILES = 'sessionStorage.setItem("lugwise-start-from-files", "1");'
"""For a page that starts its Python from the files, as if its saved memory had failed before."""

ALONE = """
self.trustedTypes?.createPolicy("default", { createScriptURL: (url) => url });
const options = { type: "module", name: NAME };
const alone = new Worker(new URL("../worker.js", location.href), options);
alone.postMessage({ type: "ask", id: 1, key: "bench", request: REQUEST });
alone.addEventListener("message", ({ data }) => {
  if (data.type === "answer") document.documentElement.dataset.lugwise = "ready";
});
"""
"""For a file that the browser shows as it is, so that nothing but the worker is at work."""

BARE = "assets/runtime/boot.json"

WORKER_CLOCK = """
window.Worker = class extends Worker {
  constructor(url, options) {
    super(url, options);
    window.benchMade ??= performance.now();
    this.addEventListener("message", ({ data }) => {
      if (data.type === "ready") window.benchInside = data.ms;
      else window.benchInside ??= Number(data) || undefined;
    });
  }
};
"""

RUN, REST = 0.004, 0.012
"""Seconds that a slowed page runs and is held: a quarter of its speed. The debugging protocol can
slow the page alone, not its workers."""


@dataclass
class Way:
    """A way to start, and what was measured of it in milliseconds."""

    root: Path
    path: str = ""
    script: str = ""
    expected: str = ""
    answers: list[float] = field(default_factory=list)
    inside: list[float] = field(default_factory=list)
    marks: list[dict[str, float]] = field(default_factory=list)


@dataclass(frozen=True)
class Starts:
    """The ways to start that are compared."""

    memory: Way
    alone: Way
    files: Way
    plain: Way
    floor: Way


def starts(chromium: BrowserType, work: Path, answer: str, runs: int, *, slow: bool) -> Starts:
    """Measure every way `runs` times, in turn; `slow` at a quarter of the speed.

    Raises RuntimeError if a page started in another way than the one that was to be measured.
    """
    plain, floor = work / f"plain-{slow}", work / f"floor-{slow}"
    write_plain_site(plain, answer)
    write_floor_site(floor)
    ways = Starts(
        memory=Way(SITE, PATH, WORKER_CLOCK, "memory"),
        alone=Way(SITE, PATH, WORKER_CLOCK + alone()),
        files=Way(SITE, PATH, WORKER_CLOCK + FROM_FILES, "files"),
        plain=Way(plain, script=WORKER_CLOCK),
        floor=Way(floor, script=WORKER_CLOCK),
    )
    every = (ways.memory, ways.files, ways.plain, ways.floor, ways.alone)
    places = [
        _saved(chromium, work / f"profile-{slow}-{n}", way) for n, way in enumerate(every[:4])
    ]
    profile, url = places[0]
    places.append((profile, url.replace(PATH, BARE)))
    for _ in range(runs):
        for way, (profile, url) in zip(every, places, strict=True):
            with browser(chromium, profile) as context, slowed() if slow else _as_it_is():
                context.add_init_script(way.script)
                page, found = first_answer(context, url)
                way.answers.append(found)
                way.inside.append(page.evaluate("window.benchInside"))
                way.marks.append(marks(page))
                rung = page.evaluate("document.documentElement.dataset.python")
                if way.expected and rung != way.expected:
                    raise RuntimeError(f"{url} did not start from its {way.expected}")
    return ways


def alone() -> str:
    """Return the script of a page with nothing but the worker, named as a page of the site does."""
    page = (SITE / PATH / "index.html").read_text("utf-8")
    name = f"memory {page.split('name="lugwise-boot" content="')[1].partition('"')[0]}"
    script = ALONE.replace("NAME", json.dumps(name))
    return script.replace("REQUEST", json.dumps(as_it_opens(FIRST)))


def _saved(chromium: BrowserType, profile: Path, way: Way) -> tuple[Path, str]:
    """Visit a site until it is saved, and end its server."""
    with served(way.root) as address, browser(chromium, profile) as context:
        page, _ = first_answer(context, address + way.path)
        wait_for(page, SAVED)
    return profile, address + way.path


@contextlib.contextmanager
def _as_it_is() -> Iterator[None]:
    yield


@contextlib.contextmanager
def slowed() -> Iterator[None]:
    """Hold every page that this process opened, workers and all, for three quarters of the time."""
    over = threading.Event()

    def hold() -> None:
        pages: list[int] = []
        looked = 0.0
        while not over.is_set():
            if time.monotonic() - looked > 0.1:
                pages, looked = renderers(), time.monotonic()
            _signal(pages, signal.SIGSTOP)
            time.sleep(REST)
            _signal(pages, signal.SIGCONT)
            time.sleep(RUN)

    thread = threading.Thread(target=hold, daemon=True)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join()


def renderers() -> list[int]:
    """The processes in which the browsers started here run their pages."""
    return [number for number, _, command in descendants() if b"--type=renderer" in command]


def _signal(processes: list[int], what: signal.Signals) -> None:
    for process in processes:
        with contextlib.suppress(ProcessLookupError):
            os.kill(process, what)


def ratio(slow: list[float], quick: list[float]) -> float:
    """How many times longer the one takes than the other, by their medians."""
    return statistics.median(slow) / statistics.median(quick)
