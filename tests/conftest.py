"""What a run was drawn from, so that it can be repeated, and what it measured.

Also how often it looks for rubbish.
"""

import gc

from tests.counts import SEED, SOAK


def pytest_terminal_summary(terminalreporter) -> None:
    counts = " and the counts of a long night (LUGWISE_SOAK=1)" if SOAK else ""
    for report in terminalreporter.getreports("passed"):
        for name, words in report.user_properties:
            if name == "measured":
                terminalreporter.write_line(words)
    terminalreporter.write_line(f"Drawn from LUGWISE_SEED={SEED}{counts}.")


def pytest_collection_finish(session) -> None:
    """Leave what was imported and collected alone: it stays, and to look through it takes long."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(50_000, 20, 20)
