"""Putting the site on the home screen, and asking the browser to keep its files."""

import json

import pytest
from playwright.sync_api import expect

from tests.browser.tools import CHROMIUM, NO_PYTHON, VIEWPORTS, Server

pytestmark = pytest.mark.saving


@pytest.fixture
def viewport():
    """A phone's: the manifest is the same for every window."""
    return VIEWPORTS["phone"]


@pytest.fixture
def page(fresh_page):
    """A page on which Python does not start: none of this depends on it."""
    fresh_page.add_init_script(NO_PYTHON)
    return fresh_page


def test_the_browser_finds_the_manifest_whole(page, server):
    page.goto(server.url)
    found = page.context.new_cdp_session(page).send("Page.getAppManifest")
    assert found["url"] == server.url + "manifest.webmanifest"
    assert found["errors"] == []


def test_every_address_in_the_manifest_is_there_wherever_the_site_lives(site):
    manifest = json.loads((site / "manifest.webmanifest").read_text())
    entries = manifest["icons"] + manifest["shortcuts"]
    addresses = [entry.get("src") or entry["url"] for entry in entries]
    for address in [*addresses, manifest["start_url"], manifest["scope"], manifest["id"]]:
        assert address.startswith("./"), address
        found = site / address
        assert found.is_file() or (found / "index.html").is_file(), address
    assert [(icon["sizes"], icon["purpose"]) for icon in manifest["icons"]] == [
        ("192x192", "any"),
        ("512x512", "any"),
        ("512x512", "maskable"),
    ]


def test_a_browser_could_install_it(browser, server: Server, tmp_path):
    # An ordinary test context counts as a private window, which installs nothing.
    context = browser.browser_type.launch_persistent_context(tmp_path, **CHROMIUM)
    page = context.new_page()
    page.add_init_script(NO_PYTHON)
    page.goto(server.url)
    found = context.new_cdp_session(page).send("Page.getInstallabilityErrors")
    context.close()
    assert found["installabilityErrors"] == []


def test_the_install_button_is_there_only_after_the_browsers_own_offer(page, server):
    page.goto(server.url + "without-signal/")
    button = page.locator("[data-install] button")
    expect(page.locator("[data-offline-line]")).to_contain_text("Sav")
    expect(button).to_have_count(0)
    page.evaluate(
        """() => {
            const offer = new Event("beforeinstallprompt", { cancelable: true });
            offer.prompt = async () => { document.documentElement.dataset.prompted = "yes"; };
            dispatchEvent(offer);
        }"""
    )
    button.click()
    expect(page.locator("html")).to_have_attribute("data-prompted", "yes")
    expect(button).to_have_count(0)


def test_the_answer_to_the_wish_to_keep_the_files_is_shown(page, server):
    page.goto(server.url + "without-signal/")
    page.locator("[data-persist]").click()
    expect(page.locator("[data-persist] ~ output")).to_contain_text("The browser ")
