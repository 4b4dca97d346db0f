"""A page has one name: on its card, in the navigation, as its title and in links that lead to it.

A link to a worksheet says its title or its question, so that what is pressed is what opens.
"""

import re
from functools import cache
from pathlib import Path

import pytest

from tests.contract.reader_texts import DOCS, PROJECT
from tests.contract.samples import sheets

NAV = re.findall(
    r"^ +- ([^:\n]+): (\S+\.md)$", (PROJECT / "mkdocs.yml").read_text("utf-8"), re.MULTILINE
)
LINK = re.compile(r"\[([^\]]+)\]\(([^)#\s]+\.md)\)")
PAGES = sorted(DOCS.rglob("*.md"))


@cache
def title(path: Path) -> str:
    found = re.search(r"^title: (.+)$", path.read_text("utf-8"), re.MULTILINE)
    return found[1].strip() if found else ""


def names(path: Path) -> set[str]:
    """Return what a link to a worksheet's guide may say."""
    heading = re.search(r"^# (.+)$", path.read_text("utf-8"), re.MULTILINE)
    return {name.lower() for name in (title(path), heading[1] if heading else "")}


def misnamed(page: Path, text: str) -> list[str]:
    """Return the links of a page to a guide of a worksheet that call it by another name."""
    links = ((said, (page.parent / to).resolve()) for said, to in LINK.findall(text))
    return [
        f"[{said}] leads to {title(to)}"
        for said, to in links
        if to.parent == DOCS / "checks" and said.lower() not in names(to)
    ]


def test_the_navigation_calls_a_page_by_its_title():
    assert len(NAV) > 40
    assert [(name, title(DOCS / to)) for name, to in NAV if name != title(DOCS / to)] == []


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_a_guide_has_the_title_of_its_worksheet(sheet):
    assert title(DOCS / "checks" / f"{sheet.id}.md") == sheet.title


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.relative_to(DOCS).as_posix())
def test_a_link_calls_a_worksheet_by_its_name(page):
    assert misnamed(page, page.read_text("utf-8")) == []


def test_another_name_would_be_found():
    page = DOCS / "checks" / "wire-size.md"
    assert misnamed(page, "See [wire drop](wire-drop.md) and [fuse choice](fuse-choice.md)") == []
    assert misnamed(page, "Check the [drop](wire-drop.md).") == ["[drop] leads to Wire drop"]
