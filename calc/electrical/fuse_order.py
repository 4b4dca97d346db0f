"""In which order fuses that would do are offered: one order for every sheet.

What is published comes before what is known from memory, what breaks the fault with room and is
made for the voltage in its common version before what is not, what is not much too large before
what is, and what shops have before what is rare, families first and then ratings; then the least
oversized. Our own order.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Annotated

from calc.electrical import fuses
from calc.electrical.fuses import Family, Found
from calc.electrical.interrupting import within_margin
from calc.units.compare import at_least, at_most
from calc.units.si import Amperes, Number, Share, Tag, Volts

# At 25 °C, of the rated current: a maker's page on small fuses
LIGHT_LOAD: Annotated[Share, Tag("load of a small fuse that lasts")] = 0.75
# Times what the load needs; beyond, the fuse is no guard of the load's own thin leads: our choice
MUCH_TOO_LARGE: Annotated[Number, Tag("times the load's need that are much too large")] = 2.0
SMALL_BLADES = ("blade, regular (type C)", "blade, miniature (type F)")
PLUGGED = (*SMALL_BLADES, "blade breaker (CB15)")  # run warm in their holders


@dataclass(frozen=True)
class Candidate:
    """A standard `rating` of a `family` that would do for a load that `needs` so much.

    `tight` tells that it breaks the fault with less than the usual margin, `memory` that only
    memory says that it breaks it, `marked` that the common version is made for less voltage, `odd`
    that shops hardly keep this rating. The family is None where only a rating is asked for.
    """

    family: Family | None
    rating: Amperes
    needs: Amperes
    memory: bool
    tight: bool
    marked: bool = False
    odd: bool = False

    @property
    def loaded(self) -> Share:
        """The load as a share of the rating."""
        return self.needs / fuses.CONTINUOUS / self.rating

    @property
    def warm(self) -> bool:
        """Whether it is a small blade loaded above what lets it last."""
        small = self.family is not None and self.family.name in PLUGGED
        return small and not at_most(self.loaded, LIGHT_LOAD)

    @property
    def oversized(self) -> bool:
        """Whether it is much larger than the load needs."""
        return not at_most(self.rating, MUCH_TOO_LARGE * self.needs)

    @property
    def rare(self) -> bool:
        """Whether it is hard to find."""
        return self.family is not None and self.family.found is Found.RARE

    @property
    def rank(self) -> tuple[bool, bool, bool, bool, Found, bool, bool, float]:
        """What it is sorted by, the best first."""
        found = self.family.found if self.family else Found.EVERYWHERE
        return (
            *(self.memory, self.tight, self.marked, self.oversized),
            *(found, self.odd, self.warm, self.rating),
        )


def in_order(
    families: tuple[Family, ...],
    *,
    voltage: Volts,
    fault_current: Amperes | None,
    lowest: Amperes,
    highest: Amperes,
    in_vehicles: bool = True,
) -> tuple[Candidate, ...]:
    """Return every rating [A] of `families` from `lowest` to `highest`, the best choice first.

    The families are rated for `voltage` [V] and can break `fault_current` [A], None where it is
    left open. `in_vehicles`: ratings that shops hardly keep for vehicles give way to the next.
    """
    found = [
        Candidate(
            family=family,
            rating=rating,
            needs=lowest,
            memory=memory,
            tight=tight,
            marked=family.marked_higher(voltage) is not None,
            odd=in_vehicles and rating in family.odd_ratings,
        )
        for family, memory, tight in _known(families, voltage, fault_current)
        for rating in family.ratings
        if at_least(rating, lowest) and at_most(rating, highest)
    ]
    return tuple(sorted(found, key=lambda one: one.rank))


@lru_cache(64)
def _known(
    families: tuple[Family, ...], voltage: float, fault_current: float | None
) -> tuple[tuple[Family, bool, bool], ...]:
    """Return each family with whether memory alone speaks for it, and whether it is tight."""
    return tuple(
        (
            family,
            family.from_memory(voltage, fault_current),
            fault_current is not None
            and within_margin(family.relied_on(voltage, fault_current) or 0.0, fault_current),
        )
        for family in families
    )


def suitable(voltage: float, fault_current: float) -> tuple[Family, ...]:
    """Return the families that suit, the published and common first, then the least oversized."""
    fitting = [one for one in fuses.families() if fuses.suits(one, voltage, fault_current)]

    def rank(family: Family) -> tuple[bool, bool, Found, float]:
        breaks = family.relied_on(voltage, fault_current) or 0.0
        tight = within_margin(breaks, fault_current)
        return (family.from_memory(voltage, fault_current), tight, family.found, breaks)

    return tuple(sorted(fitting, key=rank))
