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
    headline="Check it as a run time: drawn within {need.days}, {capacity} may give less. By charge alone {units} of {need.unit_capacity}.",
    mend=_gentler,
)
MANY_SIDE_BY_SIDE = Rule[BankSize](
    id="bank-size.many-side-by-side", level=Level.CAUTION, when=lambda s: s.units > MOST_PARALLEL, source="practice",
    headline="{capacity}: {units} of {need.unit_capacity} side by side. That is many to keep alike: take fewer, larger ones.",
    text="Batteries side by side must be alike: make, age, state and cables, feed and return at opposite corners, a fuse for each. Four are commonly the most.",
    mend=_in_one,
)
NO_ROOM_TO_AGE = Rule[BankSize](
    id="bank-size.no-room-to-age", level=Level.CAUTION, when=lambda s: at_most(s.need.ageing, NO_ROOM_FOR_AGEING),
    headline="{capacity}, {units} of {need.unit_capacity}, while new. With no room for ageing it falls short within a few years.",
)
VOLTAGE_OF_LEAD_ACID = Rule[BankSize](
    id="bank-size.voltage-of-lead-acid", level=Level.ADVICE, when=lambda s: s.voltage_is_high, source="practice",
    text="Lead-acid gives its charge at about 12.2 V for each 12 V battery, not {need.voltage}: with that it takes more ampere-hours.",
)
BROUGHT_TO_FULL = Rule[BankSize](
    id="bank-size.brought-to-full", level=Level.ADVICE, when=lambda s: s.bank.lead_acid, source="practice",
    text="A lead-acid bank must be brought to full often, or it loses capacity for good. See whether the charging you have can put back {put_back}.",
)
COMMON_PRACTICE = Rule[BankSize](
    id="bank-size.common-practice", level=Level.NOTE, source="practice",
    text="Share used and room for ageing are common practice. A fifth lost is when most call a battery worn out.",
)
DRAWS_OF_ITS_OWN = Rule[BankSize](
    id="bank-size.draws-of-its-own", level=Level.NOTE, source="practice",
    text="Self-discharge and the monitor's own draw come on top when the van stands for weeks.",
)
