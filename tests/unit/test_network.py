"""The network solver beside circuits worked in textbooks and by hand."""

import math

import pytest

import calc
from calc.electrical.drop import loop_resistance
from calc.electrical.network import (
    CurrentLoad,
    NoOperatingPoint,
    PowerLoad,
    Resistor,
    Source,
    solve,
)

# Textbooks have sources without resistance: the smallest one is so small that no digit shows it.
NONE = 1e-12
BANK = Source("bank", "+", "-", 12.8, 0.01)


def two_batteries(*load):
    """The network that the open textbook on electric circuits works by each of its methods."""
    return solve([Source("28 V", "n", "0", 28, 4), Source("7 V", "n", "0", 7, 1), *load], "0")


def test_a_battery_is_charged_by_another_as_in_the_textbook():
    """Open textbook on electric circuits, volume 1, chapter 10, branch current method.

    28 V behind 4 ohm, 7 V behind 1 ohm, 2 ohm across: 8 V, 5 A, 4 A, and -1 A backwards.
    """
    point = two_batteries(Resistor("load", "n", "0", 2))
    assert point.voltages["n"] == pytest.approx(8, rel=1e-14)
    assert point.currents == pytest.approx({"28 V": 5, "7 V": -1, "load": 4}, rel=1e-14)
    assert point.powers == pytest.approx({"28 V": -40, "7 V": 8, "load": 32}, rel=1e-14)
    assert point.heats == pytest.approx({"28 V": 100, "7 V": 1, "load": 32}, rel=1e-14)


def test_two_batteries_share_a_load_as_in_the_textbook():
    """Kirchhoff problem in a forum thread: 100 V and 5 ohm, 95 V and 3 ohm, 80 ohm across both.

    Its answers: 1.069 A and 0.115 A, both discharging, and 94.66 V.
    """
    point = solve(
        [
            Source("A", "+", "-", 100, 5),
            Source("B", "+", "-", 95, 3),
            Resistor("load", "+", "-", 80),
        ],
        "-",
    )
    assert point.currents["A"] == pytest.approx(1.069, abs=0.0005)
    assert point.currents["B"] == pytest.approx(0.115, abs=0.0005)
    assert point.drop("A") == point.voltages["+"] == pytest.approx(94.66, abs=0.005)


def test_the_node_between_two_supplies_is_as_in_the_handbook():
    """US DOE Fundamentals Handbook, Electrical Science, volume 1, page 58 of module 2.

    60 V over 8 ohm and 20 V over 4 ohm meet at 6 ohm: 23.077 V, 3.846 A and 0.769 A. Its third
    current is misprinted: 36.923 V over 8 ohm are 4.615 A, not 4.65 A.
    """
    point = solve(
        [
            Source("60 V", "n", "0", 60, 8),
            Source("20 V", "n", "0", 20, 4),
            Resistor("R2", "n", "0", 6),
        ],
        "0",
    )
    assert point.voltages["n"] == pytest.approx(23.077, abs=0.0005)
    assert point.currents["R2"] == pytest.approx(3.846, abs=0.0005)
    assert point.currents["20 V"] == pytest.approx(-0.769, abs=0.0005)
    assert point.currents["60 V"] == pytest.approx(36.923 / 8, abs=0.0005)


def bridge(volts, *ohms):
    ends = ("top", "left"), ("top", "right"), ("left", "right"), ("left", "0"), ("right", "0")
    resistors = [
        Resistor(f"R{n}", *pair, r) for n, (pair, r) in enumerate(zip(ends, ohms, strict=True), 1)
    ]
    return solve([Source("supply", "top", "0", volts, NONE), *resistors], "0")


def test_an_unbalanced_bridge_has_the_currents_of_the_textbook():
    """Open textbook on electric circuits, volume 1, chapter 10, mesh current method, 24 V."""
    point = bridge(24, 150, 50, 100, 300, 250)
    printed = {"R1": 42.299, "R2": 93.793, "R3": -16.552, "R4": 58.851, "R5": 77.241}
    for name, current in printed.items():
        assert point.currents[name] * 1e3 == pytest.approx(current, abs=0.0005)
    assert point.currents["supply"] * 1e3 == pytest.approx(136.092, abs=0.0005)
    assert point.voltages["left"] == pytest.approx(17.66, abs=0.005)
    assert point.voltages["right"] == pytest.approx(19.31, abs=0.005)


def test_a_bridge_that_needs_star_and_delta_has_the_voltages_of_the_textbook():
    """Open textbook on electric circuits, volume 1, chapter 10, delta-wye conversion, 10 V."""
    point = bridge(10, 12, 18, 6, 18, 12)
    printed = {"R1": 4.706, "R2": 5.294, "R3": 0.5882, "R4": 5.294, "R5": 4.706}
    for name, voltage in printed.items():
        assert point.drop(name) == pytest.approx(voltage, abs=0.0005)


def test_a_balanced_bridge_passes_nothing_across():
    assert bridge(10, 10, 20, 5, 30, 60).currents["R3"] == pytest.approx(0, abs=1e-12)


def test_a_network_seen_from_two_nodes_is_a_voltage_behind_a_resistance():
    """Open textbook, volume 1, chapter 10, Thevenin and Norton: 11.2 V, 0.8 ohm, 14 A shorted."""
    assert two_batteries().voltages["n"] == pytest.approx(11.2, rel=1e-14)
    assert two_batteries(CurrentLoad("one", "n", "0", 1)).voltages["n"] == pytest.approx(11.2 - 0.8)
    assert two_batteries(Resistor("short", "n", "0", NONE)).currents["short"] == pytest.approx(14)


def test_the_most_power_is_that_of_the_textbook_and_a_load_that_asks_more_is_refused():
    """Open textbook, volume 1, chapter 10, maximum power transfer: 39.2 W from 11.2 V and 0.8 ohm.

    At the edge half the voltage is left: 5.6 V.
    """
    asked = PowerLoad("load", "n", "0", 39.2 * (1 - 1e-12))
    assert two_batteries(asked).voltages["n"] == pytest.approx(5.6, rel=2e-6)
    with pytest.raises(NoOperatingPoint) as refused:
        two_batteries(PowerLoad("load", "n", "0", 39.2 * (1 + 1e-12)))
    assert refused.value.loads == ("load",)
    assert refused.value.most == pytest.approx(39.2, rel=1e-14)
    assert str(refused.value) == (
        "No operating point: 'load' cannot be fed with the power required."
    )


@pytest.mark.parametrize("share", [1e-9, 0.01, 0.5, 0.9, 0.999, 1 - 1e-6, 1 - 1e-9])
@pytest.mark.parametrize("ohms", [1e-6, 0.01, 1e3])
def test_a_constant_power_works_at_the_higher_of_its_two_voltages(share, ohms):
    """By hand: u² - E u + P R = 0, so u = E/2 (1 + √(1 - s)), where s is P over E²/4R."""
    power = share * 12.8**2 / 4 / ohms
    point = solve([Source("bank", "+", "-", 12.8, ohms), PowerLoad("load", "+", "-", power)], "-")
    expected = 6.4 * (1 + math.sqrt(1 - share))
    assert point.voltages["+"] == pytest.approx(expected, rel=1e-15 / math.sqrt(1 - share) + 1e-15)
    assert point.powers["load"] == pytest.approx(power, rel=1e-14)
    assert point.currents["load"] == pytest.approx(power / expected, rel=1e-6)


def test_a_shorted_battery_of_110_cells_passes_what_the_guide_says_and_four_add():
    """Guide to d.c. distribution, example: 110 cells of 0.5 mohm, 240 V: 4.37 kA; four: 17.5 kA.

    240 V over 55 mohm are 4.364 kA; the guide rounds it up, and takes four times the rounded one.
    """

    def shorted(count):
        banks = [Source(f"battery {n}", "+", "-", 240, 110 * 0.5e-3) for n in range(count)]
        return solve([*banks, Resistor("short", "+", "-", 1e-9)], "-").currents["short"] / 1e3

    assert shorted(1) == pytest.approx(4.37, abs=0.01)
    assert shorted(4) == pytest.approx(17.5, abs=0.1)
    assert shorted(4) == pytest.approx(4 * shorted(1), rel=1e-6)


@pytest.mark.parametrize("rungs", [1, 2, 10, 30])
def test_a_ladder_of_one_ohm_resistors_is_a_ratio_of_fibonacci_numbers(rungs):
    """By hand: each section makes r into 1 + r/(1 + r), so 2/1, 5/3, 13/8 and so on."""
    parts = [Source("one amp", "n0", "0", 1e9, 1e9)]
    for n in range(rungs):
        parts.append(Resistor(f"rail {n}", f"n{n}", f"n{n + 1}", 1))
        parts.append(Resistor(f"rung {n}", f"n{n + 1}", "0", 1))
    above, below = 2, 1
    for _ in range(rungs - 1):
        above, below = 2 * above + below, above + below
    point = solve(parts, "0")
    measured = point.voltages["n0"] / point.currents["one amp"]
    assert measured == pytest.approx(above / below, rel=1e-14)


def test_a_joint_of_a_microohm_beside_a_megohm_keeps_its_digits():
    """By hand: 100 A over 1 µohm are 100 µV; what the megohm takes is its voltage over 1e6."""
    parts = [
        Source("bank", "+", "-", 12.8, 0.002),
        Resistor("joint", "+", "bus", 1e-6),
        Resistor("meter", "bus", "-", 1e6),
        CurrentLoad("load", "bus", "-", 100),
    ]
    point = solve(parts, "-")
    volts = (12.8 - 100 * 0.002001) / (1 + 0.002001e-6)
    assert point.voltages["bus"] == pytest.approx(volts, rel=1e-15)
    assert point.currents["meter"] == pytest.approx(volts / 1e6, rel=1e-14)
    assert point.drop("joint") == pytest.approx(1e-6 * (100 + volts / 1e6), rel=1e-14)


def test_a_charger_is_a_load_of_negative_current():
    """By hand: 20 A into a bank of 12.8 V behind 10 mohm lift it by 0.2 V."""
    point = solve([BANK, CurrentLoad("charger", "+", "-", -20)], "-")
    assert point.voltages["+"] == pytest.approx(13.0)
    assert point.currents["bank"] == pytest.approx(-20)
    assert point.powers == pytest.approx({"charger": -260, "bank": 260})


def test_the_drop_of_a_run_is_that_of_the_wire_drop_sheet():
    """The sheet's sum, current times loop, beside the network with each conductor by itself."""
    answer = calc.work("wire-drop", {"current": "30 A", "length": "3.6 m", "conductor": "10 mm2"})
    per_length = answer.values["resistance"] / 2 / 3.6
    parts = [
        Source("supply", "+", "-", 12, NONE),
        Resistor("out", "+", "a", 3.6 * per_length),
        Resistor("back", "b", "-", 3.6 * per_length),
        CurrentLoad("charger", "a", "b", 30),
    ]
    point = solve(parts, "-")
    assert loop_resistance(3.6, per_length) == pytest.approx(answer.values["resistance"])
    assert point.drop("out") + point.drop("back") == pytest.approx(answer.values["drop"], rel=1e-12)
    assert 12 - point.between("a", "b") == pytest.approx(answer.values["drop"], rel=1e-9)
    assert point.heats["out"] + point.heats["back"] == pytest.approx(answer.values["loss"])


def test_a_short_passes_what_the_fault_current_sheet_says():
    """The sheet's sum beside the network: three strings of two batteries, and every joint."""
    answer = calc.work(
        "fault-current",
        {"voltage": "26.6 V", "source_resistance": "4 mohm", "batteries": "3", "series": "2"},
    )
    v = answer.values
    parts = [Resistor("short", "end +", "end -", NONE)]
    for n in range(3):
        parts.append(Source(f"upper {n}", "bank +", f"middle {n}", 13.3, 0.004))
        parts.append(Source(f"lower {n}", f"middle {n}", "bank -", 13.3, 0.004))
    for n, (start, end) in enumerate([("bank +", "end +"), ("end -", "bank -")]):
        parts.append(Resistor(f"cable {n}", start, f"lug {n}", v["cable_least"] / 2))
        parts.append(Resistor(f"joint {n}", f"lug {n}", end, v["joints_total"] / 2))
    assert solve(parts, "bank -").currents["short"] == pytest.approx(v["fault_current"], rel=1e-9)


def test_the_choice_of_ground_changes_no_voltage_between_nodes():
    parts = [BANK, Resistor("out", "+", "a", 0.02), Resistor("back", "b", "-", 0.01)]
    parts.append(PowerLoad("fridge", "a", "b", 60))
    points = [solve(parts, ground) for ground in ("-", "+", "a", "b")]
    for point in points:
        assert point.between("a", "b") == pytest.approx(points[0].between("a", "b"), rel=1e-14)
        assert point.currents == pytest.approx(points[0].currents, rel=1e-14)
