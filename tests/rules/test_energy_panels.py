"""Judgements on a roof of panels: each fires on one side of its threshold and not on the other."""

import pytest

from tests.rules.judging import fires, mended, remedy

SHEET = "sun-yield"
ARCTIC = {"latitude": "75", "month": "December"}

# The default array brings 2.01 kWh on a usual day of June. An LFP bank charged at 14.2 V gives
# back 0.99 x 12.8/14.2 of it: with 60 % through it 107.2 % break even. The noon sun of 15 December
# stands at 66.74° less the latitude (declination −23.26°, almanac).
CASES = {
    "sun.does-not-rise": (ARCTIC, {"latitude": "60", "month": "December"}),
    "panel.below-bank": (
        {"regulator": "PWM", "panel_voltage": "14.4 V", "voltage": "14.4 V"},
        {"regulator": "PWM", "panel_voltage": "14.41 V", "voltage": "14.4 V"},
    ),
    "sun.short": ({"daily_use": "1880 W.h"}, {"daily_use": "1870 W.h"}),
    "sun.tight": ({"daily_use": "1710 W.h"}, {"daily_use": "1700 W.h"}),
    "sun.low": (
        {"latitude": "51.8", "month": "December"},
        {"latitude": "51.7", "month": "December"},
    ),
    "panel.near-bank": (
        {"regulator": "PWM", "panel_voltage": "15.5 V", "voltage": "13 V"},
        {"regulator": "PWM", "panel_voltage": "15.6 V", "voltage": "13 V"},
    ),
    # 14.2 V of the panel's voltage are used
    "panel.plain-switch-wastes": (
        {"regulator": "PWM", "panel_voltage": "21.9 V", "voltage": "14.2 V"},
        {"regulator": "PWM", "panel_voltage": "21.8 V", "voltage": "14.2 V"},
    ),
    "sky.nearly-clear": ({"sky": "85.1 %"}, {"sky": "85 %"}),
    "tilt.gains-little": ({"month": "October", "tilt": "7"}, {"month": "October", "tilt": "4"}),
    "panel.regulator-too-small": (
        {"voltage": "13 V", "regulator_limit": "23.6 A"},
        {"voltage": "13 V", "regulator_limit": "23.7 A"},
    ),
    "panel.regulator-holds-back": (
        {"voltage": "13 V", "regulator_limit": "30.7 A"},
        {"voltage": "13 V", "regulator_limit": "30.8 A"},
    ),
    "panel.losses-too-few": ({"losses": "9.9 %"}, {"losses": "10 %"}),
    "panel.flat": ({"tilt": "9.9"}, {"tilt": "10"}),
    "panel.heat-not-counted": ({}, {"air": "20 C"}),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


def test_a_plain_panel_through_a_regulator_that_finds_the_best_voltage_is_neither_near_nor_below():
    for volts in ("10 V", "13 V"):
        found = fires(SHEET, {"regulator": "MPPT", "voltage": "13 V", "panel_voltage": volts})
        assert not found & {"panel.below-bank", "panel.near-bank"}


def test_polar_night_speaks_of_the_night_and_not_of_a_low_sun():
    found = fires(SHEET, {**ARCTIC, "daily_use": "1 kW.h"})
    assert ("sun.low" in found, "sun.short" in found) == (False, True)


MENDED = (
    "panel.below-bank",
    "panel.near-bank",
    "panel.plain-switch-wastes",
    "sun.short",
    "sun.tight",
)


@pytest.mark.parametrize("rule", [*MENDED, "panel.regulator-too-small"])
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_two_panels_of_12_v_in_a_row_clear_a_bank_of_14_4_v_and_three_of_8_v():
    """Twice 12 V are 24 V, more than 1.2 times 14.4 V, which is 17.28 V; so are three times 8 V."""
    for volts, row in (("12 V", 24.0), ("8 V", 24.0), ("14.4 V", 28.8)):
        texts = {"regulator": "PWM", "voltage": "14.4 V", "panel_voltage": volts}
        found = remedy(SHEET, "panel.below-bank", texts)
        assert found.values == {"panel_voltage": pytest.approx(row)}


def test_no_array_is_large_enough_for_a_polar_night():
    assert remedy(SHEET, "sun.short", {**ARCTIC, "daily_use": "1 kW.h"}) is None
