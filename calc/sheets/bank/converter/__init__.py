"""converter: what does a d.c. converter take, and does a higher bank voltage pay?"""

# fmt: off
from dataclasses import replace

from calc.electrical.conductors import Series
from calc.electrical.converter import Isolation, RatedFor, System
from calc.electrical.rules import converter as judged
from calc.electrical.rules import protection, sizing
from calc.electrical.sizing import CHARGED
from calc.sheets.bank.converter.calculate import calculate, onward
from calc.sheets.bank.converter.words import FINE, STEPS
from calc.sheets.parts.fields import BUNDLED, DROP_LIMIT, INSULATION
from calc.sheets.parts.wire import heat, laying_advice
from calc.units.kinds import (
    CHARGE,
    CURRENT,
    ENERGY,
    LENGTH,
    POWER,
    RATIO,
    TEMPERATURE,
    TIME,
    VOLTAGE,
)
from calc.units.kinds.heat import DERATING, MASS
from calc.units.quantities import METRIC, US
from calc.worksheet.declare import Output, Placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Bars, RowsOf
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

VOLTS = {one: one.volts for one in System}


def _times(share: float) -> dict[str, str]:
    """Return a share of the nominal voltage by system, as one would type it."""
    return {name: f"{volts * share:.3g} V" for name, volts in VOLTS.items()}


def _own(length: str) -> tuple[tuple[str, str], ...]:
    """Return this sheet's fields for the remedies of a circuit; its cable and current are found."""
    found = ("conductor", "current", "voltage", "parallel", "surroundings")
    return (("length", length), *((name, "") for name in found))


SIDES = (("input", "input_length"), ("output", "output_length"))
NO_SIZE = (sizing.NO_SIZE_AT_ALL, sizing.NO_SIZE_FOR_HEAT, sizing.NO_SIZE_FOR_DROP, sizing.NO_FUSE_FITS)
NO_FUSE = (protection.NO_FAMILY, protection.NO_RATING_BETWEEN)

WORKSHEET = Worksheet(
    id="converter",
    title="Converter",
    question="Which converter, and is a higher bank voltage worth it?",
    about="Current, loss, idle draw and fuses of a converter, and copper saved at 24 or 48 V.",
    calculate=calculate,
    picture=Bars(
        rows=RowsOf("systems", "name", "copper"), caption="Copper in the cable of the largest load, by bank voltage",
    ),
    fields=(
        Choice(id="system", label="Bank's nominal voltage", of=System, default=System.V24, options=tuple(Option(one, f"{volts:g} V", aliases=(f"{volts:g}",)) for one, volts in VOLTS.items()), hint="The side the converter is fed from."),
        Quantity(id="output_voltage", advanced=True, label="Output voltage", symbol="U_o", kinds=(VOLTAGE,), default="13.2 V", low="3 V", high="60 V", hint="As set: about 13.2 V for 12 V loads."),
        Quantity(id="load", label="Load at the output", kinds=(CURRENT, POWER), default="12 A", low="0.01 A | 0.1 W", high="200 A | 3000 W", hint="All that may run together for minutes or hours."),
        Quantity(id="rated", label="Converter's rated output", symbol="I_r", kinds=(CURRENT,), default="20 A", low="0.1 A", high="200 A", hint="Amps at the output, continuous. Only a peak known: More options."),
        Choice(id="rated_for", advanced=True, label="That rating is", of=RatedFor, default=RatedFor.HOURS, options=(Option(RatedFor.HOURS, "for hours", aliases=("continuous",)), Option(RatedFor.PEAK, "peak or not said", aliases=("peak", "not said"))), hint="Does its data sheet say continuous?"),
        Quantity(id="efficiency", advanced=True, label="Efficiency", symbol="η", kinds=(RATIO,), default="90 %", low="50 %", high="99 %", hint="At this load: 85 to 95 % (no source)."),
        Quantity(id="standby", advanced=True, label="Idle draw", kinds=(CURRENT, POWER), default="30 mA", low="0 A | 0 W", high="5 A | 100 W", hint="At its input, switched on. Measured, or from its sheet."),
        Quantity(id="load_hours", advanced=True, label="Load runs, in a day", symbol="t_l", kinds=(TIME,), default="6 h", low="0.1 h", high="24 h", hint="Hours at that load."),
        Quantity(id="on_hours", advanced=True, label="Converter is on, in a day", symbol="t_on", kinds=(TIME,), default="24 h", low="0 h", high="24 h", hint="With a switch: the load's hours. Without: all day."),
        Quantity(id="input_length", label="Bank to converter, one way", symbol="L_i", kinds=(LENGTH,), default="3 m", low="1 cm", high="50 m", hint="Along the cable, one way. The return is counted."),
        Quantity(id="output_length", label="Converter to load, one way", symbol="L_o", kinds=(LENGTH,), default="2 m", low="1 cm", high="50 m", hint="To the fuse block or the farthest load."),
        replace(DROP_LIMIT, advanced=True, hint="On each side, and in the comparison."),
        Choice(id="series", advanced=True, label="Sizes", of=Series, default=Series.AWG, options=(Option(Series.AWG, system=US), Option(Series.METRIC, "mm²", system=METRIC)), hint="Which sizes your shop sells."),
        replace(INSULATION, advanced=True),
        Quantity(id="power", advanced=True, label="Largest load of the bank itself", symbol="P_b", kinds=(POWER,), default="2000 W", low="1 W", high="20 kW", hint="Usually the inverter, with its loss: for the comparison."),
        Quantity(id="power_length", advanced=True, label="Its cable, one way", symbol="L_b", kinds=(LENGTH,), default="1.5 m", low="1 cm", high="50 m", hint="From the bank."),
        Quantity(id="lowest", advanced=True, label="Lowest bank voltage", symbol="U_low", kinds=(VOLTAGE,), low="6 V", high="60 V", default_by=("system", _times(11 / 12)), hint="Under load, before it is cut off."),
        Quantity(id="highest", advanced=True, label="Highest bank voltage", symbol="U_high", kinds=(VOLTAGE,), low="6 V", high="70 V", default_by=("system", _times(CHARGED)), hint="While it is charged."),
        Quantity(id="input_low", advanced=True, label="Lowest input voltage", kinds=(VOLTAGE,), low="3 V", high="60 V", default_by=("system", _times(10 / 12)), hint="On its label."),
        Quantity(id="input_high", advanced=True, label="Highest input voltage", kinds=(VOLTAGE,), low="6 V", high="150 V", default_by=("system", _times(18 / 12)), hint="On its label. Charging raises a bank above its nominal voltage."),
        Quantity(id="fault_current", advanced=True, label="Short-circuit current at the input fuse", symbol="I_f", kinds=(CURRENT,), default="1000 A", low="1 A", high="100000 A", hint="From fault current or fuse choice."),
        Choice(id="isolation", advanced=True, label="Its two sides", of=Isolation, default=Isolation.COMMON, options=(Option(Isolation.COMMON, "share the negative", aliases=("common negative",)), Option(Isolation.ISOLATED), Option(Isolation.NOT_KNOWN, "not known")), hint="On its label or by a meter, unplugged."),
        Quantity(id="ambient", advanced=True, label="Air around it and its cables", symbol="T_a", kinds=(TEMPERATURE,), default="30 °C", low="-40 °C", high="90 °C", hint="The hottest, while it works."),
        Quantity(id="rated_to", advanced=True, label="Full output up to", symbol="T_r", kinds=(TEMPERATURE,), default="40 °C", low="10 °C", high="90 °C", hint="From its sheet."),
        Quantity(id="derating", advanced=True, label="Derating above that", symbol="k", kinds=(DERATING,), default="2.5 %/K", low="0.1 %/K", high="20 %/K", hint="Share of the output lost for each degree (no source)."),
        BUNDLED,
    ),
    results=(
        Output(id="input_current", label="Input current at the lowest bank voltage", symbol="I_i", kind=CURRENT),
        Output(id="loss", label="Heat loss under load", symbol="P_v", kind=POWER),
        Output(id="available", label="Continuous output available", symbol="I_a", kind=CURRENT),
        Output(id="standby_charge", label="Idle draw in a day", symbol="Q_0", kind=CHARGE),
        Output(id="lost", label="Total loss in a day", symbol="E_v", kind=ENERGY),
        Output(id="input_cable", at="input.sized.chosen.name", label="Input cable", hide_if_none=True),
        Output(id="input_fuse", at="input.protection.fuse", label="Input fuse", symbol="I_n1", kind=CURRENT, hide_if_none=True),
        Output(id="output_cable", at="output.sized.chosen.name", label="Output cable", hide_if_none=True),
        Output(id="output_fuse", at="output.protection.fuse", label="Output fuse", symbol="I_n2", kind=CURRENT, hide_if_none=True),
        Output(id="copper_saved", label="Copper saved on the largest load, against 12 V", symbol="m_s", kind=MASS, hide_if_none=True),
        Output(id="ideal_share", label="Copper against 12 V, by drop alone", symbol="y", kind=RATIO, hide_if_none=True),
        Output(id="systems", label="12, 24 and 48 V side by side"),
        Output(id="moves", label="Go on with", needs_step=False, find=onward),
    ),
    intermediates=(
        Output(id="load_current", at="load", label="Current of the load", symbol="I_l", kind=CURRENT),
        Output(id="output_power", label="Power of the load", symbol="P_o", kind=POWER),
        Output(id="input_power", label="Input power", symbol="P_i", kind=POWER),
        Output(id="left", label="Share of its rating left", symbol="x", kind=RATIO),
        Output(id="standby_current", at="label.standby", label="Draw without a load", symbol="I_0", kind=CURRENT),
        Output(id="idle_time", label="Idle time in a day", symbol="t_0", kind=TIME),
        Output(id="nominal", at="feed.system.volts", label="Nominal voltage", symbol="U_n", kind=VOLTAGE),
        Output(id="base", label="The lowest system voltage", symbol="U_12", kind=VOLTAGE, find=lambda _: System.V12.volts),
        Output(id="system_current", at="here.current", label="The largest load draws", symbol="I_b", kind=CURRENT),
        Output(id="copper_here", at="here.copper", label="Copper in its cable", symbol="m", kind=MASS),
        Output(id="copper_12", at="at_12.copper", label="Copper in it at 12 V", symbol="m_12", kind=MASS),
    ),
    steps=STEPS,
    rules=(
        judged.OVERLOADED, judged.INPUT_TOO_HIGH,
        *(Placed(rule=rule, at=f"{side}.sized", fields=_own(length), headline=f"No cable of this series will do for the {side}: shorten it, or allow more drop.") for side, length in SIDES for rule in NO_SIZE),
        *(Placed(rule=rule, at=f"{side}.protection", fields=_own(length), headline=f"No fuse of our table suits the {side}'s cable, voltage and fault: ask a specialist.") for side, length in SIDES for rule in NO_FUSE),
        judged.INPUT_TOO_LOW, judged.ONLY_A_PEAK, judged.IDLE_DRAW,
        *(use for side, length in SIDES for use in heat(f"{side}.protection", fields=_own(length), law_only=True)),
        FINE,
        judged.HIGHER_VOLTAGE_PAYS, judged.COMMON_NEGATIVE, judged.ISOLATED, judged.ISOLATION_NOT_KNOWN,
        judged.FUSE_BOTH_SIDES, judged.CAN_PASS_THE_BANK,
        *(use for side, length in SIDES for use in laying_advice(f"{side}.protection", fields=_own(length), thin=False)),
        judged.COPPER_AGAINST_LOSS, judged.STEADY_POWER, judged.OUTPUT_IS_LIMITED, judged.STARTS_HARD, judged.IS_NO_CHARGER, judged.WARM_PLACE_DERATES,
    ),
    valid="A steady load, copper cables, one converter. Efficiency falls at a small load; the maker's sheet comes first.",
    summary="{input_current} in, {loss} lost",
    tables=(
        Table(of="systems", columns=(
            Output(id="name", label="Bank"), Output(id="current", label="Draws", kind=CURRENT),
            Output(id="cable", label="Cable"), Output(id="fuse", label="Fuse", kind=CURRENT),
            Output(id="copper", label="Copper", kind=MASS), Output(id="lost", label="Converter loses a day", kind=ENERGY),
        )),
    ),
)
