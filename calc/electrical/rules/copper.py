"""Judgements on the copper that is laid: how its size is read, and how conductors share."""

# fmt: off
from typing import Protocol

from calc.electrical.conductors import Copper, GaugeReading, Strands, conductor, series_of
from calc.electrical.run import THINNEST_PARALLEL, RunResult
from calc.judge import Change, Level, Rule


class HasGaugeReading(Protocol):
    """What says how a gauge is read, and whether its sizes are metric."""

    @property
    def metric(self) -> bool: ...
    @property
    def gauge_reading(self) -> GaugeReading: ...


class HasStrands(Protocol):
    """What says which strands it has, and whether its sizes are metric."""

    @property
    def metric(self) -> bool: ...
    @property
    def strands(self) -> Strands: ...


class HasParallel(Protocol):
    """What is laid side by side."""

    @property
    def parallel(self) -> float: ...


def thick_enough_to_join(laid: RunResult) -> Change | None:
    """Return the thinnest size of the series that NEC joins in parallel."""
    least = conductor(THINNEST_PARALLEL).area
    thick = [one.name for one in series_of(laid.run.conductor) if one.area >= least]
    if laid.copper.as_sae:
        thick = [name for name in thick if (conductor(name).sae_area or 0.0) >= least]
    return Change({"conductor": thick[0]}) if thick else None


SHARE_EVENLY = Rule[HasParallel](
    id="run.parallel-must-be-alike", level=Level.ADVICE, when=lambda r: r.parallel > 1, source="nec-parallel",
    text="Fuse each parallel conductor, from three up at both ends: with one loose joint, the others carry all the current. Length, size, lugs and crimps must match.",
)
FUSE_BOTH_ENDS_OF_EACH = Rule[HasParallel](
    id="run.three-in-parallel", level=Level.CAUTION, when=lambda r: r.parallel > 2, source="nec-parallel",
    headline="Fit a fuse at both ends of each of the {parallel}, or use one or two larger conductors.",
    text="Fire: of three or more in parallel a short in one is fed from its far end through the others, past its fuse at the source.",
)
TOO_THIN_TO_JOIN = Rule[RunResult](
    id="run.too-thin-to-join", level=Level.ADVICE, when=lambda r: r.too_thin_to_join, source="nec-parallel",
    text="Prefer one larger conductor: NEC allows parallel ones from 1/0 AWG (53 mm²), and smaller only where each alone can carry the whole load and is fused for it.",
    mend=thick_enough_to_join,
)
MAY_BE_SAE = Rule[Copper](
    id="copper.may-be-sae", level=Level.NOTE, when=lambda c: not c.as_sae and c.sae_share is not None, source="sae-area",
    text="{conductor} means the AWG size, as in the wiring codes. Vehicle cable made to the SAE size of the same number has {sae_share} less copper, more drop and less ampacity: set “gauge sizes” to SAE if the reel says so.",
)
READ_AS_SAE = Rule[Copper](
    id="copper.read-as-sae", level=Level.NOTE, when=lambda c: c.as_sae, source="sae-area",
    text="Read as an SAE size, {conductor} holds {area} of copper, {sae_share} less than AWG. Its ampacity is that of the largest AWG row with no more copper.",
)
GAUGE_READING_IDLE = Rule[HasGaugeReading](
    id="copper.gauge-reading-idle", level=Level.NOTE, source="iec-60228",
    when=lambda c: c.metric and c.gauge_reading is GaugeReading.SAE,
    text="A metric size is named by its own copper, so AWG or SAE makes no difference to it.",
)
STRANDS_IDLE = Rule[HasStrands](
    id="copper.strands-idle", level=Level.NOTE, when=lambda r: not r.metric and r.strands is Strands.STRANDED, source="nec-8",
    text="The class of strands applies to metric sizes only; the gauge table has one stranding.",
)
