"""Judgements on shore power: each fires on one side of its threshold and not on the other.

40 A at 13.8 V through 85 % take 5.412 A of 120 V. 15 A bear 12 A for hours.
"""

import pytest

import calc
from tests.rules.judging import fires, mended, remedy

SHEET = "shore-charge"
TESTED = {"polarity": "correct", "residual": "trips when tested"}
LEAD = {"chemistry": "AGM", "charger": "20 A"}

CASES = {
    "shore.sources-joined": ({"feeds": "joined"}, {"feeds": "transfer switch"}),
    "shore.polarity-reversed": (
        {"polarity": "reversed", "switching": "not known"},
        {"polarity": "reversed", "switching": "both poles"},
    ),
    "shore.reversed-but-isolated": (
        {"polarity": "reversed", "switching": "both poles"},
        {"polarity": "reversed", "supply_voltage": "230 V"},
    ),
    # both poles are usual from 160 V on
    "shore.reversed-check-breaker": (
        {"polarity": "reversed", "supply_voltage": "161 V"},
        {"polarity": "reversed", "supply_voltage": "160 V"},
    ),
    "shore.no-residual-device": ({"residual": "not fitted"}, {"residual": "not tested"}),
    "shore.untested": ({**TESTED, "residual": "not tested"}, TESTED),
    "shore.test-polarity": ({"polarity": "not tested"}, {"polarity": "correct"}),
    "shore.transfer-switch": ({"feeds": "transfer switch"}, {"feeds": "joined"}),
    "shore.neutral-and-earth": ({"feeds": "inverter-charger"}, {"feeds": "charger only"}),
    "shore.input-limit": ({"feeds": "inverter-charger"}, {"feeds": "transfer switch"}),
    "shore.charger-on-shore-side": ({"feeds": "transfer switch"}, {"feeds": "inverter-charger"}),
    "shore.no-room": ({"other_load": "12 A"}, {"other_load": "11.9 A"}),
    "shore.overload": ({"other_load": "9.6 A"}, {"other_load": "9.58 A"}),
    "shore.overload-for-hours": ({"other_load": "6.6 A"}, {"other_load": "6.58 A"}),
    "shore.bank-not-filled": ({"house_load": "40 A"}, {"house_load": "39.9 A"}),
    # twice 5.412 A and 1.2 A are 12.02 A
    "shore.may-be-uncorrected": ({"other_load": "1.2 A"}, {"other_load": "1.1 A"}),
    # 200 Ah x 0.3 / (0.99 x 40 A) are 1.515 h
    "shore.night-too-short": (
        {"from_state": "40 %", "to_state": "70 %", "night": "1.51 h"},
        {"from_state": "40 %", "to_state": "70 %", "night": "1.52 h"},
    ),
    "shore.lead-acid-not-filled": ({**LEAD, "night": "3 h"}, {**LEAD, "night": "30 h"}),
    "shore.no-more-than-tail": ({"charger": "4 A"}, {"charger": "4.1 A"}),
    "shore.eases-off": ({}, {"to_state": "90 %"}),
    "shore.sealed-takes-hours": (LEAD, {}),
    "shore.full-by-tail": ({"to_state": "99.9 %"}, {"to_state": "99.8 %"}),  # 1 - 0.02 x 0.1
    "charge.too-much-current": ({"charger": "100.1 A"}, {"charger": "100 A"}),  # half of 200 Ah
    "charge.voltage-too-high": ({"voltage": "14.61 V"}, {"voltage": "14.6 V"}),  # 4 x 3.65 V
    "charge.voltage-fills-nothing": ({"voltage": "12.9 V"}, {"voltage": "13 V"}),
    "charge.lead-acid-gasses": (LEAD, {}),
    "charge.in-frost": ({"temperature": "-0.1 C"}, {"temperature": "0 C"}),
    "charge.near-frost": ({"temperature": "9.9 C"}, {"temperature": "10 C"}),
    "charge.off-room": ({**LEAD, "temperature": "9.9 C"}, {**LEAD, "temperature": "10 C"}),
    "charge.outside-temperature": ({"temperature": "45.1 C"}, {"temperature": "45 C"}),
    "bank.never-charge-in-frost": ({}, LEAD),
    "bank.freezing-point": ({**LEAD, "temperature": "-1 C"}, {**LEAD, "temperature": "0 C"}),
    "shore-charge.full-already": (
        {"from_state": "99.8 %", "to_state": "100 %"},
        {"from_state": "99 %", "to_state": "100 %"},
    ),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


def test_a_bank_nearly_frozen_is_not_charged():
    """An empty lead-acid bank freezes near -8 °C; three degrees are kept to it."""
    for temperature, there in (("-12 C", True), ("-2 C", False)):
        found = fires(SHEET, {**LEAD, "from_state": "0 %", "temperature": temperature})
        assert ("bank.acid-may-freeze" in found) is there


MENDED = [
    "shore.sources-joined",
    "shore.polarity-reversed",
    "shore.no-residual-device",
    "shore.reversed-but-isolated",
    "shore.reversed-check-breaker",
    "shore.untested",
    "shore.no-room",
    "shore.overload",
    "shore.overload-for-hours",
    "shore.bank-not-filled",
    "shore.night-too-short",
    "charge.too-much-current",
    "charge.voltage-too-high",
    "charge.in-frost",
    "charge.near-frost",
    "charge.off-room",
    "charge.outside-temperature",
]


@pytest.mark.parametrize("rule", MENDED)
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_a_charger_too_large_for_its_supply_is_turned_down_unless_the_night_is_too_short_for_it():
    """100 A take 13.53 A of 120 V; 12 A for hours leave the bank 88.7 A."""
    texts = {"charger": "100 A", "capacity": "400 A.h"}
    change = remedy(SHEET, "shore.overload-for-hours", texts)
    assert change.values == {"charger": pytest.approx(12 * 120 * 0.85 / 13.8)}
    mended(SHEET, "shore.overload-for-hours", texts)
    assert remedy(SHEET, "shore.overload-for-hours", {**texts, "night": "3 h"}) is None


def test_loads_on_the_bank_that_take_all_are_no_matter_of_the_charger_s_setting():
    texts = {"other_load": "9.6 A", "house_load": "40 A"}
    assert remedy(SHEET, "shore.overload", texts) is None
    mended(SHEET, "shore.bank-not-filled", texts)


@pytest.mark.parametrize(
    ("texts", "sustained"),
    [
        ({"supply_voltage": "120 V"}, 12),
        ({"supply_voltage": "100 V"}, 12),
        ({"supply_voltage": "230 V"}, 15),
        ({"supply_voltage": "230 V", "practice": "80 % (North America)"}, 12),
        ({"supply_voltage": "120 V", "practice": "all of it (Europe)"}, 15),
    ],
)
def test_four_fifths_for_hours_are_north_american_practice(texts, sustained):
    """NEC 210.20(A): 125 % of a load for hours, 15 A/1.25 = 12 A."""
    found = calc.work(SHEET, {**texts, "supply_limit": "15 A"})
    assert found["sustained"].m_as("A") == pytest.approx(sustained)


def test_a_breaker_in_one_pole_is_in_order_while_polarity_is():
    assert calc.work(SHEET, {"switching": "live only"}).verdict == "fine"
