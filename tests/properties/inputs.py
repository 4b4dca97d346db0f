"""What the property tests draw from: any text, any valid input of a worksheet, and their limits.

Every run draws anew, from the seed that it says at its end, with which a failure on another machine
can be had again. There is no deadline a case: a busy machine is not a fault. Bounded time is
asserted by itself.
"""

from collections.abc import Callable, Iterator
from random import Random

from hypothesis import HealthCheck, seed, settings
from hypothesis import strategies as st

import calc
from calc.units.quantities import from_base
from calc.worksheet.fields import Choice, Field, Problem, Quantity
from calc.worksheet.rows import Rows, Text, joined
from calc.worksheet.work import Worksheet
from tests.contract.samples import between
from tests.counts import SEED, often

SLACK = 1 + 1e-9


def tried(times: int) -> Callable[[Callable], Callable]:
    """Return what has a property tried so many times in two runs, and 80 times as many at night."""
    how = settings(
        max_examples=often((times + 1) // 2, 80 * times),
        deadline=None,
        database=None,
        suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
    )
    return lambda test: seed(int(SEED))(how(test))


NAMES = st.sampled_from(calc.worksheets())
NUMBERISH = st.text("0123456789.,-+eE '\"%/*()^ABCVWΩ°µfthimnk\u202f\u00a0٣１", max_size=45)
UNITS = ("A", "V", "W", "ft", "m", "%", "C", "F", "Ah", "N.m", "MW", "'", "")
TEXTS = st.one_of(
    st.text(max_size=60),
    NUMBERISH,
    st.floats().map(repr),
    st.integers().map(str),
    st.builds("{} {}".format, st.floats(), st.sampled_from(UNITS)),
)


SEEDS = st.integers(0, 2**64 - 1)


def text_for(field: Field, chance: Random) -> str:
    """Return a text that `field` accepts; of a quantity every tenth is one of its limits."""
    if isinstance(field, Choice):
        return chance.choice(field.options).id
    if isinstance(field, Text):
        return next(text for text in _words(chance) if _is_taken(field, text))
    if isinstance(field, Rows):
        rows = range(chance.randint(1, 4))
        return joined([text_for(column, chance) for column in field.columns] for _ in rows)
    assert isinstance(field, Quantity)
    kind = chance.choice(field.kinds)
    unit = chance.choice(kind.units)
    share = float(chance.randint(0, 1)) if chance.random() < 0.1 else chance.random()
    number = from_base(between(field, kind, share), kind, unit.name)
    return f"{number:.0f}" if kind.whole else f"{number:.8g} {unit.symbol}"


def _words(chance: Random) -> Iterator[str]:
    """Yield texts in the letters of ever other scripts."""
    while True:
        last = chance.choice((0x7E, 0x17F, 0x30FF, 0xD7FF))
        yield "".join(chr(chance.randint(0x20, last)) for _ in range(chance.randint(1, 20)))


@st.composite
def valid(draw: st.DrawFn, field: Field) -> str:
    """Draw a text that one field accepts."""
    return text_for(field, Random(draw(SEEDS)))


def _is_taken(field: Text, text: str) -> bool:
    try:
        field.read(text)
    except Problem:
        return False
    return True


@st.composite
def inputs_of(draw: st.DrawFn, sheet: Worksheet, **fixed: str) -> dict[str, str]:
    """Draw inputs that every field of `sheet` accepts; some are left out; `fixed` are as given.

    Hypothesis draws one number for all of them: to draw each by itself takes longer than working
    the sheet does.
    """
    chance = Random(draw(SEEDS))
    texts = {}
    for field in sheet.fields:
        if field.id in fixed:
            texts[field.id] = fixed[field.id]
        elif chance.random() < 0.5:
            texts[field.id] = text_for(field, chance)
    return texts


def worked(name: str, texts: dict[str, str]) -> calc.Answer | None:
    """Return the answer, or None where the inputs have none together."""
    try:
        return calc.work(name, texts)
    except calc.InputError:
        return None
