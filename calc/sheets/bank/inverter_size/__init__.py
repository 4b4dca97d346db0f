"""inverter-size: what inverter, and what does it ask of the cables?"""

# fmt: off
from dataclasses import replace

from calc.electrical.rules.single_cable import PARALLEL
from calc.energy.rules import bank as banks
from calc.energy.rules import inverter as judged
from calc.sheets.bank.inverter_size.calculate import calculate, letters, onward, weightings
from calc.sheets.bank.inverter_size.words import FINE, STEPS
from calc.sheets.parts.bank import CAPACITY, USUAL_VOLTAGE, chemistry_field
from calc.sheets.parts.fields import EFFICIENCY, bank_voltage
from calc.units.kinds import CHARGE, CURRENT, ENERGY, NUMBER, POWER, RATIO, TIME, VOLTAGE
from calc.units.kinds.energy import APPARENT, C_RATE
from calc.units.kinds.heat import HEAT
from calc.units.shown import UP
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Quantity
from calc.worksheet.pictures import Bars, Limit, Row
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="inverter-size",
    title="Inverter size",
    question="What inverter, and which cables does it need?",
    about="Continuous and surge rating, current at the bank, and idle draw.",
    calculate=calculate,
    picture=Bars(
        rows=(Row("Steady", "dc_current"), Row("If one load waits", "staggered_current"), Row("In the surge", "surge_current")),
        limits=(Limit("The bank may give", "max_current"), Limit("4/0 AWG can carry", "thickest_cable")),
        caption="Current from the bank",
    ),
    fields=(
        Quantity(id="running", label="Running power", symbol="P", kinds=(POWER,), default="1000 W", low="1 W", high="20000 W", hint="The largest load that runs at one time."),
        Quantity(id="surge", label="Surge", symbol="P_s", kinds=(POWER,), default="1800 W", low="1 W", high="60000 W", hint="Short peak, as the largest motor starts while others run."),
        Quantity(id="power_factor", label="Power factor", symbol="λ", kinds=(NUMBER,), default="0.95", low="0.3", high="1", hint="Heaters 1; small motors 0.5 to 0.8; simple chargers 0.6 (no source)."),
        replace(EFFICIENCY, advanced=True, only_if=None, hint="At this load, from the maker's curve; often 90 % (no source)."),
        Quantity(id="idle", advanced=True, label="Inverter's own draw", symbol="P_0", kinds=(POWER,), default="15 W", low="0 W", high="500 W", hint="Nothing plugged in. Often 0.5 to 2 % of rating (no source)."),
        Quantity(id="lowest_voltage", label="Lowest bank voltage", symbol="V_l", kinds=(VOLTAGE,), default="11.5 V", low="0.8 V", high="1000 V", hint="Under load, nearly empty: just above the inverter's cut-off."),
        Quantity(id="hours_on", advanced=True, label="Hours a day it is on", symbol="t", kinds=(TIME,), default="8 h", low="0 h", high="24 h", hint="Not only the hours with a load."),
        chemistry_field("LFP", more=True),
        replace(bank_voltage(""), default_by=("chemistry", USUAL_VOLTAGE)),
        Quantity(id="motor", advanced=True, optional=True, label="Largest motor that starts", symbol="P_m", kinds=(POWER,), low="1 W", high="20000 W", example="300 W", hint="Its running power, part of the above: compressor, pump, tool."),
        Quantity(id="start_factor", advanced=True, label="Its starting power, as a multiple", symbol="k", kinds=(NUMBER,), default="6", low="1", high="12", hint="Usually 5 to 7. See its plate, or measure with peak hold."),
        Quantity(id="can_wait", advanced=True, optional=True, label="A load that can wait", symbol="P_w", kinds=(POWER,), low="1 W", high="20000 W", example="600 W", hint="Part of the running power that can run later."),
        Quantity(id="taken", advanced=True, label="Energy taken through it a day", symbol="E", kinds=(ENERGY,), default="500 Wh", low="1 Wh", high="200 kWh", hint="By the appliances, at the plug."),
        replace(CAPACITY, advanced=True, optional=True, default="", example="200 Ah"),
        Quantity(id="max_current", advanced=True, optional=True, label="Current limit of the bank", symbol="I_b", kinds=(CURRENT,), low="1 A", high="5000 A", example="150 A", hint="Continuous, by data sheet or management system. Parallel batteries add."),
    ),
    results=(
        Output(id="continuous", label="Continuous rating needed", symbol="S", kind=APPARENT, rounding=UP),
        Output(id="surge_rating", label="Surge rating needed", symbol="S_s", kind=APPARENT, rounding=UP),
        Output(id="dc_current", at="current", label="Current from the bank", symbol="I", kind=CURRENT),
        Output(id="surge_current", label="Current in the surge", symbol="I_s", kind=CURRENT),
        Output(id="idle_charge", label="Idle draw, a day", symbol="Q_0", kind=CHARGE),
        Output(id="idle_share", label="Idle draw as a share of the day's energy", symbol="s_0", kind=RATIO),
        Output(id="day_efficiency", label="Efficiency over the day", symbol="η_d", kind=RATIO),
        Output(id="heat", label="Heat while it runs", symbol="P_h", kind=HEAT, both=True),
        Output(id="staggered", at="waiting.apparent", label="Continuous rating if one waits", symbol="S_w", kind=APPARENT, hide_if_none=True),
        Output(id="staggered_current", at="waiting.current", label="Current from the bank if one waits", symbol="I_w", kind=CURRENT, hide_if_none=True),
        Output(id="c_rate", at="draw.rate", label="Current against the bank's capacity", symbol="r", kind=C_RATE, hide_if_none=True),
        Output(id="onward", label="Go on with", hide_if_none=True, needs_step=False, find=onward),
        Output(id="code_letters", label="Starting power by the motor's code letter, per horsepower", find=letters),
        Output(id="weights", label="Weights for efficiency at part load", find=weightings),
    ),
    intermediates=(
        Output(id="motor_start", label="Power as the motor starts", symbol="P_k", kind=POWER),
        Output(id="surge_power", label="Surge used here", symbol="P_x", kind=POWER),
        Output(id="idle_energy", label="Idle draw, energy a day", symbol="E_0", kind=ENERGY),
        Output(id="day_energy", label="Energy from the bank a day", symbol="E_b", kind=ENERGY),
        Output(id="staggered_power", at="waiting.power", label="Running power if one waits", symbol="P_y", kind=POWER),
        Output(id="usual_rate", label="Usual continuous current of such a bank", kind=C_RATE),
        Output(id="heavy_cable", label="Ampacity of 2/0 AWG", kind=CURRENT),
        Output(id="fuse_need", label="Its fuse, at least", symbol="I_n", kind=CURRENT, rounding=UP),
        Output(id="each_cable", at="single_cable.each", label="Current in each parallel cable", kind=CURRENT),
        Output(id="each_fuse", at="single_cable.each_fuse", label="Fuse of each cable, at least", kind=CURRENT, rounding=UP),
        Output(id="thickest_cable", at="single_cable.thickest", label="Ampacity of 4/0 AWG", kind=CURRENT),
    ),
    steps=STEPS,
    rules=(
        judged.VOLTAGE_OF_ANOTHER_BANK,  # or else all that follows is of another bank
        Placed(rule=banks.BEYOND_ALLOWED, at="allowed", headline="Use fewer loads at once or a stronger bank: {dc_current} is needed, and it may give {allowed.most}."),
        *placed("single_cable", *PARALLEL[:1]),
        *placed("draw", banks.BEYOND_ANY_BANK),
        Placed(rule=banks.HEAVY_LOAD, at="draw", headline="Check the data sheet: {dc_current} is {draw.rate} on this bank, and {usual_rate} is the usual continuous limit."),
        *placed("single_cable", *PARALLEL[1:]),
        judged.SURGE_BEYOND_BANK, judged.BEYOND_ONE_BATTERY,
        judged.SURGE_BEYOND_BRIEF, judged.NO_SAG_ALLOWED, judged.MUCH_FOR_IDLING, FINE,
        judged.OUTPUT_CAN_KILL, judged.TRANSFER_SWITCH, judged.PART_FROM_BANK_FIRST, judged.CABLE_AND_FUSE, judged.BEYOND_HEAVY_CABLE,
        judged.SAGS_BEFORE_EMPTY, judged.STEEP_SURGE, judged.POOR_POWER_FACTOR, judged.MOTOR_POWER_FACTOR, judged.IDLE_DRAW,
        judged.IF_ONE_WAITS, judged.BANK_LIMIT_UNKNOWN,
        judged.HEAT_IN_A_LOCKER, judged.CURRENT_IN_PULSES, judged.CODE_LETTERS,
    ),
    valid="Steady loads at a fixed efficiency, with a short start. Choose the next larger inverter that is sold.",
    summary="{continuous} steady, {surge_rating} surge",
    older_defaults=({"voltage": "12.8 V", "running": "1500 W", "surge": "2500 W", "hours_on": "24 h"},),
    keep_distinct=(("dc_current", "thickest_cable"), ("c_rate", "usual_rate")),
    tables=(
        Table(of="code_letters", folded=True, columns=(Output(id="letter", label="Letter"), Output(id="power", label="With the rotor locked"), Output(id="known", label="How known"))),
        Table(of="weights", folded=True, columns=(Output(id="load", label="Load"), Output(id="cec", label="CEC"), Output(id="european", label="European"))),
    ),
)
