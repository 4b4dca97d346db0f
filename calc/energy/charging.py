"""How a bank fills: constant current first, then constant voltage with less and less current.

At the charging voltage a bank takes a current in proportion to the charge it still lacks:
I = Q_missing/tau, so what is missing falls exponentially with time constant tau/eta. Below that the
charger, or the most that the bank may be given, sets the current. Full is a tail current, since an
exponential never ends. Out of scope: cold, age, sulphation (tau grows), gassing near full (eta
falls), a charger that ends absorption by a timer.
"""

import math
from dataclasses import dataclass
from functools import cache

from calc.energy.battery import Chemistry, charge_efficiency
from calc.energy.voltages import max_charge_voltage
from calc.tables import table
from calc.units.constants import HOUR
from calc.units.si import Amperes, Coulombs, Number, PerSecond, Seconds, Share, Volts


@dataclass(frozen=True, kw_only=True)
class Acceptance:
    """What a chemistry takes: `most` and `tail` are current per capacity.

    `time_constant` is the missing charge divided by the current taken at the charging voltage,
    `low` and `high` the spread of it. Sources in the table's header: part educational text, part
    common practice.
    """

    most: PerSecond
    time_constant: Seconds
    low: Seconds
    high: Seconds
    tail: PerSecond

    @property
    def full(self) -> Share:
        """The state of charge at which the current has fallen to the tail, which counts as full."""
        return full_state(time_constant=self.time_constant, tail=self.tail)


@dataclass(frozen=True, kw_only=True)
class ChargeVoltage:
    """A `voltage` on a bank of so many 12 V `blocks` in series, and the `most` it is given.

    None below `least` can be set: that is what the bank shows by itself.
    """

    chemistry: Chemistry
    blocks: Number
    voltage: Volts
    most: Volts
    least: Volts


@dataclass(frozen=True, kw_only=True)
class ChargeOffer:
    """A `current` offered to a bank that is given `most` of it.

    `fitting` is the output of a charger set so that it offers just that; None where there is none.
    """

    current: Amperes
    most: Amperes
    fitting: Amperes | None


@cache
def by_chemistry(chemistry: Chemistry) -> Acceptance:
    """Return the declared acceptance of `chemistry`. Raises NotCovered."""
    chemistry = Chemistry(chemistry)
    row = next(row for row in table("charge_acceptance").rows if row["chemistry"] == chemistry)
    return Acceptance(
        most=float(row["most_per_h"]) / HOUR,
        time_constant=float(row["acceptance_h"]) * HOUR,
        low=float(row["low_h"]) * HOUR,
        high=float(row["high_h"]) * HOUR,
        tail=float(row["tail_per_h"]) / HOUR,
    )


def charge_voltage(
    *, chemistry: Chemistry, blocks: int, voltage: float, least: float
) -> ChargeVoltage:
    """Return a `voltage` [V] on a bank of `blocks` 12 V blocks beside the most it is given.

    No less than `least` [V] can be set. See `voltages.max_charge_voltage`. NotCovered.
    """
    return ChargeVoltage(
        chemistry=Chemistry(chemistry),
        blocks=float(blocks),
        voltage=voltage,
        most=blocks * max_charge_voltage(chemistry),
        least=least,
    )


def taper_current(*, capacity: float, state: float, time_constant: float) -> float:
    """Return the current [A] taken at the charging voltage at `state` [0..1]: missing/tau.

    `capacity` [A·s], `time_constant` tau [s]. Holds for lead-acid from about half full up, the
    ampere-hour form of a taper; nothing is taken at 1.
    """
    return capacity * (1.0 - state) / time_constant


def acceptance(*, chemistry: Chemistry, capacity: float, state: float) -> float:
    """Return the largest current [A] that a bank of `capacity` [A·s] takes at `state` [0..1].

    The lesser of the most it may be given and what it takes at the charging voltage. Temperature is
    not in it: ask `battery.may_charge` first. NotCovered.
    """
    known = by_chemistry(chemistry)
    taper = taper_current(capacity=capacity, state=state, time_constant=known.time_constant)
    return min(known.most * capacity, taper)


def full_state(*, time_constant: float, tail: float) -> float:
    """Return the state [0..1] at which the current has fallen to `tail` [1/s]: 1 - tail·tau.

    `tail` is current per capacity, `time_constant` [s] that of acceptance.
    """
    return 1.0 - tail * time_constant


def meeting_state(*, capacity: float, current: float, time_constant: float) -> float:
    """Return the state [0..1] up to which the bank takes all of `current` [A]; 0 if never."""
    return max(0.0, 1.0 - current * time_constant / capacity)


@dataclass(frozen=True, kw_only=True)
class Charge:
    """A charge of `current` from `from_state` to `to_state`, by stage.

    `meets` is the state at which this current would begin to fall, `turn` where it does in this
    charge, `reached` where it ends; `end_current` flows as it ends. `constant`, `falling` and
    `total` are times.
    """

    capacity: Coulombs
    current: Amperes
    from_state: Share
    to_state: Share
    efficiency: Share
    time_constant: Seconds
    meets: Share
    turn: Share
    reached: Share
    constant: Seconds
    falling: Seconds
    total: Seconds
    end_current: Amperes


def stages(
    *,
    capacity: float,
    current: float,
    from_state: float,
    to_state: float,
    efficiency: float,
    time_constant: float,
) -> Charge:
    """Return the stages of a charge from `from_state` to `to_state`, below 1.

    `current` [A] at constant current, `capacity` [A·s], coulombic `efficiency` [0..1], acceptance
    `time_constant` [s]. Constant: C (s' - s0)/(eta I). Falling: tau/eta ln((1 - s')/(1 - s1)). Both
    are zero where the bank is there already. Raises ValueError for a `to_state` of 1: it is never
    reached.
    """
    if to_state >= 1.0:
        raise ValueError("an exponential never reaches 1: give the state of the tail current")
    meets = meeting_state(capacity=capacity, current=current, time_constant=time_constant)
    reached = max(from_state, to_state)
    turn = min(max(from_state, meets), reached)
    constant = capacity * (turn - from_state) / (efficiency * current)
    falling = (
        time_constant / efficiency * math.log((1.0 - turn) / (1.0 - reached))
        if reached > turn
        else 0.0
    )
    taper = taper_current(capacity=capacity, state=reached, time_constant=time_constant)
    return Charge(
        capacity=capacity,
        current=current,
        from_state=from_state,
        to_state=to_state,
        efficiency=efficiency,
        time_constant=time_constant,
        meets=meets,
        turn=turn,
        reached=reached,
        constant=constant,
        falling=falling,
        total=constant + falling,
        end_current=min(current, taper),
    )


def state_after(
    *,
    capacity: float,
    current: float,
    state: float,
    efficiency: float,
    time_constant: float,
    duration: float,
) -> float:
    """Return the state [0..1] after `duration` [s] of charging from `state`; the same two stages.

    `current` [A] is the lesser of what charger and bank allow, `time_constant` [s] that of
    acceptance. Never reaches 1 unless it begins there.
    """
    meets = meeting_state(capacity=capacity, current=current, time_constant=time_constant)
    constant = max(0.0, capacity * (meets - state) / (efficiency * current))
    if duration <= constant:
        return state + efficiency * current * duration / capacity
    turn = max(state, meets)
    return 1.0 - (1.0 - turn) * math.exp(-efficiency * (duration - constant) / time_constant)


def charge_time(
    *, chemistry: Chemistry, capacity: float, current: float, from_state: float, to_state: float
) -> Charge:
    """Return the stages of a charge with the declared acceptance of `chemistry`.

    `current` [A] is the charger's; the bank's own most is kept to. A `to_state` beyond the state of
    the tail current ends there: that is what full means. NotCovered.
    """
    known = by_chemistry(chemistry)
    return stages(
        capacity=capacity,
        current=min(current, known.most * capacity),
        from_state=from_state,
        to_state=min(to_state, full_state(time_constant=known.time_constant, tail=known.tail)),
        efficiency=charge_efficiency(chemistry),
        time_constant=known.time_constant,
    )
