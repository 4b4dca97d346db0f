"""A bank's week: against minutes instead of hours, and what its parts promise."""

from dataclasses import replace

import pytest

from calc.energy.battery import cold_factor
from calc.energy.daily_loads import Load, day_hours, running
from calc.energy.sun import Month, day_on_plane
from calc.energy.week import WeekInputs
from tests.unit.week_by_minutes import week_by_minutes

HOUR = 3600.0
PLAN = WeekInputs(
    capacity=200 * HOUR,
    chemistry="AGM",
    from_state=1.0,
    usable=0.5,
    voltage=12.2,
    temperature=10.0,
    loads=(
        Load("fan", 20.0, 9 * HOUR, "night", False),
        Load("fridge", 30.0, 7 * HOUR, "day", False),
    ),
    efficiency=0.88,
    idle=15.0,
    always=True,
    array=200.0,
    latitude=45.0,
    month=Month.OCTOBER,
    sky=0.5,
    losses=0.14,
    tilt=0.0,
    facing=180.0,
    turbidity=3.0,
    altitude=100.0,
    drive_hours=1 * HOUR,
    charger=30.0,
    shore_every=3,
    lead=20.0,
    lead_hours=10 * HOUR,
)


def minutes_of(plan, *, coulombic, energy, taper_hours, most_per_hour, exponent, cold):
    """Return the week by minutes, with the published figures of the chemistry given anew."""
    day_of_year = plan.month.mid_day
    sun = day_on_plane(
        latitude=plan.latitude,
        day_of_year=day_of_year,
        tilt=plan.tilt,
        facing=plan.facing,
        turbidity=plan.turbidity,
        altitude=plan.altitude,
    )
    watts = [j / HOUR / 1000 * plan.array * plan.sky * (1 - plan.losses) for j in sun.hours]
    return week_by_minutes(
        amp_hours=plan.capacity / HOUR / cold,
        volts=plan.voltage,
        charge_volts=plan.voltage * coulombic / energy,
        start=plan.from_state,
        floor=1 - plan.usable,
        coulombic=coulombic,
        taper_hours=taper_hours,
        most_per_hour=most_per_hour,
        exponent=exponent,
        monthly_loss=0.03,
        sun_watts=watts,
        drive_amps=plan.charger,
        drive_minutes=plan.drive_hours / 60,
        lead_amps=plan.lead,
        lead_every=plan.shore_every or 99,
        direct_loads=[(one.watts, one.hours / HOUR, one.when) for one in plan.loads],
        latitude=plan.latitude,
        day_of_year=day_of_year,
    )


# A textbook: 85 % and 70 %. Educational pages: bulk ends three quarters full, 25 % at the most.
LEAD = {"coulombic": 0.85, "energy": 0.7, "taper_hours": 1.25, "most_per_hour": 0.25}
LITHIUM = {"coulombic": 0.99, "energy": 0.92, "taper_hours": 0.1, "most_per_hour": 0.5}

BY_MINUTES = {
    "lead-acid, full and tapering": (PLAN, LEAD | {"exponent": 1.10, "cold": 1.19}),
    "lead-acid, empty within the week": (
        replace(PLAN, shore_every=0, sky=0.2, month=Month.NOVEMBER),
        LEAD | {"exponent": 1.10, "cold": 1.19},
    ),
    "gel in a southern winter": (
        replace(PLAN, chemistry="gel", latitude=-40.0, month=Month.JULY, shore_every=2),
        LEAD | {"exponent": 1.15, "cold": 1.19},
    ),
    "lithium in June": (
        replace(
            PLAN, chemistry="LFP", usable=0.8, voltage=12.8, capacity=80 * HOUR, month=Month.JUNE
        ),
        LITHIUM | {"exponent": 1.0, "cold": 1.0},
    ),
}


@pytest.mark.parametrize("case", BY_MINUTES)
def test_hours_come_to_the_same_as_minutes(case):
    """Within one hundredth: an hour's mean against its minutes, Cooper's sunset against ours."""
    plan, figures = BY_MINUTES[case]
    states, empty = minutes_of(plan, **figures)
    week = plan.week
    assert week.states[-1] == pytest.approx(states[-1], abs=0.01)
    assert min(week.states) == pytest.approx(min(states), abs=0.01)
    assert (week.emptied is None) == (empty is None)
    if empty is not None:
        assert week.emptied / HOUR == pytest.approx(empty, abs=1.0)


def test_the_cold_factor_that_the_minutes_use_is_the_printed_one():
    assert cold_factor(10.0) == pytest.approx(1.19, abs=0.0005)


def test_a_night_load_runs_by_night_and_a_day_load_by_day():
    daylight = day_hours(8 * HOUR)
    night = list(running(Load("a", 10.0, 8 * HOUR, "night", False), daylight))
    day = list(running(Load("b", 10.0, 4 * HOUR, "day", False), daylight))
    assert night[0] == night[7] == pytest.approx(0.5) and night[8] == night[15] == 0
    assert day[8] == day[15] == pytest.approx(0.5) and day[7] == day[16] == 0


def test_a_load_longer_than_the_night_goes_on_by_day():
    daylight = day_hours(18 * HOUR)
    hours = list(running(Load("a", 10.0, 9 * HOUR, "night", False), daylight))
    assert hours[0] == 1 and hours[12] == pytest.approx(3 / 18)
    assert sum(hours) == pytest.approx(9)


@pytest.mark.parametrize("daylight", [0.0, 86400.0])
def test_where_the_sun_does_not_part_the_day_night_is_from_22_to_6(daylight):
    hours = day_hours(daylight)
    assert [at for at, day in enumerate(hours) if day == 0] == [0, 1, 2, 3, 4, 5, 22, 23]


def test_the_first_lead_comes_after_so_many_days_and_goes_on_into_the_morning():
    leads = [sum(PLAN.day.lead(number, 3)) for number in range(7)]
    four = pytest.approx(4 * 20 * 3600 * PLAN.bank.charge_voltage)
    six = pytest.approx(6 * 20 * 3600 * PLAN.bank.charge_voltage)
    assert leads == [0, 0, four, six, 0, four, six]
    assert [sum(PLAN.day.lead(number, 0)) for number in range(7)] == [0] * 7


def test_an_inverter_that_is_on_while_used_draws_for_those_hours_only():
    laptop = (Load("laptop", 60.0, 2 * HOUR, "day", True),)
    always = replace(PLAN, loads=laptop)
    used = replace(always, always=False)
    assert sum(always.day.idle) == pytest.approx(24 * 15 * HOUR)
    assert sum(used.day.idle) == pytest.approx(2 * 15 * HOUR)
    assert sum(replace(PLAN, loads=PLAN.loads).day.idle) == 0


def test_two_loads_at_once_keep_one_inverter_on():
    two = tuple(Load(name, 10.0, 24 * HOUR, "all", True) for name in "ab")
    plan = replace(PLAN, loads=two, always=False)
    assert sum(plan.day.idle) == pytest.approx(24 * 15 * HOUR)


def test_a_heavy_load_empties_lead_acid_faster_and_lithium_not():
    heater = (Load("heater", 1200.0, 1 * HOUR, "all", False),)
    plan = replace(PLAN, loads=heater)
    assert max(plan.day.factor) == pytest.approx((1200 / 12.2 / (200 / 1.19 / 20)) ** 0.1, rel=1e-3)
    assert set(replace(plan, chemistry="LFP").day.factor) == {1.0}


def test_frozen_lithium_takes_nothing_from_any_source():
    plan = replace(PLAN, chemistry="LFP", temperature=-1.0, usable=0.8)
    assert sum(plan.week.sun) + sum(plan.week.drive) + sum(plan.week.shore) == 0
    assert plan.week.states[-1] < plan.week.states[0]


def test_a_bank_below_its_floor_gives_nothing_and_counts_as_empty_at_once():
    plan = replace(PLAN, from_state=0.4, drive_hours=0.0, array=0.0, shore_every=0)
    assert plan.week.emptied == 0.0
    assert all(one.drawn == 0 for one in plan.week.hours)


def test_a_drive_past_midnight_goes_on_at_midnight():
    plan = replace(PLAN, drive_hours=16 * HOUR)
    offered = plan.day.drive
    assert offered[0] == offered[1] == offered[23] == offered[10] > 0 == offered[2] == offered[9]
