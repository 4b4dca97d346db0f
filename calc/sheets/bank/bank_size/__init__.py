"""bank-size: how large a bank?"""

# fmt: off
from calc.energy.rules import bank as banks
from calc.energy.rules import bank_size as judged
from calc.sheets.bank.bank_size.calculate import calculate
from calc.sheets.bank.bank_size.words import FINE_COLD_AND_OLD, FINE_OLD, STEPS
from calc.sheets.parts.bank import CHEMISTRY, USUAL_CHARGE_EFFICIENCY, USUAL_SHARE, USUAL_VOLTAGE
from calc.sheets.parts.fields import HIGHEST_BANK
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    ENERGY,
    NUMBER,
    POWER,
    RATIO,
    TEMPERATURE,
    TIME,
    VOLTAGE,
)
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Quantity
from calc.worksheet.next_steps import Lead, alike
from calc.worksheet.pictures import Bars, Row
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="bank-size",
    title="Bank size",
    question="How many batteries do I need?",
    about="Capacity for a number of days without a charge, in the cold and when it is old.",
    calculate=calculate,
    picture=Bars(
        rows=(Row("The loads use", "charge"), Row("Capacity needed", "capacity"), Row("Together the batteries hold", "together")),
        caption="From what is used to what to buy",
    ),
    fields=(
        Quantity(id="daily_energy", label="Energy a day", symbol="E", kinds=(ENERGY,), default="1200 Wh", low="1 Wh", high="100000 Wh",
                 hint="At the bank, with inverter losses and idle draw in it."),
        Quantity(id="days", label="Time without a charge", symbol="d", kinds=(TIME,), default="2 days", low="1 h", high="60 days",
                 hint="Without sun, driving or shore power."),
        CHEMISTRY,
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %", default_by=("chemistry", USUAL_SHARE),
                 hint="Of the capacity, before you call it empty."),
        Quantity(id="voltage", label="Bank voltage", symbol="V", kinds=(VOLTAGE,), default_by=("chemistry", USUAL_VOLTAGE), low="1 V", high=HIGHEST_BANK,
                 hint="Mean over the discharge, of the whole bank."),
        Quantity(id="temperature", advanced=True, label="Coldest battery", symbol="T", kinds=(TEMPERATURE,), default="10 °C", low="-30 °C", high="60 °C",
                 hint="Of the battery, on the coldest of those days."),
        Quantity(id="ageing", advanced=True, label="Room for ageing", symbol="a", kinds=(RATIO,), default="20 %", low="0 %", high="60 %",
                 hint="Share of the capacity lost by the time you replace it."),
        Quantity(id="unit_capacity", label="One battery", symbol="C_1", kinds=(CHARGE,), default="100 Ah", low="1 Ah", high="20000 Ah",
                 hint="At bank voltage: two 12 V in series are one at 24 V."),
        Quantity(id="heaviest", advanced=True, label="Heaviest load at one time", symbol="P", kinds=(POWER,), optional=True, low="1 W", high="50000 W", example="1700 W",
                 hint="At the bank, to check its current too."),
        Quantity(id="unit_current", advanced=True, label="Current limit of one battery", symbol="I_1", kinds=(CURRENT,), optional=True, low="1 A", high="2000 A", example="100 A",
                 hint="Continuous, by its maker or management system."),
        Quantity(id="efficiency", advanced=True, label="Charge efficiency", symbol="η", kinds=(RATIO,), low="30 %", high="100 %", default_by=("chemistry", USUAL_CHARGE_EFFICIENCY),
                 hint="Charge out for charge in."),
    ),
    results=(
        Output(id="capacity", label="Capacity needed", symbol="C", kind=CHARGE),
        Output(id="energy", label="As rated energy", symbol="E_C", kind=ENERGY),
        Output(id="units", label="Batteries", symbol="n", kind=COUNT),
        Output(id="together", at="bank.capacity", label="Together they hold", symbol="C_n", kind=CHARGE),
        Output(id="lasts_new", label="When new they last", symbol="t_new", kind=TIME, unit="day"),
        Output(id="put_back", label="Charge to put back", symbol="Q_in", kind=CHARGE),
        Output(id="current", at="draw.current", label="Current of the heaviest load", symbol="I", kind=CURRENT, hide_if_none=True),
    ),
    intermediates=(
        Output(id="batteries", label="Batteries to fit", needs_step=False),
        Output(id="day", label="One day", symbol="t_d", kind=TIME, unit="hour"),
        Output(id="charge", label="Charge used", symbol="Q", kind=CHARGE),
        Output(id="cold_factor", at="usable.cold_factor", label="Factor for cold", symbol="f", kind=NUMBER, digits=4),
    ),
    steps=STEPS,
    rules=(
        Placed(rule=banks.BEYOND_ALLOWED, at="allowed", headline="Use more batteries or a smaller load: {current} at one time, and this bank may give {allowed.most}.", fields=(("max_current", "unit_current"),)),
        Placed(rule=banks.ACID_MAY_FREEZE, at="bank", headline="{capacity}, but used down to {bank.state} its acid may freeze at {temperature}: use less of it, or keep it warmer."),
        Placed(rule=banks.IN_FROST, at="bank", headline="Warm the bank before any charge: at {temperature} LFP must not be charged. By charge {capacity}, {batteries} of {unit_capacity}.", text="Never charge LFP below 0 °C: lithium plates out and the loss is permanent. Warm the bank, or let a heater or the management system hold the charge back."),
        Placed(rule=banks.BEYOND_ANY_BANK, at="draw", fields=(("capacity", "unit_capacity"),), headline="Use more batteries or a smaller load: {current} is {draw.rate}, more than such a bank can give."),
        Placed(rule=banks.HEAVY_LOAD, at="draw", fields=(("capacity", "unit_capacity"),), headline="Check the maker's limit or use more batteries: {current} is a heavy load for {batteries} of {unit_capacity}, {capacity}."),
        judged.DRAWN_WITHIN_HOURS,
        Placed(rule=banks.DEEPER_THAN_HALF, at="usable", headline="{capacity}, {batteries} of {unit_capacity}, but discharging below half wears a lead-acid bank fast."),
        Placed(rule=banks.NOTHING_KEPT_BACK, at="usable", headline="{capacity}, {batteries} of {unit_capacity}, but with no reserve: at the end the management system cuts everything off at once."),
        Placed(rule=banks.TOO_HOT, at="bank", headline="{capacity}, {batteries} of {unit_capacity}, but {temperature} is too hot for a battery: most may not be charged there."),
        Placed(rule=banks.COLD_BEYOND_TABLE, at="bank", headline="At least {capacity}, {batteries} of {unit_capacity}: below −3.9 °C no factor for cold is published, so allow more."),
        judged.MANY_SIDE_BY_SIDE, judged.NO_ROOM_TO_AGE,
        FINE_COLD_AND_OLD, FINE_OLD,
        Placed(rule=banks.NEVER_CHARGE_IN_FROST, at="bank", text="Never charge LFP below 0 °C: lithium plates out and the loss is permanent. Warm the bank, or let a heater or the management system hold the charge back."),
        *placed("bank", banks.NEAR_FROST, banks.NO_FACTOR_FOR_COLD_LFP, banks.COLD_FROM_MEMORY),
        judged.VOLTAGE_OF_LEAD_ACID, judged.BROUGHT_TO_FULL,
        judged.COMMON_PRACTICE, judged.DRAWS_OF_ITS_OWN,
    ),
    leads=(
        Lead(label="A week with this bank", sheet="week-ahead",
             carry=(("capacity", "together"), *alike("chemistry", "usable", "voltage"))),
    ),
    valid="Loads spread over the days. A bank emptied within a few hours gives less if it is lead-acid: check it as a run time.",
    summary="{capacity}: {batteries} of {unit_capacity}",
    older_defaults=({"voltage": "12.8 V"},),
)
