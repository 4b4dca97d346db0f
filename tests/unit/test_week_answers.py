"""What the week's answer says: the order of its changes, its light under cloud, its cautions."""

import pytest

import calc
from calc.energy import remedies
from calc.render.answer import summary_text
from calc.sheets.charging.week_ahead import WORKSHEET

# A grey November in the north on 200 W and lead-acid: what the sheet began with once
GREY = {
    "chemistry": "AGM", "array": "200 W", "latitude": "57", "month": "November", "sky": "30 %",
    "temperature": "10 C", "inverter_on": "day and night", "roof": "2000 W",
    "loads": "fridge:45 W:9.6 h; heater fan:30 W:9 h:night; LED strips:24 W:5 h:night;"
    " laptop:60 W:2 h:day:inverter",
}  # fmt: skip
FRIDGE = "fridge:45 W:9.6 h;heater fan:30 W:9 h:night;LED strips:24 W:5 h:night"
LITHIUM = {"chemistry": "LFP", "loads": FRIDGE}


def is_forced(answer):
    """Return whether a charger is stronger than such a bank is usually given."""
    return "week.charger-too-strong" in answer.rules


def changes(texts):
    """Return the changes of a week in the order that is shown."""
    inputs = WORKSHEET.work({**GREY, **texts}).result.inputs
    return remedies.ranked(list(remedies.remedies(inputs)))


def work(**texts):
    return calc.work("week-ahead", {**GREY, **texts})


@pytest.mark.parametrize(
    "kind, none",
    [
        (remedies.Kind.DRIVE, {"drive_hours": "0 h"}),
        (remedies.Kind.ARRAY, {"array": "0 W", "month": "May", "sky": "60 %"}),
        (remedies.Kind.SHORE, {}),
    ],
)
def test_a_first_bit_of_what_was_not_there_asks_little(kind, none):
    """Of the most that is tried, not of itself: the first hour of driving is not the whole."""
    found = {one.kind: one for one in changes({**LITHIUM, "capacity": "180 A.h", **none})}
    most = {remedies.Kind.DRIVE: remedies.MOST_DRIVE, remedies.Kind.ARRAY: 2000.0}
    one = found[kind]
    asked = 1 / one.amount if kind == remedies.Kind.SHORE else one.amount / most[kind]
    assert one.works and one.share == pytest.approx(asked) and one.share < 0.75


def test_a_quarter_of_an_hour_more_at_the_wheel_comes_before_the_fridge_given_up():
    order = changes({"loads": FRIDGE, "drive_hours": "2.2 h"})
    places = {(one.kind, one.load): at for at, one in enumerate(order) if one.works}
    wheel, given_up = (
        places[remedies.Kind.DRIVE, ""],
        min(at for (_, load), at in places.items() if load == "fridge"),
    )
    assert order[wheel].amount - 2.2 * 3600 == pytest.approx(900, abs=120)
    assert wheel < given_up


def test_a_switch_that_is_pressed_comes_before_anything_that_is_bought_or_given_up():
    order = changes({"chemistry": "LFP", "capacity": "300 A.h", "drive_hours": "2 h"})
    assert order[0].kind == remedies.Kind.OFF and order[0].works and order[0].share == 0
    assert {one.kind for one in order[1:]} >= {
        remedies.Kind.ROUTE,
        remedies.Kind.BANK,
        remedies.Kind.DRIVE,
    }


def test_no_change_asks_more_than_all_that_is_tried():
    for texts in ({}, LITHIUM, {**LITHIUM, "drive_hours": "0 h", "array": "0 W"}):
        assert all(0 <= one.share <= 1 + bool(one.besides) for one in changes(texts))


@pytest.mark.parametrize("tilt, facing", [("0", "180"), ("20", "180"), ("60", "90"), ("70", "0")])
@pytest.mark.parametrize("month", ["January", "June"])
def test_the_light_of_a_week_is_that_of_sun_yield(tilt, facing, month):
    roof = {"latitude": "52", "month": month, "array": "300 W", "sky": "40 %", "tilt": tilt}
    roof |= {"facing": facing, "losses": "14 %"}
    sun = calc.work("sun-yield", roof).values
    assert work(**roof).values["sun_day"] == pytest.approx(sun["energy"])


def test_heat_mounting_and_a_plain_switch_take_what_they_take_in_sun_yield():
    roof = {"latitude": "47", "month": "July", "array": "300 W", "sky": "60 %", "tilt": "20"}
    roof |= {"air": "30 C", "mount": "glued", "regulator": "PWM", "panel_voltage": "19 V"}
    week = work(**roof, chemistry="LFP")
    voltage = f"{week.values['charge_voltage']:.9g} V"
    sun = calc.work("sun-yield", {**roof, "voltage": voltage})
    assert week.values["sun_day"] == pytest.approx(sun.values["energy"])
    assert (
        week.values["sun_day"]
        < 0.75 * work(**{**roof, "regulator": "MPPT", "air": ""}).values["sun_day"]
    )


def test_a_charger_that_is_too_strong_counts_only_if_it_is_used():
    small = {"capacity": "60 A.h", "loads": "lamp:5 W:4 h:night", "array": "200 W", "month": "June"}
    strong = {"charger": "100 A", "shore_charger": "100 A"}
    unused = work(**small, **strong, drive_hours="0 h", sky="50 %")
    assert unused.verdict == "fine" and not is_forced(unused)
    assert is_forced(work(**small, charger="100 A"))
    assert is_forced(work(**small, shore_charger="100 A", drive_hours="0 h", shore_every="3"))


def test_a_low_sun_that_is_not_needed_is_no_caution():
    high = {"latitude": "62", "loads": "alarm:1 W:24 h", "array": "400 W"}
    assert work(**high, drive_hours="0 h").verdict == "caution"
    assert work(**high, drive_hours="1 h").verdict == "fine"


def test_a_bank_that_takes_no_charge_is_not_told_to_put_sources_together():
    frozen = work(chemistry="LFP", temperature="-10 C")
    assert (frozen.verdict, frozen.rule) == ("stop", "charge.in-frost")
    held = work(chemistry="LFP", temperature="-10 C", cold_cut_off="proven")
    assert held.verdict == "stop" and "warm the bank to" in held.sentence


def test_a_change_tells_what_comes_after_the_week_it_carries():
    assert "Smallest change for this week only: drive " in work(loads=FRIDGE).sentence
    calm = work(loads=FRIDGE, charger="0 A", chemistry="LFP", array="0 W").sentence
    assert "Smallest change for good: " in calm


def test_this_week_and_for_good_stand_side_by_side():
    """What lasts for good asks as much or more, and holds when it is typed in."""
    rows = {row.name: row for row in work(loads=FRIDGE, chemistry="LFP").values["carrying"]}
    driving = rows["more driving"]
    assert driving.for_good.endswith("a day") and driving.for_good != driving.asks
    hours = driving.for_good.split("\u00a0")[0]
    again = work(loads=FRIDGE, chemistry="LFP", drive_hours=f"{hours} h")
    assert again.values["outlook"] == "never"
    assert rows["a larger bank"].for_good == "not enough"


def test_a_stronger_charger_is_among_the_remedies_as_far_as_the_bank_takes_it():
    plan = {"chemistry": "LFP", "drive_hours": "2 h", "charger": "10 A", "loads": FRIDGE}
    found = {one.kind: one for one in changes(plan)}
    charger = found[remedies.Kind.CHARGER]
    assert charger.works and 10 < charger.amount <= remedies.MOST_CHARGER
    small = {**plan, "capacity": "60 A.h"}
    assert {one.kind: one for one in changes(small)}[remedies.Kind.CHARGER].amount <= 30


def test_frost_comes_first_and_warmth_is_what_helps():
    order = changes({"chemistry": "LFP", "temperature": "-5 C", "month": "June", "sky": "60 %"})
    assert order[0].kind is remedies.Kind.WARMTH and order[0].works
    harder = changes({"chemistry": "LFP", "temperature": "-5 C"})
    assert all(remedies.Kind.WARMTH in (one.kind, one.besides) for one in harder)


def test_no_remedy_asks_for_more_panels_than_the_roof_holds():
    for one in changes(
        {"chemistry": "LFP", "roof": "350 W", "month": "March", "drive_hours": "0 h"}
    ):
        if one.kind is remedies.Kind.ARRAY:
            assert one.amount <= 350


def test_an_induction_hob_is_not_told_to_go_on_battery_voltage():
    kinds = {one.kind for one in changes({"loads": "hob:1800 W:1 h:evening:inverter"})}
    assert remedies.Kind.ROUTE not in kinds
    kinds = {one.kind for one in changes({})}
    assert remedies.Kind.ROUTE in kinds


def test_two_changes_together_are_found_where_neither_is_enough():
    """A full roof and an hour at the wheel, where either alone leaves the bank empty."""
    plan = {"chemistry": "LFP", "roof": "500 W", "month": "March", "loads": "all:88 W:24 h"}
    plan |= {"drive_hours": "0 h", "capacity": "300 A.h", "shore_hours": "1 h"}
    found = changes(plan)
    alone = {one.kind for one in found if one.works and not one.besides}
    pairs = [one for one in found if one.works and one.besides]
    assert pairs and not {pairs[0].kind, pairs[0].besides} & alone


def test_nothing_is_told_that_is_only_the_last_digit_of_a_float():
    for texts in ({}, {"loads": FRIDGE}, {"month": "June"}, {"array": "0 W"}):
        values = work(**texts).values
        for name in ("unmet", "not_taken"):
            assert values[name] is None or values[name] == 0 or values[name] > 1e-3


def test_a_bank_at_its_floor_is_told_the_floor_and_not_a_tenth_below():
    answer = work()
    assert answer.values["lowest_state"] == answer.values["floor"]
    assert answer.shown["lowest_state"] == answer.shown["floor"]


def test_what_is_not_there_is_none_and_not_a_nought():
    bare = work(drive_hours="0 h", array="0 W")
    assert "a day." in bare.sentence
    told = [row.asks for row in bare.values["remedies"]]
    assert any(one.endswith("W instead of none") for one in told)
    assert not any("instead of 0" in one for one in told)


def test_a_change_is_not_told_a_state_below_the_floor():
    """Where nothing is drawn any more a bank loses a little by itself; that is not the change's."""
    answer = work()
    assert all(row.lowest >= answer.values["floor"] for row in answer.values["remedies"])


def test_a_bank_that_begins_empty_is_empty_at_once():
    assert work(from_state="40 %").values["outlook"] == "at once"


@pytest.mark.parametrize("texts", [{}, {"from_state": "40 %"}, {"loads": "lamp:1 W:5 h"}])
def test_the_first_stage_has_no_word_for_what_is_still_missing(texts):
    first = next(
        answer for _, answer in WORKSHEET.stages(WORKSHEET.read({**GREY, **texts})[0]) if answer
    )
    lines = [line.value + line.text for line in first.working]
    assert not [one for one in (first.sentence, summary_text(first), *lines) if "none" in one]
    assert ("still being calculated" in first.sentence) is (texts == {})


def test_a_week_that_lasts_but_falls_is_told_what_would_last_for_good():
    falling = {"loads": "router:8 W:24 h", "drive_hours": "0 h", "array": "0 W", "chemistry": "LFP"}
    answer = work(**falling)
    assert (answer.verdict, answer.rule) == ("caution", "week.falls")
    enough = answer.values["carrying"]
    assert enough and all(row.for_good == "the same" for row in enough)
    (driving,) = (one for one in changes(falling) if one.kind is remedies.Kind.DRIVE)
    again = work(**{**falling, "drive_hours": f"{driving.amount / 3600:.6g} h"})
    assert again.values["outlook"] == "never"
