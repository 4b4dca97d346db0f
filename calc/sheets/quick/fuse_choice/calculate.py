"""fuse-choice from its fields: the cable as laid, its fuse, and what would let one fit."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from calc.electrical import fuses
from calc.electrical.ampacity import RuleSet, Surroundings, insulation_rating
from calc.electrical.cable import Cable, cable
from calc.electrical.conductors import GaugeReading
from calc.electrical.fuse_order import SMALL_BLADES
from calc.electrical.fuse_site import FeedLoad, FuseSite, Place, fuse_site
from calc.electrical.interrupting import FAULT_MARGIN
from calc.electrical.opening import Fuse
from calc.electrical.protection import FittedFuse, Protection, remedies, select_fuse
from calc.judge import Change
from calc.judge.remedies import Remedy
from calc.sheets.parts.fuse_families import NOT_NAMED
from calc.units.covered import NotCovered
from calc.units.si import Amperes, Metres


@dataclass(frozen=True, kw_only=True)
class FuseChoice:
    """The fuse for a wire and a continuous load at its `site`; `remedies` are for where none fits.

    `feed_load` is that of the feed behind a main fuse, laid as the wire is.
    """

    site: FuseSite
    protection: Protection
    feed_load: FeedLoad | None
    remedies: tuple[Remedy[Change, Protection], ...]

    @property
    def blade_breaks(self) -> Amperes | None:
        """What a blade breaks at this voltage, where one of the rating chosen would do but for that."""
        p = self.protection
        needed = [one for one in map(fuses.named, SMALL_BLADES) if one is not None]
        made = [
            breaks
            for one in needed
            if (breaks := one.published(p.max_voltage)) is not None
            and fuses.rating_between(one.ratings, p.lowest, p.highest) is not None
        ]
        fits = any(one in p.suitable for one in needed)
        return max(made, default=None) if p.fault_current is not None and not fits else None

    @property
    def more_feed(self) -> Metres | None:
        """How much longer the feed must be for a blade to break the short with room."""
        breaks = self.blade_breaks
        return None if breaks is None else self.site.more_feed(breaks / FAULT_MARGIN)


def calculate(
    *,
    current: float,
    conductor: str,
    insulation: str,
    voltage: float,
    fuse_place: Place,
    fault_current: float,
    feed_conductor: str,
    feed_length: float,
    allowed: float | None,
    fitted: float | None,
    fitted_family: str,
    fitted_voltage: float | None,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    rule_set: RuleSet,
    gauge_reading: GaugeReading,
    terminals: float | None,
) -> FuseChoice:
    """Return the fuse for a wire and a continuous `current` [A], or the reason there is none.

    `insulation` by its name, `ambient` [°C], `voltage` [V] the highest on the circuit,
    `fault_current` [A] that of the bank; `feed_length` [m] leads to a fuse behind a main fuse.
    `allowed` [A] is the most by the load's label, `fitted` [A] a fuse that is there,
    `terminals` [°C] the rating of the weakest. Raises NotCovered where the rule set has no figure.
    """
    lies = partial(
        cable,
        insulation=insulation_rating(insulation),
        surroundings=surroundings,
        bundled=bundled,
        ambient=ambient,
        max_voltage=voltage,
        rule_set=rule_set,
        gauge_reading=gauge_reading,
    )
    site = fuse_site(
        place=fuse_place,
        voltage=voltage,
        bank_current=fault_current,
        conductor=feed_conductor,
        length=feed_length,
    )
    there = None
    if fitted is not None:
        family = None if fitted_family == NOT_NAMED else fitted_family
        there = FittedFuse(fuse=Fuse(family, fitted), printed=fitted_voltage)
    found = select_fuse(
        cable=lies(conductor=conductor),
        current=current,
        fault_current=site.fault_current,
        allowed=allowed,
        fitted=there,
        terminals=terminals,
    )
    return FuseChoice(
        site=site,
        protection=found,
        feed_load=FeedLoad(
            conductor=feed_conductor, ampacity=_ampacity(lies, feed_conductor), current=current
        )
        if site.behind_main
        else None,
        remedies=() if found.chosen is not None else remedies(found),
    )


def _ampacity(lies: Callable[..., Cable], conductor: str) -> Amperes | None:
    """Return what a conductor carries as it `lies`, None where no table has it."""
    try:
        return lies(conductor=conductor).ampacity
    except NotCovered:
        return None
