"""What is kept of a van, and where: two tabs, a refusal, a link, a photo, and without signal."""

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
from tests.browser.van_page import (
    NAMED,
    add,
    begin,
    box,
    empty,
    expect_kept,
    expect_lengths,
    kept,
    unfold_circuit,
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


def test_two_tabs_never_write_over_each_other(van, server):
    """The second tab hears nothing of the first, as where a browser has no such channel."""
    page = van
    begin(page, "Fern")
    add(page, "fridge", "3 m")
    expect_lengths(page, ["3 m"])
    other = page.context.new_page()
    other.add_init_script("delete window.BroadcastChannel")
    other.goto(f"{server.url}van/")
    unfold_circuit(other)
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
    expect(page.locator("[data-said]")).to_contain_text("incomplete", timeout=STARTING)
    bad = tmp_path / "bad.toml"
    bad.write_text('format = 1\n[van]\nsystem = "<img src=x onerror=window.pwned=1>"\n')
    page.locator("[data-start] [data-file]").set_input_files(bad)
    expect(page.locator("[data-problems] li")).to_contain_text("van.system")
    good = tmp_path / "good.toml"
    good.write_text('format = 1\n[van]\nname = "<img src=x onerror=window.pwned=1>"\n')
    page.locator("[data-start] [data-file]").set_input_files(good)
    expect(page.locator("[data-which]")).to_contain_text("<img src=x")
    assert page.evaluate("() => window.pwned") is None


def test_a_strange_end_of_the_address_opens_the_van_and_accuses_no_browser(van, server):
    page = van
    begin(page, "Fern")
    expect(page.locator("[data-which]")).to_contain_text("Fern")  # its last letter too
    page.goto(f"{server.url}licences/")
    for end in ("#open=nothing:%E0%A4%A", f"#open={'a' * 50_000}:x"):
        page.goto(f"{server.url}van/{end}")
        page.reload()
        expect(page.locator("[data-which]")).to_contain_text("Fern", timeout=STARTING)
        expect(page.locator("[data-start]")).to_be_hidden()
        expect(page.locator("[data-refused-words]")).to_have_text("")


def test_a_van_erased_under_its_open_page_is_kept_again_as_itself(van, server):
    page = van
    begin(page, "Fern")
    add(page, "fridge", "3 m")
    expect_lengths(page, ["3 m"])
    session = page.context.new_cdp_session(page)
    here = {"origin": server.url.rstrip("/"), "storageTypes": "indexeddb"}
    session.send("Storage.clearDataForOrigin", here)
    box(page, "circuits[1].length").fill("4")
    expect_lengths(page, ["4 m"])
    assert [one["copy"] for one in kept(page)] == [False]
    expect(page.locator("[data-refused-words]")).to_have_text("")


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
    page.get_by_role("button", name="Remove permanently").click()
    expect(page.locator("[data-start]")).to_be_visible()
    assert kept(page) == []


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
