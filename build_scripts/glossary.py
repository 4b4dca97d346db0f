"""The words of the trade: the page of all, and each explained where a page first uses it.

In a text the first use of a word becomes a button that opens its sentence (a popover, which needs
no script). Headings, links, labels and whatever else is pressed or copied stay as they are. The
words of a form are listed, folded, below its sheet.
"""

import re
import tomllib
import xml.etree.ElementTree as etree
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from markdown import Markdown
from markdown.treeprocessors import Treeprocessor
from markdown.util import AtomicString

from calc.render.html import Markup, el
from calc.worksheet.fields import Choice
from calc.worksheet.work import Worksheet

FILE = Path(__file__).with_suffix(".toml")

_LEFT_ALONE = {
    *(f"h{level}" for level in range(1, 7)),
    "a", "button", "code", "pre", "summary", "label", "th", "svg", "select", "input",
}  # fmt: skip
_TITLES = {"admonition-title", "lw-inline"}
_ENDS = re.compile(r"[,.;:!?)”]+")


@dataclass(frozen=True)
class Term:
    """A word, the other `forms` in which pages write it, and its one sentence."""

    name: str
    says: str
    forms: tuple[str, ...] = ()

    @property
    def id(self) -> str:
        """The word as a part of an address."""
        return re.sub(r"[^a-z0-9]+", "-", self.name.lower()).strip("-")

    @property
    def spellings(self) -> tuple[str, ...]:
        return (self.name, *self.forms)


@cache
def terms() -> tuple[Term, ...]:
    """Return every word, in the order of the alphabet."""
    rows = tomllib.loads(FILE.read_text("utf-8"))["term"]
    found = (Term(row["name"], row["says"], tuple(row.get("forms", ()))) for row in rows)
    return tuple(sorted(found, key=lambda term: term.name.lower()))


@cache
def _by_spelling() -> dict[str, Term]:
    return {_key(text): term for term in terms() for text in term.spellings}


def _key(text: str) -> str:
    """Return a spelling as it is compared: a word of capitals keeps them, others may begin so."""
    return text if text[1:].lower() != text[1:] else text.lower()


@cache
def _pattern() -> re.Pattern[str]:
    longest_first = sorted(_by_spelling(), key=len, reverse=True)
    words = "|".join(
        re.escape(text) if _key(text) != text.lower() else f"(?i:{re.escape(text)})"
        for text in longest_first
    )
    return re.compile(rf"(?<![\w·/-])(?:{words})(?![\w·/-])")


def found_in(text: str) -> Iterator[tuple[re.Match[str], Term]]:
    """Yield each word in a text, with its place."""
    for match in _pattern().finditer(text):
        known = _by_spelling()
        yield match, known.get(match.group()) or known[match.group().lower()]


def page_html() -> Markup:
    """Return the page of all words, by their first letter."""
    letters: dict[str, list[Term]] = {}
    for term in terms():
        letters.setdefault(term.name[0].upper(), []).append(term)
    jumps = (el("a", letter, href=f"#letter-{letter.lower()}") for letter in letters)
    parts = [el("nav", *jumps, class_="lw-letters", aria_label="Letters")]
    for letter, own in letters.items():
        place = f"letter-{letter.lower()}"
        # Sheets are found by these words. The theme leaves out a section by its heading.
        parts.append(el("h2", letter, id=place, data_search_exclude=True))
        parts.append(_list(own, ids=True))
    return Markup("".join(parts))


def words_html(sheet: Worksheet) -> Markup | None:
    """Return the words that a sheet's form and results use, folded; None if it uses none."""
    said = [sheet.question]
    for field in sheet.fields:
        said += [field.label, field.hint]
        said += [one.label for one in field.options] if isinstance(field, Choice) else []
    said += [result.label for result in sheet.results]
    own = {term.id: term for _, term in found_in(" | ".join(said))}
    if not own:
        return None
    named = sorted(own.values(), key=lambda term: term.name.lower())
    return el(
        "details",
        el("summary", f"Words used here ({len(named)})"),
        _list(named),
        class_="lw-used-words",
        data_search_exclude=True,
    )


def _list(own: list[Term], *, ids: bool = False) -> Markup:
    rows = (
        el(
            "div",
            el("dt", term.name),
            el("dd", term.says),
            id=term.id if ids else None,
        )
        for term in own
    )
    return el("dl", *rows, class_="lw-glossary", data_search_exclude=True)


class Words(Treeprocessor):
    """Makes the first use of each word on a page a button that opens its sentence."""

    def __init__(self, md: Markdown) -> None:
        super().__init__(md)
        self.used: set[str] = set()

    def run(self, root: etree.Element) -> None:
        for element in list(root):
            self._within(element)

    def _within(self, element: etree.Element) -> None:
        titled = _TITLES & set(element.get("class", "").split())
        if element.tag in _LEFT_ALONE or titled or not isinstance(element.tag, str):
            return
        children = list(element)
        self._put(element, 0, element.text or "")
        for child in children:
            self._within(child)
            self._put(element, list(element).index(child) + 1, child.tail or "", after=child)

    def _put(
        self, parent: etree.Element, place: int, text: str, after: etree.Element | None = None
    ) -> None:
        """Take `text`, which stands in `parent` before its child number `place`, apart at words."""
        last = 0
        for match, term in found_in(text):
            if term.id in self.used:
                continue
            self.used.add(term.id)
            self._set(parent, after, text[last : match.start()])
            end = _ENDS.match(text, match.end())
            last = end.end() if end else match.end()
            for element in _held(_explained(match.group(), term), end.group() if end else ""):
                parent.insert(place, element)
                place, after = place + 1, element
        if last:
            self._set(parent, after, text[last:])

    @staticmethod
    def _set(parent: etree.Element, after: etree.Element | None, text: str) -> None:
        if after is None:
            parent.text = text
        else:
            after.tail = text


def _held(parts: tuple[etree.Element, ...], end: str) -> tuple[etree.Element, ...]:
    """Return a word's parts as one that no line parts from the stop or comma behind it."""
    if not end:
        return parts
    held = etree.Element("span", {"class": "lw-held"})
    held.extend(parts)
    parts[-1].tail = end
    return (held,)


def _explained(text: str, term: Term) -> tuple[etree.Element, etree.Element]:
    """Return the button and the sentence that it opens."""
    place = f"word-{term.id}"
    button = etree.Element("button", {"type": "button", "class": "lw-term", "popovertarget": place})
    button.text = AtomicString(text)
    meaning = {"id": place, "popover": "auto", "class": "lw-meaning", "data-search-exclude": ""}
    sentence = etree.Element("span", meaning)
    name = etree.SubElement(sentence, "strong")
    name.text = AtomicString(f"{term.name[0].upper()}{term.name[1:]}")
    name.tail = f": {term.says}"
    return button, sentence
