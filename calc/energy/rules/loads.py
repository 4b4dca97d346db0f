"""Judgements on a steady load on the bank; its current against a bank's limit is in `bank`."""

# fmt: off
from calc.energy.limits import HEATING_JOINT, MOSTLY_HEAT
from calc.energy.loads import BankLoad
from calc.judge import Level, Rule
from calc.units.compare import at_most

IDLE_DRAW = Rule[BankLoad](
    id="inverter.idle-draw-on-top", level=Level.ADVICE, when=lambda b: b.through_inverter and b.power is not None, source="practice",
    text="Add the inverter's own idle draw to the load if it stays on.",
)
MEASURED_AT_BANK = Rule[BankLoad](
    id="inverter.measured-at-bank", level=Level.ADVICE, when=lambda b: b.through_inverter and b.power is None, source="practice",
    text="A load in amps is taken as measured at the bank, so the inverter's efficiency is not applied again.",
)
INVERTER_KILLS = Rule[BankLoad](
    id="inverter.output-kills", level=Level.ADVICE, when=lambda b: b.through_inverter, source="practice",
    text="The output of an inverter is mains voltage and can kill. Its fixed wiring is work for a licensed person, to local rules.",
)
LOOSE_JOINT_HEATS = Rule[BankLoad](
    id="load.loose-joint-heats", level=Level.ADVICE, when=lambda b: not at_most(b.current, HEATING_JOINT), source="practice",
    text="At this current a loose joint becomes a heater. Check wire, fuse and torque before it is switched on, and keep within the maker's instructions.",
)


def mostly_heat(load: BankLoad) -> bool:
    """Return whether a load of its size is mostly heat."""
    return load.power is not None and load.power >= MOSTLY_HEAT
