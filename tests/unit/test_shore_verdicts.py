"""Where the verdicts of shore-charge turn, and that what can hurt somebody is said."""

import pytest

import calc
from tests.contract.samples import answers, fine, until

TESTED = {"polarity": "correct", "residual": "trips when tested"}


def said(answer) -> set[str]:
    """Return the rules whose cautions stand on an answer."""
    return {remark.rule for remark in answer.cautions}


def for_hours(v) -> float:
    """Return the share of a supply for hours: four fifths by NEC 210.20(A), all in Europe."""
    by_voltage = v["practice"] == "by-voltage" and v["supply_voltage"] <= 160
    return 0.8 if v["practice"] == "80-percent" or by_voltage else 1.0


def test_fine_means_tested_unmixed_warm_enough_and_within_what_the_supply_bears():
    for texts, answer in fine("shore-charge"):
        v = answer.values
        assert v["polarity"] == "correct" and v["residual"] == "trips-when-tested", texts
        assert v["feeds"] != "joined" and v["charge_low"] <= v["temperature"] <= v["charge_high"]
        assert v["on_lead"] <= for_hours(v) * v["supply_limit"] * (1 + 1e-9)
        assert v["chemistry"] != "LFP" or v["temperature"] >= 10 * (1 - 1e-9)
        assert v["hours"] <= v["night"] * (1 + 1e-9)
        assert v["charger"] - v["house_load"] <= v["bank_most"] * (1 + 1e-9)


def test_frost_stops_lfp_whatever_else_is_well():
    """The cell's data sheet: charging from 0 °C."""
    assert calc.work("shore-charge", {**TESTED, "temperature": "-0.1 C"}).verdict == "stop"
    assert calc.work("shore-charge", {**TESTED, "temperature": "0 C"}).verdict == "caution"
    assert calc.work("shore-charge", {**TESTED, "temperature": "10 C"}).verdict == "fine"
    for texts, answer in answers("shore-charge"):
        if answer.values["chemistry"] == "LFP":
            frosty = answer.values["temperature"] < 0
            held = answer.values["cold_cut_off"] == "proven"
            rule = "charge.held-by-cold-cut-off" if held else "charge.in-frost"
            assert (rule if frosty else "bank.never-charge-in-frost") in said(answer), texts
            assert not frosty or answer.verdict != "fine", texts
            assert not frosty or held or answer.verdict == "stop", texts


@pytest.mark.parametrize(
    ("chemistry", "voltage", "verdict"),
    [
        ("LFP", "13 V", "fine"),
        ("LFP", "14.6 V", "fine"),
        ("LFP", "14.7 V", "stop"),
        ("gel", "14.5 V", "stop"),
        ("AGM", "29.6 V", "fine"),
        ("AGM", "30 V", "stop"),
    ],
)
def test_a_voltage_that_the_sheet_of_the_drive_calls_too_high_is_too_high_on_a_lead(
    chemistry, voltage, verdict
):
    lead = {"chemistry": chemistry, "voltage": voltage, "charger": "20 A"}
    assert calc.work("shore-charge", {**TESTED, **lead}).verdict == verdict
    bank = "26 V" if float(voltage.split()[0]) > 20 else "13 V"
    drive = {"chemistry": chemistry, "charge_voltage": voltage, "bank_voltage": bank}
    drive = calc.work("alternator-charge", drive)
    assert (drive.verdict == "stop" and "for such a bank" in drive.sentence) == (verdict == "stop")


@pytest.mark.parametrize("voltage", ["8.8 V", "12.5 V", "25 V"])
def test_a_voltage_at_which_a_bank_does_not_fill_is_seen(voltage):
    rule = "charge.voltage-fills-nothing"
    assert rule in said(calc.work("shore-charge", {**TESTED, "voltage": voltage}))
    assert rule not in said(calc.work("shore-charge", {**TESTED, "voltage": "13 V"}))


@pytest.mark.parametrize(
    "danger",
    [
        {"polarity": "reversed", "switching": "live only"},
        {"residual": "not fitted"},
        {"feeds": "joined"},
    ],
)
def test_what_can_kill_is_a_stop(danger):
    assert calc.work("shore-charge", {**TESTED, **danger}).verdict == "stop"


@pytest.mark.parametrize("choice", ["inverter-charger", "transfer switch"])
def test_two_sources_bring_up_the_joint_of_neutral_and_earth(choice):
    answer = calc.work("shore-charge", {**TESTED, "feeds": choice, "inverter": "2400 W"})
    assert "shore.neutral-and-earth" in said(answer)
    assert answer["transfer_rating"].m_as("A") == pytest.approx(20.0), "2400 W at 120 V"
    assert "shore.neutral-and-earth" not in said(calc.work("shore-charge", TESTED))


def test_the_mains_cautions_stand_on_every_answer():
    for texts, answer in answers("shore-charge"):
        assert said(answer) >= {"shore.mains-can-kill", "shore.uncoil-lead"}, texts


@pytest.mark.parametrize(
    ("other", "verdict"),
    [("6.58 A", "fine"), ("6.6 A", "caution"), ("9.58 A", "caution"), ("9.6 A", "stop")],
)
def test_the_supply_is_held_to_four_fifths_for_hours_and_to_the_whole_at_all(other, verdict):
    """40 A x 13.8 V/0.85/120 V = 5.412 A; 12 A and 15 A less that are 6.588 A and 9.588 A.

    39.6 A at a power factor of 0.99 draw the same, and the label settles that factor.
    """
    charger = {"charger": "39.6 A", "power_factor": "0.99"}
    answer = calc.work("shore-charge", {**TESTED, **charger, "other_load": other})
    assert answer.verdict == verdict


def test_a_charger_without_correction_might_need_twice_the_current():
    """5.412 A twice and 2 A are 12.8 A, more than the 12 A that 15 A bear for hours."""
    answer = calc.work("shore-charge", {**TESTED, "other_load": "2 A"})
    assert (answer.verdict, answer.rule) == ("caution", "shore.may-be-uncorrected")
    labelled = calc.work("shore-charge", {**TESTED, "other_load": "2 A", "power_factor": "0.98"})
    assert labelled.verdict == "fine"


def test_the_setting_given_for_an_overloaded_supply_is_one_that_it_bears():
    seen = []
    for texts, answer in until("shore-charge", lambda: len(seen) > 20):
        v = answer.values
        if answer.result.load.over and v["setting"] is not None:
            amps = v["setting"] * v["voltage"] / v["charger_efficiency"]
            amps = amps / v["supply_voltage"] / v["power_factor"] + v["other_load"]
            assert amps <= for_hours(v) * v["supply_limit"] * (1 + 1e-9), texts
            assert answer.verdict == "stop"
            seen.append(texts)
    assert len(seen) > 20


def test_loads_that_take_all_the_charger_gives_leave_nothing():
    answer = calc.work("shore-charge", {**TESTED, "charger": "10 A", "house_load": "10 A"})
    assert answer.rule == "shore.bank-not-filled" and answer["hours"] is None


def test_loads_on_the_bank_are_fed_first():
    """6 A of fridge leave 34 of 40 A: 200 Ah x 0.5/(0.99 x 34 A)."""
    ask = {"from_state": "40 %", "to_state": "90 %", "house_load": "6 A"}
    found = calc.work("shore-charge", ask)["hours"].m_as("hour")
    assert found == pytest.approx(100 / 0.99 / 34, rel=1e-9)


def test_a_charge_that_goes_down_is_refused():
    with pytest.raises(calc.InputError, match="must be above") as refusal:
        calc.work("shore-charge", {"from_state": "80 %", "to_state": "50 %"})
    assert refusal.value.field == "to_state"


def test_lead_acid_that_misses_the_end_of_its_charge_is_told_what_that_costs():
    short = calc.work("shore-charge", {**TESTED, "chemistry": "gel", "night": "3 h"})
    assert short.verdict == "caution" and "shore.lead-acid-not-filled" in said(short)
    full = calc.work("shore-charge", {**TESTED, "chemistry": "gel", "night": "12 h"})
    assert full.verdict == "fine" and "shore.lead-acid-not-filled" not in said(full)
    assert "charge.lead-acid-gasses" in said(full)


def test_the_night_brings_no_more_than_the_whole_charge_and_more_hours_never_less():
    states = [
        calc.work("shore-charge", {"chemistry": "AGM", "night": f"{n} h"})["after_night"].m_as("")
        for n in (0.5, 1, 2, 3, 4, 5, 6, 7, 12, 48)
    ]
    assert states == sorted(states)
    assert states[-1] == states[-2] == pytest.approx(0.975)


@pytest.mark.parametrize(
    ("voltage", "cells"), [("13.8 V", "6"), ("28.8 V", "12"), ("57.6 V", "24")]
)
def test_the_way_on_to_the_bank_s_air_carries_its_cells(voltage, cells):
    """Six cells to each 12 V of a lead-acid bank."""
    answer = calc.work("shore-charge", {"chemistry": "flooded", "voltage": voltage})
    (move,) = (one for one in answer["moves"] if one.sheet == "battery-air")
    assert dict(move.texts) == {"chemistry": "flooded", "capacity": "200 Ah", "cells": cells}
    assert calc.work(move.sheet, dict(move.texts)).inputs["cells"].given
    lithium = {one.sheet for one in calc.work("shore-charge")["moves"]}
    assert "battery-air" not in lithium, "LFP makes no gas in normal charging"


def test_a_charger_smaller_than_the_tail_cannot_tell_when_the_bank_is_full():
    answer = calc.work("shore-charge", {**TESTED, "charger": "3 A", "night": "96 h"})
    assert "shore.no-more-than-tail" in said(answer)
