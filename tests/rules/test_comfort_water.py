"""Judgements on hot water: each fires on one side of its threshold only.

By hand: 10 L by 35 K hold 1.4665 MJ, which 485 W give in 0.8399 h and 1485 W in 0.2743 h. 15 A at
120 V are 1800 W. Half of 200 Ah is used.
"""

import pytest

import calc
from tests.rules.judging import fires, mended

SHEET = "water-heater"
HALF = {"usable": "50 %"}
NO_VALVE = {"mixing_valve": "not fitted"}
SHORE, ENGINE = {"way": "shore"}, {"way": "engine"}
BURNER = {**HALF, "way": "fuel", "power": "2 kW", "draw": "100 W"}

CASES = {
    "water.never-hot": ({"power": "15 W"}, {"power": "15.1 W"}),
    "heater.beyond-shore-supply": ({**SHORE, "power": "1800.1 W"}, {**SHORE, "power": "1800 W"}),
    "heater.half-of-shore-supply": ({**SHORE, "power": "900.1 W"}, {**SHORE, "power": "900 W"}),
    # (500 W x 0.8399 h + 15 W x 2 h) / 12.8 V are 35.15 Ah
    "draw.beyond-bank": ({**HALF, "capacity": "70.2 Ah"}, {**HALF, "capacity": "70.4 Ah"}),
    # 25 Ah at 12.8 V are 100 W for 3.2 h
    "draw.large-share": ({**BURNER, "hours": "2.93 h"}, {**BURNER, "hours": "2.92 h"}),
    "draw.little-to-spare": ({**BURNER, "hours": "11.26 h"}, {**BURNER, "hours": "11.24 h"}),
    # 500 W at 12.8 V are 39.06 A, half of 78.1 Ah in an hour
    "bank.heavy-load": ({"capacity": "78.0 Ah"}, {"capacity": "78.2 Ah"}),
    "load.all-becomes-heat": (
        {**HALF, "capacity": "281 Ah"},
        {**HALF, "capacity": "281.4 Ah"},
    ),
    "load.loose-joint-heats": ({"power": "384.1 W"}, {"power": "384 W"}),
    "inverter.output-can-kill": ({"efficiency": "99.9 %"}, {}),
    "water.stale": ({**SHORE, "hours": "23.17 h"}, {**SHORE, "hours": "23.16 h"}),
    "water.scalds": ({"to": "48 C"}, {"to": "47.9 C"}),
    "water.no-mixing-valve": ({"to": "48 C", **NO_VALVE}, {"to": "47.9 C", **NO_VALVE}),
    "water.mixing-valve": ({"to": "45 C"}, {"to": "44.9 C"}),
    "water.legionella": ({"to": "59.9 C"}, {"to": "60 C"}),
    "water.element-run-dry": ({}, SHORE),
    "water.mains": (SHORE, {}),
    "engine.idling-kills": (ENGINE, {}),
    "engine.coolant": (ENGINE, SHORE),
    "engine.tank-as-hot": (ENGINE, SHORE),
    "heater.switch-within-reach": (SHORE, ENGINE),
    "flame.fitting": (BURNER, ENGINE),
    "water-heater.fine": (BURNER, SHORE),
    "water-heater.fine-without-bank": (SHORE, BURNER),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


@pytest.mark.parametrize(("share", "there"), [(0.999, True), (1.001, False)])
def test_an_element_that_takes_a_quarter_of_the_bank_is_dear(share, there):
    """35.15 Ah are a quarter of half of 281.2 Ah."""
    found = fires(SHEET, {**HALF, "capacity": f"{281.2 * share:.3f} Ah"})
    assert ("load.all-becomes-heat" in found) is there


@pytest.mark.parametrize(("to", "there"), [("20.1 C", True), ("20 C", False), ("60 C", False)])
def test_germs_grow_between_twenty_and_sixty_degrees(to, there):
    assert ("water.stale" in fires(SHEET, {**SHORE, "to": to, "hours": "48 h"})) is there


def test_what_runs_a_pump_beside_the_engine_is_given_back_by_it():
    assert "draw.large-share" not in fires(SHEET, {**ENGINE, "draw": "100 W", "hours": "3 h"})


@pytest.mark.parametrize(
    "rule",
    [
        "water.never-hot",
        "heater.beyond-shore-supply",
        "heater.half-of-shore-supply",
        "draw.beyond-bank",
        "draw.large-share",
        "draw.little-to-spare",
        "water.scalds",
        "water.no-mixing-valve",
        "water.stale",
    ],
)
def test_a_remedy_mends_and_brings_nothing_as_grave(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_a_mixing_valve_settles_what_a_hot_tank_would_do_to_skin():
    fitted = {"mixing_valve": "fitted"}
    for texts in ({"to": "60 C", **SHORE}, ENGINE, {**ENGINE, "to": "80 C"}):
        assert calc.work(SHEET, {**texts, **fitted}).verdict == "fine"
        assert "water.no-mixing-valve" in fires(SHEET, {**texts, **NO_VALVE})


def test_heat_of_a_drive_is_fine_and_idling_is_warned_of():
    answer = calc.work(SHEET, ENGINE)
    assert answer.verdict == "fine" and "engine.idling-kills" in fires(SHEET, ENGINE)
