"""Links that carry figures: opened, copied, wrong, incomplete."""

import re

import pytest
from playwright.sync_api import expect

import calc
from calc.worksheet.fields import Quantity
from calc.worksheet.rows import Text
from tests.browser.sheet_helpers import (
    BY_LINK,
    EVERY_FIELD,
    ONE_OF_EACH,
    Sheet,
    another_page,
    exactly,
    link_of,
    link_to,
    message,
    open_sheet,
    usual,
)
from tests.browser.standing import DEFAULT, NO_START, expect_standing
from tests.browser.tools import NO_PYTHON, VIEWPORTS
from tests.browser.workers import REFUSED
from tests.whole import whole_reply

RUN = "wire-drop"
STRANGE = "The link has something this sheet does not know, which is ignored:"
MISSING = "values are not given: their defaults are used."

pytestmark = pytest.mark.one_visit


@pytest.fixture
def viewport():
    """A phone's: links do not depend on the window."""
    return VIEWPORTS["phone"]


def opened(name: str, fragment: str) -> dict:
    """What this machine's Python replies to a link."""
    return whole_reply({"sheet": name, "fragment": fragment})


def expect_notes(sheet: Sheet, notes: list[str]) -> None:
    expect(sheet.notes.locator("li")).to_have_text(notes)


def another_figure(name: str, texts: dict[str, str]) -> tuple[str, str]:
    """Return the first field for which the sheet takes a 20 in its unit, and that text."""
    for field, text in texts.items():
        kind = calc.find(name).field(field)
        if isinstance(kind, (Quantity, Text)):
            changed = text.replace(text.split()[0], "20", 1) if isinstance(kind, Quantity) else "20"
            try:
                if calc.work(name, texts | {field: changed}).inputs[field].applies:
                    return field, changed
            except calc.InputError:
                continue
    raise AssertionError(f"{name} takes 20 nowhere")


@pytest.mark.parametrize("name", (*ONE_OF_EACH, "wire-drop", "fault-current", "water-heater"))
def test_a_link_with_every_field_opens_to_the_librarys_answer(page, server, name):
    texts = EVERY_FIELD[name]
    assert texts.keys() == {field.id for field in calc.find(name).fields}
    link = link_to(name, texts)
    inputs = calc.work(name, texts).inputs
    # A field without meaning beside the others, such as the other source's, is left out.
    assert all((f"&{field}=" in link) is inputs[field].applies for field in texts)
    sheet = open_sheet(page, server, name, link)
    sheet.expect_worked()
    sheet.expect_answer(texts)
    expect(sheet.notes).to_be_hidden()
    words = sheet.part("gist").locator(".lw-gist-words")
    expect(words).to_have_text(calc.work(name, texts).sentence)
    assert page.url.endswith(link)
    # The boxes hold the figures too: a change of one leaves the others as they are.
    field, text = another_figure(name, texts)
    sheet.box(field).evaluate("(box) => (box.closest('details') ?? {}).open = true")
    sheet.box(field).fill("20")
    sheet.expect_answer(texts | {field: text})
    expect(page).to_have_url(exactly(link_to(name, texts | {field: text})))


def test_a_link_written_by_hand_is_read(fresh_page, server):
    sheet = open_sheet(
        fresh_page, server, RUN, link_of(RUN, "current=45A&length=3.6m&conductor=10mm2")
    )
    sheet.expect_answer(usual(RUN, current="45 A", length="3.6 m", conductor="10 mm2"))
    expect(sheet.box("current")).to_have_value("45")
    expect(sheet.box("length")).to_have_value("3.6")
    expect(sheet.picker("length")).to_have_value("m")
    expect(sheet.box("conductor")).to_have_value("10 mm2")


def test_values_missing_from_a_link_are_told_in_one_line(page, server):
    sheet = open_sheet(page, server, RUN, link_of(RUN, "current=45A"))
    left = sum(bool(field.default) for field in calc.find(RUN).fields) - 1
    assert left > 9
    expect_notes(sheet, [f"{left} {MISSING}"])
    sheet.expect_answer(usual(RUN, current="45 A"))
    # Which they are is seen where they stand.
    expect(sheet.box("length")).to_have_value("12")
    expect(sheet.box("conductor")).to_have_value("6 AWG")


def test_what_a_sheet_does_not_know_is_named(page, server):
    link = link_to(RUN, EVERY_FIELD[RUN])
    sheet = open_sheet(page, server, RUN, f"{link}&colour=red&volts=12")
    expect_notes(sheet, [f"{STRANGE} “colour”, “volts”."])
    sheet.expect_answer(EVERY_FIELD[RUN])


def test_a_link_of_another_version_is_told(page, server):
    link = re.sub(r"v=\d+", "v=77", link_to(RUN, EVERY_FIELD[RUN]))
    sheet = open_sheet(page, server, RUN, link)
    expect_notes(sheet, ["This link was made by another version of the sheet. Check each value."])


def test_the_copied_link_opens_the_same_figures_elsewhere(page, server, browser):
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    sheet = open_sheet(page, server, "runtime")
    texts = usual("runtime", capacity="160 Ah", chemistry="AGM", temperature="41 °F")
    sheet.type("capacity", "160")
    sheet.box("chemistry").select_option("AGM")
    sheet.type("temperature", "41 F")
    sheet.expect_answer(texts)
    page.get_by_role("button", name="Copy link").click()
    expect(sheet.part("copied")).to_have_text("Copied.")
    link = page.evaluate("() => navigator.clipboard.readText()")
    assert link == f"{server.url}checks/runtime/{link_to('runtime', texts)}"
    with another_page(browser, server) as other:
        other.goto(link)
        theirs = Sheet(other, "runtime")
        theirs.expect_live()
        theirs.expect_answer(texts)
        expect(theirs.box("capacity")).to_have_value("160")
        expect(theirs.picker("temperature")).to_have_value("F")
        expect(theirs.notes).to_be_hidden()


def test_wrong_figures_land_in_their_fields_with_their_sentences(page, server):
    name = "watts-to-amps"
    sheet = open_sheet(
        page, server, name, link_of(name, "power=lots&voltage=-5V&route=roof&hours=2h")
    )
    built = sheet.answer.text_content()
    for field, text in (("power", "lots"), ("voltage", "-5V"), ("route", "roof")):
        sheet.expect_refused(field, message(name, field, text), text)
    sheet.expect_no_answer()
    assert sheet.answer.text_content() == built
    assert page.evaluate("() => location.hash").startswith(
        link_of(name, "power=lots&voltage=-5V&route=roof")
    )
    sheet.box("power").fill("1000")
    sheet.box("voltage").fill("13")
    sheet.expect_no_answer()
    sheet.button("route", "inverter").check()
    for field in ("power", "voltage", "route"):
        sheet.expect_fine(field)
    texts = usual(name, power="1000 W", voltage="13 V", route="inverter", hours="2 h")
    sheet.expect_answer(texts)


def test_no_other_answer_stands_where_that_of_a_link_is_to_come(browser, server):
    """Not even for a moment, and not where Python never starts."""
    texts = EVERY_FIELD[RUN]
    with another_page(browser, server) as page:
        page.add_init_script(NO_PYTHON)
        held = []
        page.route("**/assets/page.js", lambda route: held.append(route))
        page.goto(f"{server.url}checks/{RUN}/{link_to(RUN, texts)}", wait_until="commit")
        sheet = Sheet(page, RUN)
        expect(sheet.part("gist")).to_be_visible()
        sheet.expect_none_in_sight()
        said = sheet.part("gist").evaluate("(e) => getComputedStyle(e, '::before').content")
        assert said == f'"{BY_LINK}"'
        while not held:
            page.wait_for_timeout(20)
        held[0].continue_()
        expect(sheet.part("gist")).to_have_text(BY_LINK)
        sheet.expect_none_in_sight()
        expect(sheet.state).to_be_hidden()
        # The values that are being calculated with stand in the form.
        assert (sheet.box("current").input_value(), texts["current"]) == ("45A", "45 A")
        expect(sheet.box("conductor")).to_have_value(texts["conductor"])


def test_a_link_whose_answer_cannot_come_says_so_and_shows_no_other(browser, server):
    with another_page(browser, server) as page:
        page.add_init_script(REFUSED)
        page.goto(f"{server.url}checks/{RUN}/{link_of(RUN, 'current=45A')}")
        sheet = Sheet(page, RUN)
        expect_standing(sheet, NO_START.replace(f" {DEFAULT}", ""))
        sheet.expect_none_in_sight()


def test_a_new_fragment_on_the_open_page_is_taken_up(page, server):
    sheet = open_sheet(page, server, RUN, link_of(RUN, "current=45A&length=3.6m&colour=red"))
    expect(sheet.notes).to_contain_text(STRANGE)
    link = link_to(RUN, EVERY_FIELD[RUN])
    page.evaluate("(link) => { location.hash = link; }", link)
    expect(sheet.box("length")).to_have_value("3.6")
    sheet.expect_answer(EVERY_FIELD[RUN])
    expect(sheet.notes).to_be_hidden()
    page.evaluate("(link) => { location.hash = link; }", link_of(RUN, "current=abc"))
    sheet.expect_refused("current", message(RUN, "current", "abc"), "abc")
    page.go_back()
    expect(sheet.box("current")).to_have_value("45")
    sheet.expect_answer(EVERY_FIELD[RUN])


@pytest.mark.parametrize("name", ONE_OF_EACH)
def test_a_worked_example_opens_in_the_sheet_above_it(page, server, name):
    sheet = open_sheet(page, server, name)
    examples = page.get_by_role("link", name="Open these values in the sheet").all()
    own = [link for link in examples if f"/{name}/#" in link.get_attribute("href")]
    assert own  # others lead to the sheet of another guide
    for link in own:
        fragment = "#" + link.get_attribute("href").split("#")[1]
        link.click()
        reply = opened(name, fragment)
        expect(sheet.answer).to_have_text(sheet.text_of(reply["answer"]))
        for field, said in reply["fields"].items():
            if "rows" not in said:
                sheet.expect_holds(field, said["fill"])
            for row, cells in enumerate(said.get("rows", []), 1):
                for column, cell in zip(calc.find(name).field(field).columns, cells, strict=True):
                    expect(sheet.cell(field, row, column.id)).to_have_value(cell["fill"])
        expect_notes(sheet, reply["notes"])
        expect(sheet.part("gist")).to_be_in_viewport()


def test_figures_of_an_example_do_not_load_the_page_anew(fresh_page, server):
    page = fresh_page
    sheet = open_sheet(page, server, "week-ahead")
    page.evaluate("() => { window.article = document.querySelector('article'); }")
    # Pressed as soon as it has come into view, as on a phone.
    page.get_by_role("link", name="Open these values in the sheet").first.evaluate(
        "(link) => { link.scrollIntoView(); link.click(); }"
    )
    fragment = page.evaluate("() => location.hash")
    expect(sheet.answer).to_have_text(sheet.text_of(opened("week-ahead", fragment)["answer"]))
    page.wait_for_load_state("networkidle")
    assert page.evaluate("() => window.article.isConnected")
    expect(sheet.part("gist")).to_be_in_viewport()
