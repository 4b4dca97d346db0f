"""A bank through the hours: what comes in, what goes out, and what is left.

One step is an hour: sources steady through it, each load at its full watts for its part of it.
Energies are counted on the d.c. bus [J]; the bank holds capacity times the voltage it works at.
While it charges, its voltage is higher than that, so energy put in is given back times the energy
efficiency, and a current in amps times the coulombic one.
In scope: one bank, sources that yield to it, loads that stop at the floor. Out of scope: ageing,
gassing near full, warming by its own losses, a management system's own draw.
"""

from dataclasses import dataclass
from typing import Annotated, NamedTuple

from calc.energy.charging import state_after
from calc.units.constants import HOUR
from calc.units.si import Amperes, Coulombs, Joules, PerSecond, Seconds, Share, Tag, Volts

HOURS = 24  # of a day, one a step
# A float's last digits: our choice
STILL: Annotated[Share, Tag("share of a capacity or an offer that is nothing")] = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Bank:
    """A bank as the hours find it.

    `capacity` [A·s] at its temperature, `voltage` [V] under load, `floor` [0..1] where it counts as
    empty, `coulombic` and `energy` efficiency [0..1], `most` the largest charging current [A],
    `acceptance_time_constant` [s] the charge that is missing divided by the current taken at the
    charging voltage,
    `drain` the share of the capacity that it loses by itself [1/s], `charges` whether it may be
    charged at its temperature.
    """

    capacity: Coulombs
    voltage: Volts
    floor: Share
    coulombic: Share
    energy: Share
    most: Amperes
    acceptance_time_constant: Seconds
    drain: PerSecond
    charges: bool

    @property
    def full(self) -> Joules:
        """The energy that it holds at 1."""
        return self.capacity * self.voltage

    @property
    def charge_voltage(self) -> Volts:
        """The voltage at which the two efficiencies agree: V · coulombic / energy."""
        return self.voltage * self.coulombic / self.energy


class Level(NamedTuple):
    """A part of an hour in which the same loads are on.

    For a `time` [s] they need a `demand` [W] on the bus; `factor` (1 or more) is by how much its
    current empties the bank faster.
    """

    time: float
    demand: float
    factor: float


NOTHING_ON = Level(HOUR, 0.0, 1.0)


class Part(NamedTuple):
    """A part of an hour with its `offered` and `demand` [J], the demand all above or all below."""

    time: float
    offered: float
    demand: float
    factor: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Day:
    """24 hours from midnight on: what each source offers and each use asks for [J] on the bus.

    `evening` is offered by a lead on the day that ends with it, `morning` on the day after.
    `useful` is what the loads themselves take, `conversion` and `idle` what the inverter adds.
    `levels` are the same by the time that loads are on together, the heaviest first: a load draws
    its full watts while it is on.
    """

    sun: tuple[float, ...]
    drive: tuple[float, ...]
    evening: tuple[float, ...]
    morning: tuple[float, ...]
    useful: tuple[float, ...]
    conversion: tuple[float, ...]
    idle: tuple[float, ...]
    levels: tuple[tuple[Level, ...], ...]

    @property
    def demand(self) -> tuple[float, ...]:
        """What is asked of the bus in each hour [J], the inverter's share included."""
        return tuple(map(sum, zip(self.useful, self.conversion, self.idle, strict=True)))

    @property
    def factor(self) -> tuple[float, ...]:
        """The largest factor of each hour, 1 where nothing is on."""
        return tuple(max(level.factor for level in hour) for hour in self.levels)

    def lead(self, number: int, every: int) -> tuple[float, ...]:
        """Return what a lead offers [J] in each hour of day `number` (from 0), `every` nights.

        The first lead is in the evening of day `every`, the last of them: nothing comes in advance.
        """
        evening = every > 0 and (number + 1) % every == 0
        morning = every > 0 and number > 0 and number % every == 0
        if evening and morning:
            return tuple(map(sum, zip(self.evening, self.morning, strict=True)))
        return self.evening if evening else self.morning if morning else (0.0,) * HOURS

    def parts(self, lead: tuple[float, ...], *, charges: bool) -> tuple[tuple[Part, ...], ...]:
        """Return the hours of a day with this `lead` [J], each in the parts that `hour` takes.

        Where the bank may not be charged (`charges`) nothing is offered by any source.
        """
        offers = map(sum, zip(self.sun, self.drive, lead, strict=True))
        return tuple(
            parted(levels, offered if charges else 0.0)
            for levels, offered in zip(self.levels, offers, strict=True)
        )


def parted(levels: tuple[Level, ...], offered: float) -> tuple[Part, ...]:
    """Return an hour in at most two parts: what is on exceeds what is `offered` [J], or does not.

    What is offered comes evenly through the hour. Within a part the bank only gives or only takes,
    so that its levels may be added up: the energies are the same, and the factor is weighed by what
    the bank gives.
    """
    rate = offered / HOUR
    short = [level for level in levels if level.demand > rate]
    return tuple(
        _part(group, rate)
        for group in (short, [level for level in levels if level.demand <= rate])
        if group
    )


def _part(levels: list[Level], rate: float) -> Part:
    time = sum(level.time for level in levels)
    missing = sum((level.demand - rate) * level.time for level in levels)
    drawn = sum((level.demand - rate) * level.time * level.factor for level in levels)
    return Part(
        time=time,
        offered=rate * time,
        demand=sum(level.demand * level.time for level in levels),
        factor=drawn / missing if missing > 0 else 1.0,
    )


class Hour(NamedTuple):
    """One hour: the state [0..1] at its end, and energies [J] on the bus.

    `used` of the sources, `stored` into the bank and `drawn` out of it; lost in `charging`, to a
    `heavy` current and by the bank `alone`; `served` is the share [0..1] of the demand that was
    met. `emptied` is how far into it [s] the bank reached its floor with a load still asking.
    """

    state: float
    used: float
    stored: float
    drawn: float
    charging: float
    heavy: float
    alone: float
    served: float
    emptied: float | None


def hour(bank: Bank, state: float, parts: tuple[Part, ...]) -> Hour:
    """Return one hour from `state` [0..1] through its `parts`.

    Sources serve the loads first. What is left charges the bank, at constant current up to the
    state where it takes no more, then less and less. What is missing comes from the bank, times
    the factor, down to the floor and no further. Then comes self-discharge.

    A higher state never ends lower: a charge follows one differential equation whose solutions do
    not cross, a discharge is max(min(s, floor), s - d), self-discharge max(0, s - a). Nor does a
    greater offer end lower, from the same state: a level that it lifts out of want counts nothing
    in either part. So more sun never ends a week lower.
    """
    full = bank.capacity * bank.voltage
    used = stored = drawn = charging = heavy = met = asked = passed = 0.0
    emptied = None
    for time, offered, demand, factor in parts:
        asked += demand
        if offered >= demand:
            met += demand
            used += demand
            current = (offered - demand) / time * bank.energy / (bank.voltage * bank.coulombic)
            if current > 0.0 and state < 1.0:
                before = state
                state = state_after(
                    capacity=bank.capacity,
                    current=min(current, bank.most),
                    state=state,
                    efficiency=bank.coulombic,
                    time_constant=bank.acceptance_time_constant,
                    duration=time,
                )
                took = (state - before) * full
                spent, surplus = took / bank.energy, offered - demand
                if spent >= surplus * (1 - STILL):  # all of it, not all but a float's last digit
                    spent = surplus
                used += spent
                stored += took
                charging += spent - took
        else:
            used += offered
            missing, have = demand - offered, max(state - bank.floor, 0.0) * full
            out = missing * factor
            if out >= have:
                if emptied is None:
                    emptied = passed + have / out * time
                out = have
                met += min(demand, offered + have / factor)
                state = min(state, bank.floor)
            else:
                met += demand
                state -= out / full
            drawn += out
            heavy += out - out / factor
        passed += time
    served = min(1.0, met / asked) if asked else 1.0
    alone = min(state, bank.drain * HOUR)
    return Hour(state - alone, used, stored, drawn, charging, heavy, alone * full, served, emptied)


class Hours:
    """The hours of a day like another, by whether a lead is there: worked out when first asked."""

    def __init__(self, bank: Bank, day: Day, every: int) -> None:
        self._charges, self._day, self._every = bank.charges, day, every
        self._known: dict[tuple[bool, bool], tuple[tuple[Part, ...], ...]] = {}

    def of(self, number: int) -> tuple[tuple[Part, ...], ...]:
        """Return the hours of day `number`, from 0."""
        every = self._every
        kind = (every > 0 and (number + 1) % every == 0, every > 0 < number and not number % every)
        if kind not in self._known:
            lead = self._day.lead(number, every)
            self._known[kind] = self._day.parts(lead, charges=self._charges)
        return self._known[kind]


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """A bank's hours one after another, from `start` [0..1].

    `sun`, `drive` and `shore` are what was taken of each source [J] in each hour: the sun first,
    then the charger, then the lead.
    """

    start: float
    hours: tuple[Hour, ...]
    sun: tuple[float, ...]
    drive: tuple[float, ...]
    shore: tuple[float, ...]

    @property
    def states(self) -> tuple[float, ...]:
        """The states at the start of each hour and at the end of the last."""
        return (self.start, *(one.state for one in self.hours))

    @property
    def emptied(self) -> Seconds | None:
        """When the bank was first empty, or None."""
        for place, one in enumerate(self.hours):
            if one.emptied is not None:
                return place * HOUR + one.emptied
        return None


def carries(bank: Bank, day: Day, *, state: float, days: int, every: int) -> bool:
    """Return whether the bank is never empty in `days` days all like `day`, as `course` has it."""
    hours = Hours(bank, day, every)
    for number in range(days):
        for parts in hours.of(number):
            one = hour(bank, state, parts)
            if one.emptied is not None:
                return False
            state = one.state
    return True


def course(bank: Bank, day: Day, *, state: float, days: int, every: int) -> Course:
    """Return `days` days all like `day` from `state` [0..1], a lead in one of `every` nights."""
    found: list[Hour] = []
    suns: list[float] = []
    drives: list[float] = []
    shores: list[float] = []
    start, hours = state, Hours(bank, day, every)
    for number in range(days):
        leads = day.lead(number, every)
        for sun, drive, lead, parts in zip(
            day.sun, day.drive, leads, hours.of(number), strict=True
        ):
            one = hour(bank, state, parts)
            state = one.state
            found.append(one)
            suns.append(min(sun, one.used))
            drives.append(min(drive, one.used - suns[-1]))
            shores.append(min(lead, max(0.0, one.used - suns[-1] - drives[-1])))
    return Course(
        start=start,
        hours=tuple(found),
        sun=tuple(suns),
        drive=tuple(drives),
        shore=tuple(shores),
    )
