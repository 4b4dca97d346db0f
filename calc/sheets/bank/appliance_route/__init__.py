"""appliance-route: battery-voltage appliance or household appliance on the inverter?"""

# fmt: off
from dataclasses import replace

from calc.energy import battery
from calc.energy.appliances import Figures, Use
from calc.energy.rules import appliances as judged
from calc.energy.rules.inverter import OUTPUT_CAN_KILL
from calc.sheets.bank.appliance_route.calculate import calculate, onward
from calc.sheets.bank.appliance_route.words import FINE, STEPS
from calc.sheets.parts.bank import USUAL_SHARE, USUAL_VOLTAGE, chemistry_field, percents
from calc.sheets.parts.fields import EFFICIENCY, bank_voltage
from calc.units.kinds import CHARGE, CURRENT, ENERGY, NUMBER, POWER, RATIO, TEMPERATURE, TIME
from calc.worksheet.declare import Output, Placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Bars, Row
from calc.worksheet.work import Worksheet

_COLD = ("use", Use.THERMOSTAT)

WORKSHEET = Worksheet(
    id="appliance-route",
    title="Appliance route",
    question="An appliance for the battery, or a household one on the inverter?",
    about="A household fridge on the inverter compared with a 12 V or 24 V one.",
    calculate=calculate,
    picture=Bars(
        rows=(Row("Battery-voltage one", "dc_charge"), Row("Household one, by inverter", "ac_charge", part=("idle_charge", "inverter’s own draw"))),
        caption="What each takes from the bank in a day",
    ),
    fields=(
        Quantity(id="dc_power", label="Battery-voltage one: power", symbol="P_d", kinds=(POWER,), default="45 W", low="0.1 W", high="3000 W", hint="While it runs, at the bank."),
        Quantity(id="dc_duty", label="Battery-voltage one: share of the day", symbol="d_d", kinds=(RATIO,), default="40 %", low="0.1 %", high="100 %", hint="Share its compressor runs. A box without one runs all the time."),
        Quantity(id="ac_power", label="Household one: power", symbol="P_a", kinds=(POWER,), default="80 W", low="0.1 W", high="3000 W", hint="While it runs, at its plug. The label is often higher."),
        Quantity(id="ac_duty", label="Household one: share of the day", symbol="d_a", kinds=(RATIO,), default="40 %", low="0.1 %", high="100 %", hint="Half an hour in every hour is 50 %."),
        Quantity(id="idle", label="Inverter's own draw", symbol="P_0", kinds=(POWER,), default="15 W", low="0 W", high="300 W", hint="Nothing plugged in, at the bank. Often 0.5 to 2 % of rating."),
        replace(EFFICIENCY, advanced=True, only_if=None),
        chemistry_field("LFP", more=True),
        replace(bank_voltage(""), advanced=True, default_by=("chemistry", USUAL_VOLTAGE)),
        Choice(id="use", advanced=True, label="How it works", of=Use, default=Use.THERMOSTAT, options=(Option(Use.THERMOSTAT, "by a thermostat: fridge, freezer"), Option(Use.BY_HAND, "by hand: screen, tool, mixer", aliases=("by hand",))), hint="A thermostat switches at any hour; by hand, also the inverter."),
        Choice(id="figures", advanced=True, label="Power and share are", of=Figures, default=Figures.LABELS, options=(Option(Figures.LABELS, "from labels"), Option(Figures.MEASURED)), hint="Best: measured over some days, doors opened as usual."),
        Quantity(id="hours_on", advanced=True, label="Hours a day it has power", symbol="t_f", kinds=(TIME,), default="24 h", low="0.5 h", high="24 h", hint="The household one. Less than 24 h only if switched off."),
        Quantity(id="carried", advanced=True, label="Of these, hours not from the bank", symbol="t_s", kinds=(TIME,), default="0 h", low="0 h", high="24 h", hint="On shore power or with the engine running."),
        Quantity(id="days", advanced=True, label="Days without charging", symbol="n", kinds=(NUMBER,), default="2", low="0.1", high="30", hint="Days the bank must last."),
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="5 %", high="100 %", default_by=("chemistry", USUAL_SHARE), hint="Of the capacity, before you call it empty."),
        Quantity(id="bank_efficiency", advanced=True, label="Storage efficiency", symbol="η_b", kinds=(RATIO,), low="30 %", high="100 %", default_by=("chemistry", percents(battery.by_chemistry("battery_limits", "energy"))), hint="Energy out of the bank for energy in."),
        Quantity(id="sun_hours", advanced=True, label="Full-sun hours a day", symbol="H", kinds=(TIME,), default="2 h", low="0.1 h", high="12 h", hint="Flat panel at 47°, clear day: 2 h in November, 8 h in June."),
        Quantity(id="losses", advanced=True, label="Losses of the array", symbol="v", kinds=(RATIO,), default="14 %", low="0 %", high="80 %", hint="Dirt, heat, wires, charger: 14 % is common practice."),
        Quantity(id="charger", advanced=True, label="Charger on the engine", symbol="I_c", kinds=(CURRENT,), default="30 A", low="1 A", high="500 A", hint="What it gives the bank on the road."),
        Quantity(id="room", advanced=True, only_if=_COLD, label="Air temperature for these shares", symbol="T_r", kinds=(TEMPERATURE,), default="25 °C", low="12 °C", high="45 °C", hint="Where they were measured or rated."),
        Quantity(id="hot", advanced=True, only_if=_COLD, label="Air on a hot day", symbol="T_h", kinds=(TEMPERATURE,), default="35 °C", low="12 °C", high="60 °C", hint="Around and behind the appliance."),
        Quantity(id="cold", advanced=True, only_if=_COLD, label="Inside the box", symbol="T_c", kinds=(TEMPERATURE,), default="5 °C", low="-25 °C", high="10 °C", hint="A freezer is near -18 °C."),
    ),
    results=(
        Output(id="extra_charge", label="Extra charge for the household one, a day", symbol="ΔQ", kind=CHARGE),
        Output(id="dc_charge", at="direct.charge", label="Battery-voltage one, a day", symbol="Q_d", kind=CHARGE),
        Output(id="ac_charge", at="household.charge", label="Household one, a day", symbol="Q_a", kind=CHARGE),
        Output(id="idle_charge", label="Of that, inverter idle draw", symbol="Q_0", kind=CHARGE),
        Output(id="spared_charge", label="Charge saved by the household one, a day", symbol="ΔQ_s", kind=CHARGE, hide_if_none=True),
        Output(id="dc_energy", at="direct.energy", label="Battery-voltage one, energy a day", symbol="E_d", kind=ENERGY),
        Output(id="ac_energy", at="household.energy", label="Household one, energy a day", symbol="E_a", kind=ENERGY),
        Output(id="extra_bank", label="Extra bank for the difference", symbol="C_x", kind=CHARGE, hide_if_none=True),
        Output(id="extra_array", label="And extra solar array", symbol="P_x", kind=POWER, hide_if_none=True),
        Output(id="extra_drive", label="Or extra driving a day", symbol="t_x", kind=TIME, hide_if_none=True),
        Output(id="dc_hot", at="direct.hot_charge", label="On a hot day: battery-voltage one", symbol="Q_dh", kind=CHARGE, hide_if_none=True),
        Output(id="ac_hot", at="household.hot_charge", label="On a hot day: household one", symbol="Q_ah", kind=CHARGE, hide_if_none=True),
        Output(id="ac_year", at="year_energy", label="Household one in a year, at its plug", symbol="E_y", kind=ENERGY, unit="kilowatt * hour"),
        Output(id="onward", label="Go on with", hide_if_none=True, needs_step=False, find=onward),
    ),
    intermediates=(
        Output(id="day", label="A day", symbol="t_24", kind=TIME),
        Output(id="from_bank", label="Hours from the bank", symbol="t_b", kind=TIME),
        Output(id="banked", at="household.banked", label="Share of its hours from the bank", symbol="b", kind=RATIO),
        Output(id="direct_banked", at="direct.banked", label="Share of that from the bank", symbol="b_d", kind=RATIO),
        Output(id="dc_run", at="direct.running", label="Battery-voltage one runs", symbol="t_d", kind=TIME),
        Output(id="ac_need", at="household.need", label="Household one would run", symbol="t_n", kind=TIME),
        Output(id="ac_run", at="household.running", label="Household one runs", symbol="t_a", kind=TIME),
        Output(id="off", label="Switched off", symbol="t_o", kind=TIME),
        Output(id="idle_energy", label="Inverter's own draw, energy a day", symbol="E_0", kind=ENERGY),
        Output(id="idle_share", label="Share of the inverter's own draw", symbol="s_0", kind=RATIO),
        Output(id="hot_factor", label="Hot day against the usual", symbol="f", kind=NUMBER),
        Output(id="dc_hot_run", at="direct.hot_running", label="Battery-voltage one runs on a hot day", symbol="t_dh", kind=TIME),
        Output(id="ac_hot_run", at="household.hot_running", label="Household one runs on a hot day", symbol="t_ah", kind=TIME),
        Output(id="year", label="Days of a year", symbol="n_y", kind=NUMBER),
    ),
    steps=STEPS,
    rules=(
        judged.NOT_FED, judged.USE_BEYOND_FED, judged.DIRECT_WEAK_IN_HEAT,
        judged.HOUSEHOLD_PAUSES, judged.HOUSEHOLD_WEAK_IN_HEAT, judged.NO_IDLE_DRAW, judged.FROM_LABELS,
        judged.LITTLE_BETWEEN, judged.HOUSEHOLD_TAKES_MORE, FINE,
        judged.REAL_COST, judged.IDLES_FOR_A_THERMOSTAT, judged.IDLES_BY_HAND, judged.SEARCH_MODE, judged.COMPRESSOR_START,
        judged.OFF_SAVES_IDLE_ONLY, judged.FED_BY_OTHERS, judged.DIRECT_MAY_NOT_HOLD, judged.NEVER_RESTS,
        Placed(rule=OUTPUT_CAN_KILL, text="Mains voltage can kill, and an inverter's output is mains voltage: its fixed wiring is for a licensed person. A battery-voltage fridge needs none of it."),
        judged.NO_CHARGE_IN_FROST,
        judged.HOT_DAY, judged.YEAR_BY_LABEL, judged.PEAK_HOLDS_IDLE,
    ),
    valid="Steady averages over a day. Warm drinks and an open door add the same to both.",
    summary="{extra_charge} more a day by inverter",
    older_defaults=({"voltage": "12.8 V"},),
    summary_none="the household one takes less",
    keep_distinct=(("dc_charge", "ac_charge"),),
)
