"""Which conductor a run needs: thick enough for the drop, for the heat, and for a fuse to fit.

A fuse stands between the load, with a margin, and what the wire bears; so the wire must bear the
load with that margin, and a standard rating must lie between the two.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache

from calc.electrical import fuses
from calc.electrical.ampacity import NEC, RuleSet, Surroundings, bears
from calc.electrical.cable import Cable, cable
from calc.electrical.conductors import (
    SAE,
    Conductor,
    Finish,
    GaugeReading,
    Series,
    Strands,
    conductor,
    conductors,
    resistance_per_length,
)
from calc.electrical.drop import thinnest_within
from calc.electrical.fuses import rating_between as rating_between
from calc.units.compare import at_least, at_most
from calc.units.covered import NotCovered

THINNEST = {"AWG": "18 AWG", "mm2": "0.75 mm2"}  # thinner ones are for signals
THICKEST = "4/0 AWG"  # of 33 CFR 183.425, table 5
THINNEST_PARALLEL = "1/0 AWG"  # NEC 310.10: sizes that may be joined in parallel


@dataclass(frozen=True)
class Size:
    """A size at work: its resistance [ohm/m], and what it bears where the rule set has a row."""

    name: str
    per_length: float
    bears: Cable | None

    @property
    def largest_fuse(self) -> float:
        """Return the most [A] a fuse on it may be rated; nought where there is no figure."""
        return self.bears.largest_fuse if self.bears else 0.0


@dataclass(frozen=True)
class Chosen:
    """The thinnest size for the drop alone, for the heat alone, and for both with a fuse [A].

    `larger` is the thicker of the first two, `size` what the run needs in the end; each is None
    where no size does.
    """

    for_drop: Size | None
    for_heat: Size | None
    larger: Size | None
    size: Size | None
    fuse: float | None


@cache
def offered(
    series: Series, gauge_reading: GaugeReading, thinnest: str = ""
) -> tuple[Conductor, ...]:
    """Return the sizes of a `series` that a run is made of, thinnest first.

    From 18 AWG or 0.75 mm² up, or from `thinnest` where that is thinner; sizes without a published
    SAE area are left out where gauges are read as SAE.
    """
    first = conductor(THINNEST[series]).area
    if thinnest:
        first = min(first, conductor(thinnest).area)
    return tuple(
        one
        for one in conductors()
        if one.series == series
        and one.area >= first
        and not (series == "AWG" and gauge_reading == SAE and one.sae_area is None)
    )


@lru_cache(32)
def sizes(
    *,
    series: Series,
    parallel: int,
    temperature: float,
    finish: Finish,
    strands: Strands,
    gauge_reading: GaugeReading,
    insulation: float,
    surroundings: Surroundings,
    bundled: int,
    ambient: float,
    voltage: float,
    rule_set: RuleSet,
) -> tuple[Size, ...]:
    """Return every size of the series under these conditions, thinnest first.

    `temperature` [°C] is that of the copper. NEC joins only 1/0 AWG and thicker in `parallel`.
    Raises NotCovered where the rule set has no figure for any size.
    """
    found = []
    for one in offered(series, gauge_reading):
        if rule_set == NEC and parallel > 1 and one.area < conductor(THINNEST_PARALLEL).area:
            continue
        per_length = resistance_per_length(
            one.name, temperature, finish=finish, strands=strands, gauge_reading=gauge_reading
        )
        try:
            bears = cable(
                conductor=one.name,
                insulation=insulation,
                surroundings=surroundings,
                bundled=bundled,
                ambient=ambient,
                max_voltage=voltage,
                rule_set=rule_set,
                gauge_reading=gauge_reading,
            )
        except NotCovered as gap:
            if gap.parameter != "conductor":
                raise
            bears = None
        found.append(Size(one.name, per_length, bears))
    return tuple(found)


def choose(
    *,
    among: tuple[Size, ...],
    current: float,
    length: float,
    allowed: float,
    need: float,
    ratings: Sequence[float],
) -> Chosen:
    """Return the size for a run, from `among`, thinnest first.

    `current` [A] flows in each conductor over `length` [m] one way and may lose `allowed` [V]; each
    must bear `need` [A] and take one of the standard fuse `ratings` [A]. Without any rating at all
    the fuse is left open.
    """
    by_length = tuple((size, size.per_length) for size in among)
    for_drop = thinnest_within(by_length, length, current, allowed)
    for_heat = next((size for size in among if at_least(size.largest_fuse, need)), None)
    if for_drop is None or for_heat is None:
        return Chosen(for_drop, for_heat, None, None, None)
    start = max(among.index(for_drop), among.index(for_heat))
    for size in among[start:]:
        fuse = rating_between(ratings, need, size.largest_fuse)
        if at_least(size.largest_fuse, need) and (fuse is not None or not ratings):
            return Chosen(for_drop, for_heat, among[start], size, fuse)
    return Chosen(for_drop, for_heat, among[start], None, None)


def thickest_bears() -> float:
    """Return what the thickest cable of the table bears [A], at 105 °C."""
    return bears(THICKEST) or 0.0


def one_cable(*, current: float, highest: float) -> bool:
    """Return whether one cable can carry `current` [A] for hours behind a standard fuse.

    `highest` [V] is the bank's while it charges. Where no fuse family is rated for that, only the
    cable is asked.
    """
    rated = tuple(one for one in fuses.families() if one.interrupting(highest) is not None)
    need = fuses.CONTINUOUS * current
    if not rated:
        return at_most(need, thickest_bears())
    return fuses.standard_rating(need, thickest_bears(), rated) is not None
