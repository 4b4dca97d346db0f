"""Layers, bridges, air and warming up, against worked examples of others and closed forms."""

import math

import pytest

from calc.comfort import envelope
from calc.tables import table
from calc.units.covered import NotCovered
from calc.units.kinds import TEMPERATURE
from calc.units.quantities import from_base, to_base


def test_surfaces_are_the_printed_ones():
    """ISO 6946 table 7: 0.10 up, 0.13 horizontal, 0.17 down, 0.04 outside."""
    assert [envelope.surfaces(part) for part in ("roof", "wall", "floor")] == [
        (0.10, 0.04),
        (0.13, 0.04),
        (0.17, 0.04),
    ]
    with pytest.raises(NotCovered, match="must be 'roof', 'wall' or 'floor', not 'door'"):
        envelope.surfaces("door")


@pytest.mark.parametrize(
    ("thickness", "conductivity", "printed"),
    [
        (0.102, 0.84, "0.121"),  # Building Construction Handbook, page 468: 102 mm brick
        (0.22, 0.6, "0.367"),  # a school physics page on U-values: 22 cm brick
        (0.013, 0.50, "0.026"),  # Building Construction Handbook, page 468: 13 mm plaster
        (0.215, 0.84, "0.256"),  # the same: 215 mm brick
    ],
)
def test_a_layer_resists_as_worked_examples_print_it(thickness, conductivity, printed):
    assert f"{envelope.resistance(thickness, conductivity):.3f}" == printed


def test_layers_in_series_give_the_printed_u_value():
    """Building Construction Handbook, page 468: 0.055 + 0.256 + 0.026 + 0.123 gives 2.17."""
    layers = (0.055, envelope.resistance(0.215, 0.84), envelope.resistance(0.013, 0.50), 0.123)
    assert f"{envelope.transmittance(layers):.2f}" == "2.17"
    assert f"{1 / envelope.resistance(0.22, 0.6):.2f}" == "2.73"  # printed 2.72 = 1/0.367


def test_a_printed_slip_is_not_followed():
    """A page sums a wall to R 1.91 and prints U 0.51; one over 1.91 is 0.524."""
    u = envelope.transmittance((0.03, 0.08, 0.12, 1.5, 0.06, 0.12))
    assert f"{u:.3f}" == "0.524"
    assert f"{u:.2f}" != "0.51"


def test_cork_is_not_the_conductor_that_a_library_makes_of_it():
    """A program library lists cork tiles with 65 W/(m·K), a thousand times too much."""
    used = [float(row["used_w_mk"]) for row in table("thermal_conductivity").rows]
    assert max(used) < 0.2


@pytest.mark.parametrize(
    ("layers", "expected"),
    [
        # Steel 1 mm, foam 25 mm at 0.034, plywood 4 mm at 0.13: reference sum, 1e-4.
        ((0.13, 0.001 / 50, 0.025 / 0.034, 0.004 / 0.13, 0.04), 1.06828),
        ((0.13, 0.001 / 50, 0.04), 5.8817),
    ],
)
def test_a_van_s_wall_is_the_reference_sum(layers, expected):
    assert envelope.transmittance(layers) == pytest.approx(expected, abs=1e-4)


def test_parts_side_by_side_weigh_by_area():
    """Reference sum: nine tenths at 1.0639 and a tenth at 5.8816 make 1.5457."""
    assert envelope.area_weighted(((0.9, 1.0639), (0.1, 5.8816))) == pytest.approx(1.5457, abs=1e-4)
    assert envelope.area_weighted(((9.0, 1.0639), (1.0, 5.8816))) == pytest.approx(1.5457, abs=1e-4)


def test_a_cover_adds_its_resistance_and_nothing_changes_without():
    assert 1 / envelope.covered(5.7, 0.4) == pytest.approx(1 / 5.7 + 0.4, rel=1e-12)
    assert envelope.covered(5.7, 0.0) == pytest.approx(5.7, rel=1e-12)


def test_air_carries_off_a_third_of_a_watt_hour():
    """Sustainable Energy, appendix E: N = 1 per hour, 10 m³, 20 K is 66.7 W."""
    assert 20 * envelope.air_coefficient(1 / 3600, 10) == pytest.approx(66.667, abs=5e-4)


def test_air_agrees_with_the_imperial_rule():
    """0.018 N V dT with 0.8, 12 000 ft³ and 60 °F prints 10 368 BTU/h = 3038.6 W.

    The rule's 0.018 is rounded from 0.0179, so half a unit of its last digit, 3 %, is allowed.
    """
    ours = envelope.air_coefficient(0.8 / 3600, 12000 * 0.3048**3) * 60 / 1.8
    assert ours == pytest.approx(3038.6, rel=0.03)


@pytest.mark.parametrize(
    ("rho", "heat", "share"),
    [(1.2931, 1005.68, 0.08), (1.2472, 1005.88, 0.05), (1.2046, 1006.14, 0.011)],
)
def test_the_round_figure_for_air_is_near_the_tables(rho, heat, share):
    """CoolProp 8.0.0, dry air at 0, 10 and 20 °C: at most 8 % more than 1200 J/(m³·K)."""
    assert 1 < rho * heat / envelope.AIR_HEAT_BY_VOLUME < 1 + share + 0.005


@pytest.mark.parametrize(("share", "constants"), [(1 - 1 / math.e, 1.0), (1 - math.exp(-3), 3.0)])
def test_a_lump_reaches_63_percent_in_one_time_constant(share, constants):
    """By definition of the time constant C/H."""
    time = envelope.warm_up(500e3, 40.0, 1000.0, share * 1000 / 40)
    assert time == pytest.approx(constants * 500e3 / 40, rel=1e-12)


def test_warming_up_step_by_step_gives_the_same_time():
    """The closed form against small steps of dT = (P − H ΔT)/C dt."""
    capacity, coefficient, power, rise = 480e3, 45.0, 2000.0, 23.0
    warm, steps, step = 0.0, 0, 0.05
    while warm < rise:
        warm += (power - coefficient * warm) / capacity * step
        steps += 1
    time = envelope.warm_up(capacity, coefficient, power, rise)
    assert time == pytest.approx(steps * step, rel=1e-3)


def test_a_heater_that_only_just_holds_never_gets_there():
    assert envelope.warm_up(1e5, 50.0, 1000.0, 20.0) is None
    assert envelope.warm_up(1e5, 50.0, 1000.0, 20.1) is None
    assert envelope.warm_up(1e5, 0.0, 1000.0, 20.0) == 2000.0


def test_sun_through_glass_and_on_sheet():
    """By hand: 800 × 2 × 0.87 = 1392 W; 0.9 × 800 × 0.04 = 28.8 K on the sheet, × 1.5 × 10 m²."""
    assert envelope.sun_through_glass(800, 2, 0.87) == pytest.approx(1392)
    assert envelope.sun_on_sheet(800, 10, 0.9, 1.5, 0.04) == pytest.approx(28.8 * 1.5 * 10)


def test_every_material_says_where_its_figure_stands_and_uses_the_highest():
    for row in table("thermal_conductivity").rows:
        assert float(row["low_w_mk"]) <= float(row["used_w_mk"]) == float(row["high_w_mk"])
        assert row["source"] and row["confidence"]


def test_a_temperature_and_a_difference_of_temperature_are_two_kinds():
    """Ten degrees of difference are 18 °F; ten degrees on the scale are 50 °F."""
    from calc.units.kinds import RISE

    assert RISE is not TEMPERATURE and RISE.base != TEMPERATURE.base
    assert from_base(10.0, RISE, "delta_degree_Fahrenheit") == pytest.approx(18)
    assert from_base(10.0, TEMPERATURE, "degree_Fahrenheit") == pytest.approx(50)
    assert to_base(14.0, TEMPERATURE, "degree_Fahrenheit") == pytest.approx(-10)
    assert to_base(18.0, RISE, "delta_degree_Fahrenheit") == pytest.approx(10)
