"""Judgements on conductors of a van: a run that nothing guards, and ends that lead nowhere."""

from __future__ import annotations

# fmt: off
from calc.judge import Level
from calc.units.compare import at_most
from calc.van.facts_wiring import Dangling, Run, dangling, guarded
from calc.van.judging import Asked, Mend, VanRule


def _unguarded(r: Run) -> bool:
    return r.fused is False and r.guard == 0.0


def _thin(r: Run) -> bool:
    return r.fused is False and bool(r.guard) and r.ampacity is not None and not at_most(r.guard or 0.0, r.ampacity)


def _fuse(r: Run) -> list[Mend]:
    if not r.fuse_text:
        return []
    return [Mend(text=f"Fit a fuse of {r.fuse_text} at its start.", changes={
        f"{r.at}.fuse": r.fuse_text, **({f"{r.at}.fuse_family": r.family_text} if r.family_text else {}),
    })]


NO_FUSE = VanRule[Run](
    id="van.run-without-fuse", level=Level.STOP, when=_unguarded, source="practice", key="fuse",
    headline="Fit a fuse at the start of {part}: nothing stops a short on it.",
    text="Fire: a conductor without a fuse glows through its insulation when it is shorted.",
    mends=_fuse,
)
FUSE_TOO_FAR_ABOVE = VanRule[Run](
    id="van.run-behind-too-large-fuse", level=Level.STOP, when=_thin, source="practice", key="fuse",
    headline="Fit a fuse for {part}: it can carry {ampacity}, and the next fuse is {guard}.",
    text="Fire: the fuse ahead of it lets more through than this conductor can carry.",
    mends=_fuse,
)
NOWHERE = VanRule[Dangling](
    id="van.end-not-in-record", level=Level.CAUTION, source="practice",
    headline="Name the part: {part} refers to “{named}”, which is not in this record.",
)
ASKED = (Asked(guarded, (NO_FUSE, FUSE_TOO_FAR_ABOVE)), Asked(dangling, (NOWHERE,)))
