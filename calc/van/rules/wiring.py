"""Judgements on conductors of a van: a run that nothing guards, and ends that lead nowhere."""

from __future__ import annotations

# fmt: off
from typing import Annotated

from calc.electrical.fuses import CEILING
from calc.judge import Level
from calc.units.compare import at_least, at_most
from calc.units.si import Number, Tag
from calc.van.facts_wiring import (
    SHEATHED_AT_MOST,
    Dangling,
    Fed,
    Limited,
    MainFuse,
    MeasuredDrop,
    Run,
    Shared,
    dangling,
    fed,
    guarded,
    limited,
    main_fuses,
    measured_drops,
    shared,
)
from calc.van.judging import Asked, Mend, VanRule

# Beyond it the copper alone does not explain a measured drop: common practice, no source
MORE_THAN_COPPER: Annotated[Number, Tag("measured drop over that of the copper which is too much")] = 1.5


def _unguarded(r: Run) -> bool:
    return r.fused is False and r.guard == 0.0


def _above(r: Run, share: float) -> bool:
    return r.fused is False and bool(r.guard) and r.ampacity is not None and not at_most(r.guard or 0.0, share * r.ampacity)


def _thin(r: Run) -> bool:
    return _above(r, CEILING)


def _rather_thin(r: Run) -> bool:
    return _above(r, 1.0) and not _thin(r)


def _fuse(r: Run) -> list[Mend]:
    if not r.fuse_text:
        return []
    return [Mend(text=f"Fit a fuse of {r.fuse_text} at its start.", changes={
        f"{r.at}.fuse": r.fuse_text, **({f"{r.at}.fuse_family": r.family_text} if r.family_text else {}),
    })]


def _nearer(m: MainFuse) -> list[Mend]:
    move = Mend(text="Move the fuse to within 15 cm of the post.", changes={f"{m.at}.unfused": "15 cm"})
    sheathe = Mend(text="Sheathe the cable from the post to its fuse.", changes={f"{m.at}.sheathed": "yes"})
    return [move, sheathe]


def _found(m: MeasuredDrop) -> list[Mend]:
    """Return the bad joint found and made anew: then the run loses what its copper does."""
    if m.worked is None or not at_most(m.worked, m.allowed):
        return []
    return [Mend(text="Find what loses it, remake that joint, and measure again.", changes={f"{m.at}.measured_drop": f"{m.worked * 1e3:.3g} mV"})]


NO_FUSE = VanRule[Run](
    id="van.run-without-fuse", level=Level.STOP, when=_unguarded, source="practice", key="fuse",
    headline="Fit a fuse at the start of {part}: nothing protects it from a short.",
    text="Fire: when shorted, a conductor without a fuse burns its insulation.",
    mends=_fuse,
)
FUSE_TOO_FAR_ABOVE = VanRule[Run](
    id="van.run-behind-too-large-fuse", level=Level.STOP, when=_thin, source="practice", key="fuse",
    headline="Fit a fuse for {part}: it can carry {ampacity}, and nothing ahead opens below {guard}.",
    text="Fire: the fuse ahead of it is larger than this conductor can carry.",
    mends=_fuse,
)
FUSE_ABOVE = VanRule[Run](  # up to one and a half times, as the worksheet of fuses has it
    id="van.run-behind-larger-fuse", level=Level.CAUTION, when=_rather_thin, source="33cfr-place", key="fuse",
    headline="Fit a fuse for {part}: it can carry {ampacity}, and nothing ahead opens below {guard}.",
    text="The fuse ahead clears a short, but not an overload of this conductor.",
    mends=_fuse,
)
FUSES_AHEAD_SMALL = VanRule[Fed](
    id="van.fuses-ahead-below-current", level=Level.STOP, when=lambda f: not at_least(f.through, f.current), source="nec-125", key="current",
    headline="Use larger fuses ahead of {part}: they pass {through}, and it carries {current}.",
    text="They open without a fault. Batteries side by side share the current, so their fuses add.",
)
FUSE_BELOW_SHARE = VanRule[Shared](
    id="van.battery-fuse-below-share", level=Level.CAUTION, when=lambda s: not at_least(s.fuse, s.share), source="practice", key="fuse",
    headline="Use a larger fuse at {part}: its share is {share} of {current}, and the fuse is {fuse}.",
    text="It opens without a fault, and the others then pass its share too. Batteries side by side share by capacity. Enlarge cable and fuse together, within the battery's limit.",
)
FUSE_FAR = VanRule[MainFuse](  # beyond what a sheath would allow it is a stop, sheathed or not
    id="van.main-fuse-far-from-bank", level=Level.CAUTION, when=lambda m: not at_most(m.unfused, m.allowed) and at_most(m.unfused, SHEATHED_AT_MOST), source="33cfr-place", key="unfused",
    headline="Move the fuse of {part} to within {allowed} of the post, or sheathe the cable up to it.",
    text="Fire: nothing stops a short ahead of the fuse. The law for boats allows 18 cm, and 1 m in a sheath or conduit.",
    mends=lambda m: _nearer(m),
)
FUSE_TOO_FAR = VanRule[MainFuse](
    id="van.main-fuse-too-far-from-bank", level=Level.STOP, when=lambda m: not at_most(m.unfused, SHEATHED_AT_MOST), source="33cfr-place", key="unfused",
    headline="Move the fuse of {part} to the post: nothing stops a short on {unfused} of cable ahead of it.",
    text="Fire: a bank gives thousands of amps into a short. The law for boats allows 18 cm, and 1 m in a sheath or conduit.",
    mends=lambda m: _nearer(m),
)
MAY_NEVER_OPEN = VanRule[Limited](
    id="van.fuse-behind-converter-idle", level=Level.NOTE, when=lambda f: f.carried, source="practice", key="rated_current",
    headline="Read the data sheet of {part}: it limits a short, and {fuses} may never open.",
    text="The conductors can carry a converter's usual short-circuit current, so they do not burn. A smaller fuse would show where the fault is.",
)
MAY_COOK = VanRule[Limited](
    id="van.fuse-behind-converter-too-large", level=Level.CAUTION, when=lambda f: not f.carried, source="practice", key="rated_current",
    headline="Use fuses below {rated} behind {part}: it limits a short, and {fuses} may never open.",
    text="Fire: a converter that limits its current feeds a short for hours, and these conductors may not carry it.",
)
LOST_ON_THE_WAY = VanRule[MeasuredDrop](
    id="van.measured-drop-over-limit", level=Level.CAUTION, source="practice", key="measured_drop",
    when=lambda m: not at_most(m.drop, m.allowed) and (m.worked is None or not at_most(m.drop, MORE_THAN_COPPER * m.worked)),
    headline="Find what loses {drop} on {part}, its joints first: {allowed} is its limit.",
    text="Fire: what the copper does not lose, a bad joint, switch or fuse holder turns into heat in one place.",
    mends=_found,
)
NOWHERE = VanRule[Dangling](
    id="van.end-not-in-record", level=Level.CAUTION, source="practice",
    headline="Name the part: {part} refers to “{named}”, which is not in this record.",
)
ASKED = (
    Asked(guarded, (NO_FUSE, FUSE_TOO_FAR_ABOVE, FUSE_ABOVE)), Asked(fed, (FUSES_AHEAD_SMALL,)), Asked(shared, (FUSE_BELOW_SHARE,)), Asked(main_fuses, (FUSE_FAR, FUSE_TOO_FAR)), Asked(limited, (MAY_NEVER_OPEN, MAY_COOK)), Asked(measured_drops, (LOST_ON_THE_WAY,)), Asked(dangling, (NOWHERE,)),
)
