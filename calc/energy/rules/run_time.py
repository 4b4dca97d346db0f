"""Judgements on how long a bank carries a load; those on the bank itself are in `bank`."""

# fmt: off
from calc.energy.limits import LITTLE_TO_SPARE as LITTLE
from calc.energy.run_time import RunTime
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most

TOO_SHORT = Rule[RunTime](
    id="runtime.too-short", level=Level.STOP, when=lambda r: r.short,
    headline="It lasts {runtime}, not {needed}: the job needs {needed_charge} and this bank gives {usable_charge}.",
    mend=lambda r: None if r.needed is None else Change({"needed": r.runtime}),
)
LITTLE_TO_SPARE = Rule[RunTime](
    id="runtime.little-to-spare", level=Level.CAUTION, source="practice",
    when=lambda r: r.needed is not None and not r.short and not at_most(r.needed, LITTLE * r.runtime),
    headline="Leave a reserve: it lasts {runtime}, hardly more than the {needed} needed.",
    text="An old or cold bank runs out before {needed}.",
)
LIGHTER_THAN_RATED = Rule[RunTime](
    id="runtime.lighter-than-rated", level=Level.NOTE, when=lambda r: r.discharge.light, source="peukert",
    text="For a load this small Peukert's law gives more charge than a bank holds. At most {discharge.most} is used.",
)
PUBLISHED_EXPONENTS = Rule[RunTime](
    id="runtime.published-exponents", level=Level.NOTE, when=lambda r: r.bank.lead_acid, source="peukert",
    text="Published exponents for {bank.chemistry} run from {exponent_low} to {exponent_high}: the time is between {shortest} and {longest}. Two ratings from the maker's sheet give your battery's exponent.",
)
AGED_HOLDS_LESS = Rule[RunTime](
    id="bank.aged-holds-less", level=Level.NOTE, source="practice",
    text="An aged bank holds less than its label. A battery monitor shows how much; voltage alone misleads.",
)
