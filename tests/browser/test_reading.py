"""What can be read before any Python starts, or where it never does: pages without JavaScript."""

import re
from collections import Counter
from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

import calc
from evidence import load_cases
from tests.browser.sheet_helpers import ONE_OF_EACH, Sheet, another_page, reply_to, usual
from tests.browser.tools import PROJECT, VIEWPORTS


@pytest.fixture
def plain(browser, server, viewport) -> Iterator[Page]:
    """A page of a browser in which JavaScript is off."""
    with another_page(browser, server, viewport=viewport, java_script_enabled=False) as page:
        yield page


@pytest.mark.parametrize(
    ("viewport", "name"),
    [
        *((VIEWPORTS["phone"], name) for name in calc.worksheets()),
        *((VIEWPORTS["desktop"], name) for name in ONE_OF_EACH),
    ],
)
def test_without_javascript_a_check_shows_its_own_figures_with_their_working(plain, server, name):
    plain.goto(f"{server.url}checks/{name}/")
    sheet = Sheet(plain, name)
    answer = calc.work(name)
    sentence = "These are example figures. With JavaScript on they can be changed."
    expect(sheet.root.locator("noscript p")).to_have_text(sentence)
    expect(sheet.root.locator("noscript p")).to_be_visible()
    first = answer.shown[answer.worksheet.results[0].id]
    expect(sheet.figure).to_have_text(first)
    expect(sheet.figure).to_be_visible()
    expect(sheet.answer.locator(".lw-sentence")).to_have_text(answer.sentence)
    cautions = sheet.answer.locator(".lw-cautions li")
    expect(cautions).to_have_count(len(answer.cautions))
    for caution, said in zip(cautions.all(), answer.cautions, strict=True):
        expect(caution).to_contain_text(said.text)
        expect(caution).to_be_visible()
    expect(plain.locator("article > .admonition.warning").last).to_be_visible()
    steps = sheet.working.locator("li")
    expect(steps).to_have_count(len(answer.working))
    expect(steps.first).to_be_hidden()
    sheet.working.locator("summary").click()
    for step, line in zip(steps.all(), answer.working, strict=True):
        expect(step).to_be_visible()
        expect(step).to_contain_text(line.value)
        expect(step).to_contain_text(line.says)
    # The built page holds what the page's Python will say, and the line that will speak it.
    assert reply_to(name, usual(name))["status"].endswith(answer.sentence)
    expect(sheet.part("status")).to_have_attribute("role", "status")


@pytest.mark.parametrize("viewport", [VIEWPORTS["phone"]], ids=["phone"])  # no window changes it
def test_without_javascript_every_check_and_table_can_be_read(plain, server):
    plain.goto(server.url + "how-we-check/")
    folds = plain.locator("article details")
    cases = Counter(case.worksheet for case in load_cases())
    summaries = [f"{calc.find(name).title}: {cases[name]} cases" for name in calc.worksheets()]
    tables = list((PROJECT / "calc" / "tables").glob("*.csv"))
    expect(folds).to_have_count(len(summaries) + len(tables))
    for words, fold in zip(summaries, folds.all(), strict=False):
        expect(fold.locator("summary")).to_have_text(words)
    cells = plain.locator("article details td:first-child")
    assert cells.count() > len(cases)
    expect(cells.filter(visible=True)).to_have_count(0)
    for summary in folds.locator("summary").all():
        summary.click()
    expect(cells.filter(visible=False)).to_have_count(0)


@pytest.mark.parametrize("viewport", [VIEWPORTS["phone"]], ids=["phone"])  # no window changes it
def test_without_javascript_every_field_and_unit_is_listed(plain, server):
    plain.goto(server.url + "units-links-privacy/")
    listed = set(plain.locator("article :is(td, th)").all_text_contents())
    labels = {field.label for name in calc.worksheets() for field in calc.find(name).fields}
    assert labels <= {words.strip() for words in listed}


@pytest.mark.parametrize("name", ["runtime", "week-ahead"])  # the first chapter, and a late one
def test_one_tap_leads_from_home_to_a_check(page, server, name):
    page.goto(server.url)
    page.locator(f".lw-questions a[href$='{name}/']").click()
    sheet = Sheet(page, name)
    expect(page).to_have_url(re.compile(f"/checks/{name}/"))
    expect(sheet.root).to_be_visible()
    sheet.expect_worked()
    sheet.expect_answer(usual(name))


def test_the_quick_checks_stand_on_the_first_screen_of_a_desktop(page, server):
    page.goto(server.url)
    links = page.locator(".lw-questions a")
    expect(links).to_have_count(len(calc.worksheets()))
    expect(links.first).to_be_in_viewport(ratio=1)
    if page.viewport_size["width"] > 1000:
        quick = page.get_by_role("navigation", name="Quick checks").locator("a")
        expect(quick.last).to_be_in_viewport(ratio=1)


def test_the_search_finds_a_guide(page, server):
    page.goto(server.url)
    if page.viewport_size["width"] < 1000:
        page.locator(".md-header__button[for=__search]").click()
    page.locator(".md-search__input").press_sequentially("fuse")
    found = page.locator(".md-search-result__link")
    guide = found.and_(page.locator("[href*='checks/fuse-choice/']")).first
    expect(guide).to_be_visible()
    guide.click()
    expect(page).to_have_url(re.compile("/checks/fuse-choice/"))
    Sheet(page, "fuse-choice").expect_worked()
