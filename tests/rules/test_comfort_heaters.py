"""Judgements on a flame and on a night of heat: each fires on one side of its threshold only.

By hand: 30 W for 9 h and 10 Wh to start are 280 Wh, 21.875 Ah at 12.8 V. Half of 200 Ah is
used.
"""

import pytest

import calc
from tests.rules.judging import fires, mended

SHEET = "heater-night"
LIT = {"exhaust": "both outside", "alarm": "fitted and tested"}
ELECTRIC = {"fuel": "electric"}
HALF = {"usable": "50 %"}

CASES = {
    "flame.exhaust-inside": ({"exhaust": "into the living space"}, {"exhaust": "not checked"}),
    "flame.no-alarm": ({"alarm": "not fitted"}, {"alarm": "not checked"}),
    "flame.unchecked": ({**LIT, "alarm": "not checked"}, LIT),
    "flame.carbon-monoxide": (LIT, ELECTRIC),
    "flame.alarm-sounds": (LIT, ELECTRIC),
    "flame.fitting": (LIT, ELECTRIC),
    "flame.clear-pipes": (LIT, ELECTRIC),
    "flame.gas-leaks": ({"fuel": "propane"}, {"fuel": "petrol"}),
    "flame.butane-in-frost": ({"fuel": "propane"}, {"fuel": "petrol"}),
    "draw.beyond-bank": ({**HALF, "capacity": "43.74 Ah"}, {**HALF, "capacity": "43.75 Ah"}),
    "draw.large-share": ({**HALF, "capacity": "174.9 Ah"}, {**HALF, "capacity": "175 Ah"}),
    # nine tenths of half of 48.6 Ah
    "draw.little-to-spare": ({**HALF, "capacity": "48.6 Ah"}, {**HALF, "capacity": "48.7 Ah"}),
    "load.all-becomes-heat": (ELECTRIC, LIT),
    # 384 W at 12.8 V are 30 A
    "load.loose-joint-heats": ({**ELECTRIC, "loss": "384.1 W"}, {**ELECTRIC, "loss": "384 W"}),
    "inverter.output-can-kill": ({**ELECTRIC, "efficiency": "99.9 %"}, ELECTRIC),
    "heater.clear-of-bedding": (ELECTRIC, LIT),
    # 8100 Wh at 12.8 V are 632.8 Ah
    "draw.heat-beyond-bank": ({**HALF, "capacity": "1265 Ah"}, {**HALF, "capacity": "1266 Ah"}),
    "heater.below-lowest-step": ({"loss": "799.9 W"}, {"loss": "800 W"}),
    "heater.beyond-usual": ({"loss": "4000.1 W"}, {"loss": "4000 W"}),
    "heater.thin-air": ({"altitude": "1500.1 m"}, {"altitude": "1500 m"}),
    "fuel.winter-grade": ({"fuel": "diesel"}, {"fuel": "petrol"}),
    "fuel.lower-heating-value": (LIT, ELECTRIC),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


@pytest.mark.parametrize(
    "rule", ["heater.below-lowest-step", "heater.thin-air", "draw.large-share"]
)
def test_what_is_said_of_a_burner_is_not_said_of_an_element(rule):
    assert rule not in fires(SHEET, {**CASES[rule][0], **ELECTRIC})


@pytest.mark.parametrize("field", LIT)
def test_either_thing_that_nobody_looked_at_is_enough(field):
    assert "flame.unchecked" in fires(SHEET, {**LIT, field: "not checked"})


@pytest.mark.parametrize(
    "rule",
    [
        "flame.exhaust-inside",
        "flame.no-alarm",
        "flame.unchecked",
        "draw.beyond-bank",
        "draw.large-share",
        "draw.little-to-spare",
        "heater.thin-air",
    ],
)
def test_a_remedy_mends_and_brings_nothing_as_grave(rule):
    mended(SHEET, rule, CASES[rule][0])


@pytest.mark.parametrize(
    ("texts", "charge"),
    [
        # 8100 Wh at 12.8 V, and over 0.88 and 0.8
        ({"fuel": "electric"}, 632.81),
        ({"fuel": "electric, through an inverter"}, 719.11),
        ({"fuel": "electric", "efficiency": "88 %"}, 719.11),
        ({"fuel": "electric, through an inverter", "efficiency": "80 %"}, 791.02),
    ],
)
def test_electric_heat_is_counted_by_its_route_and_both_routes_are_shown(texts, charge):
    answer = calc.work(SHEET, texts)
    assert answer["charge"].m_as("A*h") == pytest.approx(charge, abs=0.005)
    assert answer["electric_charge"].m_as("A*h") == pytest.approx(632.81, abs=0.005)
    least = 719.11 if charge < 719.2 else charge
    assert answer["inverter_charge"].m_as("A*h") == pytest.approx(least, abs=0.005)
    ways = [row[0] for row in answer.tables["compared"]]
    assert ways[-2:] == ["electric, directly from the bank", "electric, through an inverter"]
