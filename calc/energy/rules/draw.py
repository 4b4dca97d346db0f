"""Judgements on what one job draws from a bank, and on heat made from it by resistance."""

# fmt: off
from calc.energy.draw import LARGE_SHARE, BankDraw
from calc.energy.loads import HeatFromBank
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most

BEYOND_BANK = Rule[BankDraw](
    id="draw.beyond-bank", level=Level.STOP, when=lambda d: not at_most(d.charge, d.bank.gives),
    headline="This takes {charge}, and you use {bank.gives} of the bank.",
    mend=lambda d: Change({"capacity": d.charge / d.bank.usable}),
)
LARGE_DRAW = Rule[BankDraw](
    id="draw.large-share", level=Level.CAUTION, source="practice", when=lambda d: not at_most(d.share, LARGE_SHARE),
    headline="This takes {charge}, {share} of what you use of the bank.",
    mend=lambda d: Change({"capacity": d.charge / (LARGE_SHARE * d.bank.usable)}),
)

HEAT_BEYOND_BANK = Rule[HeatFromBank](
    id="draw.heat-beyond-bank", level=Level.ADVICE, source="practice", when=lambda h: h.share is not None and h.share > 1,
    text="Electric heat would take {charge}, {share} of what you use of the bank. On shore power it is another matter.",
)
