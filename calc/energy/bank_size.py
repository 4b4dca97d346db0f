"""How large a bank must be: so many days without a charge, in the cold and when it is old.

In scope: loads spread over the days. Out of scope: a bank emptied within a few hours, which gives
less if it is lead-acid (see `run_time`).
"""

from dataclasses import dataclass
from math import ceil

from calc.energy import bank_load, battery, limits, voltages
from calc.energy.bank_load import Allowed, Draw
from calc.energy.battery import Bank, Chemistry, Usable
from calc.units.compare import at_most
from calc.units.constants import DAY
from calc.units.si import Amperes, Coulombs, Count, Joules, Seconds, Share, Volts, Watts


@dataclass(frozen=True, kw_only=True)
class BankNeed:
    """What is asked of a bank: `daily_energy` on `days` without a charge, with room for `ageing`.

    `voltage` is its mean over the discharge, `unit_capacity` that of one battery at it, `heaviest`
    the largest load at one time and `unit_current` the most that one battery may give (None where
    not known), `efficiency` charge out per charge in.
    """

    daily_energy: Joules
    days: Seconds
    voltage: Volts
    ageing: Share
    unit_capacity: Coulombs
    heaviest: Watts | None
    unit_current: Amperes | None
    efficiency: Share


@dataclass(frozen=True, kw_only=True)
class BankSize:
    """The bank that gives it: a `capacity` and `energy` as rated, and whole batteries, `units`.

    `usable` is what those batteries together give, empty at the end of the days. They carry the
    need for `lasts_new` while they are new; `put_back` refills what was used. `draw` is that of the
    heaviest load, `allowed` sets it beside what they may give; None where that is not known.
    """

    need: BankNeed
    usable: Usable
    day: Seconds
    charge: Coulombs
    capacity: Coulombs
    energy: Joules
    units: Count
    lasts_new: Seconds
    put_back: Coulombs
    draw: Draw | None
    allowed: Allowed | None

    @property
    def bank(self) -> Bank:
        """The batteries together."""
        return self.usable.bank

    @property
    def batteries(self) -> str:
        """How many batteries that is, in words."""
        return "1 battery" if self.units == 1 else f"{self.units:.0f} batteries"

    @property
    def mean_current(self) -> Amperes:
        """What the days draw on average."""
        return self.charge / self.need.days

    @property
    def gentle_current(self) -> Amperes:
        """What gives all that the label says, of lead-acid, or is commonly asked of LFP."""
        if self.bank.lead_acid:
            return self.usable.capacity / limits.RATED_TIME
        return battery.heavy_rate(self.bank.chemistry) * self.bank.capacity

    @property
    def voltage_is_high(self) -> bool:
        """Whether the voltage is above what lead-acid gives its charge at."""
        blocks = max(1, round(self.need.voltage / voltages.NOMINAL))
        high = not at_most(self.need.voltage / blocks, limits.LEAD_ACID_SPENT_ABOVE)
        return self.bank.lead_acid and high


def bank_size(
    need: BankNeed, *, chemistry: Chemistry, usable: float, temperature: float
) -> BankSize:
    """Return the bank for `need`, of which a share `usable` [0..1] is used at `temperature` [°C].

    Raises NotCovered for a chemistry that is none.
    """
    cold = battery.capacity_factor(chemistry, temperature)
    charge = need.daily_energy * need.days / DAY / need.voltage
    capacity = battery.size(charge=charge, usable=usable, cold=cold, ageing=need.ageing)
    units = float(ceil(capacity / need.unit_capacity * (1 - 1e-9)))
    bank = battery.bank(
        chemistry=chemistry,
        capacity=units * need.unit_capacity,
        temperature=temperature,
        state=1.0 - usable,
    )
    used = battery.usable(bank, usable)
    most = None if need.unit_current is None else units * need.unit_current
    draw = allowed = None
    if need.heaviest is not None:
        current = need.heaviest / need.voltage
        draw = bank_load.draw(
            chemistry=chemistry, capacity=bank.capacity, current=current, most=most
        )
        allowed = None if most is None else Allowed(current=current, most=most)
    return BankSize(
        need=need,
        usable=used,
        day=DAY,
        charge=charge,
        capacity=capacity,
        energy=capacity * need.voltage,
        units=units,
        lasts_new=need.days * used.charge / charge,
        put_back=charge / need.efficiency,
        draw=draw,
        allowed=allowed,
    )
