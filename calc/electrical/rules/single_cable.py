"""The judgements on a current that is too much for one cable."""

# fmt: off
from calc.electrical.single_cable import SingleCable
from calc.judge import Level, Rule

BEYOND_PARALLEL_CABLES = Rule[SingleCable](
    id="cable.beyond-parallel", level=Level.STOP, when=lambda c: c.cables is None, source="33cfr-table",
    headline="Use a higher voltage, or less power: {current} is too much even for four cables in parallel.",
)
BEYOND_TWO_CABLES = Rule[SingleCable](
    id="cable.beyond-two", level=Level.CAUTION, when=lambda c: c.beyond_two, source="nec-parallel",
    headline="Use a higher voltage, or {cables} cables in parallel with a fuse at both ends of each: {current} in all.",
    text="Three cables or more in parallel need a fuse at both ends of each: a short in one is fed through the others as well.",
)
BEYOND_ONE_CABLE = Rule[SingleCable](
    id="cable.beyond-one", level=Level.CAUTION, when=lambda c: not c.fits, source="nec-parallel",
    headline="Use two cables in parallel, each fused for at least {each_fuse}: {current} is too much for one.",
    text="Cables in parallel share evenly only if they are alike: same size, length and lugs, on the same studs. They heat each other, so count all of them as bundled.",
)
PARALLEL = (BEYOND_PARALLEL_CABLES, BEYOND_TWO_CABLES, BEYOND_ONE_CABLE)
