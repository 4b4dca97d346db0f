"""A remedy asks for no more than it must: it lands beside the threshold that a case has by hand.

Each case of the other files has inputs close to its threshold on either side. What would mend the
one side is at most a tenth past the other.
"""

from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import pytest

import calc
from calc.worksheet.fields import Quantity
from tests.rules.judging import Texts, remedy

HERE = Path(__file__).parent
FURTHER = {
    "bay.ruined": "to where the air is within its limit, not to where it is too warm",
    "bay.far-over-limit": "to where the air is within its limit, not to where it is too warm",
    "heater.too-weak": "to the size to buy",
    "heater.far-too-large": "to the size to buy",
    "room.strains-heart": "to a room that is not cold",
    "fuse.hot-air-derates": "to the air that its table is printed for",
    "fuse.hot-air-not-printed": "to the air that its table is printed for",
    "insulation.nothing-unless-printed": "to the air that its table is printed for",
    "fuse.above-ceiling": "to a rating that is made",
    "bank-size.many-side-by-side": "to one battery of the whole bank",
    "standing.too-long-by-itself": "to as long as the bank lasts with all that draws on it",
    "strings.fuse-below-current": "to a rating that is made and fits its string",
    "strings.fuse-loaded-hard": "to a rating that is made and fits its string",
    "panel.regulator-too-small": "to all that the panels give, not to where little is lost",
    "panel.below-bank": "to as many panels as have volts to spare when hot",
    "shore.no-room": "to what leaves the charger its whole output",
    "shore.bank-not-filled": "to a bank with no load on it",
}
"""Remedies that go further than their own threshold, and why."""


def cases() -> Iterator[tuple[str, str, Texts, Texts]]:
    """Yield sheet, rule, and the inputs on either side, of every file beside this one."""
    for path in sorted(HERE.glob("test_[ce]*.py")):
        module = import_module(f"tests.rules.{path.stem}")
        found = getattr(module, "CASES", {})
        for sheet, of in ({module.SHEET: found} if hasattr(module, "SHEET") else found).items():
            for rule, sides in of.items():
                yield sheet, rule, sides[0], sides[1]


def asked() -> Iterator[tuple[str, str, float, float, float]]:
    """Yield sheet, rule, and a figure that a remedy changes: as it was, silent, and as asked."""
    for sheet, rule, fires, silent in cases():
        found = calc.find(sheet)
        uses = [use for use in found.uses if use.rule.id == rule]
        if len(uses) != 1 or rule in FURTHER:
            continue
        change = remedy(sheet, rule, fires)
        if not change or len(change.values) != 1:
            continue
        ((name, to),) = change.values.items()
        field = found.field(name)
        was, kept = (calc.work(sheet, texts).inputs[name].value for texts in (fires, silent))
        if not (isinstance(field, Quantity) and isinstance(was, float) and isinstance(kept, float)):
            continue
        if fires.get(name) != silent.get(name):
            yield sheet, rule, was, kept, float(to)


ASKED = list(asked())


def test_most_remedies_of_a_figure_are_seen():
    assert len(ASKED) > 60


@pytest.mark.parametrize(("sheet", "rule", "was", "silent", "to"), ASKED)
def test_a_remedy_lands_beside_the_threshold(sheet, rule, was, silent, to):
    past = (silent - to) * (1 if was > silent else -1)
    assert past <= 0.1 * abs(silent), (was, silent, to)
