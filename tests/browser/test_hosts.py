"""Hosts of other people: the first visit works and is kept, whatever types a host gives files."""

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import of_profile
from tests.browser.place import SAVED, line_of
from tests.browser.sheet_helpers import Sheet, usual
from tests.browser.tools import VIEWPORTS, Server, Watch

RUN = "wire-drop"


@pytest.mark.parametrize("host", ["plain", "careless"])
def test_the_first_visit_works_and_is_kept_in_a_folder_of_any_host(host, site, tmp_path, browser):
    (tmp_path / "of" / "ours").parent.mkdir()
    (tmp_path / "of" / "ours").symlink_to(site)
    server = Server(tmp_path, "tests.browser.plain_server", LUGWISE_TEST_HOST=host)
    context = browser.new_context(**of_profile(VIEWPORTS["phone"], "allow"))
    watch = Watch(context, server.url)
    try:
        page = context.new_page()
        page.goto(f"{server.url}of/ours/checks/{RUN}/")
        Sheet(page, RUN).expect_worked()
        expect(line_of(page)).to_have_text(SAVED, timeout=60_000)
        server.kill()
        page.reload()
        sheet = Sheet(page, RUN)
        sheet.expect_worked()
        sheet.type("current", "20")
        sheet.expect_answer(usual(RUN, current="20 A"))
    finally:
        context.close()
        server.kill()
    watch.check()
