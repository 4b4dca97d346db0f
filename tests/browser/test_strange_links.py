"""Links drawn at random: no script, no request, no page without its sheet, no exception but ours.

Only what hangs fails a test; pauses and times are told at the end of a run. In `soak` 10,000 links
are opened, one in ten of them cold.
"""

from statistics import median

from playwright.sync_api import Page

import calc
from tests.browser.sheet_helpers import Sheet, another_page, open_sheet
from tests.browser.strange_links import NOTE, OPEN, UNHARMED, is_heading, strange_link, told
from tests.counts import chance, often

IN_PLACE, COLD = often(40, 9_000), often(2, 1_000)
PACE = 55  # milliseconds a link: of more the browser takes no notice


WATCH = (
    f"({NOTE})();"
    + """
  window.longest = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries())
      window.longest = Math.max(window.longest, duration);
  }).observe({ type: "longtask", buffered: true });
"""
)


def expect_unharmed(page: Page, link: str) -> None:
    bad = page.evaluate(UNHARMED)
    assert not bad, (bad, link[:2_000])


def test_strange_links_in_place_are_read_as_on_a_desk_and_harm_nothing(
    browser, server, record_property
):
    times, pauses = [], []
    draw = chance("strange links")
    names = draw.sample(calc.worksheets(), often(2, len(calc.worksheets())))
    with another_page(browser, server, service_workers="block") as page:
        page.add_init_script(WATCH)
        for name in names:
            sheet = open_sheet(page, server, name)
            for _ in range(IN_PLACE // len(names)):
                link = strange_link(draw, name)
                if is_heading(link):
                    continue
                written, took = page.evaluate(OPEN, [link, PACE])
                assert written, f"no reply to {link[:2_000]!r}"
                read = page.evaluate("() => location.hash")  # as the browser writes it
                assert written.partition("#")[2] == told(read[1:], name), link[:2_000]
                expect_unharmed(page, link)
                times.append(took)
            assert sheet.root.is_visible()
            pauses.append(page.evaluate("() => window.longest"))
    record_property("measured", _told("in place", times, pauses))


def test_strange_links_that_are_opened_cold_harm_nothing(browser, server, record_property):
    times, pauses = [], []
    draw = chance("cold links")
    with another_page(browser, server, service_workers="block") as page:
        page.add_init_script(WATCH)
        for _ in range(COLD):
            name = draw.choice(calc.worksheets())
            link = strange_link(draw, name)
            page.goto("about:blank")
            page.goto(f"{server.url}checks/{name}/#{link}")
            Sheet(page, name).expect_live()
            expect_unharmed(page, link)
            times.append(page.evaluate("() => performance.now()"))
            pauses.append(page.evaluate("() => window.longest"))
    record_property("measured", _told("cold", times, pauses))


def _told(way: str, times: list[float], pauses: list[float]) -> str:
    return (
        f"{len(times)} strange links {way}: median {median(times):.0f} ms, worst "
        f"{max(times):.0f} ms; the page's longest pause {max(pauses):.0f} ms."
    )
