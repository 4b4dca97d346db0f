"""A Python that falls silent, breaks or cannot be shown: never does an old answer pass as new."""

import re

import pytest
from playwright.sync_api import Locator, expect

from tests.browser.sheet_helpers import Sheet, another_page, open_sheet, reply_to, usual
from tests.browser.tools import NO_PYTHON, REFUSED, VIEWPORTS
from tests.browser.workers import open_in_hand

RUN, LONG = "wire-drop", "week-ahead"

DEFAULT = "The answer below is for the default values."
PREVIOUS = "The answer below is for the previous values."
CALCULATING = f"Calculating. {DEFAULT}"
AGAIN = f"The calculation stopped responding and is starting again. {DEFAULT}"
GIVEN_UP = (
    "The calculation stopped responding, and two restarts did not help. "
    f"{DEFAULT} Try again, or write your values down and reload the page."
)
UNSHOWN = (
    "The new answer could not be shown. "
    f"{PREVIOUS} Try again, or write your values down and reload the page."
)
NO_START = (
    f"The calculation could not start in this browser. {DEFAULT} Try again, or use another browser."
)


@pytest.fixture
def viewport():
    """A phone's: time does not depend on the window."""
    return VIEWPORTS["phone"]


def expect_marked(sheet: Sheet, busy: bool) -> None:
    """The old answer is seen to be none, and said to be none where it stands."""
    expect(sheet.root).to_contain_class("is-stale")
    expect(sheet.answer).to_have_attribute("aria-busy", str(busy).lower())
    expect_struck_out(sheet.answer, "h2", "::after", "not for your values")
    gist = sheet.part("gist")
    if gist.locator(".lw-gist-words").count():  # or else it says why there is no new answer
        expect_struck_out(gist, "", "::before", "old values")


def expect_struck_out(place: Locator, tag: str, pseudo: str, word: str) -> None:
    """The figure in `place` is struck out, and a word says why."""
    said = "(e, [tag, pseudo]) => getComputedStyle(tag ? e.querySelector(tag) : e, pseudo).content"
    assert place.evaluate(said, [tag, pseudo]) == f'"{word}"'
    figure = place.locator(".lw-figure, .lw-gist-words").first
    assert figure.evaluate("(e) => getComputedStyle(e).textDecorationLine") == "line-through"


def expect_standing(sheet: Sheet, words: str) -> None:
    """The sentence above the answer, without the button that may follow it."""
    expect(sheet.state).to_be_visible()
    expect(sheet.state).to_have_text(f"{words} Try again" if button(sheet).count() else words)


def button(sheet: Sheet):
    return sheet.state.get_by_role("button", name="Try again")


def built(sheet: Sheet) -> str:
    return sheet.text_of(reply_to(sheet.name, usual(sheet.name))["answer"])


def test_an_ended_worker_is_noticed_and_the_answer_is_the_new_ones(page, server):
    sheet, workers = open_in_hand(page, server, RUN)
    workers.end()
    sheet.box("current").fill("300")
    workers.pass_time(199)
    expect(sheet.root).not_to_contain_class("is-stale")
    workers.pass_time(1)
    expect_marked(sheet, busy=True)
    expect(sheet.state).to_be_hidden()  # a slow phone is not commented on at every key
    workers.pass_time(800)
    expect_standing(sheet, CALCULATING)
    expect(sheet.part("status")).to_have_text(CALCULATING)
    expect(sheet.part("gist")).to_have_text("Calculating.")
    workers.pass_time(8_999)
    expect(sheet.answer).to_have_text(built(sheet))
    assert workers.made == 1
    workers.pass_time(1)
    assert (workers.made, workers.alive) == (2, 1)
    sheet.expect_answer(usual(RUN, current="300 A"))
    sheet.expect_fine("current")
    expect(sheet.answer).to_have_attribute("aria-busy", "false")
    workers.pass_time(60_000)
    assert workers.made == 2
    sheet.box("current").fill("6")
    sheet.expect_answer(usual(RUN, current="6 A"))


def test_the_restart_is_said_and_the_old_link_is_not_handed_on(page, server):
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    sheet, workers = open_in_hand(page, server, RUN)
    workers.deafen()
    sheet.box("current").fill("300")
    page.get_by_role("button", name="Copy link").click()
    expect(sheet.part("copied")).to_have_text("No link yet: your values have not been calculated.")
    workers.pass_time(10_000)
    expect_standing(sheet, AGAIN)
    expect_marked(sheet, busy=True)
    workers.pass_time(800)
    expect(sheet.part("status")).to_have_text(AGAIN)
    workers.deafen(False)
    sheet.box("current").fill("301")
    sheet.expect_answer(usual(RUN, current="301 A"))
    page.get_by_role("button", name="Copy link").click()
    expect(sheet.part("copied")).to_have_text("Copied.")
    assert "current=301A" in page.evaluate("() => navigator.clipboard.readText()")


def test_a_worker_that_never_replies_is_given_up_in_words(page, server):
    sheet, workers = open_in_hand(page, server, RUN)
    workers.deafen()
    sheet.box("current").fill("300")
    for restarted in (1, 2):
        workers.wait_for_start()
        workers.pass_time(9_999)
        assert workers.made == restarted
        workers.pass_time(1)
        assert workers.made == restarted + 1
    workers.wait_for_start()
    workers.pass_time(10_000)
    assert (workers.made, workers.alive) == (3, 0)
    expect_standing(sheet, GIVEN_UP)
    expect(sheet.part("gist")).to_have_text(GIVEN_UP.partition(".")[0] + ".")
    expect_marked(sheet, busy=False)
    expect(sheet.box("current")).to_have_value("300")
    workers.pass_time(800)
    expect(sheet.part("status")).to_have_text(GIVEN_UP)
    workers.pass_time(600_000)
    assert workers.made == 3
    # Pressed, it starts once more, with the values that stand there.
    workers.deafen(False)
    button(sheet).click()
    sheet.expect_answer(usual(RUN, current="300 A"))
    sheet.expect_fine("current")
    assert workers.alive == 1


def test_of_several_asks_in_the_silence_only_the_newest_is_answered(page, server):
    sheet, workers = open_in_hand(page, server, RUN)
    before = sheet.seq
    workers.end()
    for current in ("3", "30", "300"):
        sheet.box("current").fill(current)
        workers.pass_time(3_000)  # an ask overtaken does not begin the time anew
    assert workers.made == 1
    workers.pass_time(1_000)
    assert workers.made == 2
    sheet.expect_answer(usual(RUN, current="300 A"))
    assert sheet.seq == before + 1


def test_a_hidden_page_counts_no_time(page, server):
    sheet, workers = open_in_hand(page, server, RUN)
    workers.end()
    sheet.box("current").fill("300")
    workers.pass_time(6_000)
    workers.hide()
    workers.pass_time(3_600_000)
    assert workers.made == 1
    workers.hide(False)
    workers.pass_time(3_999)
    assert workers.made == 1
    workers.pass_time(1)
    sheet.expect_answer(usual(RUN, current="300 A"))
    assert workers.made == 2


def test_each_stage_of_a_long_sum_has_its_own_time(page, server):
    sheet, workers = open_in_hand(page, server, LONG)
    sheet.expect_answer(usual(LONG))
    workers.hold()
    sheet.box("array").fill("100")
    for _ in range(4):
        workers.pass_time(9_000)
        workers.release()
    expect(sheet.answer.locator("progress")).to_be_visible()
    sheet.expect_fine("array")  # the first stage is theirs, if not yet whole
    assert workers.made == 1
    workers.pass_time(10_000)
    assert workers.made == 2
    expect_standing(
        sheet,
        "The calculation stopped responding and is starting again. "
        "The answer below is not complete.",
    )
    expect(sheet.root).not_to_contain_class("is-stale")
    # Begun anew from its first stage: the new Python knows nothing of the old sum.
    page.evaluate("() => { window.held = null; }")
    sheet.expect_answer(usual(LONG, array="100 W"))
    expect(sheet.answer.locator("progress")).to_have_count(0)


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
        button(sheet).click()
        sheet.expect_answer(usual(RUN, current="300 A"))
        sheet.expect_fine("current")


def test_a_reply_that_nobody_can_read_is_a_failure_too(browser, server):
    with another_page(browser, server, lambda error: "SyntaxError" in error) as page:
        sheet, workers = open_in_hand(page, server, RUN)
        workers.garble()
        sheet.box("current").fill("300")
        expect_standing(sheet, UNSHOWN.replace(PREVIOUS, DEFAULT))
        expect_marked(sheet, busy=False)


BREAKS = "if (request.includes('666')) throw new WebAssembly.RuntimeError('unreachable');"


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
        break_worker(page, "if (request.includes('666')) request = '{}';")
        sheet, workers = open_in_hand(page, server, RUN)
        sheet.box("current").fill("666")
        expect_standing(
            sheet, f"The calculation failed (KeyError: 'sheet'). {DEFAULT} Try other values."
        )
        expect_marked(sheet, busy=False)
        sheet.box("current").fill("45")
        sheet.expect_answer(usual(RUN, current="45 A"))
        assert (workers.made, workers.alive) == (1, 1)


def break_worker(page, script: str) -> None:
    """Serve the page a worker that runs `script` before each request."""

    def serve(route) -> None:
        code = route.fetch().text()
        turn = '  try {\n    self.postMessage({ type: "answer"'
        assert code.count(turn) == 1
        code = code.replace("const [key, { id, request }]", "let [key, { id, request }]")
        route.fulfill(
            body=code.replace(turn, turn.replace("{\n", "{\n" + script, 1)),
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
            return sheet.answer.evaluate("(e) => getComputedStyle(e, '::before').content")

        assert said() == "none"
        sheet.type("current", "300")
        words = "The values above are not used yet: this answer is for the default values."
        assert said() == f'"{words}"'
        page.keyboard.press("Tab")
        page.locator("h1").click()
        assert said() == f'"{words}"'
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
    sheet = open_sheet(page, server, RUN, "#v=1&current=abc")
    expect_standing(sheet, DEFAULT)
    sheet.box("current").fill("45")
    sheet.expect_answer(usual(RUN, current="45 A"))
    sheet.box("current").fill("abc")
    expect_standing(sheet, PREVIOUS)
    expect_marked(sheet, busy=False)
