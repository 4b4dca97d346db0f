"""What a device remembers, and what helps a thumb: last values, units, two answers side by side."""

import re

import pytest
from playwright.sync_api import expect

import calc
from calc.worksheet.measures import defaults_in
from tests.browser.sheet_helpers import (
    Sheet,
    another_page,
    link_of,
    link_to,
    move,
    open_sheet,
    reply_to,
    usual,
)
from tests.browser.tools import VIEWPORTS

RUN = "wire-drop"

pytestmark = pytest.mark.one_visit


@pytest.fixture
def viewport():
    return VIEWPORTS["phone"]


def come_back(page, server, fragment: str = "") -> Sheet:
    """Leave a sheet and open it again on the same device."""
    move(page, f"{server.url}licences/")
    move(page, f"{server.url}checks/{RUN}/{fragment}")
    sheet = Sheet(page, RUN)
    sheet.expect_worked()
    return sheet


def test_a_sheet_offers_its_last_values_and_a_link_wins(page, server):
    sheet = open_sheet(page, server, RUN)
    expect(sheet.part("last")).to_be_hidden()
    sheet.type("current", "6")
    expect(page).to_have_url(re.compile("current=6A"))
    sheet = come_back(page, server)
    sheet.expect_answer(usual(RUN))
    expect(sheet.part("last")).to_contain_text("Your last values: Current 6 A.")
    page.get_by_role("button", name="Use these").click()
    sheet.expect_answer(usual(RUN, current="6 A"))
    page.get_by_role("button", name="Default values", exact=True).click()
    sheet.expect_answer(usual(RUN))
    expect(sheet.part("last")).to_contain_text("Your last values: Current 6 A.")
    sheet.type("current", "7")
    expect(sheet.part("last")).to_be_hidden()
    sheet.expect_answer(usual(RUN, current="7 A"))
    # Pressed by mistake, at once: nothing that was typed is lost.
    page.get_by_role("button", name="Reset to default values").click()
    sheet.expect_answer(usual(RUN))
    expect(sheet.part("last")).to_contain_text("Your last values: Current 7 A.")
    page.get_by_role("button", name="Use these").click()
    sheet.expect_answer(usual(RUN, current="7 A"))
    sheet = come_back(page, server, link_to(RUN, usual(RUN, current="9 A")))
    sheet.expect_answer(usual(RUN, current="9 A"))
    expect(sheet.part("last")).to_be_hidden()


def test_units_are_chosen_and_all_is_erased_at_one_place(page, server):
    sheet = open_sheet(page, server, RUN)
    sheet.type("current", "6")
    expect(page).to_have_url(re.compile("current=6A"))
    move(page, f"{server.url}units-links-privacy/")
    device = page.locator("[data-device]")
    expect(device).to_contain_text("sheets with last values: 1")
    page.get_by_role("radio", name="metric").check()
    sheet = come_back(page, server)
    metric = usual(RUN) | defaults_in(calc.find(RUN), "metric")
    sheet.expect_answer(metric)
    expect(sheet.box("length")).to_have_value("3.7")
    expect(sheet.picker("length")).to_have_value("m")
    sheet.type("length", "5")
    sheet.expect_answer(metric | {"length": "5 m"})
    page.get_by_role("button", name="Reset to default values").click()
    sheet.expect_answer(metric)
    move(page, f"{server.url}units-links-privacy/")
    page.get_by_role("button", name="Erase all of this").click()
    expect(device).to_contain_text("Remembered here: nothing.")
    sheet = come_back(page, server)
    sheet.expect_answer(usual(RUN))
    expect(sheet.part("last")).to_be_hidden()


@pytest.mark.parametrize("locale", ["de-DE", "en-US"])
def test_metric_units_are_offered_outside_the_us_until_they_are_chosen(browser, server, locale):
    with another_page(browser, server, locale=locale) as page:
        sheet = open_sheet(page, server, RUN)
        line = sheet.part("metric")
        if locale == "en-US":
            expect(line).to_be_hidden()
            return
        sheet.type("current", "6")
        line.get_by_role("button", name="Use metric units").click()
        metric = usual(RUN) | defaults_in(calc.find(RUN), "metric")
        sheet.expect_answer(metric)
        expect(sheet.part("last")).to_contain_text("Your last values: Current 6 A.")
        sheet = come_back(page, server)
        sheet.expect_answer(metric)
        expect(sheet.part("metric")).to_be_hidden()
        open_sheet(page, server, "runtime")  # is in the same units everywhere
        expect(page.locator("[data-metric]")).to_have_count(0)


def test_what_was_opened_last_is_above_the_bar_and_can_be_pinned(fresh_page, server):
    page = fresh_page
    page.goto(f"{server.url}licences/")
    opener = page.get_by_role("button", name="Recent", exact=True)
    listed = page.locator("#lw-recent")
    opener.click()
    expect(listed).to_contain_text("Nothing opened yet.")
    expect(listed.locator(".lw-chip")).to_have_count(0)
    page.keyboard.press("Escape")
    expect(listed).to_be_hidden()
    expect(opener).to_be_focused()
    sheets = [calc.find(name) for name in (RUN, "runtime", "bank-gauge")]
    for sheet in sheets:
        move(page, f"{server.url}checks/{sheet.id}/")
        expect(page.locator("h1")).to_have_text(sheet.question)
    move(page, f"{server.url}licences/")
    opener.click()
    links = listed.locator(".lw-chip a")
    expect(links).to_have_text([sheet.question for sheet in reversed(sheets)])
    for part in listed.locator("a, button").all():
        assert part.bounding_box()["height"] >= 43.9
    ends = listed.bounding_box()
    assert abs(ends["y"] + ends["height"] - page.locator("nav.lw-bar").bounding_box()["y"]) <= 4
    pin = listed.get_by_role("button", name=f"Pin: {sheets[0].question}")
    pin.click()
    expect(pin).to_have_attribute("aria-pressed", "true")
    expect(pin).to_be_focused()
    expect(links.first).to_have_text(sheets[0].question)
    links.nth(1).click()
    expect(page).to_have_url(f"{server.url}checks/{sheets[2].id}/")
    expect(listed).to_be_hidden()


def test_an_answer_is_kept_and_compared_with_the_next(page, server):
    sheet = open_sheet(page, server, RUN)
    page.get_by_role("button", name="Compare").click()
    compared = sheet.root.locator(".lw-compared")
    expect(compared).to_contain_text("Change a value")
    sheet.box("conductor").select_option("12 AWG")
    sheet.expect_answer(
        usual(RUN, conductor="12 AWG"), beside=link_to(RUN, usual(RUN)).removeprefix("#")
    )
    expect(compared.get_by_role("row", name="Conductor")).to_contain_text("6 AWG")
    page.get_by_role("button", name="Back to the kept values").click()
    expect(sheet.box("conductor")).to_have_value("6 AWG")
    page.get_by_role("button", name="Stop comparing").click()
    sheet.expect_answer(usual(RUN))


def test_an_answer_is_copied_as_text(page, server):
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    sheet = open_sheet(page, server, RUN)
    sheet.type("current", "6")
    sheet.expect_answer(usual(RUN, current="6 A"))
    page.get_by_role("button", name="Copy as text").click()
    expect(sheet.part("copied")).to_have_text("Copied as text.")
    text = page.evaluate("() => navigator.clipboard.readText()")
    assert calc.find(RUN).question in text and "- Current: 6\u00a0A" in text
    assert f"{server.url}checks/{RUN}/{link_to(RUN, usual(RUN, current='6 A'))}" in text


def test_a_thumb_marks_the_box_and_puts_units_behind_the_number(browser, server):
    with another_page(browser, server, has_touch=True, is_mobile=True) as page:
        sheet = open_sheet(page, server, RUN)
        box = sheet.box("length")
        box.tap()
        page.keyboard.type("3")
        for unit, digits in (("ft", "6"), ("in", "")):
            page.locator(".lw-keys").get_by_role("button", name=unit, exact=True).tap()
            page.keyboard.type(digits)
        expect(box).to_have_value("3 ft 6 in ")
        sheet.expect_answer(usual(RUN, length="3 ft 6 in"))
        page.keyboard.press("Enter")
        expect(page.locator(".lw-keys")).to_have_count(0)
        assert page.evaluate("() => document.activeElement.name") == "conductor"


def test_an_emptied_box_stays_empty_when_the_page_is_loaded_anew(fresh_page, server):
    page = fresh_page
    sheet = open_sheet(page, server, RUN, link_of(RUN, "length=5m"))
    sheet.box("current").fill("")
    expect(page).to_have_url(re.compile("current=&"))
    page.reload()
    sheet.expect_live()
    expect(sheet.error("current")).to_contain_text("Enter the current")
    expect(sheet.box("current")).to_have_value("")


def test_what_was_typed_just_before_a_newer_version_is_used_is_in_the_address(page, server):
    sheet = open_sheet(page, server, RUN)
    page.evaluate(
        """async () => {
            const box = document.querySelector("[name=current]");
            box.value = "45";
            box.dispatchEvent(new Event("input", { bubbles: true }));
            const detail = [];
            document.dispatchEvent(new CustomEvent("lugwise-leave", { detail }));
            await Promise.all(detail);
            window.addressThen = location.hash;
        }"""
    )
    assert "current=45A" in page.evaluate("() => window.addressThen")
    sheet.expect_answer(usual(RUN, current="45 A"))


REFUSED = """
    for (const name of ["getItem", "setItem", "removeItem"]) {
        const own = Storage.prototype[name];
        Storage.prototype[name] = function (key, ...more) {
            if (key.startsWith("lugwise.")) throw new Error("refused");
            return own.call(this, key, ...more);
        };
    }
"""


def test_where_storage_is_refused_a_sheet_works_and_remembers_nothing(browser, server):
    with another_page(browser, server) as page:
        page.add_init_script(REFUSED)
        sheet = open_sheet(page, server, RUN)
        sheet.type("current", "6")
        sheet.expect_answer(usual(RUN, current="6 A"))
        expect(page).to_have_url(re.compile("current=6A"))
        assert reply_to(RUN, usual(RUN, current="6 A"))["changed"]
