"""Any text in a field of each kind: a value within its limits, or a sentence."""

from itertools import chain
from random import Random

import pytest

import calc
from calc.worksheet.fields import Field, Problem, Quantity
from calc.worksheet.rows import Rows
from tests.counts import chance, often
from tests.properties.inputs import UNITS

SIGNS = "0123456789.,-+eE '\"%/*()^ABCVWΩ°µfthimnk:;\u202f\u00a0٣１"


def one_of_each_kind() -> dict[str, Field]:
    """Return a field of each kind of quantity, and one of each other sort, by the kind's name."""
    found: dict[str, Field] = {}
    for sheet in map(calc.find, calc.worksheets()):
        lists = [field.columns for field in sheet.fields if isinstance(field, Rows)]
        for field in chain(sheet.fields, *lists):
            kinds = [one.id for one in field.kinds] if isinstance(field, Quantity) else []
            found.setdefault(" or ".join(kinds) or type(field).__name__, field)
    return found


def any_text(draw: Random) -> str:
    """Draw a text: a number with or without a unit, what looks like one, or letters at random."""
    way = draw.random()
    if way < 0.4:
        number = draw.choice((draw.uniform(-9, 9), draw.randint(-99, 99)))
        return f"{number * 10.0 ** draw.randint(-5, 9)!r} {draw.choice(UNITS)}"
    if way < 0.8:
        return "".join(draw.choices(SIGNS, k=draw.randint(0, 45)))
    most = draw.choice((255, 0xD7FF))
    return "".join(chr(draw.randint(0, most)) for _ in range(draw.randint(0, 60)))


@pytest.mark.parametrize("field", one_of_each_kind().values(), ids=one_of_each_kind())
def test_a_field_reads_any_text_within_its_limits_or_says_what_is_wrong(field):
    draw = chance("texts", field.id)
    for _ in range(often(200, 100_000)):
        text = any_text(draw)
        try:
            reading = field.read(text)
        except Problem as problem:
            assert all(0 < len(one.message) < 400 for one in problem.each), repr(text)
            continue
        if isinstance(field, Quantity):
            low, high, *_ = field.bounds(reading.kind)
            slack = 1e-9 * max(abs(low), abs(high))
            assert low - slack <= reading.value <= high + slack, repr(text)
