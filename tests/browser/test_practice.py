"""Questions answered in the page, a set for a class, and words that open their sentence."""

import re

import pytest
from playwright.sync_api import Page, expect

from calc.practice import question
from calc.practice.sets import PracticeSet
from tests.browser.sheet_helpers import STARTING
from tests.browser.tools import VIEWPORTS

pytestmark = pytest.mark.one_visit
FIRST = question("alternator-charge", 1)
SET = PracticeSet.of(["wire-drop", "fuse-ladder"], 4, 7)


@pytest.fixture
def viewport():
    """A phone's: what a student has in hand."""
    return VIEWPORTS["phone"]


def reply(page: Page, one, text: str):
    """Type a reply to a question and press Check; return what is said to it."""
    place = page.locator(f'[data-of="{one.worksheet}"][data-nr="{one.number}"]')
    place.get_by_label("Your answer").fill(text)
    place.get_by_role("button", name="Check").click()
    return place


def test_a_student_reads_why_a_relay_is_poor_and_answers_a_question(page, server):
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(server.url + "checks/alternator-charge/")
    expect(page.locator("html[data-lugwise=ready]")).to_be_attached(timeout=STARTING)
    expect(page.locator("article > ul", has_text="A relay does not limit it")).to_be_visible()
    assert not [url for url in asked if "practice" in url or "questions" in url]
    page.get_by_text("Try the questions").click()
    first = page.locator("[data-nr]").first
    expect(first.locator("[data-solved]")).to_be_hidden()
    assert page.locator("[data-nr]:visible").count() == 1

    place = reply(page, FIRST, "1 V" if FIRST.unit.symbol == "A" else "1 A")
    expect(place.get_by_role("status")).to_contain_text("The question asks for a")
    expect(place.get_by_role("status")).not_to_contain_text("hint")
    reply(page, FIRST, "9e9")
    expect(place.get_by_role("status")).to_contain_text("there is a hint")
    expect(place.locator("[data-solved]")).to_be_hidden()
    place.get_by_text("Hint", exact=True).click()
    expect(place.locator("[data-solved]")).to_be_visible()
    reply(page, FIRST, FIRST.shown)
    expect(place.get_by_role("status")).to_have_text(f"Right: {FIRST.shown}.")
    expect(page.locator("[data-progress]")).to_contain_text("1 right so far")

    page.get_by_role("button", name="Another question").click()
    second = question("alternator-charge", 2)
    expect(page.get_by_text(second.text)).to_be_visible()
    place = page.locator("[data-nr]:visible")
    place.get_by_text("Hint", exact=True).click()
    place.locator("[data-solved] > summary").click()
    said = reply(page, second, second.shown).get_by_role("status")
    not_counted = "Not counted, because you had seen the answer."
    expect(said).to_have_text(f"Right: {second.shown}. {not_counted}")
    expect(page.locator("[data-progress]")).to_contain_text("1 right so far")
    for _ in range(2):
        page.get_by_role("button", name="Another question").click()
    fourth = question("alternator-charge", 4)
    expect(page.get_by_text(fourth.text)).to_be_visible()
    expect(reply(page, fourth, "<b>").get_by_role("status")).to_contain_text("must be a number")
    page.reload()
    page.get_by_text("Try the questions").click()
    expect(page.locator("[data-progress]")).to_contain_text("1 right so far", timeout=STARTING)
    page.get_by_role("button", name="Erase").click()
    expect(page.locator("[data-progress]")).to_be_hidden()
    assert page.evaluate("localStorage.getItem('lugwise.right')") is None


def test_a_link_makes_the_set_that_the_terminal_prints_and_its_key_is_for_paper(page, server):
    page.goto(f"{server.url}practice/#{SET.link}")
    asked = SET.questions()
    for one in asked:
        expect(page.get_by_text(one.text).first).to_be_visible(timeout=STARTING)
    assert page.locator('[name="sheets"]:checked').count() == 2
    right = reply(page, asked[0], asked[0].shown)
    expect(right.get_by_role("status")).to_contain_text("Right")
    key = page.locator('section[data-paper="key"]')
    expect(key).to_be_hidden()
    page.emulate_media(media="print")
    expect(key).to_be_visible()
    assert all(f"{one.asked.label}: {one.shown}" in key.inner_text() for one in asked)
    expect(page.get_by_role("button", name="Check").first).to_be_hidden()
    page.emulate_media(media="null")

    page.get_by_role("button", name="New seed").click()
    expect(page).not_to_have_url(re.compile(re.escape(SET.link) + "$"))
    assert page.locator("[data-nr]").count() == 4
    page.evaluate("location.hash = '#v=1&sheets=<img src=x onerror=window.pwned=1>&count=1e9'")
    expect(page.locator("[data-said]")).to_contain_text("Number of questions must be a whole")
    page.evaluate("location.hash = '#v=1&sheets=' + 'wire-drop,'.repeat(1e5)")
    expect(page.locator("[data-said]")).to_contain_text("too long")
    assert page.evaluate("window.pwned") is None


def test_a_word_opens_its_sentence_by_key_and_by_tap(page, server):
    page.goto(server.url + "checks/wire-drop/")
    word = page.locator("button.lw-term").first
    meaning = page.locator(f"#{word.get_attribute('popovertarget')}")
    expect(meaning).to_be_hidden()
    word.focus()
    page.keyboard.press("Enter")
    expect(meaning).to_be_visible()
    box = meaning.bounding_box()
    assert box["x"] >= 0 and box["x"] + box["width"] <= 360
    page.keyboard.press("Escape")
    expect(meaning).to_be_hidden()
    word.click()
    expect(meaning).to_be_visible()
    page.locator("h1").click()
    expect(meaning).to_be_hidden()
