"""bank-gauge from its fields: the bank as the monitor counts it, and what the reading says."""

from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.energy.gauge import Gauge, Taken, gauge
from calc.units.covered import NotCovered

BLOCKS = {"12 V": 1, "24 V": 2, "48 V": 4}  # of 12 V, in series


def calculate(
    *,
    capacity: float,
    chemistry: Chemistry,
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
    """Return what is left of `capacity` [A·s] at `state`, and how long `current` [A] lasts."""
    if system not in BLOCKS:
        raise NotCovered("system", f"must be {', '.join(BLOCKS)}, not {system!r}.")
    bank = battery.bank(
        chemistry=chemistry, capacity=capacity, temperature=temperature, state=state
    )
    return gauge(
        bank,
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
