"""What an alternator puts into a second bank: through a relay, or through a regulated charger.

A relay is a closed switch: Ohm's law alone decides. A charger takes constant power for a constant
output. In scope: an engine whose regulator holds its voltage; a bank whose own voltage rises evenly
as it fills. Out of scope: the starter battery's share, what a slipping belt costs, voltage that the
engine's computer changes from minute to minute.
"""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from math import exp, inf, log, sqrt

from calc.energy import charging, voltages
from calc.energy.battery import Chemistry, charge_efficiency
from calc.energy.rested import JOINED, highest
from calc.tables import table
from calc.units.compare import at_least

HOT, COLD = "hot", "cold"
IDLE, DRIVING, FAST = 1300, 2500, 5000  # rpm of the alternator, in the published table
VEHICLE, VEHICLE_BEARS = 14.4, 15.5  # V, what an engine holds in a 12 V vehicle, and the most


@cache
def published_shares() -> dict[tuple[str, int], float]:
    """Return one published machine's output as a share of its rating, by state and rpm.

    Technical manual of a marine diesel, page 83: a 50 A class alternator at 13.5 V.
    """
    return {
        (row["state"], int(row["alternator_rpm"])): float(row["amps"]) / float(row["rated_a"])
        for row in table("alternator_output").rows
    }


def left_for_bank(*, rated: float, share: float, vehicle_load: float) -> float:
    """Return what an alternator of `rated` [A] has left [A] beside `vehicle_load` [A].

    `share` [0..1] of its rating is what it gives in this state. None of it is below nought.
    """
    return max(0.0, rated * share - vehicle_load)


def relay_current(*, engine_voltage: float, bank_voltage: float, resistance: float) -> float:
    """Return the current [A] into the bank through a closed relay: (Ve - Vb)/R, Ohm's law.

    `resistance` [ohm] is that of the whole loop, bank included. Negative where the bank feeds the
    vehicle. Nothing else limits it, so long as the regulator holds `engine_voltage` [V].
    """
    return (engine_voltage - bank_voltage) / resistance


def charger_input(
    *, power: float, engine_voltage: float, resistance: float
) -> tuple[float, float] | None:
    """Return the current [A] and the voltage [V] at the input of a charger that takes `power` [W].

    `resistance` [ohm] is that of the run from the engine, out and back. I (Ve - I R) = P; of its
    two solutions the one with the higher voltage, which is the one that stands. None where the run
    cannot pass that much power: more than Ve²/4R.
    """
    room = engine_voltage**2 - 4 * resistance * power
    if room < 0:
        return None
    current = 2 * power / (engine_voltage + sqrt(room))
    return current, engine_voltage - current * resistance


def charger_current(*, limit: float, output_left: float, fed: float = 1.0) -> float:
    """Return what a charger gives [A]: its `limit` [A] times what heat and alternator leave.

    `output_left` [0..1] is its own derating, `fed` [0..1] the share of its input that there is.
    """
    return limit * output_left * fed


@dataclass(frozen=True, kw_only=True)
class Filling:
    """Charge put in over time: `current` [A] for `steady_time` [s], and after that less and less.

    What the bank then has room for, `later_room` [A·s], fills with the time constant `falls_in`
    [s]: Q = I ts + R (1 - e^(-(t - ts)/T)).
    """

    current: float
    steady_time: float
    later_room: float
    falls_in: float

    @property
    def room(self) -> float:
        """The most that goes in, however long it takes [A·s]."""
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


def without_taper(current: float) -> Filling:
    """Return the filling of a bank that takes all of `current` [A] for as long as it flows."""
    return Filling(current=current, steady_time=inf, later_room=0.0, falls_in=1.0)


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


def past_empty(*, chemistry: Chemistry, bank_voltage: float, blocks: int) -> bool:
    """Return whether a bank shows less [V] than an empty one, before a charge. NotCovered."""
    return not at_least(bank_voltage, blocks * voltages.past_empty(chemistry))


def vehicle_bears(engine_voltage: float) -> float:
    """Return the most [V] that the battery of a vehicle is given; 12, 24 V … by `engine_voltage`.

    Common practice, no source. More is a regulator that has failed.
    """
    return VEHICLE_BEARS * max(1, round(engine_voltage / VEHICLE))


def reach(*, engine_voltage: float, bank_voltage: float, full_voltage: float) -> float:
    """Return the share [0..1] of what a bank lacks that an engine's voltage [V] can put in.

    Declared model: the bank's own voltage rises evenly from `bank_voltage` now to `full_voltage`
    when it is full, and the current stops where it meets the engine's. Nought where the engine's is
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
    return max(charge_ends_at(chemistry=chemistry, blocks=blocks), rested)


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


def charge_ends_at(*, chemistry: Chemistry, blocks: int) -> float:
    """Return the voltage [V] at which a charge of `blocks` 12 V blocks usually ends. NotCovered."""
    return blocks * voltages.charge_end(chemistry)
