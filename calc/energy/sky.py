"""Sunlight through clear air: pressure, refraction, air mass and the Ineichen–Perez clear sky.

In scope: a cloudless sky of one Linke turbidity, the sun above the horizon, sea level to high
passes. Out of scope: cloud, haze that changes over the day, mountains on the horizon.
"""

from math import exp, radians, sin, tan
from typing import Annotated

from calc.units.si import Degrees, Pascals, Tag

SEA_LEVEL_PRESSURE: Annotated[Pascals, Tag("standard pressure at sea level")] = 101325.0  # ICAO
# The sun's half width and refraction at the horizon; with its middle lower it is night
SUNRISE_ELEVATION: Annotated[Degrees, Tag("elevation of the sun's middle at sunrise")] = -0.83337


def pressure(altitude: float) -> float:
    """Return the air pressure [Pa] at `altitude` [m] in the standard atmosphere, up to 11 km."""
    share: float = ((44331.514 - altitude) / 11880.516) ** (1 / 0.1902632)
    return 100 * share


def refraction(elevation: float, air_pressure: float) -> float:
    """Return by how much [deg] air lifts the sun that truly stands at `elevation` [deg].

    Sæmundsson's form at 12 °C and `air_pressure` [Pa]; none once the whole sun is below.
    """
    if elevation < SUNRISE_ELEVATION:
        return 0.0
    air = air_pressure / 101000 * 283 / (273 + 12)
    return air * 1.02 / (60 * tan(radians(elevation + 10.3 / (elevation + 5.11))))


def relative_airmass(elevation: float) -> float:
    """Return the relative air mass for the sun seen at `elevation` [deg] of 0 or more.

    Kasten and Young: 1 overhead, about 38 at the horizon.
    """
    lift: float = (6.07995 + elevation) ** -1.6364
    return 1 / (sin(radians(elevation)) + 0.50572 * lift)


def clear_sky(
    *, cos_zenith: float, airmass: float, dni_extra: float, turbidity: float, altitude: float
) -> tuple[float, float]:
    """Return (global horizontal, direct normal) irradiance [W/m²] of the Ineichen–Perez model.

    `cos_zenith` is that of the sun as seen (more than 0), `airmass` the air mass at the site's
    pressure, `dni_extra` the irradiance outside the air, square to the sun [W/m²], `altitude` in
    metres. The direct part is the lesser of two: attenuation of the beam, and what the global light
    leaves for it.
    """
    near, high = exp(-altitude / 8000), exp(-altitude / 1250)
    scale = 5.09e-5 * altitude + 0.868
    slope = 3.92e-5 * altitude + 0.0387
    weakened = exp(-slope * airmass * (near + high * (turbidity - 1)))
    ghi = scale * dni_extra * cos_zenith * weakened
    dni = dni_extra * (0.664 + 0.163 / near) * exp(-0.09 * airmass * (turbidity - 1))
    left = 1 - (0.1 - 0.2 * exp(-turbidity)) / (0.1 + 0.882 / near)
    return ghi, min(dni, max(0.0, ghi * left / cos_zenith))
