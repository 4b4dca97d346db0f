"""What a sheet says of an answer that is not that of its fields."""

import re

from playwright.sync_api import Locator, expect

from tests.browser.sheet_helpers import Sheet, reply_to, usual

DEFAULT = "The answer below is for the default values."
PREVIOUS = "The answer below is for the previous values."
CALCULATING = f"Calculating. {DEFAULT}"
AGAIN = f"The calculation stopped responding and is starting again. {DEFAULT}"
GIVEN_UP = (
    "The calculation stopped responding, and two restarts did not help. "
    f"{DEFAULT} Try again, or write your values down and reload the page."
)
UNSHOWN = (
    "The new answer could not be shown. "
    f"{PREVIOUS} Try again, or write your values down and reload the page."
)
NO_START = (
    f"The calculation could not start in this browser. {DEFAULT} Try again, or use another browser."
)
NO_FILE = (
    "A file of the calculation could not be loaded. "
    f"{DEFAULT} Check the connection, then try again."
)


def expect_marked(sheet: Sheet, busy: bool) -> None:
    """The old answer is seen to be none, and said to be none where it stands."""
    expect(sheet.root).to_contain_class("is-stale")
    expect(sheet.answer).to_have_attribute("aria-busy", str(busy).lower())
    expect_named_old(sheet.answer, "h2", "::after", "not for your values")
    expect_struck_out(sheet.part("key"))
    gist = sheet.part("gist")
    if gist.locator(".lw-gist-words").count():  # or else it says why there is no new answer
        expect_named_old(gist, "", "::before", "old values")
        expect_struck_out(gist)


def expect_named_old(place: Locator, tag: str, pseudo: str, word: str) -> None:
    """A word in `place` says that what stands there is not the answer."""
    said = "(e, [tag, pseudo]) => getComputedStyle(tag ? e.querySelector(tag) : e, pseudo).content"
    assert place.evaluate(said, [tag, pseudo]) == f'"{word}"'


def expect_struck_out(place: Locator) -> None:
    figure = place.locator(".lw-figure, .lw-gist-words").first
    assert figure.evaluate("(e) => getComputedStyle(e).textDecorationLine") == "line-through"


def expect_standing(sheet: Sheet, words: str) -> None:
    """The sentence above the answer, without the button that may follow it."""
    expect(sheet.state).to_be_visible()
    expect(sheet.state).to_have_text(re.compile(f"^{re.escape(words)}( Try again| Reload)?$"))


def again_button(sheet: Sheet) -> Locator:
    return sheet.state.get_by_role("button", name="Try again")


def built(sheet: Sheet) -> str:
    return sheet.text_of(reply_to(sheet.name, usual(sheet.name))["answer"])
