"""What our Markdown adds: live sheets, worked examples, figures in the text, generated pages.

    ```worksheet        a live sheet; lines below the id preset fields
    ```example          `name = id`, then presets: a worked example, its figures usable as
                        {name.field}; `name = id, in full` shows it with its working unfolded
    ```practice         an id: questions of its practice set; `numbers: 4 7` picks other ones
    ```page             a part of a page that is made from the code: checks, units, tables

A mistake stops the build: fences raise SuperFencesException, since the Markdown extension would
swallow anything else and print the fence as code.
"""

import re
import xml.etree.ElementTree as etree
from collections.abc import Iterator
from typing import Any

from markdown import Markdown
from markdown.extensions import Extension
from markdown.inlinepatterns import InlineProcessor
from markdown.treeprocessors import Treeprocessor
from markdown.util import HTML_PLACEHOLDER_RE
from pymdownx.superfences import SuperFencesException

import calc
from build_scripts import glossary, made
from calc.practice import question
from calc.render import example_html, sheet_html
from calc.render.html import join
from calc.render.practice import practice_html
from calc.units.shown import kept_together
from calc.worksheet.answer import Answer

_FIRST = "first-example"  # the id of a page's first one
_FIGURE = r"\{([a-z][a-z0-9]*)\.([a-z_]+)\}"


def worksheet(
    source: str, language: str, css_class: str, options: dict, md: Markdown, **_: Any
) -> str:
    """Return a live sheet."""
    name, presets = _parsed(source)
    jumps = [("how-this-works", "guide"), (_FIRST, "examples")]
    if _has_practice(name):
        jumps.append(("questions-to-try", "practice"))
    answer = _worked(name, presets)
    return str(join(sheet_html(answer, jumps), glossary.words_html(answer.worksheet)))


def example(
    source: str, language: str, css_class: str, options: dict, md: Markdown, **_: Any
) -> str:
    """Return a worked example and remember its answer for the figures in the text."""
    head, presets = _parsed(source)
    short = head.removesuffix(", in full")
    name, equals, sheet = (part.strip() for part in short.partition("="))
    examples = _examples(md)
    if not equals or not re.fullmatch(r"[a-z][a-z0-9]*", name):
        raise SuperFencesException(f"An example begins with “name = worksheet”, not {head!r}")
    if name in examples:
        raise SuperFencesException(f"Two examples on one page are called {name!r}")
    place = "" if examples else _FIRST
    examples[name] = _worked(sheet, presets)
    html = example_html(examples[name], name, f"../{sheet}/", full=short != head, place=place)
    return str(html)


def practice(
    source: str, language: str, css_class: str, options: dict, md: Markdown, **_: Any
) -> str:
    """Return questions of a worksheet's practice set, with their answers folded."""
    sheet, presets = _parsed(source)
    numbers = presets.pop("numbers", "1 2 3").split()
    if presets or not all(map(str.isdecimal, numbers)):
        raise SuperFencesException(f"A practice takes “numbers: 4 7” and no more, not {source!r}")
    try:
        asked = tuple(question(sheet, int(number)) for number in numbers)
    except calc.InputError as error:
        raise SuperFencesException(f"{sheet}: {error}") from error
    return str(practice_html(asked, f"../{sheet}/"))


def _has_practice(name: str) -> bool:
    try:
        question(name, 1)
    except calc.InputError:
        return False
    return True


def page(source: str, language: str, css_class: str, options: dict, md: Markdown, **_: Any) -> str:
    """Return a part of a page that is made from the code."""
    part = made.PARTS.get(source.strip())
    if part is None:
        raise SuperFencesException(
            f"There is no part {source.strip()!r}; there are {', '.join(made.PARTS)}"
        )
    try:
        return str(part())
    except Exception as error:  # any other kind would be swallowed, and the page lack the part
        what = f"The part {source.strip()!r} cannot be made: {error}"
        raise SuperFencesException(what) from error


def _parsed(source: str) -> tuple[str, dict[str, str]]:
    head, *rest = [line.strip() for line in source.strip().splitlines()]
    presets = {}
    for line in filter(None, rest):
        field, colon, text = line.partition(":")
        if not colon:
            raise SuperFencesException(f"Write a preset as “field: value”, not {line!r}")
        presets[field.strip()] = text.strip()
    return head, presets


def _worked(sheet: str, presets: dict[str, str]) -> Answer:
    try:
        return calc.work(sheet, presets)
    except calc.InputError as error:
        raise SuperFencesException(f"{sheet} {presets}: {error}") from error


def _examples(md: Markdown) -> dict[str, Answer]:
    if not hasattr(md, "lugwise_examples"):
        md.lugwise_examples = {}
    return md.lugwise_examples


class FigureProcessor(InlineProcessor):
    """Puts `{name.field}` of an example into the text. Raises KeyError on an unknown name."""

    def handleMatch(self, match: re.Match, data: str):
        name, part = match.groups()
        answer = _examples(self.md).get(name)
        if answer is None:
            raise KeyError(f"There is no example {name!r} on this page for {match.group()}")
        if part in ("sentence", "verdict"):
            text = getattr(answer, part)
        elif part in answer.shown:
            text = answer.shown[part]
        else:
            raise KeyError(f"Example {name!r} has no value {part!r}")
        figure = etree.Element("span", {"class": "lw-inline"})
        figure.text = text
        return figure, match.start(0), match.end(0)


class Stories(Treeprocessor):
    """Folds a guide's worked story behind its first example and what is said about that.

    Only on a page with a live sheet, which is long enough without it.
    """

    def run(self, root: etree.Element) -> None:
        if any("data-sheet=" in self._html_of(part) for part in root):
            for begin, end in self._sections(list(root)):
                self._fold(root, list(root)[begin:end])

    def _html_of(self, element: etree.Element) -> str:
        """Return what a fence made in this place; nothing for a text."""
        blocks = self.md.htmlStash.rawHtmlBlocks
        found = HTML_PLACEHOLDER_RE.fullmatch((element.text or "").strip())
        block = blocks[int(found[1])] if found else ""
        return block if isinstance(block, str) else ""

    def _is_example(self, element: etree.Element) -> bool:
        return 'class="lw-sheet lw-example"' in self._html_of(element)

    def _sections(self, parts: list[etree.Element]) -> Iterator[tuple[int, int]]:
        """Yield from where to where each part goes, the last first: folding shifts the rest."""
        heads = [place for place, part in enumerate(parts) if part.tag == "h2"]
        yield from reversed(list(zip(heads, [*heads[1:], len(parts)], strict=True)))

    def _fold(self, root: etree.Element, section: list[etree.Element]) -> None:
        examples = [place for place, part in enumerate(section) if self._is_example(part)]
        if len(examples) < 2:
            return
        first, second = examples[:2]
        folded = section[min(first + 2, second) :]
        more = len(examples) - 1
        fold = etree.Element("details", {"class": "lw-story"})
        summary = etree.SubElement(fold, "summary")
        summary.text = f"Read on: {more} more example{'s' if more > 1 else ''}"
        root.insert(list(root).index(folded[0]), fold)
        for part in folded:
            root.remove(part)
            fold.append(part)


class Together(Treeprocessor):
    """Keeps a number on the line of its unit, as in what is made from the code."""

    def run(self, root: etree.Element) -> None:
        for element in root.iter():
            if element.text and element.tag not in ("code", "pre"):
                element.text = kept_together(element.text)
            if element.tail:
                element.tail = kept_together(element.tail)


class Figures(Extension):
    """The Markdown extension: figures in the text, folded stories, words that are explained."""

    def extendMarkdown(self, md: Markdown) -> None:
        md.inlinePatterns.register(FigureProcessor(_FIGURE, md), "lugwise-figure", 185)
        md.treeprocessors.register(
            Stories(md), "lugwise-stories", 16
        )  # before its words are sought
        md.treeprocessors.register(glossary.Words(md), "lugwise-words", 15)  # after all inline text
        md.treeprocessors.register(Together(md), "lugwise-together", 1)  # the last


def makeExtension(**options: Any) -> Figures:
    """Return the extension, as the Markdown library asks for it."""
    return Figures(**options)
