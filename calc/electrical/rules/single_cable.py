"""The judgement on a current that is too much for one cable."""

# fmt: off
from calc.electrical.single_cable import SingleCable
from calc.judge import Level, Rule

BEYOND_ONE_CABLE = Rule[SingleCable](
    id="cable.beyond-one", level=Level.STOP, when=lambda c: not c.fits, source="33cfr-table",
    headline="{current} is too much for one cable: no standard fuse of a quarter more suits the thickest in the table ({thickest}). Use a higher voltage, or less power.",
)
