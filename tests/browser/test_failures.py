"""A Python that breaks or does not come, a reply that cannot be shown: it is said, in words."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.sheet_helpers import Sheet, another_page, link_of, open_sheet, reply_to, usual
from tests.browser.standing import (
    DEFAULT,
    GIVEN_UP,
    NO_START,
    PREVIOUS,
    UNSHOWN,
    again_button,
    built,
    expect_marked,
    expect_standing,
)
from tests.browser.tools import NO_PYTHON, VIEWPORTS
from tests.browser.wcag import SMALL_TARGETS, SMALL_TEXT, STICKING_OUT, broken_rules
from tests.browser.workers import REFUSED, open_in_hand

RUN = "wire-drop"


@pytest.fixture
def viewport():
    """A phone's: time does not depend on the window."""
    return VIEWPORTS["phone"]


def test_an_answer_that_cannot_be_put_in_its_place_is_a_failure_and_said(browser, server):
    with another_page(browser, server, lambda error: "TypeError" in error) as page:
        sheet, workers = open_in_hand(page, server, RUN)
        sheet.box("current").fill("45")
        sheet.expect_answer(usual(RUN, current="45 A"))
        gist = sheet.part("gist").element_handle()
        page.evaluate("(gist) => gist.removeAttribute('data-gist')", gist)
        sheet.box("current").fill("300")
        expect_standing(sheet, UNSHOWN)
        expect_marked(sheet, busy=False)
        shown = sheet.text_of(reply_to(RUN, usual(RUN, current="45 A"))["answer"])
        expect(sheet.answer).to_have_text(shown)
        workers.pass_time(60_000)
        expect(sheet.part("status")).to_have_text(UNSHOWN)
        assert workers.made == 1, "Python is well"
        page.evaluate("(gist) => gist.setAttribute('data-gist', '')", gist)
        again_button(sheet).click()
        sheet.expect_answer(usual(RUN, current="300 A"))
        sheet.expect_fine("current")


def test_a_reply_that_nobody_can_read_is_a_failure_too(browser, server):
    with another_page(browser, server, lambda error: "SyntaxError" in error) as page:
        sheet, workers = open_in_hand(page, server, RUN)
        workers.garble()
        sheet.box("current").fill("300")
        expect_standing(sheet, UNSHOWN.replace(PREVIOUS, DEFAULT))
        expect_marked(sheet, busy=False)


BREAKS = "if (asked.request.includes('666')) throw new WebAssembly.RuntimeError('unreachable');"


def test_a_python_that_broke_is_restarted_at_once(browser, server):
    """What it throws then is no exception of its own, and whatever it said next would be wrong."""
    with another_page(browser, server, lambda error: "unreachable" in error) as page:
        break_worker(page, BREAKS)
        sheet, workers = open_in_hand(page, server, RUN)
        sheet.box("current").fill("666")
        workers.until("() => window.workers.length === 3 && window.workers.every((w) => w.over)")
        expect_standing(sheet, GIVEN_UP)
        expect_marked(sheet, busy=False)
        sheet.box("current").fill("45")
        sheet.expect_answer(usual(RUN, current="45 A"))
        assert (workers.made, workers.alive) == (4, 1)


def test_an_exception_in_python_is_said_and_python_goes_on(browser, server):
    """None is known; a request without its sheet stands for one."""
    with another_page(browser, server, lambda error: "KeyError" in error) as page:
        break_worker(page, "if (asked.request.includes('666')) asked.request = '{}';")
        sheet, workers = open_in_hand(page, server, RUN)
        sheet.box("current").fill("666")
        expect_standing(
            sheet, f"The calculation failed (KeyError: 'sheet'). {DEFAULT} Try other values."
        )
        expect(again_button(sheet)).to_have_count(0)
        expect_marked(sheet, busy=False)
        sheet.box("current").fill("45")
        sheet.expect_answer(usual(RUN, current="45 A"))
        assert (workers.made, workers.alive) == (1, 1)


def break_worker(page, script: str) -> None:
    """Serve the page a worker that runs `script` before each request, with what is `asked`."""

    def serve(route) -> None:
        code = route.fetch().text()
        turn = "  try {\n    self.postMessage("
        assert code.count(turn) == code.count("const [key, asked] = waiting") == 1
        route.fulfill(
            body=code.replace(turn, turn.replace("{\n", "{\n" + script + "\n", 1)),
            content_type="text/javascript",
        )

    page.context.route("**/assets/worker.js", serve)


FORBIDDEN = (
    "window.Worker = class { constructor() { throw new DOMException('', 'SecurityError') } }"
)


@pytest.mark.parametrize("refusal", [FORBIDDEN, REFUSED], ids=["forbidden", "not loaded"])
def test_a_browser_without_workers_says_so_and_keeps_the_built_answer(browser, server, refusal):
    with another_page(browser, server, lambda error: "SecurityError" in error) as page:
        page.add_init_script(refusal)
        page.goto(f"{server.url}checks/{RUN}/")
        sheet = Sheet(page, RUN)
        expect_standing(sheet, NO_START)
        expect(sheet.root).not_to_contain_class("is-stale")  # the values are still the default ones
        expect(sheet.answer).to_have_text(built(sheet))
        sheet.box("current").fill("300")
        expect_standing(sheet, NO_START)
        expect_marked(sheet, busy=False)
        expect(sheet.box("current")).to_have_value("300")


def test_a_start_that_hangs_ends_in_words(browser, server):
    with another_page(browser, server) as page:
        page.add_init_script(NO_PYTHON)
        page.clock.install()
        page.goto(f"{server.url}checks/{RUN}/")
        page.clock.run_for(50_000)
        sheet = Sheet(page, RUN)
        sheet.box("current").fill("300")
        expect_standing(sheet, f"Starting the calculation. {DEFAULT}")
        page.clock.run_for(10_000)
        expect_standing(sheet, NO_START)


@pytest.mark.parametrize("file", ["page.js", "python.js", "parts.js"])
def test_without_its_script_a_sheet_says_that_it_takes_no_values(browser, server, file):
    with another_page(browser, server, lambda error: "net::ERR" in error) as page:
        page.context.route(f"**/assets/{file}", lambda route: route.abort())
        page.goto(f"{server.url}checks/{RUN}/")
        sheet = Sheet(page, RUN)

        def said() -> str:
            return sheet.part("key").evaluate("(e) => getComputedStyle(e, '::before').content")

        assert said() == "none"
        sheet.type("current", "300")
        words = "The values below are not used yet: this answer is for the default values."
        assert said() == f'"{words}"'
        page.keyboard.press("Tab")
        page.locator("h1").click()
        assert said() == f'"{words}"'
        for figure in (".lw-figure", ".lw-gist-words"):
            style = "(e) => getComputedStyle(e).textDecorationLine"
            assert sheet.root.locator(figure).first.evaluate(style) == "line-through"
        expect(sheet.answer).to_have_text(built(sheet))


def test_what_was_typed_before_the_script_came_is_answered(browser, server):
    with another_page(browser, server) as page:
        late = []
        page.context.route("**/assets/page.js", lambda route: late.append(route))
        page.goto(f"{server.url}checks/{RUN}/", wait_until="commit")
        sheet = Sheet(page, RUN)
        sheet.box("current").fill("300")
        while not late:
            page.wait_for_timeout(20)
        late[0].continue_()
        sheet.expect_answer(usual(RUN, current="300 A"))
        expect(page).to_have_url(re.compile("current=300A"))


def test_whose_values_the_answer_is_of_is_told(page, server):
    sheet = open_sheet(page, server, RUN, link_of(RUN, "current=abc"))
    sheet.expect_no_answer()
    open_sheet(page, server, RUN)
    sheet.box("current").fill("abc")
    expect_standing(sheet, DEFAULT)
    sheet.box("current").fill("45")
    sheet.expect_answer(usual(RUN, current="45 A"))
    sheet.box("current").fill("abc")
    expect_standing(sheet, PREVIOUS)
    expect_marked(sheet, busy=False)


def test_a_sheet_that_cannot_calculate_is_still_for_every_hand_and_eye(page, server):
    page.add_init_script(REFUSED)
    page.goto(f"{server.url}checks/{RUN}/")
    sheet = Sheet(page, RUN)
    sheet.box("current").fill("300")
    expect_standing(sheet, NO_START)
    expect_marked(sheet, busy=False)
    assert not page.evaluate(SMALL_TARGETS, ".lw-sheet :is(input, select, button)")
    assert not page.evaluate(SMALL_TEXT, ".lw-sheet")
    page.set_viewport_size({"width": 320, "height": 640})
    page.evaluate("() => { document.documentElement.style.fontSize = '250%'; }")
    out = page.evaluate(STICKING_OUT, "article *")
    assert not [element for element in out if not element.startswith("the page is")]
    page.evaluate("() => { document.documentElement.style.fontSize = ''; }")
    assert not broken_rules(page)
    again_button(sheet).focus()
    page.keyboard.press("Enter")
    expect_standing(sheet, NO_START)  # it has tried and failed once more
