"""What a van's week is made of: its bank, its sources and its loads, laid into the hours of a day.

Time is solar time. Day is when the sun is up; where it stays up or stays down all day, night is
from 22 to 6. In scope: days that are all alike. Out of scope: weather that changes, a load whose
power changes, shade.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Annotated

from calc.energy import battery, charging
from calc.energy.balance import HOURS, Bank, Course, Day, carries, course
from calc.energy.battery import Chemistry, ColdCutOff
from calc.energy.limits import RATED_TIME
from calc.energy.outlook import Outlook, outlook
from calc.energy.panels import FULL_SUN
from calc.energy.sun import Month, SunDay, day_on_plane
from calc.units.constants import HOUR
from calc.units.covered import Enumeration
from calc.units.si import (
    Amperes,
    Celsius,
    Coulombs,
    Degrees,
    Joules,
    JoulesPerSquareMetre,
    Metres,
    Number,
    Seconds,
    Share,
    Tag,
    Volts,
    Watts,
)

DAYS = 7
# Solar time: our choice
DRIVE_FROM: Annotated[Number, Tag("o'clock at which a day's driving begins")] = 10.0
# Solar time: our choice
LEAD_FROM: Annotated[Number, Tag("o'clock at which a night on shore power begins")] = 20.0
# Where the sun does not part day from night: our choice
BED: Annotated[Number, Tag("o'clock at which night begins without a sunset")] = 22.0
# The same: our choice
RISE: Annotated[Number, Tag("o'clock at which night ends without a sunrise")] = 6.0


class When(Enumeration):
    """The part of the day over which a load is spread."""

    ALWAYS = "all"
    DAYTIME = "day"
    NIGHT = "night"


class InverterOn(Enumeration):
    """How long an inverter is on."""

    ALWAYS = "day-and-night"
    WHILE_USED = "while-used"


@dataclass(frozen=True, slots=True)
class Load:
    """A load of `watts` that runs `hours` [s] a day by day, by night or at any hour.

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
    driving, and for `lead_hours` [s] of every `shore_every` nights (0: never).
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
    cold_cut_off: ColdCutOff = ColdCutOff.NOT_PROVEN

    @property
    def has_source(self) -> bool:
        """Whether anything is there that could charge the bank."""
        driving = bool(self.drive_hours and self.charger)
        on_shore = bool(self.shore_every and self.lead and self.lead_hours)
        return bool(self.array and self.sky) or driving or on_shore

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

    @property
    def light(self) -> JoulesPerSquareMetre:
        """The clear day's sum of which `sky` is taken.

        A tilt that catches a low sun gains little under cloud, whose light comes from all over. How
        the light of a week is made up is not known, so it is the lower of the two.
        """
        return min(self.sun.on_plane, self.sun.spread)

    @cached_property
    def daylight(self) -> tuple[float, ...]:
        """The share [0..1] of each hour that is day."""
        return day_hours(self.sun.daylight)

    @cached_property
    def day(self) -> Day:
        """The hours of one day."""
        clear = self.sun.on_plane
        catch = self.array / FULL_SUN * self.sky * (1.0 - self.losses)
        catch *= self.light / clear if clear else 0.0
        ampere_hour = HOUR * self.bank.charge_voltage
        nights = tuple(span(LEAD_FROM, self.lead_hours / HOUR, 2 * HOURS))
        useful, conversion, idle, factor = self._loads()
        return Day(
            sun=tuple(catch * hour for hour in self.sun.hours),
            drive=tuple(self.charger * ampere_hour * share for share in self._driving()),
            evening=tuple(self.lead * ampere_hour * share for share in nights[:HOURS]),
            morning=tuple(self.lead * ampere_hour * share for share in nights[HOURS:]),
            useful=useful,
            conversion=conversion,
            idle=idle,
            factor=factor,
        )

    def _driving(self) -> tuple[float, ...]:
        """Return the share of each hour that is driven; a drive past midnight goes on at 0."""
        twice = tuple(span(DRIVE_FROM, self.drive_hours / HOUR, 2 * HOURS))
        return tuple(map(sum, zip(twice[:HOURS], twice[HOURS:], strict=True)))

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

    def _loads(self) -> tuple[tuple[float, ...], ...]:
        """Return by the hour: what the loads take, conversion, idle [J], and the heavy factor.

        The factor is the larger of two: each load by its own current while it runs, weighed by
        energy, and all of them by the mean current of the hour.
        """
        shares = [list(running(load, self.daylight)) for load in self.loads]
        fed = [one for one, load in zip(shares, self.loads, strict=True) if load.inverter]
        parts: list[tuple[float, float, float, float]] = []
        for at in range(HOURS):
            on = min(1.0, sum(share[at] for share in fed))
            idle = self.idle * HOUR * (1.0 if self.always and fed else on)
            useful = through = weighed = 0.0
            for load, share in zip(self.loads, shares, strict=True):
                own = load.watts * share[at] * HOUR
                at_bus = load.watts / self.efficiency + self.idle if load.inverter else load.watts
                taken = own / self.efficiency if load.inverter else own
                useful += own
                through += taken - own
                weighed += taken * self.peukert_factor(at_bus / self.voltage)
            asked = useful + through + idle
            mean = self.peukert_factor(asked / HOUR / self.voltage)
            parts.append(
                (useful, through, idle, max(mean, (weighed + idle) / asked) if asked else 1.0)
            )
        return tuple(zip(*parts, strict=True))

    @cached_property
    def week(self) -> Course:
        """Seven days of it."""
        return course(self.bank, self.day, state=self.from_state, days=DAYS, every=self.shore_every)

    @cached_property
    def holds(self) -> bool:
        """Whether the bank is never empty in the week, found without the rest of it."""
        return carries(
            self.bank, self.day, state=self.from_state, days=DAYS, every=self.shore_every
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


def day_hours(daylight: float) -> tuple[float, ...]:
    """Return the share [0..1] of each hour that is day, `daylight` [s] of it about noon.

    Where there is none, or nothing else, day is from `RISE` to `BED`.
    """
    length = daylight / HOUR
    if 0.0 < length < HOURS:
        return tuple(span(HOURS / 2 - length / 2, length, HOURS))
    return tuple(span(RISE, BED - RISE, HOURS))


def running(load: Load, daylight: tuple[float, ...]) -> Iterator[float]:
    """Yield the share [0..1] of each hour that `load` runs, evenly over its part of the day.

    What its part has no room for goes evenly over the rest: a load that is to run longer than the
    night runs on by day.
    """
    part = [
        day if load.when is When.DAYTIME else 1.0 - day if load.when is When.NIGHT else 1.0
        for day in daylight
    ]
    room, hours = sum(part), load.hours / HOUR
    inside = min(1.0, hours / room) if room else 0.0
    over = max(0.0, hours - room)
    outside = over / (HOURS - room) if over > 0 else 0.0
    for share in part:
        yield inside * share + outside * (1.0 - share)
