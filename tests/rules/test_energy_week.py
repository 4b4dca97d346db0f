"""Judgements of the week ahead, each on its side of its line, asked alone."""

from types import SimpleNamespace

import pytest

from calc.energy.rules.week import LITTLE_TO_SPARE


def week(lowest: float, floor: float, trip: bool = False) -> SimpleNamespace:
    """Return as much of a week's result as the rule reads."""
    return SimpleNamespace(
        trip=trip, states=SimpleNamespace(lowest=lowest), bank=SimpleNamespace(floor=floor)
    )


@pytest.mark.parametrize("floor", [0.1, 0.5])
def test_less_than_a_tenth_over_the_floor_is_little_to_spare(floor):
    """Common practice, no source: a tenth of the capacity, whatever the floor."""
    assert LITTLE_TO_SPARE.when(week(floor + 0.099, floor))
    assert not LITTLE_TO_SPARE.when(week(floor + 0.1, floor))


def test_a_trip_is_judged_by_its_recovery_and_not_by_what_it_spares():
    assert not LITTLE_TO_SPARE.when(week(0.5, 0.5, trip=True))
