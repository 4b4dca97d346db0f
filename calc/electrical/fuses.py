"""Which fuse families there are: what they break on direct current, and the ratings they come in.

Families are named by construction with the letters of the open standards; breakers that can be
reset are among them. A figure known only from memory keeps that mark to the page. What of them
suits a conductor and its load is in `fuse_order` and `protection`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import IntEnum
from functools import cache
from typing import Annotated, NamedTuple

from calc.tables import FROM_MEMORY, table
from calc.units.compare import at_least, at_most
from calc.units.si import Share, Tag, Volts

# Above a load that goes on for hours: NEC 210.20(A)
CONTINUOUS: Annotated[Share, Tag("a device's rating to its continuous load")] = 1.25
# The most a device may be, of table 5: 33 CFR 183.455(c)
CEILING: Annotated[Share, Tag("most a device may be rated to the ampacity")] = 1.5
# Blade and strip fuses are made for this unless marked higher: ISO 8820-3
COMMON: Annotated[Volts, Tag("usual voltage rating of a vehicle's fuse")] = 32.0
# Up to it a circuit is of a bank, and has the fuses of one whichever rule set its wire is held to:
# 48 V of LFP charge at 58.4 V. Common practice, no source
HIGHEST_OF_BANK: Annotated[Volts, Tag("highest voltage of a circuit of a bank")] = 60.0


class Found(IntEnum):
    """How easily a construction is found, the most easily first."""

    EVERYWHERE = 0
    ORDERED = 1
    RARE = 2


class Breaks(NamedTuple):
    """The current [A] that a version for a d.c. `voltage` [V] breaks, and how that is known."""

    voltage: float
    current: float
    from_memory: bool = False


@dataclass(frozen=True)
class Family:
    """A construction of fuse or breaker: what its versions break, and its rated currents [A].

    `found` says how easily it is found, `resets` marks breakers; shops hardly keep `odd_ratings`.
    """

    name: str
    breaks: tuple[Breaks, ...]
    ratings: tuple[float, ...]
    found: Found = Found.EVERYWHERE
    resets: bool = False
    odd_ratings: tuple[float, ...] = ()

    def interrupting(self, voltage: float) -> float | None:
        """Return the current [A] it can break on a circuit of `voltage` [V], or None."""
        return self._most(voltage, from_memory=True)

    def published(self, voltage: float) -> float | None:
        """Return the current [A] that a text says it breaks at `voltage` [V], or None."""
        return self._most(voltage, from_memory=False)

    def _most(self, voltage: float, *, from_memory: bool) -> float | None:
        fitting = [
            one.current
            for one in self.breaks
            if at_least(one.voltage, voltage) and (from_memory or not one.from_memory)
        ]
        return max(fitting, default=None)

    def from_memory(self, voltage: float, fault_current: float | None = None) -> bool:
        """Return whether only memory says that it breaks `fault_current` [A] at `voltage` [V].

        Without a fault: whether only memory says that it is rated for the voltage.
        """
        said = self.published(voltage)
        if said is None:
            return self.interrupting(voltage) is not None
        beyond = fault_current is not None and not at_least(said, fault_current)
        return beyond and not at_least(said, self.interrupting(voltage) or 0.0)

    def relied_on(self, voltage: float, fault_current: float) -> float | None:
        """Return the current [A] by which it is judged against `fault_current` [A], or None.

        What a text says where that is enough, else what memory says.
        """
        by_memory = self.from_memory(voltage, fault_current)
        return self.interrupting(voltage) if by_memory else self.published(voltage)

    def version(self, voltage: float) -> float | None:
        """Return the voltage rating [V] to ask for where the family's lowest does not do."""
        ratings = sorted(one.voltage for one in self.breaks)
        if at_least(ratings[0], voltage):
            return None
        return next((rated for rated in ratings if at_least(rated, voltage)), None)

    def marked_higher(self, voltage: float) -> float | None:
        """Return the voltage rating [V] to look for where the common one is too low.

        None where `voltage` [V] is within what is common, or the family has but one rating.
        """
        return self.version(voltage) if not at_most(voltage, COMMON) else None

    def named_for(self, voltage: float, fault_current: float | None = None) -> str:
        """Return the family's name as a choice at `voltage` [V] and a `fault_current` [A]."""
        version = self.version(voltage)
        name = f"{self.name}, rated {version:g} V or more" if version else self.name
        return f"{name} (from memory)" if self.from_memory(voltage, fault_current) else name


@cache
def families() -> tuple[Family, ...]:
    """Return every family of the table."""
    rows = table("fuse_families").rows
    ratings = table("fuse_ratings").rows
    kinds = {row["family"]: row for row in table("fuse_kinds").rows}
    odd = table("fuse_rare_ratings").rows
    names = dict.fromkeys(row["family"] for row in rows)
    return tuple(
        Family(
            name,
            tuple(
                Breaks(
                    float(r["dc_voltage_v"]),
                    float(r["interrupting_a"]),
                    r["confidence"] == FROM_MEMORY,
                )
                for r in rows
                if r["family"] == name
            ),
            tuple(sorted(float(r["rating_a"]) for r in ratings if r["family"] == name)),
            found=Found[kinds[name]["found"].upper()],
            resets=kinds[name]["resets"] == "yes",
            odd_ratings=tuple(float(r["rating_a"]) for r in odd if r["family"] == name),
        )
        for name in names
    )


def named(name: str) -> Family | None:
    """Return the family `name`, or None where its ratings are not known."""
    return next((family for family in families() if family.name == name), None)


def suits(family: Family, voltage: float, fault_current: float) -> bool:
    """Return whether `family` is rated for `voltage` [V] and can break `fault_current` [A]."""
    breaks = family.interrupting(voltage)
    return breaks is not None and at_least(breaks, fault_current)


@cache
def by_breaking(voltage: float) -> tuple[tuple[Family, float], ...]:
    """Return one family for each current [A] that any breaks at `voltage` [V], the least first.

    Of those that break the same it is the one that is found most easily.
    """
    best: dict[float, Family] = {}
    for family in sorted(families(), key=lambda one: one.found):
        breaks = family.interrupting(voltage)
        if breaks is not None:
            best.setdefault(breaks, family)
    return tuple((best[breaks], breaks) for breaks in sorted(best))


@cache
def rated_for(voltage: float) -> tuple[Family, ...]:
    """Return the families whose d.c. voltage rating is `voltage` [V] or more, as in the table."""
    return tuple(family for family in families() if family.interrupting(voltage) is not None)


def too_low_in_voltage(voltage: float) -> tuple[Family, ...]:
    """Return the families whose d.c. voltage rating is below `voltage` [V]."""
    return tuple(family for family in families() if family not in rated_for(voltage))


def ratings_between(lowest: float, highest: float, among: tuple[Family, ...]) -> tuple[float, ...]:
    """Return every standard rating [A] of `among` from `lowest` to `highest` [A]."""
    ratings = sorted({rating for family in among for rating in family.ratings})
    return tuple(r for r in ratings if at_least(r, lowest) and at_most(r, highest))


def rating_between(ratings: Sequence[float], lowest: float, highest: float) -> float | None:
    """Return the smallest of `ratings` [A, in order] from `lowest` to `highest` [A], or None."""
    return next((r for r in ratings if at_least(r, lowest) and at_most(r, highest)), None)


def standard_rating(lowest: float, highest: float, among: tuple[Family, ...]) -> float | None:
    """Return the smallest rating [A] of `among` from `lowest` to `highest` [A], or None."""
    between = ratings_between(lowest, highest, among)
    return between[0] if between else None
