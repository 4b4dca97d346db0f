"""Measure the built site and print a table: `python -m build_scripts.bench_site`.

Run it through build_scripts/bench, which builds the site first.
"""

import argparse
import statistics
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from build_scripts.bench_measures import (
    PATH,
    SHEET,
    SITE,
    bytes_to_answer,
    keystrokes,
    network_times,
    reads_without_scripts,
    starts,
    whole_site,
)
from build_scripts.bench_plain import spared_by_host, worked, write_plain_site
from build_scripts.bench_stages import stage_times
from build_scripts.bench_van import CIRCUITS, edit_times

LEAST_RATIO = 2
"""How many times sooner than the plain way the first live answer must stand."""

MOST_BYTES = 6_000_000
"""What may go over the wire until the first live answer."""

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
    runs = parser.parse_args().runs
    with tempfile.TemporaryDirectory() as name, sync_playwright() as driver:
        work, chromium = Path(name), driver.chromium
        plain = work / "plain"
        write_plain_site(plain, worked(SHEET))
        times, plain_times = starts(chromium, work, {SITE: PATH, plain: ""}, runs)
        size = bytes_to_answer(chromium, SITE, PATH)
        plain_size = bytes_to_answer(chromium, plain, "") - spared_by_host(plain)
        keys = keystrokes(chromium)
        network = network_times(chromium, work)
        first, whole = stage_times(chromium)
        van = edit_times(chromium)
        reads = reads_without_scripts(chromium)
    wire, stored = whole_site()
    ratio = statistics.median(plain_times) / statistics.median(times)
    soon, small = ratio >= LEAST_RATIO, size < MOST_BYTES
    swift = statistics.median(network) < MOST_NETWORK
    week, year = statistics.median(first) < MOST_WEEK, statistics.median(whole) < MOST_YEAR
    show("", "Lugwise", "plain", "ratio")
    show("first live answer, saved, no server", ms(times), ms(plain_times), ratio, soon)
    show("bytes to the first live answer", mb(size), mb(plain_size), plain_size / size, small)
    show(f"keystroke to answer, median of {len(keys)}", f"{statistics.median(keys):.1f} ms")
    show("keystroke to answer, worst", f"{max(keys):.1f} ms")
    reviewed = statistics.median(van) < MOST_VAN
    show("network of 60 nodes, solved in a page", ms(network), kept=swift)
    show("keystroke to the hours of a week", ms(first), kept=week)
    show("keystroke to the months and changes", ms(whole), kept=year)
    show(f"van of {CIRCUITS} circuits, edit to diagram", ms(van), kept=reviewed)
    show("whole site, as transferred", mb(wire))
    show("whole site, as stored", mb(stored))
    show("default answer without JavaScript", "yes" if reads else "no", kept=reads)
    return 0 if all((soon, small, swift, week, year, reviewed, reads)) else 1


def ms(times: list[float]) -> str:
    """The median, and the least and most beside it."""
    return f"{statistics.median(times):.0f} ms ({min(times):.0f}-{max(times):.0f})"


def mb(size: int) -> str:
    return f"{size / 1e6:.2f} MB"


def show(
    what: str, ours: str, plain: str = "", ratio: float | str = "", kept: bool | None = None
) -> None:
    """Print one row: what was measured, its ratio to the plain way, whether a promise is kept."""
    said = {True: "kept", False: "NOT KEPT", None: ""}[kept]
    ratio = f"{ratio:.2f}" if isinstance(ratio, float) else ratio
    print(f"{what:<38} {ours:>22} {plain:>22} {ratio:>6}  {said}".rstrip(), flush=True)


if __name__ == "__main__":
    sys.exit(main())
