"""Where a verdict turns, and that what can hurt somebody is said."""

import pytest

import calc


def said(answer) -> str:
    """Return every caution of an answer as one text."""
    return " ".join(remark.text for remark in answer.cautions)


def drop(**inputs):
    return calc.work("wire-drop", inputs)


SHORT = {"length": "10 cm", "limit": "20 %"}
BY_MAKER = {"current": "30 A", "voltage": "12 V", "length": "10 m", "temperature": "20 C"}


def test_a_wire_too_thin_for_its_current_stops_whatever_it_drops():
    """33 CFR 183.425 table 5: 8 AWG, 105 °C insulation, 80 A."""
    assert drop(current="80 A", conductor="8 AWG", **SHORT).verdict == "fine"
    hot = drop(current="80.1 A", conductor="8 AWG", **SHORT)
    assert hot.verdict == "stop"
    assert "Risk of fire" in said(hot) and "80" in said(hot)


def test_a_metric_wire_is_judged_by_the_next_smaller_gauge():
    """10 mm2 lies above 8 AWG (8.37 mm2) and below 6 AWG (13.3 mm2): 80 A, not 120 A."""
    assert drop(current="80 A", conductor="10 mm2", **SHORT).verdict == "fine"
    assert drop(current="81 A", conductor="10 mm2", **SHORT).verdict == "stop"


def test_a_run_that_cannot_carry_the_current_says_what_a_dead_short_would_pass():
    """By hand: 20 m of 20 Ω/km is 0.4 Ω, through which 12 V push 30 A and no more."""
    inputs = {**BY_MAKER, "current": "31 A", "conductor": "4/0 AWG"}
    answer = drop(**inputs, maker_resistance="20 Ω/km")
    assert answer.verdict == "stop"
    assert answer["load_voltage"] is None
    assert "30" in answer.sentence
    assert answer.values["feeds"] == pytest.approx(30)


@pytest.mark.parametrize(
    ("resistance", "limit", "verdict"),
    [
        # Over 20 m at 30 A, 1 Ω/km is 0.6 V: 5 % of 12 V.
        ("1 ohm/km", "5 %", "fine"),
        ("1 ohm/km", "4.99 %", "caution"),
        ("2 ohm/km", "10 %", "fine"),
        ("2 ohm/km", "3 %", "caution"),
        ("2.01 ohm/km", "3 %", "stop"),
        ("2.01 ohm/km", "11 %", "fine"),
    ],
)
def test_a_drop_is_judged_by_the_limit_and_by_ten_percent(resistance, limit, verdict):
    """Worked by hand; 10 % is the widest limit of ABYC E-11 11.14.2.6."""
    answer = drop(**BY_MAKER, conductor="4 AWG", maker_resistance=resistance, limit=limit)
    assert answer.verdict == verdict


def test_beyond_three_percent_an_allowed_drop_is_for_lamps_only():
    """ABYC E-11 11.14.2.6: 3 % for feeders and electronics, 10 % for other lighting."""
    inputs = {**BY_MAKER, "conductor": "4 AWG", "maker_resistance": "1 ohm/km"}
    assert "lighting" in said(drop(**inputs, limit="10 %"))


@pytest.mark.parametrize(
    ("power", "verdict"), [("1250 W", "fine"), ("1251 W", "caution"), ("5562 W", "caution")]
)
def test_a_current_beyond_one_battery_is_a_caution(power, verdict):
    """At 12.5 V: 100 A, the usual limit of one battery (common practice, no source), is 1250 W."""
    assert calc.work("watts-to-amps", {"power": power, "voltage": "12.5 V"}).verdict == verdict


def test_a_current_beyond_every_cable_stops():
    """33 CFR 183.425 table 5 ends at 445 A for 4/0 AWG: at 10 V, 4450 W."""
    within = calc.work("watts-to-amps", {"power": "4450 W", "voltage": "10 V"})
    beyond = calc.work("watts-to-amps", {"power": "4451 W", "voltage": "10 V"})
    assert (within.verdict, beyond.verdict) == ("caution", "stop")


def test_heat_from_a_battery_is_never_plainly_fine():
    answer = calc.work("watts-to-amps", {"power": "100 W", "load_type": "resistive heat"})
    assert answer.verdict == "caution"
    assert "dearest" in said(answer)


def test_an_inverter_brings_its_warning_of_mains_voltage():
    assert "can kill" in said(calc.work("watts-to-amps", {"route": "inverter"}))
    assert "can kill" not in said(calc.work("watts-to-amps", {"route": "direct"}))


@pytest.mark.parametrize(
    ("chemistry", "usable", "verdict"),
    [("AGM", "50 %", "fine"), ("AGM", "51 %", "caution"), ("LFP", "80 %", "fine")],
)
def test_deeper_than_half_wears_lead_acid(chemistry, usable, verdict):
    inputs = {"chemistry": chemistry, "usable": usable, "load": "20 A", "capacity": "200 Ah"}
    assert calc.work("runtime", inputs).verdict == verdict


def test_a_bank_emptied_within_the_hour_is_warned_of():
    inputs = {"capacity": "100 Ah", "chemistry": "LFP"}
    assert "less than an hour" in said(calc.work("runtime", {**inputs, "load": "101 A"}))
    assert "less than an hour" not in said(calc.work("runtime", {**inputs, "load": "100 A"}))


def test_the_clamping_force_spans_the_published_nut_factors():
    """By hand: 12 N·m on 8 mm with K 0.20, and from 0.18 to 0.27: 7.5 kN, 5.56 kN to 8.33 kN."""
    values = calc.work("joint-torque", {"stud": "M8", "maker_torque": "12 N.m"}).values
    assert values["preload"] == pytest.approx(7500)
    assert values["preload_low"] == pytest.approx(12 / (0.27 * 0.008))
    assert values["preload_high"] == pytest.approx(12 / (0.18 * 0.008))


def test_work_on_a_live_bank_is_warned_of_where_a_spanner_or_a_fuse_is_at_hand():
    assert "Disconnect the bank" in said(calc.work("joint-torque"))
    assert "battery disconnected" in said(calc.work("fuse-choice"))
    assert "18 cm" in said(calc.work("fuse-choice"))
