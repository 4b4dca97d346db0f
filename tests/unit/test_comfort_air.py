"""Air that carries heat or hydrogen away, against printed examples and the laws of gases."""

import math

import pytest

from calc.comfort import airflow, battery_air
from calc.comfort.battery_air import CellKind, Charging
from calc.units.covered import NotCovered

HOUR = 3600.0


def test_heat_of_a_device_is_what_goes_in_and_does_not_come_out():
    """1000 W out at 90 %: 1111.1 W in, 111.1 W heat."""
    assert airflow.dissipated(1000, 0.9) == pytest.approx(1000 / 0.9 - 1000, rel=1e-12)
    assert airflow.dissipated(1000, 1.0) == 0


@pytest.mark.parametrize(
    ("celsius", "printed"), [(0, 1.2931), (10, 1.2472), (20, 1.2046), (30, 1.1647)]
)
def test_air_is_as_dense_as_a_property_library_has_it(celsius, printed):
    """CoolProp 8.0.0, real air at 101 325 Pa: an ideal gas lies within 0.07 %."""
    assert airflow.density(celsius) == pytest.approx(printed, rel=7e-4)


def test_forced_air_for_500_watts_and_10_kelvin():
    """CoolProp at 20 °C: 148.52 m³/h; the ideal gas is 0.05 % lighter."""
    assert airflow.carrying_flow(500, 10, 20) * HOUR == pytest.approx(148.52, rel=1e-3)


def test_forced_air_by_the_published_constant():
    """A maker's 3160 cfm per kW and °F: 1 kW and 10 °F make 316 cfm of standard air (1.2 kg/m³)."""
    cubic_foot = 0.3048**3
    ours = airflow.carrying_flow(1000, 10 / 1.8, 21) * 60 / cubic_foot
    assert ours == pytest.approx(316, rel=0.005)


def test_the_mass_of_air_is_the_printed_one():
    """A worked line: 800 W, 1005 J/(kg·K), 3 K is 0.265 kg/s."""
    mass = airflow.carrying_flow(800, 3, 35) * airflow.density(35)
    assert f"{mass:.3f}" == "0.265"


def test_a_printed_mix_of_units_is_not_followed():
    """An article puts watts and °C into a formula for BTU/h and °F and prints 30.86 cfm.

    500 W and 15 K are 500 × 3.412 / (1.08 × 27) = 58.5 cfm.
    """
    ours = airflow.carrying_flow(500, 15, 21) * 60 / 0.3048**3
    assert ours == pytest.approx(58.5, rel=0.01)
    assert ours > 1.8 * 30.86


@pytest.mark.parametrize(
    ("height", "outside", "inside", "pascals"),
    [(1.5, 10, 20, 0.6262), (1.5, 0, 20, 1.2983), (2.0, 25, 35, 0.7544), (1.0, 5, 15, 0.4324)],
)
def test_stack_pressure_is_the_published_formula_s(height, outside, inside, pascals):
    """0.0342 p h (1/To − 1/Ti); half a unit of 0.0342's last digit is 0.15 %."""
    ours = airflow.stack_pressure(height, outside, inside)
    assert ours == pytest.approx(pascals, rel=1.5e-3)


@pytest.mark.parametrize(
    ("c", "area", "height", "outside", "inside", "flow"),
    [
        (0.65, 0.01, 1.5, 10, 20, 23.446),
        (0.65, 0.04, 1.0, 20, 30, 75.300),
        (0.60, 0.02, 1.5, 0, 20, 61.214),
    ],
)
def test_stack_flow_is_the_published_formula_s(c, area, height, outside, inside, flow):
    """C A √(2 g h ΔT/Ti), worked apart with g = 9.81."""
    ours = airflow.stack_flow(area, c, height, outside, inside) * HOUR
    assert ours == pytest.approx(flow, rel=5e-4)


def test_two_openings_in_a_row_resist_more_than_either():
    """BS 5925: 0.02 and 0.01 m² count as 0.008944 m²; two alike as 1/√2 of one."""
    assert airflow.series_area(0.02, 0.01) == pytest.approx(0.008944, abs=5e-7)
    assert airflow.series_area(0.03, 0.03) == pytest.approx(0.03 / math.sqrt(2), rel=1e-12)


def test_pressure_and_flow_through_two_vents_tell_the_same():
    """Bernoulli at each vent takes half the draught: Δp/2 = ρ/2 (Q/(C A))², to the change of ρ."""
    area, c = 0.01, 0.62
    flow = airflow.stack_flow(airflow.series_area(area, area), c, 1.0, 20, 30)
    taken = airflow.density(20) / 2 * (flow / (c * area)) ** 2
    assert taken == pytest.approx(airflow.stack_pressure(1.0, 20, 30) / 2, rel=0.01)


def test_the_vents_that_are_asked_for_pass_the_flow_that_was_asked():
    area = airflow.vent_area(0.02, 0.62, 0.4, 30, 45)
    through = airflow.stack_flow(airflow.series_area(area, area), 0.62, 0.4, 30, 45)
    assert through == pytest.approx(0.02, rel=1e-12)


@pytest.mark.parametrize("heat", [0.5, 20, 111, 3000])
@pytest.mark.parametrize("area", [0.0005, 0.01, 0.2])
def test_at_the_temperature_reached_the_draught_carries_the_heat(heat, area):
    inside = airflow.reached_by_draught(heat, area, 0.62, 0.4, 30)
    flow = airflow.stack_flow(airflow.series_area(area, area), 0.62, 0.4, 30, inside)
    assert airflow.carrying_flow(heat, inside - 30, 30) == pytest.approx(flow, rel=1e-9)


def test_a_vent_of_the_size_asked_for_reaches_the_limit_and_no_more():
    area = airflow.vent_area(airflow.carrying_flow(111, 15, 30), 0.62, 0.4, 30, 45)
    assert airflow.reached_by_draught(111, area, 0.62, 0.4, 30) == pytest.approx(45, abs=1e-6)


def test_output_falls_in_a_straight_line_and_not_below_none():
    """By hand: 2.5 % a kelvin from 40 °C leaves 75 % at 50 °C and nothing at 80 °C."""
    left = [airflow.output_left(t, 40, 0.025) for t in (20, 40, 50, 80, 100)]
    assert left == pytest.approx([1, 1, 0.75, 0, 0])


def test_the_printed_battery_example():
    """An emergency-lighting manual, p. 82: 108 cells, 1 mA/Ah, 50 Ah: 0.27 m³/h, 7.56 cm²."""
    gas = battery_air.gas_current(CellKind.SEALED, Charging.FLOAT)
    flow = battery_air.airflow(108, gas, 50 * HOUR)
    assert flow * HOUR == pytest.approx(0.27, rel=1e-12)
    assert battery_air.opening(flow) * 1e4 == pytest.approx(7.56, rel=1e-12)


@pytest.mark.parametrize(
    ("cells", "kind", "charging", "capacity", "flow", "opening"),
    [
        (6, CellKind.VENTED, "boost", 220, 1.32, 36.96),
        (6, CellKind.SEALED, "boost", 100, 0.24, 6.72),
        (6, CellKind.SEALED, "float", 100, 0.03, 0.84),
        (12, CellKind.VENTED, "boost", 220, 2.64, 73.92),
    ],
)
def test_van_batteries_by_the_standard_s_formula(cells, kind, charging, capacity, flow, opening):
    """0.05 n I C and 28 Q, worked apart."""
    ours = battery_air.airflow(cells, battery_air.gas_current(kind, charging), capacity * HOUR)
    assert ours * HOUR == pytest.approx(flow, rel=1e-9)
    assert battery_air.opening(ours) * 1e4 == pytest.approx(opening, rel=1e-9)


def test_the_standard_s_twentieth_is_faraday_s_gas_five_times_over():
    """H₂ at 0 °C: 22.414 L/(2 × 26.8015 Ah); to 4 % in air, safety factor 5: 0.0502."""
    faraday = 22.414e-3 / (2 * 26.8015)
    ours = battery_air.AIR_PER_CHARGE * HOUR
    assert ours == pytest.approx(24 * faraday * 5, rel=0.01)


def test_the_air_in_the_vent_moves_at_a_tenth_of_a_metre_a_second():
    """EN 50272-2: A = 28 Q assumes 0.1 m/s."""
    assert pytest.approx(0.1, rel=0.01) == battery_air.VENT_SPEED


@pytest.mark.parametrize(
    ("kind", "charging"), [(CellKind.LITHIUM, "boost"), (CellKind.VENTED, "equalising")]
)
def test_what_the_table_has_no_gas_current_for_is_refused_with_what_it_has(kind, charging):
    with pytest.raises(NotCovered, match="float or boost of lead-acid"):
        battery_air.gas_current(kind, charging)


def test_a_kind_of_cell_is_not_guessed_from_another_spelling():
    with pytest.raises(NotCovered, match=r"'vented-lead-acid'.*not 'LFP'"):
        battery_air.gas_current("LFP", "boost")
