"""What can be read before any Python starts, or where it never does: pages without JavaScript."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

import calc
from evidence import load_cases
from tests.browser.sheet_helpers import ONE_OF_EACH, Sheet, another_page, usual
from tests.browser.tools import VIEWPORTS


@pytest.fixture
def plain(browser, server, viewport) -> Iterator[Page]:
    """A page of a browser in which JavaScript is off."""
    with another_page(browser, server, viewport=viewport, java_script_enabled=False) as page:
        yield page


@pytest.mark.parametrize(
    ("viewport", "name"),
    [*((VIEWPORTS["phone"], name) for name in ONE_OF_EACH), (VIEWPORTS["desktop"], "week-ahead")],
)
def test_without_javascript_a_check_shows_its_own_figures_with_their_working(plain, server, name):
    """What stands in each page is asked of the built files; here, that it can be seen."""
    plain.goto(f"{server.url}checks/{name}/")
    sheet = Sheet(plain, name)
    answer = calc.work(name)
    expect(sheet.root.locator("noscript p")).to_be_visible()
    if answer.worksheet.walked:
        starts = answer.worksheet.walked.starts
        expect(sheet.part("key").locator(".lw-symptoms a")).to_have_count(len(starts))
        expect(sheet.part("key").locator(".lw-danger")).to_be_visible()
        plain.locator(".lw-fault-tree summary").first.click()
        expect(plain.locator(".lw-fault-tree li").first).to_be_visible()
        return
    expect(sheet.figure).to_have_text(answer.shown[answer.worksheet.results[0].id])
    expect(sheet.figure).to_be_visible()
    expect(sheet.part("gist").locator(".lw-gist-words")).to_have_text(answer.sentence)
    expect(sheet.part("gist").locator(".lw-gist-words")).to_be_visible()
    cautions = sheet.answer.locator(".lw-cautions li")
    expect(cautions).to_have_count(len(answer.cautions))
    expect(cautions.filter(visible=False)).to_have_count(0)
    expect(plain.locator("article > .admonition.warning").last).to_be_visible()
    steps = sheet.working.locator("li")
    expect(steps).to_have_count(len(answer.working))
    expect(steps.filter(visible=True)).to_have_count(0)
    sheet.working.locator("summary").click()
    expect(steps.filter(visible=False)).to_have_count(0)


@pytest.mark.parametrize("viewport", [VIEWPORTS["phone"]], ids=["phone"])  # no window changes it
def test_without_javascript_every_check_and_table_can_be_read(plain, server):
    plain.goto(server.url + "how-we-check/")
    folds = plain.locator("article details")
    cells = folds.locator("td:first-child")
    assert cells.count() > len(load_cases())
    expect(cells.filter(visible=True)).to_have_count(0)
    for fold in (folds.first, folds.last):  # all are made alike
        fold.locator("summary").click()
        expect(fold.locator("td:first-child").filter(visible=False)).to_have_count(0)


@pytest.mark.parametrize("name", ["runtime", "week-ahead"])  # the first chapter, and a late one
@pytest.mark.one_visit
def test_one_tap_leads_from_home_to_a_check(page, server, name):
    page.goto(server.url)
    page.locator(f".lw-questions a[href$='{name}/']").click()
    sheet = Sheet(page, name)
    expect(page).to_have_url(re.compile(f"/checks/{name}/"))
    expect(sheet.root).to_be_visible()
    sheet.expect_worked()
    sheet.expect_answer(usual(name))


def test_the_quick_checks_stand_on_the_first_screen_of_a_desktop(still, server):
    page = still
    page.goto(server.url)
    links = page.locator(".lw-questions a")
    expect(links).to_have_count(len(calc.worksheets()))
    expect(links.first).to_be_in_viewport(ratio=1)
    if page.viewport_size["width"] > 1000:
        quick = page.get_by_role("navigation", name="Quick checks").locator("a")
        expect(quick.last).to_be_in_viewport(ratio=1)


def test_the_search_finds_a_guide(page, server):
    page.goto(server.url)
    page.get_by_role("button", name="Search", exact=True).filter(visible=True).click()
    page.get_by_role("dialog", name="Search").get_by_role("textbox").press_sequentially("fuse")
    found = page.locator(".md-search-result__link")
    guide = found.and_(page.locator("[href*='checks/fuse-choice/']")).first
    expect(guide).to_be_visible()
    guide.click()
    expect(page).to_have_url(re.compile("/checks/fuse-choice/"))
    Sheet(page, "fuse-choice").expect_worked()
