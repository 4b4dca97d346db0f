"""The page for a client: read before Python starts, checked when it has, believed in nothing."""

import re

import pytest
from playwright.sync_api import Page, expect

import calc
from calc.render.van_client import link_of
from calc.sheets import explanation_of
from calc.van.advised import CAUTIONS, REASONS, advised
from calc.van.demos import demo
from calc.worksheet.client_link import write_client
from calc.worksheet.explain import explained
from tests.browser.sheet_helpers import ATTACK, STARTING, another_page, link_to, move, open_sheet
from tests.browser.tools import VIEWPORTS
from tests.browser.wcag import SMALL_TARGETS, SMALL_TEXT, broken_rules
from tests.browser.workers import REFUSED

UNCHECKED = "From the link, not checked yet."
NIGHT = "heater-night"
BY = "&.by=A.+Brandt&.note=For+Tuesday&.on=2026-11-30"

pytestmark = pytest.mark.one_visit


@pytest.fixture
def viewport():
    """A phone's: clients get their links there."""
    return VIEWPORTS["phone"]


def link_for(name: str, texts: dict[str, str] | None = None) -> str:
    answer = calc.work(name, texts or {})
    said = explained(answer, explanation_of(name))
    return "#" + write_client(answer.worksheet, answer.inputs, said)


def van_link(name: str) -> str:
    van = demo(name)
    return "#" + link_of(van, advised(van.review()))


def told(page: Page):
    return page.locator("[data-client] [data-told]")


def open_client(page: Page, server, link: str) -> None:
    """Open a link where Python never starts: what stands there are the link's own numbers."""
    page.goto(f"{server.url}licences/")
    page.goto(f"{server.url}client/{link}")
    expect(page.locator("[data-body]")).to_be_visible()


def test_advice_is_read_on_one_screen_before_python_starts(still, server):
    page, how = still, explanation_of(NIGHT)
    answer = calc.work(NIGHT)
    open_client(page, server, link_for(NIGHT) + BY)
    said = page.locator("[data-said]")
    expect(told(page)).to_have_text(UNCHECKED)
    expect(page.locator("[data-who]")).to_contain_text("A. Brandt, 30 November 2026: “For Tuesday”")
    words = re.sub(r"\s+", " ", said.inner_text()).replace("\u00a0", " ")
    for text in explained(answer, how).values.values():
        assert text.replace("\u00a0", " ") in words
    assert "…" not in words
    assert "Fine" not in words and not page.locator("[data-said] .lw-verdict").count()
    assert "If these numbers are right: Heat with diesel" in words
    box = said.bounding_box()
    assert box["y"] + box["height"] <= VIEWPORTS["phone"]["height"]
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 360
    widths = page.locator("[data-row]:visible [data-bar]").evaluate_all(
        "(b) => b.map((e) => e.getAttribute('width'))"
    )
    shares = [f"{share}%" for share in explained(answer, how).shares if share is not None]
    assert widths == shares
    assert not page.evaluate(SMALL_TARGETS, "[data-body] :is(a, button, summary)")
    assert not page.evaluate(SMALL_TEXT, "[data-body]")
    assert not broken_rules(page)


@pytest.mark.parametrize(
    "changed",
    [
        "all+is+fine",
        "1_fine",
        "9" * 65_536,
        ATTACK.replace(" ", "+"),
        "%3Cimg+src=x+onerror=window.pwned=1%3E",
        "\u202e633_A*h",
        "%E2%80%AE633",
        "%E0%A4%A",
        "",
    ],
)
def test_a_text_that_is_no_number_is_not_shown(still, server, changed):
    page = still
    link = re.sub(r"(:electric_charge=)[^&]*", lambda found: found[1] + changed, link_for(NIGHT))
    open_client(page, server, link + "&constructor=1&.__proto__=1&:toString=1")
    slot = page.locator("[data-value=electric_charge]:visible").first
    expect(slot).to_have_text("…")
    expect(told(page)).to_have_text(UNCHECKED)
    assert page.evaluate("() => window.pwned") is None
    expect(page.locator("img[src='x'], [onerror]")).to_have_count(0)


def test_who_sends_it_is_text_cut_and_kept_in_its_direction(still, server):
    name = "%E2%80%AE" + ATTACK.replace(" ", "+").replace("=", "%3D") + "x" * 100
    open_client(still, server, f"{link_for(NIGHT)}&.by={name}&.note={'y' * 5000}&.on=yesterday")
    by, note = still.locator("[data-who] bdi").all_text_contents()
    assert by == (ATTACK + "x" * 100)[:40]
    assert note == "y" * 160
    open_client(still, server, f"{link_for(NIGHT)}&.by={'x' * 39}%F0%9F%98%80%F0%9F%98%80")
    expect(still.locator("[data-who] bdi")).to_have_text("x" * 39 + "\U0001f600")
    expect(still.locator("[data-who]")).not_to_contain_text("Invalid")
    assert still.evaluate("() => window.pwned") is None


def test_a_name_of_the_language_is_no_value_and_no_choice(still, server):
    """What every object of JavaScript has is not among the sheet's own words."""
    for written in ("fuel=constructor", "constructor=1", "toString=1", "__proto__=1"):
        still.goto(f"{server.url}licences/")
        open_client(still, server, f"{link_for(NIGHT)}&{written}")
        expect(still.locator("[data-used] li")).to_have_count(int(written.startswith("fuel")))
        said = still.locator("[data-body]").text_content()
        assert "function" not in said and "[object" not in said


def test_name_and_note_are_there_after_a_reload(still, server):
    open_client(still, server, f"{link_for(NIGHT)}&.mine=1")
    still.get_by_label("Your name").fill("Ö. Brandt & <b>")
    still.get_by_label("A note").fill("50 % * = _!")
    address = still.evaluate("() => location.href")  # at once: its news of it may come late
    still.reload()
    expect(still.get_by_label("Your name")).to_have_value("Ö. Brandt & <b>")
    expect(still.get_by_label("A note")).to_have_value("50 % * = _!")
    assert still.evaluate("() => location.href") == address
    still.get_by_label("Your name").evaluate(
        """(box) => {
            box.value = "x\\ud83d";
            box.dispatchEvent(new Event("input", { bubbles: true }));
        }"""
    )
    expect(still.locator("[data-link]")).to_have_value(re.compile(r"&\.by=x&"))


def test_a_link_that_cannot_be_read_shows_no_advice(still, server):
    still.goto(f"{server.url}licences/")
    for link in ("#nothing&v=1", "#../../licences&v=1", "", "#" + "x" * 65_536):
        still.goto(f"{server.url}client/{link}")
        expect(still.locator("[data-none]")).to_be_visible()
        expect(still.locator("[data-body]")).to_be_hidden()


def test_where_python_cannot_start_it_stays_not_checked(browser, server):
    with another_page(browser, server) as page:
        page.add_init_script(REFUSED)
        page.goto(f"{server.url}client/{link_for(NIGHT)}")
        sentence = (
            "The calculation could not start in this browser. Try again, or use another browser."
        )
        expect(told(page)).to_have_text(f"{UNCHECKED} {sentence} Try again")
        expect(page.locator("[data-said]")).to_contain_text("Heat with diesel")


def test_from_a_sheet_to_a_client_and_back_to_the_working(page, server, browser):
    texts = {"loss": "1.2 kW", "fuel": "propane"}
    sheet = open_sheet(page, server, NIGHT, link_to(NIGHT, texts))
    sheet.expect_worked()
    page.get_by_role("button", name="Explain to a client").click()
    root = page.locator("[data-client]")
    expect(root).to_have_attribute("data-checked", "agrees")
    expect(root.locator("[data-said] .lw-verdict")).to_have_text("Fine")
    root.get_by_label("Your name").fill("Ö. \u202eBrandt & <b>")
    root.get_by_label("A note").fill("50 % * = _!")
    link = root.locator("[data-link]").input_value()
    assert link.startswith(f"{server.url}client/{link_for(NIGHT, texts)}&.by=")
    assert ".mine" not in link
    # What the client's own phone shows of it, and the sheet that it leads to.
    page.goto(link)
    expect(root.locator("[data-mine]")).to_be_hidden()
    expect(root).to_have_attribute("data-checked", "agrees")
    expect(told(page)).to_contain_text("Checked")
    assert root.locator("[data-who] bdi").all_text_contents() == ["Ö. Brandt & <b>", "50 % * = _!"]
    expect(root.locator("[data-mine]")).to_be_hidden()
    root.locator("summary", has_text="Numbers used").click()
    expect(root.locator("[data-used]")).to_contain_text("1.2")
    for paper in ("A4", "Letter"):
        assert pages(page.pdf(format=paper)) == 1
    root.get_by_role("link", name="See the working").click()
    sheet.expect_answer(texts)


def test_what_the_link_says_otherwise_is_told(page, server):
    link = link_for(NIGHT).replace("633_Ah", "6_Ah")
    open_sheet(page, server, "runtime")
    move(page, f"{server.url}client/{link}")
    expect(page.locator("[data-client]")).to_have_attribute("data-checked", "differs")
    expect(told(page)).to_contain_text("the link said 6\u00a0Ah, calculated 633\u00a0Ah")
    expect(page.locator("[data-said]")).to_contain_text("633\u00a0Ah")


def pages(pdf: bytes) -> int:
    """Return how many pages a PDF has."""
    return len(re.findall(rb"/Type /Page\b", pdf))


def test_what_a_link_says_of_a_van_is_numbers_and_names_only(still, server):
    page = still
    link = van_link("ten-mistakes")
    open_client(page, server, link + BY)
    said = page.locator("[data-said]")
    expect(told(page)).to_have_text(UNCHECKED)
    expect(said).to_contain_text("2 stops and 5 cautions")
    expect(said).to_contain_text("Begin with: planned use 1 “winter weekend”.")
    expect(said).to_contain_text(
        "800\u00a0W cannot hold 18\u00a0°C at −8\u00a0°C, with 2179\u00a0W lost."
    )
    assert said.locator("li:visible").count() == REASONS + len(CAUTIONS)
    expect(said.locator(".lc-bar:visible")).to_have_text(
        ["The van loses in the cold 2179\u00a0W", "Its heater gives 800\u00a0W"]
    )
    lengths = said.locator(".lc-bar:visible .lc-fill").evaluate_all(
        "(all) => all.map((one) => one.getAttribute('width'))"
    )
    assert lengths == ["100%", "37%"]
    assert "…" not in said.inner_text() and not said.locator(".lw-verdict").count()
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 360
    # Nothing that a stranger puts in its place is said, but a name, which stands in quotes.
    for changed in (
        "%3Cimg+src=x+onerror=window.pwned=1%3E",
        "constructor",
        "9" * 99,
        "%E2%80%AE6",
    ):
        hostile = re.sub(r"(:stops|:bar\d+|\.bar|\.[fnrp][123])=[^&]*", rf"\1={changed}", link)
        open_client(page, server, hostile)
        expect(told(page)).to_have_text(UNCHECKED)
        assert page.evaluate("() => window.pwned") is None
        assert said.locator("img, [onerror]").count() == 0
        expect(said.locator("[data-value=stops]:visible")).to_have_text("…")
        expect(said.locator("[data-point]:visible")).to_have_count(0)
    open_client(page, server, re.sub(r"(\.f1)=[^&]*", r"\1=all+is+fine~9", link))
    expect(said.locator("[data-point='1']")).to_contain_text("… cannot hold 9 at …")
    # Of a van that is too large for a link there is nothing to check.
    open_client(page, server, re.sub(r"&v=1&van=[^&]*", "", link))
    expect(told(page)).to_contain_text(f"{UNCHECKED} The van is too large for a link")
    expect(said).to_contain_text("winter weekend")


def test_from_a_van_to_a_client(page, server):
    page.goto(f"{server.url}van/")
    page.locator("[data-start] [data-demo=ten-mistakes]").click(timeout=STARTING)
    page.get_by_role("tab", name="Review").click()
    page.get_by_role("button", name="Explain to a client").click(timeout=STARTING)
    root = page.locator("[data-client]")
    expect(root).to_have_attribute("data-checked", "agrees", timeout=STARTING)
    root.get_by_label("Your name").fill("A. Brandt")
    link = root.locator("[data-link]").input_value()
    assert link.startswith(f"{server.url}client/{van_link('ten-mistakes')}&.by=")
    expect(root.locator("[data-size]")).to_contain_text(f"The link has {len(link)} characters")
    page.goto(link)
    expect(root).to_have_attribute("data-checked", "agrees", timeout=STARTING)
    expect(root.locator("[data-said] .lc-advice .lw-verdict")).to_have_text("Stop")
    expect(root.locator("[data-said]")).to_contain_text("Mend: Fit a heater of")
    expect(root.locator("[data-who] bdi")).to_have_text("A. Brandt")
    root.locator("summary", has_text="All stops and cautions").click()
    assert root.locator("[data-used] li").count() == 7
    root.locator("summary", has_text="All stops and cautions").click()
    for paper in ("A4", "Letter"):
        assert pages(page.pdf(format=paper)) == 1
    page.evaluate("(link) => { location.href = link; }", link.replace("2+stops", "0+stops"))
    expect(root).to_have_attribute("data-checked", "differs", timeout=STARTING)
    expect(told(page)).to_contain_text("Stops: the link said 0, calculated 2 stops")
    way = root.get_by_role("link", name="See the working").get_attribute("href")
    assert re.fullmatch(r"\.\./van/#v=1&van=[\w-]+", way)
