"""How a bank fills on the road: by a charger of steady current, or by a relay whose current falls.

By a charger it fills as in `calc.energy.charging`, here by the charge put in. By a relay the bank's
own voltage rises evenly as it fills, and the current falls with what is left to the engine's. In
scope: a healthy bank near room temperature.
"""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from math import exp, inf, log

from calc.energy import charging, voltages
from calc.energy.battery import Chemistry, charge_efficiency
from calc.energy.rested import JOINED, highest
from calc.tables import table
from calc.units.compare import at_least
from calc.units.si import Amperes, Coulombs, Seconds


@dataclass(frozen=True, kw_only=True)
class Filling:
    """Charge put in over time: `current` for `steady_time`, and after that less and less.

    What the bank then has room for, `later_room`, fills with the time constant `falls_in`:
    Q = I ts + R (1 - e^(-(t - ts)/T)).
    """

    current: Amperes
    steady_time: Seconds
    later_room: Coulombs
    falls_in: Seconds

    @property
    def room(self) -> Coulombs:
        """The most that goes in, however long it takes."""
        return self.later_room + (self.current * self.steady_time if self.current else 0.0)

    def still_open(self, duration: float) -> float:
        """Return the share [0..1] of the later room that is not filled after `duration` [s]."""
        if duration <= self.steady_time:
            return 1.0
        return exp(-(duration - self.steady_time) / self.falls_in)

    def after(self, duration: float) -> float:
        """Return the charge [A·s] put in after `duration` [s]."""
        if duration <= self.steady_time:
            return self.current * duration
        filled = self.later_room * (1 - self.still_open(duration))
        return self.current * self.steady_time + filled

    def time_for(self, charge: float) -> float | None:
        """Return the time [s] in which `charge` [A·s] goes in, or None where it never does."""
        if not self.current or at_least(charge, self.room):
            return None
        rest = charge - self.current * self.steady_time
        if rest <= 0:
            return charge / self.current
        return self.steady_time + self.falls_in * log(self.later_room / (self.later_room - rest))


def charger_filling(
    *, chemistry: Chemistry, capacity: float, state: float, current: float
) -> Filling:
    """Return how a charger of constant `current` [A] fills a bank of `capacity` [A·s] from `state`.

    No more than the bank takes by `calc.energy.charging`; from where that falls below `current`,
    what is missing falls exponentially.
    """
    known, efficiency = charging.by_chemistry(chemistry), charge_efficiency(chemistry)
    taken = min(current, known.most * capacity)
    room, falls_in = capacity * (1 - state) / efficiency, known.time_constant / efficiency
    later = min(room, taken * falls_in)
    return Filling(
        current=taken,
        steady_time=(room - later) / taken if taken else inf,
        later_room=later,
        falls_in=falls_in,
    )


def reach(*, engine_voltage: float, bank_voltage: float, full_voltage: float) -> float:
    """Return the share [0..1] of what a bank lacks that an engine's voltage [V] can put in.

    Declared model: the bank's own voltage rises evenly from `bank_voltage` now to `full_voltage`
    when it is full, and the current stops where it meets the engine's. Zero where the engine's is
    not above the bank's.
    """
    if engine_voltage <= bank_voltage:
        return 0.0
    if full_voltage <= engine_voltage:
        return 1.0
    return (engine_voltage - bank_voltage) / (full_voltage - bank_voltage)


@cache
def _rested(chemistry: Chemistry) -> dict[str, tuple[tuple[float, float], ...]]:
    """Return the published rested voltages [V] of a 12 V block by table: state [0..1] and volts."""
    found: dict[str, tuple[tuple[float, float], ...]] = {}
    for row in table("rested_states").rows:
        if row["chemistry"] in JOINED.get(chemistry, (chemistry,)) and row["form"] == "points":
            volts = float(row["high_v"]) / float(row["cells"]) * voltages.cells(chemistry)
            key = row["chemistry"] + row["source"]
            found[key] = (*found.get(key, ()), (float(row["state_high"]) / 100, volts))
    return found


def full_voltage(*, chemistry: Chemistry, blocks: int) -> float:
    """Return a full bank's own voltage [V] in the model of `reach`: that at which a charge ends.

    Of LFP the published rested voltage is higher still, and counts. NotCovered.
    """
    rested = blocks * voltages.cells(chemistry) * highest(chemistry)
    return max(blocks * voltages.charge_end(chemistry), rested)


def own_voltage(
    *, chemistry: Chemistry, state: float, bank_voltage: float, full_voltage: float, blocks: int
) -> float:
    """Return the voltage [V] from which the model of `reach` counts: `bank_voltage` or more.

    More where a bank at `state` [0..1] shows too little, being under load, or where its voltage
    will rise steeply at first, as that of a flat LFP bank does. It is the least voltage from which
    the straight line to `full_voltage` [V] stays on or above the published rested voltages.
    """
    least = bank_voltage
    for rows in _rested(chemistry).values():
        for (low, at_low), (high, at_high) in pairwise(rows):
            if state < high:
                begins = max(low, state)
                volts = at_low + (begins - low) / (high - low) * (at_high - at_low)
                share = (begins - state) / (1 - state)
                least = max(least, (volts * blocks - full_voltage * share) / (1 - share))
    return least


def relay_filling(
    *, chemistry: Chemistry, capacity: float, state: float, current: float, reach: float
) -> Filling:
    """Return how a relay fills a bank of `capacity` [A·s] from `state` with `current` [A] at first.

    By the model of `reach` [0..1] the current falls in proportion to the room left, so the charge
    is R (1 - e^(-I t/R)). Begun with no more than the bank takes by `calc.energy.charging`, it
    stays below that all the way.
    """
    room = reach * capacity * (1 - state) / charge_efficiency(chemistry)
    takes = charging.acceptance(chemistry=chemistry, capacity=capacity, state=state)
    start = min(current, takes)
    return Filling(
        current=start, steady_time=0.0, later_room=room, falls_in=room / start if start else inf
    )
