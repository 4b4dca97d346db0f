"""Air that carries off the heat of devices.

Energy balance for a fan, the stack effect for two openings one above the other. In scope: one well
mixed space, still air outside, walls that pass no heat (on the safe side). Out of scope: wind, sun
on the wall, grilles and filters but by their free area and discharge coefficient.
"""

from math import sqrt
from typing import Annotated

from calc.units.compare import at_least
from calc.units.constants import ABSOLUTE_ZERO
from calc.units.si import JoulesPerKilogramKelvin, MetresPerSecondSquared, Pascals, Tag

GRAVITY: Annotated[MetresPerSecondSquared, Tag("standard gravity")] = 9.80665  # by definition
# Of dry air: R/M with 8.31446 J/(mol·K) and 28.965 g/mol
GAS: Annotated[JoulesPerKilogramKelvin, Tag("gas constant of dry air")] = 287.05
PRESSURE: Annotated[Pascals, Tag("air pressure at sea level")] = 101325.0  # by definition
# Of dry air between 0 and 30 °C: CoolProp 8.0.0 has 1005.7 to 1006.5
AIR_HEAT_BY_MASS: Annotated[JoulesPerKilogramKelvin, Tag("heat of air by mass")] = 1006.0


def dissipated(throughput: float, efficiency: float) -> float:
    """Return the heat [W] of a device that gives `throughput` [W] at its output: P (1/η − 1)."""
    return throughput * (1 / efficiency - 1)


def density(temperature: float) -> float:
    """Return the density [kg/m³] of dry air at `temperature` [°C] and sea level: p/(R T)."""
    return PRESSURE / (GAS * (temperature - ABSOLUTE_ZERO))


def carrying_flow(heat: float, rise: float, temperature: float) -> float:
    """Return the flow [m³/s] of air drawn in at `temperature` [°C] that `heat` [W] warms by `rise`.

    Q = P/(ρ c ΔT), with `rise` [K].
    """
    return heat / (density(temperature) * AIR_HEAT_BY_MASS * rise)


def series_area(inlet: float, outlet: float) -> float:
    """Return the one opening [m²] that resists like two in a row: 1/√(1/A₁² + 1/A₂²)."""
    return 1 / sqrt(1 / inlet**2 + 1 / outlet**2)


def stack_pressure(height: float, outside: float, inside: float) -> float:
    """Return the draught [Pa] of a column of `height` [m], `outside` and `inside` [°C].

    g p/R · h · (1/To − 1/Ti), which is 0.0342 K/m times the pressure in the published form.
    """
    colder, warmer = 1 / (outside - ABSOLUTE_ZERO), 1 / (inside - ABSOLUTE_ZERO)
    return GRAVITY * PRESSURE / GAS * height * (colder - warmer)


def stack_flow(
    effective: float, discharge: float, height: float, outside: float, inside: float
) -> float:
    """Return the natural flow [m³/s] through an `effective` opening [m²] by the stack effect.

    Q = C A √(2 g h (Ti − To)/Ti), in kelvin, `height` [m] between the middles of the vents. Two
    equal vents in a row count as one of 1/√2 of either (`series_area`).
    """
    return (
        discharge
        * effective
        * sqrt(2 * GRAVITY * height * (inside - outside) / (inside - ABSOLUTE_ZERO))
    )


def vent_area(flow: float, discharge: float, height: float, outside: float, inside: float) -> float:
    """Return the free area [m²] of each of two equal vents that pass `flow` [m³/s] by draught."""
    return sqrt(2) * flow / stack_flow(1.0, discharge, height, outside, inside)


def reached_by_draught(
    heat: float, area: float, discharge: float, height: float, outside: float
) -> float:
    """Return the temperature [°C] at which draught through two vents of `area` [m²] holds `heat`.

    The rise at which what the draught carries equals what is made, found by halving.
    """

    def carried(rise: float) -> float:
        flow = stack_flow(area / sqrt(2), discharge, height, outside, outside + rise)
        return flow * density(outside) * AIR_HEAT_BY_MASS * rise

    low, high = 0.0, 1.0
    while carried(high) < heat:
        high *= 2
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (middle, high) if carried(middle) < heat else (low, middle)
    return outside + high


def output_left(temperature: float, rated_to: float, derating: float) -> float:
    """Return the share of its rating a device keeps at `temperature` [°C].

    Straight line: full up to `rated_to` [°C], then `derating` [1/K] less per degree, down to none.
    """
    if at_least(rated_to, temperature):
        return 1.0
    return max(0.0, 1 - derating * (temperature - rated_to))
