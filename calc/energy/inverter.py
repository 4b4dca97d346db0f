"""What an inverter must bear, and what it asks of bank and cable.

In scope: steady loads, and the start of one motor while the others run. Out of scope: how long an
inverter holds a surge, and its efficiency at part load but for a fixed figure and an idle draw.
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.electrical.fuses import CONTINUOUS
from calc.electrical.single_cable import SingleCable, single_cable
from calc.electrical.sizing import CHARGED, usual_ampacity
from calc.energy import bank_load, battery
from calc.energy.bank_load import Allowed, Draw
from calc.energy.battery import Chemistry
from calc.energy.limits import ONE_BATTERY
from calc.energy.loads import HEAVY_CABLE, bank_current
from calc.tables import FROM_MEMORY, table
from calc.units.compare import at_most
from calc.units.constants import HOUR
from calc.units.covered import NotCovered
from calc.units.si import (
    Amperes,
    Coulombs,
    Joules,
    Number,
    PerSecond,
    Seconds,
    Share,
    Tag,
    VoltAmperes,
    Volts,
    Watts,
)

# Current per capacity that such a bank gives for a moment: common practice, no source
BRIEF_LEAD_ACID: Annotated[PerSecond, Tag("brief current of lead-acid per capacity")] = 1.0 / HOUR
# The same of LFP: common practice, no source
BRIEF_LFP: Annotated[PerSecond, Tag("brief current of LFP per capacity")] = 2.0 / HOUR
# Times the steady power that inverters and batteries give for a moment: common practice, no source
BRIEF: Annotated[Number, Tag("surge against the steady power")] = 2.0
# Of a day's energy, that idling may take unremarked: common practice, no source
MUCH_IDLING: Annotated[Share, Tag("share of a day's energy that idling may take")] = 0.25
# Of the voltage, from which the lowest is no sag at all: common practice, no source
NO_SAG: Annotated[Share, Tag("lowest voltage that is no sag")] = 0.98
# Of the voltage, below which the lowest is not that of the same bank: common practice, no source
TOO_LOW: Annotated[Share, Tag("lowest voltage that is another bank's")] = 0.75

_SAID = f" ({FROM_MEMORY})"


@dataclass(frozen=True, kw_only=True)
class InverterLoad:
    """What an inverter must carry, and the bank that feeds it.

    `motor` starts while the rest of `running` goes on, `can_wait` is the part of it that need not;
    `max_current` is the most that the bank may give. None where not known.
    """

    running: Watts
    surge: Watts
    power_factor: Number
    efficiency: Share
    idle: Watts
    lowest_voltage: Volts
    hours_on: Seconds
    voltage: Volts
    motor: Watts | None
    can_wait: Watts | None
    chemistry: Chemistry
    capacity: Coulombs | None
    max_current: Amperes | None


@dataclass(frozen=True, kw_only=True)
class Waiting:
    """The larger `power` if one load waits for the rest, and what it needs."""

    power: Watts
    apparent: VoltAmperes
    current: Amperes


@dataclass(frozen=True, kw_only=True)
class InverterNeed:
    """Ratings that an inverter must have, what it takes from the bank, and its day.

    `draw` is None where the bank's capacity is not known, `waiting` where nothing can wait.
    """

    load: InverterLoad
    motor_start: Watts | None
    surge_power: Watts
    continuous: VoltAmperes
    surge_rating: VoltAmperes
    current: Amperes
    surge_current: Amperes
    idle_energy: Joules
    idle_charge: Coulombs
    day_energy: Joules
    idle_share: Share
    day_efficiency: Share
    heat: Watts
    waiting: Waiting | None
    draw: Draw | None
    usual_rate: PerSecond
    heavy_cable: Amperes
    single_cable: SingleCable

    @property
    def through_inverter(self) -> bool:
        """Whether an inverter feeds it: always."""
        return True

    @property
    def fuse_need(self) -> Amperes:
        """What the fuse of its cable is rated at least."""
        return CONTINUOUS * self.current

    @property
    def lead_acid(self) -> bool:
        """Whether the bank is lead-acid."""
        return self.load.chemistry.lead_acid

    @property
    def brief_current(self) -> Amperes:
        """The most that such a bank, or one usual battery where none is named, gives briefly."""
        if self.load.capacity is None:
            return BRIEF * ONE_BATTERY
        rate = BRIEF_LEAD_ACID if self.lead_acid else BRIEF_LFP
        return rate * self.load.capacity

    @property
    def allowed(self) -> Allowed | None:
        """The steady current beside the most that the bank may give, None where not known."""
        most = self.load.max_current
        return None if most is None else Allowed(current=self.current, most=most)

    @property
    def surge_beyond_bank(self) -> bool:
        """Whether the bank may not give the current of the surge."""
        most = self.load.max_current
        return most is not None and not at_most(self.surge_current, most)

    @property
    def hard_on_bank(self) -> bool:
        """Whether the steady current is hard on such a bank."""
        return self.draw is not None and not at_most(self.draw.rate, self.draw.heavy_rate)

    @property
    def beyond_heavy_cable(self) -> bool:
        """Whether the steady current is beyond what is handled with ease."""
        return not at_most(self.fuse_need, self.heavy_cable)


def inverter_need(
    *,
    running: float,
    surge: float,
    power_factor: float,
    efficiency: float,
    idle: float,
    lowest_voltage: float,
    hours_on: float,
    voltage: float,
    motor: float | None,
    start_factor: float,
    can_wait: float | None,
    taken: float,
    capacity: float | None,
    chemistry: Chemistry,
    max_current: float | None,
) -> InverterNeed:
    """Return what inverter carries `running` [W] and starts `surge` [W], and what it needs.

    The bank is at `lowest_voltage` [V] when it gives the most. A start of the `motor` [W] takes
    `start_factor` times its running power; the loads take `taken` [J] in a day of which the
    inverter is on for `hours_on` [s]. Raises NotCovered for a part larger than the whole, and for a
    lowest voltage above the bank's.
    """
    if not at_most(lowest_voltage, voltage):
        raise NotCovered("lowest_voltage", "must be no more than the bank voltage.")
    for name, part in (("motor", motor), ("can_wait", can_wait)):
        if part is not None and not at_most(part, running):
            raise NotCovered(name, "must be no more than the running power, which it is a part of.")
    start = None
    if motor is not None:
        start = starting_power(running=running, motor=motor, factor=start_factor)
    surge_power = max(running, surge, start or 0.0)
    current = bank_current(running, lowest_voltage, efficiency)
    idle_energy = idle * hours_on
    day = day_energy(taken=taken, efficiency=efficiency, idle=idle, on=hours_on)
    waiting = None
    if can_wait is not None:
        power = peak_if_exclusive(running=running, waits=can_wait)
        waiting = Waiting(
            power=power,
            apparent=apparent_power(power, power_factor),
            current=bank_current(power, lowest_voltage, efficiency),
        )
    load = InverterLoad(
        running=running,
        surge=surge,
        power_factor=power_factor,
        efficiency=efficiency,
        idle=idle,
        lowest_voltage=lowest_voltage,
        hours_on=hours_on,
        voltage=voltage,
        motor=motor,
        can_wait=can_wait,
        chemistry=Chemistry(chemistry),
        capacity=capacity,
        max_current=max_current,
    )
    drawn = None
    if capacity is not None:
        drawn = bank_load.draw(
            chemistry=chemistry, capacity=capacity, current=current, most=max_current
        )
    return InverterNeed(
        load=load,
        motor_start=start,
        surge_power=surge_power,
        continuous=apparent_power(running, power_factor),
        surge_rating=apparent_power(surge_power, power_factor),
        current=current,
        surge_current=bank_current(surge_power, lowest_voltage, efficiency),
        idle_energy=idle_energy,
        idle_charge=idle_energy / voltage,
        day_energy=day,
        idle_share=idle_energy / day,
        day_efficiency=taken / day,
        heat=running / efficiency - running,
        waiting=waiting,
        draw=drawn,
        usual_rate=battery.heavy_rate(chemistry),
        heavy_cable=usual_ampacity(HEAVY_CABLE),
        single_cable=single_cable(current=current, max_voltage=CHARGED * voltage),
    )


def apparent_power(power: float, power_factor: float) -> float:
    """Return the apparent power [V·A] of `power` [W] at `power_factor` [0..1]. S = P/λ."""
    return power / power_factor


def starting_power(*, running: float, motor: float, factor: float) -> float:
    """Return the power [W] as `motor` [W] starts while the rest of `running` [W] goes on.

    `running` holds the motor. A start takes `factor` times its running current for a moment; its
    power factor is lower then, which this leaves out.
    """
    return running - motor + factor * motor


def peak_if_exclusive(*, running: float, waits: float) -> float:
    """Return the larger power [W] when a load `waits` [W], part of `running`, is used by itself."""
    return max(running - waits, waits)


def day_energy(*, taken: float, efficiency: float, idle: float, on: float) -> float:
    """Return the energy [J] from the bank in a day in which the loads have `taken` [J].

    The `idle` draw [W] counts for all of the time that the inverter is `on` [s].
    """
    return taken / efficiency + idle * on


@dataclass(frozen=True)
class Letter:
    """A motor's code letter with its locked-rotor apparent power, as text, and how it is known."""

    letter: str
    power: str
    known: str


@cache
def code_letters() -> tuple[Letter, ...]:
    """Return the code letters of the table, NEC 430.7(B). Row H is from memory."""
    return tuple(
        Letter(
            row["letter"],
            f"{row['low_kva_hp']} to {row['high_kva_hp']} kV·A"
            + (_SAID if row["confidence"] == FROM_MEMORY else ""),
            row["confidence"],
        )
        for row in table("code_letters").rows
    )


@dataclass(frozen=True)
class Weight:
    """A load as a share of the rating, and what its efficiency counts in each average, as text."""

    load: str
    cec: str
    european: str


@cache
def weights() -> tuple[Weight, ...]:
    """Return by what shares efficiency at part load is averaged, by two ways of weighting."""
    return tuple(
        Weight(_percent(row["load"]), _percent(row["cec"]), _percent(row["european"]))
        for row in table("inverter_weights").rows
    )


def _percent(share: str) -> str:
    return f"{float(share) * 100:g} %" if share else "none"
