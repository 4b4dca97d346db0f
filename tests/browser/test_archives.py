"""Code that only some pages need, and that did not come: said as such, and fetched at a press."""

import re

from playwright.sync_api import expect

from calc.practice import question
from tests.browser.sheet_helpers import STARTING, Sheet, another_page, link_to, usual
from tests.browser.standing import DEFAULT, expect_standing

RUN, OTHER = "wire-drop", "wire-size"
FILE = "A file of the calculation could not be loaded."
TO_DO = "Check the connection, then try again."


def our_doing(error: str) -> bool:
    return any(part in error for part in ("could not be loaded", "ERR_FAILED", "Failed to"))


def test_an_archive_that_did_not_come_is_named_as_the_reason_and_fetched_at_a_press(
    browser, server
):
    with another_page(browser, server, our_doing, service_workers="block") as page:
        for name in ("questions", "client", "van"):
            page.context.route(f"**/{name}.zip.bin", lambda route: route.abort())
        first = question(RUN, 1)
        page.goto(f"{server.url}checks/{RUN}/")
        sheet = Sheet(page, RUN)
        sheet.expect_worked()
        page.get_by_text("Try the questions").click()
        place = page.locator("[data-nr]").first
        place.get_by_label("Your answer").fill(first.shown)
        place.get_by_role("button", name="Check").click()
        mark = place.get_by_role("status")
        expect(mark).to_have_text(f"Not checked. {FILE} {TO_DO} The answer is below.")
        sheet.part("explain").click()
        expect(sheet.part("copied")).to_have_text(f"Not explained. {FILE} {TO_DO}")
        page.context.unroute("**/questions.zip.bin")
        place.get_by_role("button", name="Check").click()
        expect(mark).to_have_text(f"Right: {first.shown}.")
        page.context.unroute("**/client.zip.bin")
        sheet.part("explain").click()
        told = page.locator("[data-client] [data-told]")
        expect(page.locator("[data-client]")).to_have_attribute("data-checked", "agrees")
        # The same link, where what checks it does not come.
        page.context.route("**/client.zip.bin", lambda route: route.abort())
        page.reload()
        expect(told).to_have_text(
            f"From the link, not checked yet. {FILE} {TO_DO} Try again", timeout=STARTING
        )
        page.context.unroute("**/client.zip.bin")
        told.get_by_role("button", name="Try again").click()
        expect(page.locator("[data-client]")).to_have_attribute("data-checked", "agrees")
        page.goto(f"{server.url}van/")
        page.get_by_role("button", name="Plan a van").first.click()
        said = page.locator("[data-van] [data-said]")
        expect(said).to_contain_text(f"{FILE} {TO_DO}", timeout=STARTING)
        page.context.unroute("**/van.zip.bin")
        page.get_by_role("button", name="Plan a van").first.click()
        expect(page.locator("[data-place='van.name'] input").first).to_be_focused(timeout=STARTING)


def test_a_sheet_needs_no_chapter_but_its_own(browser, server):
    """The others do not come: this one is worked, the next one says why it is not."""
    others = "**/{wire,joints,bank,charging,comfort}.zip.bin"
    with another_page(browser, server, our_doing, service_workers="block") as page:
        page.context.route(others, lambda route: route.abort())
        page.goto(f"{server.url}checks/{RUN}/{link_to(RUN, usual(RUN, current='45 A'))}")
        sheet = Sheet(page, RUN)
        sheet.expect_answer(usual(RUN, current="45 A"))
        page.goto(f"{server.url}checks/{OTHER}/{link_to(OTHER, usual(OTHER, current='45 A'))}")
        sheet = Sheet(page, OTHER)
        expect_standing(sheet, f"{FILE} {TO_DO}")
        page.context.unroute(others)
        sheet.state.get_by_role("button", name="Try again").click()
        sheet.expect_answer(usual(OTHER, current="45 A"))


def test_a_connection_that_breaks_while_python_starts_is_the_reason_that_is_said(browser, server):
    with another_page(browser, server, our_doing, service_workers="block") as page:
        page.context.route("**/assets/runtime/**", lambda route: route.abort())
        page.goto(f"{server.url}checks/{RUN}/{link_to(RUN, usual(RUN, current='45 A'))}")
        sheet = Sheet(page, RUN)
        expect_standing(sheet, f"{FILE} {TO_DO}")
        page.context.unroute("**/assets/runtime/**")
        sheet.state.get_by_role("button", name="Try again").click()
        sheet.expect_answer(usual(RUN, current="45 A"))
        assert DEFAULT not in sheet.root.inner_text()


def test_a_script_that_did_not_come_is_said_in_its_place(browser, server):
    with another_page(browser, server, our_doing) as page:
        page.context.route("**/assets/practice.js", lambda route: route.abort())
        page.goto(f"{server.url}checks/{RUN}/")
        page.get_by_text("Try the questions").click()
        fold = page.locator("[data-practice-fold]")
        expect(fold.get_by_role("status").first).to_contain_text(
            "A file of this page could not be loaded. Check the connection, then try again."
        )
        page.context.unroute("**/assets/practice.js")
        with page.expect_navigation():
            fold.get_by_role("button", name="try again").click()
        page.get_by_text("Try the questions").click()
        expect(page.get_by_role("button", name="Check").first).to_be_visible()
        assert re.search(RUN, page.url)
