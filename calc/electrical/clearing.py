"""Whether a fuse ends a short before the wire behind it is damaged.

In scope: copper heated adiabatically, a fuse known by published gates or by its maker's figures.
Out of scope: overload that lasts for minutes: that is a matter of `calc.electrical.ampacity`.
"""

from dataclasses import dataclass

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
from calc.electrical.short_circuit import ADIABATIC_LIMIT
from calc.units.compare import at_least, at_most

IN_TIME, TOO_LATE, TOO_MUCH = "in time for certain", "too late", "lets too much through"
NO_CURVE, NOT_CERTAIN = "no published curve", "not certain"
MEMORY = "not certain (from memory)"
NEVER = "never, it carries the lowest short"
_BY_STRENGTH = (
    *((Trust.STANDARD, False), (Trust.DATA_SHEET, False), (Trust.DATA_SHEET, True)),
    *((Trust.MEMORY, False), (Trust.MEMORY, True)),
)
FAR_TOO_LATE = 10  # times what the wire bears, beyond 5 s; common practice, no source


@dataclass(frozen=True)
class Clearing:
    """Whether a fuse opens before the wire is damaged, in words, the `trust` that it rests on, and
    the latest opening [s] at the lowest fault, or None.

    `typed` tells that it rests on the maker's figures as given, `arc_left_out` that nothing but the
    tenth of a second known from memory speaks for the highest fault.
    """

    words: str
    trust: Trust
    latest: float | None
    typed: bool = False
    arc_left_out: bool = False


def opens_in_time(
    *,
    fuse: Fuse,
    low: float,
    high: float,
    bears_low: float,
    ampacity: float,
    energy: float,
    opening_time: float | None,
    let_through: float | None,
) -> Clearing:
    """Return whether `fuse` ends every short from `low` to `high` [A] before its wire is damaged.

    `bears_low` [s] is how long the wire bears the lowest short, `energy` [A²·s] what it bears and
    `ampacity` [A] what it bears for hours, at most;
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
    bears_high = energy / high**2
    shown = let_through is not None and i2t_tells(fuse=fuse, let_through=let_through, current=high)
    band = opening(fuse, low)
    if opening_time is not None and opening_time < band.earliest:
        opening_time = None  # sooner than the gates allow: it belongs to another current
    if let_through is not None and let_through > energy:
        return Clearing(TOO_MUCH, Trust.DATA_SHEET, _sooner(opening_time, band.latest))
    if carries(fuse, low):
        return Clearing(NEVER, Trust.STANDARD, None)
    late = band.earliest > bears_low or (opening_time or 0.0) > bears_low
    far_too_late = at_least(band.earliest, FAR_TOO_LATE * bears_low) and low > ampacity
    if far_too_late or (late and at_most(bears_low, ADIABATIC_LIMIT)):
        return Clearing(TOO_LATE, Trust.DATA_SHEET, _sooner(opening_time, band.latest))
    for trust, arc_left_out in _BY_STRENGTH:
        gated, gated_high = opening(fuse, low, trust).latest, opening(fuse, high, trust).latest
        latest, at_high = _sooner(opening_time, gated), _sooner(opening_time, gated_high)
        soon = latest is not None and at_most(latest, min(bears_low, ADIABATIC_LIMIT))
        ends_high = at_high is not None and at_high <= bears_high
        gates_end_high = gated_high is not None and gated_high <= bears_high
        if soon and (bears_high >= CONSTANT_I2T_TIME if arc_left_out else shown or ends_high):
            return Clearing(
                MEMORY if trust == Trust.MEMORY else IN_TIME,
                trust,
                latest,
                typed=latest != gated or not (arc_left_out or gates_end_high),
                arc_left_out=arc_left_out,
            )
    latest = _sooner(opening_time, opening(fuse, low).latest)
    if latest is None and not gates(fuse):
        return Clearing(NO_CURVE, Trust.DATA_SHEET, None)
    remembered = latest is None and only_from_memory(fuse)
    return Clearing(
        MEMORY if remembered else NOT_CERTAIN,
        Trust.MEMORY if remembered else Trust.DATA_SHEET,
        opening(fuse, low, Trust.MEMORY).latest if remembered else latest,
    )


def _sooner(one: float | None, other: float | None) -> float | None:
    return min((time for time in (one, other) if time is not None), default=None)
