"""A sum that takes longer than a keystroke: its first stage at once, the rest after it."""

import pytest
from playwright.sync_api import expect

from tests.browser.sheet_helpers import open_sheet, usual
from tests.browser.tools import VIEWPORTS

LONG = "week-ahead"

pytestmark = pytest.mark.one_visit

WATCH = """(answer) => {
  window.seen = [];
  const look = () => window.seen.push([
    answer.querySelector("progress")?.value ?? "whole",
    answer.closest("[data-sheet]").querySelector(".lw-gist-words").textContent,
  ]);
  look();
  const changes = { childList: true, subtree: true, attributeFilter: ["value"] };
  new MutationObserver(look).observe(answer, changes);
}"""


@pytest.fixture
def viewport():
    """A phone's: a sum does not depend on the window."""
    return VIEWPORTS["phone"]


def test_the_first_stage_is_shown_while_the_rest_goes_on(page, server):
    sheet = open_sheet(page, server, LONG)
    sheet.expect_answer(usual(LONG))
    sheet.answer.evaluate(WATCH)
    sheet.type("array", "100")
    sheet.expect_answer(usual(LONG, array="100 W"))
    seen = [state for state, _ in page.evaluate("() => window.seen")]
    shares = [state for state in seen if state != "whole"]
    assert shares[0] == 0
    assert len(set(shares)) > 5, "the bar moves on"
    last = len(seen) - seen[::-1].index(0)  # after the first stage for the last key
    after = [state for state in seen[last:] if state != "whole"]
    assert after == sorted(after)
    whole = len(seen) - last - len(after)  # once its folds are filled it is seen again
    assert 1 <= whole <= 2 and seen[-whole:] == ["whole"] * whole


def test_newer_figures_do_not_wait_for_an_older_sum(page, server):
    sheet = open_sheet(page, server, LONG)
    sheet.expect_answer(usual(LONG))
    whole = sheet.seq
    sheet.box("array").select_text()
    page.keyboard.type("12345", delay=30)
    sheet.expect_answer(usual(LONG, array="12345 W"))
    page.wait_for_timeout(1_000)
    # Five keys: five first stages at most, and one sum that came to its end.
    assert 2 <= sheet.seq - whole <= 6
    expect(sheet.answer.locator("progress")).to_have_count(0)
