"""What burns aboard: its fuel, where its air and its exhaust go, and the alarm beside it.

In scope: published points of carbon monoxide. Out of scope: how much of it a flame gives, and where
in a van it gathers: no figure makes an exhaust in the living space safe.
"""

from dataclasses import dataclass
from functools import cache

from calc.tables import table
from calc.units.covered import Enumeration


class HeatSource(Enumeration):
    """What a heater makes its heat from. Propane stands for bottled gas.

    Electric heat is made straight on the bank, or through an inverter.
    """

    DIESEL = "diesel"
    PETROL = "petrol"
    PROPANE = "propane"
    ELECTRIC = "electric"
    INVERTER = "electric-inverter"

    @property
    def electric(self) -> bool:
        """Whether nothing burns for it."""
        return self in (HeatSource.ELECTRIC, HeatSource.INVERTER)


class Exhaust(Enumeration):
    """Where a flame takes its air from, and where its exhaust goes."""

    UNKNOWN = "not-checked"
    OUTSIDE = "both-outside"
    INSIDE = "into-the-living-space"


class Alarm(Enumeration):
    """Whether a carbon monoxide alarm is there."""

    UNKNOWN = "not-checked"
    FITTED = "fitted-and-tested"
    MISSING = "not-fitted"


@dataclass(frozen=True, kw_only=True)
class Flame:
    """Something that burns aboard."""

    fuel: HeatSource
    exhaust: Exhaust
    alarm: Alarm

    @property
    def unchecked(self) -> bool:
        """Whether nobody has looked at its exhaust, or at the alarm."""
        return self.exhaust is Exhaust.UNKNOWN or self.alarm is Alarm.UNKNOWN


def flame(*, fuel: HeatSource, exhaust: Exhaust, alarm: Alarm) -> Flame | None:
    """Return what burns, or None for electric heat. Raises NotCovered."""
    fuel = HeatSource(fuel)
    if fuel.electric:
        return None
    return Flame(fuel=fuel, exhaust=Exhaust(exhaust), alarm=Alarm(alarm))


@dataclass(frozen=True)
class Point:
    """A published point of carbon monoxide: `ppm` by volume and what it means."""

    kind: str
    ppm: str
    means: str
    source: str

    @property
    def level(self) -> str:
        """The concentration with its unit."""
        return f"{self.ppm}\u00a0ppm"

    def __str__(self) -> str:
        return f"{self.ppm} ppm: {self.means} ({self.source})"


@cache
def carbon_monoxide() -> tuple[Point, ...]:
    """Return the published alarm points and limits of exposure."""
    rows = table("carbon_monoxide").rows
    return tuple(Point(row["kind"], row["ppm"], row["means"], row["source"]) for row in rows)
