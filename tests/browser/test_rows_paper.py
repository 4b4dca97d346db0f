"""A list of joints on paper: the sheet that goes to the workshop and comes back with initials."""

import re

import pytest
from playwright.sync_api import Page, expect

import calc
from tests.browser.sheet_helpers import Sheet, link_to, open_sheet
from tests.browser.test_print import text_of_pdf, without_spaces
from tests.browser.test_rows import LIST, NAME, TWENTY, USUAL
from tests.browser.tools import VIEWPORTS

pytestmark = pytest.mark.one_visit


@pytest.fixture
def viewport():
    """A phone's: paper does not depend on the window."""
    return VIEWPORTS["phone"]


def press_print(page: Page, sheet: Sheet) -> bytes:
    """Return what the sheet's own button would print, as PDF."""
    page.evaluate("() => { window.print = () => {}; }")
    sheet.root.get_by_role("button", name="Print in full").click()
    expect(sheet.part("qr").locator("svg")).to_be_attached(timeout=60_000)
    page.evaluate("() => { document.documentElement.dataset.printing = 'full'; }")
    return page.pdf(format="A4")


def test_twenty_joints_are_printed_on_two_pages_with_room_to_write(page, server):
    texts = {"vehicle": "Marram", LIST: TWENTY}
    sheet = open_sheet(page, server, NAME, link_to(NAME, texts))
    sheet.expect_answer(texts)
    pdf = press_print(page, sheet)
    assert len(re.findall(rb"/Type /Page\b", pdf)) == 2
    printed = text_of_pdf(pdf)
    table = calc.find(NAME).tables[0]
    wanted = ["Marram", "joint 1", "joint 20", "12 N·m (106 lbf·in)", table.paper_note]
    wanted += [*(f"{blank.group}" for blank in table.blanks), "initials", link_to(NAME, texts)]
    assert not [words for words in wanted if without_spaces(words) not in printed]


def test_the_boxes_to_write_in_are_ruled_and_only_on_paper(page, server):
    sheet = open_sheet(page, server, NAME)
    boxes = sheet.answer.locator("tbody .lw-blank")
    expect(boxes).to_have_count(4 * len(USUAL))
    expect(boxes.first).to_be_hidden()
    page.set_viewport_size({"width": 680, "height": 960})  # A4 within its margins
    page.emulate_media(media="print")
    sizes = boxes.evaluate_all(
        """(boxes) => boxes.map((box) => [box.textContent, box.clientWidth, box.clientHeight,
            parseFloat(getComputedStyle(box).borderBottomWidth)])"""
    )
    millimetre = 96 / 25.4
    for text, width, height, border in sizes:
        assert text == ""
        assert width > 10 * millimetre and height > 6 * millimetre
        assert border > 0
    page.emulate_media(media="null")
