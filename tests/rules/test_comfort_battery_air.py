"""Judgements on a battery's air: each fires on one side of its threshold only.

By hand: 0.05 x 6 x 8 mA x 200 are 0.48 m³/h, and 28 times that 13.44 cm².
"""

import pytest

from tests.rules.judging import fires, mended

SHEET = "battery-air"
BOX = {"stands": "box or bay vented outside"}
LFP, FLOODED, EQUALISING = (
    {"chemistry": "LFP"},
    {"chemistry": "flooded"},
    {"charging": "equalising"},
)
GIVEN = {"gas_current": "30 mA/Ah"}

CASES = {
    "battery.vented-in-living-space": (
        {**FLOODED, "stands": "open in the living space"},
        {"stands": "open in the living space"},
    ),
    "battery.vents-too-small": ({"vents": "13.43 cm2"}, {"vents": "13.44 cm2"}),
    "battery.lithium-fault-vents-gas": (LFP, FLOODED),
    "battery.lithium-kept-safe": (LFP, {}),
    "battery.equalising-not-covered": (EQUALISING, {**EQUALISING, **GIVEN}),
    "battery.equalising-by-maker": ({**EQUALISING, **GIVEN}, EQUALISING),
    "battery.equalising-boils": (EQUALISING, {}),
    "battery.hot-on-charge": ({"temperature": "40.1 C"}, {"temperature": "40 C"}),
    "battery.float-only": ({"charging": "float"}, {}),
    "battery.gas-current-below-table": (
        {"gas_current": "7.9 mA/Ah"},
        {"gas_current": "8 mA/Ah"},
    ),
    "battery.openings-unknown": ({**BOX, "vents": ""}, {**BOX, "vents": "20 cm2"}),
    "battery.lithium-unmanaged": ({**LFP, "management": "not fitted"}, LFP),
    "battery.lithium-management-unknown": (
        {**LFP, "management": "not known"},
        {**LFP, "management": "not fitted"},
    ),
    "battery.hydrogen-burns": ({}, LFP),
    "battery.hydrogen-rises": ({}, EQUALISING),
    "battery.sealed-gasses-too": ({}, FLOODED),
    "battery.acid-mist": (FLOODED, {}),
    "battery.traction-rule": ({}, LFP),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


@pytest.mark.parametrize("rule", ["hot-on-charge", "float-only", "openings-unknown"])
def test_what_is_said_of_lead_acid_is_not_said_of_lithium(rule):
    there, _ = CASES[f"battery.{rule}"]
    assert f"battery.{rule}" not in fires(SHEET, {**there, **LFP})


@pytest.mark.parametrize(
    "rule",
    [
        "battery.vented-in-living-space",
        "battery.vents-too-small",
        "battery.equalising-by-maker",
        "battery.hot-on-charge",
        "battery.float-only",
        "battery.gas-current-below-table",
        "battery.openings-unknown",
        "battery.lithium-unmanaged",
        "battery.lithium-management-unknown",
    ],
)
def test_a_remedy_mends_and_brings_nothing_as_grave(rule):
    mended(SHEET, rule, CASES[rule][0])
