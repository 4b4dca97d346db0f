"""The home page leads to every worksheet, by the question a reader comes with."""

import re
from pathlib import Path

import pytest

from build_scripts.made import PARTS
from calc.units.shown import kept_together
from tests.contract.samples import sheets

HOME = Path(__file__).parents[2] / "docs" / "index.md"
EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
FENCE = re.compile(r"^```page\n(.*?)\n^```$", re.MULTILINE | re.DOTALL)


def home() -> str:
    """Return the home page with the parts that are made from the code put in."""
    return FENCE.sub(lambda found: str(PARTS[found[1].strip()]()), HOME.read_text("utf-8"))


@EACH
def test_the_home_page_leads_to_every_worksheet(sheet):
    links = re.findall(rf'<a [^>]*href="checks/{sheet.id}/"[^>]*>(.*?)</a>', home())
    links += re.findall(rf"\[([^\]]+)\]\(checks/{sheet.id}\.md\)", home())
    assert any(kept_together(sheet.question) in kept_together(text) for text in links)


def test_the_home_page_leads_to_no_page_that_does_not_exist():
    led = set(re.findall(r"\bchecks/([a-z-]+)", home()))
    assert {name for name in led if not (HOME.parent / "checks" / f"{name}.md").is_file()} == set()
    assert led >= {sheet.id for sheet in sheets()}
