"""The parts a worksheet is declared from: results, steps, remarks and rules, all data."""

from collections.abc import Callable
from dataclasses import dataclass
from types import SimpleNamespace

from calc.quantities import Kind
from calc.shown import NEAR

Test = Callable[[SimpleNamespace], bool]

FINE, CAUTION, STOP = "fine", "caution", "stop"
NOTE = "note"


def always(_: SimpleNamespace) -> bool:
    """The test of a rule or remark that holds in every case."""
    return True


@dataclass(frozen=True, kw_only=True)
class Named:
    """A value of the sum that a reader sees: a result or a step between.

    `kind` is None for text and for lists of text. `way` is the direction of rounding for display.
    `both` shows the value in metric and in US units. `quiet` leaves it out where there is none.
    `worked` is False for words that only lead the reader on, and need no line in the working.
    """

    id: str
    label: str
    symbol: str = ""
    kind: Kind | None = None
    way: str = NEAR
    digits: int = 3
    unit: str = ""
    both: bool = False
    quiet: bool = False
    worked: bool = True


@dataclass(frozen=True, kw_only=True)
class Step:
    """One line of the working: the value `of` which name, by which formula, said in a sentence.

    Without a formula the value is looked up or chosen, and `says` tells how.
    """

    of: str
    says: str
    formula: str = ""
    source: str = ""
    when: Test = always


@dataclass(frozen=True, kw_only=True)
class Remark:
    """A caution or note with the test that brings it up. `says` may hold `{names}` of values."""

    says: str
    when: Test = always
    source: str = ""
    level: str = CAUTION


@dataclass(frozen=True, kw_only=True)
class Rule:
    """A verdict, the test that brings it and its one sentence; the first that holds is given."""

    verdict: str
    says: str
    when: Test = always
