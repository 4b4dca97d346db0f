"""The fuse for a conductor: between what the load needs and what the conductor can carry.

One function chooses a fuse, whoever asks. The warmth of copper at a load is our estimate, from the
square of the current.
"""

from dataclasses import dataclass
from functools import lru_cache

from calc.electrical import fuses, nec
from calc.electrical.cable import Cable
from calc.electrical.fuses import Family
from calc.units.compare import at_least
from calc.units.si import Amperes, Celsius, Kelvins, Number, Volts


@dataclass(frozen=True, kw_only=True)
class Warmth:
    """How much warmer than the air copper is at a current (`rise`), and how `warm` it is so."""

    rise: Kelvins
    warm: Celsius


@dataclass(frozen=True, kw_only=True)
class Protection:
    """The fuse on a `cable` that carries `current` for hours, None where none fits.

    `fault_current` is what a short can drive through it, None where that is left open. `suitable`
    are the families rated for the voltage and that fault, `ratings` the standard ratings that were
    to choose from. The fuse stands from `lowest` to the most that the cable allows.
    """

    cable: Cable
    current: Amperes
    fault_current: Amperes | None
    lowest: Amperes
    suitable: tuple[Family, ...]
    ratings: tuple[float, ...]
    fuse: Amperes | None

    @property
    def margin(self) -> Number:
        """What a fuse must be rated above a load that goes on for hours."""
        return fuses.CONTINUOUS

    @property
    def highest(self) -> Amperes:
        """The most that the fuse may be rated."""
        return self.cable.largest_fuse

    @property
    def max_voltage(self) -> Volts:
        """The highest voltage that the fuse must break."""
        return self.cable.max_voltage

    @property
    def window_open(self) -> bool:
        """Whether anything lies between what the load needs and what the cable allows."""
        return at_least(self.highest, self.lowest)

    @property
    def families(self) -> tuple[Family, ...]:
        """The suitable families that make the fuse, best first."""
        return tuple(one for one in self.suitable if self.fuse in one.ratings)

    @property
    def warmth(self) -> Warmth | None:
        """The copper's warmth at this current; None without a fuse, for then it must not flow."""
        return copper_warmth(self.cable, self.current) if self.fuse is not None else None


def copper_warmth(cable: Cable, current: float) -> Warmth:
    """Return how warm the copper of a `cable` is at `current` [A].

    Heat goes with the square of the current; at its ampacity the copper is as hot as its
    insulation may be. Common practice, no source.
    """
    rise = (cable.insulation - cable.air) * (current / cable.ampacity) ** 2
    return Warmth(rise=rise, warm=cable.air + rise)


@lru_cache(64)
def _choices(
    by_nec: bool, voltage: float, fault_current: float | None
) -> tuple[tuple[Family, ...], tuple[float, ...]]:
    """Return the families that suit, and the standard ratings to choose from."""
    if fault_current is not None:
        suitable = fuses.suitable(voltage, fault_current)
    elif by_nec:
        return (), nec.standard_ratings()
    else:
        suitable = fuses.rated_for(voltage)
    return suitable, tuple(sorted({rating for one in suitable for rating in one.ratings}))


def select_fuse(*, cable: Cable, current: float, fault_current: float | None) -> Protection:
    """Return the smallest fuse that carries `current` [A] for hours and protects the `cable`.

    With a `fault_current` [A] it is of a family that can break it; without, of any family rated for
    the highest voltage, or under NEC of any standard rating of 240.6(A). NEC 210.20(A) for the
    margin above the load.
    """
    suitable, ratings = _choices(cable.by_nec, cable.max_voltage, fault_current)
    lowest = fuses.CONTINUOUS * current
    return Protection(
        cable=cable,
        current=current,
        fault_current=fault_current,
        lowest=lowest,
        suitable=suitable,
        ratings=ratings,
        fuse=fuses.rating_between(ratings, lowest, cable.largest_fuse),
    )
