"""A Python that falls silent is noticed: never does an old answer pass as the new one."""

import pytest
from playwright.sync_api import expect

from tests.browser.sheet_helpers import usual
from tests.browser.standing import (
    AGAIN,
    CALCULATING,
    GIVEN_UP,
    again_button,
    built,
    expect_marked,
    expect_standing,
)
from tests.browser.tools import VIEWPORTS
from tests.browser.workers import open_in_hand

RUN, LONG = "wire-drop", "week-ahead"


@pytest.fixture
def viewport():
    """A phone's: time does not depend on the window."""
    return VIEWPORTS["phone"]


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
    # An answer in full makes up for a restart: the system may end one worker after the other.
    for current in ("6", "7"):
        workers.end()
        sheet.box("current").fill(current)
        workers.pass_time(10_000)
        sheet.expect_answer(usual(RUN, current=f"{current} A"))
    assert (workers.made, workers.alive) == (4, 1)


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
    again_button(sheet).click()
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
    workers.pass_time(60_000)
    assert workers.made == 2, "nobody waits for the others"


def test_a_hidden_page_and_a_sleeping_device_count_no_time(page, server):
    sheet, workers = open_in_hand(page, server, RUN)
    workers.end()
    sheet.box("current").fill("300")
    workers.pass_time(6_000)
    workers.hide()
    workers.pass_time(3_600_000)
    assert workers.made == 1
    workers.hide(False)
    workers.sleep(3_600_000)
    workers.pass_time(2_000)
    assert workers.made == 1
    workers.pass_time(2_000)
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
