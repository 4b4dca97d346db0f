"""Networks that have no operating point, and what is no network at all."""

import math
import random
from dataclasses import replace

import pytest

from calc.electrical.network import (
    BadNetwork,
    CurrentLoad,
    NoOperatingPoint,
    PowerLoad,
    Resistor,
    Source,
    solve,
)

# Behind 0.1 ohm in all, 12 V can feed no more than 12²/0.4 = 360 W.
BANK = Source("bank", "+", "-", 12, 0.04)
RUN = Resistor("run", "+", "end", 0.06)
EDGE = 360


def fed(*parts, ground="-"):
    return solve([BANK, RUN, *parts], ground)


def refused(*parts, ground="-"):
    with pytest.raises(NoOperatingPoint) as outcome:
        fed(*parts, ground=ground)
    return outcome.value


def test_the_edge_is_sharp():
    for near in (1e-3, 1e-6, 1e-9, 1e-12):
        point = fed(PowerLoad("inverter", "end", "-", EDGE * (1 - near)))
        assert point.voltages["end"] == pytest.approx(6 * (1 + math.sqrt(near)), rel=1e-6)
        assert refused(PowerLoad("inverter", "end", "-", EDGE * (1 + near))).most == EDGE


@pytest.mark.parametrize("times", [1.01, 2, 1e3, 1e9])
def test_however_much_is_asked_the_most_is_the_same(times):
    outcome = refused(PowerLoad("inverter", "end", "-", EDGE * times))
    assert outcome.loads == ("inverter",)
    assert outcome.most == pytest.approx(EDGE, rel=1e-12)


def test_the_smallest_is_fed_first_and_the_most_is_what_it_leaves():
    """By hand: at one node it is the sum that has the edge, so 60 W leave 300 W."""
    pump, inverter = PowerLoad("pump", "end", "-", 60), PowerLoad("inverter", "end", "-", 310)
    outcome = refused(inverter, pump)
    assert outcome.loads == ("inverter",)
    assert outcome.most == pytest.approx(EDGE - 60, rel=1e-8)
    assert outcome.most <= EDGE - 60
    fed(pump, replace(inverter, power=outcome.most))


def test_several_that_cannot_be_fed_are_all_named():
    outcome = refused(
        PowerLoad("oven", "end", "-", 400),
        PowerLoad("pump", "end", "-", 60),
        PowerLoad("inverter", "end", "-", 310),
    )
    assert outcome.loads == ("oven", "inverter")
    assert outcome.most is None
    assert "'oven' and 'inverter'" in str(outcome)


def test_a_load_by_itself_is_not_blamed_for_another():
    """The pump hangs on a bank of its own; only the ground is common."""
    parts = [Source("second", "s", "-", 12, 0.04), PowerLoad("pump", "s", "-", 800)]
    assert refused(*parts, PowerLoad("inverter", "end", "-", 1000)).loads == ("inverter",)


def test_a_charger_near_the_load_moves_the_edge():
    """By hand: 10 A through 0.1 ohm lift 12 V to 13 V, and 13²/0.4 are 422.5 W."""
    charger = CurrentLoad("charger", "end", "-", -10)
    fed(charger, PowerLoad("inverter", "end", "-", 422.4))
    assert refused(charger, PowerLoad("inverter", "end", "-", 422.6)).most == pytest.approx(422.5)


def test_a_blown_fuse_leaves_a_constant_power_unfed():
    fuse = Resistor("fuse", "end", "fridge", 1e9)
    outcome = refused(fuse, PowerLoad("fridge", "fridge", "-", 60))
    assert outcome.most == pytest.approx(12**2 / 4e9)


def test_a_load_connected_backwards_or_to_a_dead_node_gets_nothing():
    assert refused(PowerLoad("radio", "-", "end", 5)).most == 0
    dead = Resistor("to ground", "dead", "-", 1)
    assert refused(dead, PowerLoad("radio", "dead", "-", 5)).most == 0


def divided(power, other, middle):
    """Two banks in series, each with a load across it, and a wire from the middle to theirs."""
    return [
        Source("upper", "+", "m", 12, 0.01),
        Source("lower", "m", "-", 12, 0.01),
        Resistor("plus", "+", "a", 0.02),
        Resistor("middle", "m", "b", middle),
        Resistor("minus", "-", "c", 0.02),
        PowerLoad("one", "a", "b", power),
        PowerLoad("two", "b", "c", other),
    ]


def test_like_loads_on_a_divided_bank_need_nothing_of_its_middle_wire():
    """By hand: each half is 12 V behind 0.03 ohm, and nothing flows in the middle."""
    point = solve(divided(600, 600, 0.05), "m")
    expected = 6 + math.sqrt(36 - 600 * 0.03)
    assert point.drop("one") == pytest.approx(expected, rel=1e-12)
    assert point.drop("two") == pytest.approx(expected, rel=1e-12)
    assert point.currents["middle"] == pytest.approx(0, abs=1e-9)


def test_one_of_two_loads_on_a_divided_bank_may_need_the_other():
    """By hand: alone, a half is 12 V behind 0.08 ohm, which feed 450 W; both together feed 600 W.

    Above 450 W one cannot be fed before the other: they are raised together.
    """
    with pytest.raises(NoOperatingPoint):
        solve([part for part in divided(600, 600, 0.05) if part.name != "two"], "m")
    assert solve(divided(600, 590, 0.05), "m").drop("one") > 8


@pytest.mark.parametrize("hold", [0.5, 10, 200])
def test_loads_in_series_stand_only_while_something_holds_their_middle(hold):
    """By hand: two equal resistors hold the node between two equal loads on 24 V.

    Each load stands at 12 V by itself. A little to one side, the loads pull with 2P/u² and the
    resistors hold with 2/R, so it is the edge where P R = 144 W·ohm.
    """

    def middle(power):
        parts = [
            Source("bank", "+", "-", 24, 1e-9),
            Resistor("upper", "+", "m", hold),
            Resistor("lower", "m", "-", hold),
            PowerLoad("one", "+", "m", power),
            PowerLoad("two", "m", "-", power),
        ]
        return solve(parts, "-").voltages["m"]

    assert middle(0.99 * 144 / hold) == pytest.approx(12)
    with pytest.raises(NoOperatingPoint):
        middle(1.01 * 144 / hold)


def test_with_common_return_the_edge_is_where_a_slow_search_finds_it():
    """Loads drawn by chance. By another way: u = open voltage - R i(u), taken again and again.

    From above it comes down to the highest solution, or below zero where there is none.
    """
    chance = random.Random(7)
    outcomes = []
    for _ in range(60):
        rails = [10 ** chance.uniform(-2.5, -1) for _ in range(4)]
        watts = [chance.uniform(0, 250) for _ in rails]
        parts = [Source("bank", "n0", "-", 12, rails[0])]
        for n, ohms in enumerate(rails[1:]):
            parts.append(Resistor(f"rail {n}", f"n{n}", f"n{n + 1}", ohms))
        parts += [PowerLoad(f"load {n}", f"n{n}", "-", w) for n, w in enumerate(watts)]
        volts = [12.0] * 4
        for _ in range(20_000):
            amps = [w / u for w, u in zip(watts, volts, strict=True)]
            now = 12.0
            volts = [now := now - ohms * sum(amps[n:]) for n, ohms in enumerate(rails)]
            if min(volts) <= 0:
                break
        outcomes.append(min(volts) > 0)
        if min(volts) > 0:
            point = solve(parts, "-")
            for n, voltage in enumerate(volts):
                assert point.voltages[f"n{n}"] == pytest.approx(voltage, rel=1e-9)
        else:
            with pytest.raises(NoOperatingPoint):
                solve(parts, "-")
    assert 15 < sum(outcomes) < 45


BAD = {
    "Two parts are called 'run': give each its own name.": replace(RUN, b="x"),
    "'loop' begins and ends at the same node, 'end'.": Resistor("loop", "end", "end", 1),
    "The resistance of 'joint' must be above zero.": Resistor("joint", "end", "-", 0),
    "The resistance of 'cell' must be above zero.": Source("cell", "end", "-", 3.2, -0.01),
    "The power of 'lamp' must be above zero.": PowerLoad("lamp", "end", "-", 0.0),
    "The power of 'fan' is not a number.": PowerLoad("fan", "end", "-", math.nan),
    "The current of 'heater' is not a number.": CurrentLoad("heater", "end", "-", math.inf),
    "The voltage of 'cell' is not a number.": Source("cell", "end", "-", -math.inf, 1),
    "The resistance of 'gap' is not a number.": Resistor("gap", "end", "-", math.inf),
    "The resistance of 'gap' is beyond what can be worked with.": Resistor("gap", "end", "-", 1e13),
    "The resistance of 'bar' is beyond what can be worked with.": Resistor(
        "bar", "end", "-", 1e-13
    ),
    "The current of 'bolt' is beyond what can be worked with.": CurrentLoad(
        "bolt", "end", "-", -1e13
    ),
    "No source or resistor ties the node 'far' to the ground node '-', so its voltage is not "
    "known.": CurrentLoad("pump", "far", "-", 3),
}


@pytest.mark.parametrize("sentence", BAD)
def test_what_is_no_network_is_refused_with_a_sentence(sentence):
    with pytest.raises(BadNetwork) as bad:
        fed(BAD[sentence])
    assert str(bad.value) == sentence


def test_an_unknown_ground_is_refused_and_so_is_a_network_of_nothing():
    sentence = "No part is connected to the ground node 'chassis'."
    for parts in [BANK], []:
        with pytest.raises(BadNetwork) as bad:
            solve(parts, "chassis")
        assert str(bad.value) == sentence


def test_an_island_of_its_own_is_refused():
    island = Source("island", "i+", "i-", 12, 0.1)
    with pytest.raises(BadNetwork, match=r"ties the node 'i\+' to the ground node '-'"):
        fed(island, PowerLoad("across", "end", "i-", 5))
