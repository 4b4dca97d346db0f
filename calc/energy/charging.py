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

from calc.energy.battery import charge_efficiency
from calc.tables import table

HOUR = 3600.0  # s


@dataclass(frozen=True, kw_only=True)
class Acceptance:
    """What a chemistry takes: `most` and `tail` are current per capacity [1/s], the others [s].

    `time` is the missing charge divided by the current taken at the charging voltage, `low` and
    `high` the spread of it. Sources in the table's header: part educational text, part common
    practice.
    """

    most: float
    time: float
    low: float
    high: float
    tail: float


@cache
def usual(chemistry: str) -> Acceptance:
    """Return the declared acceptance of `chemistry`. Raises KeyError."""
    for row in table("charge_acceptance").rows:
        if row["chemistry"] == chemistry:
            return Acceptance(
                most=float(row["most_per_h"]) / HOUR,
                time=float(row["acceptance_h"]) * HOUR,
                low=float(row["low_h"]) * HOUR,
                high=float(row["high_h"]) * HOUR,
                tail=float(row["tail_per_h"]) / HOUR,
            )
    raise KeyError(chemistry)


def taper_current(*, capacity: float, state: float, time: float) -> float:
    """Return the current [A] taken at the charging voltage at `state` [0..1]: missing/`time`.

    `capacity` [A·s], `time` [s]. Holds for lead-acid from about half full up, the ampere-hour form
    of a taper; nothing is taken at 1.
    """
    return capacity * (1.0 - state) / time


def acceptance(*, chemistry: str, capacity: float, state: float) -> float:
    """Return the largest current [A] that a bank of `capacity` [A·s] takes at `state` [0..1].

    The lesser of the most it may be given and what it takes at the charging voltage. Temperature is
    not in it: ask `battery.may_charge` first. Raises KeyError.
    """
    known = usual(chemistry)
    taper = taper_current(capacity=capacity, state=state, time=known.time)
    return min(known.most * capacity, taper)


def full_state(*, time: float, tail: float) -> float:
    """Return the state [0..1] at which the current has fallen to `tail` [1/s]: 1 - tail·time.

    `tail` is current per capacity, `time` [s] the acceptance time.
    """
    return 1.0 - tail * time


def meeting_state(*, capacity: float, current: float, time: float) -> float:
    """Return the state [0..1] up to which the bank takes all of `current` [A]; 0 if never."""
    return max(0.0, 1.0 - current * time / capacity)


@dataclass(frozen=True, kw_only=True)
class Charge:
    """A charge by stage: times [s], states [0..1]; `end_current` [A] flows as it ends.

    `meets` is the state at which the current begins to fall, `reached` where it ends.
    """

    meets: float
    reached: float
    constant: float
    falling: float
    total: float
    end_current: float


def stages(
    *,
    capacity: float,
    current: float,
    from_state: float,
    to_state: float,
    efficiency: float,
    time: float,
) -> Charge:
    """Return the stages of a charge from `from_state` to `to_state`, below 1.

    `current` [A] at constant current, `capacity` [A·s], coulombic `efficiency` [0..1], acceptance
    `time` [s]. Constant: C (s' - s0)/(eta I). Falling: tau/eta ln((1 - s')/(1 - s1)). Both are zero
    where the bank is there already. Raises ValueError for a `to_state` of 1: never reached.
    """
    if to_state >= 1.0:
        raise ValueError("an exponential never reaches 1: give the state of the tail current")
    meets = meeting_state(capacity=capacity, current=current, time=time)
    reached = max(from_state, to_state)
    turn = min(max(from_state, meets), reached)
    constant = capacity * (turn - from_state) / (efficiency * current)
    falling = (
        time / efficiency * math.log((1.0 - turn) / (1.0 - reached)) if reached > turn else 0.0
    )
    taper = taper_current(capacity=capacity, state=reached, time=time)
    return Charge(
        meets=meets,
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
    time: float,
    duration: float,
) -> float:
    """Return the state [0..1] after `duration` [s] of charging from `state`; the same two stages.

    `current` [A] is the lesser of what charger and bank allow, `time` [s] the acceptance time.
    Never reaches 1 unless it begins there.
    """
    meets = meeting_state(capacity=capacity, current=current, time=time)
    constant = max(0.0, capacity * (meets - state) / (efficiency * current))
    if duration <= constant:
        return state + efficiency * current * duration / capacity
    turn = max(state, meets)
    return 1.0 - (1.0 - turn) * math.exp(-efficiency * (duration - constant) / time)


def charge_time(
    *, chemistry: str, capacity: float, current: float, from_state: float, to_state: float
) -> Charge:
    """Return the stages of a charge with the declared acceptance of `chemistry`.

    `current` [A] is the charger's; the bank's own most is kept to. A `to_state` beyond the state of
    the tail current ends there: that is what full means. Raises KeyError.
    """
    known = usual(chemistry)
    return stages(
        capacity=capacity,
        current=min(current, known.most * capacity),
        from_state=from_state,
        to_state=min(to_state, full_state(time=known.time, tail=known.tail)),
        efficiency=charge_efficiency(chemistry),
        time=known.time,
    )
