"""The working of bank-size in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.bank_size import BankSize
from calc.judge import Level, Rule
from calc.worksheet.declare import Step


def _lead(found: BankSize) -> bool:
    return found.bank.lead_acid


def _lfp(found: BankSize) -> bool:
    return not _lead(found)


STEPS: tuple[Step[BankSize], ...] = (
    Step(of="charge", formula="daily_energy * days / day / voltage", source="ohm", text="Energy of all those days divided by voltage is charge."),
    Step(of="cold_factor", source="ieee-485", when=_lead, text="A lead-acid bank gives less in the cold; from 25 °C up the factor is 1."),
    Step(of="capacity", formula="charge * cold_factor / (usable * (1 - ageing))", source="ieee-485", when=_lead, text="Only the share you use counts, and in the end only what ageing leaves. The published factor multiplies the need."),
    Step(of="capacity", formula="charge / (usable * (1 - ageing))", source="practice", when=_lfp, text="Only the share you use counts, and in the end only what ageing leaves."),
    Step(of="energy", formula="capacity * voltage", source="ohm", text="The same as energy, as batteries are often sold."),
    Step(of="units", source="practice", text="The next whole number of {unit_capacity} batteries."),
    Step(of="together", formula="units * unit_capacity", text="In parallel, so capacities add."),
    Step(of="lasts_new", formula="days * together * usable / charge", when=_lfp, text="Before ageing, with the whole batteries chosen."),
    Step(of="lasts_new", formula="days * together * usable / (cold_factor * charge)", when=_lead, text="Before ageing, with the whole batteries chosen."),
    Step(of="put_back", formula="charge / efficiency", source="charge-efficiency", when=_lead, text="Part of the charge becomes heat and gas, most of all near full."),
    Step(of="put_back", formula="charge / efficiency", source="practice", when=_lfp, text="Nearly all the charge comes out again."),
    Step(of="current", formula="heaviest / voltage", source="ohm", when=lambda s: s.draw is not None, text="Power is voltage times current."),
)

FINE_COLD_AND_OLD = Rule[BankSize](
    id="bank-size.fine-cold-and-old", level=Level.FINE, when=_lead,
    headline="{capacity} last {need.days} at {bank.temperature}, even when aged: {batteries} of {need.unit_capacity}.",
)
FINE_OLD = Rule[BankSize](
    id="bank-size.fine-old", level=Level.FINE, when=_lfp,
    headline="{capacity} last {need.days}, even when aged: {batteries} of {need.unit_capacity}.",
)
