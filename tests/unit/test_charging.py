"""How a bank fills: against stepping through time, the law of 1935 and published hours."""

import math
import re
from pathlib import Path

import pytest

import calc
from calc.energy import charging
from calc.energy.battery import Chemistry
from calc.sources.charging import CHARGING
from calc.units.covered import NotCovered

HOUR = 3600.0
AH = 3600.0
ASKED = [
    # capacity, current, from, to, efficiency, acceptance time
    (200 * AH, 40.0, 0.30, 0.975, 0.85, 1.25 * HOUR),
    (200 * AH, 40.0, 0.80, 0.95, 0.85, 1.25 * HOUR),
    (100 * AH, 5.0, 0.00, 0.60, 0.85, 2.5 * HOUR),
    (100 * AH, 50.0, 0.10, 0.998, 0.99, 0.1 * HOUR),
    (300 * AH, 500.0, 0.20, 0.90, 0.90, 3.0 * HOUR),
]


def stepped(capacity, current, state, to_state, efficiency, time, step=1.0):
    """Return the time [s] to `to_state`, a small step after the other: no logarithm in it.

    Each second the bank takes the lesser of what is offered and what it lacks per `time`, as it
    was in the middle of the second.
    """
    passed = 0.0
    while state < to_state:
        first = min(current, (1 - state) * capacity / time)
        middle = state + efficiency * first * step / 2 / capacity
        flows = min(current, (1 - middle) * capacity / time)
        gained = efficiency * flows * step / capacity
        if state + gained >= to_state:
            return passed + step * (to_state - state) / gained
        state += gained
        passed += step
    return passed


@pytest.mark.parametrize(("capacity", "current", "begin", "end", "efficiency", "time"), ASKED)
def test_the_closed_form_agrees_with_stepping_through_time(
    capacity, current, begin, end, efficiency, time
):
    """The step of a second leaves an error of the second order, far below one part in 1e6."""
    found = charging.stages(
        capacity=capacity,
        current=current,
        from_state=begin,
        to_state=end,
        efficiency=efficiency,
        time_constant=time,
    )
    by_steps = stepped(capacity, current, begin, end, efficiency, time)
    assert found.total == pytest.approx(by_steps, rel=1e-6)
    assert found.total == found.constant + found.falling


@pytest.mark.parametrize(("capacity", "current", "begin", "end", "efficiency", "time"), ASKED)
@pytest.mark.parametrize("share", [0.1, 0.5, 0.9, 1.0])
def test_the_state_after_a_time_is_the_one_that_it_takes_that_time_to_reach(
    capacity, current, begin, end, efficiency, time, share
):
    target = begin + share * (end - begin)
    given = {
        "capacity": capacity,
        "current": current,
        "efficiency": efficiency,
        "time_constant": time,
    }
    hours = charging.stages(from_state=begin, to_state=target, **given).total
    after = charging.state_after(state=begin, duration=hours, **given)
    assert after == pytest.approx(target, rel=1e-12)


@pytest.mark.parametrize(("capacity", "current", "begin", "end", "efficiency", "time"), ASKED)
def test_a_charge_in_two_parts_takes_as_long_as_in_one(
    capacity, current, begin, end, efficiency, time
):
    given = {
        "capacity": capacity,
        "current": current,
        "efficiency": efficiency,
        "time_constant": time,
    }
    whole = charging.stages(from_state=begin, to_state=end, **given).total
    for share in (0.2, 0.6, 0.95):
        middle = begin + share * (end - begin)
        parts = (
            charging.stages(from_state=begin, to_state=middle, **given).total
            + charging.stages(from_state=middle, to_state=end, **given).total
        )
        assert parts == pytest.approx(whole, rel=1e-12)


def test_the_law_of_1935_restores_nine_tenths_in_two_to_three_hours():
    """The law: amps equal to the missing Ah, up to 80 % of the capacity at the start."""
    found = charging.stages(
        capacity=100 * AH,
        current=80.0,
        from_state=0.0,
        to_state=0.9,
        efficiency=0.85,
        time_constant=HOUR,
    )
    assert 2 * HOUR < found.total < 3 * HOUR


@pytest.mark.parametrize("chemistry", [one for one in Chemistry if one.lead_acid])
def test_a_sealed_bank_from_flat_takes_the_published_12_to_16_hours(chemistry):
    """A charger of a tenth of the capacity, low end of common practice; spread of acceptance."""
    known = charging.by_chemistry(chemistry)
    for time in (known.low, known.time_constant, known.high):
        found = charging.stages(
            capacity=100 * AH,
            current=10.0,
            from_state=0.0,
            to_state=charging.full_state(time_constant=time, tail=known.tail),
            efficiency=0.85,
            time_constant=time,
        )
        assert 12 * HOUR < found.total < 16 * HOUR


@pytest.mark.parametrize("current", [10.0, 15.0, 20.0, 25.0])
def test_absorption_after_half_a_discharge_lies_in_the_2_to_4_hours_of_common_practice(current):
    found = charging.charge_time(
        chemistry="AGM", capacity=100 * AH, current=current, from_state=0.5, to_state=1.0
    )
    assert 1.9 * HOUR < found.falling < 4 * HOUR


def test_the_spread_of_acceptance_is_three_quarters_at_the_ends_of_common_practice():
    """A bank that is 75 % full as bulk ends, at 25 % and at 10 % of its capacity in amps."""
    known = charging.by_chemistry("flooded")
    for current, time in ((25.0, known.low), (20.0, known.time_constant), (10.0, known.high)):
        meets = charging.meeting_state(capacity=100 * AH, current=current, time_constant=time)
        assert meets == pytest.approx(0.75, rel=1e-12)


@pytest.mark.parametrize("chemistry", Chemistry)
def test_a_bank_takes_less_and_less_and_nothing_when_it_is_full(chemistry):
    states = [n / 200 for n in range(201)]
    taken = [
        charging.acceptance(chemistry=chemistry, capacity=100 * AH, state=state) for state in states
    ]
    assert taken == sorted(taken, reverse=True)
    assert taken[0] == pytest.approx(charging.by_chemistry(chemistry).most * 100 * AH)
    assert taken[-1] == 0.0
    full = charging.full_state(
        time_constant=charging.by_chemistry(chemistry).time_constant,
        tail=charging.by_chemistry(chemistry).tail,
    )
    at_full = charging.acceptance(chemistry=chemistry, capacity=100 * AH, state=full)
    assert at_full == pytest.approx(2.0), "the tail: 2 A for 100 Ah"


@pytest.mark.parametrize("chemistry", Chemistry)
def test_a_larger_charger_is_never_slower_and_beyond_the_bank_s_most_no_faster(chemistry):
    times = [
        charging.charge_time(
            chemistry=chemistry, capacity=100 * AH, current=amps, from_state=0.2, to_state=1.0
        ).total
        for amps in (1, 5, 10, 25, 50, 100, 200)
    ]
    assert times == sorted(times, reverse=True)
    assert times[-1] == times[-2]


@pytest.mark.parametrize("chemistry", Chemistry)
def test_a_bank_that_is_full_needs_no_time_and_stays_as_it_is(chemistry):
    found = charging.charge_time(
        chemistry=chemistry, capacity=100 * AH, current=20.0, from_state=1.0, to_state=1.0
    )
    assert (found.total, found.reached, found.end_current) == (0.0, 1.0, 0.0)


def test_a_tail_that_never_ends_is_refused():
    with pytest.raises(ValueError, match="never reaches 1"):
        charging.stages(
            capacity=AH,
            current=1.0,
            from_state=0.5,
            to_state=1.0,
            efficiency=1.0,
            time_constant=HOUR,
        )


def test_however_long_it_charges_the_state_stays_below_full():
    after = charging.state_after(
        capacity=100 * AH,
        current=20.0,
        state=0.0,
        efficiency=0.85,
        time_constant=1.25 * HOUR,
        duration=1000 * HOUR,
    )
    assert after <= 1.0 and math.isclose(after, 1.0)


def test_only_the_bibliography_names_the_authors_that_charging_rests_on():
    titles = [source.title for source in CHARGING.values()]
    names = {found[1] for title in titles if (found := re.match(r"([A-Z]\w+)(?:'s|,)", title))}
    assert len(names) == 4
    root = Path(calc.__file__).parents[1]
    for sheet in ("alternator-charge", "shore-charge"):
        name = sheet.replace("-", "_")
        paths = [root / "docs/checks" / f"{sheet}.md", root / "evidence" / f"{name}.toml"]
        paths += (root / "calc/sheets").glob(f"*/{name}/*.py")
        assert len(paths) >= 5
        for path in paths:
            assert not names & set(re.findall(r"\w+", path.read_text())), path


def test_an_unknown_chemistry_is_an_error():
    with pytest.raises(NotCovered):
        charging.acceptance(chemistry="brine", capacity=AH, state=0.5)
