"""Judgements on a charge from an engine: each fires on one side of its threshold, not the other.

SOUND is a machine of 250 A, of which hot 75 A are there at idle and 150 A for hours, the vehicle
takes 30 A, and a charger of 20 A asks about 22 A.
"""

import pytest

import calc
from tests.rules.judging import fires, mended, remedy

SHEET = "alternator-charge"
SOUND = {
    "alternator": "250 A",
    "vehicle_load": "30 A",
    "conductor": "2 AWG",
    "charger_limit": "20 A",
    "chemistry": "AGM",
}
# Through 20 mΩ in all, 14.4 V against 12.4 V pass 100 A
RELAY = {
    "method": "relay",
    "alternator": "250 A",
    "vehicle_load": "30 A",
    "conductor": "4/0 AWG",
    "chemistry": "AGM",
    "engine_voltage": "14.4 V",
    "bank_voltage": "12.4 V",
    "run_resistance": "10 mohm",
    "bank_resistance": "10 mohm",
}
LFP_RELAY = {**RELAY, "chemistry": "LFP"}
# 20 A at 14.4 V through 92 % are 313.04 W: 14.4² V² / (4 x 313.04 W) = 165.6 mΩ
THIN = {**SOUND, "run_resistance": "165 mohm", "lowest_input": "5 V"}

CASES = {
    "engine.over-voltage": ({"engine_voltage": "15.6 V"}, {"engine_voltage": "15.5 V"}),
    "relay.drains-bank": ({**RELAY, "bank_voltage": "14.5 V"}, {**RELAY, "bank_voltage": "14.4 V"}),
    "relay.no-voltage-between": (
        {**RELAY, "bank_voltage": "14.4 V"},
        {**RELAY, "bank_voltage": "14.3 V"},
    ),
    "charger.stays-off": (
        {**SOUND, "engine_voltage": "13.1 V", "stops_by": "starter battery's voltage"},
        {**SOUND, "engine_voltage": "13.2 V", "stops_by": "starter battery's voltage"},
    ),
    # 10 % of 12 V
    "charger.run-too-thin": (
        {**SOUND, "run_resistance": "57 mohm"},
        {**SOUND, "run_resistance": "48 mohm"},
    ),
    "charger.unfed": ({**THIN, "run_resistance": "166 mohm"}, THIN),
    "charger.starved": ({**THIN, "lowest_input": "7.7 V"}, {**THIN, "lowest_input": "7.6 V"}),
    "charger.run-loses-too-much": ({**THIN, "lowest_input": "7.7 V"}, SOUND),
    # half full, the published LFP cell rests at 3.2991 V: 13.196 V
    "relay.no-rise": (
        {**LFP_RELAY, "engine_voltage": "13.19 V"},
        {**LFP_RELAY, "engine_voltage": "13.2 V"},
    ),
    "relay.bounds-nothing": (LFP_RELAY, RELAY),
    "relay.check-its-rating": (RELAY, LFP_RELAY),
    "relay.smart-alternator": (RELAY, SOUND),
    "relay.lfp-cuts-off": (LFP_RELAY, RELAY),
    "relay.sticks": (RELAY, SOUND),
    "relay.current-not-limited": (RELAY, SOUND),
    "relay.resistance-estimated": ({**RELAY, "bank_resistance": ""}, RELAY),
    "run.fused-at-one-end": (
        {**SOUND, "fused": "at the house bank only"},
        {**SOUND, "fused": "at both batteries"},
    ),
    "run.fuses-not-known": ({**SOUND, "fused": "not known"}, {**SOUND, "fused": "none"}),
    "charger.stops-unchecked": (
        {**SOUND, "stops_by": "not checked"},
        {**SOUND, "stops_by": "starter battery's voltage"},
    ),
    "charger.knows-engine-runs": ({**SOUND, "stops_by": "starter battery's voltage"}, SOUND),
    "charger.heat-takes-output": ({**SOUND, "output_left": "99 %"}, SOUND),
    "alternator.nothing-left": (
        {**SOUND, "vehicle_load": "150 A"},
        {**SOUND, "vehicle_load": "149 A"},
    ),
    # LFP takes the 100 A for hours; 200 Ah of AGM, half full, soon no more than a quarter: 50 A
    "alternator.over-rating": (
        {**LFP_RELAY, "vehicle_load": "151 A"},
        {**RELAY, "vehicle_load": "151 A"},
    ),
    "alternator.charger-over-rating": (
        {**SOUND, "vehicle_load": "229 A", "hot_share": "100 %"},
        {**SOUND, "vehicle_load": "225 A", "hot_share": "100 %"},
    ),
    "alternator.lfp-over-hot": (
        {**LFP_RELAY, "vehicle_load": "51 A"},
        {**LFP_RELAY, "vehicle_load": "49 A"},
    ),
    # 60 % of 250 A and a tenth more: 165 A, of which the charger takes about 23 A
    "alternator.hot-too-small": (
        {**SOUND, "vehicle_load": "144 A"},
        {**SOUND, "vehicle_load": "140 A"},
    ),
    "alternator.relay-over-hot": (
        {**RELAY, "vehicle_load": "116 A"},
        {**RELAY, "vehicle_load": "114 A"},
    ),
    "alternator.idle-too-small": (
        {**SOUND, "vehicle_load": "54 A"},
        {**SOUND, "vehicle_load": "52 A"},
    ),
    "alternator.charge-by-what-is-left": (
        {**SOUND, "vehicle_load": "130 A"},
        {**SOUND, "vehicle_load": "120 A"},
    ),
    "drive.bank-full": ({**SOUND, "from_state": "100 %"}, {**SOUND, "from_state": "99.9 %"}),
    # half of 200 Ah, and 85 % of what goes in is kept
    "drive.never-enough": ({**SOUND, "wanted": "118 A.h"}, {**SOUND, "wanted": "117 A.h"}),
    "drive.too-short": ({**SOUND, "wanted": "41 A.h"}, {**SOUND, "wanted": "40 A.h"}),
    "drive.loads-meanwhile": (SOUND, {**RELAY, "bank_voltage": "14.4 V"}),
    "drive.lead-acid-seldom-full": (SOUND, {**SOUND, "chemistry": "LFP"}),
    "drive.fall-is-model": (RELAY, SOUND),
    "bank.past-empty": ({**SOUND, "bank_voltage": "10.4 V"}, {**SOUND, "bank_voltage": "10.5 V"}),
    "charge.voltage-too-high": (
        {**SOUND, "charge_voltage": "14.9 V"},
        {**SOUND, "charge_voltage": "14.8 V"},
    ),
    "charge.lead-acid-ends-low": (
        {**SOUND, "charge_voltage": "13.9 V"},
        {**SOUND, "charge_voltage": "14 V"},
    ),
    "charge.too-much-current": ({**SOUND, "capacity": "79 A.h"}, {**SOUND, "capacity": "80 A.h"}),
    "charge.lead-acid-gasses": (SOUND, {**SOUND, "chemistry": "LFP"}),
    "charge.near-frost": (
        {**SOUND, "chemistry": "LFP", "temperature": "9.9 C"},
        {**SOUND, "chemistry": "LFP", "temperature": "10 C"},
    ),
    "charge.off-room": ({**SOUND, "temperature": "40.1 C"}, {**SOUND, "temperature": "40 C"}),
    # 20 A at the output and 25 % over it: 25 A; 14 AWG carries less in an engine space
    "fuse.window-closed": ({**SOUND, "conductor": "16 AWG"}, {**SOUND, "conductor": "10 AWG"}),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


def test_where_nothing_flows_into_lead_acid_nothing_is_said_of_its_gas():
    assert "charge.lead-acid-gasses" not in fires(SHEET, {**RELAY, "bank_voltage": "14.4 V"})


MENDED = [
    "relay.drains-bank",
    "relay.no-voltage-between",
    "relay.bounds-nothing",
    "relay.check-its-rating",
    "charger.stays-off",
    "charger.heat-takes-output",
    "alternator.nothing-left",
    "alternator.over-rating",
    "alternator.lfp-over-hot",
    "alternator.charger-over-rating",
    "alternator.hot-too-small",
    "alternator.relay-over-hot",
    "run.fused-at-one-end",
    "run.fuses-not-known",
    "charger.stops-unchecked",
    "drive.too-short",
    "charge.voltage-too-high",
    "charge.lead-acid-ends-low",
    "charge.too-much-current",
    "charge.near-frost",
    "charge.off-room",
    "fuse.window-closed",
]


@pytest.mark.parametrize("rule", MENDED)
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_a_run_that_starves_a_charger_is_mended_by_a_thicker_conductor_where_it_is_read():
    thin = {**SOUND, "conductor": "14 AWG", "length": "60 ft", "lowest_input": "12 V"}
    rule = "charger.starved" if "charger.starved" in fires(SHEET, thin) else "charger.unfed"
    after = mended(SHEET, rule, thin)
    assert set(after) - set(thin) == set() and after["conductor"] != "14 AWG"
    assert remedy(SHEET, "charger.starved", CASES["charger.starved"][0]) is None


def test_a_thicker_run_is_no_remedy_where_a_relay_then_passes_more():
    texts = {**RELAY, "conductor": "10 AWG", "run_resistance": ""}
    assert "fuse.window-closed" in fires(SHEET, texts)
    found = remedy(SHEET, "fuse.window-closed", texts)
    assert found is None or "conductor" not in found.values


@pytest.mark.parametrize(
    ("chemistry", "capacity", "milliohm"),
    [
        # 4 cells x 90.9 mV at 1C: 0.3636 ohm A h; lead-acid 12 V/(10 A for each A h): 1.2 ohm A h
        ("LFP", "200 A.h", 1.818),
        ("LFP", "400 A.h", 0.909),
        ("AGM", "100 A.h", 12.0),
        ("flooded", "200 A.h", 6.0),
    ],
)
def test_a_bank_s_resistance_goes_by_chemistry_and_capacity(chemistry, capacity, milliohm):
    texts = {"method": "relay", "chemistry": chemistry, "capacity": capacity}
    found = calc.work(SHEET, {**texts, "bank_voltage": "12.9 V"})
    assert found["inside"].m_as("milliohm") == pytest.approx(milliohm)


@pytest.mark.parametrize("method", ["relay", "charger"])
def test_relay_and_charger_stand_side_by_side_by_the_calculation_of_each(method):
    texts = {"alternator": "220 A", "conductor": "1/0 AWG", "capacity": "400 A.h"}
    rows = calc.work(SHEET, {**texts, "method": method}).values["compared"]
    assert [str(row.method) for row in rows] == ["relay", "charger"]
    for row in rows:
        alone = calc.work(SHEET, {**texts, "method": str(row.method)}).values
        assert row.first == pytest.approx(alone["initial_current"])
        assert row.charge == pytest.approx(alone["charge"])
        assert row.load == pytest.approx(alone["alternator_load"])
    assert rows[0].limit is None and rows[1].limit == pytest.approx(30)
