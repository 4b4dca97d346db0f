"""Judgements of run time, bank size, standby drain, bank gauge and watts to amps, on the sheets."""

import pytest

import calc
from tests.rules.judging import fires, mended, remedy

LEAD_OF_800 = {
    "chemistry": "AGM",
    "voltage": "12.2 V",
    "temperature": "25 C",
    "unit_capacity": "800 Ah",
}
REST = {"taken": "at rest", "rested_for": "48 h", "current": "0 A"}
KETTLE = {"power": "1476 W", "route": "inverter", "capacity": "200 Ah"}

# Each rule with inputs on which it fires, and with such where it does not.
CASES = {
    "runtime": {
        # half of 200 Ah, and a quarter of them for AGM
        "bank.heavy-load": ({"load": "101 A"}, {"load": "100 A"}),
        # once its ampere-hours, in amperes, for lead-acid
        "bank.beyond-any-such-bank": (
            {"chemistry": "AGM", "load": "201 A"},
            {"chemistry": "AGM", "load": "200 A"},
        ),
        # 160 Ah at 10 A last 16 h
        "runtime.little-to-spare": (
            {"load": "10 A", "needed": "14.5 h"},
            {"load": "10 A", "needed": "14.3 h"},
        ),
        "runtime.too-short": (
            {"load": "10 A", "needed": "16.1 h"},
            {"load": "10 A", "needed": "16 h"},
        ),
        # half full, as with standby drain below
        "bank.acid-may-freeze": (
            {"chemistry": "AGM", "temperature": "-22 C"},
            {"chemistry": "AGM", "temperature": "-21 C"},
        ),
        "bank.cold-beyond-table": (
            {"chemistry": "AGM", "temperature": "24.9 F"},
            {"chemistry": "AGM", "temperature": "25 F"},
        ),
        "bank.deeper-than-half": (
            {"chemistry": "AGM", "usable": "51 %"},
            {"chemistry": "AGM", "usable": "50 %"},
        ),
        "bank.in-frost": ({"temperature": "-0.1 C"}, {"temperature": "0 C"}),
        "bank.nothing-kept-back": ({"usable": "91 %"}, {"usable": "90 %"}),
        "bank.too-hot": ({"temperature": "45.1 C"}, {"temperature": "45 C"}),
        # 200 Ah over 20 h are 10 A
        "runtime.lighter-than-rated": (
            {"chemistry": "AGM", "load": "9.9 A"},
            {"chemistry": "AGM", "load": "10 A"},
        ),
        "runtime.published-exponents": ({"chemistry": "gel"}, {}),
        "inverter.idle-draw-on-top": (
            {"route": "inverter"},
            {"route": "inverter", "load": "8 A"},
        ),
        "inverter.measured-at-bank": (
            {"route": "inverter", "load": "8 A"},
            {"route": "direct", "load": "8 A"},
        ),
    },
    "bank-size": {
        # 600 Wh × 2 / 12.8 V / 0.64 is 146 Ah: two of 100, for which 100 A are half
        "bank.heavy-load": (
            {"daily_energy": "600 Wh", "heaviest": "1300 W"},
            {"daily_energy": "600 Wh", "heaviest": "1270 W"},
        ),
        # 800 Ah over 20 h are 40 A; 12.2 V × 40 A are 488 W
        "bank-size.drawn-within-hours": (
            {**LEAD_OF_800, "days": "2 h", "daily_energy": "12 kW.h"},
            {**LEAD_OF_800, "days": "2 h", "daily_energy": "11.5 kW.h"},
        ),
        # 960 Wh × 2 / 12.8 V / (0.75 × 0.8) is 250 Ah
        "bank-size.many-side-by-side": (
            {"daily_energy": "960 Wh", "usable": "75 %", "unit_capacity": "50 Ah"},
            {"daily_energy": "960 Wh", "usable": "75 %", "unit_capacity": "63 Ah"},
        ),
        "bank-size.no-room-to-age": ({"ageing": "5 %"}, {"ageing": "6 %"}),
        "bank.cold-factor-from-memory": (
            {"chemistry": "AGM", "temperature": "39.9 F"},
            {"chemistry": "AGM", "temperature": "40 F"},
        ),
        # two of 100 Ah, as above; 12.8 V × 200 A are 2560 W
        "bank.beyond-what-it-may-give": (
            {"daily_energy": "600 Wh", "heaviest": "2561 W", "unit_current": "100 A"},
            {"daily_energy": "600 Wh", "heaviest": "2560 W", "unit_current": "100 A"},
        ),
        "bank-size.voltage-of-lead-acid": (
            {"chemistry": "AGM", "voltage": "25.1 V"},
            {"chemistry": "AGM", "voltage": "25 V"},
        ),
        "bank-size.brought-to-full": ({"chemistry": "flooded"}, {}),
        "bank.never-charge-in-frost": ({}, {"chemistry": "AGM"}),
    },
    "standby-drain": {
        "standing.is-there": (
            {"from_state": "50 %", "to_state": "50 %"},
            {"from_state": "50 %", "to_state": "49 %"},
        ),
        # 200 Ah of AGM and 4 % a month of 30.44 days: down to a fifth in 608.8 days by itself
        "standing.too-long-by-itself": (
            {"chemistry": "AGM", "away": "610 days", "drain": "0 A"},
            {"chemistry": "AGM", "away": "608 days", "drain": "0 A"},
        ),
        # 8 Ah a month are 10.95 mA
        "standing.too-long-either-way": (
            {"chemistry": "AGM", "away": "400 days", "drain": "11 mA"},
            {"chemistry": "AGM", "away": "400 days", "drain": "10.9 mA"},
        ),
        # 2.4 Ah a day and 8 Ah a month: 160 of 200 Ah, down to a fifth, in 60.1 days
        "standing.too-long": (
            {"chemistry": "AGM", "away": "61 days", "drain": "100 mA"},
            {"chemistry": "AGM", "away": "60 days", "drain": "100 mA"},
        ),
        "standing.below-your-limit": (
            {"chemistry": "AGM", "away": "60 days", "drain": "100 mA"},
            {"chemistry": "AGM", "away": "37 days", "drain": "100 mA"},
        ),
        # half of 20 Ah in amperes
        "bank.heavy-load": (
            {"drain": "10.1 A", "capacity": "20 Ah"},
            {"drain": "9.9 A", "capacity": "20 Ah"},
        ),
        "standing.nearly-flat": ({"to_state": "9.9 %"}, {"to_state": "10 %"}),
        "standing.left-below-half": (
            {"chemistry": "gel", "to_state": "49 %"},
            {"chemistry": "gel", "to_state": "50 %"},
        ),
        # With 10 % a month, 20 Ah, and 1.44 Ah a day: 100 Ah last 47.7 days
        "standing.not-sure": (
            {"chemistry": "AGM", "away": "48 days", "drain": "60 mA"},
            {"chemistry": "AGM", "away": "47 days", "drain": "60 mA"},
        ),
        "standing.sulphates": (
            {"chemistry": "AGM", "away": "91 days", "drain": "0 A", "self_discharge": "1 %/month"},
            {"chemistry": "AGM", "away": "90 days", "drain": "0 A", "self_discharge": "1 %/month"},
        ),
        "standing.freezing-point": ({"chemistry": "AGM"}, {}),
        "standing.coldest-not-known": ({}, {"coldest": "5 C"}),
        "standing.management-draws": ({}, {"chemistry": "gel"}),
        "standing.stored-part-empty": (
            {"chemistry": "AGM", "from_state": "94 %"},
            {"chemistry": "AGM", "from_state": "95 %"},
        ),
        "standing.fuse-and-alarms-stay": ({}, {"drain": "0 A"}),
        "bank.in-frost": ({"coldest": "-0.1 C"}, {"coldest": "0 C"}),
        "bank.too-hot": ({"temperature": "45.1 C"}, {"temperature": "45 C"}),
        # 1.190 by BCI, half full, lies between +5 °F at 1.150 and -16 °F at 1.200: -24.3 °C
        "bank.acid-may-freeze": (
            {"chemistry": "AGM", "coldest": "-22 C"},
            {"chemistry": "AGM", "coldest": "-21 C"},
        ),
    },
    "bank-gauge": {
        "charge.in-frost": (
            {"current": "10 A", "temperature": "-0.1 C"},
            {"current": "-10 A", "temperature": "-0.1 C"},
        ),
        "charge.outside-temperature": (
            {"current": "10 A", "temperature": "46 C"},
            {"current": "-10 A", "temperature": "46 C"},
        ),
        # 14.6 V of a 12 V block; half a percent of the reading may be the meter's
        "gauge.overcharged-lfp": (
            {"reading": "14.68 V", "taken": "charging"},
            {"reading": "14.67 V", "taken": "charging"},
        ),
        # 16.1 V less half a percent are 16.02 V, and 16.0 V equalise
        "gauge.charger-run-away": (
            {"chemistry": "AGM", "reading": "16.1 V", "taken": "charging", "current": "20 A"},
            {"chemistry": "AGM", "reading": "16 V", "taken": "charging", "current": "20 A"},
        ),
        "gauge.overcharged-lead-acid": (
            {"chemistry": "gel", "reading": "14.5 V", "taken": "charging"},
            {"chemistry": "gel", "reading": "14.4 V", "taken": "charging"},
        ),
        "bank.heavy-load": ({"current": "-101 A"}, {"current": "-100 A"}),
        "bank.deeper-than-half": (
            {"chemistry": "AGM", "usable": "51 %"},
            {"chemistry": "AGM", "usable": "50 %"},
        ),
        # Flooded: BCI has 12.45 V at three quarters, 12.65 V full
        "bank.stated-above-voltage": (
            {"chemistry": "flooded", "state": "95 %", "reading": "12.4 V", **REST},
            {"chemistry": "flooded", "state": "70 %", "reading": "12.4 V", **REST},
        ),
        "bank.stated-below-voltage": (
            {"chemistry": "flooded", "state": "60 %", "reading": "12.65 V", **REST},
            {"chemistry": "flooded", "state": "95 %", "reading": "12.65 V", **REST},
        ),
        "bank.cold-beyond-table": (
            {"chemistry": "gel", "temperature": "-4 C", "state": "95 %"},
            {"chemistry": "gel", "temperature": "-3.8 C", "state": "95 %"},
        ),
        "gauge.state-unknown": (
            {"monitor": "none", "reading": "13.2 V", **REST, "rested_for": "23.9 h"},
            {"monitor": "none", "reading": "13.2 V", **REST, "rested_for": "24 h"},
        ),
        "gauge.spent": ({"state": "20 %"}, {"state": "21 %"}),
        # A sealed bank at 12.3 V is 25 to 75 % of a table, of which half is used
        "gauge.spent-by-voltage": (
            {"chemistry": "AGM", "monitor": "none", "reading": "12.3 V", **REST},
            {"chemistry": "AGM", "monitor": "none", "reading": "12.65 V", **REST},
        ),
        # 0 to 25 % of it, and half is to be left in
        "gauge.surely-spent-by-voltage": (
            {"chemistry": "AGM", "monitor": "none", "reading": "11.9 V", **REST},
            {"chemistry": "AGM", "monitor": "none", "reading": "12.3 V", **REST},
        ),
        # The flat part of the curve
        "gauge.band-too-wide": (
            {"monitor": "none", "reading": "13.2 V", **REST},
            {"monitor": "none", "reading": "13.4 V", **REST},
        ),
        # Half of 200 Ah
        "charge.too-much-current": ({"current": "101 A"}, {"current": "100 A"}),
        "gauge.no-state-named": (
            {"reading": "13.2 V", **REST, "rested_for": "23.9 h"},
            {"reading": "13.2 V", **REST, "rested_for": "24 h"},
        ),
        # 0.05 A × 168 h and 200 Ah × 3 % of 7 / 30.44 days are 9.8 Ah, 4.9 % of it
        "gauge.perhaps-spent": ({"state": "24.8 %"}, {"state": "25 %"}),
        # The same, 1.4 Ah a day: 20 Ah in 14.3 days
        "gauge.drifted-far": ({"since_full": "14.4 days"}, {"since_full": "14.2 days"}),
        "gauge.not-at-rest": (
            {"reading": "13.2 V", **REST, "current": "-1 A"},
            {"reading": "13.2 V", **REST},
        ),
        "gauge.short-rest": (
            {"chemistry": "AGM", "reading": "12.5 V", **REST, "rested_for": "23.9 h"},
            {"chemistry": "AGM", "reading": "12.5 V", **REST, "rested_for": "24 h"},
        ),
        "gauge.flat-curve": (
            {"reading": "13.2 V", **REST},
            {"chemistry": "AGM", "reading": "12.5 V", **REST},
        ),
        "gauge.this-current-alone": ({}, {"current": "1 A"}),
        "charge.less-near-full": ({"chemistry": "AGM", "current": "1 A"}, {"current": "1 A"}),
        "charge.lead-acid-gasses": ({"chemistry": "AGM", "current": "1 A"}, {"chemistry": "AGM"}),
        "gauge.tables-near-25": (
            {"chemistry": "AGM", "reading": "12.5 V", **REST},
            {"reading": "13.2 V", **REST},
        ),
    },
    "appliance-route": {
        # 24 h × 40 % of 45 W against 80 W through 88 %, and 15 W all day
        "appliance.household-takes-more": ({}, {"ac_power": "10 W", "idle": "1 W"}),
        "appliance.from-labels": (
            {"ac_power": "10 W", "idle": "1 W"},
            {"ac_power": "10 W", "idle": "1 W", "figures": "measured"},
        ),
        # 54 W × 9.6 h / 88 % + 6.5 W × 24 h are 745 Wh, as 77.6 W × 9.6 h are
        "appliance.little-between": (
            {"dc_power": "78 W", "ac_power": "54 W", "idle": "6.5 W"},
            {"dc_power": "45 W", "ac_power": "54 W", "idle": "6.5 W"},
        ),
        "appliance.direct-weak-in-heat": ({"dc_duty": "61 %"}, {"dc_duty": "59 %"}),
    },
    "watts-to-amps": {
        # 4/0 AWG, 105 °C: 445 A by 33 CFR 183.425 table 5, and the largest fuse within is of
        # 400 A, a quarter more than 320 A
        "cable.beyond-one": (
            {"power": "3201 W", "voltage": "10 V"},
            {"power": "3200 W", "voltage": "10 V"},
        ),
        # 2/0 AWG has 330 A there, a quarter more than 264 A
        "load.beyond-heavy-cable": (
            {"power": "2641 W", "voltage": "10 V"},
            {"power": "2640 W", "voltage": "10 V"},
        ),
        "load.beyond-one-battery": (
            {"power": "1010 W", "voltage": "10 V"},
            {"power": "1000 W", "voltage": "10 V"},
        ),
        "load.all-becomes-heat": ({"load_type": "resistive heat"}, {"load_type": "any load"}),
        # half of 200 Ah at 10 A
        "draw.beyond-bank": (
            {"power": "122 W", "hours": "10.1 h", "capacity": "200 Ah", "chemistry": "AGM"},
            {"power": "122 W", "hours": "9.9 h", "capacity": "200 Ah", "chemistry": "AGM"},
        ),
        "draw.little-to-spare": (
            {"power": "128 W", "hours": "14.5 h", "capacity": "200 Ah"},
            {"power": "128 W", "hours": "14.3 h", "capacity": "200 Ah"},
        ),
        # 67.2 Ah of 200 Ah, but 13.4 times its 20-hour current: the half of it lasts 22 min
        "draw.ends-sooner": (
            {**KETTLE, "chemistry": "flooded", "hours": "0.5 h"},
            {**KETTLE, "chemistry": "flooded", "hours": "0.3 h"},
        ),
        # a quarter of 100 Ah
        "bank.heavy-load": (
            {"power": "306 W", "capacity": "100 Ah", "chemistry": "AGM"},
            {"power": "304 W", "capacity": "100 Ah", "chemistry": "AGM"},
        ),
        "load.mostly-heat-perhaps": ({"power": "1000 W"}, {"power": "999 W"}),
        "load.loose-joint-heats": (
            {"power": "301 W", "voltage": "10 V"},
            {"power": "300 W", "voltage": "10 V"},
        ),
        "inverter.idle-draw-apart": ({"route": "inverter"}, {}),
        "inverter.output-can-kill": ({"route": "inverter"}, {}),
    },
}

MENDED = {
    "runtime": (
        "bank.heavy-load",
        "bank.acid-may-freeze",
        "bank.cold-beyond-table",
        "runtime.too-short",
        "bank.deeper-than-half",
        "bank.in-frost",
        "bank.nothing-kept-back",
        "bank.too-hot",
    ),
    "bank-size": ("bank.heavy-load", "bank-size.drawn-within-hours", "bank-size.many-side-by-side"),
    "standby-drain": (
        "standing.is-there",
        "standing.too-long-by-itself",
        "standing.too-long-either-way",
        "standing.too-long",
        "standing.below-your-limit",
        "bank.heavy-load",
        "standing.nearly-flat",
        "standing.left-below-half",
        "standing.not-sure",
        "standing.sulphates",
        "standing.stored-part-empty",
        "bank.in-frost",
        "bank.too-hot",
        "bank.acid-may-freeze",
    ),
    "bank-gauge": (
        "charge.in-frost",
        "charge.outside-temperature",
        "bank.stated-above-voltage",
        "bank.stated-below-voltage",
        "charge.too-much-current",
        "gauge.drifted-far",
    ),
    "watts-to-amps": (
        "draw.beyond-bank",
        "bank.heavy-load",
        "load.beyond-heavy-cable",
    ),
}


@pytest.mark.parametrize(
    ("sheet", "others"),
    [
        ("bank-gauge", {**REST, "field": "reading"}),
        ("shore-charge", {"field": "rested_voltage"}),
        ("alternator-charge", {"field": "rested_voltage"}),
    ],
)
@pytest.mark.parametrize(
    ("chemistry", "dead", "empty"),
    [("LFP", "9.99 V", "10 V"), ("flooded", "11.39 V", "11.4 V"), ("gel", "11.39 V", "11.4 V")],
)
def test_a_bank_past_empty_is_one_judgement(sheet, others, chemistry, dead, empty):
    """2.5 V a cell of LFP, 1.9 V of lead-acid: common practice."""
    others = dict(others)
    field = others.pop("field")
    asked = {"chemistry": chemistry, **others}
    assert "bank.past-empty" in fires(sheet, {**asked, field: dead})
    assert "bank.past-empty" not in fires(sheet, {**asked, field: empty})


@pytest.mark.parametrize("blocks", [1, 2, 4])
def test_a_dead_bank_of_24_or_48_v_is_not_taken_for_another_of_fewer_cells(blocks):
    """10.4 V for each 12 V: under 1.75 V a cell, whatever hangs on it."""
    texts = {"chemistry": "AGM", "bank_voltage": f"{10.4 * blocks} V"}
    assert "bank.past-empty" in fires("alternator-charge", {**texts, "engine_voltage": "14.4 V"})


@pytest.mark.parametrize("sheet", ["shore-charge", "alternator-charge"])
def test_a_stated_state_that_contradicts_the_rested_voltage_is_said(sheet):
    """Flooded: BCI has 12.45 V at three quarters, 12.65 V full, 12.06 V at a quarter."""
    asked = {"chemistry": "flooded"}
    high = {**asked, "from_state": "80 %", "rested_voltage": "12.05 V"}
    low = {**asked, "from_state": "20 %", "rested_voltage": "12.6 V"}
    right = {**asked, "from_state": "75 %", "rested_voltage": "12.45 V"}
    assert "bank.stated-above-voltage" in fires(sheet, high)
    assert "bank.stated-below-voltage" in fires(sheet, low)
    assert not {"bank.stated-above-voltage", "bank.stated-below-voltage"} & fires(sheet, right)
    mended(sheet, "bank.stated-above-voltage", high)


def each(table):
    return [(sheet, rule) for sheet, rules in table.items() for rule in rules]


@pytest.mark.parametrize(("sheet", "rule"), each(CASES))
def test_a_rule_fires_on_one_side_of_its_threshold_only(sheet, rule):
    there, not_there = CASES[sheet][rule]
    assert rule in fires(sheet, there)
    assert rule not in fires(sheet, not_there)


@pytest.mark.parametrize(("sheet", "rule"), each(MENDED))
def test_the_remedy_of_a_rule_silences_it(sheet, rule):
    mended(sheet, rule, CASES[sheet][rule][0])


def test_a_bank_that_loses_too_much_by_itself_is_helped_by_no_smaller_drain():
    for rule, drain in (("by-itself", "0 A"), ("either-way", "100 mA")):
        texts = {"chemistry": "AGM", "away": "620 days", "drain": drain}
        found = remedy("standby-drain", f"standing.too-long-{rule}", texts)
        assert set(found.values) == {"away"}


def test_a_charge_in_frost_is_said_once_and_as_a_stop():
    found = {"current": "10 A", "temperature": "-5 C"}
    assert {"charge.in-frost", "bank.in-frost"} <= fires("bank-gauge", found)
    assert "bank.in-frost" not in calc.work("bank-gauge", found).rules
