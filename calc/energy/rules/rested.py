"""Judgements on the voltage of a bank without charge: past empty, or against a stated state."""

# fmt: off
from calc.energy.rested import RestedVoltage
from calc.energy.voltages import ShownVoltage
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least

PAST_EMPTY = Rule[ShownVoltage](
    id="bank.past-empty", level=Level.STOP, when=lambda v: not at_least(v.voltage, v.past_empty), source="practice",
    headline="Do not charge: at {voltage} {fault}. Separate parallel batteries and test each.",
    text="Separate parallel batteries first: they feed a faulty one. An empty but healthy bank rests above {past_empty}. If one smells, hisses, swells or gets warm: everybody out.",
)
STATED_TOO_HIGH = Rule[RestedVoltage](
    id="bank.stated-above-voltage", level=Level.CAUTION, when=lambda v: v.below_stated,
    headline="Count on the lower: you typed {state}, and {voltage} at rest is {band.high} at most.",
    mend=lambda v: None if v.band is None else Change({"state": v.band.high}),
)
STATED_TOO_LOW = Rule[RestedVoltage](
    id="bank.stated-below-voltage", level=Level.CAUTION, when=lambda v: v.above_stated,
    headline="Check the monitor: you typed {state}, and {voltage} at rest is {band.low} at least.",
    mend=lambda v: None if v.band is None else Change({"state": v.band.low}),
)
