"""The resistance of a good joint has one home, and every sheet that asks takes it from there."""

import pytest

import calc
from calc.electrical.sound_parts import GOOD_JOINT, GOOD_JOINT_LEAST, WELL_KEPT, Part, sound_joint
from calc.units.kinds import RESISTANCE
from calc.worksheet.fields import Quantity
from tests.contract.samples import sheets


def asked() -> list[tuple[str, str]]:
    """Return every field that asks for the resistance of one joint that is good."""
    fields = [(s.id, f) for s in sheets() for f in s.fields if isinstance(f, Quantity)]
    ids = ("joint", "joint_resistance")
    return [(name, f.id) for name, f in fields if f.id in ids and f.kind is RESISTANCE]


def test_the_good_joint_lies_within_what_is_published_of_good_ones():
    """Bolted bars of an instrument maker begin at 5 µΩ, an article's contacts end at 300 µΩ."""
    assert GOOD_JOINT_LEAST < GOOD_JOINT < WELL_KEPT


@pytest.mark.parametrize(("sheet", "field"), asked())
def test_every_sheet_takes_the_same_good_joint(sheet, field):
    default = calc.find(sheet).field(field)
    assert default.read(default.default).value == pytest.approx(GOOD_JOINT)


def test_joint_heat_calls_the_good_joint_good():
    range_ = sound_joint(Part.BOLTED)
    assert (range_.low, range_.high) == (GOOD_JOINT_LEAST, GOOD_JOINT)


def test_the_sheets_that_ask_for_a_good_joint_are_known():
    assert {sheet for sheet, _ in asked()} == {"fault-current", "find-fault", "alternator-charge"}
