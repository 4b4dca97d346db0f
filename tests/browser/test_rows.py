"""A list under the reader's fingers: rows added, removed, put back, wrong, and in links."""

import pytest
from playwright.sync_api import expect

import calc
from calc.worksheet.rows import joined
from tests.browser.sheet_helpers import Sheet, exactly, link_of, link_to, open_sheet, usual
from tests.browser.tools import VIEWPORTS
from tests.browser.wcag import SMALL_TARGETS, STICKING_OUT, broken_rules, keep_one_of_each

NAME, LIST = "joint-sheet", "joints"
FIELD = calc.find(NAME).field(LIST)
COLUMNS = [column.id for column in FIELD.columns]
USUAL = [[cell.entry for cell in row] for row in FIELD.read(FIELD.default).rows]
BLANK = [cell.entry for cell in FIELD.blank]
TWENTY = joined([f"joint {n}", "M8", "12 N·m", "8.8", "dry", "1"] for n in range(1, 21))

pytestmark = pytest.mark.one_visit


@pytest.fixture
def viewport():
    """A phone's, unless a test asks for both."""
    return VIEWPORTS["phone"]


both_viewports = pytest.mark.parametrize("viewport", VIEWPORTS.values(), ids=VIEWPORTS)


def row(name: str, **changes: str) -> list[str]:
    """Return the cells of a row with that name, the others as they stand in a new one."""
    return [({"name": name} | changes).get(c, b) for c, b in zip(COLUMNS, BLANK, strict=True)]


def expect_rows(sheet: Sheet, rows: list[list[str]]) -> None:
    """Wait until these rows stand in the form, numbered and labelled, and their answer below."""
    expect(sheet.rows(LIST)).to_have_count(len(rows))
    for number, cells in enumerate(rows, 1):
        legend = sheet.rows(LIST).nth(number - 1).locator("legend")
        expect(legend).to_have_text(f"Joint {number}")
        for column, text in zip(COLUMNS, cells, strict=True):
            expect(sheet.cell(LIST, number, column)).to_have_value(text)
    expect_one_of_each_id(sheet)


def expect_one_of_each_id(sheet: Sheet) -> None:
    assert sheet.page.evaluate(
        """() => {
            const ids = [...document.querySelectorAll("[id]")].map((element) => element.id);
            const labels = [...document.querySelectorAll("[data-list] label")];
            const told = [...document.querySelectorAll("[data-list] [aria-describedby]")];
            return new Set(ids).size === ids.length && labels.every((label) => label.control)
                && told.every((box) => box.getAttribute("aria-describedby").split(" ")
                    .every((id) => document.getElementById(id)));
        }"""
    )


def expect_answer(sheet: Sheet, rows: list[list[str]]) -> None:
    sheet.expect_answer(usual(NAME, **{LIST: joined(rows)}))


def add(sheet: Sheet) -> None:
    sheet.root.get_by_role("button", name="Add a joint").click()


def remove(sheet: Sheet, number: int) -> None:
    sheet.root.get_by_role("button", name=f"Remove joint {number}", exact=True).click()


def error(sheet: Sheet, number: int, column: str):
    return sheet.root.locator(f"[id='{NAME}-{LIST}-{number}-{column}-error']")


@both_viewports
def test_a_row_is_added_with_the_focus_in_it_and_counts_once_it_has_a_name(page, server):
    sheet = open_sheet(page, server, NAME)
    expect_rows(sheet, USUAL)
    add(sheet)
    expect_rows(sheet, [*USUAL, BLANK])
    expect(sheet.cell(LIST, 5, "name")).to_be_focused()
    expect(sheet.field(LIST).locator("[data-said]")).to_have_text("Joint 5 added.")
    expect_answer(sheet, USUAL)
    page.keyboard.type("inverter plus")
    sheet.cell(LIST, 5, "maker_torque").fill("11.5")
    rows = [*USUAL, row("inverter plus", maker_torque="11.5")]
    expect_answer(sheet, rows)
    sheet.cell(LIST, 5, "stud").focus()
    sheet.cell(LIST, 5, "stud").select_option("M10")
    rows[-1] = row("inverter plus", maker_torque="11.5", stud="M10")
    expect_rows(sheet, rows)
    expect_answer(sheet, rows)
    expect(page).to_have_url(exactly(link_to(NAME, {LIST: joined(rows)})))


def test_a_removed_row_can_be_put_back_where_it_was(page, server):
    sheet = open_sheet(page, server, NAME)
    remove(sheet, 2)
    expect_rows(sheet, [USUAL[0], *USUAL[2:]])
    expect_answer(sheet, [USUAL[0], *USUAL[2:]])
    expect(sheet.field(LIST).locator("[data-said]")).to_have_text("Joint 2 removed.")
    back = sheet.root.get_by_role("button", name="Put it back")
    expect(back).to_be_focused()
    expect(back).to_be_in_viewport()
    back.click()
    expect_rows(sheet, USUAL)
    expect_answer(sheet, USUAL)
    expect(back).to_be_hidden()
    expect(sheet.cell(LIST, 2, "name")).to_be_focused()


def test_an_empty_row_stands_in_for_the_last_one_that_is_removed(page, server):
    sheet = open_sheet(page, server, NAME, link_to(NAME, {LIST: "post:M8:9 N.m:brass"}))
    only = row("post", maker_torque="9", grade="brass")
    expect_rows(sheet, [only])
    remove(sheet, 1)
    expect_rows(sheet, [BLANK])
    expect(sheet.error(LIST).first).to_have_text("Enter at least one joint, like battery plus.")
    sheet.expect_stale()
    sheet.root.get_by_role("button", name="Put it back").click()
    expect_rows(sheet, [only])
    expect_answer(sheet, [only])
    expect(sheet.error(LIST).first).to_be_hidden()


@both_viewports
def test_each_sentence_stands_in_the_cell_it_is_about_and_nothing_typed_is_lost(page, server):
    sheet = open_sheet(page, server, NAME)
    sheet.cell(LIST, 1, "name").fill("plus: bank; main")
    sheet.cell(LIST, 3, "maker_torque").fill("12 furlongs")
    sheet.cell(LIST, 4, "lugs").fill("1.5")
    rows = [list(cells) for cells in USUAL]
    rows[0][0], rows[2][2], rows[3][5] = "plus: bank; main", "12 furlongs", "1.5"
    with pytest.raises(calc.InputError) as refusal:
        calc.work(NAME, {LIST: joined(rows)})
    told = {problem.cell: problem.message for problem in refusal.value.problems}
    assert set(told) == {(0, 0), (2, 2), (3, 5)}
    for (place, column), says in told.items():
        cell = sheet.cell(LIST, place + 1, COLUMNS[column])
        expect(error(sheet, place + 1, COLUMNS[column])).to_have_text(says)
        expect(error(sheet, place + 1, COLUMNS[column])).to_be_visible()
        expect(cell).to_have_attribute("aria-invalid", "true")
        assert f"{cell.get_attribute('id')}-error" in cell.get_attribute("aria-describedby")
    expect(sheet.root.locator("[data-list] [aria-invalid=true]")).to_have_count(3)
    sheet.expect_stale()
    expect_rows(sheet, rows)
    # The link holds them too.
    link = sheet.part("link").input_value()
    again = open_sheet(page, server, NAME, "#" + link.split("#")[1])
    expect_rows(again, rows)
    for (place, column), says in told.items():
        expect(error(again, place + 1, COLUMNS[column])).to_have_text(says)
    for place, column, text in ((1, "name", "bank"), (3, "maker_torque", "12"), (4, "lugs", "2")):
        again.cell(LIST, place, column).fill(text)
        expect(error(again, place, column)).to_be_hidden()
    rows[0][0], rows[2][2], rows[3][5] = "bank", "12", "2"
    expect_answer(again, rows)


def test_a_row_in_use_is_not_scolded_for_what_its_reader_has_not_come_to(page, server):
    sheet = open_sheet(page, server, NAME)
    add(sheet)
    sheet.cell(LIST, 5, "maker_torque").focus()
    page.keyboard.type("9")
    sheet.expect_stale()
    expect(sheet.cell(LIST, 5, "name")).to_have_value("")
    expect(error(sheet, 5, "name")).to_be_hidden()
    sheet.cell(LIST, 4, "name").focus()
    expect(error(sheet, 5, "name")).to_have_text("Joint 5: Enter the name, like battery plus.")
    expect(error(sheet, 5, "name")).to_be_visible()


def test_another_unit_is_typed_into_the_cell_and_stays_there(page, server):
    sheet = open_sheet(page, server, NAME)
    sheet.cell(LIST, 1, "maker_torque").fill("70 lbf in")
    page.keyboard.press("Tab")
    expect(sheet.cell(LIST, 1, "maker_torque")).to_have_value("70 lbf·in")
    rows = [list(cells) for cells in USUAL]
    rows[0][2] = "70 lbf·in"
    expect_answer(sheet, rows)
    assert "70lbf.in" in sheet.part("link").input_value()


def test_a_link_fills_as_many_rows_as_it_holds_and_the_next_one_as_many_as_that(page, server):
    sheet = open_sheet(page, server, NAME, link_to(NAME, {LIST: TWENTY}))
    expect(sheet.rows(LIST)).to_have_count(20)
    sheet.expect_answer({LIST: TWENTY})
    expect(sheet.cell(LIST, 20, "name")).to_have_value("joint 20")
    page.evaluate("(link) => { location.hash = link; }", link_to(NAME, {LIST: "a;b:M10"}))
    expect_rows(sheet, [row("a"), row("b", stud="M10")])
    sheet.expect_answer({LIST: "a;b:M10"})


def test_the_sheets_own_rows_come_back(page, server):
    sheet = open_sheet(page, server, NAME)
    remove(sheet, 1)
    add(sheet)
    page.keyboard.type("a:b")
    sheet.expect_stale()
    page.get_by_role("button", name="Reset to default values").click()
    expect_rows(sheet, USUAL)
    expect_answer(sheet, USUAL)
    expect(sheet.root.get_by_role("button", name="Put it back")).to_be_hidden()


def test_no_more_rows_can_be_added_than_there_may_be(page, server):
    most = joined([[f"joint {n}"] for n in range(1, FIELD.most)])
    sheet = open_sheet(page, server, NAME, link_to(NAME, {LIST: most}))
    expect(sheet.rows(LIST)).to_have_count(FIELD.most - 1)
    add(sheet)
    expect(sheet.rows(LIST)).to_have_count(FIELD.most)
    expect(sheet.root.get_by_role("button", name="Add a joint")).to_be_disabled()
    said = f"Joint {FIELD.most} is the last one possible."
    expect(sheet.field(LIST).locator("[data-said]")).to_have_text(said)


def test_too_many_rows_in_a_link_are_cut_and_told(page, server):
    many = ";".join(["a"] * 5000)
    sheet = open_sheet(page, server, NAME, link_of(NAME, f"{LIST}={many}"))
    expect(sheet.rows(LIST)).to_have_count(FIELD.most)
    says = f"Joints must be {FIELD.most} at most; the rest is left out."
    expect(sheet.error(LIST).first).to_have_text(says)
    sheet.cell(LIST, 1, "name").fill("b")
    expect(sheet.error(LIST).first).to_be_hidden()


@both_viewports
def test_a_list_with_mistakes_breaks_no_rule_and_fits(page, server):
    link = link_to(NAME, {LIST: r"a\:b:M99:x:y:z:99:q;:M8:12 N.m;good"})
    sheet = open_sheet(page, server, NAME, link)
    expect(error(sheet, 1, "stud")).to_be_visible()
    remove(sheet, 3)
    assert page.evaluate(SMALL_TARGETS, ".lw-rows :is(input, select, button)") == []
    assert page.evaluate(STICKING_OUT, "article *") == []
    keep_one_of_each(page)
    assert broken_rules(page) == []


def test_on_a_desk_a_list_looks_like_a_table_and_on_a_phone_like_cards(page, server):
    sheet = open_sheet(page, server, NAME)
    tops = [sheet.cell(LIST, 1, column).bounding_box()["y"] for column in COLUMNS]
    assert len(set(tops)) > 3
    expect(sheet.field(LIST).locator("legend").nth(1)).to_be_visible()
    page.set_viewport_size(VIEWPORTS["desktop"])
    tops = [sheet.cell(LIST, 1, column).bounding_box()["y"] for column in COLUMNS]
    assert max(tops) - min(tops) < 4
    heads = sheet.field(LIST).locator(".lw-heads > span")
    for place, column in enumerate(COLUMNS):
        head, box = heads.nth(place).bounding_box(), sheet.cell(LIST, 2, column).bounding_box()
        assert abs(head["x"] - box["x"]) < 2
