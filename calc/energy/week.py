"""What a van's week is made of: its bank, its sources and its loads, laid into the hours of a day.

Time is solar time. Day is when the sun is up; where it stays up or stays down all day, night is
from 22 to 6. In scope: days that are all alike. Out of scope: weather that changes, a load whose
power changes, shade.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Annotated

from calc.energy import battery, charging
from calc.energy.balance import HOURS, Bank, Course, Day, Level, carries, course
from calc.energy.battery import Chemistry, ColdCutOff
from calc.energy.cloud import MonthlySky
from calc.energy.limits import RATED_TIME
from calc.energy.outlook import Outlook, outlook
from calc.energy.panels import FULL_SUN, Array, CellHeat, Mount, Regulator, cell_heat
from calc.energy.sun import Month, SunDay, day_on_plane
from calc.energy.usual_day import UsualDay, usual_day
from calc.units.constants import HOUR
from calc.units.covered import Enumeration
from calc.units.si import (
    Amperes,
    Celsius,
    Coulombs,
    Degrees,
    Joules,
    Metres,
    Number,
    Seconds,
    Share,
    SharePerKelvin,
    Tag,
    Volts,
    Watts,
)

DAYS = 7
# Solar time: our choice
DRIVE_FROM: Annotated[Number, Tag("o'clock at which a day's driving begins")] = 10.0
# Solar time: our choice
LEAD_FROM: Annotated[Number, Tag("o'clock at which a night on shore power begins")] = 20.0
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


class Question(Enumeration):
    """What is asked of the bank."""

    WEEK = "week"  # and on and on
    TRIP = "trip"  # of some nights, and then recovery


class Recovery(Enumeration):
    """What charges the bank after a trip."""

    SHORE = "shore"
    SUN = "sun"
    DRIVING = "driving"


class InverterOn(Enumeration):
    """How long an inverter is on."""

    ALWAYS = "day-and-night"
    WHILE_USED = "while-used"


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


@dataclass(frozen=True, kw_only=True)
class WeekInputs:
    """All that a week rests on.

    `always` tells that the inverter stays on day and night if it feeds anything; `sky` and `losses`
    [0..1] bring the array's clear-sky energy down; `charger` and `lead` [A] charge the bank while
    driving, and for `lead_hours` [s] of every `shore_every` nights (0: never). `skies` gives each
    month its own sky in place of `sky`. The roof has room for `roof` of panels. A trip takes
    `nights`, and then the bank recovers by `recovery`.
    """

    capacity: Coulombs
    chemistry: Chemistry
    from_state: Share
    usable: Share
    voltage: Volts
    temperature: Celsius
    loads: tuple[Load, ...]
    efficiency: Share
    idle: Watts
    always: bool
    array: Watts
    latitude: Degrees
    month: Month
    sky: Share
    losses: Share
    tilt: Degrees
    facing: Degrees
    turbidity: Number
    altitude: Metres
    drive_hours: Seconds
    charger: Amperes
    shore_every: int
    lead: Amperes
    lead_hours: Seconds
    skies: MonthlySky | None = None
    regulator: Regulator = Regulator.MPPT
    panel_voltage: Volts = 0.0
    air: Celsius | None = None
    mount: Mount = Mount.CLOSE_MOUNT
    heat_coefficient: SharePerKelvin = 0.0
    question: Question = Question.WEEK
    nights: int = DAYS
    recovery: Recovery = Recovery.SHORE
    roof: Watts = 0.0
    cold_cut_off: ColdCutOff = ColdCutOff.NOT_PROVEN

    @property
    def has_source(self) -> bool:
        """Whether anything is there that could charge the bank."""
        driving = bool(self.drive_hours and self.charger)
        on_shore = bool(self.shore_every and self.lead and self.lead_hours)
        after = self.question is Question.TRIP
        return bool(self.array and self.sky) or driving or on_shore or after

    @property
    def days(self) -> int:
        """How many days are worked hour by hour: those of the trip, else a week."""
        return self.nights if self.question is Question.TRIP else DAYS

    @cached_property
    def cold(self) -> Number:
        """The IEEE 485 factor of the cold, held below its table; 1 for LFP."""
        return battery.capacity_factor(self.chemistry, self.temperature)

    @cached_property
    def exponent(self) -> Number:
        """Peukert's exponent, as usual for the chemistry."""
        return battery.default_exponent(self.chemistry)

    @cached_property
    def bank(self) -> Bank:
        """The bank at its temperature."""
        takes = charging.by_chemistry(self.chemistry)
        capacity = self.capacity / self.cold
        return Bank(
            capacity=capacity,
            voltage=self.voltage,
            floor=1.0 - self.usable,
            coulombic=battery.charge_efficiency(self.chemistry),
            energy=battery.energy_efficiency(self.chemistry),
            most=takes.most * capacity,
            acceptance_time_constant=takes.time_constant,
            drain=battery.self_discharge(self.chemistry) * battery.warmth_factor(self.temperature),
            charges=battery.may_charge(chemistry=self.chemistry, temperature=self.temperature),
        )

    @cached_property
    def sun(self) -> SunDay:
        """The clear day in the middle of the month on the array's plane."""
        return day_on_plane(
            latitude=self.latitude,
            day_of_year=self.month.mid_day,
            tilt=self.tilt,
            facing=self.facing,
            turbidity=self.turbidity,
            altitude=self.altitude,
        )

    @cached_property
    def sky_used(self) -> Share:
        """The share of the clear day that comes on level ground, the month's own if known."""
        return self.skies.share(self.month, self.sun) if self.skies else self.sky

    @cached_property
    def usual(self) -> UsualDay:
        """A day of the week: as much light as `sky_used` leaves."""
        return usual_day(self.sun, self.sky_used)

    @cached_property
    def panels(self) -> Array:
        """The array as sun yield takes it, at the voltage of the charge."""
        return Array(
            power=self.array,
            losses=self.losses,
            voltage=self.bank.charge_voltage,
            regulator=self.regulator,
            panel_voltage=self.panel_voltage,
            air=self.air,
            mount=self.mount,
            heat_coefficient=self.heat_coefficient,
        )

    @cached_property
    def heat(self) -> CellHeat | None:
        """How hot the cells get by a clear day's light, None where heat is left out."""
        return cell_heat(array=self.panels, bright=self.sun.bright)

    @property
    def heat_keeps(self) -> Share:
        """The share of the power that hot cells leave; 1 where heat is left out."""
        return 1.0 if self.heat is None else self.heat.keeps

    @cached_property
    def daylight(self) -> tuple[float, ...]:
        """The share [0..1] of each hour that is day."""
        return day_hours(self.sun.daylight)

    @cached_property
    def day(self) -> Day:
        """The hours of one day."""
        catch = self.array / FULL_SUN * (1.0 - self.losses)
        catch *= self.heat_keeps * self.panels.regulator_keeps
        ampere_hour = HOUR * self.bank.charge_voltage
        nights = tuple(span(LEAD_FROM, self.lead_hours / HOUR, 2 * HOURS))
        useful, conversion, idle, levels = self._loads()
        return Day(
            sun=tuple(catch * hour for hour in self.usual.hours),
            drive=tuple(self.charger * ampere_hour * share for share in self._driving()),
            evening=tuple(self.lead * ampere_hour * share for share in nights[:HOURS]),
            morning=tuple(self.lead * ampere_hour * share for share in nights[HOURS:]),
            useful=useful,
            conversion=conversion,
            idle=idle,
            levels=levels,
        )

    def _driving(self) -> tuple[float, ...]:
        """Return the share of each hour that is driven; a drive past midnight goes on at 0."""
        return wrapped(DRIVE_FROM, self.drive_hours / HOUR)

    def peukert_factor(self, current: float) -> float:
        """Return by how much `current` [A] empties the bank faster than its charge says, 1 or more.

        See `battery.peukert_factor`.
        """
        return battery.peukert_factor(
            capacity=self.bank.capacity,
            rated_time=RATED_TIME,
            current=current,
            exponent=self.exponent,
        )

    def _loads(
        self,
    ) -> tuple[
        tuple[float, ...], tuple[float, ...], tuple[float, ...], tuple[tuple[Level, ...], ...]
    ]:
        """Return by the hour: what the loads take, conversion, idle [J], and the levels.

        Loads from one time of day on run together from the beginning of an hour, and so do those
        that are spread over a part of the day; the two kinds meet by chance.
        """
        timed = [load for load in self.loads if load.watts and load.when not in SPREAD]
        spread = [load for load in self.loads if load.watts and load.when in SPREAD]
        of_timed, of_spread = _stretches(timed, self.daylight), _stretches(spread, self.daylight)
        useful, conversion, idle = [0.0] * HOURS, [0.0] * HOURS, [0.0] * HOURS
        levels: list[tuple[Level, ...]] = []
        always = self.always and any(load.inverter and load.energy for load in self.loads)
        for at in range(HOURS):
            hour: list[Level] = []
            for one, first in of_timed[at]:
                for other, second in of_spread[at]:
                    on, time = (*first, *second), one * other * HOUR
                    direct = sum(load.watts for load in on if not load.inverter)
                    fed = sum(load.watts for load in on if load.inverter)
                    standing = self.idle if fed or always else 0.0
                    useful[at] += (direct + fed) * time
                    conversion[at] += (fed / self.efficiency - fed) * time
                    idle[at] += standing * time
                    demand = direct + fed / self.efficiency + standing
                    hour.append(Level(time, demand, self.peukert_factor(demand / self.voltage)))
            levels.append(tuple(hour))
        return tuple(useful), tuple(conversion), tuple(idle), tuple(levels)

    @cached_property
    def week(self) -> Course:
        """Its days, hour by hour."""
        return course(
            self.bank, self.day, state=self.from_state, days=self.days, every=self.shore_every
        )

    @cached_property
    def holds(self) -> bool:
        """Whether the bank is never empty in them, found without the rest of it."""
        return carries(
            self.bank, self.day, state=self.from_state, days=self.days, every=self.shore_every
        )

    @cached_property
    def outlook(self) -> Outlook:
        """What comes of such days without end."""
        return outlook(self.bank, self.day, state=self.from_state, every=self.shore_every)

    def in_month(self, month: Month) -> "WeekInputs":
        """Return the same van in another month."""
        return replace(self, month=month)


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


def _stretches(
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
