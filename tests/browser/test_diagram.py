"""A van's diagram in a real browser: what its words measure, what paper it takes, how it zooms."""

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from random import Random

import pytest
from playwright.sync_api import Browser, Page

from calc.render.van_diagram import drawing_html
from calc.tables import text
from calc.van.demos import DEMOS, demo
from calc.van.diagram import layout
from calc.van.diagram.drawing import Drawing, Line, Sheet, Stroke, Symbol, Words
from calc.van.diagram.symbols import SYMBOLS
from calc.van.review import review
from tests.browser.tools import PROJECT
from tests.van_samples import drawn_van

ASSETS = Path(PROJECT, "docs", "assets")
BOXES = """() => [...document.querySelectorAll("svg")].map((svg) => {
    const box = (one) => {
        const { x, y, width, height } = one.getBBox();
        return [x, y, x + width, y + height];
    };
    return {
        words: [...svg.querySelectorAll("text")].map((one) => [one.textContent, box(one)]),
        symbols: [...svg.querySelectorAll("g[transform]:not([transform*=scale])")].map(
            (one) => [one.getAttribute("transform").match(/[\\d.]+/g).map(Number), box(one)]),
    };
})"""
SLACK = 0.6  # of a pixel, for hinted letters


@cache
def drawing(name: str) -> Drawing:
    """Return the diagram of a demo with its findings, or of a drawn van with 40 circuits."""
    if name in DEMOS:
        van = demo(name)
        return layout(van, van.schedule(), review(van))
    return layout(drawn_van(Random(int(name)), circuits=40))


@pytest.fixture(scope="module")
def blank(browser: Browser) -> Iterator[Page]:
    """A page on which a diagram is put without the site around it."""
    context = browser.new_context(viewport={"width": 360, "height": 780})
    yield context.new_page()
    context.close()


def put(page: Page, name: str) -> None:
    inks = "--lw-ink: #000; --lw-quiet: #222; --lw-paper: #fff; --lw-stop: #a00; --lw-caution: #640"
    page.set_content(
        f"<style>:root {{ {inks} }} body, figure {{ margin: 0 }}"
        f"{text('calc.render', 'van_diagram.css')}</style><body>{drawing_html(drawing(name))}"
    )


def apart(boxes: list[tuple[str, list[float]]]) -> list[tuple[str, str]]:
    """Return the words that lie on one another."""
    boxes = sorted(boxes, key=lambda one: one[1][0])
    found = []
    for place, (words, (_, top, right, bottom)) in enumerate(boxes):
        for next_words, (left, next_top, _, next_bottom) in boxes[place + 1 :]:
            if left > right - SLACK:
                break
            if min(bottom, next_bottom) - max(top, next_top) > SLACK:
                found.append((words, next_words))
    return found


@pytest.mark.parametrize("name", (*DEMOS, "1", "2"))
def test_words_are_no_wider_than_they_were_measured_and_lie_on_nothing(blank, name):
    put(blank, name)
    for sheet, found in zip(drawing(name).sheets, blank.evaluate(BOXES), strict=True):
        assert apart(found["words"]) == []
        room = {}
        for mark in sheet.marks:
            if isinstance(mark, Words):
                room[mark.text] = max(room.get(mark.text, 0), mark.width)
        for words, (left, top, right, bottom) in found["words"]:
            assert right - left <= room.get(words, 1e9) + SLACK, words
            assert bottom - top <= 18 + SLACK  # as high as a line is taken to be
        for words, box in found["words"]:
            assert not [one for one in uprights(sheet) if passes(one, box)], words


def passes(upright: tuple[float, float, float], box: list[float]) -> bool:
    """Return whether an upright line runs through a box."""
    x, low, high = upright
    left, top, right, bottom = box
    return left + 1 < x < right - 1 and low < bottom and high > top


def uprights(sheet: Sheet) -> Iterator[tuple[float, float, float]]:
    """Yield every upright piece of a conductor."""
    for mark in sheet.marks:
        if isinstance(mark, Line) and mark.stroke is not Stroke.BOUNDARY:
            yield from runs_up(mark)


def runs_up(line: Line) -> Iterator[tuple[float, float, float]]:
    """Yield the upright pieces of a line: where, from what height, to what height."""
    for (ax, ay), (bx, by) in zip(line.points, line.points[1:], strict=False):
        if ax == bx:
            yield ax, min(ay, by), max(ay, by)


def test_each_symbol_keeps_to_its_room(blank):
    put(blank, "marram")
    boxes = blank.evaluate(BOXES)[0]["symbols"]
    marks = [m for m in drawing("marram").sheets[0].marks if isinstance(m, Symbol)]
    assert len(boxes) == len(marks) > 20
    for mark, (_, (left, top, right, bottom)) in zip(marks, boxes, strict=True):
        size = SYMBOLS[mark.name]
        assert left >= -SLACK and right <= size.width + SLACK, mark.name
        assert top >= -size.half - SLACK and bottom <= size.half + SLACK, mark.name


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("name", ["marram", "1"])
def test_each_sheet_takes_one_page(blank, name, paper):
    put(blank, name)
    margin = dict.fromkeys(("top", "bottom", "left", "right"), "8mm")
    pdf = blank.pdf(format=paper, landscape=True, margin=margin)
    assert len(re.findall(rb"/Type /Page\b", pdf)) == len(drawing(name).sheets)


def test_the_buttons_and_the_keys_change_its_size(blank):
    put(blank, "marram")
    blank.add_script_tag(content=(ASSETS / "zoom.js").read_text("utf-8"))
    box = blank.locator(".lw-plan-box")
    width = "box => box.querySelector('svg').getBoundingClientRect().width"
    assert box.evaluate(width) == 1596
    assert box.evaluate("box => box.scrollWidth > box.clientWidth")
    blank.get_by_role("button", name="Whole sheet").click()
    assert 350 < box.evaluate(width) <= 360
    blank.get_by_role("button", name="Larger").click()
    assert box.evaluate(width) == 798
    box.focus()
    for key, wide in (("+", 1197), ("-", 798), ("0", 356)):
        blank.keyboard.press(key)
        assert box.evaluate(width) == pytest.approx(wide, abs=4)
    before = box.evaluate("box => box.scrollLeft")
    blank.keyboard.press("+")
    blank.keyboard.press("ArrowRight")
    blank.wait_for_function(f"() => document.querySelector('.lw-plan-box').scrollLeft > {before}")
