"""What stands once cannot drift apart: no run of more than eight lines stands twice in calc."""

import re
from collections import defaultdict
from pathlib import Path

PROJECT = Path(__file__).parents[2]
MOST = 8


def lines_of(path: Path) -> list[tuple[int, str]]:
    """Return the numbered lines that say something: no comments, imports or brackets alone."""
    text = re.sub(
        r"^(?:from [\w.]+ import \([^)]*\)|(?:from|import) [^\n]*)$",
        lambda found: "\n" * found[0].count("\n"),
        path.read_text("utf-8"),
        flags=re.MULTILINE,
    )
    kept = ((at, line.strip()) for at, line in enumerate(text.splitlines(), 1))
    return [(at, line) for at, line in kept if re.search(r"\w", line) and not line.startswith("#")]


def test_no_run_of_lines_stands_twice():
    places = defaultdict(list)
    for path in sorted((PROJECT / "calc").rglob("*.py")):
        lines = lines_of(path)
        for start in range(len(lines) - MOST):
            run = tuple(line for _, line in lines[start : start + MOST + 1])
            places[run].append(f"{path.relative_to(PROJECT).as_posix()}:{lines[start][0]}")
    twice = {run[0]: where for run, where in places.items() if len(where) > 1}
    assert twice == {}
