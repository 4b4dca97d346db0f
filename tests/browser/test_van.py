"""The page of a van on the built site: written down, kept, undone, sent, and without signal."""

import base64
import json
import re

import pytest
from playwright.sync_api import Browser, Page, expect

from calc.van.files import read_van
from calc.van.link import unpack
from tests.browser.conftest import of_profile
from tests.browser.sheet_helpers import STARTING
from tests.browser.tools import VIEWPORTS, Watch
from tests.browser.wcag import (
    SMALL_TARGETS,
    SMALL_TEXT,
    STICKING_OUT,
    broken_rules,
    keep_one_of_each,
)

NAMED = "Fern <b>& co"


@pytest.fixture
def viewport():
    """A phone's: the page is made for it first."""
    return VIEWPORTS["phone"]


@pytest.fixture
def van(visit, server) -> Page:
    """The page with no van on the device, in the file's one visit."""
    page = visit
    page.goto(f"{server.url}van/")
    page.evaluate(
        """async () => {
            const names = ["vans", "photos", "notes"];
            const open = indexedDB.open("lugwise-van", 1);
            const base = await new Promise((resolve) => {
                open.onsuccess = () => resolve(open.result);
                open.onupgradeneeded = () => { open.transaction.abort(); resolve(null); };
            });
            if (!base) return;
            const clear = base.transaction(names, "readwrite");
            for (const name of names) clear.objectStore(name).clear();
            await new Promise((resolve) => (clear.oncomplete = resolve));
            base.close();
        }"""
    )
    page.goto("about:blank")
    page.goto(f"{server.url}van/")
    expect(page.locator("[data-start]")).to_be_visible(timeout=STARTING)
    return page


def begin(page: Page, name: str = NAMED) -> None:
    page.get_by_role("button", name="Plan a van").first.click()
    expect(box(page, "van.name")).to_be_focused(timeout=STARTING)
    page.keyboard.type(name)


def box(page: Page, place: str):
    return page.locator(f"[data-place='{place}'] :is(input, select)").first


def add(page: Page, load: str, length: str) -> None:
    """Add a circuit as one does with a thumb: the load, then the length, where the focus is."""
    group = page.locator("[data-group=circuits]")
    if group.get_attribute("open") is None:
        group.locator("> summary").click()
    number = page.locator("[data-list-of=circuits] > details").count() + 1
    page.get_by_role("button", name="Add a circuit").click()
    page.get_by_role("button", name=load, exact=True).click()
    expect(box(page, f"circuits[{number}].length")).to_be_focused()
    page.keyboard.type(length)


def kept(page: Page) -> list[dict]:
    """What the browser keeps, the newest first."""
    return page.evaluate(
        """async () => (await import("../assets/van_store.js")).list()""",
    )


def expect_kept(page: Page) -> None:
    expect(page.locator("[data-kept-words]")).to_have_text("Kept on this device")


def expect_lengths(page: Page, lengths: list[str]) -> None:
    """Wait until the browser keeps a van with these lengths, the newest of its vans."""

    def told() -> list[str]:
        vans = kept(page)
        parts = read_van(vans[0]["text"]).all("circuits") if vans else ()
        return [part.text("length") for part in parts]

    for _ in range(100):
        if told() == lengths:
            return
        page.wait_for_timeout(100)
    assert told() == lengths


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
    page.get_by_role("tab", name="Diagram").click()
    expect(page.locator("[data-panel-diagram] svg.lw-plan").first).to_be_visible()
    page.get_by_role("tab", name="Lists").click()
    page.locator("[data-panel-lists] summary").first.click()
    expect(page.locator("[data-panel-lists] table").first).to_be_visible()
    with page.expect_download() as download:
        page.locator("[data-panel-lists] [data-writes-csv]").first.click()
    assert download.value.suggested_filename.endswith(".csv")


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
    page.locator("[data-of-van]").get_by_role("button", name="fridge").click(timeout=STARTING)
    expect(page.locator("[data-of-van]")).to_contain_text(
        "Filled in from the van", timeout=STARTING
    )
    expect(page.locator("#wire-drop-length")).to_have_value("3.2")


def test_two_tabs_never_write_over_each_other(van, server):
    """The second tab hears nothing of the first, as where a browser has no such channel."""
    page = van
    begin(page, "Fern")
    add(page, "fridge", "3 m")
    expect_lengths(page, ["3 m"])
    other = page.context.new_page()
    other.add_init_script("delete window.BroadcastChannel")
    other.goto(f"{server.url}van/")
    other.locator("[data-group=circuits] > summary").click(timeout=STARTING)
    other.locator("[data-part='circuits[1]'] > summary").click()
    box(other, "circuits[1].length").fill("9")
    expect(other.locator("[data-line='circuits[1]']")).to_contain_text("9\u00a0m")
    expect_lengths(page, ["9 m"])
    box(page, "circuits[1].length").fill("4")
    expect(page.locator("[data-said]")).to_contain_text("kept beside it, as a copy")
    lengths = {
        one["copy"]: read_van(one["text"]).at("circuits[1].length").text for one in kept(page)
    }
    assert lengths == {False: "9 m", True: "4 m"}
    other.close()


def test_a_tab_that_is_not_in_use_shows_what_the_other_has_changed(van, server):
    page = van
    begin(page, "Fern")
    add(page, "fridge", "3 m")
    expect_lengths(page, ["3 m"])
    other = page.context.new_page()
    other.goto(f"{server.url}van/")
    line = other.locator("[data-line='circuits[1]']")
    expect(line).to_contain_text("3\u00a0m", timeout=STARTING)
    box(page, "circuits[1].length").fill("8")
    expect(line).to_contain_text("8\u00a0m")
    expect(other.locator("[data-said]")).to_contain_text("Another tab")
    other.close()


REFUSALS = {
    "private": "indexedDB.open = () => { throw new DOMException('no', 'SecurityError'); };",
    "full": """IDBObjectStore.prototype.put = () => {
        throw new DOMException("no", "QuotaExceededError");
    };""",
}


@pytest.mark.parametrize("refusal", REFUSALS)
def test_where_the_browser_keeps_nothing_that_is_said_and_a_file_is_offered(
    browser: Browser, server, refusal
):
    context = browser.new_context(**of_profile(VIEWPORTS["phone"], "block"))
    watch = Watch(context, server.url)
    page = context.new_page()
    page.add_init_script(REFUSALS[refusal])
    page.goto(f"{server.url}van/")
    begin(page)
    add(page, "fridge", "3 m")
    words = page.locator("[data-refused]")
    expect(words).to_contain_text("keeps nothing here")
    with page.expect_download() as download:
        words.get_by_role("button", name="Save the file").click()
    saved = read_van(download.value.path().read_text("utf-8"))
    assert saved.name == NAMED and saved.at("circuits[1].length").text == "3 m"
    context.close()
    watch.check()


def test_a_link_opens_the_same_van_elsewhere_and_keeps_nothing_unasked(van, server, browser):
    page = van
    begin(page)
    add(page, "fridge", "3 m")
    expect_lengths(page, ["3 m"])
    page.locator(".lv-files > summary").click()
    page.get_by_role("button", name="Make a link").click()
    expect(page.locator("[data-link-said]")).to_contain_text("characters")
    link = page.locator("[data-link-box]").input_value()
    assert unpack(link.partition("#")[2]) == read_van(kept(page)[0]["text"])
    expect(page.locator("[data-code] svg")).to_be_visible()
    context = browser.new_context(**of_profile(VIEWPORTS["phone"], "block"))
    other = context.new_page()
    other.goto(link)
    expect(other.locator("[data-line='circuits[1]']")).to_contain_text("3\u00a0m", timeout=STARTING)
    expect(other.locator("[data-said]")).to_contain_text("came by a link")
    assert kept(other) == []
    other.get_by_role("button", name="Keep it").click()
    expect_kept(other)
    assert len(kept(other)) == 1
    context.close()


def test_a_stranger_s_link_or_file_is_a_sentence_and_never_runs(van, server, tmp_path):
    page = van
    page.goto(f"{server.url}van/#v=1&van=AAAA")
    page.reload()
    expect(page.locator("[data-said]")).to_contain_text("not whole", timeout=STARTING)
    bad = tmp_path / "bad.toml"
    bad.write_text('format = 1\n[van]\nsystem = "<img src=x onerror=window.pwned=1>"\n')
    page.locator("[data-start] [data-file]").set_input_files(bad)
    expect(page.locator("[data-problems] li")).to_contain_text("van.system")
    good = tmp_path / "good.toml"
    good.write_text('format = 1\n[van]\nname = "<img src=x onerror=window.pwned=1>"\n')
    page.locator("[data-start] [data-file]").set_input_files(good)
    expect(page.locator("[data-which]")).to_contain_text("<img src=x")
    assert page.evaluate("() => window.pwned") is None


def test_a_photo_is_made_small_and_kept_with_its_part(van, tmp_path):
    page = van
    begin(page)
    add(page, "fridge", "3 m")
    drawn = page.evaluate(
        """() => {
            const canvas = document.createElement("canvas");
            Object.assign(canvas, { width: 3000, height: 1500 });
            canvas.getContext("2d").fillRect(0, 0, 2000, 900);
            return canvas.toDataURL("image/png").split(",")[1];
        }"""
    )
    picture = tmp_path / "fuse.png"
    picture.write_bytes(base64.b64decode(drawn))
    page.locator("[data-part='circuits[1]'] [data-photo]").set_input_files(picture)
    shown = page.locator("[data-part='circuits[1]'] figure img")
    expect(shown).to_be_visible()
    assert shown.evaluate("(one) => [one.naturalWidth, one.naturalHeight]") == [1280, 640]
    page.get_by_role("tab", name="Review").click()
    expect(page.locator("[data-panel-review] figure")).to_contain_text("fridge")
    page.get_by_role("tab", name="Parts").click()
    page.locator("[data-part='circuits[1]']").get_by_role("button", name="Remove photo").click()
    expect(shown).to_have_count(0)


def test_a_van_is_removed_only_when_it_is_pressed_twice(van):
    page = van
    begin(page, "Fern")
    add(page, "fridge", "3 m")
    expect_lengths(page, ["3 m"])
    page.locator(".lv-files > summary").click()
    page.get_by_role("button", name="Remove this van").click()
    assert len(kept(page)) == 1
    page.get_by_role("button", name="Remove it for good").click()
    expect(page.locator("[data-start]")).to_be_visible()
    assert kept(page) == []


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


def test_nothing_of_a_van_is_fetched_before_a_page_asks_for_it(fresh_page, server):
    page = fresh_page
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{server.url}checks/wire-drop/")
    expect(page.locator("html[data-lugwise=ready]")).to_be_attached(timeout=STARTING)
    assert any("app.zip" in url for url in asked)
    assert not [url for url in asked if "van.zip" in url or "/van" in url.replace("van-", "")]


@pytest.mark.saving
def test_without_signal_a_van_is_written_down_and_found_again(place):
    page = place.open_saved()
    place.server.kill()
    place.expected += ["ERR_CONNECTION_REFUSED", "Failed to load resource"]
    page = place.context.new_page()
    page.goto(f"{place.server.url}van/")
    begin(page)
    add(page, "fridge", "3 m")
    expect_lengths(page, ["3 m"])
    page.reload()
    expect(page.locator("[data-line='circuits[1]']")).to_contain_text("3\u00a0m", timeout=STARTING)
    assert json.loads(kept(page)[0]["text"])["van"]["name"] == NAMED
    assert re.fullmatch(r"[a-z0-9]+", kept(page)[0]["id"])
