"""Short is read, long is skipped: how many words a hint, a label, a choice or a step may have.

A number and its unit count as one word, as they do where a verdict's words are counted
(`test_headlines.py`).
"""

import re
from collections.abc import Iterator

import pytest

import calc
from calc.sheets import practice_of
from calc.units.quantities import Kind
from calc.van.parts import PARTS
from calc.worksheet.fields import Choice, Field, Quantity
from calc.worksheet.rows import Rows
from tests.contract.reader_texts import texts

LONGEST = {
    "hint": 12,
    "label": 9,
    "choice": 9,
    "result": 10,
    "sentence of a step": 32,
    "sentence of a remark": 36,
    "sentence of a question": 30,
    "sentence of a slip": 25,
    "sentence of a fault": 34,
}
# Longer on purpose, by the beginning of the text, and why.
LONGER: dict[str, str] = {}


def fields() -> Iterator[Field]:
    """Yield every field of a worksheet, of a column of a list, and of a part of a van."""
    for sheet in map(calc.find, calc.worksheets()):
        for field in sheet.fields:
            yield field
            if isinstance(field, Rows):
                yield from field.columns
    for part in PARTS:
        yield from (key.field for key in part.keys)


def sentences(text: str) -> list[str]:
    return re.split(r"(?<=[.!?;])\s+", text)


def said() -> Iterator[tuple[str, str]]:
    """Yield (kind, text) of all that sheets, their practice and the search for a fault say."""
    for field in fields():
        yield "hint", field.hint
        yield "label", field.label
        if isinstance(field, Choice):
            yield from (("choice", option.label) for option in field.options)
    for sheet in map(calc.find, calc.worksheets()):
        yield from (("result", one.label) for one in (*sheet.results, *sheet.intermediates))
        for step in sheet.steps:
            yield from (("sentence of a step", one) for one in sentences(step.text))
        for use in sheet.uses:
            remark = use.text or use.rule.text
            yield from (("sentence of a remark", one) for one in sentences(remark))
        for task in practice_of(sheet.id).tasks:
            yield from (("sentence of a question", one) for one in sentences(task.text))
            for slip in task.slips:
                yield from (("sentence of a slip", one) for one in sentences(slip.text))
    for place, text in texts():
        if place.startswith("calc/faults/") and place.endswith(".json"):
            yield from (("sentence of a fault", one) for one in sentences(text))


def _symbols() -> set[str]:
    kinds: set[Kind] = {kind for f in fields() if isinstance(f, Quantity) for kind in f.kinds}
    return {unit.symbol for kind in kinds for unit in kind.units} - {""}


UNITS = "|".join(map(re.escape, sorted(_symbols(), key=len, reverse=True)))
WITH_UNIT = re.compile(rf"(\d) (?=(?:{UNITS})(?!\w))")


def words(text: str) -> int:
    """Return how many words `text` has; a value in braces and a number with its unit are one."""
    text = WITH_UNIT.sub(r"\1", re.sub(r"\{[^}]*\}", "value", text))
    return sum(bool(re.search(r"\w", word)) for word in text.split())


@pytest.mark.parametrize("kind", LONGEST)
def test_a_text_is_no_longer_than_its_kind_is_read(kind):
    most = LONGEST[kind]
    found = {text for its_kind, text in said() if its_kind == kind}
    assert len(found) > 100
    kept = tuple(LONGER)
    longer = {t: words(t) for t in found if words(t) > most and not (kept and t.startswith(kept))}
    assert longer == {}


@pytest.mark.parametrize(
    ("text", "number"),
    [("About 12.8 V at rest.", 4), ("{current} at most", 3), ("a – b", 2), ("2 %/K or 10 °C", 3)],
)
def test_words_are_counted_as_they_are_read(text, number):
    assert words(text) == number


def test_no_headline_says_from_memory():
    """How sure a number is stands with its source; a verdict says what to check."""
    for sheet in map(calc.find, calc.worksheets()):
        for use in sheet.uses:
            assert "from memory" not in (use.headline or use.rule.headline), use.rule.id
