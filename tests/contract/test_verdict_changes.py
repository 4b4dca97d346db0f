"""Where a verdict or a figure has changed on purpose: the link, old, new and the reason."""

from pathlib import Path

import pytest

import calc
from calc.worksheet.link import open_fragment
from tests.contract.test_links import agrees

FILE = Path(__file__).parents[1] / "verdict_changes.txt"
LINES = [
    tuple(part.strip() for part in line.split(" | "))
    for line in FILE.read_text("utf-8").splitlines()
    if line and not line.startswith("#")
]


@pytest.mark.parametrize("line", LINES, ids=lambda line: f"{line[0]}{line[1]}"[:80])
def test_a_verdict_that_changed_is_the_new_one(line):
    name, fragment, old, new, reason = line
    sheet = calc.find(name)
    opened = open_fragment(sheet, fragment)
    assert opened.notes == ()
    agrees(sheet.work(opened.texts), new if "=" in new else f"verdict = {new}")
    assert new != old
    assert len(reason) > 20
