"""Defaults in the units of a reader who has chosen metric or US ones."""

import pytest

import calc
from calc.units.quantities import METRIC, US
from calc.worksheet.fields import Quantity
from calc.worksheet.measures import defaults_in, units_in
from tests.contract.samples import sheets

EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
BOTH = pytest.mark.parametrize("system", (METRIC, US))


def test_a_run_of_twelve_feet_is_told_in_round_metres():
    # 12 ft are 3.6576 m, by the definition of the foot as 0.3048 m exactly
    assert defaults_in(calc.find("wire-drop"), METRIC) == {"length": "3.7 m"}
    assert defaults_in(calc.find("wire-size"), METRIC)["series"] == "mm2"


def test_degrees_are_whole_and_thin_things_are_told_in_inches():
    texts = defaults_in(calc.find("heat-loss"), US)
    assert texts["inside"] == "64 F"  # 18 °C are 64.4 °F by definition
    assert texts["insulation"] == "1.2 in"  # 30 mm are 1.181 in, an inch being 25.4 mm exactly


@EACH
@BOTH
def test_each_default_is_near_its_own_and_in_the_units_asked_for(sheet, system):
    for name, text in defaults_in(sheet, system).items():
        field = sheet.field(name)
        if isinstance(field, Quantity):
            theirs, own = field.read(text), field.read(field.default)
            assert theirs.unit.system == system
            assert theirs.value == pytest.approx(own.value, rel=0.02, abs=0.6)
    units = units_in(sheet, system)
    for name, link in units.items():
        assert link in {unit.link for _, unit in sheet.field(name).units if unit.system == system}


@EACH
@BOTH
def test_the_answer_at_rest_stays_what_it_is(sheet, system):
    own = calc.work(sheet.id)
    assert calc.work(sheet.id, defaults_in(sheet, system)).verdict == own.verdict
