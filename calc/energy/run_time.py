"""How long a bank carries a steady load: Peukert's law, after the cold, and never beyond the label.

In scope: one steady load on a healthy, full bank. Out of scope: a bank that rests between loads,
which gives more.
"""

from dataclasses import dataclass

from calc.energy import bank_load, battery
from calc.energy.bank_load import Draw
from calc.energy.battery import Bank, Discharge, Usable
from calc.energy.loads import BankLoad
from calc.units.compare import at_least
from calc.units.si import Coulombs, Number, Seconds


@dataclass(frozen=True, kw_only=True)
class RunTime:
    """How long a bank carries a load, and what charge it gives by then.

    `shortest` and `longest` span the published exponents, from `exponent_low` to `exponent_high`.
    `nameplate_time` is the time by the label alone, Peukert's law left aside.
    `needed` is how long it has to last, None where that is not asked. `draw` is the load beside
    what such a bank gives, `left` the bank when the share that is used is gone.
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
    needed: Seconds | None
    draw: Draw
    left: Bank

    @property
    def bank(self) -> Bank:
        """The bank that carries it."""
        return self.usable.bank

    @property
    def short(self) -> bool:
        """Whether it ends before it has lasted as long as it has to."""
        return self.needed is not None and not at_least(self.runtime, self.needed)

    @property
    def needed_charge(self) -> Coulombs | None:
        """The charge that takes, None where it is not asked."""
        return None if self.needed is None else self.load.current * self.needed


def run_time(
    bank: Bank,
    *,
    load: BankLoad,
    usable: float,
    rated_time: float,
    exponent: float,
    needed: float | None = None,
) -> RunTime:
    """Return how long `bank` carries `load` until a share `usable` [0..1] is used.

    Its label is meant over `rated_time` [s]; `exponent` is Peukert's. It has to last `needed` [s],
    where that is given.
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
        needed=needed,
        draw=bank_load.draw(chemistry=bank.chemistry, capacity=bank.capacity, current=load.current),
        left=battery.at_state(bank, 1.0 - usable),
    )
