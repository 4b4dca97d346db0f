"""Judgements on fuse blocks: one fault at the block is told once, there, and mended there."""

from __future__ import annotations

# fmt: off
from collections.abc import Iterator

from calc.judge import Level
from calc.van.facts_block import Block, blocks
from calc.van.judging import Asked, Mend, VanRule

_OF_EACH = frozenset({
    "fuse.cannot-interrupt", "fuse.interrupting-rating-tight", "fuse.in-time-not-certain",
})


def _mends(b: Block) -> Iterator[Mend]:
    """Yield a feed that limits the short, and fuses that break it."""
    if b.feed_place:
        yield Mend(text=f"Make {b.feed} {b.feed_text} long: its resistance limits the short-circuit current.", changes={b.feed_place: b.feed_text})
    if b.family:
        yield Mend(text=f"Change the fuses there to {b.family}, rated as now.", changes={f"{one}.fuse_family": b.family for one in b.places})


CANNOT_INTERRUPT = VanRule[Block](
    id="van.block-cannot-interrupt", level=Level.STOP, when=lambda b: b.weak, source="fuse-ratings",
    headline="Change the fuses or the feed of {part}: a short there passes {fault_current}, and they break {breaks}.",
    text="A fuse that cannot break the fault can burst and burn. A longer or thinner feed limits the short-circuit current.",
    mends=_mends, covers=_OF_EACH,
)
TIGHT = VanRule[Block](
    id="van.block-interrupts-tightly", level=Level.CAUTION, when=lambda b: not b.weak, source="practice",
    headline="Limit the short-circuit current at {part}: {fault_current} is within a tenth of what its fuses break.",
    text="No source is known so well, and a charger adds its own. A longer or thinner feed, or stronger fuses, give room.",
    mends=_mends, covers=_OF_EACH,
)
ASKED = (Asked(blocks, (CANNOT_INTERRUPT, TIGHT)),)
