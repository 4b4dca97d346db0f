"""What a run was drawn from, so that it can be repeated."""

from tests.counts import SEED, SOAK


def pytest_terminal_summary(terminalreporter) -> None:
    counts = " and the counts of a long night (LUGWISE_SOAK=1)" if SOAK else ""
    terminalreporter.write_line(f"Drawn from LUGWISE_SEED={SEED}{counts}.")
