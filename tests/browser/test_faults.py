"""A bad network, a browser that keeps nothing, a store that is emptied.

Each ends in a working page, or in a sentence with its true reason.
"""

import re
from datetime import datetime, timedelta

import pytest
from playwright.sync_api import Page, expect

from tests.browser.place import SAVED, Place, drop, kept_by, line_of
from tests.browser.sheet_helpers import Sheet, another_page, usual
from tests.browser.tools import NO_PYTHON, VIEWPORTS
from tests.counts import chance, often

RUN = "wire-drop"
BROKE = "Not saved: the connection broke. It goes on when there is signal."
SPOILED = (
    "Not saved: a file came that is not of this version: the site is being changed, "
    "or the connection spoils it. It goes on later."
)
LOGIN = (
    "Not saved: the network sent a page of its own, such as a login page. Log in there, "
    "then try again."
)
ERROR = "Not saved: the site's server reports error 503. It goes on when that is over."
REFUSED = "Not saved: this browser refuses to store files. The site works while there is signal."
ENDED = "Not saved: the browser ended the saving. It goes on when there is signal."


@pytest.fixture
def viewport():
    """A phone's: what goes wrong does not depend on the window."""
    return VIEWPORTS["phone"]


def expect_said(page: Page, *sentences: str) -> None:
    """Wait until the line says why nothing is saved, beside a button that tries again."""
    said = "|".join(re.escape(sentence) for sentence in sentences)
    expect(line_of(page)).to_have_text(re.compile(f"^(?:{said}) Try again$"), timeout=60_000)


def try_again(page: Page) -> None:
    page.get_by_role("button", name="Try again").click()


def expect_saved(page: Page) -> None:
    expect(line_of(page)).to_have_text(SAVED, timeout=60_000)


# What happens to one file on its way, and what is said of it.
ON_THE_WAY = {
    "cut": BROKE,
    "flip": SPOILED,
    "login": LOGIN,
    "away": LOGIN,
    "error": ERROR,
}
OUR_DOING = [
    "status of 503",
    "Content Security Policy",
    "ERR_FAILED",
    "Failed to load",
    "Failed to fetch",
    "register a ServiceWorker",
    "An unknown error occurred when fetching the script",
    "The script has an unsupported MIME type",
    "A bad HTTP response code",
    "behind a redirect",
]
"""What the browser's console says of it."""


@pytest.fixture
def place(place) -> Place:
    """A place without its largest files, as Python starts nowhere here."""
    place.lighten()
    return place


def led_away(place: Place) -> None:
    """Expect that the browser was led to another origin, by the network and not by the site."""
    login = place.server.url.replace("127.0.0.1", "localhost") + "login"
    assert set(place.watch.outside) <= {login}
    place.watch.outside.clear()


def test_whatever_happens_to_a_file_on_its_way_is_said_and_the_rest_is_kept(place):
    """One file and one way in a run, others in each; in a long night twenty of each way."""
    draw = chance("on the way")
    # What only the saving asks for.
    files = [path for path in place.files if path.endswith((".html", ".bin", ".json"))]
    for how in draw.sample([*ON_THE_WAY] * often(1, 20), often(1, 5 * 20)):
        path = draw.choice(files)
        place.renew()
        place.expected = OUR_DOING
        place.fail(how, path)
        page = place.open()
        # What is spoilt within a packed reply cannot be unpacked, which is all a browser tells.
        expect_said(page, *{"flip": (SPOILED, BROKE)}.get(how, (ON_THE_WAY[how],)))
        kept = kept_by(page)
        missing = {path for path, (digest, _) in place.files.items() if digest not in kept}
        assert path in missing, how
        led_away(place)
        place.mend()
        # Where this has taken half a minute, it has been tried again by itself.
        page.evaluate("() => document.querySelector('[data-offline-line] button')?.click()")
        expect_saved(page)
        assert set(place.asked()) <= missing | {"sw.js"}


def test_where_the_worker_itself_does_not_come_the_true_reason_is_said(place):
    for how in ("cut", "error", "away", "login"):
        place.renew()
        place.expected = OUR_DOING
        place.fail(how, "sw.js")
        page = place.open()
        expect_said(page, ON_THE_WAY[how])
        led_away(place)
        place.mend()
    try_again(page)
    expect_saved(page)


def tries(place: Place) -> int:
    return place.asked().count(place.largest)


def open_by_clock(place: Place) -> Page:
    """Open a page whose clock the test has in hand, and which never asks for Python's files."""
    page = place.context.new_page()
    page.add_init_script(NO_PYTHON)
    page.clock.install()
    page.add_init_script("window.requestIdleCallback = () => 0;")  # when others would start it
    page.goto(f"{place.server.url}licences/")
    return page


def test_a_failure_counts_once_and_is_tried_again_after_half_a_minute_then_two(place):
    place.fail("cut", place.largest)
    page = open_by_clock(place)
    expect_said(page, BROKE)
    settled_tries(page, place)
    (place.control / "requests").unlink()
    page.clock.pause_at(datetime.now() + timedelta(hours=1))  # the first wait is over by then
    for wait in (120_000, 600_000):
        made = settled_tries(page, place)  # a second count would come with the worker's end
        expect_said(page, BROKE)
        page.clock.run_for(wait - 1_000)
        page.wait_for_timeout(300)
        assert tries(place) == made, f"too early: {place.asked()}"
        (place.control / "requests").unlink()
        page.clock.run_for(1_000)


def settled_tries(page: Page, place: Place) -> int:
    """Return how often it has been tried, once that is more than never and stands still."""
    made = -1
    while made != tries(place) or not made:
        made = tries(place)
        page.wait_for_timeout(2_000)
    return made


def test_a_server_that_is_killed_in_the_middle_and_comes_back_saves_it_unpressed(place):
    place.fail("stall", place.largest)
    page = open_by_clock(place)
    expect(line_of(page)).to_contain_text(f"{len(place.files) - 1} of", timeout=60_000)
    place.server.kill()
    expect_said(page, BROKE)
    place.mend()
    place.server.start()
    page.clock.run_for(35_000)
    expect_saved(page)


def test_a_save_that_the_browser_ends_without_a_word_is_said_and_tried_again(place):
    place.edit_worker('await tell({ type: "save-failed"', 'await ({ type: "save-failed"')
    place.fail("cut", place.largest)
    page = open_by_clock(place)
    expect_said(page, ENDED)
    place.mend()
    page.clock.run_for(35_000)
    expect_saved(page)


def empty(page: Page) -> None:
    """Clear the site's data, as a reader may in the browser's settings."""
    session = page.context.new_cdp_session(page)
    origin = page.evaluate("() => location.origin")
    session.send("Storage.clearDataForOrigin", {"origin": origin, "storageTypes": "all"})
    session.detach()


def test_site_data_that_is_cleared_under_an_open_page_is_saved_again(place):
    page = place.open_saved()
    empty(page)
    page.evaluate("() => document.dispatchEvent(new Event('visibilitychange'))")
    expect(line_of(page)).to_contain_text(re.compile("^(Saving|Looking)"))
    expect_saved(page)
    assert set(kept_by(page)) == {digest for digest, _ in place.files.values()} | {"active"}
    # The list alone: what Python's worker reads where the browser keeps its requests from ours.
    drop(page, "/active")
    page.reload()
    while "active" not in kept_by(page):
        page.wait_for_timeout(50)


ALL_REFUSED = """
  const refuse = () => { throw new DOMException("refused", "SecurityError"); };
  for (const name of WHAT) Object.defineProperty(window, name, { get: refuse });
"""

NO_WORKER = """
  navigator.serviceWorker.register = async () => {
    throw new DOMException("refused", "NotSupportedError");
  };
"""


def expect_all_else_works(page: Page) -> None:
    """Search, the dark switch and a sheet."""
    page.get_by_role("button", name="Light or dark").click()
    page.get_by_role("radio", name="Dark").check()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    page.keyboard.press("Escape")
    page.locator("[data-open-search]:visible").first.click()
    page.keyboard.type("voltage drop")
    expect(page.locator(".md-search-result__link").first).to_be_visible()
    page.keyboard.press("Escape")


def test_where_the_browser_refuses_to_store_that_is_said_and_all_else_works(browser, server):
    with another_page(browser, server) as page:
        what = ["localStorage", "sessionStorage", "indexedDB", "caches"]
        page.add_init_script(NO_WORKER + ALL_REFUSED.replace("WHAT", repr(what)))
        page.goto(server.url + f"checks/{RUN}/")
        expect_said(page, REFUSED)
        sheet = Sheet(page, RUN)
        sheet.expect_worked()
        sheet.box("current").fill("45")
        sheet.expect_answer(usual(RUN, current="45 A"))
        expect_all_else_works(page)


def test_where_the_worker_may_not_store_that_is_said(place):
    refused = 'caches.open = async () => { throw new DOMException("refused", "SecurityError"); };'
    place.edit_worker('"use strict";', f'"use strict"; {refused}')
    page = place.open()
    expect_said(page, REFUSED)
    assert not [path for path in place.asked() if path.endswith(".bin")], (
        "nothing is fetched in vain"
    )


def test_a_saved_site_that_has_no_more_room_goes_on_from_the_network(place):
    page = place.open_saved()
    page.evaluate("() => caches.delete('lugwise-files')")
    storage = place.context.new_cdp_session(page)
    quota = {"origin": place.server.url.rstrip("/"), "quotaSize": 1}
    storage.send("Storage.overrideQuotaForOrigin", quota)
    page.goto(place.server.url + f"checks/{RUN}/")
    expect(page.locator("h1")).to_be_visible()
    expect(line_of(page)).to_contain_text("there is not enough room left", timeout=60_000)
