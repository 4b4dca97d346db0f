"""A search by presses: the next step is seen at once, and the browser's own way back leads back."""

import pytest
from playwright.sync_api import expect

import calc
from calc.faults import graph
from tests.browser.sheet_helpers import exactly, link_to, open_sheet, usual

pytestmark = pytest.mark.one_visit
NAME = "find-fault"
FIRST, SECOND = (graph.step(f"check.{own}") for own in ("hazard", "look"))
THUMB = 44  # CSS pixels


def test_a_press_shows_the_next_step_and_the_way_back_the_one_before(page, server):
    sheet = open_sheet(page, server, NAME)
    sheet.expect_worked()
    starts = sheet.part("key").locator(".lw-symptoms a")
    expect(starts).to_have_count(len(calc.find(NAME).walked.starts))
    for start in starts.all():
        assert start.bounding_box()["height"] >= THUMB
    starts.filter(has_text="Nothing is wrong").click()
    expect(sheet.figure).to_have_text(FIRST.ask)
    ways = sheet.part("key").locator("[data-ways] a")
    expect(ways).to_have_count(len(FIRST.turns))
    for way in ways.all():
        assert way.bounding_box()["height"] >= THUMB
    ways.get_by_text(FIRST.turn("no").text, exact=True).click()
    expect(sheet.figure).to_have_text(SECOND.ask)
    expect(page).to_have_url(exactly(link_to(NAME, usual(NAME, path="check.no"))))
    place = sheet.figure.bounding_box()
    assert 0 < place["y"] < page.viewport_size["height"], "the step is what one sees"
    page.go_back()
    expect(sheet.figure).to_have_text(FIRST.ask)
    page.go_forward()
    expect(sheet.figure).to_have_text(SECOND.ask)


def test_figures_may_be_changed_half_way_and_the_way_stays(page, server):
    sheet = open_sheet(page, server, NAME, link_to(NAME, usual(NAME, path="check.no.firm")))
    sheet.expect_worked()
    texts = usual(NAME, path="check.no.firm")
    sheet.expect_answer(texts)
    sheet.type("load", "12")
    sheet.expect_answer(texts | {"load": "12 A"})
    expect(sheet.box("path")).to_be_hidden()
