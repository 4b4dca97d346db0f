"""Which fuse protects a conductor, carries the load and can break the fault current.

Families are named by construction with the letters of the open standards. Ratings known only from
memory keep that mark to the page.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.tables import FROM_MEMORY, table
from calc.units.compare import at_least, at_most
from calc.units.si import Share, Tag, Volts

# Above a load that goes on for hours: NEC 210.20(A)
CONTINUOUS: Annotated[Share, Tag("a device's rating to its continuous load")] = 1.25
# The most a device may be, of table 5: 33 CFR 183.455(c)
CEILING: Annotated[Share, Tag("most a device may be rated to the ampacity")] = 1.5
# Blade and strip fuses are made for this unless marked higher: ISO 8820-3
COMMON: Annotated[Volts, Tag("usual voltage rating of a vehicle's fuse")] = 32.0


@dataclass(frozen=True)
class Family:
    """A fuse construction with its pairs of d.c. voltage [V] and interrupting rating [A]."""

    name: str
    breaks: tuple[tuple[float, float], ...]
    ratings: tuple[float, ...]
    from_memory: bool

    def interrupting(self, voltage: float) -> float | None:
        """Return the current [A] it can break on a circuit of `voltage` [V], or None."""
        fitting = [amps for rated, amps in self.breaks if at_least(rated, voltage)]
        return max(fitting) if fitting else None

    def version(self, voltage: float) -> float | None:
        """Return the voltage rating [V] to ask for where the family's lowest does not do."""
        ratings = sorted(rated for rated, _ in self.breaks)
        if at_least(ratings[0], voltage):
            return None
        return next((rated for rated in ratings if at_least(rated, voltage)), None)

    def marked_higher(self, voltage: float) -> float | None:
        """Return the voltage rating [V] to look for where the common one is too low.

        None where `voltage` [V] is within what is common, or the family has but one rating.
        """
        return self.version(voltage) if not at_most(voltage, COMMON) else None

    def named_for(self, voltage: float) -> str:
        """Return the family's name as a choice for a circuit of `voltage` [V]."""
        version = self.version(voltage)
        name = f"{self.name}, rated {version:g} V or more" if version else self.name
        return f"{name} (from memory)" if self.from_memory else name


@cache
def families() -> tuple[Family, ...]:
    """Return every family of the table."""
    rows = table("fuse_families").rows
    ratings = table("fuse_ratings").rows
    names = dict.fromkeys(row["family"] for row in rows)
    return tuple(
        Family(
            name,
            tuple(
                (float(r["dc_voltage_v"]), float(r["interrupting_a"]))
                for r in rows
                if r["family"] == name
            ),
            tuple(sorted(float(r["rating_a"]) for r in ratings if r["family"] == name)),
            any(r["confidence"] == FROM_MEMORY for r in (*rows, *ratings) if r["family"] == name),
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


def suitable(voltage: float, fault_current: float) -> tuple[Family, ...]:
    """Return the families that suit, those seen in text first, then the least oversized."""
    fitting = [family for family in families() if suits(family, voltage, fault_current)]
    return tuple(sorted(fitting, key=lambda f: (f.from_memory, f.interrupting(voltage) or 0)))


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
