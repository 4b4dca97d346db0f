"""What a reader's program is told: the tree of names and roles that the browser makes of a page."""

from itertools import pairwise

import pytest
from playwright.sync_api import Page, expect

from tests.browser.sheet_helpers import open_sheet, reply_to, usual
from tests.browser.tools import VIEWPORTS

PAGES = (
    "",
    "checks/fuse-choice/",
    "checks/joint-sheet/",
    "checks/find-fault/",
    "van/",
    "practice/",
)
BOXES = {"textbox", "searchbox", "combobox", "listbox", "spinbutton", "slider", "radio", "checkbox"}
PRESSED = BOXES | {"button", "link", "tab", "switch", "menuitem"}
NAMED = PRESSED | {"dialog", "region", "navigation", "radiogroup", "img", "image", "tabpanel"}
LISTEN = """() => {
    window.said = [];
    const live = "[role=status], [role=alert], [role=log], output, [aria-live]";
    for (const place of document.querySelectorAll(live)) {
        let before = place.textContent;
        new MutationObserver(() => {
            const words = place.textContent;
            if (words.trim() && words !== before) window.said.push(words.trim());
            before = words;
        }).observe(place, { childList: true, characterData: true, subtree: true });
    }
}"""


@pytest.fixture
def viewport():
    """A phone's: names do not depend on the window."""
    return VIEWPORTS["phone"]


def nodes(page: Page) -> list[tuple[str, str, dict]]:
    """Return role, name and properties of each thing in the browser's own tree."""
    session = page.context.new_cdp_session(page)
    tree = session.send("Accessibility.getFullAXTree")["nodes"]
    session.detach()
    return [
        (
            node["role"]["value"],
            node.get("name", {}).get("value", "").strip(),
            {one["name"]: one["value"].get("value") for one in node.get("properties", ())},
        )
        for node in tree
        if not node["ignored"]
    ]


@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.strip("/") or "home")
def test_everything_that_is_pressed_or_filled_in_has_a_name(still, server, path):
    still.goto(server.url + path)
    still.evaluate("() => document.querySelectorAll('details').forEach((one) => (one.open = true))")
    found = nodes(still)
    assert {"heading", "link", "button", "main"} <= {role for role, _, _ in found}
    assert not [role for role, name, _ in found if role in NAMED and not name]
    levels = [properties["level"] for role, _, properties in found if role == "heading"]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(deeper <= above + 1 for above, deeper in pairwise(levels))
    assert sum(role == "main" for role, _, _ in found) == 1


@pytest.mark.one_visit
def test_a_box_says_its_label_and_what_is_wrong_with_it(page, server):
    sheet = open_sheet(page, server, "wire-drop")
    sheet.type("current", "abc")
    expect(sheet.box("current")).to_have_attribute("aria-invalid", "true")
    (box,) = [one for one in nodes(page) if one[:2] == ("textbox", "Current")]
    assert box[2]["invalid"] == "true"


@pytest.mark.one_visit
def test_one_place_alone_speaks_of_an_answer(page, server):
    sheet = open_sheet(page, server, "wire-drop")
    page.evaluate(LISTEN)
    texts = usual("wire-drop", current="45 A")
    sheet.box("current").fill("45")  # at once: each key alone may be answered
    sheet.expect_answer(texts)
    said = reply_to("wire-drop", texts)["status"]
    page.wait_for_function("(said) => window.said.includes(said)", arg=said)
    page.wait_for_timeout(500)  # for whatever else would speak
    told = page.evaluate("window.said")
    # A slow answer is said to be on its way, in the same place.
    assert [words for words in told if not words.startswith("Calculating")] == [said], told
