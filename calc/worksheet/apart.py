"""Digits enough that no rounding hides which of two values is the larger.

Values are shown to the nearest: 50.04 V beside a limit of 50 V would read "50 V". So each value
that a sentence sets beside another of its kind, or beside a limit written in it, gets as many
digits as it takes to be seen on its true side, everywhere in the answer.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

from calc.units.compare import at_least, at_most
from calc.units.quantities import Kind, from_base, to_base
from calc.units.shown import NEAR, rounded

MOST_DIGITS = 9
_FIGURE = re.compile(r"(?<![\w{.,])(\d+(?:[.,]\d+)?)[ \u00a0]?([^\W\d_]+|°C|%|Ω)(?!\w)")


@dataclass(frozen=True)
class Figure:
    """A value [base unit of its kind] in a sentence, shown in `unit`.

    `name` is the key of its digits; it is empty for what is shown in full: an input as typed, or a
    limit in the words themselves.
    """

    value: float
    kind: Kind
    unit: str = ""
    rounding: str = NEAR
    name: str = ""

    def seen(self, digits: Mapping[str, int]) -> float:
        """Return the value [base unit of its kind] as a reader sees it."""
        if not self.name:
            return self.value
        number = from_base(self.value, self.kind, self.unit)
        text = rounded(number, digits[self.name], self.rounding)
        return to_base(float(text), self.kind, self.unit)


def has_limit(sentence: str) -> bool:
    """Return whether a number with a unit stands in a sentence itself."""
    return bool(_FIGURE.search(sentence))


def limits_in(sentence: str, kinds: set[Kind]) -> Iterator[Figure]:
    """Yield the values of these `kinds` that stand in a sentence itself, such as "60 V"."""
    for number, symbol in _FIGURE.findall(sentence):
        for kind in kinds:
            for unit in kind.units:
                if unit.symbol == symbol:
                    value = to_base(float(number.replace(",", ".")), kind, unit.name)
                    yield Figure(value, kind)


def keep_apart(figures: list[Figure], digits: dict[str, int]) -> None:
    """Raise `digits` until every two of `figures` of one kind are seen in their true order."""
    for one, other in combinations(figures, 2):
        if one.kind is other.kind and (one.name or other.name):
            _two_apart(one, other, digits)


def _two_apart(one: Figure, other: Figure, digits: dict[str, int]) -> None:
    if at_most(one.value, other.value) and at_least(one.value, other.value):
        return
    names = {figure.name for figure in (one, other) if figure.name}
    while not _in_order(one, other, digits):
        if all(digits[name] >= MOST_DIGITS for name in names):
            return
        most = min(MOST_DIGITS, max(digits[name] for name in names) + 1)
        digits.update(dict.fromkeys(names, most))


def _in_order(one: Figure, other: Figure, digits: Mapping[str, int]) -> bool:
    seen = one.seen(digits), other.seen(digits)
    return seen[0] != seen[1] and (seen[0] < seen[1]) == (one.value < other.value)
