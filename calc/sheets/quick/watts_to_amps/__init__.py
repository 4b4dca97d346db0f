"""watts-to-amps: what current does this load ask of the bank?"""

# fmt: off
from dataclasses import replace

from calc.electrical.rules.single_cable import PARALLEL
from calc.energy.loads import LoadType
from calc.energy.rules import bank as banks
from calc.energy.rules import draw as of_draws
from calc.energy.rules import loads as judged
from calc.energy.rules.inverter import OUTPUT_CAN_KILL
from calc.sheets.parts.bank import CAPACITY, USUAL_SHARE, USUAL_VOLTAGE, chemistry_field
from calc.sheets.parts.fields import EFFICIENCY, ROUTE, bank_voltage
from calc.sheets.quick.watts_to_amps.calculate import calculate
from calc.sheets.quick.watts_to_amps.words import FINE, STEPS
from calc.units.kinds import CHARGE, CURRENT, ENERGY, POWER, RATIO, TIME
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.next_steps import Lead, alike
from calc.worksheet.pictures import Bars, Either, Limit, Row
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="watts-to-amps",
    title="Watts to amps",
    question="What current does this load draw from the bank?",
    about="Watts to amps and amp-hours: for a kettle, a fridge, an inverter.",
    calculate=calculate,
    picture=Either((
        Bars(
            needs="gives", rows=(Row("This takes", "charge"),), limits=(Limit("The bank gives", "gives"),),
            caption="Charge taken, against what you use of the bank",
        ),
        Bars(
            rows=(Row("This load", "current"), Row("2/0 AWG can carry", "heavy_cable"), Row("4/0 AWG can carry", "thickest_cable")), by_tens=True,
            caption="The current against thick cables, on a scale that grows by tens",
        ),
    )),
    fields=(
        Quantity(id="power", label="Power of the load", symbol="P", kinds=(POWER,), default="60 W", low="0.01 W", high="20000 W", hint="From the rating plate, or measured while it works."),
        chemistry_field("LFP", more=True),
        replace(bank_voltage(""), default_by=("chemistry", USUAL_VOLTAGE)),
        ROUTE,
        EFFICIENCY,
        Quantity(id="hours", label="How long it runs", symbol="t", kinds=(TIME,), default="1 h", low="0 h", high="8760 h", hint="The time it draws power, not the time plugged in."),
        Choice(id="load_type", advanced=True, label="Kind of load", of=LoadType, default=LoadType.ANY, options=(Option(LoadType.ANY, "any load"), Option(LoadType.HEAT, "resistive heat", aliases=("heat", "heater"))), hint="Resistive heat: a kettle, hob, fan heater, hair dryer, water heater element."),
        replace(CAPACITY, optional=True, default="", example="200 Ah", hint="To check whether the bank is enough. Empty: not compared."),
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %", default_by=("chemistry", USUAL_SHARE), hint="Of the capacity, before you call it empty."),
    ),
    older_defaults=({"power": "1500 W", "voltage": "12.5 V"},),
    results=(
        Output(id="current", at="load.current", label="Current from the bank", symbol="I", kind=CURRENT),
        Output(id="charge", label="Charge taken", symbol="Q", kind=CHARGE),
        Output(id="energy", label="Energy taken", symbol="E", kind=ENERGY),
        Output(id="gives", at="drawn.bank.gives", label="Usable charge of the bank", symbol="Q_u", kind=CHARGE, hide_if_none=True),
        Output(id="bank_share", at="drawn.share", label="Share of that used", symbol="s", kind=RATIO, hide_if_none=True),
    ),
    intermediates=(
        Output(id="factor", at="load.factor", label="Efficiency applied", symbol="η", kind=RATIO),
        Output(id="heavy_cable", label="Ampacity of 2/0 AWG", kind=CURRENT),
        Output(id="thickest_cable", at="single_cable.thickest", label="Ampacity of 4/0 AWG", kind=CURRENT),
    ),
    steps=STEPS,
    rules=(
        *placed("single_cable", *PARALLEL),
        Placed(rule=of_draws.BEYOND_BANK, at="drawn", headline="This takes {charge} in {hours}; your bank gives {gives}."),
        *placed("draw", banks.BEYOND_ANY_BANK),
        of_draws.ENDS_SOONER,
        Placed(rule=banks.HEAVY_LOAD, at="draw", headline="{current} is a heavy load for this bank, and {charge} is used in {hours}: check the maker's limit."),
        Placed(rule=banks.BEYOND_ONE_BATTERY, at="load_on_any_bank", headline="{current} is more than one usual battery can give; {charge} is used in {hours}."),
        *placed("drawn", of_draws.LITTLE_TO_SPARE),
        *placed("heat", judged.ALL_BECOMES_HEAT),
        FINE,
        judged.MOSTLY_HEAT_PERHAPS, judged.BEYOND_HEAVY_CABLE,
        *placed("load", judged.LOOSE_JOINT_HEATS, judged.IDLE_DRAW_APART, OUTPUT_CAN_KILL),
        judged.HEATER_OF_1500_W,
    ),
    leads=(
        Lead(label="The wire for it", sheet="wire-size", carry=alike("current", "voltage")),
        Lead(label="How long the bank runs it", sheet="runtime", needs=("capacity",),
             carry=(("load", "power"), *alike("chemistry", "voltage", "route", "efficiency", "capacity", "usable"))),
    ),
    valid="Steady power. A motor or compressor draws several times its running current while it starts.",
    summary="{current} from the bank",
)
