"""appliance-route: battery-voltage appliance or household appliance on the inverter?"""

from dataclasses import replace
from types import SimpleNamespace

from calc.energy import battery
from calc.sheets.bank.appliance_route.calculate import BUSY, BY_HAND, LABELS, THERMOSTAT, run
from calc.sheets.parts.bank import USUAL_SHARE, chemistry_field, percents
from calc.sheets.parts.fields import EFFICIENCY, bank_voltage
from calc.units.kinds import CHARGE, CURRENT, ENERGY, NUMBER, POWER, RATIO, TEMPERATURE, TIME
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.work import Worksheet


def _kept(v: SimpleNamespace) -> bool:
    return bool(v.cold_kept)


def _paused(v: SimpleNamespace) -> bool:
    return bool(v.cold_kept and v.off > 0)


def _extra(v: SimpleNamespace) -> bool:
    return v.extra_charge is not None


def _idles(v: SimpleNamespace) -> bool:
    return bool(v.idle_energy > 0)


_COLD = ("use", THERMOSTAT)

WORKSHEET = Worksheet(
    id="appliance-route",
    title="Appliance route",
    question="Battery-voltage appliance, or household appliance on the inverter?",
    entry_question="Will the household fridge do?",
    about="A household fridge on the inverter against one made for the bank, by day.",
    calculate=run,
    fields=(
        Quantity(id="dc_power", label="Battery-voltage one: power", symbol="P_d", kinds=(POWER,), default="45 W", low="0.1 W", high="3000 W", hint="While it really works, at the bank."),
        Quantity(id="dc_duty", label="Battery-voltage one: share of the day", symbol="d_d", kinds=(RATIO,), default="40 %", low="0.1 %", high="100 %", hint="That its compressor runs. A box that cools without one never rests."),
        Quantity(id="ac_power", label="Household one: power", symbol="P_a", kinds=(POWER,), default="80 W", low="0.1 W", high="3000 W", hint="While it really works, at its plug. The label is often higher."),
        Quantity(id="ac_duty", label="Household one: share of the day", symbol="d_a", kinds=(RATIO,), default="40 %", low="0.1 %", high="100 %", hint="Half an hour in every hour is 50 %."),
        Quantity(id="idle", label="Inverter's own draw", symbol="P_0", kinds=(POWER,), default="15 W", low="0 W", high="300 W", hint="On, with nothing plugged in: measure it at the bank. Often 0.5 to 2 % of its rating (no source)."),
        replace(EFFICIENCY, only_if=None),
        bank_voltage("12.8 V"),
        Choice(id="use", label="How it works", default=THERMOSTAT, options=(Option(THERMOSTAT, "by a thermostat: fridge, freezer"), Option(BY_HAND, "by hand: screen, tool, mixer")), hint="A thermostat may call at any hour; a hand can switch the inverter off too."),
        Choice(id="figures", label="Power and share are", default=LABELS, options=(Option(LABELS), Option("measured")), hint="Measured over some days, doors opened as usual. Labels are other people's days."),
        Quantity(id="hours_on", advanced=True, label="Hours a day it is fed", symbol="t_f", kinds=(TIME,), default="24 h", low="0.5 h", high="24 h", hint="The household one, from the inverter or any other way. Less than 24 h only if you switch it off."),
        Quantity(id="carried", advanced=True, label="Hours of these fed by others", symbol="t_s", kinds=(TIME,), default="0 h", low="0 h", high="24 h", hint="By a shore lead or a running engine that carries the load: nothing then leaves the bank, by either route."),
        Quantity(id="days", advanced=True, label="Days without charging", symbol="n", kinds=(NUMBER,), default="2", low="0.1", high="30", hint="That the bank must bridge."),
        chemistry_field("LFP", more=True),
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="5 %", high="100 %", default_by=("chemistry", USUAL_SHARE), hint="Of the capacity, before you call it empty."),
        Quantity(id="bank_efficiency", advanced=True, label="Efficiency of storing", symbol="η_b", kinds=(RATIO,), low="30 %", high="100 %", default_by=("chemistry", percents(battery.by_chemistry("battery_limits", "energy"))), hint="Energy out of the bank for energy in."),
        Quantity(id="sun_hours", advanced=True, label="Sun a day, as if at full strength", symbol="H", kinds=(TIME,), default="2 h", low="0.1 h", high="12 h", hint="A flat panel at 47° has about 2 h on a clear November day and 8 h in June; cloud takes its share."),
        Quantity(id="losses", advanced=True, label="Losses of the array", symbol="v", kinds=(RATIO,), default="14 %", low="0 %", high="80 %", hint="Dirt, heat, wires, charger: 14 % is common practice."),
        Quantity(id="charger", advanced=True, label="Charger on the engine", symbol="I_c", kinds=(CURRENT,), default="30 A", low="1 A", high="500 A", hint="What it gives the bank on the road."),
        Quantity(id="room", advanced=True, only_if=_COLD, label="Air in which the shares hold", symbol="T_r", kinds=(TEMPERATURE,), default="25 °C", low="12 °C", high="45 °C", hint="Where they were measured, or meant."),
        Quantity(id="hot", advanced=True, only_if=_COLD, label="Air on a hot day", symbol="T_h", kinds=(TEMPERATURE,), default="35 °C", low="12 °C", high="60 °C", hint="Around the appliance, behind it too."),
        Quantity(id="cold", advanced=True, only_if=_COLD, label="Inside the box", symbol="T_c", kinds=(TEMPERATURE,), default="5 °C", low="-25 °C", high="10 °C", hint="A freezer is near -18 °C."),
    ),
    results=(
        Output(id="extra_charge", label="The household one takes more, a day", symbol="ΔQ", kind=CHARGE, rounding=UP),
        Output(id="dc_charge", label="Battery-voltage one, a day", symbol="Q_d", kind=CHARGE, rounding=UP),
        Output(id="ac_charge", label="Household one, a day", symbol="Q_a", kind=CHARGE, rounding=UP),
        Output(id="idle_charge", label="Of that, the inverter's own draw", symbol="Q_0", kind=CHARGE, rounding=UP),
        Output(id="spared_charge", label="The household one takes less, a day", symbol="ΔQ_s", kind=CHARGE, rounding=DOWN, hide_if_none=True),
        Output(id="dc_energy", label="Battery-voltage one, energy a day", symbol="E_d", kind=ENERGY, rounding=UP),
        Output(id="ac_energy", label="Household one, energy a day", symbol="E_a", kind=ENERGY, rounding=UP),
        Output(id="extra_bank", label="To carry the difference: more bank", symbol="C_x", kind=CHARGE, rounding=UP, hide_if_none=True),
        Output(id="extra_array", label="And more array", symbol="P_x", kind=POWER, rounding=UP, hide_if_none=True),
        Output(id="extra_drive", label="Or more driving a day", symbol="t_x", kind=TIME, rounding=UP, hide_if_none=True),
        Output(id="dc_hot", label="On a hot day: battery-voltage one", symbol="Q_dh", kind=CHARGE, rounding=UP, hide_if_none=True),
        Output(id="ac_hot", label="On a hot day: household one", symbol="Q_ah", kind=CHARGE, rounding=UP, hide_if_none=True),
        Output(id="ac_year", label="Household one in a year, at its plug", symbol="E_y", kind=ENERGY, unit="kilowatt * hour"),
        Output(id="onward", label="Go on with", hide_if_none=True, needs_step=False),
    ),
    intermediates=(
        Output(id="day", label="A day", symbol="t_24", kind=TIME),
        Output(id="from_bank", label="Hours from the bank", symbol="t_b", kind=TIME, rounding=UP),
        Output(id="banked", label="Share of its hours from the bank", symbol="b", kind=RATIO),
        Output(id="direct_banked", label="Share of that from the bank", symbol="b_d", kind=RATIO),
        Output(id="dc_run", label="Battery-voltage one runs", symbol="t_d", kind=TIME),
        Output(id="ac_need", label="Household one would run", symbol="t_n", kind=TIME),
        Output(id="ac_run", label="Household one runs", symbol="t_a", kind=TIME),
        Output(id="off", label="Switched off", symbol="t_o", kind=TIME),
        Output(id="idle_energy", label="Inverter's own draw, energy a day", symbol="E_0", kind=ENERGY, rounding=UP),
        Output(id="idle_share", label="Share of the inverter's own draw", symbol="s_0", kind=RATIO),
        Output(id="hot_factor", label="Hot day against the usual", symbol="f", kind=NUMBER),
        Output(id="dc_hot_run", label="Battery-voltage one runs on a hot day", symbol="t_dh", kind=TIME),
        Output(id="ac_hot_run", label="Household one runs on a hot day", symbol="t_ah", kind=TIME),
        Output(id="year", label="Days of a year", symbol="n_y", kind=NUMBER),
    ),
    steps=(
        Step(of="day", source="practice", says="All is reckoned by the day."),
        Step(of="direct_banked", formula="(day - carried) / day", when=_kept, says="The rest is carried by a lead or an engine."),
        Step(of="direct_banked", formula="(hours_on - carried) / hours_on", when=lambda v: not _kept(v), says="By hand it is used in the same hours as the other."),
        Step(of="dc_run", formula="min(day * dc_duty, day)", says="It is fed day and night."),
        Step(of="dc_energy", formula="dc_power * dc_run * direct_banked", source="ohm", says="Power over the time it really runs."),
        Step(of="dc_charge", formula="dc_energy / voltage", source="ohm", says="As the bank counts it."),
        Step(of="from_bank", formula="hours_on - carried", says="The time for which the inverter is on."),
        Step(of="banked", formula="from_bank / hours_on", says="Its running is taken as even over the hours it is fed."),
        Step(of="ac_need", formula="day * ac_duty", says="What it needs in a day, however the hours are cut."),
        Step(of="ac_run", formula="min(ac_need, hours_on)", source="practice", says="What leaks in while it is off must be pumped out later; it cannot run longer than it is fed."),
        Step(of="off", formula="day - hours_on", when=lambda v: v.off > 0, says="Then nothing runs."),
        Step(of="idle_energy", formula="idle * from_bank", source="ohm", says="The inverter draws this with or without a load."),
        Step(of="idle_charge", formula="idle_energy / voltage", source="ohm", says="As the bank counts it."),
        Step(of="ac_energy", formula="idle_energy + ac_power * ac_run * banked / efficiency", source="ohm", says="The appliance's share, the inverter's loss on it, and the idle draw."),
        Step(of="ac_charge", formula="ac_energy / voltage", source="ohm", says="As the bank counts it."),
        Step(of="idle_share", formula="idle_energy / ac_energy", when=lambda v: v.idle_share is not None, says="This part cools nothing."),
        Step(of="extra_charge", formula="ac_charge - dc_charge", when=_extra, says="What the household one costs in charge."),
        Step(of="spared_charge", formula="dc_charge - ac_charge", when=lambda v: not _extra(v), says="What the household one saves in charge."),
        Step(of="extra_bank", formula="extra_charge * days / usable", when=_extra, says="For the days without charging, at the share you use. Cold and age ask for more: see bank size."),
        Step(of="extra_array", formula="extra_charge * voltage / (bank_efficiency * (1 - losses) * sun_hours)", source="practice", when=_extra, says="To bring the difference every day, as if all of it went through the bank."),
        Step(of="extra_drive", formula="extra_charge / (bank_efficiency * charger)", source="practice", when=_extra, says="While the bank takes all that the charger gives, which near full it does not."),
        Step(of="hot_factor", formula="max(1, (hot - cold) / (room - cold))", source="warm-room", when=_kept, says="What leaks in goes with the difference in temperature; a compressor also pumps worse in heat, which comes on top."),
        Step(of="dc_hot_run", formula="min(dc_run * hot_factor, day)", when=_kept, says="No longer than all day."),
        Step(of="dc_hot", formula="dc_power * dc_hot_run * direct_banked / voltage", source="ohm", when=_kept, says="In the same way."),
        Step(of="ac_hot_run", formula="min(ac_need * hot_factor, hours_on)", when=_kept, says="No longer than it is fed."),
        Step(of="ac_hot", formula="(idle_energy + ac_power * ac_hot_run * banked / efficiency) / voltage", source="ohm", when=_kept, says="The idle draw stays as it is."),
        Step(of="year", source="practice", says="To compare with an energy label."),
        Step(of="ac_year", formula="ac_power * ac_need * year", source="ohm", says="Without the inverter, as labels are."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: not v.served and v.cold_kept, says="Not the household one: it needs to run {ac_need} a day and is fed {hours_on}. What is inside warms."),
        Verdict(verdict=STOP, when=lambda v: not v.served, says="This does not add up: the household one is used {ac_need} a day and fed {hours_on}."),
        Verdict(verdict=CAUTION, when=lambda v: v.near, says="Little between them: {dc_charge} a day for the battery-voltage one, {ac_charge} for the household one."),
        Verdict(verdict=CAUTION, when=lambda v: _extra(v) and not v.dc_hot_holds, says="The battery-voltage one takes less, {dc_charge} a day against {ac_charge}, but on a hot day it has nothing in hand."),
        Verdict(verdict=CAUTION, when=_extra, says="Take the battery-voltage one: {dc_charge} a day against {ac_charge}. The household one would cost {extra_charge} more every day."),
        Verdict(verdict=CAUTION, when=_paused, says="The household one takes less, {ac_charge} a day against {dc_charge}, but it is off for {off} and warms."),
        Verdict(verdict=CAUTION, when=lambda v: not v.ac_hot_holds, says="The household one takes less, {ac_charge} a day against {dc_charge}, but on a hot day it has nothing in hand."),
        Verdict(verdict=CAUTION, when=lambda v: not _idles(v) and v.from_bank > 0, says="The household one takes less, {ac_charge} a day against {dc_charge}, with an inverter that draws nothing for itself. Measure that first: every inverter draws something."),
        Verdict(verdict=CAUTION, when=lambda v: v.figures == LABELS, says="By the labels the household one takes less, {ac_charge} a day against {dc_charge}. Measure both before you decide."),
        Verdict(verdict=FINE, says="The household one takes {ac_charge} a day, the battery-voltage one {dc_charge}."),
    ),
    remarks=(
        Remark(when=lambda v: _extra(v) and not v.near, source="practice", says="What the cheaper appliance really costs: {extra_bank} more bank for {days} days, with more again for cold and age, and {extra_array} more array in {sun_hours} of sun a day or {extra_drive} more driving."),
        Remark(when=lambda v: _idles(v) and v.cold_kept, source="practice", says="{idle_charge} a day, {idle_share} of what the household one takes, is the inverter's own draw. It cools nothing, and it runs day and night because a thermostat may call at any hour."),
        Remark(when=lambda v: _idles(v) and not v.cold_kept and v.off == 0, source="practice", says="Used by hand, it lets the inverter rest: switch that off with it and set the hours it is fed. Day and night the idle draw alone takes {idle_charge}."),
        Remark(when=lambda v: _idles(v) and v.cold_kept, source="practice", says="A standby or search mode is no cure: it looks for a load in short pulses, and a compressor's electronics may not wake it, or wake it and stall the start."),
        Remark(when=_kept, source="motor-start", says="A household compressor asks about six times its running current for a moment as it starts. The inverter must bear that every time, at the end of a cold night too."),
        Remark(when=_paused, source="practice", says="Off for {off} a day it saves the idle draw of those hours, not the cold: what leaks in is pumped out later. Keep food that spoils out of a box that warms above 5 °C."),
        Remark(when=lambda v: v.carried > 0, source="practice", says="{carried} a day count for neither, on trust: the lead or the engine must carry the load by itself, and an inverter fed from the bank on the road still takes from it if the charger gives less."),
        Remark(when=lambda v: not v.ac_hot_holds, source="warm-room", says="In air of {hot} the household one would have to run nine tenths of its hours or more: it may not hold its cold."),
        Remark(when=lambda v: not v.dc_hot_holds, source="warm-room", says="In air of {hot} the battery-voltage one would have to run nine tenths of the day or more: it may not hold its cold."),
        Remark(when=lambda v: v.cold_kept and v.dc_duty > BUSY, source="practice", says="The battery-voltage one hardly ever rests. So does a cool box without a compressor, at several times the charge: compare with one that has a compressor."),
        Remark(when=lambda v: v.figures == LABELS, source="practice", says="A label tells the most it draws, not how much of the day. Measure the charge of two days with the door opened as usual, and set both figures from that."),
        Remark(source="practice", says="An inverter's output is mains voltage and can kill; its fixed wiring is for a licensed person. A fridge made for the bank keeps that out of the night."),
        Remark(when=lambda v: v.chemistry == "LFP" and _extra(v), source="lfp-frost", says="Whichever way the difference is brought back: never charge an LFP battery below 0 °C."),
        Remark(level=NOTE, when=_kept, source="warm-room", says="On a hot day it is at least {dc_hot} against {ac_hot}. Leave room for air behind either one: a shut-in condenser makes every day a hot one."),
        Remark(level=NOTE, source="practice", says="At this rate the household one would use {ac_year} a year at its plug. If its energy label says much less, the share of the day above is too high."),
        Remark(level=NOTE, source="practice", says="A peak efficiency holds a little of the idle draw already, so the household figure is a little on the high side."),
    ),
    valid="Steady averages over a day. Warm drinks put in and a door that stands open come on top, the same for both.",
    summary="{extra_charge} more a day by inverter",
    summary_none="the household one takes less",
    keep_distinct=(("dc_charge", "ac_charge"),),
)
