"""The sun on a plane over one clear day: geometry, day sums and what each solar hour brings.

In scope: any latitude, tilt and facing, polar day and polar night. Out of scope: cloud, shade,
mountains on the horizon, snow on the ground. Time is solar time: the sun is highest at 12. Facing
is 180 toward the equator and 90 toward the east on both halves of the earth.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import acos, asin, atan2, cos, degrees, hypot, pi, radians, remainder, sin, tan
from typing import Annotated

from calc.energy.sky import (
    SEA_LEVEL_PRESSURE,
    clear_sky,
    pressure,
    refraction,
    relative_airmass,
)
from calc.units.constants import DAY
from calc.units.covered import Enumeration
from calc.units.si import (
    Degrees,
    JoulesPerSquareMetre,
    Metres,
    Number,
    Seconds,
    Share,
    Tag,
    WattsPerSquareMetre,
)

SOLAR_CONSTANT: Annotated[WattsPerSquareMetre, Tag("sunlight at its mean distance")] = 1366.1
"""ASTM E490."""
ALBEDO: Annotated[Share, Tag("light that bare ground throws back")] = 0.2  # common practice
MID_DAYS = (15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349)  # the 15th of each month
_EPOCH = 8400.0  # days from noon of 1 January 2000 to that of day 0 of 2023
_STEPS = 72  # in half a day: ten minutes
# At noon, below which hills and trees decide: common practice, no source
LOW_SUN: Annotated[Degrees, Tag("height of the noon sun that hills and trees take")] = 15.0


class Month(Enumeration):
    """A month; its 15th stands for it."""

    JANUARY = "January"
    FEBRUARY = "February"
    MARCH = "March"
    APRIL = "April"
    MAY = "May"
    JUNE = "June"
    JULY = "July"
    AUGUST = "August"
    SEPTEMBER = "September"
    OCTOBER = "October"
    NOVEMBER = "November"
    DECEMBER = "December"

    @property
    def number(self) -> int:
        """1 for January to 12 for December."""
        return list(Month).index(self) + 1

    @property
    def mid_day(self) -> int:
        """The day of the year of its 15th."""
        return MID_DAYS[self.number - 1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Plane:
    """A plane on the earth and the air above it.

    `latitude` is below 0 in the south; `tilt` is counted from level; `facing` is 180° toward the
    equator and 90° east; `turbidity` is Linke's; `albedo` the share of light that the ground throws
    back.
    """

    latitude: Degrees
    tilt: Degrees
    facing: Degrees
    turbidity: Number
    altitude: Metres
    albedo: Share

    @property
    def sky_view_factor(self) -> Share:
        """The share of the sky that the plane sees, the sky equally bright all over."""
        return sky_view_factor(self.tilt)

    @property
    def ground_view_factor(self) -> Share:
        """The share of the ground that it sees: (1 − cos β)/2."""
        return (1 - cos(radians(self.tilt))) / 2

    @property
    def spread_factor(self) -> Share:
        """What it gets of light from all over the sky, against level ground."""
        return self.sky_view_factor + self.albedo * self.ground_view_factor


@dataclass(frozen=True, slots=True, kw_only=True)
class SunDay:
    """One clear day on a plane.

    `declination` is the sun's, `earth_sun_factor` how much stronger its light is than at the mean
    distance. `extraterrestrial` outside the air and `horizontal` below it on level ground,
    `diffuse` the part of `horizontal` that comes from the sky, `direct` the sun's own light on the
    plane, `on_plane` all light on it; `hours`: 24 sums on the plane from solar midnight on,
    `direct_hours` those of `direct` and `level_hours` those of `horizontal`; `beam_ratio` is the
    sun's light on the plane against that on level ground, both outside the air; `daylight` lasts
    from sunrise to sunset; `noon` is the true height of the sun at 12, below 0 in polar night;
    `bright` the irradiance on the plane averaged with itself as the weight.
    """

    plane: Plane
    declination: Degrees
    earth_sun_factor: Number
    extraterrestrial: JoulesPerSquareMetre
    horizontal: JoulesPerSquareMetre
    diffuse: JoulesPerSquareMetre
    direct: JoulesPerSquareMetre
    on_plane: JoulesPerSquareMetre
    hours: tuple[JoulesPerSquareMetre, ...]
    direct_hours: tuple[JoulesPerSquareMetre, ...]
    level_hours: tuple[JoulesPerSquareMetre, ...]
    beam_ratio: Number
    daylight: Seconds
    noon: Degrees
    bright: WattsPerSquareMetre

    @property
    def dni_extra(self) -> WattsPerSquareMetre:
        """The sun's light outside the air, square to it."""
        return SOLAR_CONSTANT * self.earth_sun_factor

    @property
    def sines(self) -> Number:
        """The product sin φ sin δ of latitude and declination."""
        return sin(radians(self.plane.latitude)) * sin(radians(self.declination))

    @property
    def cosines(self) -> Number:
        """The product cos φ cos δ sin ω, ω the hour angle of sunset."""
        latitude, declined = radians(self.plane.latitude), radians(self.declination)
        return cos(latitude) * cos(declined) * sin(sunset_angle(latitude, declined))

    @property
    def dark(self) -> bool:
        """Whether no light falls on the plane all day."""
        return self.on_plane == 0

    @property
    def spread(self) -> JoulesPerSquareMetre:
        """What falls on the plane if cloud spreads all the light of `horizontal` over the sky."""
        return self.horizontal * self.plane.spread_factor


def sky_view_factor(tilt: float) -> float:
    """Return the share [0..1] of the sky that a plane at `tilt` [deg] sees: (1 + cos β)/2."""
    return (1 + cos(radians(tilt))) / 2


@lru_cache(maxsize=400)
def solar_coordinates(since: float) -> tuple[float, float]:
    """Return the sun's declination and its lead over the mean sun [rad].

    `since` counts days from noon of 1 January 2000, universal time. Low-precision formula of the
    Astronomical Almanac, good to 0.01° from 1950 to 2050.
    """
    anomaly = radians(357.528 + 0.9856003 * since)
    mean = radians(280.460 + 0.9856474 * since)
    longitude = mean + radians(1.915 * sin(anomaly) + 0.020 * sin(2 * anomaly))
    obliquity = radians(23.439 - 0.0000004 * since)
    ahead = mean - atan2(cos(obliquity) * sin(longitude), cos(longitude))
    return asin(sin(obliquity) * sin(longitude)), remainder(ahead, 2 * pi)


def declination(day: float) -> float:
    """Return the sun's declination [rad] at noon of `day` of the year (1 to 365).

    For the third year after a leap year (2023, 2027). The calendar slips against the sun by a
    quarter of a day each year, so that the declination of a date differs from year to year, by up
    to 0.3° near the equinoxes. The usual one-line series are off by as much, which is too much for
    a low winter sun.
    """
    return solar_coordinates(_EPOCH + day)[0]


def earth_sun_factor(day: float) -> float:
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
    return solar_coordinates(_EPOCH + day)[1] * DAY / (2 * pi)


def solar_time(*, clock: float, longitude: float, zone: float, day: float) -> float:
    """Return solar time [s] for `clock` time [s] at `longitude`, `zone` its meridian [deg east]."""
    return clock + (longitude - zone) * DAY / 360 + equation_of_time(day)


def hour_angle(time: float) -> float:
    """Return the hour angle [rad] at solar `time` [s] from midnight: 0 at noon, less before."""
    return 2 * pi * (time / DAY - 0.5)


def sun_vector(latitude: float, declined: float, angle: float) -> tuple[float, float, float]:
    """Return the direction to the sun as (up, south, west), of length 1.

    `latitude`, the declination `declined` and the hour angle `angle` [rad].
    """
    high, far = sin(declined), cos(declined)
    up = sin(latitude) * high + cos(latitude) * far * cos(angle)
    south = sin(latitude) * far * cos(angle) - cos(latitude) * high
    return up, south, far * sin(angle)


def plane_vector(tilt: float, facing: float) -> tuple[float, float, float]:
    """Return the direction that a plane faces as (up, south, west), like `sun_vector`; [deg].

    Its product with the sun's direction is the cosine of the angle of incidence.
    """
    slope, turned = radians(tilt), radians(facing - 180)
    return cos(slope), sin(slope) * cos(turned), sin(slope) * sin(turned)


def sunset_angle(latitude: float, declined: float) -> float:
    """Return the hour angle of sunset [rad]: 0 in polar night, π in polar day."""
    cosine = -tan(latitude) * tan(declined)
    return acos(min(1.0, max(-1.0, cosine)))


def extraterrestrial_day(*, latitude: float, declined: float, dni_extra: float) -> float:
    """Return the day's sum [J/m²] on level ground outside the air; `dni_extra` [W/m²].

    H = (86400/π) G (ω sin φ sin δ + cos φ cos δ sin ω), ω the sunset hour angle; angles [rad].
    """
    w = sunset_angle(latitude, declined)
    steady = w * sin(latitude) * sin(declined)
    return DAY / pi * dni_extra * (steady + cos(latitude) * cos(declined) * sin(w))


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
    plane = Plane(
        latitude=latitude,
        tilt=tilt,
        facing=facing,
        turbidity=turbidity,
        altitude=altitude,
        albedo=albedo,
    )
    declined = declination(day_of_year)
    north = radians(abs(latitude))
    season = declined if latitude >= 0 else -declined
    factor = earth_sun_factor(day_of_year)
    dni_extra = SOLAR_CONSTANT * factor
    air = pressure(altitude)
    up_of, south_of, west_of = plane_vector(tilt, facing)
    sky_share, ground_share = (1 + up_of) / 2, albedo * (1 - up_of) / 2
    step = DAY / (2 * _STEPS)
    ghi_sum = diffuse_sum = direct_sum = square_sum = 0.0
    hours, direct_hours, level_hours = [0.0] * 24, [0.0] * 24, [0.0] * 24
    beyond_level = beyond_plane = 0.0
    for index in range(_STEPS):
        up, south, west = sun_vector(north, season, pi * (index + 0.5) / _STEPS)
        if up > 0:
            toward, across = up * up_of + south * south_of, west * west_of
            beyond_level += 2 * up
            beyond_plane += max(0.0, toward + across) + max(0.0, toward - across)
        true = degrees(asin(max(-1.0, min(1.0, up))))
        apparent = true + refraction(true, air)
        if apparent <= 0:
            continue
        cos_zenith = sin(radians(apparent))
        flat = hypot(south, west)
        stretch = cos(radians(apparent)) / flat if flat else 0.0
        ghi, dni = clear_sky(
            cos_zenith=cos_zenith,
            airmass=relative_airmass(apparent) * air / SEA_LEVEL_PRESSURE,
            dni_extra=dni_extra,
            turbidity=turbidity,
            altitude=altitude,
        )
        dhi = ghi - dni * cos_zenith
        indirect = dhi * sky_share + ghi * ground_share
        ghi_sum += 2 * ghi * step
        diffuse_sum += 2 * dhi * step
        toward, across = cos_zenith * up_of + south * stretch * south_of, west * stretch * west_of
        hour = index * 12 // _STEPS
        for at, cos_incidence in ((12 + hour, toward + across), (11 - hour, toward - across)):
            direct = dni * max(0.0, cos_incidence)
            light = direct + indirect
            direct_sum += direct * step
            hours[at] += light * step
            direct_hours[at] += direct * step
            level_hours[at] += ghi * step
            square_sum += light * light * step
    total = sum(hours)
    return SunDay(
        plane=plane,
        declination=degrees(declined),
        earth_sun_factor=factor,
        extraterrestrial=extraterrestrial_day(latitude=north, declined=season, dni_extra=dni_extra),
        horizontal=ghi_sum,
        diffuse=diffuse_sum,
        direct=direct_sum,
        on_plane=total,
        hours=tuple(hours),
        direct_hours=tuple(direct_hours),
        level_hours=tuple(level_hours),
        beam_ratio=beyond_plane / beyond_level if beyond_level else 0.0,
        daylight=sunset_angle(north, season) / pi * DAY,
        noon=90 - abs(degrees(north - season)),
        bright=square_sum / total if total else 0.0,
    )
