"""Fixtures for tests in a real browser: the built site, a server process, watched pages.

`page` opens nothing by itself: `page.goto(server.url)` first. Every page, in every test, must keep
its console clean and ask nothing of any other origin; that is asserted when the test ends.
"""

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

from tests.browser.place import Place
from tests.browser.tools import CHROMIUM, NO_PYTHON, PROJECT, VIEWPORTS, Server, Watch

LEFT_OUT = {
    f"test_{engine}.py": f"{variable}=none"
    for engine, variable in (("firefox", "LUGWISE_FIREFOX"), ("webkit", "LUGWISE_WEBKIT_DRIVER"))
    if os.environ.get(variable) == "none"
}
"""Files that are not run, where someone has none of that engine and says so."""

collect_ignore = list(LEFT_OUT)


def pytest_terminal_summary(terminalreporter) -> None:
    for file, wish in LEFT_OUT.items():
        terminalreporter.write_line(f"NOT RUN: tests/browser/{file}, because of {wish}.")


@pytest.fixture(scope="session")
def site() -> Path:
    """The folder of the built site; built now if it is not there."""
    folder = PROJECT / "site"
    if not (folder / "index.html").is_file():
        subprocess.run([sys.executable, "-m", "build_scripts.site"], cwd=PROJECT, check=True)
    return folder


@pytest.fixture(scope="session")
def server(site: Path) -> Iterator[Server]:
    """A server for the built site that all tests share: do not kill it, do not write to it."""
    server = Server(site)
    yield server
    server.kill()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium, one for all tests."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(**CHROMIUM)
        yield browser
        browser.close()


LONGEST = (
    "webkit", "firefox", "access", "offline", "van_kept", "van", "failures", "start_ladder",
    "faults", "moving", "silence", "links", "sheet", "print", "client", "remembered",
    "hostile_links", "keyboard", "reading", "rows", "cases", "archives", "strange_links",
    "long_visits", "editions", "hosts", "practice", "shell", "tree", "pages", "stages",
    "repository", "package", "search", "spoken", "rows_paper", "install", "wall", "diagram",
)  # fmt: skip
"""The files that take longest, the longest first, by the processor's time."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the longest files first, so that no process is left with one when the others have ended.

    A file of this folder that is not in the list may be long, and comes before them.
    """

    def place(item: pytest.Item) -> int:
        name = item.path.stem.removeprefix("test_")
        if name in LONGEST:
            return LONGEST.index(name)
        return -1 if item.path.parent.name == "browser" else len(LONGEST)

    items.sort(key=place)


PASSED = pytest.StashKey[bool]()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item, call):
    """Note whether a test's own part passed, for the fixtures that end after it."""
    report = yield
    if report.when == "call":
        item.stash[PASSED] = report.passed
    return report


def of_profile(viewport: dict[str, int], service_workers: str) -> dict:
    """Return the options of a fresh profile."""
    return {
        "viewport": viewport,
        "locale": "en-GB",
        "reduced_motion": "reduce",
        "service_workers": service_workers,
    }


@pytest.fixture(params=VIEWPORTS.values(), ids=VIEWPORTS.keys())
def viewport(request) -> dict[str, int]:
    """The window's size: every test that uses it runs on a phone's and on a desktop's."""
    return request.param


@pytest.fixture
def service_workers(request) -> str:
    """Blocked, or each test would save the whole site anew, but where a test is about `saving`."""
    return "allow" if request.node.get_closest_marker("saving") else "block"


@pytest.fixture
def fresh_page(browser: Browser, server: Server, viewport, service_workers: str) -> Iterator[Page]:
    """A watched page in a fresh profile, at each viewport."""
    context = browser.new_context(**of_profile(viewport, service_workers))
    watch = Watch(context, server.url)
    yield context.new_page()
    context.close()
    watch.check()


@pytest.fixture
def page(request, viewport) -> Page:
    """The page of a test: a fresh one, or that of the visit in a file marked `one_visit`."""
    one_visit = request.node.get_closest_marker("one_visit")
    return request.getfixturevalue("visit" if one_visit else "fresh_page")


Visits = dict[str, tuple[Page, Watch]]


@pytest.fixture(scope="module")
def visits(browser: Browser, server: Server) -> Iterator[Visits]:
    """The pages that go on through a file's tests, by the script with which they begin."""
    visits: Visits = {}
    yield visits
    for page, _ in visits.values():
        page.context.close()


@pytest.fixture
def visit(request, browser: Browser, server: Server, viewport, visits) -> Iterator[Page]:
    """A watched page that goes on through the tests of a file, so that Python starts in it once.

    `open_sheet` comes to a sheet there as a reader does who moves about the site. After a test that
    fails the next one gets a new page.
    """
    yield from going_on(request, browser, server, viewport, visits)


@pytest.fixture
def still(request, browser: Browser, server: Server, viewport, visits) -> Iterator[Page]:
    """A watched page that goes on, in which Python never starts: what stands there was built."""
    yield from going_on(request, browser, server, viewport, visits, NO_PYTHON)


def going_on(
    request, browser: Browser, server: Server, viewport, visits: Visits, script: str = ""
) -> Iterator[Page]:
    """Yield the page of a file that begins with `script`; it goes on only if all was well."""
    if script not in visits:
        context = browser.new_context(**of_profile(viewport, "block"))
        if script:
            context.add_init_script(script)
        watch = Watch(context, server.url)
        visits[script] = context.new_page(), watch
    page, watch = visits.pop(script)
    page.set_viewport_size(viewport)
    page.emulate_media(media="null", color_scheme="light")
    yield page
    if request.node.stash.get(PASSED, False) and not watch.errors and not watch.outside:
        visits[script] = page, watch
    else:
        page.context.close()
    watch.check()


@pytest.fixture
def place(site, tmp_path, browser, viewport) -> Iterator[Place]:
    """A copy of the site with a server that fails on demand, in a fresh profile of the browser."""
    place = Place(site, tmp_path, browser, viewport)
    yield place
    place.close()


@pytest.fixture(scope="module")
def saved(site, tmp_path_factory, browser) -> Iterator[Place]:
    """A place that is saved whole and whose server has gone for good."""
    saved = Place(site, tmp_path_factory.mktemp("saved"), browser, VIEWPORTS["phone"])
    saved.open_saved().close()
    saved.server.kill()
    yield saved
    saved.close()
