"""Measure the built site and print a table: `python -m build_scripts.bench_site`.

Run it through build_scripts/bench, which builds the site first.
"""

import argparse
import contextlib
import statistics
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

from playwright.sync_api import BrowserType, sync_playwright

from build_scripts.bench_engines import engine_rows
from build_scripts.bench_marks import stages as reached
from build_scripts.bench_measures import (
    BROWSER,
    PATH,
    SHEET,
    SITE,
    bytes_to_answer,
    keystrokes,
    network_times,
    reads_without_scripts,
    whole_site,
)
from build_scripts.bench_plain import spared_by_host, worked, write_plain_site
from build_scripts.bench_stages import stage_times
from build_scripts.bench_starts import Starts, ratio, slowed, starts
from build_scripts.bench_table import KEPT, Row, Stage, mb, measured, ms
from build_scripts.bench_van import CIRCUITS, edit_times

LEAST_SAVED, LEAST_FILES = 3.5, 2.4
"""How many times sooner than the plain way the first live answer must stand: of a saved site, and
where its memory is of no use."""

AMBITION = 5
"""The same, where we would like to be."""

MOST_OF_FLOOR = 2
"""How many times longer the worker may take than the mere loading of Python's wasm."""

MOST_BYTES = 5_400_000
"""What may go over the wire until the first live answer."""

MOST_KEY, MOST_KEY_SLOW = 1000 / 60, 50
"""Milliseconds from a key to the answer: a frame, and at a quarter of the speed."""

MOST_NETWORK = 50
"""Milliseconds in which a network of sixty nodes must be solved."""

MOST_WEEK, MOST_YEAR = 100, 2000
"""Milliseconds to the hours of a week, and to the twelve months and the changes that help."""

MOST_VAN = 150
"""Milliseconds from an edit of a whole van to its review and its diagram."""


def main() -> int:
    """Measure, print the table, and return 1 if a promise is not kept."""
    parser = argparse.ArgumentParser(prog="python -m build_scripts.bench_site", description=__doc__)
    parser.add_argument("--runs", type=int, default=7, help="starts of each kind")
    parser.add_argument("--json", type=Path, help="write the measurement to this file as well")
    parser.add_argument("--keep", action="store_true", help="the site's page is to show it")
    parser.add_argument("--machine", default="", help="what else is to be said of this machine")
    options = parser.parse_args()
    rows: list[Row] = []
    stages: list[Stage] = []
    print(Row("", "Lugwise", "compared with", "ratio"), flush=True)
    with tempfile.TemporaryDirectory() as name, sync_playwright() as driver:
        chromium = driver.chromium
        for row in measure(chromium, Path(name), options.runs):
            print(row, flush=True)
            (stages if isinstance(row, Stage) else rows).append(row)
        opened = chromium.launch(**BROWSER)
        found = measured(rows, stages, opened.version, options.machine)
        opened.close()
    for file in (options.json, KEPT if options.keep else None):
        if file:
            found.write(file)
    return 0 if found.kept else 1


def measure(chromium: BrowserType, work: Path, runs: int) -> Iterator[Row | Stage]:
    """Yield each row as soon as it is measured."""
    for slow, speed in (False, ""), (True, ", a quarter of the speed"):
        found = starts(chromium, work, worked(SHEET), runs, slow=slow)
        yield from start_rows(found, speed)
        if not slow:
            yield from reached(found.memory.marks, found.files.marks)
    yield bytes_row(chromium, work)
    yield from key_rows(chromium)
    network = network_times(chromium, work)
    yield limited("network of 60 nodes, solved in a page", network, MOST_NETWORK)
    first, whole = stage_times(chromium)
    yield limited("keystroke to the hours of a week", first, MOST_WEEK)
    yield limited("keystroke to the months and changes", whole, MOST_YEAR)
    yield limited(f"van of {CIRCUITS} circuits, edit to diagram", edit_times(chromium), MOST_VAN)
    yield from engine_rows(runs)
    wire, stored = whole_site()
    yield Row("whole site, as transferred", mb(wire))
    yield Row("whole site, as stored", mb(stored))
    reads = reads_without_scripts(chromium)
    yield Row("default answer without JavaScript", "yes" if reads else "no", kept=reads)


def start_rows(found: Starts, speed: str) -> Iterator[Row]:
    """Yield what was measured of the ways to start."""
    plain = found.plain.answers
    for what, way, least in (
        ("first live answer, saved, no server", found.memory, LEAST_SAVED),
        ("the same without the saved memory", found.files, LEAST_FILES),
    ):
        times = ratio(plain, way.answers)
        goal = f"{least} times sooner than plain"
        goal += f", better {AMBITION}" if way is found.memory else ""
        numbers = ms(way.answers), ms(plain), f"{times:.2f}"
        yield Row(what + speed, *numbers, goal, times >= least)
    floor = ratio(found.alone.inside, found.floor.inside)
    yield Row(
        f"the worker by itself{speed}",
        ms(found.alone.inside),
        ms(found.floor.inside),
        f"{floor:.2f}",
        f"at most {MOST_OF_FLOOR} times the loading of its wasm",
        floor <= MOST_OF_FLOOR,
    )


def bytes_row(chromium: BrowserType, work: Path) -> Row:
    """What a first visit brings over the wire until its first live answer."""
    plain = work / "plain-bytes"
    write_plain_site(plain, worked(SHEET))
    size = bytes_to_answer(chromium, SITE, PATH)
    plain_size = bytes_to_answer(chromium, plain, "") - spared_by_host(plain)
    return Row(
        "bytes to the first live answer",
        mb(size),
        mb(plain_size),
        f"{plain_size / size:.2f}",
        f"under {mb(MOST_BYTES)}",
        size < MOST_BYTES,
    )


def key_rows(chromium: BrowserType) -> Iterator[Row]:
    """Yield how soon an answer follows a key."""
    ways: tuple[tuple[str, Callable, float], ...] = (
        ("", contextlib.nullcontext, MOST_KEY),
        (", a quarter of the speed", slowed, MOST_KEY_SLOW),
    )
    for speed, context, most in ways:
        seen, folded = keystrokes(chromium, context)
        yield limited(f"keystroke to answer{speed}", seen, most)
        yield Row(f"keystroke to what is folded away{speed}", ms(folded))


def limited(what: str, times: list[float], most: float) -> Row:
    """A row of times whose median has a limit."""
    return Row(
        what, ms(times), goal=f"under {round(most, 1):g} ms", kept=statistics.median(times) < most
    )


if __name__ == "__main__":
    sys.exit(main())
