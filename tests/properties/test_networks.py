"""What must hold of every network, whichever parts are drawn."""

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.electrical.conductors import (
    Finish,
    GaugeReading,
    Strands,
    resistance_per_length,
    series_of,
)
from calc.electrical.drop import loop_resistance
from calc.electrical.network import (
    CurrentLoad,
    NoOperatingPoint,
    PowerLoad,
    Resistor,
    Source,
    solve,
)
from tests.properties.inputs import SLACK, tried

OHMS = st.floats(-6, 6).map(lambda power: 10**power)
COPPER = {
    "finish": Finish.PLAIN,
    "strands": Strands.FLEXIBLE,
    "gauge_reading": GaugeReading.AWG,
}
DUST = 1e-18  # V, A and W: where nothing flows but what rounding leaves
SMALL = st.floats(-4, -1).map(lambda power: 10**power)
LOADS = {
    "current": lambda size: CurrentLoad("load", "end", "-", size / 12),
    "power": lambda size: PowerLoad("load", "end", "-", size),
    "resistance": lambda size: Resistor("load", "end", "-", 144 / size),
}


@st.composite
def networks(draw, powered=True):
    """Draw parts between two to nine nodes, each tied to the ground node `n0`."""
    size = draw(st.integers(2, 9))
    nodes = [f"n{number}" for number in range(size)]
    parts = [Source("bank", "n1", "n0", draw(st.sampled_from([12.8, 25.6, 51.2])), draw(SMALL))]
    for number in range(2, size):
        start = nodes[draw(st.integers(0, number - 1))]
        parts.append(Resistor(f"tie {number}", start, nodes[number], draw(OHMS)))
    kinds = ["source", "resistor", "current"] + ["power"] * powered
    for number in range(draw(st.integers(1, 8))):
        kind = draw(st.sampled_from(kinds))
        a, b = draw(st.permutations(nodes))[:2]
        name = f"{kind} {number}"
        if kind == "source":
            parts.append(Source(name, a, b, draw(st.floats(-30, 60)), draw(SMALL)))
        elif kind == "resistor":
            parts.append(Resistor(name, a, b, draw(OHMS)))
        elif kind == "current":
            parts.append(CurrentLoad(name, a, b, draw(st.floats(-10, 10))))
        else:
            parts.append(PowerLoad(name, a, b, draw(st.floats(0.001, 500))))
    return parts


def point_of(parts, ground="n0"):
    """Return the operating point, or None where there is none."""
    try:
        return solve(parts, ground)
    except NoOperatingPoint:
        return None


@st.composite
def pairs_of_runs(draw):
    """Draw two runs that differ in one thing only; the second resists more, or the same."""
    series = [one.name for one in series_of(draw(st.sampled_from(["10 AWG", "10 mm2"])))]
    thick = draw(st.sampled_from(series))
    length, temperature = draw(st.floats(0.1, 30)), draw(st.floats(-20, 90))
    kind = draw(st.sampled_from(["thinner", "longer", "hotter"]))
    first, second = [thick, length, temperature], [thick, length, temperature]
    if kind == "thinner":
        second[0] = draw(st.sampled_from(series[: series.index(thick) + 1]))
    elif kind == "longer":
        second[1] = draw(st.floats(length, 60))
    else:
        second[2] = draw(st.floats(temperature, 120))
    return [
        loop_resistance(
            run_length,
            resistance_per_length(name, heat, **COPPER),
        )
        for name, run_length, heat in (first, second)
    ]


@given(pairs_of_runs(), st.sampled_from(list(LOADS)), st.floats(0.5, 600), SMALL, st.floats(1, 600))
@tried(200)
def test_thicker_never_drops_more_at_the_load_longer_and_hotter_never_less(
    pair, kind, size, inside, other
):
    """Beside another load on the same bank; a heater may take so much more that it starves that."""
    lesser, greater = (
        point_of(
            [
                Source("bank", "+", "-", 12.8, inside),
                PowerLoad("other", "+", "-", other),
                Resistor("run", "+", "end", ohms),
                LOADS[kind](size),
            ],
            "-",
        )
        for ohms in pair
    )
    assume(greater is not None)
    if kind == "resistance":
        assume(lesser is not None)
    assert lesser is not None, "a run that resists less feeds whatever one that resists more does"
    before, after = lesser.voltages["end"], greater.voltages["end"]
    assert before >= after - 1e-9 * abs(after)
    if kind == "current":
        assert lesser.drop("run") <= greater.drop("run") * SLACK


@given(networks())
@tried(300)
def test_what_is_delivered_is_what_is_taken_and_lost(parts):
    point = point_of(parts)
    assume(point is not None)
    passed = sum(abs(power) for power in point.powers.values())
    allowed = 1e-9 * passed + DUST
    assert sum(point.powers.values()) == pytest.approx(0, abs=allowed)
    sources = [part for part in parts if isinstance(part, Source)]
    loads = [part for part in parts if isinstance(part, CurrentLoad | PowerLoad)]
    made = sum(part.voltage * point.currents[part.name] for part in sources)
    taken = sum(point.powers[part.name] for part in loads)
    assert made == pytest.approx(taken + sum(point.heats.values()), abs=allowed)
    assert all(heat >= 0 for heat in point.heats.values())
    for part in parts:
        if isinstance(part, PowerLoad):
            assert point.powers[part.name] == pytest.approx(part.power, rel=1e-12)
            assert point.drop(part.name) > 0


@given(networks())
@tried(150)
def test_what_flows_into_a_node_flows_out_of_it(parts):
    point = point_of(parts)
    assume(point is not None)
    over, passed = dict.fromkeys(point.voltages, 0.0), dict.fromkeys(point.voltages, 0.0)
    for part in parts:
        ends = (part.a, part.b) if isinstance(part, Resistor) else (part.plus, part.minus)
        current = point.currents[part.name] * (-1 if isinstance(part, Source) else 1)
        for node, sign in zip(ends, (-1, 1), strict=True):
            over[node] += sign * current
            passed[node] += abs(current)
    most = max(passed.values())
    for node, rest in over.items():
        assert abs(rest) <= 1e-12 * passed[node] + 1e-15 * most + DUST


@given(networks(powered=False), st.floats(-3, 3))
@tried(150)
def test_without_constant_powers_the_effects_of_each_source_add(parts, factor):
    """Superposition; and each effect is in proportion."""

    def only(chosen, times):
        return [
            replace(part, voltage=part.voltage * times * (part is chosen))
            if isinstance(part, Source)
            else replace(part, current=part.current * times * (part is chosen))
            if isinstance(part, CurrentLoad)
            else part
            for part in parts
        ]

    together = solve(parts, "n0").voltages
    causes = [part for part in parts if not isinstance(part, Resistor)]
    alone = [solve(only(part, 1.0), "n0").voltages for part in causes]
    parted = [solve(only(part, factor), "n0").voltages for part in causes]
    most = max(abs(voltage) for one in [together, *alone, *parted] for voltage in one.values())
    last = 1e-9 * most + DUST  # of what remains where sources opposed all but cancel
    # Two sources that short each other pass thousands of amperes; the last digit of these, let out
    # through a resistance that is all that ties the pair to the ground, is a voltage.
    shorted = max(abs(one.voltage) / one.resistance for one in causes if isinstance(one, Source))
    last += 2**-50 * shorted * sum(one.resistance for one in parts if isinstance(one, Resistor))
    for node, voltage in together.items():
        assert sum(one[node] for one in alone) == pytest.approx(voltage, rel=1e-9, abs=last)
        for one, other in zip(alone, parted, strict=True):
            assert other[node] == pytest.approx(factor * one[node], rel=1e-9, abs=last)


@given(networks(), st.floats(0.1, 10))
@tried(150)
def test_a_network_in_proportion_has_its_voltages_in_proportion(parts, factor):
    """Voltages and currents by a factor ask for powers by its square."""
    scaled = []
    for part in parts:
        if isinstance(part, Source):
            part = replace(part, voltage=part.voltage * factor)
        elif isinstance(part, CurrentLoad):
            part = replace(part, current=part.current * factor)
        elif isinstance(part, PowerLoad):
            part = replace(part, power=part.power * factor**2)
        scaled.append(part)
    first, second = point_of(parts), point_of(scaled)
    assert (first is None) == (second is None)
    if first is not None:
        # Where sources oppose each other, what is left between them is the last digits of all.
        last = 1e-9 * max(1.0, *(abs(one) for one in second.voltages.values()))
        for node, voltage in first.voltages.items():
            assert second.voltages[node] == pytest.approx(factor * voltage, rel=1e-6, abs=last)


@given(st.data(), networks())
@tried(100)
def test_the_order_of_the_parts_changes_nothing(data, parts):
    first, second = point_of(parts), point_of(data.draw(st.permutations(parts)))
    assert (first is None) == (second is None)
    if first is not None:
        for node, voltage in first.voltages.items():
            assert second.voltages[node] == pytest.approx(voltage, rel=1e-6, abs=1e-9)


@given(st.integers(2, 12), st.floats(3, 60), SMALL, SMALL)
@tried(100)
def test_parallel_batteries_that_are_alike_add_their_fault_current(count, volts, inside, lead):
    def shorted(banks):
        parts = [Resistor("short", "bar", "-", 1e-9)]
        for number in range(banks):
            parts.append(Source(f"battery {number}", f"{number}", "-", volts, inside))
            parts.append(Resistor(f"lead {number}", f"{number}", "bar", lead))
        return solve(parts, "-")

    one, all_of_them = shorted(1), shorted(count)
    for banks, point in (1, one), (count, all_of_them):
        expected = banks * volts / (inside + lead + banks * 1e-9)
        assert point.currents["short"] == pytest.approx(expected, rel=1e-12)
    each = [all_of_them.currents[f"battery {number}"] for number in range(count)]
    assert each == pytest.approx([each[0]] * count, rel=1e-12)
