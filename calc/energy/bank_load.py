"""A current out of a bank, beside what such a bank, or this very one, may give for long.

In scope: a steady current. Out of scope: starts, which last a moment.
"""

from dataclasses import dataclass

from calc.energy.battery import Chemistry, heavy_rate, most_rate
from calc.units.compare import at_most
from calc.units.si import Amperes, Coulombs, PerSecond


@dataclass(frozen=True, kw_only=True)
class Draw:
    """A current out of a bank of `capacity` as rated: its `rate` is current per capacity.

    From `heavy_rate` on the load is hard on such a bank, and none gives more than `most_rate`
    unless its data sheet says so. `most` is what its maker or management system allows for long,
    None where that is not known.
    """

    chemistry: Chemistry
    capacity: Coulombs
    current: Amperes
    rate: PerSecond
    heavy_rate: PerSecond
    most_rate: PerSecond
    most: Amperes | None = None

    @property
    def hard(self) -> bool:
        """Whether it is hard on such a bank; an LFP battery's own limit, where known, decides."""
        if at_most(self.rate, self.heavy_rate):
            return False
        return self.chemistry.lead_acid or self.most is None or not at_most(self.current, self.most)

    @property
    def beyond_any(self) -> bool:
        """Whether no such bank gives it, where nothing is stated that allows it."""
        return self.most is None and not at_most(self.rate, self.most_rate)


@dataclass(frozen=True, kw_only=True)
class Allowed:
    """A steady `current` beside the `most` that a bank's maker or management system allows."""

    current: Amperes
    most: Amperes


def draw(
    *, chemistry: Chemistry, capacity: float, current: float, most: float | None = None
) -> Draw:
    """Return a `current` [A] out of a bank of `capacity` [A·s] as rated, that allows `most` [A].

    Raises NotCovered for a chemistry that is none.
    """
    return Draw(
        chemistry=Chemistry(chemistry),
        capacity=capacity,
        current=current,
        rate=current / capacity,
        heavy_rate=heavy_rate(chemistry),
        most_rate=most_rate(chemistry),
        most=most,
    )
