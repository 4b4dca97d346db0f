"""A van's week worked hour by hour: the bank's states, what came and went, what would carry it.

The inputs and the day they make are in `week`, one hour in `balance`, endless days in `outlook`,
the changes that are tried in `remedies`.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Annotated

from calc.energy import bank_load, battery, charging, remedies
from calc.energy.balance import HOURS, STILL
from calc.energy.daily_loads import RISE, When
from calc.energy.limits import RATED_TIME
from calc.energy.outlook import Outlook
from calc.energy.panels import FULL_SUN
from calc.energy.recovery import Recovered, recovered
from calc.energy.remedies import Remedy
from calc.energy.sun import LOW_SUN, Month, SunDay
from calc.energy.usual_day import UsualDay
from calc.energy.week import Question, WeekInputs
from calc.units.compare import at_least, at_most
from calc.units.constants import HOUR
from calc.units.si import (
    Amperes,
    Coulombs,
    Joules,
    Number,
    Seconds,
    Share,
    Tag,
    Volts,
    WattsPerSquareMetre,
)

# A float's last digits: our choice
EMPTY: Annotated[Share, Tag("share of a capacity that is none")] = 1e-12


@dataclass(frozen=True, kw_only=True)
class HeldBank:
    """The bank as the week finds it: `shared` as every sheet judges it, and what the hours use.

    `full` is the energy it holds, `bulk_current` the most that it takes.
    """

    shared: battery.Bank
    floor: Share
    cold_factor: Number
    capacity: Coulombs
    full: Joules
    coulombic: Share
    energy_efficiency: Share
    charge_voltage: Volts
    bulk_current: Amperes
    exponent: Number
    rated_time: Seconds
    rated_current: Amperes
    charges: bool


@dataclass(frozen=True, kw_only=True)
class Day:
    """A day's energy on the bus: what each source can bring, and what is needed."""

    sun: Joules
    drive: Joules
    shore_night: Joules
    loads: Joules
    inverter: Joules
    use: Joules


@dataclass(frozen=True, kw_only=True)
class Flows:
    """The week's energies on the bus: brought by sources, taken by loads, lost by each cause.

    `unmet` is None where the loads got all they needed.
    """

    sun: Joules
    drive: Joules
    shore: Joules
    drawn: Joules
    came: Joules
    load_used: Joules
    load_taken: Joules
    conversion: Joules
    idle: Joules
    charging: Joules
    heavy: Joules
    stored: Joules
    went: Joules
    alone: Joules
    not_taken: Joules
    unmet: Joules | None


@dataclass(frozen=True, kw_only=True)
class States:
    """The bank's states; `lowest_at` is counted from the midnight where it begins.

    `lowest` is told as far as loads draw it: below its floor a bank only loses a little by itself.
    `fullest` is after the first day; `emptied` and `lasts` are None where that does not come.
    """

    lowest: Share
    lowest_at: Seconds
    fullest: Share
    end: Share
    emptied: Seconds | None
    lasts: Seconds | None


@dataclass(frozen=True, kw_only=True)
class Hourly:
    """The days by the hour: states [0..1] at the start of each and the end of the last, energies.

    The states are told as far as loads draw them down.

    `nights` are pairs of a start and an end [s].
    """

    states: tuple[float, ...]
    nights: tuple[tuple[float, float], ...]
    sun: tuple[float, ...]
    drive: tuple[float, ...]
    shore: tuple[float, ...]
    loads: tuple[float, ...]


@dataclass(frozen=True, kw_only=True)
class DayCourse:
    """One day of the week, from 0: its states, and energies brought and taken by the loads."""

    number: int
    lowest: Share
    highest: Share
    end: Share
    brought: Joules
    taken: Joules


@dataclass(frozen=True, kw_only=True)
class MonthAhead:
    """The same van in another month: what the array offers in a day, and what comes of it."""

    month: Month
    sun: Joules
    outlook: Outlook


@dataclass(frozen=True, kw_only=True)
class WeekAhead:
    """A week or a trip of a bank with its loads and sources.

    `light` is what comes on the panels on a usual day, `peak_current` that with every load on at
    once. `recovered` is None for a week. `months` and `tried` are None until they are worked out
    (`later_stages`);
    `tried` holds the remedies in their order, those that are enough first.
    """

    inputs: WeekInputs
    bank: HeldBank
    sun: SunDay
    light: UsualDay
    full_sun: WattsPerSquareMetre
    day: Day
    flows: Flows
    states: States
    hourly: Hourly
    days: tuple[DayCourse, ...]
    outlook: Outlook
    peak_current: Amperes
    recovered: Recovered | None
    months: tuple[MonthAhead, ...] | None
    tried: tuple[Remedy, ...] | None

    @property
    def holds(self) -> bool:
        """Whether such days could go on without end."""
        return self.outlook.holds

    @property
    def lead_acid(self) -> bool:
        """Whether the bank is lead-acid."""
        return self.inputs.chemistry.lead_acid

    @property
    def heaviest(self) -> bank_load.Draw:
        """The most of what is on at the same time."""
        return bank_load.draw(
            chemistry=self.inputs.chemistry,
            capacity=self.inputs.capacity,
            current=self.inputs.together_current,
        )

    @property
    def charged(self) -> battery.Bank | None:
        """The bank, where there is anything that could charge it."""
        return self.bank.shared if self.inputs.has_source else None

    @property
    def lowest_bank(self) -> battery.Bank:
        """The bank at the lowest state of the week."""
        return battery.at_state(self.bank.shared, self.states.lowest)

    @property
    def starts_empty(self) -> bool:
        """Whether the bank counts as empty from the start."""
        return at_floor(self.inputs.from_state, self.bank.floor)

    @property
    def starts_alone(self) -> bool:
        """Whether a load starts by itself on an inverter that is off while not used."""
        inputs = self.inputs
        return not inputs.always and any(
            load.inverter and load.energy and load.when is When.ALWAYS for load in inputs.loads
        )

    @property
    def strongest_charger(self) -> Amperes:
        """The current of the strongest charger that is put to use."""
        inputs = self.inputs
        driving = inputs.charger if inputs.drive_hours else 0.0
        on_shore = inputs.lead if inputs.shore_every and inputs.lead_hours else 0.0
        return max(driving, on_shore)

    @property
    def sun_peak(self) -> Amperes:
        """What the panels give the bank in full sun, cold and square on."""
        return self.inputs.panels.peak_current

    @property
    def most_charge(self) -> Amperes:
        """The most current that such a bank is usually charged with."""
        return charging.by_chemistry(self.inputs.chemistry).most * self.inputs.capacity

    @property
    def leans_on_low_sun(self) -> bool:
        """Whether it holds, but only with the sun, and that stands low."""
        return (
            self.outlook.holds
            and self.flows.sun > 0.0
            and not at_least(self.sun.noon, LOW_SUN)
            and not replace(self.inputs, array=0.0).outlook.holds
        )

    @property
    def sky_used(self) -> Share:
        """The share of a clear day that comes on level ground."""
        return self.light.sky

    @property
    def heat_keeps(self) -> Share:
        """The share of the panels' power that hot cells leave."""
        return self.inputs.heat_keeps

    @property
    def regulator_keeps(self) -> Share:
        """The share of it that the regulator leaves."""
        return self.inputs.panels.regulator_keeps

    @property
    def trip(self) -> bool:
        """Whether a trip is asked about, and not a week on and on."""
        return self.recovered is not None


def week_ahead(inputs: WeekInputs) -> WeekAhead:
    """Return the week of `inputs`, without the months and the remedies."""
    bank, day, week, later = inputs.bank, inputs.day, inputs.week, inputs.outlook
    hours, states = week.hours, week.states
    served = [(one.served, at % HOURS) for at, one in enumerate(hours)]
    unmet = sum((1.0 - share) * day.useful[at] for share, at in served)
    asked = sum(day.useful[at] for _, at in served)
    load_hourly = tuple(share * day.demand[at] for share, at in served)
    stored, drawn = sum(one.stored for one in hours), sum(one.drawn for one in hours)
    charging_lost, heavy = sum(one.charging for one in hours), sum(one.heavy for one in hours)
    sun, drive, shore = sum(week.sun), sum(week.drive), sum(week.shore)
    return WeekAhead(
        inputs=inputs,
        bank=HeldBank(
            shared=battery.bank(
                chemistry=inputs.chemistry,
                capacity=inputs.capacity,
                temperature=inputs.temperature,
                state=inputs.from_state,
                cut_off=inputs.cold_cut_off,
            ),
            floor=bank.floor,
            cold_factor=inputs.cold,
            capacity=bank.capacity,
            full=bank.full,
            coulombic=bank.coulombic,
            energy_efficiency=bank.energy,
            charge_voltage=bank.charge_voltage,
            bulk_current=bank.most,
            exponent=inputs.exponent,
            rated_time=RATED_TIME,
            rated_current=bank.capacity / RATED_TIME,
            charges=bank.charges,
        ),
        sun=inputs.sun,
        light=inputs.usual,
        full_sun=FULL_SUN,
        day=Day(
            sun=sum(day.sun),
            drive=sum(day.drive),
            shore_night=sum(day.evening) + sum(day.morning),
            loads=sum(day.useful),
            inverter=sum(day.conversion) + sum(day.idle),
            use=sum(day.demand),
        ),
        flows=Flows(
            sun=sun,
            drive=drive,
            shore=shore,
            drawn=drawn,
            came=sun + drive + shore + drawn,
            load_used=sum(share * day.useful[at] for share, at in served),
            load_taken=sum(load_hourly),
            conversion=sum(share * day.conversion[at] for share, at in served),
            idle=sum(share * day.idle[at] for share, at in served),
            charging=charging_lost,
            heavy=heavy,
            stored=stored,
            went=sum(load_hourly) + heavy + charging_lost + stored,
            alone=sum(one.alone for one in hours),
            not_taken=_counts(inputs.days * sum(day.sun) - sun, inputs.days * sum(day.sun)),
            unmet=_counts(unmet, asked) or None,
        ),
        states=States(
            lowest=max(min(states), min(inputs.from_state, bank.floor)),
            lowest_at=states.index(min(states)) * HOUR,
            fullest=max(states[HOURS:]),
            end=states[-1],
            emptied=week.emptied,
            lasts=later.empty,
        ),
        hourly=Hourly(
            states=tuple(max(one, min(inputs.from_state, bank.floor)) for one in states),
            nights=_nights(inputs),
            sun=week.sun,
            drive=week.drive,
            shore=week.shore,
            loads=load_hourly,
        ),
        days=tuple(
            _one_day(number, states, (week.sun, week.drive, week.shore), load_hourly)
            for number in range(inputs.days)
        ),
        outlook=later,
        peak_current=inputs.peak_current,
        recovered=recovered(inputs) if inputs.question is Question.TRIP else None,
        months=None,
        tried=None,
    )


def later_stages(found: WeekAhead) -> Iterator[tuple[float, WeekAhead]]:
    """Yield the share done and the week with the months, then with the remedies that were tried."""
    months = list[MonthAhead]()
    for number, month in enumerate(Month, 1):
        other = found.inputs.in_month(month)
        months.append(MonthAhead(month=month, sun=sum(other.day.sun), outlook=other.outlook))
        yield 0.5 * number / len(Month), found
    found = replace(found, months=tuple(months))
    tried: list[Remedy] = []
    if found.states.emptied is not None or not (found.trip or found.holds):
        for number, remedy in enumerate(remedies.attempts(found.inputs), 1):
            if remedy is not None:
                tried.append(remedy)
            yield 0.5 + 0.5 * number / (number + 1), found
    yield 1.0, replace(found, tried=remedies.ranked(tried))


def shore_offered(inputs: WeekInputs) -> float:
    """Return what the nights on shore power offer in these days [J]."""
    return sum(sum(inputs.day.lead(number, inputs.shore_every)) for number in range(inputs.days))


def at_floor(state: float, floor: float) -> bool:
    """Return whether a bank at `state` has nothing left that the plan would use."""
    return at_most(state, floor + EMPTY)


def _counts(energy: float, of: float) -> float:
    """Return an `energy` [J], or 0 where it is only the last digits of a sum `of` so much."""
    return energy if energy > STILL * of else 0.0


def _nights(inputs: WeekInputs) -> tuple[tuple[float, float], ...]:
    """Return the start and end [s] of each night of the week, by the hours that hold for loads."""
    light = sum(inputs.daylight) * HOUR
    whole = HOURS * HOUR
    rises = whole / 2 - light / 2 if 0.0 < inputs.sun.daylight < whole else RISE * HOUR
    sets = rises + light
    last = inputs.days - 1
    between = [(sets + number * whole, rises + (number + 1) * whole) for number in range(last)]
    return ((0.0, rises), *between, (sets + last * whole, (last + 1) * whole))


def _one_day(
    number: int,
    states: tuple[float, ...],
    sources: tuple[tuple[float, ...], ...],
    loads: tuple[float, ...],
) -> DayCourse:
    first, last = number * HOURS, (number + 1) * HOURS
    own = states[first : last + 1]
    return DayCourse(
        number=number,
        lowest=min(own),
        highest=max(own),
        end=own[-1],
        brought=sum(sum(source[first:last]) for source in sources),
        taken=sum(loads[first:last]),
    )
