"""The site in Firefox."""

from build_scripts.engine_firefox import Firefox
from tests.browser.engine_tests import LINE, PRESS, RUN, EngineTests, Visit
from tests.browser.sheet_helpers import usual

REFUSES = {"network.cookie.cookieBehavior": 2}
"""As a reader sets it who wants nothing kept: neither storage nor a service worker."""


class TestFirefox(EngineTests):
    engine = Firefox


def test_where_storage_is_refused_that_is_said_and_search_and_sheets_work(server, tmp_path):
    with Firefox(tmp_path, REFUSES) as engine:
        visit = Visit(engine, server.url)
        visit.open_sheet(f"checks/{RUN}/")
        assert visit.ways == ["files"]
        said = "this browser refuses to store files. The site works while there is signal."
        engine.wait_for(f"() => ({LINE})().includes({said!r})")
        visit.type(RUN, "current", "45 A")
        visit.expect_answer(RUN, usual(RUN, current="45 A"))
        engine.run(PRESS, "[data-open-search]")
        engine.press(".lw-search [name=query]", "fuse keeps blowing")
        found = "() => document.querySelector('.md-search-result__link')?.getAttribute('href')"
        assert "checks/find-fault/" in engine.wait_for(found)
        assert all("Storage access is restricted" in one for one in engine.errors())
        assert not engine.trap.caught()
