"""Judgements on how long a bank carries a load; those on the bank itself are in `bank`."""

# fmt: off
from calc.energy.run_time import RunTime
from calc.judge import Level, Rule

LIGHTER_THAN_RATED = Rule[RunTime](
    id="runtime.lighter-than-rated", level=Level.CAUTION, when=lambda r: r.credited, source="peukert",
    headline="About {runtime} by the formula; by the label alone, {nameplate_time}. Count on the shorter.",
    text="This load is lighter than the rated current of {discharge.rated_current}, so the formula credits more than the label does. By the label alone it is {nameplate_time}.",
)
PUBLISHED_EXPONENTS = Rule[RunTime](
    id="runtime.published-exponents", level=Level.NOTE, when=lambda r: r.bank.lead_acid, source="peukert",
    text="Published exponents for {bank.chemistry} run from {exponent_low} to {exponent_high}: the time lies between {shortest} and {longest}. Two ratings from the maker's sheet give your battery's own.",
)
AGED_HOLDS_LESS = Rule[RunTime](
    id="bank.aged-holds-less", level=Level.NOTE, source="practice",
    text="An aged bank holds less than its label. A monitor that counts charge tells how much; voltage alone misleads.",
)
