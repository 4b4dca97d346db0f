"""Whether a fuse is made for its place: its voltage, and the fault that it must interrupt there.

In scope: direct current, families by construction (`calc.electrical.fuses`). Out of scope: whether
the fuse opens at all in a given fault (`opening`), and in time (`clearing`).
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.electrical import fuses
from calc.electrical.opening import Fuse
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.si import Amperes, Number, Tag, Volts

# No source is known better than to a tenth: common practice, no source
FAULT_MARGIN: Annotated[Number, Tag("margin of an interrupting rating over the fault")] = 1.1


@dataclass(frozen=True, kw_only=True)
class InterruptingDuty:
    """A `fuse` on a circuit of at most `voltage`, where `fault_current` is the largest fault.

    `interrupting_rating` is what its family breaks at that voltage: None where its ratings are not
    known, or its voltage rating is too low. `printed` is the voltage rating that stands on the fuse
    itself, None where it was not read; `marked_voltage` must stand there, because the common
    version is made for less; None where that does, or it was read. `weakest` is the least that a
    cartridge without known ratings on direct current is asked to break on alternating current,
    None where that is not known either. `least` is the smallest rating that carries the load for
    hours, 0 where no load is asked for.
    """

    fuse: Fuse
    voltage: Volts
    fault_current: Amperes
    family: fuses.Family | None
    printed: Volts | None
    interrupting_rating: Amperes | None
    marked_voltage: Volts | None
    weakest: Amperes | None = None
    least: Amperes = 0.0

    @property
    def judged_at(self) -> Volts:
        """The voltage of the version that it is judged by."""
        return max(self.voltage, self.printed or 0.0)

    @property
    def unknown(self) -> bool:
        """Whether the family's ratings on direct current are not known."""
        return self.family is None

    @property
    def beyond_weakest(self) -> bool:
        """Whether its ratings are not known, and the fault is more than such a fuse need break."""
        return self.weakest is not None and not at_least(self.weakest, self.fault_current)

    @property
    def voltage_too_low(self) -> bool:
        """Whether the fuse, or its whole family, has no voltage rating that is high enough."""
        if self.printed is not None and not at_least(self.printed, self.voltage):
            return True
        return self.family is not None and self.interrupting_rating is None

    @property
    def cannot_interrupt(self) -> bool:
        """Whether the fault is larger than the family breaks."""
        rating = self.interrupting_rating
        return rating is not None and not at_least(rating, self.fault_current)

    @property
    def tight(self) -> bool:
        """Whether it breaks the fault with less than the usual margin, and nothing says more."""
        return self._tight_as_relied_on and not self._more_by_memory

    @property
    def _tight_as_relied_on(self) -> bool:
        if self.family is None or self.interrupting_rating is None:
            return False
        relied_on = self.family.relied_on(self.judged_at, self.fault_current)
        return relied_on is not None and within_margin(relied_on, self.fault_current)

    @property
    def _more_by_memory(self) -> bool:
        """Whether memory has so much that the margin is there: then only memory says so."""
        rating = self.interrupting_rating
        return rating is not None and at_least(rating, FAULT_MARGIN * self.fault_current)

    @property
    def from_memory(self) -> bool:
        """Whether it breaks this fault with its margin at this voltage, and only memory says so."""
        if self.family is None or self.interrupting_rating is None or self.cannot_interrupt:
            return False
        by_memory = self.family.from_memory(self.judged_at, self.fault_current)
        return by_memory or (self._tight_as_relied_on and self._more_by_memory)

    @property
    def no_standard_rating(self) -> bool:
        """Whether no fuse of this family is known with this rated current."""
        return self.family is not None and self.fuse.rating not in self.family.ratings


def interrupting_duty(
    *,
    fuse: Fuse,
    voltage: float,
    fault_current: float,
    printed: float | None = None,
    least: float = 0.0,
) -> InterruptingDuty:
    """Return whether `fuse` may stand at `voltage` [V] and break `fault_current` [A].

    `printed` is the voltage rating [V] on the fuse itself, None where it was not read. What it
    breaks is then taken for that version. A rating of `least` [A] carries
    the load. Source: the table `fuse_families`, row by row.
    """
    family = fuses.named(fuse.family) if fuse.family else None
    enough = printed is None or at_least(printed, voltage)
    judged_at = max(voltage, printed or 0.0)
    return InterruptingDuty(
        fuse=fuse,
        voltage=voltage,
        fault_current=fault_current,
        family=family,
        printed=printed,
        interrupting_rating=family.interrupting(judged_at) if family and enough else None,
        marked_voltage=family.marked_higher(voltage) if family and printed is None else None,
        weakest=weakest_rating(fuse),
        least=least,
    )


@cache
def weakest_rating(fuse: Fuse) -> float | None:
    """Return the least [A] that a `fuse` must break on alternating current, or None.

    For cartridges of which no text tells what they break on direct current; one that is rated above
    the last row is taken as that. Source: the table `fuse_weakest_ratings`, row by row.
    """
    rows = [row for row in table("fuse_weakest_ratings").rows if row["family"] == fuse.family]
    fitting = (row for row in rows if at_least(float(row["to_a"]), fuse.rating))
    row = next(fitting, rows[-1] if rows else None)
    return None if row is None else float(row["interrupting_a"])


def within_margin(rating: float, fault_current: float) -> bool:
    """Return whether a `rating` [A] breaks `fault_current` [A] with less than the usual margin."""
    return at_least(rating, fault_current) and not at_most(FAULT_MARGIN * fault_current, rating)
