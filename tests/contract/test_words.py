"""Readers' texts keep to the words of the trade: none of the words that the list refuses."""

import re
import tomllib
from pathlib import Path

import pytest

from tests.contract.reader_texts import strings_of, texts

WORDS = tomllib.loads(Path(__file__).with_name("words.toml").read_text("utf-8"))["word"]
EACH = pytest.mark.parametrize("word", WORDS, ids=lambda word: word["seen"])


def pattern(word: dict) -> re.Pattern[str]:
    return re.compile(word["not"], re.IGNORECASE)


@EACH
def test_no_text_has_a_word_of_the_list(word):
    wrong = [
        f"{place}: {text[max(0, found.start() - 40) : found.end() + 40]!r}, say: {word['but']}"
        for place, text in texts()
        for found in pattern(word).finditer(text)
    ]
    assert not wrong, "\n".join(wrong)


@EACH
def test_each_word_is_found_where_it_is_wrong_and_only_there(word):
    assert pattern(word).search(word["seen"])
    assert [text for text in word.get("fine", []) if pattern(word).search(text)] == []


def test_texts_of_every_kind_of_file_are_read():
    """A file that moves out of the reader's sight would pass any list of words."""
    places = {place.split(":")[0] for place, _ in texts()}
    ends = {place.rpartition(".")[2] for place in places}
    assert ends == {"py", "json", "toml", "js", "md", "html"}
    assert places >= {"calc/__main__.py", "calc/van/parts.py", "calc/faults/ends.json"}
    assert places >= {"docs/assets/page.js", "docs/index.md", "overrides/404.html"}
    assert len(texts()) > 8000


def test_a_string_is_read_whole_and_documentation_is_not():
    code = '"""Doc."""\nx = ("one "\n     "two")\ny = f"a {x} b"\n'
    assert list(strings_of(code)) == [(2, "one two"), (4, "a {} b")]
