"""Three sheets and a van with the keyboard alone: what has the focus is seen, and never lost."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.sheet_helpers import STARTING, Sheet, open_sheet, usual
from tests.browser.tools import VIEWPORTS
from tests.browser.van_page import box

FOCUSED = """() => {
    const element = document.activeElement;
    if (!element || element === document.body) return "nothing has the focus";
    // A box that only a reader's program sees shows its focus on its label.
    const small = element.getBoundingClientRect().width < 5;
    const shown = (small && element.labels?.[0]) || element;
    const box = shown.getBoundingClientRect();
    const style = getComputedStyle(shown);
    const [x, y] = [box.x + Math.min(box.width, innerWidth - box.x) / 2, box.y + Math.min(box.height, 40) / 2];
    const top = document.elementFromPoint(x, y);
    const said = element.outerHTML.slice(0, 120);
    if (!shown.checkVisibility({ visibilityProperty: true, checkOpacity: true })) return `hidden: ${said}`;
    if (box.bottom <= 0 || box.top >= innerHeight) return `out of the window: ${said}`;
    if (!top || !(shown.contains(top) || top.contains(shown))) return `covered: ${said} by ${top?.outerHTML.slice(0, 90)}`;
    if (style.outlineStyle === "none" || parseFloat(style.outlineWidth) < 2) return `no outline: ${said}`;
    return "";
}"""  # noqa: E501
NAME_AND_PLACE = """() => {
    const element = document.activeElement;
    return [(element.labels?.[0] ?? element).innerText, Math.round(element.getBoundingClientRect().y)];
}"""  # noqa: E501
COMES_ABOVE = """async () => {
    const { steadily } = await import(new URL("../assets/parts.js", location.href).href);
    const [place, above, pressed] = ["section", "div", "button"].map((name) => document.createElement(name));
    document.querySelector("[data-van]").prepend(place);
    place.append(above, pressed);
    Object.assign(pressed, { type: "button", textContent: "Go to it" });
    pressed.focus();
    scrollTo(0, 0);
    steadily(place, () => (above.style.height = "3000px"));
    window.anew = () => steadily(place, () => place.replaceChildren(above, pressed.cloneNode(true)));
    window.empty = () => steadily(place, () => place.replaceChildren());
}"""  # noqa: E501
"""Something in the van's page has the focus, and what stands above it grows."""

SAID_OVER_IT = """() => {
    const [said, focused] = [document.querySelector("[data-said]"), document.activeElement];
    Object.assign(said, { hidden: false, textContent: "Something of several words is said. ".repeat(3) });
    focused.scrollIntoView({ block: "end" });
    const before = said.getBoundingClientRect();
    focused.blur();
    focused.focus();
    return before.top < focused.getBoundingClientRect().bottom;
}"""  # noqa: E501
"""Whether a message stood where the focus then came."""

FARTHEST = 45
"""How many presses of the tab key a reader may need from one thing to the next that is worked."""


@pytest.fixture
def viewport():
    """A phone's, with its keyboard: the smaller window hides more."""
    return VIEWPORTS["phone"]


class Keys:
    """Hands that have no mouse and no finger."""

    def __init__(self, page: Page) -> None:
        self.page = page

    def press(self, *keys: str) -> None:
        for key in keys:
            self.page.keyboard.press(key)

    def type(self, text: str) -> None:
        self.page.keyboard.type(text)

    def to(self, target: str, back: bool = False) -> None:
        """Press the tab key until what matches `target` has the focus, which is always seen."""
        passed = []
        for _ in range(FARTHEST):
            self.press("Shift+Tab" if back else "Tab")
            self.expect_seen()
            passed.append(self.page.evaluate(NAME_AND_PLACE))
            if self.page.evaluate("(target) => document.activeElement.matches(target)", target):
                return
        raise AssertionError(f"{target} is not among {passed}")

    def expect_seen(self) -> None:
        """Wait until what has the focus is seen: a list is made anew, a fold opens."""
        for _ in range(20):
            wrong = self.page.evaluate(FOCUSED)
            if not wrong:
                return
            self.page.wait_for_timeout(100)
        raise AssertionError(wrong)


@pytest.fixture
def keys(page) -> Keys:
    return Keys(page)


@pytest.mark.one_visit
def test_from_the_questions_to_an_answer_and_what_it_is_made_of(page, server, keys):
    page.goto(server.url)
    keys.to("a[href$='/checks/fuse-choice/']")
    keys.press("Enter")
    sheet = Sheet(page, "fuse-choice")
    sheet.expect_worked()
    keys.to("[name=current]")
    keys.type("45")
    changes = {"current": "45 A"}
    sheet.expect_answer(usual("fuse-choice", **changes))
    keys.expect_seen()
    keys.to("[name=insulation]")
    keys.press("ArrowDown")
    chosen = page.evaluate("document.activeElement.value")
    changes["insulation"] = chosen
    sheet.expect_answer(usual("fuse-choice", **changes))
    keys.expect_seen()
    keys.to("[name=current]", back=True)
    keys.to(".lw-sheet form summary")
    keys.press("Enter")
    keys.to("[data-more] :is(input, select), form details[open] :is(input, select)")
    keys.to("[data-fold=working] > summary")
    keys.press("Enter")
    expect(sheet.working).to_have_attribute("open", "")
    keys.to("[data-copy]")
    # A word of the glossary opens by its button, and Escape gives the focus back to it.
    keys.to(".lw-term")
    keys.press("Enter")
    expect(page.locator(":popover-open")).to_be_visible()
    keys.press("Escape")
    expect(page.locator(":popover-open")).to_have_count(0)
    keys.expect_seen()


@pytest.mark.one_visit
def test_a_list_grows_and_shrinks(page, server, keys):
    sheet = open_sheet(page, server, "joint-sheet")
    rows = sheet.rows("joints")
    before = rows.count()
    keys.to("[data-add]")
    keys.press("Enter")
    expect(rows).to_have_count(before + 1)
    keys.expect_seen()
    assert page.evaluate("!!document.activeElement.closest('[data-row]')")
    keys.type("spare")
    keys.press("Tab")
    keys.expect_seen()
    keys.to("[data-remove]")
    keys.press("Enter")
    expect(rows).to_have_count(before)
    keys.expect_seen()


@pytest.mark.one_visit
def test_a_fault_is_looked_for_step_by_step(page, server, keys):
    sheet = open_sheet(page, server, "find-fault")
    keys.to(".lw-symptoms a")
    for _ in range(3):
        before = sheet.answer.get_attribute("data-seq")
        keys.press("Enter")
        expect(sheet.answer).not_to_have_attribute("data-seq", before)
        keys.expect_seen()
        keys.to("[data-key] a")


@pytest.mark.one_visit
def test_a_van_is_begun_and_reviewed(page, server, keys):
    page.goto(f"{server.url}van/")
    expect(page.locator("[data-start]")).to_be_visible(timeout=STARTING)
    keys.to("[data-new-van]")
    keys.press("Enter")
    expect(box(page, "van.name")).to_be_focused(timeout=STARTING)
    keys.type("Heather")
    keys.to("[data-group=circuits] > summary")
    keys.press("Enter")
    keys.expect_seen()
    keys.to("[data-add=circuits]")
    keys.press("Enter")
    keys.expect_seen()
    keys.to("[data-ready-load]")
    keys.press("Enter")
    expect(box(page, "circuits[1].length")).to_be_focused()
    keys.expect_seen()
    keys.type("2 m")
    keys.press("Tab")
    keys.expect_seen()
    keys.to("[role=tab]", back=True)
    keys.press("ArrowRight")
    expect(page.locator("[data-tab=review]")).to_be_focused()
    keys.press("Enter")
    keys.expect_seen()
    expect(page.locator("[data-panel-review]")).to_be_visible()
    keys.to("[data-goto], [data-panel-review] summary")
    assert page.evaluate(SAID_OVER_IT)
    keys.expect_seen()
    keys.press("Enter")
    keys.expect_seen()


@pytest.mark.one_visit
def test_what_has_the_focus_stays_in_the_window_when_more_comes_above_it(page, server, keys):
    page.goto(f"{server.url}van/")
    page.evaluate(COMES_ABOVE)
    keys.expect_seen()
    page.evaluate("anew()")
    keys.expect_seen()
    assert page.evaluate("document.activeElement.textContent") == "Go to it"
    page.evaluate("empty()")
    assert page.evaluate("document.activeElement.localName") == "section"
