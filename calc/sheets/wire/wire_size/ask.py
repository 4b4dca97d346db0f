"""A run that asks for a conductor, and the changes that would help where none does."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from calc.electrical import fuses, nec
from calc.electrical.ampacity import INSIDE, NEC, OUTSIDE, ratings
from calc.electrical.drop import longest_run
from calc.electrical.limits import USUAL_INSULATION
from calc.electrical.sizing import Chosen, Size, choose, rating_between, sizes
from calc.units.compare import at_least
from calc.units.covered import NotCovered
from calc.units.shown import DOWN, rounded

CHARGED = 14.6 / 12  # a 12 V bank of LFP is charged at 14.6 V, others in proportion
NOMINAL = (12.0, 24.0, 48.0)  # V
SHORTEST = 0.1  # m, a run worth naming
FOOT = 0.3048  # m
MOST_PARTS = 4


@dataclass(frozen=True)
class Ask:
    """A run as asked [A, m, V, share], so that it can be asked again with a change.

    `given` holds what else `calc.electrical.sizing.sizes` takes.
    """

    current: float
    length: float
    voltage: float
    limit: float
    parallel: int
    bundled: int
    given: dict[str, Any]

    @property
    def each(self) -> float:
        """Return the current [A] in each of the conductors in parallel."""
        return self.current / self.parallel

    @property
    def need(self) -> float:
        """Return what each must bear [A] for a fuse to carry the load for hours."""
        return fuses.CONTINUOUS * self.current / self.parallel

    @property
    def allowed(self) -> float:
        """Return the drop allowed [V]."""
        return self.limit * self.voltage

    @property
    def charging(self) -> float:
        """Return the highest voltage [V]: what fuses and bundles are judged by."""
        return CHARGED * self.voltage

    @property
    def together(self) -> int:
        """Return how many loaded conductors lie together, those in parallel counted too."""
        return max(self.bundled, 2 * self.parallel) if self.parallel > 1 else self.bundled

    @cached_property
    def ratings(self) -> tuple[float, ...]:
        """Return the standard fuse ratings [A] for this voltage; none where no family is rated."""
        if self.given["rule_set"] == NEC:
            return nec.standard_ratings()
        return tuple(sorted({rating for one in standard_fuses(self) for rating in one.ratings}))

    def sizes(self) -> tuple[Size, ...]:
        """Return every size of the series under the conditions. Raises NotCovered."""
        return sizes(
            **self.given, parallel=self.parallel, bundled=self.together, voltage=self.charging
        )

    def chosen(self, among: tuple[Size, ...]) -> Chosen:
        """Return the size that the run needs."""
        return choose(
            among=among,
            current=self.each,
            length=self.length,
            allowed=self.allowed,
            need=self.need,
            ratings=self.ratings,
        )


def standard_fuses(ask: Ask) -> tuple[fuses.Family, ...]:
    """Return the fuse families rated for the highest voltage, while a bank of this name charges."""
    if ask.given["rule_set"] == NEC:
        return ()
    return tuple(one for one in fuses.families() if one.interrupting(ask.charging) is not None)


def _again(ask: Ask, **change: Any) -> str | None:
    """Return the size and fuse that do with a change of what is given, or None."""
    try:
        other = replace(ask, **change)
        chosen = other.chosen(other.sizes())
    except NotCovered:
        return None
    return _with_fuse(chosen.size, chosen.fuse) if chosen.size else None


def _with_fuse(size: Size, fuse: float | None) -> str:
    return f"{size.name}{f' with a fuse of {fuse:g} A' if fuse is not None else ''}"


def remedies(ask: Ask, among: tuple[Size, ...]) -> tuple[str, ...]:
    """Return the changes that let a size of the series do, each worked by asking again."""
    found = tuple(filter(None, (next(filter(None, kind), None) for kind in _kinds(ask, among))))
    return found or ("no single change does: shorten the run, split the load and raise the system voltage together",)


def _kinds(ask: Ask, among: tuple[Size, ...]) -> Iterator[Iterator[str | None]]:
    """Yield each kind of change as the tries of that kind, smallest change first."""
    yield _shorter(ask, among)
    yield (
        f"{volts:g} V instead: the same power is {amps:.3g} A, {does}"
        for volts in NOMINAL
        if volts > ask.voltage
        for amps in [ask.current * ask.voltage / volts]
        if (does := _again(ask, voltage=volts, current=amps))
    )
    yield (
        f"{n} conductors in parallel for plus and {n} for minus, each {does}"
        for n in range(ask.parallel + 1, MOST_PARTS + 1)
        if (does := _again(ask, parallel=n))
    )
    yield (
        f"insulation rated {rating:g} °C: {does}"
        for rating in ratings(ask.given["rule_set"])
        if ask.given["insulation"] < rating <= USUAL_INSULATION
        and (does := _again(ask, given={**ask.given, "insulation": rating}))
    )
    yield (
        f"no more than 2 loaded conductors together: {does}"
        for _ in range(ask.together > 2 and ask.parallel == 1)
        if (does := _again(ask, bundled=2))
    )
    yield (
        f"a route outside the engine space: {does}"
        for _ in range(ask.given["surroundings"] == INSIDE)
        if (does := _again(ask, given={**ask.given, "surroundings": OUTSIDE}))
    )
    yield (
        f"{n} separate runs, each for a load of {ask.current / n:.3g} A: {does}"
        for n in range(2, MOST_PARTS + 1)
        if (does := _again(ask, current=ask.current / n))
    )


def _shorter(ask: Ask, among: tuple[Size, ...]) -> Iterator[str]:
    """Yield the longest run of the thickest size that bears the load and has a fuse."""
    for size in reversed(among):
        fuse = rating_between(ask.ratings, ask.need, size.largest_fuse)
        length = longest_run(ask.each, size.per_length, ask.allowed)
        if at_least(size.largest_fuse, ask.need) and (fuse or not ask.ratings):
            if SHORTEST < length < ask.length:
                metres = rounded(length, 3, DOWN)
                feet = rounded(float(metres) / FOOT, 3, DOWN)
                yield f"at most {metres} m ({feet} ft) one way: {_with_fuse(size, fuse)}"
            return
