"""A site that is changed under an open page: no other edition's Python answers to its fields."""

import hashlib

import pytest
from playwright.sync_api import Page, Route, expect

from calc.practice import question
from tests.browser.sheet_helpers import (
    STARTING,
    Sheet,
    another_page,
    follow,
    open_sheet,
    usual,
)
from tests.browser.standing import DEFAULT, expect_standing

RUN, FUSE = "wire-drop", "fuse-choice"
NEWER = "There is a newer version of this page."
TO_DO = "Write your values down and reload the page."


def our_doing(error: str) -> bool:
    return "of another edition" in error


@pytest.fixture
def page(browser, server):
    with another_page(browser, server, our_doing, service_workers="block") as page:
        yield page


def other_boot(page: Page, server) -> str:
    """Serve what Python starts from as another edition has it; return its hash."""
    other = page.request.get(f"{server.url}assets/runtime/boot.json").body() + b"\n"
    page.context.route("**/assets/runtime/boot.json", lambda route: route.fulfill(body=other))
    return hashlib.sha256(other).hexdigest()


def test_a_python_of_another_edition_gives_no_answer_and_a_reload_brings_its_page(page, server):
    other_boot(page, server)
    page.goto(f"{server.url}checks/{RUN}/")
    sheet = Sheet(page, RUN)
    sheet.box("current").fill("45")
    expect_standing(sheet, f"{NEWER} {DEFAULT} {TO_DO}")
    assert sheet.answer.get_attribute("data-seq") == "0"
    page.context.unroute("**/assets/runtime/boot.json")
    sheet.state.get_by_role("button", name="Reload").click()
    sheet.expect_live()
    sheet.expect_answer(usual(RUN))


def test_further_code_of_another_edition_is_not_put_beside_the_page_s_own(page, server):
    def other(route: Route) -> None:
        route.fulfill(response=route.fetch(url=route.request.url.replace("questions", "client")))

    page.context.route("**/questions.zip.bin", other)
    open_sheet(page, server, RUN)
    first = question(RUN, 1)
    page.get_by_text("Try the questions").click()
    place = page.locator("[data-nr]").first
    place.get_by_label("Your answer").fill(first.shown)
    place.get_by_role("button", name="Check").click()
    expect(place.get_by_role("status")).to_contain_text(f"Not checked. {NEWER} {TO_DO}")
    page.context.unroute("**/questions.zip.bin")
    place.get_by_role("button", name="Check").click()
    expect(place.get_by_role("status")).to_have_text(f"Right: {first.shown}.")


def test_a_page_of_another_edition_that_one_comes_to_is_loaded_whole(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.type("current", "45")
    sheet.expect_answer(usual(RUN, current="45 A"))
    boot = page.locator("meta[name=lugwise-boot]").get_attribute("content")
    other = other_boot(page, server)

    def newer(route: Route) -> None:
        reply = route.fetch()
        route.fulfill(response=reply, body=reply.text().replace(boot, other))

    page.context.route(f"**/checks/{FUSE}/", newer)
    page.evaluate("() => { window.sameDocument = true; }")
    follow(page, FUSE)
    expect(page.locator("meta[name=lugwise-boot]")).to_have_attribute("content", other)
    fuse = Sheet(page, FUSE)
    page.wait_for_function("() => !window.sameDocument", timeout=STARTING)
    fuse.expect_live()
    fuse.expect_answer(usual(FUSE))
