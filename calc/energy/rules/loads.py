"""Judgements on a steady load on the bank; its current against a bank's limit is in `bank`."""

# fmt: off
from calc.electrical.fuses import CONTINUOUS
from calc.energy.draw import LARGE_SHARE
from calc.energy.limits import HEATING_JOINT, MOSTLY_HEAT
from calc.energy.loads import BankLoad, Consumption, HeatFromBank, LoadType
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most

IDLE_DRAW = Rule[BankLoad](
    id="inverter.idle-draw-on-top", level=Level.ADVICE, when=lambda b: b.through_inverter and b.power is not None, source="practice",
    text="Add the inverter's own idle draw to the load if it stays on.",
)
IDLE_DRAW_APART = Rule[BankLoad](
    id="inverter.idle-draw-apart", level=Level.ADVICE, when=lambda b: b.through_inverter, source="practice",
    text="The inverter has an idle draw all the time it is on; that is not included here.",
)
MEASURED_AT_BANK = Rule[BankLoad](
    id="inverter.measured-at-bank", level=Level.ADVICE, when=lambda b: b.through_inverter and b.power is None, source="practice",
    text="A load in amps is assumed to be measured at the bank, so the inverter's efficiency is not applied again.",
)
LOOSE_JOINT_HEATS = Rule[BankLoad](
    id="load.loose-joint-heats", level=Level.ADVICE, when=lambda b: not at_most(b.current, HEATING_JOINT), source="practice",
    text="At this current a loose joint becomes a heater. Check wire, fuse and torque before it is switched on, and keep within the maker's instructions.",
)


def _dear_heat(heat: HeatFromBank) -> bool:
    """It goes on as long as the cold does, or takes a good part of the bank, or of one not known."""
    small = heat.share is not None and at_most(heat.share, LARGE_SHARE)
    return heat.holds_warmth or not small


# What it takes over a time
ALL_BECOMES_HEAT = Rule[HeatFromBank](
    id="load.all-becomes-heat", level=Level.CAUTION, when=_dear_heat, source="practice",
    headline="{current}, and all of it becomes heat: {charge} in {time}.",
    text="Heat is the most expensive use of a battery: {charge} for {time} of this. Use a heater vented outside, the engine or shore power instead.",
)
MOSTLY_HEAT_PERHAPS = Rule[Consumption](
    id="load.mostly-heat-perhaps", level=Level.ADVICE, source="practice",
    when=lambda c: c.load_type is not LoadType.HEAT and c.load.power is not None and at_least(c.load.power, MOSTLY_HEAT),
    text="Loads of this size are mostly heat (kettle, hob, hair dryer). If this one is, set the kind of load to resistive heat.",
)
BEYOND_HEAVY_CABLE = Rule[Consumption](
    id="load.beyond-heavy-cable", level=Level.ADVICE, source="33cfr-table",
    when=lambda c: c.beyond_heavy_cable and c.single_cable.fits,
    text="With a margin of 125 % this is more than 2/0 AWG can carry with 105 °C insulation ({heavy_cable}): cable, fuse, switch and every joint must be rated for {load.current}.",
    mend=lambda c: Change({"voltage": c.load.voltage * CONTINUOUS * c.load.current / c.heavy_cable}),
)
HEATER_OF_1500_W = Rule[Consumption](
    id="load.heater-of-1500-w", level=Level.NOTE, source="practice",
    text="Check value: a 1500 W heater draws about 120 A from a 12 V bank, 120 Ah every hour.",
)
