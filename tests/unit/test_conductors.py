"""Copper: the published resistances against the physics they must obey."""

import math
from itertools import pairwise

import pytest

from calc.electrical.conductors import at_temperature, conductor, conductors, series_of
from calc.electrical.drop import largest_current, longest_run, loop_resistance, thinnest_within
from calc.tables import table
from calc.units.covered import NotCovered

RESISTIVITY = 1.7241e-8  # ohm m at 20 °C, annealed copper of 100 % IACS: IEC 60028
COEFFICIENT = 0.00393  # per kelvin at 20 °C: IEC 60028
GAUGES = [one for one in conductors() if one.series == "AWG"]
METRIC = [one for one in conductors() if one.series == "mm2"]
CIRCULAR_MIL = math.pi / 4 * 2.54e-5**2  # m²
MM2 = (0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240)


def number(name: str) -> int:
    """Return the gauge number of `8 AWG`; 1/0 is 0, 4/0 is -3."""
    size = name.split()[0]
    return 1 - int(size.split("/")[0]) if "/" in size else int(size)


@pytest.mark.parametrize("one", GAUGES, ids=lambda one: one.name)
def test_a_gauge_has_the_area_of_its_definition(one):
    """ASTM B258: 0.005 in at 36 AWG, 0.46 in at 4/0 AWG, 39 equal ratios between."""
    diameter = 0.005 * 0.0254 * 92 ** ((36 - number(one.name)) / 39)
    assert one.area == pytest.approx(math.pi / 4 * diameter**2, rel=1e-4)


@pytest.mark.parametrize("one", GAUGES, ids=lambda one: one.name)
def test_a_gauge_resists_as_stranded_copper_of_its_area_does(one):
    """NEC chapter 9 table 8 (75 °C) against ASTM B258 area, IACS copper and lay of the strands.

    Strands run in a helix, so they are up to 3 % longer than the wire. Three printed digits allow
    half a unit in the last one, at most 0.5 %.
    """
    solid = RESISTIVITY / one.area * (1 + COEFFICIENT * (75 - 20))
    assert 1.00 * 0.995 <= one.plain / solid <= 1.03 * 1.005


@pytest.mark.parametrize("row", table("awg_resistance").rows, ids=lambda row: row["awg"])
def test_the_area_in_circular_mils_of_table_8_is_that_of_the_gauge(row):
    """One circular mil is pi/4 square thousandths of an inch."""
    area = conductor(f"{row['awg']} AWG").area
    assert float(row["area_cmil"]) * CIRCULAR_MIL == pytest.approx(area, rel=0.005)


@pytest.mark.parametrize("one", METRIC, ids=lambda one: one.name)
def test_a_metric_size_resists_no_less_than_solid_copper_of_its_name_would_by_much(one):
    """IEC 60228 states the most a class 5 conductor may have, from 2 % below to 15 % above."""
    solid = RESISTIVITY / one.area
    assert 0.97 <= one.plain / solid <= 1.17


@pytest.mark.parametrize("one", conductors(), ids=lambda one: one.name)
def test_tinned_copper_resists_a_little_more(one):
    assert 1.005 <= one.tinned / one.plain <= 1.08


@pytest.mark.parametrize("series", [GAUGES, METRIC], ids=["AWG", "mm2"])
def test_sizes_stand_thinnest_first(series):
    for thin, thick in pairwise(series):
        assert thin.area < thick.area
        assert thin.plain > thick.plain
        assert thin.tinned > thick.tinned


def test_the_promised_sizes_are_there():
    assert [one.name for one in GAUGES][:4] == ["22 AWG", "20 AWG", "18 AWG", "16 AWG"]
    assert GAUGES[-1].name == "4/0 AWG"
    assert [one.name for one in METRIC] == [f"{size:g} mm2" for size in MM2]
    assert series_of("8 AWG") == tuple(GAUGES)
    assert series_of("10 mm2") == tuple(METRIC)
    with pytest.raises(NotCovered, match="8 AWG"):
        conductor("7 AWG")


@pytest.mark.parametrize(
    ("temperature", "kt"),
    [(5, 1.064), (10, 1.042), (15, 1.020), (20, 1.000), (25, 0.980), (30, 0.962), (35, 0.943)],
)
def test_the_temperature_law_agrees_with_the_factors_of_iec_60228(temperature, kt):
    """IEC 60228 annex A, R20 = Rt kt, kt = 1/(1 + 0.004 (t - 20)) to three digits: from memory.

    That law is not ours, so the two agree near 20 °C, within 0.5 %.
    """
    assert at_temperature(1.0, 20, temperature) * kt == pytest.approx(1, rel=0.005)


@pytest.mark.parametrize("temperature", [-40, 0, 20, 40, 60, 90, 105])
def test_the_temperature_law_agrees_with_the_note_of_table_8(temperature):
    """NEC chapter 9 table 8, note 2: R2 = R1 (1 + 0.00323 (T2 - 75)); alpha has three digits."""
    by_note = 1 + 0.00323 * (temperature - 75)
    assert at_temperature(1.0, 75, temperature) == pytest.approx(by_note, rel=0.005)


@pytest.mark.parametrize("temperature", [-40, 0, 60, 105])
def test_there_and_back_is_where_one_was(temperature):
    there = at_temperature(3.14, 75, temperature)
    assert at_temperature(there, temperature, 75) == pytest.approx(3.14, rel=1e-12)


def test_a_run_counts_both_conductors():
    """By hand: 10 m one way at 2 mΩ/m is 40 mΩ."""
    assert loop_resistance(10.0, 0.002) == pytest.approx(0.040)


def test_the_longest_run_loses_exactly_what_is_allowed():
    length = longest_run(30.0, 0.002, 0.36)
    assert 30.0 * loop_resistance(length, 0.002) == pytest.approx(0.36, rel=1e-12)


def test_the_thinnest_size_within_a_limit_is_chosen_and_none_is_an_answer():
    sizes = (("thin", 0.01), ("middle", 0.005), ("thick", 0.001))
    assert thinnest_within(sizes, 10.0, 1.0, 0.2) == "thin"  # exactly the limit is within it
    assert thinnest_within(sizes, 10.0, 1.0, 0.1) == "middle"
    assert thinnest_within(sizes, 10.0, 1.0, 0.099) == "thick"
    assert thinnest_within(sizes, 10.0, 1.0, 0.019) is None


def test_the_largest_current_loses_exactly_what_is_allowed():
    """By hand: 0.36 V over 10 m and back at 2 mΩ/m, 40 mΩ, lets 9 A flow."""
    assert largest_current(allowed=0.36, length=10.0, per_length=0.002) == pytest.approx(9.0)
