"""The loads of a day: what each draws while it is on, and in which hours it is on.

Time is solar time. Day is when the sun is up; where it stays up or stays down all day, night is
from 22 to 6.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Annotated

from calc.energy.balance import HOURS
from calc.units.constants import HOUR
from calc.units.covered import Enumeration
from calc.units.si import Joules, Number, Seconds, Tag, Watts

# Solar time: our choice
MORNING_FROM: Annotated[Number, Tag("o'clock of what runs in the morning")] = 7.0
# Solar time: our choice
MIDDAY_FROM: Annotated[Number, Tag("o'clock of what runs at midday")] = 12.0
# Solar time: our choice
EVENING_FROM: Annotated[Number, Tag("o'clock of what runs in the evening")] = 18.0
# Where the sun does not part day from night: our choice
BED: Annotated[Number, Tag("o'clock at which night begins without a sunset")] = 22.0
# The same: our choice
RISE: Annotated[Number, Tag("o'clock at which night ends without a sunrise")] = 6.0


class When(Enumeration):
    """When a load runs: spread over a part of the day, or in one go from a time of day on."""

    ALWAYS = "all"
    DAYTIME = "day"
    NIGHT = "night"
    MORNING = "morning"
    MIDDAY = "midday"
    EVENING = "evening"
    TWICE = "morning-and-evening"


SPREAD = (When.ALWAYS, When.DAYTIME, When.NIGHT)
STARTS = {
    When.MORNING: MORNING_FROM,
    When.MIDDAY: MIDDAY_FROM,
    When.EVENING: EVENING_FROM,
}


@dataclass(frozen=True, slots=True)
class Load:
    """A load that draws `watts` for `hours` [s] a day, `when` says when.

    `inverter` tells that an inverter feeds it.
    """

    name: str
    watts: Watts
    hours: Seconds
    when: When
    inverter: bool

    def __post_init__(self) -> None:
        object.__setattr__(self, "when", When(self.when))  # an unknown name is refused

    @property
    def energy(self) -> Joules:
        """What it takes in a day."""
        return self.watts * self.hours


def span(start: float, length: float, hours: int) -> Iterator[float]:
    """Yield the share [0..1] of each of `hours` within `length` [h] from `start` [h] on."""
    for at in range(hours):
        yield max(0.0, min(at + 1.0, start + length) - max(float(at), start))


def wrapped(start: float, length: float) -> tuple[float, ...]:
    """Return the share of each hour of a day within `length` [h, to 24] from `start` o'clock on.

    What passes midnight goes on at 0.
    """
    twice = tuple(span(start, length, 2 * HOURS))
    return tuple(map(sum, zip(twice[:HOURS], twice[HOURS:], strict=True)))


def stretches(
    loads: list[Load], daylight: tuple[float, ...]
) -> list[list[tuple[float, tuple[Load, ...]]]]:
    """Return for each hour its stretches, each a share [0..1] of it and the loads that are on."""
    shares = [running(load, daylight) for load in loads]
    found: list[list[tuple[float, tuple[Load, ...]]]] = []
    for at in range(HOURS):
        ends = sorted({share[at] for share in shares if share[at] > 0} | {1.0})
        before, stretches = 0.0, []
        for end in ends:
            together = tuple(
                load for load, share in zip(loads, shares, strict=True) if share[at] >= end
            )
            stretches.append((end - before, together))
            before = end
        found.append(stretches)
    return found


def day_hours(daylight: float) -> tuple[float, ...]:
    """Return the share [0..1] of each hour that is day, `daylight` [s] of it about noon.

    Where there is none, or nothing else, day is from `RISE` to `BED`.
    """
    length = daylight / HOUR
    if 0.0 < length < HOURS:
        return tuple(span(HOURS / 2 - length / 2, length, HOURS))
    return tuple(span(RISE, BED - RISE, HOURS))


def running(load: Load, daylight: tuple[float, ...]) -> tuple[float, ...]:
    """Return the share [0..1] of each hour that `load` runs.

    Evenly over its part of the day, or in one go from its time of day on. What its part has no room
    for goes evenly over the rest: a load that is to run longer than the night runs on by day.
    """
    hours = load.hours / HOUR
    if load.when in STARTS:
        return _no_more(wrapped(STARTS[load.when], hours))
    if load.when is When.TWICE:
        # One half each, as far as the first is over when the second begins
        first = min(hours / 2, EVENING_FROM - MORNING_FROM)
        halves = wrapped(MORNING_FROM, first), wrapped(EVENING_FROM, hours - first)
        return _no_more(map(sum, zip(*halves, strict=True)))
    part = [
        day if load.when is When.DAYTIME else 1.0 - day if load.when is When.NIGHT else 1.0
        for day in daylight
    ]
    room = sum(part)
    inside = min(1.0, hours / room) if room else 0.0
    over = max(0.0, hours - room)
    outside = over / (HOURS - room) if over > 0 else 0.0
    return _no_more(inside * share + outside * (1.0 - share) for share in part)


def _no_more(shares: Iterable[float]) -> tuple[float, ...]:
    """Return shares of an hour without what the last digit of a float has above 1."""
    return tuple(min(1.0, share) for share in shares)
