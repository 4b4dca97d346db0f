"""The judgement on a run with a source at each end, whichever sheet asks."""

# fmt: off
from typing import Protocol

from calc.judge import Change, Level, Rule


class Ends(Protocol):
    """The ends of a run: `unfused` says where a fuse is missing, None where none is."""

    @property
    def unfused(self) -> str | None: ...


class BetweenSources(Protocol):
    """What has a run with a source at each end."""

    @property
    def run(self) -> Ends: ...


FUSED_AT_ONE_END = Rule[BetweenSources](
    id="run.fused-at-one-end", level=Level.STOP, when=lambda b: b.run.unfused is not None, source="33cfr-place",
    headline="Fit a fuse at {run.unfused}: a short is fed from there too, and nothing stops it.",
    text="Fire: a conductor with a battery at each end needs a fuse at each end. Without it, up to {fault_current} flows until the cable burns through.",
    mend=lambda _: Change({"fused": "both-ends"}),
)
