"""The sun on a plane over one clear day: geometry, day sums and what each solar hour brings.

In scope: any latitude, tilt and facing, polar day and polar night. Out of scope: cloud, shade,
mountains on the horizon, snow on the ground. Time is solar time: the sun is highest at 12. Facing
is 180 toward the equator and 90 toward the east on both halves of the earth.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import acos, asin, atan2, cos, degrees, hypot, pi, radians, remainder, sin, tan

from calc.energy.sky import SEA_LEVEL, air_mass, clear_sky, pressure, refraction

SOLAR_CONSTANT = 1366.1  # W/m², ASTM E490
DAY = 86400.0  # s
EPOCH = 8400.0  # days from noon of 1 January 2000 to that of day 0 of 2023
ALBEDO = 0.2  # of bare ground
MID_DAYS = (15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349)  # the 15th of each month
OVERCAST, BRIGHT = 0.25, 0.50  # FAO-56: shares of the light outside the air
STEPS = 72  # in half a day: ten minutes


@dataclass(frozen=True, slots=True)
class SunDay:
    """One clear day on a plane.

    `extraterrestrial` outside the air and `horizontal` below it on level ground, `diffuse` the part
    of `horizontal` that comes from the sky, `direct` the sun's own light on the plane, `on_plane`
    all light on it [J/m²]; `hours`: 24 sums on the plane [J/m²] from solar midnight on; `daylight`
    [s] between sunrise and sunset; `noon` the true height of the sun at 12 [deg], below 0 in polar
    night; `bright` the irradiance on the plane [W/m²] averaged with itself as the weight.
    """

    extraterrestrial: float
    horizontal: float
    diffuse: float
    direct: float
    on_plane: float
    hours: tuple[float, ...]
    daylight: float
    noon: float
    bright: float


@lru_cache(maxsize=400)
def place(since: float) -> tuple[float, float]:
    """Return the sun's declination and its lead over the mean sun [rad].

    `since` counts days from noon of 1 January 2000, universal time. Low-precision formula of the
    Astronomical Almanac, good to 0.01° from 1950 to 2050.
    """
    around = radians(357.528 + 0.9856003 * since)
    mean = radians(280.460 + 0.9856474 * since)
    along = mean + radians(1.915 * sin(around) + 0.020 * sin(2 * around))
    lean = radians(23.439 - 0.0000004 * since)
    ahead = mean - atan2(cos(lean) * sin(along), cos(along))
    return asin(sin(lean) * sin(along)), remainder(ahead, 2 * pi)


def declination(day: float) -> float:
    """Return the sun's declination [rad] at noon of `day` of the year (1 to 365).

    For the third year after a leap year (2023, 2027). The calendar slips against the sun by a
    quarter of a day each year, so that the declination of a date differs from year to year, by up
    to 0.3° near the equinoxes. The usual one-line series are off by as much, which is too much for
    a low winter sun.
    """
    return place(EPOCH + day)[0]


def nearness(day: float) -> float:
    """Return (mean distance / distance)² to the sun on `day` of the year, Spencer's series."""
    a = 2 * pi * (day - 1) / 365
    return (
        1.00011
        + 0.034221 * cos(a)
        + 0.00128 * sin(a)
        + 0.000719 * cos(2 * a)
        + 0.000077 * sin(2 * a)
    )


def equation_of_time(day: float) -> float:
    """Return by how much [s] the sun is ahead of a mean clock at noon of `day` of the year."""
    return place(EPOCH + day)[1] * DAY / (2 * pi)


def solar_time(*, clock: float, longitude: float, zone: float, day: float) -> float:
    """Return solar time [s] for `clock` time [s] at `longitude`, `zone` its meridian [deg east]."""
    return clock + (longitude - zone) * DAY / 360 + equation_of_time(day)


def hour_angle(time: float) -> float:
    """Return the hour angle [rad] at solar `time` [s] from midnight: 0 at noon, less before."""
    return 2 * pi * (time / DAY - 0.5)


def sun_vector(latitude: float, tilt_of_earth: float, angle: float) -> tuple[float, float, float]:
    """Return the direction to the sun as (up, south, west), of length 1.

    `latitude` and `tilt_of_earth` (the declination) [rad], `angle` the hour angle [rad].
    """
    high, far = sin(tilt_of_earth), cos(tilt_of_earth)
    up = sin(latitude) * high + cos(latitude) * far * cos(angle)
    south = sin(latitude) * far * cos(angle) - cos(latitude) * high
    return up, south, far * sin(angle)


def plane_vector(tilt: float, facing: float) -> tuple[float, float, float]:
    """Return the direction that a plane faces as (up, south, west), like `sun_vector`; [deg].

    Its product with the sun's direction is the cosine of the angle of incidence.
    """
    lean, turned = radians(tilt), radians(facing - 180)
    return cos(lean), sin(lean) * cos(turned), sin(lean) * sin(turned)


def sunset_angle(latitude: float, tilt_of_earth: float) -> float:
    """Return the hour angle of sunset [rad]: 0 in polar night, π in polar day."""
    cosine = -tan(latitude) * tan(tilt_of_earth)
    return acos(min(1.0, max(-1.0, cosine)))


def day_beyond_air(*, latitude: float, tilt_of_earth: float, normal: float) -> float:
    """Return the day's sum [J/m²] on level ground outside the air; `normal` [W/m²], angles [rad].

    H = (86400/π) G (ω sin φ sin δ + cos φ cos δ sin ω), ω the sunset hour angle.
    """
    w = sunset_angle(latitude, tilt_of_earth)
    level = w * sin(latitude) * sin(tilt_of_earth)
    return DAY / pi * normal * (level + cos(latitude) * cos(tilt_of_earth) * sin(w))


@lru_cache(maxsize=512)
def day_on_plane(
    *,
    latitude: float,
    day_of_year: int,
    tilt: float,
    facing: float,
    turbidity: float,
    altitude: float,
    albedo: float = ALBEDO,
) -> SunDay:
    """Return one clear day on a plane at `latitude` [deg, south below 0], see `SunDay`.

    `tilt` from level and `facing` (180 the equator, 90 east) [deg], Linke `turbidity`, `altitude`
    [m], `albedo` of the ground. Clear sky after Ineichen and Perez, sky light from everywhere
    alike, ten-minute midpoints. The south is reckoned as the north with the seasons changed over.
    """
    side = 1.0 if latitude >= 0 else -1.0
    north, earth = radians(abs(latitude)), side * declination(day_of_year)
    beyond = SOLAR_CONSTANT * nearness(day_of_year)
    air = pressure(altitude)
    up_of, south_of, west_of = plane_vector(tilt, facing)
    sky_seen, ground_seen = (1 + up_of) / 2, albedo * (1 - up_of) / 2
    step = DAY / (2 * STEPS)
    level_sum = diffuse_sum = direct_sum = square_sum = 0.0
    hours = [0.0] * 24
    for index in range(STEPS):
        up, south, west = sun_vector(north, earth, pi * (index + 0.5) / STEPS)
        true = degrees(asin(max(-1.0, min(1.0, up))))
        seen = true + refraction(true, air)
        if seen <= 0:
            continue
        upright = sin(radians(seen))
        flat = hypot(south, west)
        stretch = cos(radians(seen)) / flat if flat else 0.0
        mass = air_mass(seen) * air / SEA_LEVEL
        level, beam = clear_sky(
            upright=upright, mass=mass, beyond=beyond, turbidity=turbidity, altitude=altitude
        )
        diffuse = level - beam * upright
        round_about = diffuse * sky_seen + level * ground_seen
        level_sum += 2 * level * step
        diffuse_sum += 2 * diffuse * step
        toward, across = upright * up_of + south * stretch * south_of, west * stretch * west_of
        hour = index * 12 // STEPS
        for at, facing_sun in ((12 + hour, toward + across), (11 - hour, toward - across)):
            direct = beam * max(0.0, facing_sun)
            light = direct + round_about
            direct_sum += direct * step
            hours[at] += light * step
            square_sum += light * light * step
    total = sum(hours)
    return SunDay(
        extraterrestrial=day_beyond_air(latitude=north, tilt_of_earth=earth, normal=beyond),
        horizontal=level_sum,
        diffuse=diffuse_sum,
        direct=direct_sum,
        on_plane=total,
        hours=tuple(hours),
        daylight=sunset_angle(north, earth) / pi * DAY,
        noon=90 - abs(degrees(north - earth)),
        bright=square_sum / total if total else 0.0,
    )


def cloud_share(*, sunshine: float, daylight: float) -> float:
    """Return the share of a clear day's sum that comes on level ground after Ångström and FAO-56.

    `sunshine` is the time of bright sun, `daylight` that between sunrise and sunset [s, more than
    0], both as means of a month: Rs = (0.25 + 0.50 n/N) Ra, against n = N.
    """
    return (OVERCAST + BRIGHT * sunshine / daylight) / (OVERCAST + BRIGHT)
