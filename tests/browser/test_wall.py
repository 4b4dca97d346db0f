"""The wall tables: one sheet of paper each, and a phone's window all the same."""

import re

import pytest
from playwright.sync_api import Page, expect

from build_scripts.wall import LIMITS, SERIES, cells, mark
from tests.browser.sheet_helpers import another_page
from tests.browser.test_print import text_of_pdf, without_spaces
from tests.browser.tools import VIEWPORTS

SHEETS = len(SERIES) * len(LIMITS)
READABLE = 11 * 96 / 72 - 0.01  # px: 11 points


@pytest.fixture
def viewport():
    """A phone's: the widest tables in the narrowest window."""
    return VIEWPORTS["phone"]


@pytest.fixture
def wall(still: Page, server) -> Page:
    page = still
    page.goto(f"{server.url}wall-tables/")
    expect(page.locator(".lw-wall")).to_have_count(SHEETS)
    return page


def pages_of(pdf: bytes) -> list[tuple[float, float]]:
    """Return width and height [points] of each page."""
    boxes = re.findall(rb"/Type /Page\b[^s].*?/MediaBox \[([\d. ]+)\]", pdf, re.DOTALL)
    sizes = [tuple(map(float, box.split()[2:])) for box in boxes]
    assert len(sizes) == len(re.findall(rb"/Type /Page\b", pdf))
    return sizes


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_each_limit_of_a_series_is_printed_on_exactly_one_landscape_sheet(wall, server, paper):
    pdf = wall.pdf(format=paper, prefer_css_page_size=True)
    sizes = pages_of(pdf)
    assert len(sizes) == SHEETS
    assert all(width > height for width, height in sizes)
    printed = text_of_pdf(pdf)
    for series in SERIES.values():
        assert mark(series) in printed
        rows: dict[tuple, str] = {}
        for name, _, *block, one in cells(series):
            row = rows.setdefault((name, *block), name.split()[0])
            rows[name, *block] = row + one.text + "*" * one.by_heat
        assert not [row for row in rows.values() if row not in printed]
    for said in ("Not a substitute", "Numbers are rounded down", f"{server.url}wall-tables/"):
        assert without_spaces(said) in printed
    assert without_spaces("Before you rely on a sheet") not in printed


def test_without_javascript_the_same_sheets_are_printed(browser, server):
    with another_page(browser, server, java_script_enabled=False) as plain:
        plain.goto(f"{server.url}wall-tables/")
        expect(plain.locator(".lw-wall td").first).to_be_visible()
        assert len(pages_of(plain.pdf(format="A4", prefer_css_page_size=True))) == SHEETS


def test_on_a_phone_a_table_scrolls_in_its_own_box_and_the_size_stays_in_sight(wall):
    assert wall.evaluate("document.scrollingElement.scrollWidth") <= VIEWPORTS["phone"]["width"]
    box = wall.locator(".lw-wall .lw-scroll").first
    box.evaluate("(box) => box.scrollTo(box.scrollWidth, 0)")
    assert box.evaluate("(box) => box.scrollLeft") > 0
    size = box.locator("tbody th").first
    assert size.bounding_box()["x"] == pytest.approx(box.bounding_box()["x"], abs=1)
    painted = size.evaluate("(one) => getComputedStyle(one).backgroundColor")
    assert painted not in ("transparent", "rgba(0, 0, 0, 0)"), "figures would show through"


def test_on_paper_no_letter_is_smaller_than_eleven_points(wall):
    wall.emulate_media(media="print")
    small = wall.evaluate(
        """(least) => [...document.querySelectorAll(".lw-wall *")].filter((one) =>
            [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim()) &&
            one.getClientRects().length && parseFloat(getComputedStyle(one).fontSize) < least)
            .map((one) => one.textContent.slice(0, 40))""",
        READABLE,
    )
    assert small == []


def test_other_pages_are_still_printed_upright(still, server):
    page = still
    page.goto(f"{server.url}units-links-privacy/")
    sizes = pages_of(page.pdf(format="A4", prefer_css_page_size=True))
    assert all(height > width for width, height in sizes)
