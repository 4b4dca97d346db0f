"""What an appliance takes from the bank in a day, straight from it or through an inverter.

In scope: appliances that run part of the time, by a thermostat or by hand, on a steady average.
Out of scope: the moment of the start, and part-load efficiency beyond a fixed figure and an idle
draw.
"""

DAY = 86400.0  # s
YEAR = 365.0  # days


def running_time(*, duty: float, fed: float) -> float:
    """Return how long [s] an appliance runs in a day of which it is `fed` for some time [s].

    `duty` is the share [0..1] of the whole day that it would run if it were always fed. What leaks
    into a cold box while it is off has to be pumped out afterwards, so the need of a day is not
    less for that (a little less in truth, since the box is warmer meanwhile: the high side). It
    never runs longer than it is fed.
    """
    return min(DAY * duty, fed)


def direct_energy(*, power: float, running: float, banked: float) -> float:
    """Return the energy [J] from the bank for `power` [W] over `running` [s] of a day.

    `banked` is the share [0..1] of that running for which the bank feeds it.
    """
    return power * running * banked


def inverter_energy(
    *, power: float, running: float, banked: float, efficiency: float, idle: float, on: float
) -> float:
    """Return the energy [J] from the bank for `power` [W] through an inverter that is `on` [s].

    P t/eta, and the `idle` draw [W] for all of the time that the inverter is on from the bank. A
    peak `efficiency` holds part of the idle draw already: a little on the high side.
    """
    return idle * on + power * running * banked / efficiency


def warmth_factor(*, room: float, hot: float, cold: float) -> float:
    """Return by how much more a box at `cold` [°C] runs in air at `hot` than at `room` [°C].

    What leaks in goes with the difference in temperature. Low side: the compressor also gets less
    efficient in warm air. Never below 1: a day cooler than the `room` is no hot day. `cold` must be
    below both others.
    """
    return max(1.0, (hot - cold) / (room - cold))


def array_for(*, energy: float, efficiency: float, losses: float, sun_time: float) -> float:
    """Return the array [W, rated] that brings `energy` [J] a day out of the bank.

    P = E/(eta (1 - losses) t), `sun_time` [s] being the day's sun as if at full strength,
    `efficiency` the bank's for energy, as if all of it were stored.
    """
    return energy / (efficiency * (1 - losses) * sun_time)
