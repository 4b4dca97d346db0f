"""Sunlight through clear air: pressure, refraction, air mass and the Ineichen–Perez clear sky.

In scope: a cloudless sky of one Linke turbidity, the sun above the horizon, sea level to high
passes. Out of scope: cloud, haze that changes over the day, mountains on the horizon.
"""

from math import exp, radians, sin, tan

SEA_LEVEL = 101325.0  # Pa
NOT_ABOVE = -0.83337  # deg: the sun's half width and refraction at the horizon; below it is night


def pressure(altitude: float) -> float:
    """Return the air pressure [Pa] at `altitude` [m] in the standard atmosphere, up to 11 km."""
    share: float = ((44331.514 - altitude) / 11880.516) ** (1 / 0.1902632)
    return 100 * share


def refraction(elevation: float, air_pressure: float) -> float:
    """Return by how much [deg] air lifts the sun that truly stands at `elevation` [deg].

    Sæmundsson's form at 12 °C and `air_pressure` [Pa]; none once the whole sun is below.
    """
    if elevation < NOT_ABOVE:
        return 0.0
    air = air_pressure / 101000 * 283 / (273 + 12)
    return air * 1.02 / (60 * tan(radians(elevation + 10.3 / (elevation + 5.11))))


def air_mass(elevation: float) -> float:
    """Return the relative air mass for the sun seen at `elevation` [deg] of 0 or more.

    Kasten and Young: 1 overhead, about 38 at the horizon.
    """
    lift: float = (6.07995 + elevation) ** -1.6364
    return 1 / (sin(radians(elevation)) + 0.50572 * lift)


def clear_sky(
    *, upright: float, mass: float, beyond: float, turbidity: float, altitude: float
) -> tuple[float, float]:
    """Return (global horizontal, direct normal) irradiance [W/m²] of the Ineichen–Perez model.

    `upright` is the cosine of the zenith angle (more than 0), `mass` the air mass at the site's
    pressure, `beyond` the irradiance outside the air [W/m²], `altitude` in metres. The direct part
    is the lesser of two: attenuation of the beam, and what the global light leaves for it.
    """
    near, high = exp(-altitude / 8000), exp(-altitude / 1250)
    scale = 5.09e-5 * altitude + 0.868
    slope = 3.92e-5 * altitude + 0.0387
    level = scale * beyond * upright * exp(-slope * mass * (near + high * (turbidity - 1)))
    beam = beyond * (0.664 + 0.163 / near) * exp(-0.09 * mass * (turbidity - 1))
    left = 1 - (0.1 - 0.2 * exp(-turbidity)) / (0.1 + 0.882 / near)
    return level, min(beam, max(0.0, level * left / upright))
