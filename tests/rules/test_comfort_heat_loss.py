"""Judgements on a van in the cold: each fires on one side of its threshold only.

Where a threshold is a share of the loss, the loss is taken from the sheet and the share is not.
"""

import pytest

import calc
from tests.rules.judging import fires, mended

SHEET = "heat-loss"
LIT = {
    "exhaust": "both outside",
    "alarm": "fitted and tested",
    "people": "0",
    "air_changes": "1 per hour",
    "usable": "50 %",
}
V = calc.work(SHEET, LIT).values
PLAIN = V["wall_loss"] + V["roof_loss"] + V["floor_loss"]
BARE = V["bare_u"] * (V["wall_area"] + 2 * V["plane"]) * V["rise"]


def output(watts: float) -> dict[str, str]:
    """Return a van with a heater of that output."""
    return {**LIT, "heater_output": f"{watts:.9f} W"}


def margin(heater: float) -> dict[str, str]:
    """Return a van without one whose margin makes the heater asked for that large [W]."""
    return {**LIT, "margin": f"{100 * (heater / V['loss'] - 1):.9f} %"}


def warmed_in(hours: float) -> dict[str, str]:
    """Return a van that warms in that time: it goes with what has to warm, 200 kg at first."""
    own = {**LIT, "heater_output": f"{V['heater']:.9f} W"}
    return {**own, "contents": f"{200 * hours * 3600 / V['warm_up']:.9f} kg"}


def ribbed(high: float) -> dict[str, str]:
    """Return a van whose upper bound is `high` [W]: between no rib and all of it bare."""
    rest = V["glass_loss"] + V["infiltration"] + V["denser"]
    return {**LIT, "ribs": f"{100 * (high - rest - PLAIN) / (BARE - PLAIN):.9f} %"}


def glazed(share: float) -> dict[str, str]:
    """Return a van that loses that share through its glass."""
    others = V["loss"] - V["glass_loss"]
    u = share / (1 - share) * others / (3 * V["rise"])
    return {**LIT, "glazing_u": f"{u:.9f} W/(m²·K)"}


ENOUGH = max(V["heater"], V["high"])
# by hand: 3.6 m x 1.75 m x 1.85 m are 11.655 m³, and 15 m³/h is 1.287 of that
ONE = {**LIT, "people": "1"}

CASES = {
    "heater.too-weak": (output(0.999 * V["loss"]), output(1.001 * V["loss"])),
    "heater.no-spare": (output(0.999 * ENOUGH), output(1.001 * ENOUGH)),
    "heater.far-too-large": (output(2.501 * ENOUGH), output(2.499 * ENOUGH)),
    "heater.nothing-for-wind": (output(1.099 * V["loss"]), output(1.101 * V["loss"])),
    "heater.beyond-usual": (margin(4000.1), margin(3999.9)),
    "heater.less-than-bare-ribs": (margin(0.999 * V["high"]), margin(1.001 * V["high"])),
    "heater.slow-to-warm": (warmed_in(4.01), warmed_in(3.99)),
    "heater.long-to-warm": (warmed_in(2.01), warmed_in(1.99)),
    "room.cold": ({"inside": "15.9 C"}, {"inside": "16 C"}),
    "room.strains-heart": ({"inside": "11.9 C"}, {"inside": "12 C"}),
    "room.stuffy": (
        {**LIT, "air_changes": "0.49 per hour"},
        {**LIT, "air_changes": "0.5 per hour"},
    ),
    "room.fresh-air": (LIT, {**ONE, "air_changes": "1.29 per hour"}),
    "water.freezes": ({"outside": "-0.1 C"}, {"outside": "0 C"}),
    "shell.ribs-matter": (ribbed(1.251 * V["loss"]), ribbed(1.249 * V["loss"])),
    "shell.glass-matters": (glazed(0.301), glazed(0.299)),
    "heater.thin-air": ({"altitude": "1500.1 m"}, {"altitude": "1500 m"}),
    "heat-loss.fine-to-buy": (LIT, {**LIT, "heater_output": "4 kW"}),
    "fuel.fails-in-cold": ({"outside": "-15 C"}, {"outside": "-14.9 C"}),
    "fuel.diesel-waxes": ({"outside": "-10 C"}, {"outside": "-9.9 C"}),
    "fuel.propane-stays-liquid": (
        {"fuel": "propane", "outside": "-30 C"},
        {"fuel": "propane", "outside": "-29.9 C"},
    ),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


def test_one_sleeper_wants_fifteen_cubic_metres_an_hour():
    assert "room.stuffy" in fires(SHEET, {**ONE, "air_changes": "1.28 per hour"})
    assert "room.stuffy" not in fires(SHEET, {**ONE, "air_changes": "1.29 per hour"})


def test_warming_up_and_the_night_together_empty_the_bank():
    both = (V["charge"] + V["warm_charge"]) / 3600 / 0.5
    for share, there in ((0.999, True), (1.001, False)):
        found = fires(SHEET, {**output(V["heater"]), "capacity": f"{share * both:.9f} Ah"})
        assert ("heater.warm-up-beyond-bank" in found) is there
        assert "draw.beyond-bank" not in found


@pytest.mark.parametrize("fuel", ["petrol", "electric"])
def test_cold_does_nothing_to_petrol_and_to_no_fuel(fuel):
    found = fires(SHEET, {"fuel": fuel, "outside": "-60 C"})
    assert not [rule for rule in found if rule.startswith("fuel.") and "heating" not in rule]


@pytest.mark.parametrize(
    "rule",
    [
        "heater.too-weak",
        "heater.no-spare",
        "heater.nothing-for-wind",
        "heater.less-than-bare-ribs",
        "room.cold",
        "room.strains-heart",
        "room.stuffy",
    ],
)
def test_a_remedy_mends_and_brings_nothing_as_grave(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_a_larger_bank_mends_a_night_that_begins_with_warming_up():
    mended(
        SHEET,
        "heater.warm-up-beyond-bank",
        {**output(V["heater"]), "capacity": "43 Ah", "contents": "350 kg"},
    )
