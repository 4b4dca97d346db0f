"""Whether a fuse ends a short before the wire behind it is damaged.

In scope: copper heated adiabatically, a fuse known by published gates or by its maker's figures.
Out of scope: overload that lasts for minutes, but for whether the fuse is above the ampacity.
"""

from dataclasses import dataclass, replace
from typing import Annotated

from calc.electrical import fuses
from calc.electrical.ampacity import RuleSet, row_ampacity, row_and_share
from calc.electrical.interrupting import InterruptingDuty, interrupting_duty
from calc.electrical.opening import (
    CONSTANT_I2T_TIME,
    Fuse,
    Trust,
    carries,
    gates,
    i2t_tells,
    only_from_memory,
    opening,
)
from calc.electrical.short_circuit import FaultLevel, ShortCircuit
from calc.electrical.withstand import ADIABATIC_LIMIT
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration
from calc.units.si import Amperes, AmpereSquaredSeconds, Number, Seconds, Share, Tag

# Beyond 5 s, times what the wire withstands: common practice, no source
FAR_TOO_LATE: Annotated[Number, Tag("times the withstand time that are too late")] = 10.0
# From here on a fuse is well on its way to opening: common practice, no source
WELL_OVER: Annotated[Number, Tag("times its rating at which an overload fuse ends a short")] = 3.0
_BY_STRENGTH = (
    *((Trust.STANDARD, False), (Trust.DATA_SHEET, False), (Trust.DATA_SHEET, True)),
    *((Trust.MEMORY, False), (Trust.MEMORY, True)),
)


class Clears(Enumeration):
    """Whether a fuse ends every short before the wire is damaged."""

    IN_TIME = "in-time-for-certain"
    NOT_CERTAIN = "not-certain"
    FROM_MEMORY = "not-certain-from-memory"
    NO_CURVE = "no-published-curve"
    TOO_LATE = "too-late"
    TOO_MUCH = "lets-too-much-through"
    NEVER = "never"
    NO_FUSE = "no-fuse-named"


@dataclass(frozen=True, kw_only=True)
class Clearing:
    """Whether a fuse opens before the wire is damaged, the `trust` that it rests on, and the
    latest opening at the lowest fault, or None.

    `typed` tells that it rests on the maker's figures as given, `arc_left_out` that nothing but the
    tenth of a second known from memory speaks for the highest fault.
    """

    clears: Clears
    trust: Trust
    latest: Seconds | None
    typed: bool = False
    arc_left_out: bool = False


@dataclass(frozen=True, kw_only=True)
class ShortProtection:
    """A fuse at the source of a run, against the run's shorts.

    `opening_time` is the maker's latest at the lowest short, `let_through` the maker's total
    clearing I²t at the highest, None where they are not known. `i2t_counts` tells that the latter
    can be of this fault. `multiple` is the lowest short in times the fuse's rating.
    """

    duty: InterruptingDuty
    clearing: Clearing
    opening_time: Seconds | None
    let_through: AmpereSquaredSeconds | None
    i2t_counts: bool
    multiple: Number

    @property
    def fuse(self) -> Fuse:
        """The fuse itself."""
        return self.duty.fuse


class FarEnd(Enumeration):
    """What stands at the far end of a run: a load, or another source, fused there or not."""

    LOAD = "a-load"
    FUSED = "both-ends"
    UNFUSED = "this-end-only"


@dataclass(frozen=True, kw_only=True)
class RunEnds:
    """The ends of a run: where a fuse is missing (`unfused`), None where none is."""

    far: FarEnd

    @property
    def unfused(self) -> str | None:
        """Where a fuse is missing."""
        return "the far end" if self.far is FarEnd.UNFUSED else None


@dataclass(frozen=True, kw_only=True)
class FaultStudy:
    """The shorts of a run, and the fuse that is to end them (`protection`), None if none is named.

    `ampacity` is that of one conductor at 30 °C, `run_ampacity` that of all together;
    `below_table` tells that no table has so thin a wire, and its share of the first row's copper
    counts. `run` tells what stands at its far end.
    """

    short: ShortCircuit
    ampacity: Amperes
    below_table: bool
    run_ampacity: Amperes
    protection: ShortProtection | None
    run: RunEnds

    @property
    def fuse(self) -> Amperes | None:
        """The rating of its fuse."""
        return self.protection.fuse.rating if self.protection else None

    @property
    def least(self) -> Amperes:
        """The smallest rating that carries its load: no load is asked for."""
        return 0.0

    @property
    def duty(self) -> InterruptingDuty | None:
        """What its fuse must interrupt."""
        return self.protection.duty if self.protection else None

    @property
    def clears(self) -> Clears:
        """Whether its fuse ends every short in time."""
        return self.protection.clearing.clears if self.protection else Clears.NO_FUSE

    @property
    def latest(self) -> Seconds | None:
        """The latest that its fuse opens the lowest short, None where that is not known."""
        return self.protection.clearing.latest if self.protection else None

    @property
    def main_fuse_alone(self) -> bool:
        """Whether it alone is to break several batteries side by side, and cannot."""
        source = self.short.source
        several = source.strings > 1 and not source.each_fused
        return several and self.duty is not None and self.duty.cannot_interrupt

    @property
    def by_data_sheet(self) -> bool:
        """Whether it is in time by makers' data sheets, not by a standard itself."""
        found = self.protection.clearing if self.protection else None
        in_time = found is not None and found.clears is Clears.IN_TIME
        return found is not None and in_time and found.trust is not Trust.STANDARD

    @property
    def by_typed(self) -> bool:
        """Whether it is in time by the maker's figures as given."""
        found = self.protection.clearing if self.protection else None
        return found is not None and found.typed and found.clears is Clears.IN_TIME

    @property
    def arc_left_out(self) -> bool:
        """Whether nothing but memory speaks for the highest short."""
        return self.protection is not None and self.protection.clearing.arc_left_out

    @property
    def i2t_of_larger_fault(self) -> bool:
        """Whether the let-through that is given belongs to a larger fault."""
        return self.protection is not None and not self.protection.i2t_counts

    @property
    def ceiling(self) -> Share:
        """The most that a fuse may be against what its run can carry: 33 CFR 183.455(c)."""
        return fuses.CEILING

    @property
    def above_ampacity(self) -> bool:
        """Whether the fuse is rated above what one conductor can carry for hours."""
        return self.fuse is not None and not at_most(self.fuse, self.ampacity)

    @property
    def one_device(self) -> bool:
        """Whether the fuse that guards the run against overload is taken to end its shorts too.

        It is no larger than one conductor's ampacity, it can break the highest short, and the
        lowest is three times its rating or more. So BS 7671 435.1 takes it, curve or no curve.
        """
        if self.protection is None or self.above_ampacity:
            return False
        duty, multiple = self.protection.duty, self.protection.multiple
        breaks = duty.interrupting_rating is not None and not duty.cannot_interrupt
        return breaks and not duty.voltage_too_low and at_least(multiple, WELL_OVER)

    @property
    def above_ceiling(self) -> bool:
        """Whether the fuse is rated above the most that it may be against the run's ampacity."""
        return self.fuse is not None and not at_most(self.fuse, self.ceiling * self.run_ampacity)

    @property
    def class_at_source(self) -> FaultLevel | None:
        """The short at the source, where only its class tells what must break it."""
        rated = self.protection and self.protection.duty.interrupting_rating
        return self.short.near if rated is None else None


def fault_study(
    short: ShortCircuit,
    *,
    fuse: Fuse | None,
    opening_time: float | None,
    let_through: float | None,
    printed: float | None = None,
    far_end: FarEnd = FarEnd.LOAD,
) -> FaultStudy:
    """Return what a `fuse` at the source does about the shorts of a run, None where none is named.

    `opening_time` [s] is the maker's latest at the lowest short, `let_through` [A²·s] the maker's
    most at the highest; `printed` [V] the voltage rating on the fuse, where it was read. `far_end`
    tells whether another source stands there. One of several conductors in parallel is held to
    every short. Ampacity by 33 CFR 183.425 table 5 at 30 °C for the insulation's own temperature,
    as wherever a conductor is laid (`calc.electrical.cable`).
    """
    run = short.laid.run
    initial = short.withstand.insulation.initial
    row, share = row_and_share(run.conductor, run.gauge_reading, RuleSet.CFR33, initial)
    one = row_ampacity(row, initial, RuleSet.CFR33) * share
    found = FaultStudy(
        short=short,
        ampacity=one,
        below_table=share < 1,
        run_ampacity=run.parallel * one,
        protection=None,
        run=RunEnds(far=FarEnd(far_end)),
    )
    if fuse is None:
        return found
    high = short.near.current
    protection = ShortProtection(
        duty=interrupting_duty(
            fuse=fuse, voltage=short.max_voltage, fault_current=high, printed=printed
        ),
        clearing=opens_in_time(
            fuse=fuse,
            low=short.lowest.current,
            high=high,
            withstand_low=short.lowest_start.withstand,
            ampacity=one,
            let_through_limit=short.withstand.let_through,
            opening_time=opening_time,
            let_through=let_through,
        ),
        opening_time=opening_time,
        let_through=let_through,
        i2t_counts=let_through is None
        or i2t_tells(fuse=fuse, let_through=let_through, current=high),
        multiple=short.lowest.current / fuse.rating,
    )
    return replace(found, protection=protection)


def opens_in_time(
    *,
    fuse: Fuse,
    low: float,
    high: float,
    withstand_low: float,
    ampacity: float,
    let_through_limit: float,
    opening_time: float | None,
    let_through: float | None,
) -> Clearing:
    """Return whether `fuse` ends every short from `low` to `high` [A] before its wire is damaged.

    `withstand_low` [s] is how long the wire withstands the lowest short, `let_through_limit` [A²·s]
    what it withstands and `ampacity` [A] what it can carry for hours, at most;
    `opening_time` [s] the maker's latest at `low` and `let_through` [A²·s] the maker's most at
    `high`, where they are known.

    NEVER: the fuse carries the lowest for hours. An `opening_time` sooner than the gates allow is
    left aside. No fuse that may take more than 5 s is in time, for which alone the end temperatures
    are meant; beyond, it is too late if it takes ten times what the wire bears, and the wire does
    not bear that current for hours.

    The lowest fault decides: as the current grows a fuse's I²t only falls, so where it is within
    the wire's at the lowest, it is so above. From a tenth of a second down the arc counts as well:
    there the maker's let-through must show it, or a gate. Source: the adiabatic limit of
    BS 7671 434.5.2; that I²t falls is the physics of melting, common practice.
    """
    withstand_high = let_through_limit / high**2
    shown = let_through is not None and i2t_tells(fuse=fuse, let_through=let_through, current=high)
    band = opening(fuse, low)
    if opening_time is not None and opening_time < band.earliest:
        opening_time = None  # sooner than the gates allow: it belongs to another current
    if let_through is not None and let_through > let_through_limit:
        return Clearing(
            clears=Clears.TOO_MUCH,
            trust=Trust.DATA_SHEET,
            latest=_sooner(opening_time, band.latest),
        )
    if carries(fuse, low):
        return Clearing(clears=Clears.NEVER, trust=Trust.STANDARD, latest=None)
    late = band.earliest > withstand_low or (opening_time or 0.0) > withstand_low
    far_too_late = at_least(band.earliest, FAR_TOO_LATE * withstand_low) and low > ampacity
    if far_too_late or (late and at_most(withstand_low, ADIABATIC_LIMIT)):
        return Clearing(
            clears=Clears.TOO_LATE,
            trust=Trust.DATA_SHEET,
            latest=_sooner(opening_time, band.latest),
        )
    for trust, arc_left_out in _BY_STRENGTH:
        gated, gated_high = opening(fuse, low, trust).latest, opening(fuse, high, trust).latest
        latest, at_high = _sooner(opening_time, gated), _sooner(opening_time, gated_high)
        soon = latest is not None and at_most(latest, min(withstand_low, ADIABATIC_LIMIT))
        ends_high = at_high is not None and at_high <= withstand_high
        gates_end_high = gated_high is not None and gated_high <= withstand_high
        if soon and (withstand_high >= CONSTANT_I2T_TIME if arc_left_out else shown or ends_high):
            return Clearing(
                clears=Clears.FROM_MEMORY if trust is Trust.MEMORY else Clears.IN_TIME,
                trust=trust,
                latest=latest,
                typed=latest != gated or not (arc_left_out or gates_end_high),
                arc_left_out=arc_left_out,
            )
    latest = _sooner(opening_time, opening(fuse, low).latest)
    if latest is None and not gates(fuse):
        return Clearing(clears=Clears.NO_CURVE, trust=Trust.DATA_SHEET, latest=None)
    remembered = latest is None and only_from_memory(fuse)
    return Clearing(
        clears=Clears.FROM_MEMORY if remembered else Clears.NOT_CERTAIN,
        trust=Trust.MEMORY if remembered else Trust.DATA_SHEET,
        latest=opening(fuse, low, Trust.MEMORY).latest if remembered else latest,
    )


def _sooner(one: float | None, other: float | None) -> float | None:
    return min((time for time in (one, other) if time is not None), default=None)
