"""bank-gauge from its fields: the bank as the monitor counts it, and what the reading says."""

from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.energy.gauge import Gauge, Monitor, Taken, gauge, voltage_reading
from calc.units.covered import NotCovered

BLOCKS = {"12 V": 1, "24 V": 2, "48 V": 4}  # of 12 V, in series


def calculate(
    *,
    capacity: float,
    chemistry: Chemistry,
    monitor: Monitor,
    state: float,
    current: float,
    efficiency: float,
    reading: float | None,
    taken: Taken,
    rested_for: float | None,
    system: str,
    meter: float,
    usable: float,
    temperature: float,
    exponent: float,
    rated_hours: float,
    zero_error: float,
    since_full: float,
) -> Gauge:
    """Return what is left of `capacity` [A·s] at `state`, and how long `current` [A] lasts.

    Without a monitor the state is the least that the rested `reading` [V] allows, if any.
    """
    if system not in BLOCKS:
        raise NotCovered("system", f"must be {', '.join(BLOCKS)}, not {system!r}.")
    counted = Monitor(monitor) is Monitor.COUNTS
    least: float | None = state
    if not counted:
        least = _by_voltage(
            Chemistry(chemistry), reading, BLOCKS[system], Taken(taken), rested_for, meter
        )
    bank = battery.bank(
        chemistry=chemistry, capacity=capacity, temperature=temperature, state=least or 0.0
    )
    return gauge(
        bank,
        counted=counted,
        known=least is not None,
        current=current,
        efficiency=efficiency,
        usable=usable,
        rated_time=rated_hours,
        exponent=exponent,
        zero_error=zero_error,
        since_full=since_full,
        blocks=BLOCKS[system],
        reading=reading,
        taken=taken,
        rested_for=rested_for,
        meter=meter,
    )


def _by_voltage(
    chemistry: Chemistry,
    reading: float | None,
    blocks: int,
    taken: Taken,
    rested_for: float | None,
    meter: float,
) -> float | None:
    """Return the least state [0..1] that a rested reading allows, None where it allows none."""
    if reading is None:
        return None
    found = voltage_reading(
        chemistry,
        voltage=reading,
        blocks=blocks,
        taken=taken,
        rested_for=rested_for,
        meter=meter,
        charged=False,
        stated=None,
    ).band
    return None if found is None else found.low
