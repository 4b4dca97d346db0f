"""runtime: how long will the bank carry this?"""

# fmt: off
from dataclasses import replace

from calc.energy.limits import RATED_TIME
from calc.energy.rules import bank as banks
from calc.energy.rules import loads
from calc.energy.rules import run_time as judged
from calc.sheets.parts.bank import CAPACITY, CHEMISTRY, USUAL_EXPONENT, USUAL_SHARE, USUAL_VOLTAGE
from calc.sheets.parts.fields import EFFICIENCY, ROUTE, bank_voltage
from calc.sheets.quick.runtime.calculate import calculate
from calc.sheets.quick.runtime.words import FINE, STEPS
from calc.units.kinds import CHARGE, CURRENT, NUMBER, POWER, RATIO, TEMPERATURE, TIME
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Quantity
from calc.worksheet.pictures import Bars, Limit, Row
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="runtime",
    title="Run time",
    question="How long will the bank run this?",
    about="Run time of a bank, also in the cold and under a heavy load.",
    calculate=calculate,
    picture=Bars(
        rows=(Row("On the label", "capacity"), Row("It gives at this load", "usable_charge")),
        limits=(Limit("The job takes", "needed_charge", least=True),), caption="The bank, and what you get of it",
    ),
    fields=(
        CAPACITY,
        replace(CHEMISTRY, hint="Printed on the battery. It sets defaults below."),
        Quantity(id="load", label="Load", symbol="P", kinds=(POWER, CURRENT), default="100 W",
                 low="0.01 W | 0.001 A", high="20000 W | 2000 A",
                 hint="In watts, or in amps as measured at the bank."),
        replace(bank_voltage(""), default_by=("chemistry", USUAL_VOLTAGE)),
        ROUTE,
        EFFICIENCY,
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %",
                 default_by=("chemistry", USUAL_SHARE), hint="Of the capacity, before you call it empty."),
        Quantity(id="temperature", advanced=True, label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="25 °C",
                 low="-30 °C", high="60 °C", hint="Of the battery, not of the air."),
        Quantity(id="needed", advanced=True, label="Time it must last", symbol="t_n", kinds=(TIME,), optional=True, low="1 min", high="60 days", example="8 h",
                 hint="Until morning, or until the next charge. Empty: not compared."),
        Quantity(id="rated_hours", advanced=True, label="Hours of the rating", symbol="H", kinds=(TIME,), default="20 h",
                 low="0.5 h", high="120 h", hint="The discharge time of the label's capacity: 20 h on most."),
        Quantity(id="exponent", advanced=True, label="Peukert exponent", symbol="k", kinds=(NUMBER,), low="1", high="2",
                 default_by=("chemistry", USUAL_EXPONENT),
                 hint="How much a heavy load reduces the capacity."),
    ),
    results=(
        Output(id="runtime", label="Run time", symbol="t", kind=TIME),
        Output(id="usable_charge", label="Usable charge at this load", symbol="Q", kind=CHARGE),
        Output(id="needed_charge", label="Charge the job needs", symbol="Q_n", kind=CHARGE, hide_if_none=True),
        Output(id="current", at="load.current", label="Current from the bank", symbol="I", kind=CURRENT),
        Output(id="shortest", label="Shortest by the published exponents", kind=TIME),
        Output(id="longest", label="Longest by the published exponents", kind=TIME),
    ),
    intermediates=(
        Output(id="factor", at="load.factor", label="Efficiency applied", symbol="η", kind=RATIO),
        Output(id="cold_factor", at="usable.cold_factor", label="Factor for cold", symbol="f", kind=NUMBER, digits=4),
        Output(id="cold_capacity", at="usable.capacity", label="Capacity at this temperature", symbol="C_T", kind=CHARGE),
        Output(id="rated_current", at="discharge.rated_current", label="Rated current", symbol="I_H", kind=CURRENT),
        Output(id="slow", label="Slowest discharge considered", symbol="H_0", kind=TIME, unit="hour", find=lambda _: RATED_TIME),
        Output(id="nameplate_time", label="Time by the label alone", kind=TIME),
        Output(id="exponent_low", label="Lowest published exponent", symbol="k_low", kind=NUMBER, digits=4),
        Output(id="exponent_high", label="Highest published exponent", symbol="k_high", kind=NUMBER, digits=4),
    ),
    steps=STEPS,
    rules=(
        judged.TOO_SHORT,
        Placed(rule=banks.ACID_MAY_FREEZE, at="left", headline="About {runtime}, but at {left.state} its acid may freeze at {temperature}: use less of it, or keep it warmer."),
        *placed("draw", banks.BEYOND_ANY_BANK),
        Placed(rule=banks.HEAVY_LOAD, at="draw", headline="About {runtime} by charge, but {current} is a hard load for this bank: read the maker's limit."),
        Placed(rule=banks.DEEPER_THAN_HALF, at="usable", headline="About {runtime}, but discharging below half wears a lead-acid bank fast."),
        Placed(rule=banks.COLD_BEYOND_TABLE, at="bank", headline="About {runtime} at best: below −3.9 °C no factor for cold is published, so count on less."),
        Placed(rule=banks.IN_FROST, at="bank", headline="About {runtime} at best in this frost; the bank must not be charged until it is warmer."),
        Placed(rule=banks.NOTHING_KEPT_BACK, at="usable", headline="About {runtime}, but with no reserve: at the end the management system cuts everything off at once."),
        Placed(rule=banks.TOO_HOT, at="bank", headline="About {runtime}, but {temperature} is too hot for a battery: most may not be charged there."),
        judged.LITTLE_TO_SPARE,
        FINE,
        *placed("bank", banks.NEAR_FROST, banks.NO_FACTOR_FOR_COLD_LFP, banks.COLD_FROM_MEMORY),
        *placed("usable", banks.BELOW_A_FIFTH),
        *placed("load", loads.IDLE_DRAW, loads.MEASURED_AT_BANK),
        judged.LIGHTER_THAN_RATED, judged.PUBLISHED_EXPONENTS, judged.AGED_HOLDS_LESS,
    ),
    valid="One steady load on a healthy, fully charged bank. A bank that rests between loads lasts longer.",
    summary="about {runtime}",
    older_defaults=({"voltage": "12.8 V"},),
)
