"""What cloud leaves of a clear day: estimated, from hours of bright sun, or as stations measured.

In scope: shares of a clear day's sum on level ground, as means of a month. Out of scope: single
days, and how cloud spreads the light (`usual_day`).
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.energy.sun import Month, SunDay, day_on_plane
from calc.tables import table
from calc.units.compare import at_most
from calc.units.constants import HOUR
from calc.units.covered import NotCovered
from calc.units.si import Degrees, Number, Seconds, Share, Tag

# FAO-56, equation 35: shares of the light outside the air
_ANGSTROM_A, _ANGSTROM_B = 0.25, 0.50
# Of clear air, under which the measured stations are set against a clear day: common practice
STATION_TURBIDITY: Annotated[Number, Tag("usual Linke turbidity")] = 3.0
# Of clear days; most published months lie below (`calc/tables/typical_sun.csv`): our choice
BRIGHT_SKY: Annotated[Share, Tag("share of a clear day above which a sky is hardly typical")] = 0.85


@dataclass(frozen=True, kw_only=True)
class Sky:
    """What a usual day brings of a clear one.

    `share` of it as estimated, `sunshine` the hours of bright sun of `daylight`, where known, and
    the share `used` by either, or by what was `measured` in a climate.
    """

    share: Share
    sunshine: Seconds | None
    daylight: Seconds
    used: Share
    measured: bool = False

    @property
    def from_sunshine(self) -> bool:
        """Whether the share comes from the hours of bright sun."""
        return self.sunshine is not None and self.daylight > 0 and not self.measured


@dataclass(frozen=True, kw_only=True)
class Station:
    """A station with published sums: its `place`, where it lies, its share of a clear day."""

    place: str
    at: Degrees
    share: Share


@dataclass(frozen=True, kw_only=True)
class MonthlySky:
    """A sky for each month: the shares of a clear day, or a climate's clearness.

    `shares` are twelve, from January on; else `clearness` is, the light on level ground as a share
    of that outside the air, as it is measured where the climate's name comes from.
    """

    shares: tuple[Share, ...] | None
    clearness: tuple[Share, ...] | None

    def share(self, month: Month, clear: SunDay) -> float:
        """Return the share of the `clear` day that comes on level ground in `month`, 1 at most."""
        if self.shares is not None:
            return self.shares[month.number - 1]
        assert self.clearness is not None
        if not clear.horizontal:
            return 1.0
        level = self.clearness[month.number - 1] * clear.extraterrestrial
        return min(1.0, level / clear.horizontal)


def clear_day_share(*, sunshine: float, daylight: float) -> float:
    """Return the share of a clear day's sum that comes on level ground after Ångström and FAO-56.

    `sunshine` is the time of bright sun, `daylight` that between sunrise and sunset [s, more than
    0], both as means of a month: Rs = (0.25 + 0.50 n/N) Ra, against n = N.
    """
    return (_ANGSTROM_A + _ANGSTROM_B * sunshine / daylight) / (_ANGSTROM_A + _ANGSTROM_B)


def usual_sky(*, share: float, sunshine: float | None, daylight: float) -> Sky:
    """Return what a usual day brings of a clear one: by `sunshine` [s] where known, else `share`.

    `daylight` [s] is that between sunrise and sunset; where there is none, `share` stands. Raises
    NotCovered for more sunshine than daylight.
    """
    if sunshine is not None and not at_most(sunshine, daylight):
        most = f"the {daylight / HOUR:.2f} h between sunrise and sunset"
        raise NotCovered("sunshine", f"must be at most {most}.")
    if sunshine is None or not daylight:
        return Sky(share=share, sunshine=sunshine, daylight=daylight, used=share)
    used = clear_day_share(sunshine=sunshine, daylight=daylight)
    return Sky(share=share, sunshine=sunshine, daylight=daylight, used=used)


@cache
def stations(month: Month) -> tuple[Station, ...]:
    """Return the share of a clear day, on level ground, that each measured station has in `month`.

    Published sums of typical meteorological years (`calc/tables/typical_sun.csv`) over our own
    clear day. Above 1 where the air is clearer than our usual one.
    """
    return tuple(
        Station(
            place=row["place"],
            at=float(row["latitude_deg"]),
            share=_measured(row, month) / _clear(row, month).horizontal,
        )
        for row in table("typical_sun").rows
    )


@cache
def climates() -> dict[str, str]:
    """Return the name of the place of each climate with published sums, by its id."""
    return {row["id"]: row["place"] for row in table("typical_sun").rows}


@cache
def climate(name: str) -> MonthlySky:
    """Return the sky of a climate month by month: clearness, H/H_0. Raises NotCovered."""
    for row in table("typical_sun").rows:
        if row["id"] == name:
            clearness = tuple(
                _measured(row, month) / _clear(row, month).extraterrestrial for month in Month
            )
            return MonthlySky(shares=None, clearness=clearness)
    raise NotCovered("climate", f"must be {', '.join(climates())}, not {name!r}.")


def own_sky(shares: tuple[float, ...], otherwise: float) -> MonthlySky:
    """Return a sky of `shares` [0..1], from January on; months beyond them have `otherwise`."""
    rest = (otherwise,) * (len(Month) - len(shares))
    return MonthlySky(shares=(*shares, *rest)[: len(Month)], clearness=None)


def _measured(row: dict[str, str], month: Month) -> float:
    return float(row[f"m{month.number}"]) * 1000.0 * HOUR


def _clear(row: dict[str, str], month: Month) -> SunDay:
    return day_on_plane(
        latitude=float(row["latitude_deg"]),
        day_of_year=month.mid_day,
        tilt=0.0,
        facing=180.0,
        turbidity=STATION_TURBIDITY,
        altitude=float(row["altitude_m"]),
    )
