"""A trip has a length, a verdict of its own and a recovery."""

import pytest

import calc

WEEKEND = {
    "question": "trip",
    "nights": "2",
    "chemistry": "AGM",
    "capacity": "200 A.h",
    "temperature": "20 C",
    "loads": "fridge:45 W:9.6 h;lights:10 W:4 h:evening",
    "array": "0 W",
    "drive_hours": "0 h",
}


def work(**texts):
    return calc.work("week-ahead", {**WEEKEND, **texts})


def test_a_trip_is_judged_by_its_nights_and_not_by_what_days_like_it_come_to():
    trip = work()
    assert (trip.verdict, trip.rule) == ("fine", "week-ahead.fine-trip")
    week = work(question="week")
    assert week.verdict == "stop"
    assert trip.values["outlook"] is None and week.values["outlook"] is not None


@pytest.mark.parametrize("nights", [1, 3, 7])
def test_a_longer_trip_ends_lower_and_has_as_many_days(nights):
    trip = work(nights=str(nights), capacity="900 A.h")
    longer = work(nights=str(nights + 1), capacity="900 A.h")
    assert longer.values["lowest_state"] < trip.values["lowest_state"]
    assert len(trip.values["days"]) == nights
    assert trip.values["recovery_time"] <= longer.values["recovery_time"]


def test_it_recovers_in_the_time_that_shore_charge_gives_for_such_a_charge():
    """Both stages of the charge by the other sheet's own sum; the week steps by the hour."""
    trip = work(shore_charger="20 A")
    end = trip.values["end_state"]
    bank = {"capacity": f"{trip.values['cold_capacity'] / 3600:.6g} A.h", "chemistry": "AGM"}
    charge = calc.work(
        "shore-charge", {**bank, "from_state": f"{end * 100:.6g} %", "charger": "20 A"}
    )
    hours = charge.values["hours"] / 3600
    assert hours <= trip.values["recovery_time"] / 3600 <= hours + 1.5


def test_what_does_not_charge_does_not_recover_it():
    none = work(recovery="sun")
    assert (none.verdict, none.rule) == ("caution", "week.not-recovered")
    assert none.values["recovery_time"] is None
    sunny = work(recovery="sun", array="300 W", month="June", latitude="45", sky="60 %")
    assert sunny.verdict == "fine" and sunny.values["recovery_time"] > 0


def test_lead_acid_that_waits_more_than_a_week_to_be_full_is_a_caution():
    slow = work(recovery="sun", array="25 W", month="October", latitude="50", sky="40 %")
    assert (slow.verdict, slow.rule) == ("caution", "week.slow-recovery")
    assert slow.values["recovery_time"] > 7 * 86400


def test_a_trip_that_fails_is_told_what_lasts_it():
    short = work(capacity="100 A.h")
    assert short.verdict == "stop" and short.values["cheapest"]
    assert all(row.for_good == "not asked" for row in short.values["carrying"])
    kinds = {row.name for row in short.values["carrying"]}
    assert "a larger bank" in kinds
    assert work(capacity="100 A.h", nights="1").verdict == "fine"


def test_an_older_link_means_a_week_and_its_old_van():
    from calc.worksheet.link import open_fragment

    sheet = calc.find("week-ahead")
    opened = open_fragment(sheet, "v=1&capacity=200A.h")
    answer = sheet.work(opened.texts)
    inputs = {name: reading.text for name, reading in answer.inputs.items()}
    assert inputs["question"] == "week after week"
    assert answer.inputs["chemistry"].value == "AGM"
    assert answer.inputs["roof"].value == 2000.0
    assert answer.inputs["inverter_on"].value == "day-and-night"


def test_a_trip_that_ends_at_its_lowest_shows_one_figure_for_both():
    texts = {
        "question": "trip", "nights": "2", "recovery": "shore", "chemistry": "AGM",
        "loads": "fridge:45 W:9.6 h; lights:10 W:4 h:night", "array": "0 W", "drive_hours": "0",
    }  # fmt: skip
    trip = calc.work("week-ahead", texts)
    assert trip.values["end_state"] == trip.values["lowest_state"]
    assert trip.shown["end_state"] == trip.shown["lowest_state"]
    assert trip.shown["end_state"] in trip.sentence
