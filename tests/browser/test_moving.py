"""Moving about the site with a live sheet: links, Back, reload, the address."""

import re

import pytest
from playwright.sync_api import expect

import calc
from tests.browser.sheet_helpers import (
    STARTING,
    Sheet,
    another_page,
    exactly,
    follow,
    link_to,
    open_sheet,
    reply_to,
    usual,
)
from tests.browser.standing import NO_FILE
from tests.browser.tools import VIEWPORTS

RUN, FUSE = "wire-drop", "fuse-choice"


@pytest.fixture
def viewport():
    """A phone's, unless a test asks for both."""
    return VIEWPORTS["phone"]


@pytest.mark.saving
@pytest.mark.parametrize("viewport", [VIEWPORTS["desktop"]], ids=["desktop"])
def test_one_python_serves_every_guide_and_back_brings_the_figures(page, server):
    made = []
    page.on("worker", lambda worker: made.append(worker.url))
    # The theme moves without a reload once the service worker answers for the site map.
    page.goto(server.url)
    line = page.locator("[data-offline-line]")
    expect(line).to_contain_text("Saved for use without signal", timeout=STARTING)
    sheet = open_sheet(page, server, RUN)
    page.evaluate("() => { window.sameDocument = true; }")
    sheet.type("current", "45")
    expect(page).to_have_url(exactly(link_to(RUN, usual(RUN, current="45 A"))))

    fuse = follow(page, FUSE)
    fuse.expect_worked()
    fuse.expect_answer(usual(FUSE))
    fuse.type("current", "20")
    fuse.expect_answer(usual(FUSE, current="20 A"))
    expect(page).to_have_url(exactly(link_to(FUSE, usual(FUSE, current="20 A"))))

    again = follow(page, RUN)
    again.expect_worked()
    expect(again.box("current")).to_have_value("30")
    again.expect_answer(usual(RUN))

    page.go_back()
    fuse.expect_worked()
    expect(fuse.box("current")).to_have_value("20")
    fuse.expect_answer(usual(FUSE, current="20 A"))
    page.go_back()
    sheet.expect_worked()
    expect(sheet.box("current")).to_have_value("45")
    sheet.expect_answer(usual(RUN, current="45 A"))
    sheet.type("current", "6")
    sheet.expect_answer(usual(RUN, current="6 A"))

    assert page.evaluate("() => window.sameDocument"), "the theme loaded a page anew"
    ours = [url for url in made if url.endswith("/assets/worker.js")]
    assert len(ours) == 1, made


@pytest.mark.saving
def test_in_one_visit_each_sheet_comes_alive_with_its_own_figures(page, server):
    made = []
    page.on("worker", lambda worker: made.append(worker.url))
    page.goto(server.url)
    line = page.locator("[data-offline-line]")
    expect(line).to_contain_text("Saved for use without signal", timeout=STARTING)
    first, *others = calc.worksheets()
    open_sheet(page, server, first).expect_answer(usual(first))
    for name in others:
        page.locator(f".lw-menu a[href$='/{name}/']").first.evaluate("(link) => link.click()")
        sheet = Sheet(page, name)
        sheet.expect_worked()
        sheet.expect_answer(usual(name))
        expect(sheet.notes).to_be_hidden()
    assert len([url for url in made if "search" not in url]) == 1, "one Python for the visit"


def test_figures_typed_just_before_leaving_do_not_follow_to_the_next_guide(page, server):
    page.clock.install()
    sheet = open_sheet(page, server, RUN)
    link = page.locator(f"article a[href$='{FUSE}/']").first
    sheet.box("current").fill("45")
    link.evaluate("(link) => link.click()")
    fuse = Sheet(page, FUSE)
    fuse.expect_worked()
    page.clock.run_for(5_000)  # whatever was still to be written or said
    expect(page).to_have_url(exactly(f"/{FUSE}/"))
    fuse.expect_answer(usual(FUSE))
    expect(fuse.notes).to_be_hidden()


@pytest.mark.one_visit
def test_the_address_follows_without_new_entries_in_the_history(page, server):
    sheet = open_sheet(page, server, RUN)
    entries = page.evaluate("() => history.length")
    for current in ("45", "46", "47"):
        sheet.type("current", current)
        expect(page).to_have_url(exactly(link_to(RUN, usual(RUN, current=f"{current} A"))))
    assert page.evaluate("() => history.length") == entries
    expect(sheet.part("link")).to_have_value(page.url)


@pytest.mark.one_visit
def test_a_reload_keeps_the_figures(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.type("length", "3.6 m")
    expect(page).to_have_url(re.compile("length=3.6m"))
    page.reload()
    sheet.expect_worked()
    expect(sheet.box("length")).to_have_value("3.6")
    expect(sheet.picker("length")).to_have_value("m")
    sheet.expect_answer(usual(RUN, length="3.6 m"))
    sheet.type("length", "3,7")
    expect(page).to_have_url(re.compile("length=3.7m"))
    page.reload()
    sheet.expect_worked()
    expect(sheet.box("length")).to_have_value("3,7")  # the decimal sign that was typed last


def test_a_heading_in_the_address_is_left_there_and_the_sheet_works(page, server):
    page.clock.install()
    sheet = open_sheet(page, server, RUN, "#when-it-misleads")
    sheet.expect_worked()
    sheet.expect_answer(usual(RUN))
    page.clock.run_for(5_000)
    expect(sheet.part("status")).to_have_text("")  # nobody has asked yet
    expect(page).to_have_url(exactly("#when-it-misleads"))


def test_a_python_that_does_not_come_is_said_and_the_built_answer_stays(browser, server):
    def our_own_doing(error: str) -> bool:
        return "pyodide.asm.wasm.bin" in error or "could not be loaded" in error

    with another_page(browser, server, our_own_doing, service_workers="block") as page:
        page.context.route("**/pyodide.asm.wasm.bin", lambda route: route.abort())
        page.goto(f"{server.url}checks/{RUN}/")
        sheet = Sheet(page, RUN)
        expect(sheet.state).to_contain_text(NO_FILE)
        expect(sheet.answer).to_have_text(sheet.text_of(reply_to(RUN, usual(RUN))["answer"]))
        # What hindered it may pass: the next key tries again.
        page.context.unroute("**/pyodide.asm.wasm.bin")
        sheet.type("current", "45")
        sheet.expect_live()
        sheet.expect_answer(usual(RUN, current="45 A"))


def test_figures_typed_just_before_leaving_are_not_there_when_one_is_back_at_once(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.type("current", "45")
    sheet.expect_answer(usual(RUN, current="45 A"))
    page.clock.install()  # nothing is written until it runs
    sheet.type("current", "46")
    sheet.expect_answer(usual(RUN, current="46 A"))
    sheet = open_sheet(page, server, RUN)
    page.clock.run_for(5_000)
    sheet.expect_answer(usual(RUN))
    expect(page).to_have_url(exactly(f"/{RUN}/"))
