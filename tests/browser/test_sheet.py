"""A live sheet under the reader's fingers: typing, units, mistakes, moving about."""

import re

import pytest
from playwright.sync_api import expect

import calc
from tests.browser.sheet_helpers import (
    BAD_TEXTS,
    exactly,
    link_of,
    link_to,
    message,
    open_sheet,
    usual,
)
from tests.browser.tools import VIEWPORTS

RUN = "wire-drop"

pytestmark = pytest.mark.one_visit


@pytest.fixture
def viewport():
    """A phone's, unless a test asks for both."""
    return VIEWPORTS["phone"]


both_viewports = pytest.mark.parametrize("viewport", VIEWPORTS.values(), ids=VIEWPORTS)


@pytest.mark.parametrize(
    ("viewport", "name"),  # the others in one visit, in test_moving
    [
        *((VIEWPORTS["phone"], name) for name in ("joint-sheet", "find-fault", "week-ahead")),
        (VIEWPORTS["desktop"], "runtime"),
    ],
)
def test_a_sheet_comes_alive_with_its_own_figures(fresh_page, server, name):
    sheet = open_sheet(fresh_page, server, name)
    assert sheet.seq >= 1
    sheet.expect_answer(usual(name))
    expect(sheet.notes).to_be_hidden()


@both_viewports
def test_a_typed_figure_changes_the_answer_to_the_librarys(page, server):
    sheet = open_sheet(page, server, RUN)
    before = sheet.seq
    sheet.type("current", "45")
    wanted = calc.work(RUN, {"current": "45 A"})
    expect(sheet.figure).to_have_text(wanted.shown["drop"])
    assert wanted.shown["drop"] != calc.work(RUN).shown["drop"]
    sheet.expect_answer(usual(RUN, current="45 A"))
    assert sheet.seq > before


def test_a_typed_unit_moves_the_picker_and_leaves_the_number_in_the_box(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.type("length", "3.6 m")
    expect(sheet.picker("length")).to_have_value("m")
    expect(sheet.box("length")).to_have_value("3.6 m")
    sheet.expect_answer(usual(RUN, length="3.6 m"))
    page.keyboard.press("Tab")
    expect(sheet.box("length")).to_have_value("3.6")
    expect(sheet.picker("length")).to_have_value("m")


@pytest.mark.parametrize(("typed", "left"), [("45", "45"), ("20 A", "20"), ("4,5", "4,5")])
def test_leaving_the_box_at_once_keeps_what_was_typed(page, server, typed, left):
    sheet = open_sheet(page, server, RUN)
    # In one turn of the page, so that no answer can come between the last key and the leaving.
    sheet.box("current").evaluate(
        """(box, text) => {
            box.focus();
            box.select();
            document.execCommand("insertText", false, text);
            box.blur();
        }""",
        typed,
    )
    sheet.expect_answer(usual(RUN, current=f"{left} A"), comma="," in typed)
    expect(sheet.box("current")).to_have_value(re.compile(f"^({typed}|{left})$"))
    expect(page).to_have_url(exactly(link_to(RUN, usual(RUN, current=f"{left} A"))))


def test_another_unit_keeps_the_number_and_changes_the_answer(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.picker("length").select_option("m")
    expect(sheet.box("length")).to_have_value("12")
    sheet.expect_answer(usual(RUN, length="12 m"))


def test_a_comma_marks_decimals(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.type("current", "4,5")
    sheet.expect_answer(usual(RUN, current="4.5 A"), comma=True)
    page.keyboard.press("Tab")
    expect(sheet.box("current")).to_have_value("4,5")
    sheet.type("current", "5.5")
    sheet.expect_answer(usual(RUN, current="5.5 A"))


def test_feet_and_inches_are_read(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.picker("length").select_option("m")
    sheet.type("length", "3' 6\"")
    sheet.expect_answer(usual(RUN, length="3 ft 6 in"))
    expect(sheet.picker("length")).to_have_value("ft")


def test_invisible_marks_of_writing_direction_are_passed_over(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.box("current").fill("\u202b45\u202c A\u200f")
    sheet.expect_answer(usual(RUN, current="45 A"))


def test_the_inverters_efficiency_shows_only_beside_an_inverter(page, server):
    name = "watts-to-amps"
    sheet = open_sheet(page, server, name)
    expect(sheet.field("efficiency")).to_be_hidden()
    sheet.button("route", "inverter").check()
    expect(sheet.field("efficiency")).to_be_visible()
    sheet.expect_answer(usual(name, route="inverter"))
    sheet.type("efficiency", "80")
    sheet.expect_answer(usual(name, route="inverter", efficiency="80 %"))
    sheet.type("efficiency", "abc")
    sheet.expect_stale()
    sheet.button("route", "direct").check()
    expect(sheet.field("efficiency")).to_be_hidden()
    sheet.expect_answer(usual(name))


def test_an_empty_usual_figure_says_what_is_taken(page, server):
    name = "runtime"
    sheet = open_sheet(page, server, name)
    sheet.unfold()
    expect(sheet.box("usable")).to_have_value("")
    expect(sheet.note("usable")).to_have_text("Left empty: 80 %.")
    sheet.type("usable", "70")
    expect(sheet.note("usable")).to_be_hidden()
    sheet.expect_answer(usual(name, usable="70 %"))
    sheet.box("usable").fill("")
    expect(sheet.note("usable")).to_have_text("Left empty: 80 %.")
    sheet.box("chemistry").select_option("AGM")
    expect(sheet.note("usable")).to_have_text("Left empty: 50 %.")
    sheet.expect_answer(usual(name, chemistry="AGM"))


@pytest.mark.parametrize(
    ("viewport", "currents"),
    [(VIEWPORTS["phone"], BAD_TEXTS), (VIEWPORTS["desktop"], BAD_TEXTS[:2])],
    ids=VIEWPORTS,  # the window changes where a sentence stands, not which
)
def test_what_cannot_be_read_is_said_beside_its_box(page, server, currents):
    sheet = open_sheet(page, server, RUN)
    good = 31
    for field, unit, texts in (("current", "A", currents), ("voltage", "V", ("12 ft", "x"))):
        for text in texts:
            old = sheet.answer.text_content()
            sheet.box(field).fill(text)
            sheet.expect_refused(field, message(RUN, field, text), text)
            sheet.expect_stale()
            assert sheet.answer.text_content() == old
            described = sheet.box(field).get_attribute("aria-describedby").split()
            assert sheet.error(field).get_attribute("id") in described
            good += 1
            sheet.box(field).fill(str(good))
            sheet.expect_fine(field)
            sheet.expect_answer(usual(RUN, **{field: f"{good} {unit}"}))
        sheet.box(field).fill(usual(RUN)[field].split()[0])
        sheet.expect_answer(usual(RUN))


def test_two_wrong_figures_are_both_marked(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.box("current").fill("abc")
    sheet.box("length").fill("0")
    sheet.expect_refused("current", message(RUN, "current", "abc"), "abc")
    sheet.expect_refused("length", message(RUN, "length", "0 ft"), "0")
    sheet.box("current").fill("31")
    expect(sheet.error("current")).to_be_hidden()
    sheet.expect_refused("length", message(RUN, "length", "0 ft"), "0")
    sheet.expect_stale()


def test_a_wrong_figure_in_the_fold_opens_it(page, server):
    sheet = open_sheet(page, server, RUN, link_of(RUN, "temperature=abc"))
    expect(sheet.more).to_have_attribute("open", "")
    sheet.expect_refused("temperature", message(RUN, "temperature", "abc"), "abc")
    expect(sheet.box("temperature")).to_be_visible()


def test_unfolded_working_stays_unfolded_while_one_types(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.working.locator("summary").click()
    before = sheet.seq
    sheet.type("current", "45")
    sheet.expect_answer(usual(RUN, current="45 A"))
    assert sheet.seq > before
    expect(sheet.working).to_have_attribute("open", "")
    expect(sheet.working.locator(".lw-numbers").first).to_be_visible()
    others = sheet.answer.locator("details:not([data-fold=working])")
    assert others.evaluate_all("(folds) => folds.every((fold) => !fold.open)")


def test_reset_brings_the_sheets_own_figures_back(page, server):
    sheet = open_sheet(page, server, RUN, link_of(RUN, "current=abc&length=3.6m&finish=tinned"))
    sheet.expect_no_answer()
    page.get_by_role("button", name="Reset to default values").click()
    sheet.expect_fine("current")
    sheet.expect_answer(usual(RUN))
    expect(sheet.box("length")).to_have_value("12")
    expect(sheet.picker("length")).to_have_value("ft")
    expect(sheet.button("finish", "plain")).to_be_checked()
    expect(page).to_have_url(exactly(link_to(RUN, usual(RUN))))
    # What was said about the link is no longer so.
    expect(sheet.notes).to_be_hidden()


def test_of_fast_typing_the_last_text_counts(page, server):
    sheet = open_sheet(page, server, RUN)
    text = "1.234567890123456789"
    assert len(text) == 20
    sheet.type("current", text)
    sheet.expect_answer(usual(RUN, current=f"{text} A"))
    expect(sheet.box("current")).to_have_value(text)
    expect(page).to_have_url(re.compile(f"current={re.escape(text)}A"))
    # No overtaken answer comes in afterwards: the next ask is worked after all of them.
    seq = sheet.seq
    sheet.picker("length").select_option("m")
    sheet.expect_answer(usual(RUN, current=f"{text} A", length="12 m"))
    assert sheet.seq == seq + 1
