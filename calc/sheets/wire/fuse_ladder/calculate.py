"""The sum behind fuse-ladder: two fuses in one fault, and which of them opens first."""

from dataclasses import dataclass
from typing import Any

from calc.electrical import fuses
from calc.electrical import selectivity as ladder
from calc.electrical.selectivity import CERTAIN, NO_CURVE, NOT_CERTAIN, STANDARD, WILL_NOT, Fuse
from calc.units.compare import at_least, at_most
from calc.units.kinds import CURRENT, DURATION
from calc.units.shown import DOWN, UP, quantity_text

UNKNOWN = "not known"
PROVED, NOT_PROVED, LARGER, NOT_GIVEN = (
    "proves it",
    "does not prove it",
    "belongs to a larger fault",
    "not given",
)


@dataclass(frozen=True, kw_only=True)
class FuseLadder:
    """Which fuse opens first, in words, with the times [s] at the current [A] that decides.

    An earliest or latest time is None where no gate tells it. `certain_from` and `certain_to` are
    the fault currents [A] between which the gates make it certain, or None. `version` is the
    highest voltage [V] that must stand on a fuse here because the common one is made for less.
    """

    order: str
    how: str
    downstream_time: str
    upstream_time: str
    downstream_percent: float
    upstream_percent: float
    certain_from: float | None
    certain_to: float | None
    let_through: str
    settle: tuple[str, ...]
    lowest: float
    decisive: float
    upstream_current: float
    downstream_earliest: float | None
    downstream_latest: float | None
    upstream_earliest: float | None
    upstream_latest: float | None
    downstream_breaks: float | None
    upstream_breaks: float | None
    carried: bool
    overloaded: bool
    loaded: bool
    version: float | None
    no_downstream_curve: bool
    no_upstream_curve: bool
    by_standard: bool
    by_energy: bool
    from_memory: bool
    downstream_low_volts: bool
    upstream_low_volts: bool
    downstream_cannot: bool
    upstream_cannot: bool
    unrated: bool
    breaks_from_memory: bool
    not_made: bool
    falling: bool


def run(
    *, downstream: float, downstream_family: str, upstream: float, upstream_family: str, fault_current: float,
    fault_low: float | None, voltage: float, other_load: float, downstream_clearing: float | None,
    upstream_melting: float | None,
) -> FuseLadder:
    """Return which of two fuses in series opens first in a fault beyond both."""
    down, up = Fuse(downstream_family, downstream), Fuse(upstream_family, upstream)
    lowest = min(fault_low, fault_current) if fault_low is not None else fault_current
    order = ladder.first_to_open(downstream=down, upstream=up, low=lowest, high=fault_current, besides=other_load)
    proof = (
        ladder.by_energy(downstream=down, clearing=downstream_clearing, melting=upstream_melting, current=fault_current, besides=other_load)
        if downstream_clearing is not None and upstream_melting is not None
        else None
    )
    by_energy = proof is True and at_least(lowest, fault_current) and order.words not in (CERTAIN, WILL_NOT)
    words = CERTAIN if by_energy else order.words
    decisive = fault_current if by_energy else order.current
    from_memory = words == ladder.MEMORY
    trust = ladder.REMEMBERED if from_memory else ladder.SEEN
    bands = down.band(decisive, trust), up.band(decisive + other_load, trust)
    span = ladder.certain_between(downstream=down, upstream=up, besides=other_load)
    return FuseLadder(
        order=words,
        how=_how(bands, from_memory) if not by_energy else "the makers' I²t proves it",
        downstream_time=_time(bands[0], from_memory),
        upstream_time=_time(bands[1], from_memory),
        downstream_percent=decisive / downstream,
        upstream_percent=(decisive + other_load) / upstream,
        certain_from=span[0] if span else None,
        certain_to=span[1] if span else None,
        let_through=_said(downstream_clearing, upstream_melting, proof),
        settle=() if words == CERTAIN else _settle(span, words, fault_current),
        lowest=lowest,
        decisive=decisive,
        upstream_current=decisive + other_load,
        downstream_earliest=bands[0].earliest or None,
        downstream_latest=bands[0].latest,
        upstream_earliest=bands[1].earliest or None,
        upstream_latest=bands[1].latest,
        carried=ladder.carries(down, lowest),
        overloaded=not at_most(other_load, upstream),
        loaded=other_load > 0,
        no_downstream_curve=not ladder.gates(down),
        no_upstream_curve=not ladder.gates(up),
        by_standard=by_energy or order.trust == STANDARD,
        by_energy=by_energy,
        from_memory=from_memory,
        falling=not at_most(downstream, upstream),
        **_ratings(down, up, voltage, fault_current),
    )


def _ratings(down: Fuse, up: Fuse, voltage: float, fault: float) -> dict[str, Any]:
    """Return whether each family may stand at `voltage` [V] and break `fault` [A], by name."""
    families = fuses.named(down.family), fuses.named(up.family)
    breaks = [family.interrupting(voltage) if family else None for family in families]
    low = [family is not None and rated is None for family, rated in zip(families, breaks, strict=True)]
    cannot = [rated is not None and not at_least(rated, fault) for rated in breaks]
    versions = [family.marked_higher(voltage) for family in families if family]
    made = [
        family is None or fuse.rating in family.ratings
        for family, fuse in zip(families, (down, up), strict=True)
    ]
    return {
        "downstream_breaks": breaks[0],
        "upstream_breaks": breaks[1],
        "downstream_low_volts": low[0],
        "upstream_low_volts": low[1],
        "downstream_cannot": cannot[0],
        "upstream_cannot": cannot[1],
        "version": max((one for one in versions if one is not None), default=None),
        "unrated": None in families,
        "breaks_from_memory": any(family is not None and family.from_memory for family in families),
        "not_made": not all(made),
    }


def _time(band: ladder.Band, from_memory: bool) -> str:
    """Return when a fuse opens, as a reader sees it."""
    early = quantity_text(band.earliest, DURATION, way=DOWN) if band.earliest else ""
    late = quantity_text(band.latest, DURATION, way=UP) if band.latest is not None else ""
    mark = " (from memory)" if from_memory and (early or late) else ""
    if early and late:
        return f"{early} to {late}{mark}"
    if late:
        return f"at most {late}{mark}"
    return f"at least {early}{mark}" if early else UNKNOWN


def _how(bands: tuple[ladder.Band, ladder.Band], from_memory: bool) -> str:
    down, up = (_time(band, from_memory) for band in bands)
    return f"downstream {down}, upstream {up}"


def _said(clearing: float | None, melting: float | None, proof: bool | None) -> str:
    if clearing is None or melting is None:
        return NOT_GIVEN
    return {True: PROVED, False: NOT_PROVED, None: LARGER}[proof]


def _settle(span: tuple[float, float] | None, words: str, fault: float) -> tuple[str, ...]:
    """Return what would make it certain."""
    said = [
        f"from the makers, at {quantity_text(fault, CURRENT)}: the total clearing I²t of the downstream fuse, "
        "below the least melting I²t of the upstream one (with other load on that, below by the square of both currents' ratio)"
    ]
    if span and words == NOT_CERTAIN:
        low, high = quantity_text(span[0], CURRENT, way=UP), quantity_text(span[1], CURRENT, way=DOWN)
        said.append(f"a fault between {low} and {high}: there the published time limits do make it certain")
    if words in (NO_CURVE, ladder.MEMORY):
        said.append("the makers' curves: the slow edge of the downstream fuse left of the fast edge of the upstream one")
    if words == WILL_NOT:
        said.append("a larger or slower fuse upstream, if the wire behind it bears that, or a smaller or faster one downstream")
    return tuple(said)
