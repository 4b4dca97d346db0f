"""What one job takes of a bank, and heat that is made from it by resistance.

In scope: steady power over some hours, against the charge of the bank that is used. Out of scope:
what else is drawn or brought meanwhile, and how the bank gives less in the cold.
"""

from dataclasses import dataclass, fields
from typing import Annotated

from calc.energy.bank_load import Draw, draw
from calc.energy.battery import Chemistry, default_exponent, peukert_runtime
from calc.energy.limits import RATED_TIME
from calc.energy.loads import (
    BankLoad,
    Consumption,
    HeatFromBank,
    LoadType,
    Route,
    consumption,
    of_power,
)
from calc.units.compare import at_least, at_most
from calc.units.si import Coulombs, Seconds, Share, Tag

# Of what is used of a bank, for one job beside all others: common practice, no source
LARGE_SHARE: Annotated[Share, Tag("share of the used charge that one job may take")] = 0.25


@dataclass(frozen=True, kw_only=True)
class UsableBank:
    """A bank of rated `capacity`, of which a share `usable` is used: it `gives` that charge."""

    chemistry: Chemistry
    capacity: Coulombs
    usable: Share
    gives: Coulombs


@dataclass(frozen=True, kw_only=True)
class BankDraw:
    """A `charge` drawn from a bank, and its `share` of what is used of it."""

    bank: UsableBank
    charge: Coulombs
    share: Share


@dataclass(frozen=True, kw_only=True)
class Job(Consumption):
    """What a load takes from a bank, and how much that is of it.

    `drawn` is the charge beside what is used of the bank, `draw` the current beside what such a
    bank gives, `lasts` how long that share of it lasts at this current by Peukert's law; None where
    its capacity is not known.
    """

    drawn: BankDraw | None
    draw: Draw | None
    lasts: Seconds | None

    @property
    def ends_sooner(self) -> bool:
        """Whether a bank that holds the charge ends before the time, under so heavy a load."""
        if self.drawn is None or self.lasts is None:
            return False
        return at_most(self.drawn.charge, self.drawn.bank.gives) and not at_most(
            self.time, self.lasts
        )

    @property
    def load_on_any_bank(self) -> BankLoad | None:
        """The load, where nothing is known of the bank to set beside it."""
        return self.load if self.draw is None else None

    @property
    def heat(self) -> HeatFromBank | None:
        """What is made into heat by a resistance, None for any other load."""
        if self.load_type is not LoadType.HEAT:
            return None
        return HeatFromBank(
            load=self.load,
            time=self.time,
            holds_warmth=False,
            charge=self.charge,
            share=None if self.drawn is None else self.drawn.share,
        )


def job(
    *,
    power: float,
    voltage: float,
    route: Route,
    efficiency: float,
    time: float,
    load_type: LoadType,
    capacity: float | None,
    chemistry: Chemistry,
    usable: float,
) -> Job:
    """Return what `power` [W] takes in a `time` [s] from a bank at `voltage` [V].

    The bank is of `capacity` [A·s], None where not known, of which a share `usable` [0..1] is used.
    See `loads.consumption`. Raises NotCovered for a name that is not in an enumeration.
    """
    taken = consumption(
        power=power,
        voltage=voltage,
        route=route,
        efficiency=efficiency,
        time=time,
        load_type=load_type,
    )
    drawn = current = lasts = None
    if capacity is not None:
        bank = usable_bank(chemistry=chemistry, capacity=capacity, usable=usable)
        drawn = bank_draw(bank, taken.charge)
        current = draw(chemistry=chemistry, capacity=capacity, current=taken.load.current)
        lasts = peukert_runtime(
            capacity=capacity,
            rated_time=RATED_TIME,
            current=taken.load.current,
            exponent=default_exponent(chemistry),
            usable=usable,
        )
    held = {one.name: getattr(taken, one.name) for one in fields(taken)}
    return Job(**held, drawn=drawn, draw=current, lasts=lasts)


def usable_bank(*, chemistry: Chemistry, capacity: float, usable: float) -> UsableBank:
    """Return what a bank of `capacity` [A·s] gives of which a share `usable` [0..1] is used.

    Raises NotCovered for a name that is no chemistry.
    """
    return UsableBank(
        chemistry=Chemistry(chemistry),
        capacity=capacity,
        usable=usable,
        gives=capacity * usable,
    )


def bank_draw(bank: UsableBank, charge: float) -> BankDraw:
    """Return `charge` [A·s] as drawn from `bank`."""
    return BankDraw(bank=bank, charge=charge, share=charge / bank.gives)


def element(*, power: float, voltage: float, efficiency: float) -> BankLoad:
    """Return an element of `power` [W] on a bank of `voltage` [V] as a load.

    `efficiency` is that of the way to it: below 1 an inverter feeds it.
    """
    route = Route.DIRECT if at_least(efficiency, 1.0) else Route.INVERTER
    return of_power(power=power, voltage=voltage, route=route, efficiency=efficiency)


def steady_heat(
    load: BankLoad, *, time: float, holds_warmth: bool, bank: UsableBank | None
) -> HeatFromBank:
    """Return what a resistance takes that is a `load` for a `time` [s]: Q = I t.

    `bank` is None where only its voltage is known.
    """
    charge = load.current * time
    return HeatFromBank(
        load=load,
        time=time,
        holds_warmth=holds_warmth,
        charge=charge,
        share=None if bank is None else bank_draw(bank, charge).share,
    )
