"""Where a verdict turns, and that what can hurt somebody is said."""

import pytest

import calc
from tests.contract.samples import fine


def said(answer) -> str:
    """Return every caution of an answer as one text."""
    return " ".join(remark.text for remark in answer.cautions)


def drop(**inputs):
    return calc.work("wire-drop", inputs)


SHORT = {"length": "10 cm", "limit": "20 %"}
BY_MAKER = {"current": "30 A", "voltage": "12 V", "length": "10 m", "temperature": "20 C"}
COLD = {"ambient": "-10 C"}  # in which the load warms the copper to no more than 20 °C


@pytest.mark.parametrize("conductor", ["8 AWG", "10 mm2"])
@pytest.mark.parametrize(
    ("current", "insulation", "verdict"),
    [
        ("40 A", "105 C", "fine"),
        ("64 A", "105 C", "fine"),
        ("64.1 A", "105 C", "caution"),
        ("80.1 A", "105 C", "stop"),
        ("40 A", "60 C", "fine"),
        ("40.1 A", "60 C", "caution"),
        ("50 A", "60 C", "caution"),
        ("55.1 A", "60 C", "stop"),
    ],
)
def test_a_current_is_judged_by_the_wire_whatever_it_drops(conductor, current, insulation, verdict):
    """33 CFR 183.425 table 5: 8 AWG carries 55 A with 60 °C insulation and 80 A with 105 °C.

    A fuse is rated 1.25 times the load: 80 A for 64 A; 50 A for 40 A, and no rating is made from
    50 to 55 A. 10 mm2 lies above 8 AWG (8.37 mm2) and below 6 AWG (13.3 mm2): it is read as 8 AWG.
    """
    answer = drop(current=current, conductor=conductor, insulation=insulation, **SHORT)
    other = calc.work(
        "fuse-choice",
        {
            "current": current,
            "conductor": conductor,
            "insulation": insulation,
            "fault_current": "1 A",
        },
    )
    assert answer.verdict == other.verdict == verdict
    if verdict == "stop":
        assert (answer.rule, answer.sentence) == (other.rule, other.sentence)


@pytest.mark.parametrize(
    ("conductor", "current", "verdict"),
    [
        ("22 AWG", "0.1 A", "fine"),
        ("22 AWG", "6 A", "fine"),
        ("22 AWG", "6.1 A", "caution"),
        ("22 AWG", "8 A", "stop"),
        ("0.5 mm2", "8 A", "fine"),
        ("0.5 mm2", "9.8 A", "caution"),
        ("0.5 mm2", "12.2 A", "stop"),
        ("0.75 mm2", "12 A", "fine"),
        ("0.75 mm2", "14.7 A", "caution"),
        ("0.75 mm2", "18.3 A", "stop"),
    ],
)
def test_a_wire_thinner_than_the_table_is_held_to_its_share_of_the_copper(
    conductor, current, verdict
):
    """33 CFR 183.425 table 5 begins at 18 AWG (0.823 mm2): 20 A at 105 °C.

    By area (our step): 22 AWG of 0.326 mm2 has 7.9 A, 0.5 mm2 12.15 A, 0.75 mm2 18.2 A. A fuse is
    rated 1.25 times the load: 7.5 A for 6 A, 10 A for 8 A, 15 A for 12 A.
    """
    answer = drop(current=current, conductor=conductor, length="1 cm", limit="20 %")
    assert answer.verdict == verdict
    assert "cable.below-table" in answer.rules


@pytest.mark.parametrize(
    ("temperature", "verdict"), [("105 C", "fine"), ("105.1 C", "caution"), ("200 C", "caution")]
)
def test_copper_hotter_than_its_insulation_is_a_caution(temperature, verdict):
    answer = drop(current="1 A", conductor="8 AWG", temperature=temperature, **SHORT)
    assert answer.verdict == verdict
    assert ("run.copper-too-hot" in answer.rules) is (verdict == "caution")


@pytest.mark.parametrize("current", ["30 A", "31 A", "2000 A"])
def test_a_run_that_cannot_carry_the_current_says_what_a_dead_short_would_pass(current):
    """By hand: 20 m of 20 Ω/km is 0.4 Ω, through which 12 V push 30 A and no more."""
    inputs = {**BY_MAKER, "conductor": "4/0 AWG", "maker_resistance": "20 Ω/km"}
    answer = drop(**{**inputs, "current": current})
    assert answer.verdict == "stop"
    for name in ("drop", "drop_percent", "loss", "load_voltage"):
        assert answer[name] is None, name
    assert answer.rule == "run.current-cannot-flow" and "30\xa0A" in answer.sentence
    assert answer.values["feeds"] == pytest.approx(30)
    flows = drop(**{**inputs, "current": "29.9 A"})
    assert flows["drop"].m_as("V") == pytest.approx(0.4 * 29.9)
    assert flows["load_voltage"].m_as("V") == pytest.approx(12 - 0.4 * 29.9)


@pytest.mark.parametrize(("current", "hot"), [("16 A", False), ("16.1 A", True), ("80 A", True)])
def test_the_thinnest_size_for_the_drop_is_not_left_to_burn(current, hot):
    """33 CFR 183.425 table 5: 18 AWG carries 20 A with 105 °C insulation, 1.25 times 16 A."""
    answer = drop(current=current, conductor="2 AWG", **SHORT)
    assert answer["smallest_conductor"] == "18 AWG"
    assert ("run.current-decides" in answer.rules) is hot


@pytest.mark.parametrize(
    ("resistance", "limit", "verdict"),
    [
        # Over 20 m at 30 A, 1 Ω/km is 0.6 V: 5 % of 12 V.
        ("1 ohm/km", "5 %", "fine"),
        ("1 ohm/km", "4.99 %", "caution"),
        ("2 ohm/km", "10 %", "fine"),
        ("2 ohm/km", "3 %", "caution"),
        ("2.01 ohm/km", "3 %", "stop"),
        ("2.01 ohm/km", "11 %", "caution"),
        ("2.01 ohm/km", "50 %", "caution"),
        ("2.4 ohm/km", "11 %", "stop"),
    ],
)
def test_a_drop_is_judged_by_the_limit_and_by_ten_percent(resistance, limit, verdict):
    """Worked by hand; 10 % is the widest limit of ABYC E-11 11.14.2.6."""
    answer = drop(**BY_MAKER, **COLD, conductor="4 AWG", maker_resistance=resistance, limit=limit)
    assert answer.verdict == verdict


def test_no_drop_over_ten_percent_is_fine():
    assert max(a.values["drop_percent"] for _, a in fine("wire-drop")) <= 0.10 * (1 + 1e-9)


def test_beyond_three_percent_an_allowed_drop_is_for_lamps_only():
    """ABYC E-11 11.14.2.6: 3 % for feeders and electronics, 10 % for other lighting."""
    inputs = {**BY_MAKER, "conductor": "4 AWG", "maker_resistance": "1 ohm/km"}
    assert "run.only-plain-lighting" in drop(**inputs, limit="10 %").rules


@pytest.mark.parametrize(
    ("power", "verdict"), [("1250 W", "fine"), ("1251 W", "caution"), ("4000 W", "caution")]
)
def test_a_current_beyond_one_battery_is_a_caution(power, verdict):
    """At 12.5 V: 100 A, the usual limit of one battery (common practice, no source), is 1250 W."""
    assert calc.work("watts-to-amps", {"power": power, "voltage": "12.5 V"}).verdict == verdict


def test_a_current_beyond_every_cable_stops():
    """33 CFR 183.425 table 5 ends at 445 A for 4/0 AWG; the largest fuse within is of 400 A, for
    320 A: at 10 V, 3200 W.
    """
    within = calc.work("watts-to-amps", {"power": "3200 W", "voltage": "10 V"})
    beyond = calc.work("watts-to-amps", {"power": "3201 W", "voltage": "10 V"})
    assert "cable.beyond-one" in beyond.rules and "cable.beyond-one" not in within.rules
    assert within.verdict == "caution" and beyond.verdict != "fine"
    assert within.values["thickest_cable"] == 445
    assert within.values["heavy_cable"] == 330  # the same table, 2/0 AWG


@pytest.mark.parametrize(("amps", "verdict"), [(100, "fine"), (320, "caution")])
def test_a_current_of_just_a_limit_is_within_it_at_every_voltage(amps, verdict):
    """A float's last digits must not turn `320 A` into more than `320 A`."""
    for tenths in range(10, 449):
        volts = tenths / 10
        inputs = {"power": f"{amps * volts!r} W", "voltage": f"{volts} V"}
        answer = calc.work("watts-to-amps", inputs)
        assert answer.verdict == verdict, f"{inputs}: {answer.sentence}"
        assert "cable.beyond-one" not in answer.rules


def test_heat_from_a_battery_is_never_plainly_fine():
    answer = calc.work("watts-to-amps", {"power": "100 W", "load_type": "resistive heat"})
    assert answer.verdict == "caution"
    assert "most expensive" in said(answer)


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


def test_a_hard_load_is_warned_of_whatever_share_is_used():
    """Half of the ampere-hours of LFP in amperes: common practice."""
    for usable in ("10 %", "80 %", "90 %"):
        inputs = {"capacity": "100 Ah", "chemistry": "LFP", "usable": usable}
        fast = calc.work("runtime", {**inputs, "load": "51 A"})
        assert (fast.verdict, fast.rule) == ("caution", "bank.heavy-load")
        assert calc.work("runtime", {**inputs, "load": "50 A"}).verdict == "fine"


def test_a_load_at_the_limit_to_the_last_digit_is_not_beyond_it():
    """A float's last digits must not decide a verdict."""
    for tenths in range(10, 400):
        amps = tenths / 10
        answer = calc.work("runtime", {"capacity": f"{amps * 2} Ah", "load": f"{amps} A"})
        assert answer.verdict == "fine", f"{amps} A: {answer.sentence}"


@pytest.mark.parametrize(
    ("chemistry", "verdict"),
    [("LFP", "caution"), ("AGM", "fine"), ("gel", "fine"), ("flooded", "fine")],
)
def test_frost_forbids_charging_to_lfp_alone(chemistry, verdict):
    """Cell data sheet: LFP is charged from 0 °C up."""
    inputs = {"chemistry": chemistry, "temperature": "-1 C", "load": "20 A", "capacity": "200 Ah"}
    answer = calc.work("runtime", inputs)
    assert answer.verdict == verdict
    assert ("must not be charged" in answer.sentence) is (chemistry == "LFP")


def test_the_clamping_force_spans_the_published_nut_factors():
    """By hand: 12 N·m on 8 mm with K 0.20, and from 0.18 to 0.27: 7.5 kN, 5.56 kN to 8.33 kN."""
    values = calc.work("joint-torque", {"stud": "M8", "maker_torque": "12 N.m"}).values
    assert values["preload"] == pytest.approx(7500)
    assert values["preload_low"] == pytest.approx(12 / (0.27 * 0.008))
    assert values["preload_high"] == pytest.approx(12 / (0.18 * 0.008))


def test_work_on_a_live_bank_is_warned_of_where_a_spanner_or_a_fuse_is_at_hand():
    assert "Disconnect the bank" in said(calc.work("joint-torque"))
    assert {"fault.burns", "fuse.place-at-source"} <= set(
        calc.work("fuse-choice", {"fuse_place": "at the battery"}).rules
    )
