"""A usual day's light on a plane: less than a clear day's, and more of it from all over the sky.

The monthly method of Liu and Jordan, as Klein put it for tilted planes: how clear the sky is tells
how much of the light comes from all over it (Erbs, Klein and Duffie); the sun's own part is turned
onto the plane by the ratio that holds outside the air, the rest as from a sky equally bright all
over (isotropic). In scope: means of a month, or days all alike. Out of scope: single days, the
brighter sky about the sun, of which an isotropic one knows nothing: a tilt gains rather more.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import degrees, radians
from typing import Annotated

from calc.energy.sun import SunDay, sunset_angle
from calc.units.compare import at_least
from calc.units.si import Degrees, JoulesPerSquareMetre, Number, Share, Tag

# Erbs, Klein and Duffie, Solar Energy 28, 1982: by rising powers of the clearness
_EARLY = (1.391, -3.560, 4.189, -2.137)
_LATE = (1.311, -3.022, 3.427, -1.821)
# The same: at sunset, the hour angle that parts winter from the rest of the year
LATE_SUNSET: Annotated[Degrees, Tag("sunset angle of the longer days in the diffuse share")] = 81.4
# The same: the range of the correlation
GREYEST: Annotated[Share, Tag("lowest clearness of the diffuse share")] = 0.3
# The same
CLEAREST: Annotated[Share, Tag("highest clearness of the diffuse share")] = 0.8


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualDay:
    """What comes on a plane of a `clear` day when a share `sky` of it comes on level ground.

    `level` is the light on level ground, `clearness` its share of the light outside the air, of
    which `diffuse_share` comes from all over the sky. On the plane: `direct` from the sun,
    `diffuse` from the sky, `ground` thrown back; `on_plane` all of it, no more than a clear day or
    an evenly grey one brings. `hours` are its 24 sums from solar midnight on.
    """

    clear: SunDay
    sky: Share
    level: JoulesPerSquareMetre
    clearness: Share
    diffuse_share: Share
    direct: JoulesPerSquareMetre
    diffuse: JoulesPerSquareMetre
    ground: JoulesPerSquareMetre
    on_plane: JoulesPerSquareMetre
    hours: tuple[JoulesPerSquareMetre, ...]

    @property
    def worked(self) -> JoulesPerSquareMetre:
        """The three parts together, before it is held to a clear day."""
        return self.direct + self.diffuse + self.ground

    @property
    def held(self) -> bool:
        """Whether the sum is held to what a clear day brings."""
        return not at_least(self.on_plane, self.worked)

    @property
    def spread(self) -> JoulesPerSquareMetre:
        """What comes on the plane if cloud spreads all the light over the sky."""
        return self.level * self.clear.plane.spread_factor

    @property
    def beam_ratio(self) -> Number:
        """The sun's light on the plane against that on level ground, outside the air."""
        return self.clear.beam_ratio

    @property
    def winter(self) -> bool:
        """Whether the sun sets as early as the winter's formula of the diffuse share asks."""
        return not _late(self.clear)


def diffuse_share(*, clearness: float, late: bool) -> float:
    """Return the share [0..1] of a month's light on level ground that comes from all over the sky.

    `clearness` is its share of the light outside the air, `late` whether the sun sets beyond an
    hour angle of `LATE_SUNSET`. Erbs, Klein and Duffie from 0.3 to 0.8; below, a straight line to a
    sky without a sun (our choice); above, as at 0.8.
    """
    if clearness < GREYEST:
        at_greyest = diffuse_share(clearness=GREYEST, late=late)
        return 1.0 - clearness / GREYEST * (1.0 - at_greyest)
    known = min(clearness, CLEAREST)
    powers = _LATE if late else _EARLY
    return sum(factor * known**power for power, factor in enumerate(powers))


@lru_cache(maxsize=512)
def usual_day(clear: SunDay, sky: float) -> UsualDay:
    """Return what comes on the plane of `clear` when a share `sky` [0..1] of it comes on the level.

    H_T = H ((1 - d) R_b + d (1 + cos β)/2 + ρ (1 - cos β)/2), R_b the ratio outside the air.
    """
    plane, level = clear.plane, sky * clear.horizontal
    beyond = clear.extraterrestrial
    clearness = min(1.0, level / beyond) if beyond > 0 else 0.0
    scattered = diffuse_share(clearness=clearness, late=_late(clear))
    # Beyond the horizon all day, or facing away from the sun: none of its own light
    shines = clear.direct > 0 and beyond > 0
    direct = level * (1 - scattered) * clear.beam_ratio if shines else 0.0
    diffuse = level * scattered * plane.sky_view_factor
    ground = level * plane.albedo * plane.ground_view_factor
    worked = direct + diffuse + ground
    on_plane = min(worked, max(clear.on_plane, level * plane.spread_factor))
    held = on_plane / worked if worked else 0.0
    sun = direct * held / clear.direct if shines else 0.0
    rest = (diffuse + ground) * held / clear.horizontal if clear.horizontal else 0.0
    hours = zip(clear.direct_hours, clear.level_hours, strict=True)
    return UsualDay(
        clear=clear,
        sky=sky,
        level=level,
        clearness=clearness,
        diffuse_share=scattered,
        direct=direct,
        diffuse=diffuse,
        ground=ground,
        on_plane=on_plane,
        hours=tuple(sun * beam + rest * all_light for beam, all_light in hours),
    )


def _late(clear: SunDay) -> bool:
    sunset = sunset_angle(radians(clear.plane.latitude), radians(clear.declination))
    return degrees(sunset) > LATE_SUNSET
