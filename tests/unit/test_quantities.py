"""Our small file of units against pint's own, and the conversions at the edge."""

import json
import subprocess
import sys
from pathlib import Path

import pint
import pytest

import calc
from calc.units import quantities
from calc.units.kinds import KINDS, LENGTH
from calc.units.quantities import base_quantity, from_base, quantity, registry, to_base, unit_lines

THEIRS = pint.UnitRegistry()
OURS = registry()
OWN = {
    name.strip()
    for line in Path(quantities.__file__).with_name("units.txt").read_text("utf-8").splitlines()
    if line[:1].isalpha() and "=" in line and "- =" not in line
    for name in line.partition(";")[0].split("=")
    if name.strip().isidentifier()
}
BOTH = sorted(name for name in OWN if name in THEIRS._units)
WANTED = (
    "V", "A", "ohm", "W", "VA", "W*hour", "A*hour", "hour", "day", "m", "ft", "inch", "mm**2",
    "cm**2", "N*m", "lbf*ft", "lbf*inch", "L", "gallon", "kg", "Pa", "percent", "degree",
    "m**3/hour", "ft**3/minute", "BTU/hour", "W/m/K", "kWh/m**2", "mV", "mA", "kW", "mohm",
    "Mohm", "microohm", "kA", "mW", "kWh", "Wh", "Ah", "mAh", "minute", "s", "mm", "cm", "km",
    "kN", "MPa", "kPa", "mL", "g", "delta_degC", "delta_degF", "kVA", "uA", "dm**3", "ohm/km",
)  # fmt: skip


@pytest.mark.parametrize("name", BOTH)
def test_a_unit_that_both_have_is_the_same(name):
    """pint's own definitions file is kept by others: the two agree to one part in 1e9."""
    if THEIRS.Unit(name).dimensionality == THEIRS.kelvin.dimensionality:
        for number in (-40.0, 0.0, 25.0, 212.0):
            theirs = THEIRS.Quantity(number, name).to("kelvin").magnitude
            assert OURS.Quantity(number, name).to("kelvin").magnitude == pytest.approx(theirs)
        return
    theirs = THEIRS.Quantity(1.0, name).to_base_units()
    ours = OURS.Quantity(1.0, name).to(f"{theirs.units}")
    assert ours.magnitude == pytest.approx(theirs.magnitude, rel=1e-9)


def test_the_comparison_covers_our_file():
    assert len(BOTH) > 90
    assert OWN - set(BOTH) <= {"lbm", "mil_length"}


@pytest.mark.parametrize("name", WANTED)
def test_a_result_can_be_asked_for_in_every_usual_unit(name):
    theirs = THEIRS.Quantity(2.5, name)
    ours = OURS.Quantity(2.5, name)
    base = theirs.to_base_units().units
    assert ours.m_as(f"{base}") == pytest.approx(theirs.m_as(base), rel=1e-9)
    assert OURS.Quantity(ours.m_as(f"{base}"), f"{base}").m_as(name) == pytest.approx(2.5)


def test_readings_and_differences_of_temperature_are_two_kinds():
    assert OURS.Quantity(100.0, "degC").m_as("degF") == pytest.approx(212)
    assert OURS.Quantity(-40.0, "degF").m_as("degC") == pytest.approx(-40)
    assert OURS.Quantity(100.0, "delta_degC").m_as("delta_degF") == pytest.approx(180)
    with pytest.raises(pint.OffsetUnitCalculusError):
        OURS.Quantity(20.0, "degC") * 2


@pytest.mark.parametrize(
    ("number", "unit", "base"),
    [
        # By definition: inch 25.4 mm, pound 0.45359237 kg, g 9.80665 m/s2, hour 3600 s.
        (1, "foot", 0.3048),
        (1, "inch", 0.0254),
        (1, "force_pound * inch", 0.45359237 * 9.80665 * 0.0254),
        (1, "force_pound * foot", 0.45359237 * 9.80665 * 0.3048),
        (200, "ampere * hour", 720000),
        (1, "kilowatt * hour", 3.6e6),
        (1, "day", 86400),
        (140, "degree_Fahrenheit", 60),
        (-40, "degree_Fahrenheit", -40),
        (1, "ohm / kilofoot", 1 / 304.8),
        (2.1, "ohm / kilometer", 0.0021),
        (3, "percent", 0.03),
    ],
)
def test_a_unit_is_what_it_is_by_definition(number, unit, base):
    kind = next(kind for kind in KINDS if unit in [one.name for one in kind.units])
    assert to_base(number, kind, unit) == pytest.approx(base, rel=1e-12)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_every_unit_of_a_kind_has_its_dimension_and_converts_back(kind):
    base = OURS.Quantity(1, kind.base)
    for unit in kind.units:
        assert OURS.Quantity(1, unit.name).dimensionality == base.dimensionality
        there = to_base(12.5, kind, unit.name)
        assert from_base(there, kind, unit.name) == pytest.approx(12.5, rel=1e-12)
        by_pint = THEIRS.Quantity(12.5, unit.name).to(kind.base).magnitude
        assert there == pytest.approx(by_pint, rel=1e-9)
    for name in (*kind.shown, *kind.shown_us):
        assert kind.unit(name)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_a_result_is_given_in_the_first_unit_of_its_kind(kind):
    given = quantity(7.25, kind)
    assert given.units == OURS.Quantity(1, kind.units[0].name).units
    assert given.m_as(kind.base) == pytest.approx(7.25, rel=1e-12)
    assert base_quantity(7.25, kind).m_as(kind.base) == 7.25


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_units_shown_stand_smallest_first(kind):
    for names in (kind.shown, kind.shown_us):
        sizes = [to_base(1.0, kind, name) for name in names]
        assert sizes == sorted(sizes)


@pytest.fixture
def bundled(monkeypatch):
    """Put unit lines where the page's bundle has them, as they come out of its file."""

    def put(lines):
        held = json.loads(json.dumps(lines))
        monkeypatch.setattr(quantities, "_ready_lines", lambda: held)
        quantities._line.cache_clear()

    yield put
    quantities._line.cache_clear()


EVERY = [(kind, unit.name) for kind in KINDS for unit in kind.units]


def test_there_is_a_line_for_every_unit_and_no_other():
    assert set(unit_lines(KINDS)) == {f"{name} to {kind.base}" for kind, name in EVERY}


@pytest.mark.parametrize(("kind", "name"), EVERY, ids=lambda part: getattr(part, "id", part))
def test_a_unit_line_is_what_pint_itself_converts(kind, name):
    """Three points, so that slope and offset are both held; to a float's last digits."""
    slope, offset = unit_lines(KINDS)[f"{name} to {kind.base}"]
    for number in (-40.0, 0.5, 1234.5):
        by_pint = OURS.Quantity(number, name).to(kind.base).magnitude
        assert number * slope + offset == pytest.approx(by_pint, rel=1e-12, abs=0)


def test_lines_that_the_page_brings_along_convert_as_pint_does(bundled):
    def all_ways():
        return [
            (to_base(number, kind, name), from_base(number, kind, name))
            for kind, name in EVERY
            for number in (-40.0, 0.5, 1234.5)
        ]

    by_pint = all_ways()
    bundled(unit_lines(KINDS))
    assert all_ways() == by_pint


def test_lines_that_the_page_brings_along_are_the_ones_used(bundled):
    bundled({"foot to meter": [2.0, 3.0]})
    assert to_base(5.0, LENGTH, "foot") == 13.0
    assert from_base(13.0, LENGTH, "foot") == 5.0
    assert to_base(5.0, LENGTH, "meter") == 5.0


def test_the_library_s_own_folder_brings_no_lines_along():
    """They are made when the site is built, so they cannot grow stale beside the definitions."""
    assert not Path(quantities.__file__).with_name(quantities.UNIT_LINES).exists()
    assert quantities._ready_lines() == {}


def test_with_its_lines_the_page_answers_without_pint():
    """In a process of its own, since this one has long imported it."""
    answers_all = (
        "import json, sys\n"
        "from calc import worksheets\n"
        "from calc.units import quantities\n"
        "lines = json.load(sys.stdin)\n"
        "quantities._ready_lines = lambda: lines\n"
        "from calc.render.bridge import ask\n"
        "for name in worksheets():\n"
        "    print(json.loads(ask(json.dumps({'sheet': name, 'values': {}})))['verdict'])\n"
        "print('pint' in sys.modules)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", answers_all],
        input=json.dumps(unit_lines(KINDS)), capture_output=True, text=True, timeout=60,
    )  # fmt: skip
    assert done.stderr == ""
    verdicts = [calc.work(name).verdict for name in calc.worksheets()]
    assert done.stdout.split() == [*verdicts, "False"]


def test_there_is_one_registry():
    assert registry() is registry()
