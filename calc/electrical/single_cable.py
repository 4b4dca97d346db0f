"""Whether one cable can carry a current at all, and how many in parallel do: what is laid in a van.

In scope: the thickest cable of the boats' table, 33 CFR 183.425, with its hottest insulation.
Cables in parallel lie together, so each carries less than one alone.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.electrical.ampacity import RuleSet, bundle_factor
from calc.electrical.fuses import CONTINUOUS, Family, rated_for, standard_rating
from calc.electrical.sizing import thickest_ampacity
from calc.units.compare import at_most
from calc.units.si import Amperes, Count, Tag, Volts

# Beyond, a higher voltage is the remedy: our choice
MOST_PARALLEL: Annotated[Count, Tag("cables side by side that are laid in a van")] = 4.0


@dataclass(frozen=True, kw_only=True)
class SingleCable:
    """A `current` that goes on for hours, and what the `thickest` cable can carry.

    `max_voltage` is the highest on the circuit, that of the bank while it charges. `fits` tells
    whether the thickest cable carries the current behind a standard fuse. Else `cables` of them
    side by side do, each with its own fuse, or it is None where not even four do.
    """

    current: Amperes
    max_voltage: Volts
    thickest: Amperes
    fits: bool
    cables: Count | None

    @property
    def each(self) -> Amperes | None:
        """The current in each of the cables side by side."""
        return None if self.cables is None else self.current / self.cables

    @property
    def each_fuse(self) -> Amperes | None:
        """What the fuse of each is rated at least."""
        return None if self.each is None else CONTINUOUS * self.each

    @property
    def beyond_two(self) -> bool:
        """Whether it takes three cables or more, which need a fuse at both ends."""
        return self.cables is not None and self.cables > 2


def single_cable(*, current: float, max_voltage: float) -> SingleCable:
    """Return whether one cable can carry `current` [A] for hours behind a standard fuse.

    Where it cannot: how many side by side do, the bundle counted. NEC 210.20(A) for the margin
    above the load. Where no fuse family is rated for `max_voltage` [V], only the cable is asked.
    """
    thickest, families = thickest_ampacity(), rated_for(max_voltage)
    fits = _fits(current, thickest, families)
    cables = 1.0 if fits else None
    for n in range(2, int(MOST_PARALLEL) + 1):
        if cables is None:
            together = thickest * bundle_factor(RuleSet.CFR33, 2 * n)
            cables = float(n) if _fits(current / n, together, families) else None
    return SingleCable(
        current=current, max_voltage=max_voltage, thickest=thickest, fits=fits, cables=cables
    )


def _fits(current: float, ampacity: float, families: tuple[Family, ...]) -> bool:
    """Return whether a fuse of `families` stands between a load and what its cable can carry."""
    need = CONTINUOUS * current
    if families:
        return standard_rating(need, ampacity, families) is not None
    return at_most(need, ampacity)
