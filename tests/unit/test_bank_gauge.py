"""What a monitor counts, and when a voltage says nothing of a bank's state."""

import pytest

import calc
from calc.energy import battery
from tests.contract.samples import answers

HOUR = 3600.0


def gauge(**inputs):
    return calc.work("bank-gauge", inputs)


def test_a_heavy_load_s_share_is_that_of_the_run_time():
    """Two ways through Peukert's law: the share of a charge, and the time in rated-hours form."""
    share = battery.count_share(capacity=360000, rated_time=72000, current=40, exponent=1.2)
    time = battery.peukert_runtime(
        capacity=360000, rated_time=72000, current=40, exponent=1.2, usable=0.5
    )
    assert 0.5 * 360000 * share / 40 == pytest.approx(time, rel=1e-12)
    assert battery.count_share(capacity=360000, rated_time=72000, current=1, exponent=1.2) == 1.0


def test_minus_empties_and_plus_fills_and_nothing_flows_at_zero():
    """By hand: 120 Ah out at 6 A; 80 Ah in at 8 A × 0.99."""
    out, into, still = (gauge(state="60 %", current=c) for c in ("-6 A", "8 A", "0 A"))
    assert out["time"].m_as("hour") == pytest.approx(20)
    assert into["time"].m_as("hour") == pytest.approx(80 / (8 * 0.99))
    assert still["time"] is None and still.verdict == "fine"


@pytest.mark.parametrize("name", battery.Chemistry)
@pytest.mark.parametrize("taken", ["under load", "charging"])
def test_no_state_is_ever_named_under_load_or_on_charge(name, taken):
    for volts in ("11 V", "12.4 V", "12.8 V", "13.3 V", "14.2 V"):
        answer = gauge(chemistry=name, reading=volts, taken=taken, current="0 A")
        assert answer["says_low"] is None and answer["voltage_says"] == "no state at all"
        assert answer["why"] and answer.verdict == "caution"


@pytest.mark.parametrize(("name", "hours"), [("flooded", 6), ("AGM", 6), ("gel", 6), ("LFP", 24)])
def test_before_its_rest_is_over_a_bank_names_no_state(name, hours):
    """Owner manual: at least 6 h idle. Voicila et al.: LFP relaxes for up to 24 h and more."""
    asked = {"chemistry": name, "reading": "12.5 V", "taken": "at rest", "current": "0 A"}
    assert gauge(rested_for=f"{hours - 0.1} h", **asked)["says_low"] is None
    assert gauge(rested_for=f"{hours} h", **asked)["says_low"] is not None


def test_a_monitor_outside_the_rested_band_is_never_fine():
    for texts, answer in answers("bank-gauge"):
        values = answer.values
        if values["says_low"] is None or values["monitor"] != "counts":
            continue
        inside = values["says_low"] <= values["state"] <= values["says_high"]
        assert inside or answer.verdict != "fine", texts


def test_a_reading_that_belongs_to_another_nominal_voltage_is_refused():
    with pytest.raises(calc.InputError, match="nominal voltage") as refusal:
        gauge(reading="25.6 V", taken="at rest", rested_for="30 h")
    assert refusal.value.field == "reading"
    assert gauge(reading="25.6 V", system="24 V", taken="at rest", rested_for="30 h")


def test_two_blocks_in_series_read_as_one_of_half_the_voltage():
    one = gauge(reading="12.9 V", taken="at rest", rested_for="30 h")
    two = gauge(reading="25.8 V", system="24 V", taken="at rest", rested_for="30 h")
    four = gauge(reading="51.6 V", system="48 V", taken="at rest", rested_for="30 h")
    for other in (two, four):
        assert other.values["says_low"] == pytest.approx(one.values["says_low"])
        assert other.values["says_high"] == pytest.approx(one.values["says_high"])


@pytest.mark.parametrize(("name", "volts"), [("LFP", "9.9 V"), ("AGM", "11.3 V")])
def test_a_bank_that_rests_below_empty_is_not_to_be_charged(name, volts):
    """2.5 V and 1.9 V a cell: common practice. An empty lead-acid bank rests near 11.8 V."""
    answer = gauge(chemistry=name, reading=volts, taken="at rest", rested_for="48 h", current="0 A")
    assert (answer.verdict, answer.rule) == ("stop", "bank.past-empty")
    for other in ("shore-charge", "alternator-charge"):
        found = calc.work(other, {"chemistry": name, "rested_voltage": volts})
        assert (found.verdict, found.rule) == ("stop", "bank.past-empty")


def test_a_lead_acid_bank_that_still_settles_is_not_yet_called_dead():
    """An hour after a deep discharge it may still come back, but not from below 1.75 V a cell."""
    soon = {"chemistry": "AGM", "taken": "at rest", "rested_for": "1 h", "current": "0 A"}
    assert gauge(reading="11.3 V", **soon).verdict == "caution"
    assert gauge(reading="10.4 V", **soon).rule == "bank.past-empty"


def test_without_a_monitor_no_count_is_invented():
    """By hand: BCI has 12.45 V at three quarters; three tables together 73 to 96 % at 12.5 V."""
    rested = {"reading": "12.5 V", "taken": "at rest", "rested_for": "30 h", "current": "0 A"}
    found = gauge(monitor="none", chemistry="flooded", **rested)
    assert found.values["taken_state"] == found.values["says_low"]
    assert found["drift"] is None and found["state_low"] is None
    assert found.verdict == "fine" and "monitor" not in found.sentence
    for lacking in ({}, {"reading": "12.5 V"}, {**rested, "rested_for": "1 h"}):
        unknown = gauge(monitor="none", chemistry="flooded", **lacking)
        assert unknown["remaining"] is None and unknown["time"] is None
        assert (unknown.verdict, unknown.rule) == ("caution", "gauge.state-unknown")


def test_lfp_is_told_to_stop_charging_in_frost_but_not_to_stop_giving():
    for current, temperature, verdict, rule in (
        ("10 A", "-0.1 C", "stop", "charge.in-frost"),
        ("10 A", "0 C", "caution", "charge.near-frost"),
        ("10 A", "10 C", "fine", "bank-gauge.fine-charging"),
        ("-10 A", "-5 C", "caution", "bank.in-frost"),
    ):
        answer = gauge(current=current, temperature=temperature)
        assert (answer.verdict, answer.rule) == (verdict, rule)


def test_cold_takes_from_the_end_of_a_lead_acid_bank():
    """IEEE 485 at 40 °F: 100 Ah are 76.9. With 80 gone by the count, nothing comes out."""
    asked = {"chemistry": "AGM", "capacity": "100 Ah", "current": "-2 A", "temperature": "40 F"}
    gone = gauge(state="20 %", **asked)
    assert gone["time"].m_as("hour") == 0 and gone.verdict == "caution"
    left = gauge(state="60 %", **asked)["time"].m_as("hour")
    assert left == pytest.approx((100 / 1.3 - 40) / 2, rel=1e-9)


def test_colder_than_the_factors_the_last_of_them_holds():
    answer = gauge(chemistry="gel", state="95 %", temperature="-10 C")
    edge = gauge(chemistry="gel", state="95 %", temperature="25 F")
    assert answer.values["time"] == pytest.approx(edge.values["time"])
    assert answer.rule == "bank.cold-beyond-table"
