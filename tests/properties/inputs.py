"""What the property tests draw from: any text, any valid input of a worksheet, and their limits.

Every run draws anew, from the seed that it says at its end, with which a failure on another machine
can be had again. There is no deadline a case: a busy machine is not a fault. Bounded time is
asserted by itself.
"""

from collections.abc import Callable

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
    """Return what has a property tried so many times in a run, and 80 times as many at night."""
    how = settings(
        max_examples=often(times, 80 * times),
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


@st.composite
def valid(draw: st.DrawFn, field: Field) -> str:
    """Draw a text that one field accepts."""
    if isinstance(field, Choice):
        return draw(st.sampled_from(field.options)).id
    if isinstance(field, Text):
        return draw(st.text(min_size=1, max_size=20).filter(lambda text: _is_taken(field, text)))
    if isinstance(field, Rows):
        rows = range(draw(st.integers(1, 4)))
        return joined([draw(valid(column)) for column in field.columns] for _ in rows)
    assert isinstance(field, Quantity)
    kind = draw(st.sampled_from(field.kinds))
    unit = draw(st.sampled_from(kind.units))
    value = between(field, kind, draw(st.floats(0, 1)))
    number = from_base(value, kind, unit.name)
    return f"{number:.0f}" if kind.whole else f"{number:.8g} {unit.symbol}"


def _is_taken(field: Text, text: str) -> bool:
    try:
        field.read(text)
    except Problem:
        return False
    return True


@st.composite
def inputs_of(draw: st.DrawFn, sheet: Worksheet, **fixed: str) -> dict[str, str]:
    """Draw inputs that every field of `sheet` accepts; some are left out; `fixed` are as given."""
    texts = {}
    for field in sheet.fields:
        if field.id in fixed:
            texts[field.id] = fixed[field.id]
        elif draw(st.booleans()):
            texts[field.id] = draw(valid(field))
    return texts


def worked(name: str, texts: dict[str, str]) -> calc.Answer | None:
    """Return the answer, or None where the inputs have none together."""
    try:
        return calc.work(name, texts)
    except calc.InputError:
        return None
