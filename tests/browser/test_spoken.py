"""When a sheet speaks: the answer once, a sentence on a mistake only when the typing pauses."""

from datetime import datetime, timedelta

import pytest
from playwright.sync_api import expect

from tests.browser.sheet_helpers import message, open_sheet, reply_to, usual
from tests.browser.tools import VIEWPORTS

RUN = "wire-drop"


@pytest.fixture
def viewport():
    """A phone's: time does not depend on the window."""
    return VIEWPORTS["phone"]


def test_the_answer_is_spoken_once_when_the_typing_pauses(page, server):
    page.clock.install()
    sheet = open_sheet(page, server, RUN)
    page.clock.pause_at(datetime.now() + timedelta(hours=1))
    sheet.part("status").evaluate(
        """(line) => {
            window.said = [];
            new MutationObserver(() => window.said.push(line.textContent))
                .observe(line, { childList: true, characterData: true, subtree: true });
        }"""
    )

    def type_and_wait(current: str, texts: dict[str, str]) -> None:
        sheet.type("current", current)
        sheet.expect_answer(texts)

    texts = usual(RUN, current="45 A")
    type_and_wait("4", usual(RUN, current="4 A"))
    page.clock.run_for(500)
    type_and_wait("45", texts)
    page.clock.run_for(700)
    assert page.evaluate("() => window.said") == []
    page.clock.run_for(200)
    assert page.evaluate("() => window.said") == [reply_to(RUN, texts)["status"]]
    page.clock.run_for(60_000)
    assert len(page.evaluate("() => window.said")) == 1

    sheet.type("current", "abc")
    sheet.expect_stale()
    page.clock.run_for(2_000)
    assert page.evaluate("() => window.said")[1:] == [message(RUN, "current", "abc")]


def test_half_typed_is_not_scolded_at_once(page, server):
    page.clock.install()
    sheet = open_sheet(page, server, RUN)
    page.clock.pause_at(datetime.now() + timedelta(hours=1))
    sheet.type("current", "4 kilo")
    sheet.expect_stale()
    expect(sheet.error("current")).to_be_hidden()
    page.clock.run_for(1_000)
    sheet.expect_refused("current", message(RUN, "current", "4 kilo"), "4 kilo")
