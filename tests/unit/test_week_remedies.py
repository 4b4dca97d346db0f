"""What would carry a week that fails: true when typed in, no more than needed, in order."""

import pytest

import calc
from calc.energy import remedies
from calc.sheets.charging.week_ahead import WORKSHEET
from tests.unit.test_week_answers import GREY

FRIDGE = "fridge:45 W:9.6 h;heater fan:30 W:9 h:night;LED strips:24 W:5 h:night"
HOUSEHOLD = "fridge:80 W:9.6 h:all:inverter;heater fan:30 W:9 h:night;LED strips:24 W:5 h:night"
LITHIUM = {"chemistry": "LFP", "month": "June", "capacity": "60 A.h"}
FAILING = {
    "as it comes": {},
    "direct fridge": {"loads": FRIDGE},
    "household fridge": {"loads": HOUSEHOLD, "chemistry": "LFP", "capacity": "300 A.h"},
    "lithium in June": LITHIUM,
    "some nights on a lead": {"loads": FRIDGE, "shore_every": "5"},
}


def found(texts):
    """Return the plan of a week and its changes, as the sheet finds them."""
    answer = WORKSHEET.work({**GREY, **texts})
    plan = answer.result.inputs
    return answer, plan, list(remedies.remedies(plan))


def typed(plan, one):
    """Return the fields that a reader would change for a change of one kind."""
    match one.kind:
        case remedies.Kind.ARRAY:
            return {"array": f"{one.amount:.9g} W"}
        case remedies.Kind.BANK:
            return {"capacity": f"{one.amount / 3600:.9g} A.h"}
        case remedies.Kind.DRIVE:
            return {"drive_hours": f"{one.amount / 3600:.9g} h"}
        case remedies.Kind.SHORE:
            return {"shore_every": f"{one.amount:.0f}"}
        case remedies.Kind.CHARGER:
            return {"charger": f"{one.amount:.9g} A"}
        case remedies.Kind.SHORE_CHARGER:
            return {"shore_charger": f"{one.amount:.9g} A"}
        case remedies.Kind.WARMTH:
            return {"temperature": f"{one.amount:.9g} C"}
        case remedies.Kind.OFF:
            return {"inverter_on": "while used"}
    times = {load.name: (load.watts, load.hours / 3600) for load in plan.loads}
    if one.kind == remedies.Kind.HALF:
        times[one.load] = times[one.load][0], times[one.load][1] / 2
    elif one.kind == remedies.Kind.WITHOUT:
        del times[one.load]
    rows = []
    for load in plan.loads:
        if load.name in times:
            watts, hours = times[load.name]
            small = load.watts <= remedies.MOST_DIRECT
            fed = load.inverter and not (small and one.kind == remedies.Kind.ROUTE)
            route = "inverter" if fed else "direct"
            rows.append(f"{load.name}:{watts:g} W:{hours:g} h:{load.when}:{route}")
    return {"loads": ";".join(rows)}


@pytest.mark.parametrize("name", FAILING)
def test_a_change_does_what_it_says_when_it_is_typed_in(name):
    texts = FAILING[name]
    answer, plan, changes = found(texts)
    assert answer.verdict == "stop" and changes
    for one in changes:
        besides = [one.besides] if one.besides else []
        together = {}
        for kind in besides:
            first = {**vars(one), "kind": kind, "amount": one.besides_amount, "besides": None}
            together |= typed(plan, remedies.Remedy(**first))
        again = calc.work("week-ahead", {**GREY, **{**texts, **together, **typed(plan, one)}})
        assert (again.values["empty_after"] is None) == one.works, one
        floor = again.values["floor"]
        assert again.values["lowest_state"] == pytest.approx(max(one.lowest, floor), abs=1e-4), one


@pytest.mark.parametrize("name", FAILING)
def test_a_change_asks_for_no_more_than_is_needed(name):
    """One step of the halving less, and the bank is empty within the week."""
    texts = FAILING[name]
    _, plan, changes = found(texts)
    steps = {
        remedies.Kind.ARRAY: plan.roof - plan.array,
        remedies.Kind.DRIVE: remedies.MOST_DRIVE - plan.drive_hours,
        remedies.Kind.BANK: (remedies.MOST_BANK - 1) * plan.capacity,
    }
    tried = 0
    for one in changes:
        if one.works and one.kind in steps and not one.besides and steps[one.kind] > 0:
            less = {**vars(one), "amount": one.amount - steps[one.kind] / 1000}
            again = calc.work(
                "week-ahead", {**GREY, **{**texts, **typed(plan, remedies.Remedy(**less))}}
            )
            assert again.values["empty_after"] is not None, one
            tried += 1
        if one.works and one.kind == remedies.Kind.SHORE and one.amount < 6 and not one.besides:
            fewer = {**texts, "shore_every": f"{one.amount + 1:.0f}"}
            assert calc.work("week-ahead", {**GREY, **fewer}).values["empty_after"] is not None
            tried += 1
    assert tried


@pytest.mark.parametrize("name", FAILING)
def test_what_works_stands_first_and_the_least_of_it_at_the_top(name):
    answer = WORKSHEET.work({**GREY, **FAILING[name]})
    rows = answer.values["remedies"]
    order = [(not row.works, row.share) for row in rows]
    assert order == sorted(order)
    best = rows[0]
    assert answer.values["cheapest"] == (str(best) if best.works else None)
    assert not best.works or f": {best.do}." in answer.sentence


def test_nothing_is_asked_of_a_week_that_holds_nor_of_a_bank_that_begins_empty():
    assert calc.work("week-ahead", {**GREY, **{"loads": "lamp:1 W:5 h"}}).values["remedies"] == ()
    begins = calc.work("week-ahead", {**GREY, **{"from_state": "30 %"}})
    assert begins.values["remedies"] == () and begins.values["cheapest"] is None


def test_a_fridge_that_starts_by_itself_leaves_no_time_to_switch_the_inverter_off():
    _, _, changes = found({"loads": HOUSEHOLD})
    kinds = {one.kind for one in changes}
    assert remedies.Kind.ROUTE in kinds and remedies.Kind.OFF not in kinds
    _, _, changes = found({})
    assert remedies.Kind.OFF in {one.kind for one in changes}


def test_no_change_is_found_where_none_is_enough():
    loads = "kettle:2000 W:12 h:all:inverter;oven:1000 W:12 h;iron:900 W:12 h;heater:900 W:12 h"
    answer = calc.work("week-ahead", {**GREY, **{"loads": loads}})
    assert answer.values["cheapest"] is None
    assert answer.rule == "week.empties" and "put several together" in answer.sentence
    assert answer.values["remedies"] and not any(row.works for row in answer.values["remedies"])


@pytest.mark.parametrize("month", ["January", "June", "October"])
def test_the_table_of_months_says_what_the_sheet_says_of_that_month(month):
    texts = {"loads": FRIDGE, "chemistry": "LFP"}
    rows = {row.name: row for row in calc.work("week-ahead", {**GREY, **texts}).values["months"]}
    own = calc.work("week-ahead", {**GREY, **{**texts, "month": month}})
    assert rows[month].empty == own.values["lasts"]
    assert rows[month].outlook == own.values["outlook"]
    assert rows[month].sun == pytest.approx(own.values["sun_day"])


def test_a_household_fridge_empties_the_bank_sooner_than_one_at_battery_voltage():
    household, direct = (
        calc.work("week-ahead", {**GREY, **{"loads": loads}}).values["empty_after"]
        for loads in (HOUSEHOLD, FRIDGE)
    )
    assert household < direct


def test_a_later_stage_changes_only_what_was_still_missing():
    stages = [answer for _, answer in WORKSHEET.stages(WORKSHEET.read(GREY)[0]) if answer]
    first, last = stages[0].values, stages[-1].values
    later = {"months", "carrying", "remedies", "cheapest", "way_out", "tried"}
    assert {name for name in first if first[name] != last[name]} == later


def test_twenty_four_volts_hold_twice_as_long_as_twelve():
    one = {"loads": "lamp:30 W:24 h", "array": "0 W", "drive_hours": "0 h", "chemistry": "LFP"}
    twelve = calc.work("week-ahead", {**GREY, **one}).values["empty_after"]
    twice = calc.work("week-ahead", {**GREY, **{**one, "voltage": "25.6 V"}}).values["lasts"]
    assert twice == pytest.approx(2 * twelve, rel=0.01)


@pytest.mark.parametrize("chemistry", ["LFP", "AGM", "gel", "flooded"])
@pytest.mark.parametrize("watts", [150, 400, 900])
def test_a_steady_load_without_sources_lasts_as_long_as_the_run_time_sheet_says(chemistry, watts):
    """At the rated current or above; the week also takes off self-discharge, up to 0.3 %."""
    bank = {"capacity": "200 A.h", "chemistry": chemistry, "voltage": "12 V", "temperature": "15 C"}
    alone = {"array": "0 W", "drive_hours": "0 h", "loads": f"steady:{watts} W:24 h"}
    week = calc.work("week-ahead", {**GREY, **{**bank, **alone}}).values["empty_after"]
    runtime = calc.work("runtime", {**bank, "load": f"{watts} W"}).values["runtime"]
    assert week == pytest.approx(runtime, rel=0.003)
    assert week <= runtime * (1 + 1e-9)
