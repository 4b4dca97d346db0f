"""light-dimming: what does dimming save?"""

# fmt: off
from dataclasses import replace

from calc.energy.dimming import Lamp, Return, Switched
from calc.energy.rules import dimming as judged
from calc.sheets.bank.light_dimming.calculate import calculate, onward
from calc.sheets.bank.light_dimming.words import FINE, STEPS
from calc.sheets.parts.fields import HIGHEST_BANK, bank_voltage
from calc.units.kinds import CHARGE, CURRENT, NUMBER, POWER, RATIO, TIME, VOLTAGE
from calc.units.kinds.energy import FREQUENCY
from calc.worksheet.declare import Output
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Bars, Row
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="light-dimming",
    title="Light dimming",
    question="What does dimming save?",
    about="What dimming saves in an evening, and the rating of the dimmer.",
    calculate=calculate,
    picture=Bars(
        rows=(Row("Full brightness", "full_charge"), Row("Dimmed", "dimmed_charge")),
        caption="What the lamps take from the bank in an evening",
    ),
    fields=(
        Quantity(id="power", label="Power of the lamps", symbol="P", kinds=(POWER,), default="24 W", low="0.1 W", high="2000 W", hint="All that are on together, at full brightness and this voltage."),
        Quantity(id="level", label="Dimmed to", symbol="d", kinds=(RATIO,), default="40 %", low="1 %", high="100 %", hint="Share of the time the pulses are on."),
        Quantity(id="hours", label="Hours in an evening", symbol="t", kinds=(TIME,), default="5 h", low="0.1 h", high="24 h", hint="Hours the lamps are on."),
        replace(bank_voltage("12.8 V"), high=HIGHEST_BANK),
        Choice(id="lamp", label="Lamps", of=Lamp, default=Lamp.STRIP, options=(Option(Lamp.STRIP, "LED strip or lamp with resistors", aliases=("LED strip", "bare LED")), Option(Lamp.FILAMENT, "filament or halogen"), Option(Lamp.REGULATED, "LED lamp with its own regulator", aliases=("own regulator", "driver"))), hint="A lamp marked 10 to 30 V has a regulator inside."),
        Quantity(id="zone_power", advanced=True, optional=True, label="Largest zone on one dimmer", symbol="P_z", kinds=(POWER,), low="0.1 W", high="2000 W", example="12 W", hint="If each zone has its own dimmer. Empty: one for all."),
        Quantity(id="rated", advanced=True, optional=True, label="Rating of the dimmer", symbol="I_r", kinds=(CURRENT,), low="0.1 A", high="200 A", example="8 A", hint="For one channel, continuous, at its temperature."),
        Choice(id="switches", advanced=True, label="The dimmer switches", of=Switched, default=Switched.UNKNOWN, options=(Option(Switched.UNKNOWN, "not known"), Option(Switched.PLUS, aliases=("high side",)), Option(Switched.MINUS, aliases=("low side",))), hint="Many cheap ones, and all for RGB strips, switch the minus."),
        Choice(id="returns", advanced=True, label="Minus of the lamps", of=Return, default=Return.UNKNOWN, options=(Option(Return.UNKNOWN, "not known"), Option(Return.OWN_WIRE, "own wire", aliases=("insulated",)), Option(Return.BODY, "the body", aliases=("chassis", "frame"))), hint="By a wire back to the dimmer, or through sheet metal."),
        Quantity(id="rise", advanced=True, label="Charging voltage against that", symbol="r", kinds=(RATIO,), default="114 %", low="100 %", high="135 %", hint="14.6 V against 12.8 V is 114 %."),
        Quantity(id="held", advanced=True, only_if=("lamp", Lamp.STRIP), label="Share of the voltage across the LEDs", symbol="h", kinds=(RATIO,), default="80 %", low="10 %", high="92 %", hint="Three white LEDs have about 10 V of 12.8 V (no source)."),
        Quantity(id="frequency", advanced=True, optional=True, label="Frequency of the pulses", symbol="f", kinds=(FREQUENCY,), low="10 Hz", high="200 kHz", example="2 kHz", hint="From the data sheet."),
        Quantity(id="own", advanced=True, label="The dimmer's own draw", symbol="I_o", kinds=(CURRENT,), default="0 mA", low="0 mA", high="500 mA", hint="With the lamps off. Measure it: a radio remote draws some."),
    ),
    results=(
        Output(id="saved_charge", label="Saved in an evening", symbol="Q_s", kind=CHARGE),
        Output(id="full_charge", label="At full brightness", symbol="Q_f", kind=CHARGE),
        Output(id="dimmed_charge", label="Dimmed", symbol="Q_d", kind=CHARGE, hide_if_none=True),
        Output(id="seen", label="Perceived brightness, of full", symbol="L", kind=RATIO, hide_if_none=True),
        Output(id="lasts", label="The same charge would last", symbol="t_l", kind=TIME, hide_if_none=True),
        Output(id="dimmer_current", label="Current through the dimmer, undimmed", symbol="I_d", kind=CURRENT),
        Output(id="charging_current", label="The same while charging", symbol="I_h", kind=CURRENT),
        Output(id="dimmer_rating", label="Rating to look for", symbol="I_n", kind=CURRENT),
        Output(id="own_charge", label="The dimmer's own draw, a day", symbol="Q_o", kind=CHARGE),
        Output(id="onward", label="Go on with", hide_if_none=True, needs_step=False, find=onward),
    ),
    intermediates=(
        Output(id="zone", label="Power on the dimmer", symbol="P_1", kind=POWER),
        Output(id="exponent", label="Exponent of the power", symbol="p", kind=NUMBER),
        Output(id="power_share", label="Share of the power", symbol="s", kind=RATIO),
        Output(id="light_exponent", label="Exponent of the light", symbol="q", kind=NUMBER),
        Output(id="light", label="Share of the light", symbol="Y", kind=RATIO),
        Output(id="charging_voltage", label="Voltage while charging", symbol="V_h", kind=VOLTAGE),
        Output(id="growth", label="Current while charging, against that", symbol="g", kind=NUMBER),
        Output(id="margin", label="Margin", symbol="m", kind=NUMBER),
        Output(id="day", label="A day", symbol="t_24", kind=TIME),
    ),
    steps=STEPS,
    rules=(
        judged.NOT_DIMMABLE, judged.DIMMER_BRIDGED, judged.DIMMER_TOO_SMALL, judged.DIMMER_MAY_BE_BRIDGED,
        judged.DIMMER_TIGHT, judged.DIMMER_TAKES_MORE, judged.UNDIMMED, judged.SLOW_PULSES, FINE,
        judged.SEEN_BRIGHTER, judged.RETURN_WIRING, judged.STRIP_HOT_ON_CHARGER, judged.STRIP_RATED_AT_12_V, judged.FILAMENT_DIMS_FAST,
        judged.OWN_DRAW, judged.NO_SWITCH,
        judged.LOOK_WHAT_IT_SWITCHES, judged.ZONES, judged.ASK_FREQUENCY, judged.AERIALS,
    ),
    valid="Lamps that follow the pulses. The values for a filament are good near full brightness and rough far below it.",
    summary="{saved_charge} saved in an evening",
    summary_none="a lamp with its own regulator may not dim",
    keep_distinct=(("full_charge", "dimmed_charge"),),
)
