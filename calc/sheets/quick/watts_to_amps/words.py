"""The working of watts-to-amps in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.draw import Job
from calc.energy.loads import Consumption
from calc.judge import Level, Rule
from calc.worksheet.declare import Step


def _through(found: Consumption) -> bool:
    return found.load.through_inverter


def _direct(found: Consumption) -> bool:
    return not _through(found)


def _banked(found: Job) -> bool:
    return found.drawn is not None


STEPS: tuple[Step[Job], ...] = (
    Step(of="factor", source="practice", when=_through, text="The inverter turns part of the power into heat, so the bank gives more than the load takes."),
    Step(of="current", formula="power / voltage", source="ohm", when=_direct, text="Power is voltage times current."),
    Step(of="current", formula="power / (voltage * factor)", source="ohm", when=_through, text="Power is voltage times current; the inverter's loss comes on top."),
    Step(of="charge", formula="current * hours", source="ohm", text="Current times time is charge, the unit on a battery's label."),
    Step(of="energy", formula="power * hours", source="ohm", when=_direct, text="Power times time is energy."),
    Step(of="energy", formula="power * hours / factor", source="ohm", when=_through, text="Energy at the bank, the inverter's loss included."),
    Step(of="gives", formula="capacity * usable", source="practice", when=_banked, text="The share that you use of the capacity."),
    Step(of="bank_share", formula="charge / gives", when=_banked, text="Share of it that this job uses."),
)

FINE = Rule[Consumption](id="watts-to-amps.fine", level=Level.FINE, headline="The bank gives {load.current}, {charge} in {time}.")
