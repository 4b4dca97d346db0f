"""remote-switch: a switch within reach for something hidden."""

# fmt: off
from calc.electrical.conductors import Series
from calc.electrical.rules import switching as judged
from calc.electrical.rules.single_cable import PARALLEL
from calc.electrical.sizing import thickest_ampacity
from calc.electrical.switching import Marking, Route, Supply, SwitchedLoad
from calc.sheets.bank.remote_switch.calculate import calculate, onward
from calc.sheets.bank.remote_switch.words import FINE, FINE_RELAY, LOADS, ROUTES, STEPS
from calc.units.kinds import (
    CHARGE,
    CURRENT,
    LENGTH,
    LINEAR_RESISTANCE,
    NUMBER,
    POWER,
    RATIO,
    RESISTANCE,
    TIME,
    VOLTAGE,
)
from calc.units.quantities import METRIC, US
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import Output, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Remote
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="remote-switch",
    title="Remote switch",
    question="How do I switch an appliance that is out of reach?",
    about="Direct switch or relay, the contact's rating, and the coil's wire.",
    calculate=calculate,
    picture=Remote(
        relay=("route", Route.RELAY), contact="switch_rating", wire="control_conductor", fuse="control_fuse", line="line_conductor",
        caption="What the switch within reach works",
    ),
    fields=(
        Quantity(id="power", label="Power", symbol="P", kinds=(POWER,), default="300 W", low="0.1 W", high="20 kW", hint="Of the appliance, from its label."),
        Choice(id="kind", label="Kind of supply", of=Supply, default=Supply.DC, options=(Option(Supply.AC, "AC (mains or inverter)", aliases=("mains",)), Option(Supply.DC, "DC (bank)", aliases=("bank",))), hint="A contact breaks AC and DC very differently."),
        Quantity(id="voltage", label="Voltage of the line", symbol="U", kinds=(VOLTAGE,), low="5 V", high="300 V", default_by=("kind", {Supply.AC: "120 V", Supply.DC: "12 V"}), hint="Mains 120 V or 230 V; or the bank's, like 12.8 V."),
        Choice(id="load", label="What it switches", of=SwitchedLoad, default=SwitchedLoad.HEATER, options=tuple(Option(load, words) for load, words in LOADS.items()), hint="Inverters and the like count as lamps: high inrush."),
        Quantity(id="distance", label="Distance, one way", symbol="L", kinds=(LENGTH,), default="12 ft", low="1 cm", high="100 m", hint="Along the cable from the appliance to the switch."),
        Quantity(id="coil_current", advanced=True, label="Coil current of the relay", symbol="I_c", kinds=(CURRENT,), default="0.15 A", low="0.001 A", high="10 A", hint="Usual at 12 V: 0.1 to 0.2 A; contactor 1 A (no source)."),
        Quantity(id="control_voltage", advanced=True, label="Coil's voltage", symbol="U_c", kinds=(VOLTAGE,), default="12 V", low="5 V", high="48 V", hint="Nominal, of the bank. Mains-voltage coils are not covered."),
        Quantity(id="hours", advanced=True, label="Hours on in a day", symbol="t", kinds=(TIME,), default="24 h", low="0 h", high="24 h", hint="24 h if someone may forget it."),
        Quantity(id="switch", advanced=True, label="Switch you have, if any", symbol="I_s", kinds=(CURRENT,), optional=True, low="0.1 A", high="1000 A", example="20 A", hint="The rating printed on it. May be empty."),
        Choice(id="marked", advanced=True, label="It is marked for", of=Marking, default=Marking.UNSAID, options=(Option(Marking.UNSAID, "not said"), Option(Marking.AC), Option(Marking.DC, "DC at this voltage")), hint="Beside that rating. An AC rating says nothing about DC."),
        Quantity(id="lowest", advanced=True, label="Lowest bank voltage under load", symbol="l", kinds=(RATIO,), default="92 %", low="60 %", high="110 %", hint="Share of the coil's voltage: 11 V of 12 V is 92 %."),
        Quantity(id="pull_in", advanced=True, label="Pull-in voltage", symbol="p", kinds=(RATIO,), default="80 %", low="30 %", high="95 %", hint="Of the coil's voltage, warm. 75 to 85 % is usual (no source)."),
        Choice(id="series", advanced=True, label="Wire sizes", of=Series, default=Series.AWG, options=(Option(Series.AWG, system=US), Option(Series.METRIC, "mm²", aliases=("metric",), system=METRIC)), hint="Which sizes to choose from."),
        Quantity(id="power_factor", advanced=True, only_if=("kind", Supply.AC), label="Power factor", symbol="λ", kinds=(NUMBER,), default="1", low="0.3", high="1", hint="1 for a heater; motors 0.5 to 0.8 (no source)."),
    ),
    results=(
        Output(id="route", words=ROUTES, label="What the switch controls"),
        Output(id="line_current", at="line.current", label="Current in the line", symbol="I", kind=CURRENT),
        Output(id="switch_rating", at="line.rating", label="Contact rating, at least", symbol="I_r", kind=CURRENT, rounding=UP),
        Output(id="control_conductor", at="coil.run.laid.run.conductor", label="Wire to the coil"),
        Output(id="drop", at="coil.run.drop", label="Voltage drop to the coil", symbol="U_d", kind=VOLTAGE, digits=2),
        Output(id="drop_percent", at="coil.run.drop_share", label="Of the coil's voltage", symbol="d", kind=RATIO, digits=2),
        Output(id="control_fuse", at="coil.fuse", label="Fuse for the coil's wire", symbol="I_f", kind=CURRENT, hide_if_none=True),
        Output(id="line_conductor", label="Wire if the line itself goes to the switch", hide_if_none=True),
        Output(id="held_charge", at="coil.held_charge", label="Charge used by the coil in a day", symbol="Q", kind=CHARGE),
        Output(id="longest", at="coil.longest", label="Longest run with this wire", symbol="L_max", kind=LENGTH, rounding=DOWN, hide_if_none=True),
        Output(id="moves", find=onward, label="Go on with", hide_if_none=True, needs_step=False),
    ),
    intermediates=(
        Output(id="margin", at="line.margin", label="Margin for a continuous load", symbol="m", kind=NUMBER),
        Output(id="factor", at="line.factor", label="Factor for this load", symbol="k", kind=NUMBER),
        Output(id="sustained", at="line.sustained", label="Continuous rating, at least", symbol="I_m", kind=CURRENT, rounding=UP),
        Output(id="small", at="panel_switch", label="Usual limit of panel switches", kind=CURRENT),
        Output(id="pull_in_margin", at="coil.pull_in_margin", label="Margin on pull-in", symbol="m_p", kind=NUMBER),
        Output(id="must_see", at="coil.must_see", label="Voltage the coil needs", symbol="U_p", kind=VOLTAGE),
        Output(id="sags_to", at="coil.sags_to", label="Bank voltage under load", symbol="U_l", kind=VOLTAGE),
        Output(id="allowed", at="coil.allowed", label="Voltage drop allowed", symbol="U_max", kind=VOLTAGE),
        Output(id="need", at="coil.need", label="Smallest ampacity for the coil's wire", symbol="I_n", kind=CURRENT),
        Output(id="per_length", at="coil.run.laid.per_length", label="Resistance per length, warm", symbol="r", kind=LINEAR_RESISTANCE, digits=4),
        Output(id="resistance", at="coil.run.laid.resistance", label="Resistance, out and back", symbol="R", kind=RESISTANCE),
        Output(id="coil_voltage", at="coil.coil_voltage", label="Left at the coil", symbol="U_k", kind=VOLTAGE),
        Output(id="thickest_cable", find=lambda _: thickest_ampacity(), label="What 4/0 AWG can carry", kind=CURRENT),
        Output(id="coil_power", at="coil.power", label="Heat of the coil", symbol="P_c", kind=POWER),
    ),
    steps=STEPS,
    rules=(
        judged.AC_SWITCH_ON_DC, judged.SWITCH_TOO_WEAK,
        *placed("single_cable", *PARALLEL[:1]),
        judged.RELAY_MAY_NOT_CLOSE, judged.NO_WIRE_TO_COIL,
        *placed("single_cable", *PARALLEL[1:]), *judged.CAUTIONS, FINE_RELAY, FINE,
        judged.DC_FIGURE, judged.MAINS_KILLS, judged.MAINS_CONTACT, judged.COIL_KICKS_BACK, judged.COIL_IS_DC, judged.SMALL_COIL_CURRENT, judged.HELD_COIL,
        judged.CUT_OUT_IS_NO_SWITCH, judged.PROTECTS_NOTHING, judged.CONTACTS_SPARK, judged.MAY_START_BY_ITSELF,
        judged.COIL_WHILE_CHARGING, judged.INVERTER_REMOTE, judged.CONTACT_WARMS,
    ),
    valid="One steady load and one relay with a battery-voltage coil. Soft-start, solid-state relays and breaking of shorts are not covered.",
    summary="{route}, {line_current}",
    older_defaults=({"power": "1500 W", "kind": "AC"},),
    keep_distinct=(("sags_to", "must_see"),),
)
