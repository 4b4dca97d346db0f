"""The working of runtime in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.run_time import RunTime
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

_TIME = "usable * min(rated_hours * (cold_capacity / (current * rated_hours)) ** {k}, cold_capacity * max(1, slow / rated_hours) ** (1 - 1 / {k}) / current)"
_LOW, _HIGH = _TIME.format(k="exponent_low"), _TIME.format(k="exponent_high")


def _by_power(found: RunTime) -> bool:
    return found.load.power is not None


def _direct(found: RunTime) -> bool:
    return _by_power(found) and not found.load.through_inverter


def _through_inverter(found: RunTime) -> bool:
    return _by_power(found) and found.load.through_inverter


def _lead(found: RunTime) -> bool:
    return found.bank.lead_acid


STEPS: tuple[Step[RunTime], ...] = (
    Step(of="current", formula="load / voltage", source="ohm", when=_direct, text="Power is voltage times current."),
    Step(of="current", formula="load / (voltage * factor)", source="ohm", when=_through_inverter, text="Power is voltage times current; the inverter's loss comes on top."),
    Step(of="current", formula="load", when=lambda r: not _by_power(r), text="Measured at the bank, so voltage and inverter do not matter."),
    Step(of="cold_factor", source="ieee-485", when=_lead, text="A lead-acid bank gives less in the cold; from 25 °C up the factor is 1."),
    Step(of="cold_capacity", formula="capacity / cold_factor", source="ieee-485", when=_lead, text="The published factor multiplies the capacity needed, so the capacity you have is divided by it."),
    Step(of="rated_current", formula="cold_capacity / rated_hours", source="peukert", text="At this current the bank gives its capacity in the rated hours."),
    Step(of="slow", source="practice", text="The longest time of a usual label: a slower load gets no more capacity."),
    Step(of="runtime", formula=_TIME.format(k="exponent"), source="peukert", text="Peukert's law in rated-hours form, and never more charge than at {slow}, times the share you use."),
    Step(of="needed_charge", formula="current * needed", source="ohm", when=lambda r: r.needed is not None, text="Current times the time it must last."),
    Step(of="usable_charge", formula="current * runtime", source="ohm", text="The charge taken out by then."),
    Step(of="shortest", formula=f"min({_HIGH}, {_LOW})", source="peukert", when=_lead, text="With the least favourable exponent, from {exponent_low} to {exponent_high} as published for {chemistry}."),
    Step(of="longest", formula=f"max({_HIGH}, {_LOW})", source="peukert", when=_lead, text="With the most favourable one."),
    Step(of="shortest", formula=_LOW, source="peukert-li", when=lambda r: not _lead(r), text="No exponent is published for this chemistry: the same capacity was measured at a light and a heavy load, so 1 is used."),
    Step(of="longest", formula="shortest", when=lambda r: not _lead(r), text="The same value."),
)

FINE = Rule[RunTime](id="runtime.fine", level=Level.FINE, headline="The bank runs this for about {runtime}.")
