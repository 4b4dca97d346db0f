"""Judgements on the size of a bank; those on the bank itself are in `bank`."""

# fmt: off
from calc.energy.bank_size import BankSize
from calc.energy.limits import MOST_PARALLEL, NO_ROOM_FOR_AGEING
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most


def _gentler(size: BankSize) -> Change:
    return Change({"unit_capacity": size.bank.capacity * size.mean_current / size.gentle_current})


def _in_one(size: BankSize) -> Change:
    return Change({"unit_capacity": size.capacity})


DRAWN_WITHIN_HOURS = Rule[BankSize](
    id="bank-size.drawn-within-hours", level=Level.CAUTION, when=lambda s: not at_most(s.mean_current, s.gentle_current),
    headline="Check it with run time: used within {need.days}, {capacity} may give less. By charge alone {batteries} of {need.unit_capacity}.",
    mend=_gentler,
)
MANY_SIDE_BY_SIDE = Rule[BankSize](
    id="bank-size.many-side-by-side", level=Level.CAUTION, when=lambda s: s.units > MOST_PARALLEL, source="practice",
    headline="{capacity}: {batteries} of {need.unit_capacity} in parallel. That is many to keep equal: use fewer, larger ones.",
    text="Batteries in parallel must be equal in make, age, state and cables, with plus and minus at opposite corners and a fuse for each. Four is the usual maximum.",
    mend=_in_one,
)
NO_ROOM_TO_AGE = Rule[BankSize](
    id="bank-size.no-room-to-age", level=Level.CAUTION, when=lambda s: at_most(s.need.ageing, NO_ROOM_FOR_AGEING),
    headline="{capacity}, {batteries} of {need.unit_capacity}, when new. Without an allowance for ageing it is too small within a few years.",
)
VOLTAGE_OF_LEAD_ACID = Rule[BankSize](
    id="bank-size.voltage-of-lead-acid", level=Level.ADVICE, when=lambda s: s.voltage_is_high, source="practice",
    text="Lead-acid gives its charge at about 12.2 V for each 12 V battery, not {need.voltage}: so it needs more amp-hours.",
)
BROUGHT_TO_FULL = Rule[BankSize](
    id="bank-size.brought-to-full", level=Level.ADVICE, when=lambda s: s.bank.lead_acid, source="practice",
    text="A lead-acid bank must be brought to full often, or it loses capacity permanently. Check that your chargers can put back {put_back}.",
)
COMMON_PRACTICE = Rule[BankSize](
    id="bank-size.common-practice", level=Level.NOTE, source="practice",
    text="Share used and ageing allowance are common practice. At 20 % lost most call a battery worn out.",
)
DRAWS_OF_ITS_OWN = Rule[BankSize](
    id="bank-size.draws-of-its-own", level=Level.NOTE, source="practice",
    text="Self-discharge and the monitor's draw come on top when the van is parked for weeks.",
)
