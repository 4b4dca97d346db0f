"""The resistance of a good joint has one home; where a sheet's default differs, it says why."""

import pytest

import calc
from calc.electrical.contact import GOOD_JOINT
from calc.electrical.rules.contact import GOOD_BOLTED, WELL_KEPT
from calc.units.kinds import RESISTANCE
from calc.worksheet.fields import Quantity
from tests.contract.samples import sheets

DIFFERS = {
    ("find-fault", "joint"): WELL_KEPT,  # the sheet says so: the top of the published range
}


def asked() -> list[tuple[str, str]]:
    """Return every field that asks for the resistance of one joint that is good."""
    fields = [(s.id, f) for s in sheets() for f in s.fields if isinstance(f, Quantity)]
    ids = ("joint", "joint_resistance")
    return [(name, f.id) for name, f in fields if f.id in ids and f.kind is RESISTANCE]


def test_the_good_joint_lies_within_what_is_published_of_good_ones():
    """An instrument maker's bolted bars end at 15 µΩ, an article's power contacts at 300 µΩ."""
    assert GOOD_BOLTED < GOOD_JOINT < WELL_KEPT


@pytest.mark.parametrize(("sheet", "field"), asked())
def test_every_sheet_takes_the_same_good_joint_unless_it_is_listed_here(sheet, field):
    default = calc.find(sheet).field(field)
    expected = DIFFERS.get((sheet, field), GOOD_JOINT)
    assert default.read(default.default).value == pytest.approx(expected)


def test_the_sheets_that_ask_for_a_good_joint_are_known():
    assert {sheet for sheet, _ in asked()} == {"fault-current", "find-fault", "alternator-charge"}
    assert set(DIFFERS) <= set(asked())
