"""Inputs to try every worksheet with: its defaults, each choice, each limit, and many drawn ones.

They are made from the declared fields alone, so a new worksheet is tried without a line here. The
draw is the same on every run.
"""

from functools import cache
from math import exp, log
from random import Random
from types import SimpleNamespace

import calc
from calc.answer import Answer
from calc.fields import Choice, Field, Quantity
from calc.kinds import TEMPERATURE
from calc.quantities import Kind, from_base
from calc.worksheet import Worksheet

DRAWN = 800  # a worksheet

Texts = dict[str, str]


def sheets() -> list[Worksheet]:
    """Return every worksheet."""
    return [calc.find(name) for name in calc.worksheets()]


def needed_by(sheet: Worksheet, field: Field) -> Texts:
    """Return the choice beside which `field` has a meaning."""
    return dict([field.only_if]) if field.only_if else {}


def ends(field: Quantity) -> list[str]:
    """Return the limits of a field as declared, for each of its kinds."""
    return [end.strip() for end in (*field.low.split("|"), *field.high.split("|"))]


def single(sheet: Worksheet) -> list[Texts]:
    """Return inputs that set one field: to each of its choices, or to each of its limits."""
    found = []
    for field in sheet.fields:
        texts = [o.text for o in field.options] if isinstance(field, Choice) else ends(field)
        found += [{**needed_by(sheet, field), field.id: text} for text in texts]
    return found


def drawn(sheet: Worksheet, count: int = DRAWN) -> list[Texts]:
    """Return inputs with every field drawn from its whole range, or left to its default."""
    draw = Random(sheet.id)
    return [
        {
            field.id: _text(field, draw)
            for field in sheet.fields
            if draw.random() > (0.5 if field.usual or field.optional else 0.25)
        }
        for _ in range(count)
    ]


def _text(field: Field, draw: Random) -> str:
    if isinstance(field, Choice):
        return draw.choice(field.options).text
    assert isinstance(field, Quantity)
    kind = draw.choice(field.kinds)
    unit = draw.choice(kind.units)
    number = from_base(between(field, kind, draw.random()), kind, unit.name)
    spelling = draw.choice((unit.symbol, unit.link, *unit.spellings))
    return f"{number:.0f}" if kind.whole else f"{number:.6g} {spelling}"


def between(field: Quantity, kind: Kind, share: float) -> float:
    """Return a value [base unit of `kind`] a `share` of the way from a field's low end to its high.

    The way is even in the logarithm, so that small and large values come as often.
    """
    bounds = field.bounds(kind)
    assert bounds is not None, f"{field.id} has no limits as a {kind.id}"
    low, high = bounds[:2]
    if kind is TEMPERATURE:
        return low + share * (high - low)
    first = log(low or high * 1e-6)
    value = exp(first + (0.0001 + 0.9998 * share) * (log(high) - first))
    return float(round(value)) if kind.whole else value


@cache
def answers(name: str) -> tuple[tuple[Texts, Answer], ...]:
    """Return each of the inputs that worksheet `name` can answer, with its answer."""
    sheet = calc.find(name)
    found = []
    for texts in ({}, *single(sheet), *drawn(sheet)):
        try:
            found.append((texts, sheet.work(texts)))
        except calc.InputError:
            continue
    return tuple(found)


def held(answer: Answer) -> SimpleNamespace:
    """Return what the tests of steps, rules and remarks are asked with."""
    given = {name for name, reading in answer.inputs.items() if reading.given}
    return SimpleNamespace(**answer.values, given=given)
