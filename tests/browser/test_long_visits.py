"""A visit that goes on: sheet after sheet, and half a day."""

import contextlib
import re
from datetime import timedelta

import pytest
from playwright.sync_api import Browser, Error, Page, expect

import calc
from calc.van.demos import demo
from calc.van.link import pack
from tests.browser.sheet_helpers import STARTING, Sheet, another_page, move, open_sheet, usual
from tests.browser.tools import VIEWPORTS
from tests.browser.van_page import (
    add,
    begin,
    box,
    empty,
    expect_kept,
    expect_lengths,
    kept,
    unfold_circuit,
)
from tests.counts import chance, often

RUN = "wire-drop"

MEASURED = "self.measured = () => ({ python: python._module.HEAPU8.length });"
"""A line for Python's worker, by which it says how large the memory of its Python is."""


def measure_worker(page: Page) -> None:
    """Serve the page a worker that can be asked how much memory it has."""

    def serve(route) -> None:
        body = f"{route.fetch().text()}\n{MEASURED}\n"
        route.fulfill(body=body, content_type="text/javascript")

    page.context.route("**/assets/worker.js", serve)


def megabytes(page: Page) -> tuple[float, float, int]:
    """Return Python's memory, that of the page's script, and how many nodes are held.

    The first two in MB, once all rubbish is gone.
    """
    [worker] = [one for one in page.workers if one.url.endswith("/assets/worker.js")]
    python = worker.evaluate("() => self.measured().python")
    session = page.context.new_cdp_session(page)
    session.send("Performance.enable")
    left = []
    for _ in range(5):  # what a frame or a timer still holds goes with a later one
        session.send("HeapProfiler.collectGarbage")
        found = session.send("Performance.getMetrics")["metrics"]
        script = next(one["value"] for one in found if one["name"] == "JSHeapUsedSize")
        left.append((script / 1e6, session.send("Memory.getDOMCounters")["nodes"]))
        page.wait_for_timeout(300)
    session.detach()
    return python / 1e6, min(script for script, _ in left), min(nodes for _, nodes in left)


def change(sheet: Sheet, count: int) -> None:
    """Change one value that many times, each time to another."""
    sheet.page.evaluate(
        """async (count) => {
            const answer = document.querySelector("[data-answer]");
            const box = document.querySelector("[data-form] input[type=text]");
            const first = box.value;
            for (let n = 0; n < count; n += 1) {
                const before = answer.dataset.seq;
                box.value = n % 2 ? first : `${first}${n % 10}`;
                box.dispatchEvent(new Event("input", { bubbles: true }));
                // Another value may be beyond what is taken, which is said beside it.
                const isRefused = () => n % 2 === 0 && box.ariaInvalid === "true";
                for (let t = 0; answer.dataset.seq === before && !isRefused(); t += 1) {
                    if (t === 2_000) throw new Error(`no reply to ${box.value}`);
                    await new Promise((go) => setTimeout(go, 10));
                }
            }
        }""",
        count,
    )


def test_sheet_after_sheet_leaves_memory_flat(browser: Browser, server, record_property):
    """A few sheets, twice; in a long night twenty, three times. Only the first round may add."""
    draw = chance("sheet after sheet")
    names = draw.sample(calc.worksheets(), often(3, 20))
    rounds = []
    with another_page(browser, server, service_workers="block") as page:
        measure_worker(page)
        open_sheet(page, server, RUN)
        for _ in range(often(2, 3) + 1):
            for name in names:
                move(page, f"{server.url}checks/{name}/")
                sheet = Sheet(page, name)
                sheet.expect_worked()
                change(sheet, often(2, 20))
            move(page, f"{server.url}licences/")
            rounds.append(megabytes(page))
    (python, script, nodes), (python_last, script_last, nodes_last) = rounds[-2], rounds[-1]
    record_property("measured", f"Memory after each round of {len(names)} sheets: {rounds}.")
    assert python_last <= python, rounds
    assert script_last < script + 1, rounds
    assert nodes_last < nodes * 1.2 + 500, rounds


def test_a_page_left_open_for_half_a_day_answers_at_once(browser: Browser, server):
    with another_page(browser, server, service_workers="block") as page:
        page.clock.install()
        sheet = open_sheet(page, server, RUN)
        for hour in range(12):
            page.clock.fast_forward(timedelta(hours=1) // timedelta(milliseconds=1))
            page.clock.run_for(5_000)
            if hour in (0, 11):
                current = f"{40 + hour}"
                sheet.type("current", current)
                sheet.expect_answer(usual(RUN, current=f"{current} A"))
        page.clock.run_for(1_000)
        expect(page).to_have_url(re.compile("current=51A"))


@pytest.fixture
def viewport():
    """A phone's: it is telephones that end tabs."""
    return VIEWPORTS["phone"]


def of_vans(visit: Page, server) -> Page:
    """Return the page of vans, with none on the device."""
    empty(visit, f"{server.url}van/")
    return visit


def test_a_tab_that_the_system_ended_is_found_again_as_it_was(visit, server):
    """A telephone ends tabs that are not in use, without a word to them."""
    van = of_vans(visit, server)
    begin(van, "Fern")
    add(van, "fridge", "3 m")
    expect_lengths(van, ["3 m"])
    sheet, held = van.context.new_page(), van.context.new_page()
    sheet.goto(f"{server.url}checks/wire-drop/")
    sheet.locator("[name=current]").fill("41")
    expect(sheet).to_have_url(re.compile("current=41A"), timeout=STARTING)
    held.goto(f"{server.url}van/")
    unfold_circuit(held)
    box(held, "circuits[1].length").fill("5")
    expect_lengths(van, ["5 m"])
    addresses = [sheet.url, held.url]
    for ended in (sheet, held):
        with ended.expect_event("crash"), contextlib.suppress(Error):
            ended.goto("chrome://crash")
        ended.close()
    for tab, address in zip((sheet, held), addresses, strict=True):
        again = van.context.new_page()
        again.goto(address)
        if tab is sheet:
            expect(again.locator("[name=current]")).to_have_value("41", timeout=STARTING)
            expect(again.locator("[data-gist]")).to_contain_text("V", timeout=STARTING)
        else:
            line = again.locator("[data-line='circuits[1]']")
            expect(line).to_contain_text("5\u00a0m", timeout=STARTING)
        again.close()
    expect_lengths(van, ["5 m"])


def test_links_of_two_vans_in_one_visit_never_mix(visit, server):
    page = of_vans(visit, server)
    fragments = {name: f"#{pack(demo(name))}" for name in ("marram", "ten-mistakes")}
    circuits = {name: len(demo(name).all("circuits")) for name in fragments}
    assert len(set(circuits.values())) == 2
    for name in (*fragments, *fragments):
        page.evaluate("(end) => (location.hash = end)", fragments[name])
        expect(page.locator("[data-which]")).to_contain_text(demo(name).name, timeout=STARTING)
        expect(page.locator("[data-list-of=circuits] > details")).to_have_count(circuits[name])
        page.get_by_role("button", name="Keep it").click()
        expect_kept(page)
    assert sorted(one["name"] for one in kept(page)) == sorted(
        2 * [demo(n).name for n in fragments]
    )
