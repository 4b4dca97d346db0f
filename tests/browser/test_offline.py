"""The promises of the service worker, each tried on a copy of the built site.

Saved means the whole site, counted; a save that breaks off goes on from there; a half deploy is
refused; versions never mix; nothing reloads under someone's hands.
"""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import expect

from build_scripts.site_list import version_of
from tests.browser.place import SAVED, SECOND, Place, drop, is_active, kept_by, line_of
from tests.browser.tools import NO_PYTHON, VIEWPORTS


@pytest.fixture
def viewport():
    """A phone's, unless a test asks for both: what is saved does not depend on the window."""
    return VIEWPORTS["phone"]


@pytest.fixture
def no_signal(saved: Place, viewport) -> Iterator[Place]:
    """That place, in which a test may open pages but change nothing."""
    yield saved
    for page in saved.context.pages:
        page.close()
    saved.check()


both_viewports = pytest.mark.parametrize("viewport", VIEWPORTS.values(), ids=VIEWPORTS)


def test_the_first_visit_saves_every_file_and_says_so(place):
    page = place.open_saved(python=True)
    total = len(place.files)
    expect(line_of(page)).to_have_text(f"Saved for use without signal: {total} of {total}")
    assert set(kept_by(page)) == {digest for digest, _ in place.files.values()} | {"active"}


def test_while_it_saves_the_line_counts(place):
    place.fail("stall", place.largest)
    page = place.open()
    total = len(place.files)
    counting = f"Saving for use without signal: {total - 1} of {total} files"
    expect(line_of(page)).to_have_text(counting, timeout=60_000)
    expect(line_of(page)).to_have_attribute("aria-busy", "true")
    place.mend()
    expect(line_of(page)).to_have_text(SAVED)
    expect(line_of(page)).to_have_attribute("aria-busy", "false")


def test_the_worker_tells_its_status_to_whoever_asks(place):
    page = place.open_saved()
    drop(page, place.files["404.html"][0])
    status = page.evaluate(
        """() => new Promise((resolve) => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = ({ data }) => resolve(data);
            navigator.serviceWorker.controller.postMessage({ type: "status" }, [port2]);
        })"""
    )
    files = place.files
    assert status == {
        "type": "status",
        "edition": version_of(files),
        "have": len(files) - 1,
        "total": len(files),
        "bytes": sum(size for _, size in files.values()) - files["404.html"][1],
        "totalBytes": sum(size for _, size in files.values()),
        "missing": ["404.html"],
        "list": True,
    }


def test_without_a_server_every_page_opens(no_signal):
    page = no_signal.open()
    expect(line_of(page)).to_have_text(SAVED)
    for path in no_signal.files:
        if path.endswith("index.html"):
            address = path.removesuffix("index.html")
            reply = page.goto(f"{no_signal.server.url}{address}?from=elsewhere#v=1")
            assert reply.status == 200, path
            assert reply.from_service_worker
            assert "frame-ancestors 'none'" in reply.headers["content-security-policy"]
            expect(line_of(page)).to_have_text(SAVED)


@both_viewports
def test_without_a_server_links_and_slashless_addresses_work(no_signal, viewport):
    page = no_signal.open()
    page.set_viewport_size(viewport)
    page.locator("article a[href*='checks/wire-drop']").first.click()
    expect(page).to_have_url(re.compile("/checks/wire-drop/"))
    expect(line_of(page)).to_have_text(SAVED)
    page.goto(no_signal.server.url + "checks/wire-drop?x=1")
    assert page.url == no_signal.server.url + "checks/wire-drop/?x=1"


def test_without_a_server_a_sheet_still_works(no_signal):
    page = no_signal.open("checks/wire-drop/#v=1&current=6A", python=True)
    expect(page.locator("html")).to_have_attribute("data-lugwise", "ready", timeout=60_000)
    box = page.locator("[data-sheet] input[name=current]")
    expect(box).to_have_value("6")
    answer = page.locator("[data-sheet] [data-answer]")
    before = answer.text_content()
    box.fill("12")
    expect(answer).not_to_have_text(before)
    expect(page).to_have_url(re.compile("current=12"))


def test_an_unknown_page_without_a_server_is_our_own_not_found_page(no_signal):
    no_signal.expected = ["status of 404"]
    page = no_signal.open()
    for path in ("no/such/page/", "%", "no-such-file.html"):
        reply = page.goto(no_signal.server.url + path)
        assert reply.status == 404
        expect(page.get_by_role("heading", name="There is no page here")).to_be_visible()


def test_a_save_that_broke_off_fetches_only_what_is_missing(place):
    place.fail("cut", place.largest)
    page = place.open()
    expect(line_of(page)).to_contain_text("Not saved: the connection broke.", timeout=60_000)
    expect(line_of(page)).to_contain_text("It goes on when there is signal.")
    assert not is_active(page)
    kept = set(kept_by(page))
    missing = {path for path, (digest, _) in place.files.items() if digest not in kept}
    assert place.largest in missing
    place.mend()
    page.get_by_role("button", name="Try again").click()
    expect(line_of(page)).to_have_text(SAVED, timeout=60_000)
    assert set(place.asked()) == missing | {"sw.js"}


def test_a_stalled_connection_ends_the_try_and_the_next_one_finishes(place):
    place.edit_worker("STALL_MS = 30000", "STALL_MS = 4000")
    place.fail("stall", place.largest)
    page = place.open()
    expect(line_of(page)).to_contain_text("Not saved: the connection broke.", timeout=60_000)
    place.mend()
    page.get_by_role("button", name="Try again").click()
    expect(line_of(page)).to_have_text(SAVED, timeout=60_000)


def test_a_half_deployed_update_is_refused_and_the_old_version_stays_whole(place):
    page = place.open_saved()
    place.release(but="checks/wire-drop/index.html")
    page.reload()
    whole = (
        r"^Saved for use without signal: (\d+) of \1\. "
        r"A newer version is not saved: a file came that is not of this version: the site is"
    )
    expect(line_of(page)).to_contain_text(re.compile(whole), timeout=60_000)
    place.server.kill()
    for path in ("", "checks/wire-drop/", "checks/runtime/"):
        page.goto(place.server.url + path)
        assert SECOND not in page.title()


def test_an_update_waits_for_the_press_and_then_every_page_is_new(place):
    page = place.open_saved()
    other = place.open("checks/runtime/")
    old = set(kept_by(page))
    place.release()
    page.reload()
    expect(line_of(page)).to_contain_text("A newer version is ready", timeout=60_000)
    page.goto(place.server.url + "checks/wire-drop/#v=1&current=6A")
    assert SECOND not in page.title()
    page.get_by_role("button", name="Use it now").click()
    expect(page).to_have_title(re.compile(re.escape(SECOND)), timeout=60_000)
    assert page.url.endswith("#v=1&current=6A")
    expect(line_of(page)).to_have_text(SAVED)
    # The other page's reader has pressed nothing: told, not reloaded.
    expect(line_of(other)).to_contain_text("A newer version is in use")
    assert SECOND not in other.title()
    other.get_by_role("button", name="Reload").click()
    expect(other).to_have_title(re.compile(re.escape(SECOND)))
    now = {digest for digest, _ in place.files.values()} | {"active"}
    assert set(kept_by(page)) == now
    assert old - now
    place.server.kill()
    for path in ("", "checks/wire-drop/", "checks/runtime/"):
        page.goto(place.server.url + path)
        assert SECOND in page.title()


def test_a_dropped_file_is_fetched_again(place):
    page = place.open_saved()
    files = place.files
    for path in (place.largest, "checks/runtime/index.html"):
        drop(page, files[path][0])
    place.mend()
    page.reload()
    expect(line_of(page)).to_have_text(SAVED, timeout=60_000)
    assert {files[place.largest][0], files["checks/runtime/index.html"][0]} <= set(kept_by(page))


def test_a_cache_that_was_wiped_is_filled_again_with_every_key(place):
    page = place.open_saved()
    before = set(kept_by(page))
    assert "active" in before
    page.evaluate("() => caches.delete('lugwise-files')")
    page.reload()
    expect(line_of(page)).to_have_text(SAVED, timeout=60_000)
    assert set(kept_by(page)) == before


def test_a_dropped_page_that_the_host_has_changed_is_not_mixed_in(place):
    place.expected = ["status of 503", "/favicon.ico"]  # a bare sentence has no icon of its own
    page = place.open_saved()
    drop(page, place.files["checks/runtime/index.html"][0])
    place.fail("cut", "sw.js")  # the browser cannot learn of the new version
    for file in place.root.rglob("*.html"):
        file.write_text(file.read_text().replace("</title>", f"{SECOND}</title>"))
    reply = page.goto(place.server.url + "checks/runtime/")
    assert reply.status == 503
    expect(page.locator("body")).to_contain_text("no longer saved on this device")
    assert SECOND not in page.content()


def test_too_little_room_is_said_and_the_site_still_works(place):
    page = place.context.new_page()
    page.add_init_script(NO_PYTHON)
    storage = place.context.new_cdp_session(page)
    quota = {"origin": place.server.url.rstrip("/"), "quotaSize": 1_000_000}
    storage.send("Storage.overrideQuotaForOrigin", quota)
    page.goto(place.server.url)
    expect(line_of(page)).to_contain_text("not enough room left on this device", timeout=60_000)
    page.goto(place.server.url + "checks/wire-drop/")
    expect(page.locator("h1")).to_be_visible()
