"""How long a bank carries a steady load: Peukert's law, after the cold.

In scope: one steady load on a healthy, full bank, near its rated current or above. Out of scope: a
bank that rests between loads, which gives more.
"""

from dataclasses import dataclass

from calc.energy import battery
from calc.energy.battery import Bank, Discharge, Usable
from calc.energy.loads import BankLoad
from calc.units.compare import at_most
from calc.units.si import Coulombs, Number, Seconds


@dataclass(frozen=True, kw_only=True)
class RunTime:
    """How long a bank carries a load, and what charge it gives by then.

    `shortest` and `longest` span the published exponents, from `exponent_low` to `exponent_high`.
    `nameplate_time` is the time by the label alone, Peukert's law left aside.
    """

    load: BankLoad
    usable: Usable
    discharge: Discharge
    runtime: Seconds
    usable_charge: Coulombs
    exponent_low: Number
    exponent_high: Number
    shortest: Seconds
    longest: Seconds
    nameplate_time: Seconds

    @property
    def bank(self) -> Bank:
        """The bank that carries it."""
        return self.usable.bank

    @property
    def credited(self) -> bool:
        """Whether the formula credits lead-acid with more than its label, the load being light."""
        return self.bank.lead_acid and not at_most(self.runtime, self.nameplate_time)


def run_time(
    bank: Bank, *, load: BankLoad, usable: float, rated_time: float, exponent: float
) -> RunTime:
    """Return how long `bank` carries `load` until a share `usable` [0..1] is used.

    Its label is meant over `rated_time` [s]; `exponent` is Peukert's. Raises NotCovered where the
    table of the cold ends.
    """
    used = battery.usable(bank, usable)

    def lasts(k: float) -> float:
        return battery.peukert_runtime(
            capacity=used.capacity,
            rated_time=rated_time,
            current=load.current,
            exponent=k,
            usable=usable,
        )

    low, high = battery.exponent_range(bank.chemistry)
    runtime = lasts(exponent)
    return RunTime(
        load=load,
        usable=used,
        discharge=battery.discharge(
            bank, current=load.current, rated_time=rated_time, exponent=exponent
        ),
        runtime=runtime,
        usable_charge=load.current * runtime,
        exponent_low=low,
        exponent_high=high,
        shortest=min(lasts(low), lasts(high)),
        longest=max(lasts(low), lasts(high)),
        nameplate_time=used.charge / load.current,
    )
