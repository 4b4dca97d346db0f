"""bank-gauge: what does the monitor tell, and what does voltage not?"""

# fmt: off
from calc.energy.gauge import Monitor, Taken
from calc.energy.rules import bank as banks
from calc.energy.rules import charging as charges
from calc.energy.rules import gauge as judged
from calc.energy.rules import rested as voltage_rules
from calc.sheets.bank.bank_gauge.calculate import BLOCKS, calculate
from calc.sheets.bank.bank_gauge.words import (
    FINE_AT_REST,
    FINE_BY_VOLTAGE,
    FINE_CHARGING,
    FINE_DRAWN,
    STEPS,
    WHY,
    voltage_says,
    wiring,
)
from calc.sheets.parts.bank import (
    CHEMISTRY,
    USUAL_CHARGE_EFFICIENCY,
    USUAL_EXPONENT,
    USUAL_SHARE,
    capacity_field,
)
from calc.sheets.parts.fields import HIGHEST_BANK
from calc.units.kinds import CHARGE, CURRENT, NUMBER, RATIO, TEMPERATURE, TIME, VOLTAGE
from calc.units.kinds.energy import C_RATE, LOSS_RATE
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Bars, Either, Limit, Row
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="bank-gauge",
    title="Bank gauge",
    question="How full is the bank?",
    about="What is left by the monitor, how long it lasts, and what a voltage reading tells.",
    calculate=calculate,
    picture=Either((
        Bars(
            needs="remaining", rows=(Row("Full bank", "cold_capacity"), Row("Left in it", "remaining")),
            limits=(Limit("You leave in", "floor", least=True),), caption="What is left in the bank, against what you leave in it",
        ),
        Bars(
            needs="says_low", rows=(Row("The voltage says", "says_low", "says_high"),), limits=(Limit("Full", 1.0),),
            caption="What the voltage tells of the state",
        ),
    )),
    fields=(
        capacity_field("200 Ah"),
        CHEMISTRY,
        Choice(id="monitor", label="Battery monitor", of=Monitor, default=Monitor.COUNTS, options=(Option(Monitor.COUNTS, "counts charge", aliases=("yes",)), Option(Monitor.NONE, "none", aliases=("no",))), hint="None: the state is read from a rested voltage."),
        Quantity(id="state", label="State by the monitor", symbol="s", kinds=(RATIO,), default="70 %", low="0 %", high="100 %", only_if=("monitor", Monitor.COUNTS), hint="As shown by a monitor that counts charge."),
        Quantity(id="current", advanced=True, label="Current now", symbol="I", kinds=(CURRENT,), default="-6 A", low="-2000 A", high="2000 A", hint="Minus: out of the bank; without: into it."),
        Quantity(id="efficiency", advanced=True, label="Charge efficiency", symbol="η", kinds=(RATIO,), low="30 %", high="100 %", default_by=("chemistry", USUAL_CHARGE_EFFICIENCY), hint="Charge out for charge put in. Set it in the monitor too."),
        Quantity(id="reading", label="Voltage reading", symbol="V", kinds=(VOLTAGE,), optional=True, low="1 V", high=HIGHEST_BANK, example="12.6 V", hint="At the battery's posts. Empty: the monitor alone."),
        Choice(id="taken", only_above="reading", label="Reading taken", of=Taken, default=Taken.UNDER_LOAD, options=(Option(Taken.UNDER_LOAD, "under load", aliases=("load",)), Option(Taken.CHARGING, aliases=("on charge",)), Option(Taken.AT_REST, "at rest", aliases=("rest", "rested"))), hint="At rest: no load and no charge, solar included."),
        Quantity(id="rested_for", label="Rest before it", symbol="t_r", kinds=(TIME,), default="8 h", low="0 h", high="60 days", only_if=("taken", Taken.AT_REST), hint="Since the last load or charge."),
        Choice(id="system", advanced=True, label="Nominal voltage", default="12 V", options=tuple(Option(name) for name in BLOCKS), hint="Of the whole bank."),
        Quantity(id="meter", advanced=True, label="Meter may be off by", symbol="m", kinds=(RATIO,), default="0.5 %", low="0 %", high="5 %", hint="From its data sheet; a plain hand meter: about 0.5 %."),
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %", default_by=("chemistry", USUAL_SHARE), hint="Of the capacity, before you call it empty."),
        Quantity(id="temperature", advanced=True, label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="25 °C", low="-30 °C", high="60 °C", hint="Of the battery, not of the air."),
        Quantity(id="exponent", advanced=True, label="Peukert exponent", symbol="k", kinds=(NUMBER,), low="1", high="2", default_by=("chemistry", USUAL_EXPONENT), hint="How much a heavy load reduces the capacity."),
        Quantity(id="rated_hours", advanced=True, label="Hours of the rating", symbol="H", kinds=(TIME,), default="20 h", low="0.5 h", high="120 h", hint="The discharge time of the label's capacity: 20 h on most."),
        Quantity(id="zero_error", advanced=True, label="Current the monitor misses", symbol="I_0", kinds=(CURRENT,), default="50 mA", low="0 A", high="5 A", only_if=("monitor", Monitor.COUNTS), hint="Its error near zero, and loads too small to register."),
        Quantity(id="since_full", advanced=True, label="Time since truly full", symbol="t_f", kinds=(TIME,), default="7 days", low="0 h", high="1000 days", only_if=("monitor", Monitor.COUNTS), hint="Since the monitor last set itself to 100 %."),
    ),
    results=(
        Output(id="remaining", at="count.remaining", label="Left in the bank", symbol="Q", kind=CHARGE, hide_if_none=True),
        Output(id="time", label="To empty or full, at this current", symbol="t", kind=TIME, hide_if_none=True),
        Output(id="to_floor", at="drawn.to_floor", label="Until your usable share is used", symbol="t_u", kind=TIME, hide_if_none=True),
        Output(id="full_time", at="filled.full_time", label="To full, as the current falls", symbol="t_full", kind=TIME, hide_if_none=True),
        Output(id="voltage_says", label="The voltage says", hide_if_none=True, find=voltage_says),
        Output(id="why", at="reading.silence", label="Because", words=WHY, hide_if_none=True),
        Output(id="says_low", at="band.low", label="At least", symbol="s_low", kind=RATIO, digits=2, hide_if_none=True),
        Output(id="says_high", at="band.high", label="At most", symbol="s_high", kind=RATIO, digits=2, hide_if_none=True),
        Output(id="drift", at="count.drift", label="The count may be off by", symbol="Q_d", kind=CHARGE, hide_if_none=True),
        Output(id="state_low", at="count.state_low", label="So the state may be as low as", symbol="s_d", kind=RATIO, hide_if_none=True),
        Output(id="full_voltage", at="settings.full_voltage", label="Setting: full voltage", symbol="V_f", kind=VOLTAGE),
        Output(id="tail", at="settings.tail", label="Setting: tail current", symbol="I_t", kind=CURRENT),
        Output(id="wiring", label="What the monitor needs", needs_step=False, find=wiring),
    ),
    intermediates=(
        Output(id="draw", at="drawn.draw", label="Current out", symbol="I_out", kind=CURRENT),
        Output(id="cold_factor", at="drawn.cold_factor", label="Factor for cold", symbol="f", kind=NUMBER, digits=4),
        Output(id="cold_capacity", at="drawn.cold_capacity", label="Capacity at this temperature", symbol="C_T", kind=CHARGE),
        Output(id="available", at="drawn.available", label="Left at this temperature", symbol="Q_T", kind=CHARGE),
        Output(id="let_out", at="drawn.let_out", label="Share available at this current", symbol="p", kind=RATIO),
        Output(id="floor", label="Charge you leave in", symbol="Q_u", kind=CHARGE),
        Output(id="missing", at="count.missing", label="Missing to full", symbol="Q_m", kind=CHARGE),
        Output(id="acceptance_time", at="acceptance.time_constant", label="Acceptance time", symbol="τ", kind=TIME),
        Output(id="turn", at="filled.charge.turn", label="State where the current begins to fall", symbol="s_1", kind=RATIO),
        Output(id="reached", at="filled.charge.reached", label="State at the tail current", symbol="s_t", kind=RATIO),
        Output(id="constant", at="filled.charge.constant", label="At constant current", symbol="t_1", kind=TIME),
        Output(id="falling", at="filled.charge.falling", label="At falling current", symbol="t_2", kind=TIME),
        Output(id="usual_limit", label="Usual charging limit", symbol="I_max", kind=CURRENT),
        Output(id="loss", at="count.loss", label="Self-discharge", symbol="r", kind=LOSS_RATE),
        Output(id="tail_rate", at="settings.tail_rate", label="Tail current against capacity", symbol="c_t", kind=C_RATE),
        Output(id="absorption", at="settings.absorption", label="Voltage at which a charge ends", symbol="V_a", kind=VOLTAGE),
        Output(id="margin", at="settings.margin", label="Margin below it", symbol="V_m", kind=VOLTAGE),
        Output(id="needed_rest", label="Rest it needs", kind=TIME),
        Output(id="bears", at="highest", label="Usual current limit of such a bank", symbol="V_max", kind=VOLTAGE),
        Output(id="taken_state", at="known.state", label="State used here", symbol="s_k", kind=RATIO),
        Output(id="freezes", at="known.freezes", label="Acid freezes at this state near", kind=TEMPERATURE),
    ),
    steps=STEPS,
    rules=(
        Placed(rule=banks.CHARGE_IN_FROST, at="filled.bank", covers=frozenset({"bank.in-frost"}), headline="Stop the charge: an LFP bank at {temperature} must not be charged."),
        Placed(rule=banks.ACID_MAY_FREEZE, at="known", headline="Warm it up and do not charge it frozen: with {remaining} left its acid may freeze at {temperature}."),
        judged.OVERCHARGED_LFP, judged.RUN_AWAY, *placed("reading.rested", voltage_rules.PAST_EMPTY), *placed("reading.shown", voltage_rules.PAST_EMPTY),
        Placed(rule=banks.CHARGE_OUTSIDE_TEMPERATURE, at="filled.bank", covers=frozenset({"bank.too-hot"}), headline="Stop the charge at {temperature}: such a bank is charged between {charge_low} and {charge_high}."),
        judged.STATE_UNKNOWN,
        judged.OVERCHARGED_LEAD_ACID,
        Placed(rule=banks.IN_FROST, at="bank", headline="Warm the bank before any charge: at {temperature} LFP must not be charged. {remaining} left, perhaps much less."),
        Placed(rule=voltage_rules.STATED_TOO_HIGH, at="reading.rested", headline="Trust the lower: the monitor says {state}, the rested voltage at most {says_high}. Charge it to full.", text="Charge it to full, then look for a load that bypasses the shunt, or for capacity lost with age."),
        Placed(rule=voltage_rules.STATED_TOO_LOW, at="reading.rested", headline="Count on the lower: the monitor says {state}, the rested voltage at least {says_low}. A full charge resets it."),
        judged.SPENT, judged.SURELY_SPENT_BY_VOLTAGE, judged.SPENT_BY_VOLTAGE, judged.BAND_TOO_WIDE,
        *placed("drawn.load", banks.BEYOND_ANY_BANK),
        Placed(rule=banks.HEAVY_LOAD, at="drawn.load", headline="{remaining} left, but {draw} is a heavy load for this bank: check the maker's limit."),
        Placed(rule=banks.COLD_BEYOND_TABLE, at="drawn.bank", headline="{remaining} left; count on less of it: below −3.9 °C no factor for cold is published."),
        Placed(rule=banks.DEEPER_THAN_HALF, at="use", headline="{remaining} left, but using more than half wears a lead-acid bank fast."),
        Placed(rule=banks.NOTHING_KEPT_BACK, at="use", headline="{remaining} left; keep a reserve, or the management system cuts everything off at once."),
        Placed(rule=charges.CURRENT_TOO_MUCH, at="filled.offer", fields=(("charger", "current"),), headline="{missing} missing, but {current} is more than such a bank is usually charged with, {usual_limit}: see its data sheet."),
        Placed(rule=banks.CHARGE_NEAR_FROST, at="filled.bank", headline="{remaining} left, and full in {full_time} at best: at {temperature} a bank charges slowly."),
        Placed(rule=banks.CHARGE_OFF_ROOM, at="filled.bank", headline="{remaining} left, and full in {full_time} at best: the bank is at {temperature}, so read the cautions."),
        judged.NO_STATE_NAMED, judged.PERHAPS_SPENT, judged.DRIFTED_FAR,
        Placed(rule=banks.TOO_HOT, at="bank", headline="{remaining} left, but {temperature} is too hot for a battery: let it cool."),
        FINE_BY_VOLTAGE, FINE_AT_REST, FINE_CHARGING, FINE_DRAWN,
        *placed("filled.bank", banks.NEVER_CHARGE_IN_FROST),
        judged.NOT_AT_REST, judged.SHORT_REST, judged.FLAT_CURVE, judged.THIS_CURRENT_ALONE,
        *placed("drawn.bank", banks.NO_FACTOR_FOR_COLD_LFP, banks.COLD_FROM_MEMORY),
        *placed("filled", judged.LESS_NEAR_FULL), *placed("filled.bank", charges.LEAD_ACID_GASSES),
        judged.TABLES_NEAR_25, judged.NEW_MONITOR,
    ),
    valid="A healthy bank with the capacity you typed. A monitor's count is only as good as its last full charge.",
    summary="{remaining} left",
)
