"""The page of a van on the built site: written down, changed, undone, worked, fed into sheets."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.sheet_helpers import STARTING
from tests.browser.tools import VIEWPORTS
from tests.browser.van_page import NAMED, add, begin, box, empty, expect_kept, expect_lengths
from tests.browser.wcag import (
    SMALL_TARGETS,
    SMALL_TEXT,
    STICKING_OUT,
    broken_rules,
    keep_one_of_each,
)


@pytest.fixture
def viewport():
    """A phone's: the page is made for it first."""
    return VIEWPORTS["phone"]


@pytest.fixture
def van(visit, server) -> Page:
    """The page with no van on the device, in the file's one visit."""
    empty(visit, f"{server.url}van/")
    return visit


def test_a_van_with_three_circuits_is_there_after_a_reload(van):
    page = van
    begin(page)
    for load, length in (("fridge", "3.2 m"), ("water pump", "2,5"), ("strip light", "6")):
        add(page, load, length)
    expect_lengths(page, ["3.2 m", "2,5 m", "6 m"])
    expect_kept(page)
    page.reload()
    lines = page.locator("[data-list-of=circuits] [data-line]")
    expect(lines).to_have_count(3, timeout=STARTING)
    page.locator("[data-group=circuits] > summary").click()
    expect(lines.nth(1)).to_contain_text("water pump")
    expect(lines.nth(1)).to_contain_text("2.5\u00a0m")
    assert page.locator("[data-which]").evaluate("(one) => one.selectedOptions[0].text") == NAMED


def test_what_was_typed_in_vain_is_told_beside_its_box_and_is_there_after_a_reload(van):
    page = van
    begin(page)
    add(page, "fridge", "3 furlongs")
    error = page.locator("[data-place='circuits[1].length'] [data-error]")
    expect(error).to_contain_text("must be in")
    page.wait_for_timeout(600)
    page.reload()
    page.locator("[data-group=circuits] > summary").click(timeout=STARTING)
    page.locator("[data-part='circuits[1]'] > summary").click()
    expect(box(page, "circuits[1].length")).to_have_value("3 furlongs")
    expect(error).to_contain_text("must be in")


def test_undo_and_redo_go_a_step_each_and_a_word_is_one_step(van):
    page = van
    begin(page)
    add(page, "fridge", "3 m")
    expect_lengths(page, ["3 m"])
    undo, redo = (page.get_by_role("button", name=name, exact=True) for name in ("Undo", "Redo"))
    undo.click()
    expect_lengths(page, [""])
    undo.click()
    expect(page.locator("[data-count=circuits]")).to_have_text("–")
    redo.click()
    redo.click()
    expect_lengths(page, ["3 m"])
    expect(redo).to_be_disabled()


def test_parts_are_copied_moved_removed_and_stated(van):
    page = van
    begin(page)
    add(page, "fridge", "3 m")
    page.get_by_role("button", name="Copy fridge").click()
    lines = page.locator("[data-list-of=circuits] [data-line] .lv-name")
    expect(lines).to_have_text(["fridge", "fridge 2"])
    page.get_by_role("button", name="Up fridge 2").click()
    expect(lines).to_have_text(["fridge 2", "fridge"])
    page.get_by_role("button", name="Remove fridge 2").click()
    expect(lines).to_have_text(["fridge"])
    page.locator("[data-part=inverter] > summary").click()
    page.locator("[data-part=inverter]").get_by_role("button", name="The van has none").click()
    expect(page.locator("[data-line=inverter]")).to_contain_text("none")


def test_review_diagram_and_lists_follow_a_change(van):
    page = van
    page.locator("[data-start] [data-demo=ten-mistakes]").click()
    expect(page.locator("[data-verdict]")).to_contain_text("stop", timeout=STARTING)
    page.get_by_role("tab", name="Review").click()
    findings = page.locator(".lv-finding")
    before = findings.count()
    assert before
    page.locator("[data-best] [data-mend]").first.click()
    expect(page.locator("[data-said]")).to_contain_text("Mended")
    expect(findings).not_to_have_count(before)
    page.locator("[data-seasons]").click()
    expect(page.locator(".lv-seasons")).to_contain_text("The year by months", timeout=STARTING)
    page.get_by_role("tab", name="Diagram").click()
    expect(page.locator("[data-panel-diagram] svg.lw-plan").first).to_be_visible()
    page.get_by_role("tab", name="Lists").click()
    page.locator("[data-panel-lists] summary").first.click()
    expect(page.locator("[data-panel-lists] table").first).to_be_visible()
    with page.expect_download() as download:
        page.locator("[data-panel-lists] [data-writes-csv]").first.click()
    assert download.value.suggested_filename.endswith(".csv")


def test_the_diagram_prints_on_one_landscape_page_of_its_own(van):
    page = van
    page.locator("[data-start] [data-demo=marram]").click()
    page.get_by_role("tab", name="Diagram").click(timeout=STARTING)
    expect(page.locator("[data-panel-diagram] svg.lw-plan")).to_be_visible(timeout=STARTING)
    printed = page.pdf(prefer_css_page_size=True)
    assert len(re.findall(rb"/Type\s*/Page[^s]", printed)) == 1
    width, height = map(float, re.search(rb"/MediaBox \[0 0 (\S+) (\S+)\]", printed).groups())
    assert width > height


def test_a_finding_leads_to_its_box_and_a_sheet_leads_back_with_a_new_value(van, server):
    page = van
    page.locator("[data-start] [data-demo=marram]").click()
    expect(page.locator("[data-verdict] p")).to_be_visible(timeout=STARTING)
    page.get_by_role("button", name="Keep it").click()
    expect_kept(page)
    page.locator("[data-group=circuits] > summary").click()
    page.locator("[data-part='circuits[1]'] > summary").click()
    page.locator(".lv-links").get_by_role("link", name="Wire drop").click()
    strip = page.locator("[data-of-van]")
    expect(strip).to_contain_text("For Marram: fridge", timeout=STARTING)
    length = page.locator("#wire-drop-length")
    length.fill("7 m")
    strip.get_by_role("button", name="Put it into the van").click()
    expect(strip).to_contain_text("Put into the van: fridge")
    strip.get_by_role("link", name="Back to the van").click()
    expect(page.locator("[data-line='circuits[1]']")).to_contain_text("7\u00a0m", timeout=STARTING)


def test_a_sheet_is_filled_from_a_van_of_this_device(van, server):
    page = van
    page.locator("[data-start] [data-demo=marram]").click()
    expect(page.locator("[data-verdict] p")).to_be_visible(timeout=STARTING)
    page.get_by_role("button", name="Keep it").click()
    expect_kept(page)
    page.goto(f"{server.url}checks/wire-drop/")
    page.get_by_role("button", name="For a van").click()
    sheet = page.locator("[data-sheet]").element_handle()
    fetched = []
    page.on("request", lambda request: fetched.append(request.url))
    page.locator("[data-of-van]").get_by_role("button", name="fridge").click(timeout=STARTING)
    expect(page.locator("[data-of-van]")).to_contain_text(
        "Filled in from the van", timeout=STARTING
    )
    page.wait_for_timeout(1000)  # the theme would take its time to put a new sheet in its place
    assert sheet.evaluate("(one) => one.isConnected")
    assert f"{server.url}checks/wire-drop/" not in fetched
    expect(page.locator("#wire-drop-length")).to_have_value("3.2")
    page.evaluate(
        """async () => {
            const store = await import("../../assets/van_store.js");
            for (const one of await store.list()) await store.remove(one.id);
        }"""
    )
    page.get_by_role("button", name="Put it into the van").click()
    expect(page.locator("[data-of-van]")).to_contain_text("no longer kept on this device")


@pytest.mark.parametrize("sample", ["ten-mistakes", "half-seen"])
def test_the_page_suits_every_finger_and_eye(van, sample):
    page = van
    page.locator(f"[data-start] [data-demo={sample}]").click()
    expect(page.locator("[data-verdict] p")).to_be_visible(timeout=STARTING)
    page.locator("[data-group=circuits] > summary").click()
    page.locator("[data-part='circuits[1]'] > summary").click()
    expect(page.locator("[data-place='circuits[1].length']")).to_be_visible()
    page.get_by_role("button", name="Add a circuit").click()
    page.locator(".lv-files > summary").click()
    found = []
    for tab in ("Parts", "Review", "Lists"):
        page.get_by_role("tab", name=tab).click()
        page.wait_for_timeout(1500)
        targets = ".lv :is(button, select, summary, input:not([type=file]), label:has(> input))"
        found += [f"{tab}: {one}" for one in page.evaluate(SMALL_TARGETS, targets)]
        found += [f"{tab}: {one}" for one in page.evaluate(SMALL_TEXT, ".lv")]
        found += [f"{tab}: {one}" for one in page.evaluate(STICKING_OUT, ".lv *")]
    page.get_by_role("tab", name="Parts").click()
    keep_one_of_each(page)
    found += broken_rules(page)
    assert not found, "\n".join(found)
