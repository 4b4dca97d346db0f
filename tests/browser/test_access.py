"""For every hand and eye: axe's WCAG rules, sizes of targets and text, narrow windows, focus."""

from itertools import pairwise

import pytest
from playwright.sync_api import Page, expect

import calc
from tests.browser.sheet_helpers import ATTACK, ONE_OF_EACH, Sheet, link_to, open_sheet, usual
from tests.browser.tools import NO_PYTHON, VIEWPORTS
from tests.browser.wcag import (
    CUT_OFF,
    IN_PICTURES,
    SCHEMES,
    SMALL_TARGETS,
    SMALL_TEXT,
    STICKING_OUT,
    broken_rules,
    keep_one_of_each,
    unfold_everything,
)
from tests.counts import SOAK, chance

PAGES = [
    *(f"checks/{name}/" for name in calc.worksheets()),
    *("", "wall-tables/", "how-we-check/", "units-links-privacy/", "without-signal/", "licences/"),
    *("practice/", "glossary/"),
    "404.html",
]
BY_AXE_ALONE = ("python/", "van/file-format/", "how-fast/", "client/")
ALIKE = set(PAGES[: len(calc.worksheets())]) - {f"checks/{name}/" for name in ONE_OF_EACH}
ASKED_BY_AXE = {*PAGES} - ALIKE | {*chance("axe").sample(sorted(ALIKE), len(ALIKE) // 3)}
"""Axe looks at one of each kind of sheet, at all that is no sheet and at others in each run.

What differs from sheet to sheet (names, labels, hints) the contract tests look at, for all of them.
"""

OURS = "article summary, .lw-sheet :is(input, select, button), .lw-questions a, .lw-offline button"
SHELL = ":is(.lw-header, .lw-menu, .lw-footer, nav.lw-bar) :is(button, a, label)"


@pytest.fixture
def viewport():
    """A phone's, unless a test asks for both."""
    return VIEWPORTS["phone"]


both_viewports = pytest.mark.parametrize("viewport", VIEWPORTS.values(), ids=VIEWPORTS)


def small_targets(page: Page, window: str) -> list[str]:
    page.set_viewport_size(VIEWPORTS[window])
    return [f"{window}: {target}" for target in page.evaluate(SMALL_TARGETS, f"{OURS}, {SHELL}")]


def small_texts(page: Page, window: str) -> list[str]:
    page.set_viewport_size(VIEWPORTS[window])
    texts = page.evaluate(
        SMALL_TEXT, "article, .lw-offline, .lw-header, .lw-menu, .lw-footer, nav.lw-bar"
    )
    return [f"{window}: {text}" for text in texts]


def pictures_and_tables(page: Page) -> list[str]:
    found = []
    for window in ("desktop", "phone"):
        page.set_viewport_size(VIEWPORTS[window])
        found += [f"{window}: {one}" for one in page.evaluate(IN_PICTURES)]
    return found + page.evaluate(CUT_OFF)


def sticking_out(page: Page, places: str) -> list[str]:
    found = []
    for width in (360, 320):
        page.set_viewport_size({"width": width, "height": 640})
        found += [f"at {width} px: {out}" for out in page.evaluate(STICKING_OUT, places)]
    return found


def sticking_out_at_twice_the_size(page: Page) -> list[str]:
    page.evaluate(
        "() => { document.documentElement.style.fontSize = '250%'; }"  # ours is 125 %
    )
    out = page.evaluate(STICKING_OUT, "body *")
    page.evaluate("() => { document.documentElement.style.fontSize = ''; }")
    return [f"at twice the size: {element}" for element in out]


@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.strip("/") or "home")
def test_a_page_suits_every_finger_and_eye_and_breaks_no_wcag_rule(still, server, path):
    page = still
    page.goto(server.url + path)
    if path == "404.html":
        expect(page.locator("html")).to_have_attribute("data-lugwise", "found")  # and its looks
    found = small_targets(page, "desktop") + small_targets(page, "phone")
    unfold_everything(page)
    found += pictures_and_tables(page)
    found += sticking_out(page, "body *")
    found += sticking_out_at_twice_the_size(page)
    schemes = SCHEMES if SOAK else ("light",)
    keep_one_of_each(page, schemes)
    found += small_texts(page, "desktop")
    if SOAK:
        found += broken_rules(page)
    found += small_texts(page, "phone")
    if SOAK or path in ASKED_BY_AXE:
        found += broken_rules(page, schemes)
    assert not found, "\n".join(found)


@pytest.mark.parametrize("path", BY_AXE_ALONE)
def test_a_page_that_is_made_of_tables_or_code_breaks_no_wcag_rule(still, server, path):
    still.goto(server.url + path)
    unfold_everything(still)
    schemes = tuple(SCHEMES)
    keep_one_of_each(still, schemes)
    assert not (found := broken_rules(still, schemes)), "\n".join(found)


@pytest.mark.parametrize("path", ["wall-tables/", "how-fast/", "checks/week-ahead/"])
def test_no_two_landmarks_have_one_name(still, server, path):
    """No rule of WCAG says so, but whoever moves by landmarks has nothing else to tell them by."""
    still.goto(server.url + path)
    unfold_everything(still)
    named = still.evaluate(
        """() => [...document.querySelectorAll("[role=region], section[aria-label], nav, main")]
            .filter((one) => one.checkVisibility())
            .map((one) => `${one.getAttribute("role") ?? one.localName} ${one.ariaLabel}`)"""
    )
    assert len(named) == len(set(named)), sorted(named)


@pytest.mark.parametrize("path", [f"checks/{name}/" for name in ONE_OF_EACH] + ["", "wall-tables/"])
def test_a_page_of_each_kind_breaks_no_wcag_rule_on_a_dark_desktop(fresh_page, server, path):
    page = fresh_page
    page.add_init_script(NO_PYTHON)
    page.set_viewport_size(VIEWPORTS["desktop"])
    page.emulate_media(color_scheme="dark")
    page.goto(server.url + path)
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", SCHEMES["dark"])
    unfold_everything(page)
    keep_one_of_each(page, ("dark",))
    assert not (found := broken_rules(page, ("dark",))), "\n".join(found)


@pytest.mark.one_visit
@pytest.mark.parametrize("name", ONE_OF_EACH)
def test_a_sheet_with_wrong_figures_breaks_no_wcag_rule_and_fits(page, server, name):
    busy_sheet(page, server, name)
    found = sticking_out(page, "article *")
    page.set_viewport_size(VIEWPORTS["phone"])
    keep_one_of_each(page)
    found += broken_rules(page)
    assert not found, "\n".join(found)


def busy_sheet(page: Page, server, name: str) -> Sheet:
    """A sheet that shows all it can: a link's notes, a sentence at each box, every fold open."""
    fields = [field.id for field in calc.find(name).fields]
    wrong = "&".join(f"{field}={ATTACK}" for field in fields[1:])
    sheet = open_sheet(page, server, name, f"#v=0&{wrong}&{'unknown' * 6}=1")
    expect(sheet.notes).to_be_visible()
    unfold_everything(page)
    return sheet


@pytest.mark.one_visit
@both_viewports
def test_what_has_the_focus_is_seen_and_comes_in_reading_order(page, server):
    sheet = open_sheet(page, server, "wire-drop", link_to("wire-drop", usual("wire-drop")))
    sheet.unfold()
    sheet.box("current").focus()
    places = []
    for key in ["Tab"] * 24 + ["Shift+Tab"] * 24:
        page.keyboard.press(key)
        seen = page.evaluate(
            """() => {
                const element = document.activeElement;
                const box = element.getBoundingClientRect();
                const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
                const top = document.elementFromPoint(x, y);
                const style = getComputedStyle(element);
                const scrolled = element.closest("form")?.scrollTop ?? 0;
                return {
                    html: element.outerHTML.slice(0, 90),
                    place: [Math.round(box.x), box.y + scrollY + scrolled],
                    inside: !!element.closest("[data-sheet]"),
                    hidden: !(top && (element.contains(top) || top.contains(element))),
                    outline: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
                };
            }"""
        )
        if not seen["inside"]:
            continue
        assert not seen["hidden"], f"covered after {key}: {seen['html']}"
        assert seen["outline"], f"no outline: {seen['html']}"
        if key == "Tab":
            places.append(seen["place"])
    assert len(places) >= 15
    # The next is lower, or in a column that begins further right.
    assert all(a[1] < b[1] + 60 or a[0] + 200 < b[0] for a, b in pairwise(places)), places
