"""A verdict is read on a phone: its sentence has at most 20 words, a caution's text at most 30.

Advice stands among the cautions, so it is no longer than they are. A note is folded away: 45,
as it is written, for some list all the fuses that are refused.

A number and its unit are joined by a space that does not break, and count as one word. Of a list
of joints or circuits the first is counted.
"""

import re

import pytest

from calc.judge import JUDGING, Level
from calc.worksheet.declare import Placed
from calc.worksheet.findings import Finding
from calc.worksheet.writer import Writer
from tests.contract.samples import NAMES, answers, sheets

MOST_OF_VERDICT = 20
MOST_OF_CAUTION = 30
MOST_OF_NOTE = 45
NO_BREAK_SPACE = "\u00a0"

# Longer on purpose: the rule or sheet's rule, and why.
LONGER: dict[str, str] = {}


def words(text: str) -> int:
    """Return how many words a text has; a name that a reader typed counts as one."""
    for name in NAMES:
        text = text.replace(name, name.replace(" ", NO_BREAK_SPACE))
    return sum(bool(re.search(r"\w", word)) for word in text.split(" "))


def said(use: Placed) -> tuple[tuple[str, str, int], ...]:
    """Return the sentences of a rule, the sheet's own and the usual, and how long they may be."""
    rule = use.rule
    found = [(use.headline, rule.headline, MOST_OF_VERDICT)] if rule.level in JUDGING else []
    if rule.level in (Level.STOP, Level.CAUTION, Level.ADVICE):
        found.append((use.text, rule.text, MOST_OF_CAUTION))
    return tuple(found)


def written(use: Placed) -> tuple[tuple[str, str, int], ...]:
    """Return the same with the notes, which may list what a reader looks up."""
    note = ((use.text, use.rule.text, MOST_OF_NOTE),) if use.rule.level is Level.NOTE else ()
    return (*said(use), *note)


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_a_sentence_is_short_as_it_is_written(sheet):
    """Each name in braces stands for one word."""
    longer = {
        f"{use.rule.id}: {own or usual}"
        for use in sheet.uses
        for own, usual, most in written(use)
        if words(re.sub(r"\{[^}]*\}", "value", own or usual)) > most and use.rule.id not in LONGER
    }
    assert longer == set()


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_a_sentence_is_short_as_it_is_read(sheet):
    longer = {}
    for _, answer in answers(sheet.id)[::2]:
        writer = Writer(sheet, answer.inputs, answer.result)
        for one in writer.judged[0]:
            for own, usual, most in said(one.use):
                shown = writer.puts(Finding(one.use, one.rows[:1]), own, usual)
                if words(shown) > most and one.use.rule.id not in LONGER:
                    longer[one.use.rule.id] = f"{words(shown)}: {shown}"
    assert longer == {}
