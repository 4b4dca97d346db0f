"""battery-air from its fields: the gas of the cells, then the openings for it."""

from calc.comfort.battery_air import (
    BatteryAir,
    Charging,
    Management,
    Place,
    battery_air,
    gassing,
)
from calc.energy.battery import Chemistry


def calculate(
    *,
    chemistry: Chemistry,
    management: Management,
    charging: Charging,
    cells: float,
    capacity: float,
    stands: Place,
    vents: float | None,
    temperature: float,
    gas_current: float | None,
) -> BatteryAir:
    """Return the air for `cells` in series of `capacity` [A·s] while they are charged."""
    gas = gassing(
        chemistry=chemistry,
        charging=charging,
        cells=cells,
        capacity=capacity,
        temperature=temperature,
        given_current=gas_current,
    )
    return battery_air(gas, management=management, place=stands, vents=vents)
