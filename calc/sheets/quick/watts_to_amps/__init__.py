"""watts-to-amps: what current does this load ask of the bank?"""

# fmt: off
from calc.electrical.rules.single_cable import BEYOND_ONE_CABLE
from calc.energy.loads import LoadType
from calc.energy.rules import bank as banks
from calc.energy.rules import loads as judged
from calc.sheets.parts.fields import EFFICIENCY, ROUTE, bank_voltage
from calc.sheets.quick.watts_to_amps.calculate import calculate
from calc.sheets.quick.watts_to_amps.words import FINE, STEPS
from calc.units.kinds import CHARGE, CURRENT, ENERGY, POWER, RATIO, TIME
from calc.units.shown import UP
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="watts-to-amps",
    title="Watts to amps",
    question="What current does this load ask of the bank?",
    entry_question="Can the bank run this?",
    about="Watts to amps and amp-hours: a kettle, a fridge, an inverter.",
    calculate=calculate,
    fields=(
        Quantity(id="power", label="Power of the load", symbol="P", kinds=(POWER,), default="60 W", low="0.01 W", high="20000 W", hint="From the rating plate, or measured while it works."),
        bank_voltage("12.5 V"),
        ROUTE,
        EFFICIENCY,
        Quantity(id="hours", label="How long it runs", symbol="t", kinds=(TIME,), default="1 h", low="0 h", high="8760 h", hint="The time it really draws power, not the time it is plugged in."),
        Choice(id="load_type", label="Kind of load", of=LoadType, default=LoadType.ANY, options=(Option(LoadType.ANY, "any load"), Option(LoadType.HEAT, "resistive heat", aliases=("heat", "heater"))), hint="Resistive heat: a kettle, hob, fan heater, hair dryer, water heater element."),
    ),
    older_defaults=({"power": "1500 W"},),
    results=(
        Output(id="current", at="load.current", label="Current from the bank", symbol="I", kind=CURRENT, rounding=UP),
        Output(id="charge", label="Charge taken", symbol="Q", kind=CHARGE, rounding=UP),
        Output(id="energy", label="Energy taken", symbol="E", kind=ENERGY, rounding=UP),
    ),
    intermediates=(
        Output(id="factor", at="load.factor", label="Efficiency applied", symbol="η", kind=RATIO),
        Output(id="heavy_cable", label="Ampacity of 2/0 AWG", kind=CURRENT),
        Output(id="thickest_cable", at="single_cable.thickest", label="Ampacity of 4/0 AWG", kind=CURRENT),
    ),
    steps=STEPS,
    rules=(
        *placed("single_cable", BEYOND_ONE_CABLE),
        Placed(rule=banks.BEYOND_ONE_BATTERY, at="load", headline="{current} is more than one usual battery is made to give; {charge} goes in {hours}."),
        *placed("heat", judged.ALL_BECOMES_HEAT),
        FINE,
        judged.MOSTLY_HEAT_PERHAPS, judged.BEYOND_HEAVY_CABLE,
        *placed("load", judged.LOOSE_JOINT_HEATS, judged.IDLE_DRAW_APART, judged.INVERTER_KILLS),
        judged.HEATER_OF_1500_W,
    ),
    valid="Steady power. A motor or compressor asks several times its running current for a moment when it starts.",
    summary="{current} from the bank",
)
