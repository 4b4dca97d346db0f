"""What must hold for any week: nothing lost unlisted, no state out of range, more is never less."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.energy.balance import HOUR, course
from calc.energy.battery import Chemistry
from calc.energy.daily_loads import Load, When
from calc.energy.panels import Mount, Regulator
from calc.energy.sun import Month
from calc.energy.week import DAYS, WeekInputs
from tests.properties.inputs import tried

FEW = tried(60)

loads = st.builds(
    Load,
    name=st.just("load"),
    watts=st.floats(0, 2000),
    hours=st.floats(0, 24 * HOUR),
    when=st.sampled_from(When),
    inverter=st.booleans(),
)
plans = st.builds(
    WeekInputs,
    capacity=st.floats(10 * HOUR, 2000 * HOUR),
    chemistry=st.sampled_from(Chemistry),
    from_state=st.floats(0, 1),
    usable=st.floats(0.01, 1),
    voltage=st.sampled_from((12.2, 12.8, 25.6, 51.2)),
    temperature=st.floats(-3.8, 60),
    loads=st.lists(loads, min_size=1, max_size=4).map(tuple),
    efficiency=st.floats(0.3, 1),
    idle=st.floats(0, 100),
    always=st.booleans(),
    array=st.just(0.0) | st.floats(1e-3, 3000),
    latitude=st.sampled_from((-70, -34, 0, 45, 57, 69, 90)),
    month=st.sampled_from(Month),
    sky=st.floats(0.01, 1),  # as low as its field goes
    losses=st.floats(0, 0.5),
    tilt=st.sampled_from((0, 30, 90)),
    facing=st.sampled_from((0, 90, 180)),
    turbidity=st.just(3.0),
    altitude=st.just(100.0),
    drive_hours=st.floats(0, 24 * HOUR),
    charger=st.floats(0, 200),
    shore_every=st.integers(0, 8),
    lead=st.floats(0, 100),
    lead_hours=st.floats(0, 24 * HOUR),
    regulator=st.sampled_from(Regulator),
    panel_voltage=st.sampled_from((18.0, 36.0)),
    air=st.none() | st.floats(-20, 45),
    mount=st.sampled_from(Mount),
    heat_coefficient=st.floats(0, 0.01),
)


@FEW
@given(plans)
def test_energy_in_is_energy_out_and_losses_and_what_stays(plan):
    week, day, bank = plan.week, plan.day, plan.bank
    came = sum(week.sun) + sum(week.drive) + sum(week.shore)
    met = sum(one.served * day.demand[at % 24] for at, one in enumerate(week.hours))
    lost = sum(one.charging + one.heavy + one.alone for one in week.hours)
    change = (week.states[-1] - week.states[0]) * bank.full
    throughput = came + met + lost + bank.full
    assert came == pytest.approx(met + lost + change, rel=1e-9, abs=1e-9 * throughput)
    assert min(one.charging for one in week.hours) >= -1e-9 * throughput
    assert min(one.heavy for one in week.hours) >= -1e-9 * throughput


@FEW
@given(plans)
def test_a_source_never_gives_more_than_it_offers_nor_less_than_nothing(plan):
    week, day = plan.week, plan.day
    leads = [energy for number in range(DAYS) for energy in day.lead(number, plan.shore_every)]
    offers = (day.sun * DAYS, day.drive * DAYS, leads)
    for offered, taken in zip(offers, (week.sun, week.drive, week.shore), strict=True):
        assert all(
            0 <= took <= most * (1 + 1e-9) for took, most in zip(taken, offered, strict=True)
        )


@FEW
@given(plans)
def test_the_state_stays_between_empty_and_full(plan):
    assert all(0 <= state <= 1 for state in plan.week.states)


@FEW
@given(plans)
def test_loads_never_take_the_bank_below_its_floor(plan):
    own = plan.bank.drain * HOUR * len(plan.week.hours)
    assert min(plan.week.states) >= min(plan.from_state, plan.bank.floor) - own - 1e-12


@FEW
@given(plans, st.floats(1, 3))
def test_more_array_never_ends_lower_nor_empties_sooner(plan, times):
    more = replace(plan, array=plan.array * times)
    pairs = zip(plan.week.states, more.week.states, strict=True)
    assert all(one <= other + 1e-9 for one, other in pairs)
    if more.week.emptied is not None:
        assert plan.week.emptied is not None
        assert plan.week.emptied <= more.week.emptied + 1e-3


@FEW
@given(plans, st.floats(0, 1))
def test_a_fuller_bank_never_ends_emptier(plan, share):
    fuller = replace(plan, from_state=plan.from_state + share * (1 - plan.from_state))
    pairs = zip(plan.week.states, fuller.week.states, strict=True)
    assert all(one <= other + 1e-9 for one, other in pairs)


@FEW
@given(plans)
def test_a_bank_that_is_said_to_hold_is_never_empty_in_many_days(plan):
    if not plan.outlook.holds:
        return
    long = course(plan.bank, plan.day, state=plan.from_state, days=40, every=plan.shore_every)
    assert long.emptied is None
    assert plan.holds


@FEW
@given(plans)
def test_days_passed_over_in_the_outlook_change_nothing(plan):
    """Hour by hour for the sixty days, with no day passed over."""
    long = course(plan.bank, plan.day, state=plan.from_state, days=60, every=plan.shore_every)
    if long.emptied is None:
        assert plan.outlook.empty is None
    else:
        assert not plan.outlook.holds
        assert plan.outlook.empty == pytest.approx(long.emptied, rel=1e-6)
    assert plan.holds == (plan.week.emptied is None)


@FEW
@given(plans)
def test_the_hours_of_a_load_are_all_laid_into_the_day(plan):
    asked = sum(load.energy for load in plan.loads)
    assert sum(plan.day.useful) == pytest.approx(asked, rel=1e-9, abs=1e-6)
    months = [plan.in_month(month) for month in Month]
    for one, other in pairwise(months):
        assert sum(one.day.useful) == pytest.approx(sum(other.day.useful), rel=1e-9, abs=1e-6)
