"""The words of the trade: one short sentence each, used somewhere, explained where first used."""

import re
from functools import cache
from pathlib import Path

import pytest
from markdown import Markdown

import calc
from build_scripts import glossary
from build_scripts.fence import makeExtension

DOCS = Path(__file__).parents[2] / "docs"
MOST_WORDS = 29
TERMS = glossary.terms()


@cache
def said_by_pages() -> str:
    """Return what guides say, and what the sheets' forms, results, steps and judgements say."""
    guides = "\n".join(path.read_text("utf-8") for path in sorted(DOCS.rglob("*.md")))
    said = [re.sub(r"^```.*?^```", "", guides, flags=re.M | re.S)]
    for sheet in map(calc.find, calc.worksheets()):
        said += [part for field in sheet.fields for part in (field.label, field.hint)]
        said += [option.label for field in sheet.fields for option in getattr(field, "options", ())]
        said += [named.label for named in (*sheet.results, *sheet.intermediates)]
        said += [step.text for step in sheet.steps]
        said += [f"{use.rule.headline} {use.rule.text} {use.headline}" for use in sheet.uses]
    return "\n".join(said)


def converted(text: str) -> str:
    return Markdown(extensions=["admonition", "tables", makeExtension()]).convert(text)


def test_there_are_as_many_words_as_a_reader_can_use():
    assert 80 <= len(TERMS) <= 120


@pytest.mark.parametrize("term", TERMS, ids=lambda term: term.id)
def test_a_word_has_one_short_sentence(term):
    assert re.fullmatch(r"[A-Z0-9].*[^.]\.", term.says)
    assert not re.search(r"[.!?]\s+[A-Z]", term.says), "more than one sentence"
    assert len(term.says.split()) <= MOST_WORDS


def test_no_word_stands_twice():
    spellings = [text.lower() for term in TERMS for text in term.spellings]
    assert len(set(spellings)) == len(spellings)
    assert len({term.id for term in TERMS}) == len(TERMS)


def test_every_word_is_used_somewhere():
    used = {term.id for _, term in glossary.found_in(said_by_pages())}
    assert [term.name for term in TERMS if term.id not in used] == []


def test_the_first_use_of_a_word_opens_its_sentence_and_no_other_use_does():
    html = converted("A fuse, then two fuses.\n\nThe **ampacity** of a fuse.")
    assert html.count('popovertarget="word-fuse"') == html.count('id="word-fuse"') == 1
    assert html.index("word-fuse") < html.index("then two fuses")
    assert "<strong><button" in html
    assert '<span class="lw-held"><button' in html
    assert ",</span> then two fuses." in html, "the comma stays in the word's line"


@pytest.mark.parametrize(
    "text",
    [
        "# The fuse",
        "[the fuse](x.md)",
        "`the fuse`",
        "| fuse |\n|---|\n| x |",
        '!!! note "Fuse"\n    x',
    ],
)
def test_headings_links_and_code_stay_as_they_are(text):
    assert "popover" not in converted(text)


def test_a_word_of_capitals_is_not_found_in_small_letters_nor_within_another_word():
    assert "popover" not in converted("A cop sat on a shuntless refuse heap in fuse-choice.")
    assert 'id="word-cop"' in converted("Its COP is high.")


def test_the_page_lists_every_word_once():
    html = glossary.page_html()
    assert [html.count(f'id="{term.id}"') for term in TERMS] == [1] * len(TERMS)
