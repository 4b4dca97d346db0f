"""standby-drain: how long may it stand?"""

# fmt: off
from dataclasses import replace

from calc.energy.rules import bank as banks
from calc.energy.rules import standing as judged
from calc.sheets.bank.standby_drain.calculate import calculate
from calc.sheets.bank.standby_drain.words import FINE, STEPS
from calc.sheets.parts.bank import (
    CAPACITY,
    CHEMISTRY,
    USUAL_LEFT,
    USUAL_MANAGEMENT_DRAW,
    USUAL_SELF_DISCHARGE,
    from_state,
    to_state,
)
from calc.units.kinds import CHARGE, CURRENT, NUMBER, RATIO, TEMPERATURE, TIME
from calc.units.kinds.energy import LOSS_RATE
from calc.worksheet.declare import Output, Placed
from calc.worksheet.fields import Quantity
from calc.worksheet.pictures import Bars, Either, Limit, Parts, Row
from calc.worksheet.work import Worksheet

_COLDEST = (("temperature", "coldest"),)

WORKSHEET = Worksheet(
    id="standby-drain",
    title="Standby drain",
    question="How long can I leave it parked?",
    about="Days until small loads and self-discharge empty a parked bank.",
    calculate=calculate,
    picture=Either((
        Bars(
            needs="away", rows=(Row("It may be parked for", "days"),), limits=(Limit("You are away", "away", least=True),),
            caption="How long the bank lasts, against your time away",
        ),
        Parts(
            parts=(("taken", "The drain"), ("managed", "Management system"), ("own", "Self-discharge")),
            caption="What takes the charge while it is parked",
        ),
    )),
    fields=(
        Quantity(id="drain", label="Drain while parked", symbol="I", kinds=(CURRENT,), default="60 mA", low="0 A", high="50 A",
                 hint="At the bank, everything as you leave it: alarm, relays, monitor."),
        CAPACITY,
        CHEMISTRY,
        from_state("100 %"),
        replace(to_state(usual=USUAL_LEFT), advanced=True),
        Quantity(id="self_discharge", advanced=True, label="Self-discharge", symbol="r_25", kinds=(LOSS_RATE,), low="0 %/month", high="100 %/month", default_by=("chemistry", USUAL_SELF_DISCHARGE),
                 hint="In a month near 25 °C. An old battery loses more."),
        Quantity(id="management", advanced=True, label="Management system's own draw", symbol="I_m", kinds=(CURRENT,), low="0 A", high="1 A", default_by=("chemistry", USUAL_MANAGEMENT_DRAW), since=2, before="0 A",
                 hint="Inside the battery, where no meter shows it. Ask its maker."),
        Quantity(id="away", label="How long you are away", symbol="t_a", kinds=(TIME,), optional=True, low="1 h", high="1500 days", example="30 days",
                 hint="If you know it, to check it."),
        Quantity(id="temperature", advanced=True, label="Warmest battery", symbol="T", kinds=(TEMPERATURE,), default="25 °C", low="-30 °C", high="60 °C",
                 hint="Mean of the warm days. Self-discharge doubles every 10 K above 25 °C."),
        Quantity(id="coldest", advanced=True, label="Coldest battery", kinds=(TEMPERATURE,), optional=True, low="-40 °C", high="60 °C", example="-10 °C",
                 hint="If parked in frost: a flat lead-acid bank freezes."),
    ),
    results=(
        Output(id="days", label="Can be parked for", symbol="t", kind=TIME, unit="day"),
        Output(id="shortest", label="Shortest by published values", kind=TIME, unit="day"),
        Output(id="longest", label="Longest by published values", kind=TIME, unit="day"),
        Output(id="daily", label="Drain in a day", symbol="Q_d", kind=CHARGE),
        Output(id="taken", label="Used by the drain by then", symbol="Q_I", kind=CHARGE),
        Output(id="managed", label="Used by the management system by then", symbol="Q_m", kind=CHARGE, hide_if_none=True),
        Output(id="own", label="Lost by self-discharge by then", symbol="Q_r", kind=CHARGE),
        Output(id="back", label="Left when you are back", symbol="s_b", kind=RATIO, hide_if_none=True),
        Output(id="largest_drain", label="Largest drain for your time away", symbol="I_a", kind=CURRENT, unit="milliampere", hide_if_none=True),
    ),
    intermediates=(
        Output(id="day", label="One day", symbol="t_d", kind=TIME, unit="hour"),
        Output(id="warmth", label="Factor for warmth", symbol="w", kind=NUMBER),
        Output(id="loss", label="Self-discharge there", symbol="r", kind=LOSS_RATE),
        Output(id="may_go", label="Charge available", symbol="Q", kind=CHARGE),
        Output(id="loss_low", label="Lowest self-discharge seen", symbol="r_low", kind=LOSS_RATE),
        Output(id="loss_high", label="Highest self-discharge seen", symbol="r_high", kind=LOSS_RATE),
        Output(id="freezes", at="left.freezes", label="Acid freezes at the end near", kind=TEMPERATURE),
    ),
    steps=STEPS,
    rules=(
        judged.IS_THERE,
        Placed(rule=banks.ACID_MAY_FREEZE, at="left", fields=_COLDEST, headline="Leave it full and disconnected, or take it inside: down to {to_state} its acid may freeze at {left.temperature}."),
        judged.TOO_LONG_BY_ITSELF, judged.TOO_LONG_EITHER_WAY, judged.TOO_LONG,
        Placed(rule=banks.BEYOND_ANY_BANK, at="draw"),
        Placed(rule=banks.HEAVY_LOAD, at="draw", headline="{drain} is too much for a standby drain: it is a heavy load for this bank."),
        judged.NEARLY_FLAT, judged.LEFT_BELOW_HALF, judged.BELOW_YOUR_LIMIT,
        Placed(rule=banks.TOO_HOT, at="bank", headline="Store it cooler: it lasts {days}, but at {temperature} a battery ages fast."),
        judged.NOT_SURE, judged.SULPHATES,
        Placed(rule=banks.IN_FROST, at="left", fields=_COLDEST, headline="{days}. But at {left.temperature} an LFP bank must not be charged: switch every charger off.", text="Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. A solar regulator left on will charge it."),
        FINE,
        judged.FREEZING_POINT, judged.COLDEST_NOT_KNOWN, judged.MANAGEMENT_DRAWS, judged.STORED_PART_EMPTY, judged.FUSE_AND_ALARMS_STAY,
        judged.PAGES_DIFFER, judged.MEASURE_AFTER_AN_HOUR,
    ),
    valid="A steady drain on a healthy bank. Self-discharge is assumed constant.",
    summary="about {days}",
    older_defaults=({},),
)
