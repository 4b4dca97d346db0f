"""Judgements on what one job draws from a bank, and on heat made from it by resistance."""

# fmt: off
from calc.energy.draw import LARGE_SHARE, BankDraw, Job
from calc.energy.limits import LITTLE_TO_SPARE as LITTLE
from calc.energy.loads import HeatFromBank
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most


def _little_to_spare(draw: BankDraw) -> bool:
    return at_most(draw.share, 1.0) and not at_most(draw.share, LITTLE)


BEYOND_BANK = Rule[BankDraw](
    id="draw.beyond-bank", level=Level.STOP, when=lambda d: not at_most(d.charge, d.bank.gives),
    headline="This takes {charge}, and the bank gives {bank.gives}.",
    mend=lambda d: Change({"capacity": d.charge / d.bank.usable}),
)
ENDS_SOONER = Rule[Job](
    id="draw.ends-sooner", level=Level.STOP, when=lambda j: j.ends_sooner, source="peukert",
    headline="Use a larger bank or run it for less: at {load.current} this one lasts about {lasts}.",
    text="Under a heavy load a lead-acid bank gives far less than its label. See run time, with cold and your own exponent.",
    covers=frozenset({"bank.heavy-load"}),
)
LITTLE_TO_SPARE = Rule[BankDraw](
    id="draw.little-to-spare", level=Level.CAUTION, when=_little_to_spare, source="practice",
    headline="Leave a reserve: this takes {share} of the usable bank.",
    text="An old or cold bank gives less than its label, and may not finish the job.",
    mend=lambda d: Change({"capacity": d.charge / (LITTLE * d.bank.usable)}),
)
LARGE_DRAW = Rule[BankDraw](
    id="draw.large-share", level=Level.ADVICE, source="practice", when=lambda d: not at_most(d.share, LARGE_SHARE),
    text="This takes {charge}, {share} of the usable bank. Other loads need their part, and an old or cold bank gives less.",
    mend=lambda d: Change({"capacity": d.charge / (LARGE_SHARE * d.bank.usable)}),
)

HEAT_BEYOND_BANK = Rule[HeatFromBank](
    id="draw.heat-beyond-bank", level=Level.ADVICE, source="practice", when=lambda h: h.share is not None and h.share > 1,
    text="Electric heat would take {charge}, {share} of the usable bank. Use it on shore power only.",
)
