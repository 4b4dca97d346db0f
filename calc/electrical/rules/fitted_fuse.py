"""Judgements on a fuse that is there already: its load, and what the load's own label allows.

What it is to its wire is judged in `clearing`, what it must break in `interrupting`.
"""

# fmt: off
from calc.electrical.protection import Protection
from calc.judge import Change, Level, Rule


def _chosen(p: Protection) -> Change | None:
    """Return the fuse that would be chosen."""
    return Change({"fuse": p.chosen}) if p.chosen is not None else None


BELOW_LOAD = Rule[Protection](
    id="fuse.below-load", level=Level.STOP, when=lambda p: p.fitted is not None and p.below_load, source="nec-125",
    headline="The {fuse} fuse opens without a fault: the load draws {current}. Use at least {lowest}.",
    mend=_chosen,
)
LOADED_HARD = Rule[Protection](
    id="fuse.loaded-hard", level=Level.CAUTION, when=lambda p: p.fitted is not None and p.loaded_hard, source="nec-125",
    headline="Keep the load to {lasting_load}, or use a larger fuse: {current} for hours ages this one of {fuse}.",
    mend=_chosen,
)
ABOVE_LABEL = Rule[Protection](
    id="fuse.above-label", level=Level.CAUTION, when=lambda p: p.fitted is not None and p.above_label, source="practice",
    headline="Use {allowed} or less: the appliance's label does not allow {fuse}, whatever the wire can carry.",
    mend=_chosen,
)
LABEL_DECIDES = Rule[Protection](
    id="fuse.label-decides", level=Level.ADVICE, when=lambda p: p.label_decides, source="practice",
    text="The appliance's own label decides: at most {allowed}, though the wire would allow {ampacity}.",
)
RESETS = Rule[Protection](
    id="fuse.breaker-resets", level=Level.NOTE, source="33cfr-place",
    when=lambda p: p.fitted is None and any(family.resets for family in p.families),
    text="If you fit a breaker, use a manual-reset, trip-free one. One that resets itself feeds the fault again and again.",
)
LABEL_TOO_SMALL = Rule[Protection](
    id="fuse.label-too-small", level=Level.STOP, when=lambda p: p.label_too_small and p.wide_enough, source="nec-125",
    headline="Ask the appliance's maker: {current} for hours needs a fuse of {lowest}, and the label allows {allowed}.",
)
RULES = (BELOW_LOAD, LOADED_HARD, ABOVE_LABEL)
