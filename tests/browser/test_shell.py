"""What stands around every page, by keyboard and by thumb: header, contents, search, the 404."""

import re
from itertools import pairwise

import pytest
from playwright.sync_api import Page, expect

from tests.browser.sheet_helpers import another_page
from tests.browser.tools import VIEWPORTS

SIZES = {28, 22, 17, 16}  # question, number, text, hints: pixels at the browser's own size of text
FONT_SIZES = """() => {
    const sizes = {};
    for (const element of document.querySelectorAll("body *")) {
        const own = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
        if (!own || element.closest("svg, sub, sup, script")) continue;
        sizes[Math.round(parseFloat(getComputedStyle(element).fontSize) * 10) / 10] ??= element.outerHTML.slice(0, 90);
    }
    return sizes;
}"""  # noqa: E501
FOCUS = "() => document.activeElement.closest('.lw-menu, .lw-search')?.className ?? ''"
SEEN = """() => {
    const box = document.activeElement.getBoundingClientRect();
    const seen = document.activeElement.checkVisibility({ visibilityProperty: true });
    return seen && box.width > 1 && box.right > 0 && box.left < innerWidth;
}"""


@pytest.fixture
def viewport():
    """A phone's: there contents and search are shut."""
    return VIEWPORTS["phone"]


def button(page: Page, name: str):
    return page.get_by_role("button", name=name, exact=True).filter(visible=True)


@pytest.mark.parametrize(
    "path", ["", "checks/find-fault/", "checks/week-ahead/", "van/", "licences/"]
)
def test_text_has_four_sizes_and_no_other(still, server, path):
    still.goto(server.url + path)
    found = still.evaluate(FONT_SIZES)
    assert {float(size) for size in found} <= SIZES, found


def test_the_contents_open_by_a_button_and_hold_no_tab_stop_while_shut(still, server):
    page = still
    page.goto(server.url + "licences/")
    for _ in range(12):
        page.keyboard.press("Tab")
        assert page.evaluate(SEEN), page.evaluate("document.activeElement.outerHTML")
        assert page.evaluate(FOCUS) == ""
    opener = button(page, "Contents")
    opener.focus()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert "lw-menu" in page.evaluate(FOCUS)
    page.keyboard.press("Escape")
    expect(page.get_by_role("navigation", name="Contents")).to_be_hidden()
    expect(opener).to_be_focused()


def test_at_twice_the_size_no_word_of_the_bar_lies_on_another(still, server):
    still.goto(server.url + "licences/")
    still.evaluate("() => { document.documentElement.style.fontSize = '250%'; }")  # ours is 125 %
    ends = still.evaluate(
        """() => [...document.querySelectorAll("nav.lw-bar :is(a, button)")].map((one) => {
            const words = document.createRange();
            words.selectNodeContents(one.lastChild);
            const box = words.getBoundingClientRect();
            return [box.left, box.right];
        })"""
    )
    still.evaluate("() => { document.documentElement.style.fontSize = ''; }")
    assert len(ends) == 5
    assert ends[0][0] >= 0 and ends[-1][1] <= still.viewport_size["width"]
    assert all(one[1] < next_[0] for one, next_ in pairwise(ends)), ends


def test_letters_on_a_fold_open_nothing_and_turn_no_page(still, server):
    page = still
    page.goto(server.url + "licences/")
    page.locator("article summary").first.focus()
    for key in "fs/pn,.":
        page.keyboard.press(key)
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(page).to_have_url(server.url + "licences/")


def test_the_search_goes_by_keyboard_alone_and_says_when_nothing_is_found(page, server):
    page.goto(server.url + "licences/")
    page.wait_for_timeout(500)  # as a page opens, the theme shuts the search once
    opener = button(page, "Search")
    opener.focus()
    page.keyboard.press("Enter")
    dialog = page.get_by_role("dialog", name="Search")
    page.keyboard.type("zzyzx")
    expect(dialog.get_by_role("status")).to_contain_text("Nothing found. Try one plain word")
    expect(dialog.get_by_role("link", name="All questions")).to_be_visible()
    page.keyboard.press("Escape")
    expect(dialog).to_be_hidden()
    expect(opener).to_be_focused()
    page.keyboard.press("Enter")
    page.keyboard.type("fuse keeps blowing")  # over what was marked
    first = dialog.get_by_role("link").first
    expect(first).to_have_attribute("href", re.compile("/checks/find-fault/"))
    page.wait_for_timeout(500)  # what is found is listed anew after each letter
    for _ in range(6):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('a')"):
            break
    page.keyboard.press("Enter")
    expect(page).to_have_url(re.compile("/checks/find-fault/"))


def test_the_search_finds_text_that_comes_without_a_key(page, server):
    """Pasted, spoken, or put in by a keyboard that guesses whole words."""
    page.goto(server.url + "licences/")
    page.wait_for_timeout(500)  # as a page opens, the theme shuts the search once
    button(page, "Search").click()
    dialog = page.get_by_role("dialog", name="Search")
    dialog.get_by_role("textbox", name="Search").fill("fuse keeps blowing")
    first = dialog.get_by_role("link").first
    expect(first).to_have_attribute("href", re.compile("/checks/find-fault/"))


def test_light_and_dark_are_chosen_by_name_and_last(still, server):
    page = still
    page.goto(server.url + "licences/")
    body = page.locator("body")
    for choice, scheme in (("Dark", "slate"), ("Light", "default"), ("As the device", "default")):
        button(page, "Light or dark").click()
        page.get_by_role("radio", name=choice).check()
        expect(body).to_have_attribute("data-md-color-scheme", scheme)
        page.reload()
        expect(body).to_have_attribute("data-md-color-scheme", scheme)
        button(page, "Light or dark").click()
        expect(page.get_by_role("radio", name=choice)).to_be_checked()
        page.keyboard.press("Escape")


def test_in_forced_colours_and_at_more_contrast_a_verdict_keeps_its_shape_and_mark(still, server):
    page = still
    page.goto(server.url + "checks/runtime/")
    mark = page.locator(".lw-gist .lw-shape .lw-mark").first
    fill = "(mark) => getComputedStyle(mark.ownerSVGElement).fill"
    for media in ({"forced_colors": "active"}, {"contrast": "more"}):
        page.emulate_media(**media)
        stroke = mark.evaluate("(mark) => getComputedStyle(mark).stroke")
        assert stroke != mark.evaluate(fill), media
    page.emulate_media(forced_colors="null", contrast="null")


def test_in_forced_colours_no_word_of_a_filled_button_vanishes(still, server):
    """Behind words the browser lays a plate in the page's colour, unless it is told not to."""
    page = still
    page.emulate_media(forced_colors="active")
    for path, place in (
        ("van/", ".lw-button:not(.lw-plain)"),
        ("", ".lw-tasks a"),
        ("", ".md-skip"),
    ):
        page.goto(server.url + path)
        color, behind, own = page.locator(place).first.evaluate(
            """(place) => {
                const style = getComputedStyle(place);
                return [style.color, style.backgroundColor, style.forcedColorAdjust];
            }"""
        )
        assert color != behind and own == "none", place
    page.emulate_media(forced_colors="null")


def test_where_less_motion_is_asked_for_nothing_moves(still, server):
    still.goto(server.url + "checks/runtime/")
    still.emulate_media(reduced_motion="reduce")
    moving = """() => [...document.querySelectorAll("body, body *")].filter((element) => {
        const style = getComputedStyle(element);
        const lasts = style.transitionDuration.split(", ").some((one) => parseFloat(one) > 0);
        return lasts || style.animationName !== "none" || style.scrollBehavior === "smooth";
    }).map((element) => element.outerHTML.slice(0, 90))"""
    assert still.evaluate(moving) == []


def test_a_page_that_is_not_there_leads_home_from_any_depth(browser, server):
    with another_page(
        browser, server, lambda error: "404" in error, service_workers="block"
    ) as page:
        for path in ("nothing", "checks/a/b/c/nothing.html"):
            page.goto(server.url + path)
            expect(page.locator("html")).to_have_attribute("data-lugwise", "found")
            link = page.get_by_role("link", name="All questions")
            assert link.evaluate("(link) => link.href") == server.url
            expect(page.locator(".lw-header")).to_have_css("position", "sticky")


def test_from_home_it_takes_four_taps_to_the_first_probe(browser, server):
    with another_page(browser, server, service_workers="block") as page:
        page.goto(server.url)
        taps = 0
        for words in (
            "Something is wrong",
            "Lights flicker",
            "dips when another",
            "clean and firm",
        ):
            page.get_by_role("link", name=words).first.click()
            taps += 1
        step = page.locator("[data-key]")
        expect(step).to_contain_text("Red probe on", timeout=90_000)
        expect(step.locator(".lw-expected .lw-figure")).to_be_in_viewport()
        assert taps == 4
        step.locator(".lw-cannot summary").click()
        expect(step.locator(".lw-cannot p")).to_be_visible()
        step.get_by_role("link", name="Start again").click()
        expect(page.locator(".lw-symptoms a")).to_have_count(9)
