"""What a van's week is made of: its bank, its sources and its loads, laid into the hours of a day.

Time is solar time. Day is when the sun is up; where it stays up or stays down all day, night is
from 22 to 6. In scope: days that are all alike. Out of scope: weather that changes, a load whose
power changes, shade.
"""

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache
from typing import Annotated

from calc.energy import battery, charging
from calc.energy.balance import HOURS, Bank, Course, Day, Level, carries, course
from calc.energy.battery import Chemistry, ColdCutOff
from calc.energy.cloud import MonthlySky
from calc.energy.daily_loads import SPREAD, Load, When, day_hours, span, stretches, wrapped
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


class Question(Enumeration):
    """What is asked of the bank."""

    WEEK = "week"  # after week
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
        useful, conversion, idle, levels = self._loads(self.loads)
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

    def _loads(self, loads: tuple[Load, ...]) -> "_Laid":
        """Return by the hour: what these loads take, conversion, idle [J], and the levels."""
        always = self.always and any(load.inverter and load.energy for load in self.loads)
        return _laid(
            loads, self.daylight, always, self.idle, self.efficiency, self.voltage,
            self.bank.capacity, self.exponent,
        )  # fmt: skip

    @property
    def peak_current(self) -> Amperes:
        """The current with every load on at once."""
        fed = sum(load.watts for load in self.loads if load.inverter and load.energy)
        direct = sum(load.watts for load in self.loads if not load.inverter and load.energy)
        power = direct + (fed / self.efficiency + self.idle if fed else 0.0)
        return power / self.voltage

    @cached_property
    def together_current(self) -> Amperes:
        """The largest current of loads that are on at the same time.

        A load of the day and one of the night never are, though the hour of sunset has both.
        """
        halves = (
            self._loads(tuple(load for load in self.loads if load.when is not other))[-1]
            for other in (When.DAYTIME, When.NIGHT)
        )
        return (
            max(level.demand for half in halves for hour in half for level in hour) / self.voltage
        )

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


_Laid = tuple[
    tuple[float, ...], tuple[float, ...], tuple[float, ...], tuple[tuple[Level, ...], ...]
]


@lru_cache(maxsize=64)  # a search for what would help asks of the same loads again and again
def _laid(
    loads: tuple[Load, ...],
    daylight: tuple[float, ...],
    always: bool,
    idle: Watts,
    efficiency: Share,
    voltage: Volts,
    capacity: Coulombs,
    exponent: Number,
) -> _Laid:
    """Return by the hour: what loads take, conversion, idle [J], and the levels.

    Loads from one time of day on run together from the beginning of an hour, and so do those that
    are spread over a part of the day; the two kinds meet by chance. With `always` the inverter is
    on though none of them asks it to. Each level has by how much its current empties the bank
    faster than its charge says, 1 or more: see `battery.peukert_factor`.
    """
    timed = [load for load in loads if load.watts and load.when not in SPREAD]
    spread = [load for load in loads if load.watts and load.when in SPREAD]
    of_timed, of_spread = stretches(timed, daylight), stretches(spread, daylight)
    useful, conversion, idling = [0.0] * HOURS, [0.0] * HOURS, [0.0] * HOURS
    levels: list[tuple[Level, ...]] = []
    for at in range(HOURS):
        hour: list[Level] = []
        for one, first in of_timed[at]:
            for other, second in of_spread[at]:
                on, time = (*first, *second), one * other * HOUR
                direct = sum(load.watts for load in on if not load.inverter)
                fed = sum(load.watts for load in on if load.inverter)
                standing = idle if fed or always else 0.0
                useful[at] += (direct + fed) * time
                conversion[at] += (fed / efficiency - fed) * time
                idling[at] += standing * time
                demand = direct + fed / efficiency + standing
                factor = battery.peukert_factor(
                    capacity=capacity,
                    rated_time=RATED_TIME,
                    current=demand / voltage,
                    exponent=exponent,
                )
                hour.append(Level(time, demand, factor))
        levels.append(tuple(hour))
    return tuple(useful), tuple(conversion), tuple(idling), tuple(levels)
