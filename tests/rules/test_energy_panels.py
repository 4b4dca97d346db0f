"""Judgements on a roof of panels: each fires on one side of its threshold and not on the other."""

import pytest

from tests.rules.judging import fires, mended, remedy

SHEET = "sun-yield"
ARCTIC = {"latitude": "75", "month": "December"}

# The default array brings 2.01 kW·h on a usual day of June. The noon sun of 15 December stands at
# 66.74° less the latitude (declination −23.26°, almanac).
CASES = {
    "sun.does-not-rise": (ARCTIC, {"latitude": "60", "month": "December"}),
    "panel.below-bank": (
        {"regulator": "PWM", "panel_voltage": "14.4 V", "voltage": "14.4 V"},
        {"regulator": "PWM", "panel_voltage": "14.41 V", "voltage": "14.4 V"},
    ),
    "sun.short": ({"daily_use": "2020 W.h"}, {"daily_use": "2000 W.h"}),
    "sun.tight": ({"daily_use": "1620 W.h"}, {"daily_use": "1600 W.h"}),
    "sun.low": (
        {"latitude": "51.8", "month": "December"},
        {"latitude": "51.7", "month": "December"},
    ),
    "panel.near-bank": (
        {"regulator": "PWM", "panel_voltage": "16.8 V", "voltage": "13 V"},
        {"regulator": "PWM", "panel_voltage": "16.9 V", "voltage": "13 V"},
    ),
    "sky.nearly-clear": ({"sky": "85.1 %"}, {"sky": "85 %"}),
    "tilt.gains-little": ({"month": "October", "tilt": "7"}, {"month": "October", "tilt": "4"}),
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


@pytest.mark.parametrize("rule", ["panel.below-bank", "panel.near-bank", "sun.short", "sun.tight"])
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_two_panels_of_12_v_in_a_row_clear_a_bank_of_14_4_v_and_three_of_8_v():
    """Twice 12 V are 24 V, more than 1.3 times 14.4 V, which is 18.72 V; so are three times 8 V."""
    for volts, row in (("12 V", 24.0), ("8 V", 24.0), ("14.4 V", 28.8)):
        texts = {"regulator": "PWM", "voltage": "14.4 V", "panel_voltage": volts}
        found = remedy(SHEET, "panel.below-bank", texts)
        assert found.values == {"panel_voltage": pytest.approx(row)}


def test_no_array_is_large_enough_for_a_polar_night():
    assert remedy(SHEET, "sun.short", {**ARCTIC, "daily_use": "1 kW.h"}) is None
