"""Judgements on panels at their regulator, and on what they bring on a usual day."""

from typing import Annotated, Protocol

# fmt: off
from calc.energy.cloud import BRIGHT_SKY
from calc.energy.panels import TILT_FLATTERS, Array, Regulator, SolarYield
from calc.energy.sun import LOW_SUN
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Degrees, Number, Share, Tag

# Over what breaks even: grey days come in a row. Common practice, no source
SUN_TO_SPARE: Annotated[Number, Tag("yield of the sun over need that is enough")] = 1.1
# Less leaves out something of the published list: our choice
FEW_LOSSES: Annotated[Share, Tag("losses of a roof that are too few to believe")] = 0.10
# Of panel over the voltage of the charge: heat takes a tenth, wiring some more. A panel for 12 V has
# 18 V over 14.4 V. Common practice, no source
VOLTAGE_TO_SPARE: Annotated[Number, Tag("a panel's voltage over the bank's that holds when hot")] = 1.2
# Of a panel's power through a plain switch: a panel for 12 V keeps three quarters, one of 60 cells
# less than half. Common practice, no source
SWITCH_KEEPS: Annotated[Share, Tag("share of a panel's power that a plain switch may keep")] = 0.65
# Of the current in full sun over the regulator's own: beyond it more than the best hours are cut.
# Common practice, no source
REGULATOR_CLIPS: Annotated[Number, Tag("panels over a regulator's rating that cost little")] = 1.3
# Flatter than this rain does not wash a panel: common practice, no source
FLAT_TILT: Annotated[Degrees, Tag("tilt below which a panel keeps its dirt")] = 10.0


class HasArray(Protocol):
    """What is about panels at a regulator."""

    @property
    def array(self) -> Array: ...


def _less_than(found: SolarYield, times: float) -> bool:
    return found.covered is not None and not at_least(found.covered, times * found.needed)


def _low(found: SolarYield) -> bool:
    return not found.clear.dark and not at_least(found.clear.noon, LOW_SUN)


def _near(found: HasArray) -> bool:
    array = found.array
    plain = array.regulator is Regulator.PWM and array.reached
    return plain and not at_least(array.panel_voltage, VOLTAGE_TO_SPARE * array.voltage)


def _wastes(found: HasArray) -> bool:
    array = found.array
    plain = array.regulator is Regulator.PWM and array.reached
    return plain and not at_least(array.regulator_keeps, SWITCH_KEEPS)


def _beyond_regulator(found: HasArray, times: float) -> bool:
    array = found.array
    return array.limit is not None and not at_most(array.peak_current, times * array.limit)


def larger_array(found: SolarYield) -> Change | None:
    """Return the array that brings enough, unless no array does."""
    if not found.covered:
        return None
    return Change({"array": found.array.power * SUN_TO_SPARE * found.needed / found.covered})


def panels_in_a_row(found: HasArray) -> Change:
    """Return the voltage of so many of the same panels in a row that it holds when they are hot."""
    array, count = found.array, 1
    while not at_least(count * array.panel_voltage, VOLTAGE_TO_SPARE * array.voltage):
        count += 1
    return Change({"panel_voltage": count * array.panel_voltage})


SUN_DOES_NOT_RISE = Rule[SolarYield](
    id="sun.does-not-rise", level=Level.STOP, source="practice", when=lambda y: y.clear.dark,
    headline="Plug in or drive: in {month} the sun does not rise at {clear.plane.latitude}.",
    text="Solar gives nothing until the sun is back: use shore power, the engine, or less energy.",
)
PANEL_BELOW_BANK = Rule[HasArray](
    id="panel.below-bank", level=Level.STOP, when=lambda y: not y.array.reached,
    headline="Put panels in series: with PWM, {array.panel_voltage} cannot charge a bank at {array.voltage}.",
    mend=panels_in_a_row,
)
SUN_SHORT = Rule[SolarYield](
    id="sun.short", level=Level.CAUTION, source="charge-efficiency", when=lambda y: _less_than(y, 1.0),
    headline="Drive, plug in or use less: solar gives {charge} a day in {month}, {covered} of your use.",
    text="Below {needed} of your use the bank empties: it returns {bank.gives_back} of the energy put in. Add panels, drive, plug in or use less.",
    mend=larger_array,
    covers=frozenset({"sun.tight"}),
)
SUN_TIGHT = Rule[SolarYield](
    id="sun.tight", level=Level.CAUTION, source="charge-efficiency", when=lambda y: _less_than(y, SUN_TO_SPARE),
    headline="Use a little less or add panels: {charge} a day in {month} hardly breaks even, {covered} of your use.",
    text="Little is left for grey days in a row: {needed} of your use only breaks even, because the bank returns {bank.gives_back}. Add panels or use less.",
    mend=larger_array,
)
SUN_LOW = Rule[SolarYield](
    id="sun.low", level=Level.CAUTION, source="practice", when=_low,
    headline="Park with a free horizon: the noon sun is only {clear.noon} high, and a hill or tree blocks it.",
    text="Park with a free horizon toward the sun: at noon it is {clear.noon} high, and a hill, a house or trees block most of it.",
)
PANEL_NEAR_BANK = Rule[HasArray](
    id="panel.near-bank", level=Level.CAUTION, when=_near,
    headline="Use MPPT or panels in series: hot, {array.panel_voltage} falls near the bank's {array.voltage} and little flows.",
    mend=lambda y: Change({"regulator": Regulator.MPPT}),
)
SWITCH_WASTES = Rule[HasArray](
    id="panel.plain-switch-wastes", level=Level.CAUTION, source="practice", when=_wastes,
    headline="Use an MPPT regulator: PWM keeps only {array.regulator_keeps} of a panel of {array.panel_voltage}.",
    text="PWM holds the panel at the bank's voltage. Panels for a 12 V bank have about 18 V; those of 60 or 72 cells need MPPT.",
    mend=lambda y: Change({"regulator": Regulator.MPPT}),
)
REGULATOR_TOO_SMALL = Rule[HasArray](
    id="panel.regulator-too-small", level=Level.CAUTION, source="practice", when=lambda y: _beyond_regulator(y, REGULATOR_CLIPS),
    headline="Use a larger regulator: it gives {array.limit} of the {array.peak_current} the panels offer in full sun.",
    text="Check that the regulator allows such an array: many are damaged by more panels than their label allows, and it limits more than the best hours.",
    mend=lambda y: Change({"regulator_limit": y.array.peak_current}),
)
TILT_GAINS_LITTLE = Rule[SolarYield](
    id="tilt.gains-little", level=Level.NOTE, source="liu-jordan", when=lambda y: not at_most(y.energy, TILT_FLATTERS * y.grey_energy),
    text="If cloud spreads the same light over the sky, a tilt gains nothing: {grey_energy}, not {energy}. A dark grey day gives less.",
)
LOSSES_TOO_FEW = Rule[SolarYield](
    id="panel.losses-too-few", level=Level.CAUTION, source="panel-losses", when=lambda y: not at_least(y.array.losses, FEW_LOSSES),
    headline="Type the losses of a real roof: few have losses this low, about {charge} in {month}.",
    text="Type the losses of a real roof: the published total is 14 %, without heat, regulator or real shade.",
)

PANELS_ARE_LIVE = Rule[HasArray](
    id="panel.live", level=Level.ADVICE, source="practice",
    text="Shock: panels are live in daylight; several in series can kill. Cover them while you work, never unplug under load, follow the makers' order and local rules, secure yourself.",
)
ONE_CELL_IN_SHADE = Rule[HasArray](
    id="panel.one-cell-in-shade", level=Level.ADVICE, source="practice",
    text="One shaded cell limits its whole string: a vent, a rack or a branch costs far more than its shadow. The losses include only a little shade.",
)
SKY_NEARLY_CLEAR = Rule[SolarYield](
    id="sky.nearly-clear", level=Level.ADVICE, source="typical-sun", when=lambda y: not y.sky.measured and not at_most(y.sky.used, BRIGHT_SKY),
    text="Choose a measured climate or a lower share: most typical months of twelve places have less than {sky.used} of a clear day.",
)
FLAT_PANEL = Rule[SolarYield](
    id="panel.flat", level=Level.ADVICE, source="practice", when=lambda y: y.clear.plane.tilt < FLAT_TILT,
    text="A flat panel keeps dirt, leaves and snow. Under snow it gives nothing.",
)
WELL_ABOVE_BANK = Rule[HasArray](
    id="panel.well-above-bank", level=Level.ADVICE, source="practice", when=lambda y: not y.array.reached or _near(y),
    text="Even hot, a panel's voltage must be well above the charging voltage. Put panels in series, or use an MPPT regulator.",
)
HEAT_NOT_COUNTED = Rule[SolarYield](
    id="panel.heat-not-counted", level=Level.ADVICE, source="panel-coefficients", when=lambda y: y.heat is None,
    text="Heat is not included: hot cells lose about 0.45 % of their power per degree. Type the air temperature to include it.",
)
REGULATOR_HOLDS_BACK = Rule[HasArray](
    id="panel.regulator-holds-back", level=Level.NOTE, source="practice", when=lambda y: _beyond_regulator(y, 1.0) and not _beyond_regulator(y, REGULATOR_CLIPS),
    text="In the best hours the regulator holds the panels to {array.limit}. That costs little, and is not included.",
)
OPEN_VOLTAGE_IN_FROST = Rule[SolarYield](
    id="panel.open-voltage-in-frost", level=Level.NOTE, source="panel-coefficients",
    text="In frost a panel's open-circuit voltage rises by a third of a percent for each degree below 25 °C: it must stay below the regulator's limit. Size wires and fuses by {array.peak_current} and the makers' sheets.",
)
FULL_BANK_TAKES_LESS = Rule[SolarYield](
    id="sun.full-bank-takes-less", level=Level.NOTE, source="practice",
    text="A bank near full accepts less than the sun offers. In many places winter is greyer than summer: choose a measured climate, or type a lower share for it.",
)
