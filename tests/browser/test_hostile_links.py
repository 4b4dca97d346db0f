"""A link from a stranger: it never runs script, hangs the page or breaks it."""

from urllib.parse import quote

import pytest
from playwright.sync_api import Page, expect

import calc
from calc.worksheet.rows import Rows, Text
from tests.browser.sheet_helpers import (
    ATTACK,
    ONE_OF_EACH,
    Sheet,
    another_page,
    link_of,
    message,
    open_sheet,
    usual,
)
from tests.browser.strange_links import LONGEST
from tests.browser.tools import VIEWPORTS, Server

RUN = "wire-drop"
WORDS = (Text, Rows)  # fields that take nearly any text

pytestmark = pytest.mark.one_visit


@pytest.fixture
def viewport():
    """A phone's: links do not depend on the window."""
    return VIEWPORTS["phone"]


def expect_unharmed(sheet: Sheet) -> None:
    assert sheet.page.evaluate("() => window.pwned") is None
    expect(sheet.page.locator("img[src='x'], [onerror]")).to_have_count(0)


def expect_markup_is_text(page: Page, server: Server, name: str, written: str) -> None:
    """Open the sheet with markup in place of every value, and expect to read it there."""
    fields = [field.id for field in calc.find(name).fields if not field.conditional]
    fragment = "&".join(["v=" + written, *(f"{field}={written}" for field in fields)])
    sheet = open_sheet(page, server, name, f"#{fragment}&{written}=1")
    refused = [field for field in fields if not isinstance(calc.find(name).field(field), WORDS)]
    for field in refused:
        sheet.expect_refused(field, message(name, field, ATTACK), ATTACK)
    key = ATTACK if "=" not in written else ATTACK.partition("=")[0]
    expect(sheet.notes).to_contain_text(f"“{key}”")
    expect_unharmed(sheet)
    # The sentence, the link and the form survive a correction beside them.
    sheet.box(fields[0]).evaluate("(box) => box.dispatchEvent(new Event('input', {bubbles: true}))")
    if refused:
        sheet.expect_no_answer()
    else:
        sheet.expect_answer(dict.fromkeys(fields, ATTACK))
    expect_unharmed(sheet)


as_written = pytest.mark.parametrize(
    "written", [ATTACK, quote(ATTACK, safe="")], ids=["raw", "encoded"]
)


@as_written
@pytest.mark.parametrize("name", ONE_OF_EACH)
def test_markup_in_every_value_is_shown_as_text(page, server, name, written):
    expect_markup_is_text(page, server, name, written)


@as_written
def test_markup_in_a_link_that_starts_the_page_is_shown_as_text(fresh_page, server, written):
    expect_markup_is_text(fresh_page, server, "runtime", written)


@pytest.mark.parametrize(
    "fragment",
    [
        pytest.param("current=45A&x=" + "9" * 100_000, id="100 kB"),
        pytest.param("current=45A&" + "&".join(f"k{n}=1" for n in range(10_000)), id="10 000 keys"),
        pytest.param("current=45A&length=%E0%A4%A", id="broken escape"),
        pytest.param("current=45A&length=#6m#v=1", id="nested #"),
        pytest.param("current=45A&van=%E0%A4%A:x", id="broken van"),
        pytest.param("current=45A&a=\\&b='&c=\"]&d=[&e=`&f=${1}&g={x.y}", id="quotes"),
        pytest.param("current=45A&&&==&=x&current=46A&%00=%00", id="odds and ends"),
        pytest.param(
            "current=45A&__proto__=1&constructor=1&toString=1", id="names of the language"
        ),
    ],
)
def test_a_strange_link_neither_breaks_nor_hangs_the_sheet(page, server, fragment):
    sheet = open_sheet(page, server, RUN, link_of(RUN, fragment))
    expect(sheet.box("current")).to_have_value("45")
    if "length=" in fragment:
        expect(sheet.error("length")).to_be_visible()
        expect(sheet.box("length")).not_to_have_value("12")
        sheet.expect_no_answer()
        sheet.type("length", "12 ft")
    sheet.expect_answer(usual(RUN, current="45 A"))
    expect_unharmed(sheet)
    sheet.type("current", "46")
    sheet.expect_answer(usual(RUN, current="46 A"))
    assert len(sheet.part("link").input_value()) < 300


def test_a_link_of_two_megabytes_is_read_by_its_beginning(page, server):
    sheet = open_sheet(page, server, RUN, link_of(RUN, "current=45A&" + "k=1&" * 500_000))
    sheet.expect_answer(usual(RUN, current="45 A"))
    sheet.type("current", "46")
    sheet.expect_answer(usual(RUN, current="46 A"))


@pytest.mark.parametrize("path", ["checks/wire-drop/", "client/", "van/", "practice/", ""])
def test_of_a_link_of_two_megabytes_no_page_reads_more_than_the_beginning(still, server, path):
    """Opened cold, and then in place: before the theme, and before any script of ours."""
    long = "#v=1&van=" + "x" * 2_000_000
    still.goto("about:blank")
    still.goto(f"{server.url}{path}{long}")
    assert still.evaluate("() => location.hash") == long[:LONGEST]
    expect(still.locator("h1").first).to_be_visible()
    still.evaluate("(hash) => { location.hash = hash; }", long.replace("x", "y"))
    cut = "(most) => location.hash.endsWith('y') && location.hash.length === most"
    still.wait_for_function(cut, arg=LONGEST)


def test_no_markup_brings_a_script_with_it(browser, server):
    """Should a text ever be written as markup, or as an address of a script."""
    with another_page(browser, server, lambda error: "Executing inline" in error) as page:
        page.goto(f"{server.url}licences/")
        refused = page.evaluate(
            """() => {
                const place = document.createElement("p");
                const script = document.createElement("script");
                const tries = {
                    handler: () => { place.innerHTML = "<img src=x onerror=alert(1)>"; },
                    script: () => { place.innerHTML = "<b>a</b><script>alert(1)</" + "script>"; },
                    address: () => { place.innerHTML = "<a href='\\tjavascript:alert(1)'>a</a>"; },
                    hidden: () => { place.innerHTML = "<a href=' j&#97;va\\nscript:b()'>a</a>"; },
                    moved: () => { place.innerHTML = "<svg><animate to=x></animate></svg>"; },
                    frame: () => { place.insertAdjacentHTML("beforeend", "<iframe></iframe>"); },
                    elsewhere: () => { script.src = "//a.invalid/a.js"; },
                    text: () => setTimeout("alert(1)"),
                    plain: () => { place.innerHTML = "<b class=x>4 V &lt; 5 V</b>"; },
                };
                return Object.entries(tries).flatMap(([name, run]) => {
                    try { run(); } catch (error) { if (error instanceof TypeError) return [name]; }
                    return [];
                });
            }"""
        )
    assert refused == [
        "handler",
        "script",
        "address",
        "hidden",
        "moved",
        "frame",
        "elsewhere",
        "text",
    ]


def test_what_strange_links_put_into_a_choice_does_not_pile_up(page, server):
    sheet = open_sheet(page, server, RUN)
    own = sheet.box("conductor").locator("option").count()
    for number in range(30):
        page.evaluate(
            "(link) => { location.hash = link; }", link_of(RUN, f"conductor=wire{number}")
        )
    expect(sheet.box("conductor")).to_have_value("wire29")
    expect(sheet.box("conductor").locator("option")).to_have_count(own + 1)
    page.evaluate("(link) => { location.hash = link; }", link_of(RUN, "current=45A"))
    sheet.expect_answer(usual(RUN, current="45 A"))
    expect(sheet.box("conductor").locator("option")).to_have_count(own)
