"""A live sheet as its reader meets it, and what Python on this machine says to the same texts."""

import re
import tomllib
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Locator, Page, expect

import calc
from calc.worksheet.link import write
from tests.browser.tools import VIEWPORTS, Server, Watch
from tests.whole import whole_reply

expect.set_options(timeout=20_000)  # two slow cores, and a Python that starts in the page
STARTING = 90_000  # milliseconds for that Python's start

STALE = re.compile(r"^The answer below is for the (default|previous) values\.$")

NONE_YET = "There is no answer yet: correct the marked values."
BY_LINK = "Calculating with the values of this link …"

FORGET = """() => {
    for (const name of Object.keys(localStorage))
        if (name.startsWith("lugwise.")) localStorage.removeItem(name);
}"""

FOLLOW = """(address) => {
    document.querySelector("article").dataset.old = "";
    const link = document.body.appendChild(document.createElement("a"));
    link.href = address;
    link.click();
    link.remove();
}"""
"""Presses a link to an address of the site; `MOVED` tells when its page is there."""

MOVED = "() => Boolean(document.querySelector('article:not([data-old])'))"

ATTACK = "<img src=x onerror=window.pwned=1>"

EVERY_FIELD: dict[str, dict[str, str]] = tomllib.loads(
    Path(__file__).with_name("every_field.toml").read_text("utf-8")
)
"""For each worksheet a text for each of its fields, hardly one of them the usual one."""

ONE_OF_EACH = ("runtime", "fuse-choice", "joint-sheet", "find-fault", "week-ahead")
"""Sheets that between them have every kind of field, result and fold.

What the page does with a sheet depends on these kinds only, since one script and one renderer serve
all; each sheet by itself is tried on this machine's Python, by the contract tests.
"""

OPEN_FOLDS = """(box) => {
    for (let fold = box.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
}"""  # noqa: E501

BAD_TEXTS = (
    "abc",
    "",
    "   ",
    "-5",
    "1e999",
    "1,234",
    "10**10**8",
    "__import__('os')",
    "1" * 41,
    "🔋",
    "12 V 5",
    "\u202e\u202d",
    "\u200fabc",
    ATTACK,
)
"""Texts that the current of a run, and most other fields, must refuse."""


def usual(name: str, **changes: str) -> dict[str, str]:
    """Return the texts that stand in a sheet's form when it opens, with `changes`."""
    fields = calc.find(name).fields
    return {field.id: field.default for field in fields if field.default} | changes


def link_of(name: str, rest: str) -> str:
    """Return a fragment as someone may write it by hand, with today's set of defaults."""
    return f"#v={calc.find(name).default_set}&{rest}"


def reply_to(name: str, texts: Mapping[str, str], **more: object) -> dict:
    """Return what this machine's Python replies to a form that holds `texts`."""
    return whole_reply({"sheet": name, "values": dict(texts), **more})


def message(name: str, field: str, text: str) -> str:
    """Return the sentence with which the library refuses `text` in `field`."""
    try:
        calc.work(name, {field: text})
    except calc.InputError as error:
        return error.message
    raise AssertionError(f"{name} takes {text!r} as its {field}")


def link_to(name: str, texts: Mapping[str, str]) -> str:
    """Return the fragment of the link that holds `texts`."""
    return "#" + write(calc.find(name), texts)


def exactly(address: str) -> re.Pattern:
    """Return a pattern for an address that ends in `address`."""
    return re.compile(re.escape(address) + "$")


class Sheet:
    """The live sheet on a page: its parts by the names that the markup gives them."""

    def __init__(self, page: Page, name: str) -> None:
        self.page, self.name = page, name
        self.root = page.locator(f"[data-sheet={name}]")
        self.answer = self.part("answer")
        self.figure = self.part("key").locator(".lw-headline .lw-figure")
        self.working = self.answer.locator("details[data-fold=working]")
        self.state = self.part("standing")
        self.notes = self.part("notes")
        self.more = self.part("more")

    def part(self, name: str) -> Locator:
        return self.root.locator(f"[data-{name}]")

    def field(self, name: str) -> Locator:
        return self.root.locator(f"[data-field={name}]")

    def box(self, name: str) -> Locator:
        return self.root.locator(f"[name={name}]")

    def control(self, name: str) -> Locator:
        """What bears a field's marks: its box, its list, or the group of its buttons."""
        return self.root.locator(f"[id='{self.name}-{name}']")

    def button(self, name: str, option: str) -> Locator:
        """One of a field's buttons, by the choice that it stands for."""
        return self.control(name).locator(f"input[value='{option}']")

    def expect_holds(self, name: str, text: str) -> None:
        """Wait until `text` stands in a field, or is the choice whose button is pressed."""
        if self.control(name).get_attribute("role") == "radiogroup":
            expect(self.button(name, text)).to_be_checked()
        else:
            expect(self.box(name)).to_have_value(text)

    def rows(self, name: str) -> Locator:
        return self.field(name).locator("[data-list] [data-row]")

    def cell(self, name: str, row: int, column: str) -> Locator:
        """The control of a list in a row counted from 1."""
        return self.root.locator(f"[id='{self.name}-{name}-{row}-{column}']")

    def picker(self, name: str) -> Locator:
        return self.field(name).locator("[data-unit]")

    def error(self, name: str) -> Locator:
        return self.field(name).locator("[data-error]")

    def note(self, name: str) -> Locator:
        return self.field(name).locator("[data-note]")

    @property
    def seq(self) -> int:
        """How many answers the sheet has shown."""
        return int(self.answer.get_attribute("data-seq"))

    def unfold(self) -> None:
        """Open the fold of seldom changed figures, if the sheet has one and it is shut."""
        if self.more.count() and self.more.get_attribute("open") is None:
            self.more.locator("summary").click()

    def type(self, field: str, text: str) -> None:
        """Type `text` key by key instead of what stands in the box, in a fold or not."""
        self.box(field).evaluate(OPEN_FOLDS)
        self.box(field).select_text()
        self.page.keyboard.type(text)

    def expect_live(self) -> None:
        expect(self.page.locator("html")).to_have_attribute(
            "data-lugwise", "ready", timeout=STARTING
        )

    def expect_worked(self) -> None:
        """Wait until the answer is one worked in the page, not the one built into it."""
        expect(self.answer).not_to_have_attribute("data-seq", "0", timeout=STARTING)
        self.expect_filled()

    def expect_filled(self) -> None:
        """Wait until what is folded away below the answer is there too."""
        expect(self.working.locator("> :not(summary)")).to_be_attached()

    def expect_answer(self, texts: Mapping[str, str], **more: object) -> None:
        """Wait until the whole answer, word for word, is this machine's for `texts`."""
        reply = reply_to(self.name, texts, **more)
        assert reply["answer"], f"this machine refuses {texts}: {reply['status']}"
        expect(self.answer).to_have_text(self.text_of(reply["answer"]))
        for part in ("gist", "key"):
            expect(self.part(part)).to_have_text(self.text_of(reply[part]))
        expect(self.state).to_be_hidden()

    def expect_refused(self, field: str, sentence: str, typed: str) -> None:
        """Wait until `field` is marked wrong with `sentence`, keeping what was typed."""
        expect(self.error(field)).to_have_text(sentence)
        expect(self.error(field)).to_be_visible()
        expect(self.control(field)).to_have_attribute("aria-invalid", "true")
        self.expect_holds(field, typed)

    def expect_stale(self) -> None:
        expect(self.state).to_have_text(STALE)
        expect(self.root).to_contain_class("is-stale")

    def expect_no_answer(self) -> None:
        """Wait until the values of a link are told to be wrong, with no other answer in sight."""
        expect(self.state).to_have_text(NONE_YET)
        self.expect_none_in_sight()

    def expect_none_in_sight(self) -> None:
        """Wait until no answer is seen, neither as it is nor struck out."""
        for part in (self.part("key"), self.answer):
            expect(part).to_be_hidden()
        expect(
            self.part("gist").locator(".lw-gist-words, .lw-verdict").filter(visible=True)
        ).to_have_count(0)
        expect(self.root).not_to_contain_class("is-stale")

    def expect_fine(self, field: str) -> None:
        expect(self.error(field)).to_be_hidden()
        expect(self.control(field)).to_have_attribute("aria-invalid", "false")
        expect(self.state).to_be_hidden()
        expect(self.root).not_to_contain_class("is-stale")

    def text_of(self, html: str) -> str:
        return self.page.evaluate(
            "(html) => new DOMParser().parseFromString(html, 'text/html').body.textContent", html
        )


def open_sheet(page: Page, server: Server, name: str, fragment: str = "") -> Sheet:
    """Open a guide and wait until its sheet has given its first live answer."""
    address = f"{server.url}checks/{name}/"
    sheet = Sheet(page, name)
    if page.url.startswith(server.url):
        # By way of another page: from the same guide a new fragment alone would open nothing anew.
        move(page, f"{server.url}licences/")
        page.evaluate(FORGET)  # each test begins on a device that remembers nothing
        move(page, address + fragment)
    else:
        page.goto(address + fragment)
    sheet.expect_live()
    replied = "[data-answer]:not([data-seq='0']), [data-answer][aria-busy='false']"
    expect(sheet.root.locator(replied).first).to_be_attached()
    sheet.expect_filled()
    return sheet


def follow(page: Page, name: str) -> Sheet:
    """Press the first link in a guide's text that leads to another guide."""
    page.locator(f"article a[href$='{name}/']").first.click()
    return Sheet(page, name)


def move(page: Page, address: str) -> None:
    """Follow a link to `address` within the site, on which a Python that has started stays."""
    page.evaluate(FOLLOW, address)
    page.wait_for_function(MOVED)


def never(error: str) -> bool:
    """No error in the console is allowed."""
    return False


@contextmanager
def another_page(
    browser: Browser, server: Server, allow: Callable[[str], bool] = never, **options
) -> Iterator[Page]:
    """A watched page in a fresh profile of its own: another person's phone.

    `allow` tells which errors in the console the test itself brings about.
    """
    context = browser.new_context(**{"viewport": VIEWPORTS["phone"], "locale": "en-GB", **options})
    watch = Watch(context, server.url)
    try:
        yield context.new_page()
    finally:
        # What is still being served to a page that goes needs no reply.
        context.unroute_all(behavior="ignoreErrors")
        context.close()
    watch.check(allow)
