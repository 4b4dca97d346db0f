"""bank-gauge: what does the monitor tell, and what does voltage not?"""

from types import SimpleNamespace

from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.energy.limits import COOL, FROST_MARGIN, WARM
from calc.sheets.bank.bank_gauge.calculate import AT_REST, BLOCKS, CHARGING, UNDER_LOAD, run
from calc.sheets.parts.bank import (
    CHEMISTRY,
    TEMPERED,
    USUAL_CHARGE_EFFICIENCY,
    USUAL_SHARE,
    capacity_field,
)
from calc.units.compare import at_least, at_most
from calc.units.kinds import CHARGE, CURRENT, NUMBER, RATIO, TEMPERATURE, TIME, VOLTAGE
from calc.units.kinds.energy import C_RATE, LOSS_RATE
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Test, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.work import Worksheet

FULL_REST = 24 * 3600.0  # s, what the pages on lead-acid prefer
DRIFTED = 0.1  # of the capacity: our choice


def _out(v: SimpleNamespace) -> bool:
    return v.draw is not None


def _in(v: SimpleNamespace) -> bool:
    return bool(v.current > 0)


def _lead_out(v: SimpleNamespace) -> bool:
    return _out(v) and bool(v.lead_acid) and v.cold_factor is not None


def _lfp_frost(v: SimpleNamespace) -> bool:
    return not v.lead_acid and not at_least(v.temperature, battery.charge_range(Chemistry.LFP)[0])


def _frozen(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and at_most(v.temperature, v.freezes + FROST_MARGIN)


def _hot(v: SimpleNamespace) -> bool:
    return not at_most(v.temperature, battery.charge_range(v.chemistry)[1])


def _cold_lead(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not at_least(v.temperature, battery.charge_range(v.chemistry)[0])


def _cool_charge(v: SimpleNamespace) -> bool:
    return _in(v) and not at_least(v.temperature, COOL)


def _named(v: SimpleNamespace) -> bool:
    return v.says_low is not None


def _too_full(v: SimpleNamespace) -> bool:
    return _named(v) and not at_most(v.state, v.says_high)


def _too_empty(v: SimpleNamespace) -> bool:
    return _named(v) and not at_least(v.state, v.says_low)


def _gone(v: SimpleNamespace) -> bool:
    return v.to_floor == 0 or (v.current == 0 and at_most(v.remaining, v.floor))


def _perhaps_gone(v: SimpleNamespace) -> bool:
    return bool(v.to_floor) and at_least(v.drift, v.available - v.floor)


def _drifted(v: SimpleNamespace) -> bool:
    return not at_most(v.state - v.state_low, DRIFTED)


def _staged(v: SimpleNamespace) -> bool:
    return v.constant is not None


def _says(chemistry: str) -> Test:
    return lambda v: _named(v) and v.chemistry == chemistry


_BAND = "From the lowest state that any of the tables gives at the low end of the reading to the highest at its high end."

WORKSHEET = Worksheet(
    id="bank-gauge",
    title="Bank gauge",
    question="What does the monitor tell, and what does voltage not?",
    entry_question="How much is left in the bank?",
    about="What is left by the count, how long it lasts, and what a voltage reading is worth.",
    calculate=run,
    fields=(
        capacity_field("200 A·h"),
        CHEMISTRY,
        Quantity(id="state", label="State by the monitor", symbol="s", kinds=(RATIO,), default="70 %", low="0 %", high="100 %", hint="As a monitor that counts charge shows it."),
        Quantity(id="current", label="Current now", symbol="I", kinds=(CURRENT,), default="-6 A", low="-2000 A", high="2000 A", hint="Out of the bank with a minus, into it without."),
        Quantity(id="efficiency", label="Charge efficiency", symbol="η", kinds=(RATIO,), low="30 %", high="100 %", default_by=("chemistry", USUAL_CHARGE_EFFICIENCY), hint="Charge that comes out for the charge put in. The monitor wants it too."),
        Quantity(id="reading", label="Voltage reading", symbol="V", kinds=(VOLTAGE,), optional=True, low="1 V", high="70 V", example="12.6 V", hint="At the battery's posts. Empty: the count alone."),
        Choice(id="taken", label="Reading taken", default=UNDER_LOAD, options=(Option(UNDER_LOAD, aliases=("load",)), Option(CHARGING, aliases=("on charge",)), Option(AT_REST, aliases=("rest", "rested"))), hint="At rest means no load and no charge at all, sun included."),
        Quantity(id="rested_for", label="Rest before it", symbol="t_r", kinds=(TIME,), default="8 h", low="0 h", high="60 days", only_if=("taken", AT_REST), hint="Since the last load or charge."),
        Choice(id="system", advanced=True, label="Nominal voltage", default="12 V", options=tuple(Option(name) for name in BLOCKS), hint="Of the whole bank."),
        Quantity(id="meter", advanced=True, label="Meter may be off by", symbol="m", kinds=(RATIO,), default="0.5 %", low="0 %", high="5 %", hint="From its data sheet; a plain hand meter is good to about 0.5 %."),
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %", default_by=("chemistry", USUAL_SHARE), hint="Of the capacity, before you call it empty."),
        Quantity(id="temperature", advanced=True, label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="25 °C", low="-30 °C", high="60 °C", hint="Of the battery, not of the air."),
        Quantity(id="exponent", advanced=True, label="Peukert exponent", symbol="k", kinds=(NUMBER,), low="1", high="2", default_by=("chemistry", battery.by_chemistry("peukert", "default")), hint="How much a heavy load takes from the capacity."),
        Quantity(id="rated_hours", advanced=True, label="Hours of the rating", symbol="H", kinds=(TIME,), default="20 h", low="0.5 h", high="120 h", hint="The time over which the label's capacity is meant: 20 h on most."),
        Quantity(id="zero_error", advanced=True, label="Current the monitor misses", symbol="I_0", kinds=(CURRENT,), default="50 mA", low="0 A", high="5 A", hint="Its error near zero, and loads too small for it."),
        Quantity(id="since_full", advanced=True, label="Time since truly full", symbol="t_f", kinds=(TIME,), default="7 days", low="0 h", high="1000 days", hint="Since the monitor last set itself to 100 %."),
    ),
    results=(
        Output(id="remaining", label="Left by the count", symbol="Q", kind=CHARGE, rounding=DOWN),
        Output(id="time", label="To empty or full, at this current", symbol="t", kind=TIME, rounding=DOWN),
        Output(id="to_floor", label="Until the share you use is gone", symbol="t_u", kind=TIME, rounding=DOWN, hide_if_none=True),
        Output(id="full_time", label="To full, as the current falls", symbol="t_full", kind=TIME, rounding=UP, hide_if_none=True),
        Output(id="voltage_says", label="The voltage says", hide_if_none=True),
        Output(id="why", label="Because", hide_if_none=True),
        Output(id="says_low", label="At least", symbol="s_low", kind=RATIO, rounding=DOWN, hide_if_none=True),
        Output(id="says_high", label="At most", symbol="s_high", kind=RATIO, rounding=UP, hide_if_none=True),
        Output(id="drift", label="The count may be off by", symbol="Q_d", kind=CHARGE, rounding=UP),
        Output(id="state_low", label="So the state may be as low as", symbol="s_d", kind=RATIO, rounding=DOWN),
        Output(id="full_voltage", label="Setting: full voltage", symbol="V_f", kind=VOLTAGE),
        Output(id="tail", label="Setting: tail current", symbol="I_t", kind=CURRENT),
        Output(id="wiring", label="What the monitor needs", needs_step=False),
    ),
    intermediates=(
        Output(id="draw", label="Current out", symbol="I_out", kind=CURRENT, rounding=UP),
        Output(id="cold_factor", label="Factor for cold", symbol="f", kind=NUMBER, digits=4),
        Output(id="cold_capacity", label="Capacity at this temperature", symbol="C_T", kind=CHARGE, rounding=DOWN),
        Output(id="available", label="Left at this temperature", symbol="Q_T", kind=CHARGE, rounding=DOWN),
        Output(id="let_out", label="Share that this current lets out", symbol="p", kind=RATIO, rounding=DOWN),
        Output(id="floor", label="Charge that you leave in", symbol="Q_u", kind=CHARGE, rounding=UP),
        Output(id="missing", label="Missing to full", symbol="Q_m", kind=CHARGE, rounding=UP),
        Output(id="acceptance_time", label="Acceptance time", symbol="τ", kind=TIME),
        Output(id="turn", label="State where the current begins to fall", symbol="s_1", kind=RATIO),
        Output(id="reached", label="State at the tail current", symbol="s_t", kind=RATIO),
        Output(id="constant", label="At constant current", symbol="t_1", kind=TIME, rounding=UP),
        Output(id="falling", label="At falling current", symbol="t_2", kind=TIME, rounding=UP),
        Output(id="usual_limit", label="Most that it is usually charged with", symbol="I_max", kind=CURRENT),
        Output(id="loss", label="Self-discharge", symbol="r", kind=LOSS_RATE),
        Output(id="tail_rate", label="Tail against capacity", symbol="c_t", kind=C_RATE),
        Output(id="absorption", label="Voltage at which a charge ends", symbol="V_a", kind=VOLTAGE),
        Output(id="margin", label="Margin below it", symbol="V_m", kind=VOLTAGE),
        Output(id="needed_rest", label="Rest that it wants", kind=TIME, rounding=UP),
        Output(id="bears", label="Most that such a bank is given", symbol="V_max", kind=VOLTAGE, rounding=DOWN),
        Output(id="freezes", label="Acid freezes at this state near", kind=TEMPERATURE, rounding=UP),
    ),
    steps=(
        Step(of="remaining", formula="capacity * state", says="What is counted as in the bank."),
        Step(of="draw", source="practice", when=_out, says="What goes out, without its sign."),
        Step(of="cold_factor", source="ieee-485", when=_lead_out, says="A lead-acid bank gives less in the cold; from 25 °C up the factor is taken as one."),
        Step(of="cold_capacity", formula="capacity / cold_factor", source="ieee-485", when=_lead_out, says="The published factor multiplies the capacity needed, so what is there is divided by it."),
        Step(of="missing", formula="capacity - remaining", says="What has gone out, by the count."),
        Step(of="available", formula="cold_capacity - missing", when=lambda v: _lead_out(v) and v.available > 0, says="The cold takes its part from the end."),
        Step(of="available", source="ieee-485", when=lambda v: _lead_out(v) and v.available == 0, says="More has gone out than so cold a bank gives."),
        Step(of="available", formula="remaining", when=lambda v: _out(v) and not v.lead_acid, says="No published factor for cold LFP is used."),
        Step(of="let_out", formula="min(1, (cold_capacity / (draw * rated_hours)) ** (exponent - 1))", source="peukert", when=_lead_out, says="A load above the rated current gets less out; one below it is not credited with more."),
        Step(of="let_out", formula="min(1, (capacity / (draw * rated_hours)) ** (exponent - 1))", source="peukert-li", when=lambda v: _out(v) and not v.lead_acid, says="No exponent is published for LFP: it counts as one."),
        Step(of="time", formula="available * let_out / draw", source="ohm", when=lambda v: _out(v) and v.time is not None, says="Charge over current is time."),
        Step(of="floor", formula="(1 - usable) * capacity", when=lambda v: not _lead_out(v), says="The part below the share you use."),
        Step(of="floor", formula="(1 - usable) * cold_capacity", when=_lead_out, says="The part below the share you use, of what the bank gives at this temperature."),
        Step(of="to_floor", formula="(available - floor) * let_out / draw", source="ohm", when=lambda v: bool(v.to_floor), says="Only what is above that part."),
        Step(of="to_floor", source="practice", when=lambda v: v.to_floor == 0, says="The share you use is gone already."),
        Step(of="time", formula="missing / (current * efficiency)", source="charge-efficiency", when=_in, says="If the current stays as it is: only part of what goes in counts."),
        Step(of="acceptance_time", source="bulk-end", when=_staged, says="Near full a bank takes less: the missing charge over this time. For LFP it is common practice."),
        Step(of="turn", source="ampere-hour-law", when=_staged, says="Up to here it takes all of {current}."),
        Step(of="reached", source="practice", when=_staged, says="Where the current has fallen to {tail}: that is what full means."),
        Step(of="constant", formula="capacity * (turn - state) / (efficiency * current)", source="ohm", when=_staged, says="First at this current."),
        Step(of="falling", formula="acceptance_time / efficiency * ln((1 - turn) / (1 - reached))", source="ampere-hour-law", when=_staged, says="Then at less and less."),
        Step(of="full_time", formula="constant + falling", when=_staged, says="Both stages."),
        Step(of="full_time", source="practice", when=lambda v: _in(v) and not _staged(v), says="As full as a tail current of {tail} makes it."),
        Step(of="usual_limit", source="bulk-most", when=lambda v: _in(v) and v.lead_acid, says="A quarter of the ampere-hours, in amperes."),
        Step(of="usual_limit", source="practice", when=lambda v: _in(v) and not v.lead_acid, says="Half of the ampere-hours, in amperes."),
        Step(of="says_low", source="states-flooded", when=_says("flooded"), says=_BAND),
        Step(of="says_low", source="states-agm", when=_says("AGM"), says=_BAND),
        Step(of="says_low", source="states-gel", when=_says("gel"), says=f"{_BAND} Only one table for gel was found, so those for AGM are counted with it."),
        Step(of="says_low", source="states-lfp", when=_says("LFP"), says=f"{_BAND} 25 mV a cell are added either way for hysteresis, and five hundredths of the state because the table is of one cell."),
        Step(of="says_high", source="lfp-hysteresis", when=_says("LFP"), says="A cell reads higher after a charge than after a discharge, at the same state."),
        Step(of="says_high", source="practice", when=lambda v: _named(v) and v.lead_acid, says="The meter's error counts on both ends."),
        Step(of="voltage_says", source="practice", when=_named, says="A band, not a point. The lower end is the one to count on."),
        Step(of="voltage_says", source="rest-lead", when=lambda v: v.why is not None and v.lead_acid, says="A lead-acid bank is read after at least {needed_rest} without load or charge; 24 h is better."),
        Step(of="voltage_says", source="rest-lfp", when=lambda v: v.why is not None and not v.lead_acid, says="An LFP bank settles for {needed_rest} and more, and its voltage hardly differs from a fifth to nine tenths full."),
        Step(of="why", says="The reason why no state is named.", when=lambda v: v.why is not None),
        Step(of="loss", source="self-discharge", says="No monitor sees it: it flows inside."),
        Step(of="drift", formula="(zero_error + loss * capacity) * since_full", source="practice", says="Small errors add up until a full charge sets the count right."),
        Step(of="state_low", formula="state - drift / capacity", when=lambda v: v.state_low > 0, says="If they all went one way."),
        Step(of="state_low", source="practice", when=lambda v: v.state_low == 0, says="The count may have nothing left in it."),
        Step(of="absorption", source="charge-volts", when=lambda v: v.lead_acid, says="As usual; your charger's own setting is better."),
        Step(of="absorption", source="practice", when=lambda v: not v.lead_acid, says="As usual; your charger's own setting is better."),
        Step(of="margin", source="practice", says="So that a cable's drop does not keep it from ever seeing full."),
        Step(of="full_voltage", formula="absorption - margin", says="Above it, with the current below the tail, the monitor sets itself to 100 %."),
        Step(of="tail_rate", source="practice", says="Amperes for each ampere-hour: 1 to 3 % for lead-acid, 2 to 5 % for LFP. Set low, it waits until full is full."),
        Step(of="tail", formula="tail_rate * capacity", says="A charger that stops above it never lets the monitor see full."),
        Step(of="bears", source="practice", when=lambda v: v.over, says="At room temperature; your battery's data sheet is better."),
        Step(of="freezes", source="acid-freezing", when=lambda v: v.lead_acid and v.temperature < 0, says="By the gravity of a flooded battery; sealed ones mostly freeze later."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: _in(v) and _lfp_frost(v), says="Stop the charge: an LFP bank at {temperature} must not be charged."),
        Verdict(verdict=STOP, when=_frozen, says="{remaining} by the count, but at this state its acid may freeze at {temperature}. Do not charge a frozen battery; bring it into the warm."),
        Verdict(verdict=STOP, when=lambda v: v.over and not v.lead_acid, says="Stop the charge: {reading} is more than an LFP bank is given, {bears} at most. A charger or regulator is set wrong or out of order."),
        Verdict(verdict=STOP, when=lambda v: v.past, says="{reading} at rest is below any bank that is merely empty: too deeply drawn, or a dead cell. Do not charge it before it has been looked at."),
        Verdict(verdict=CAUTION, when=lambda v: v.over, says="{remaining} by the count. But {reading} is more than such a bank is given, {bears}, unless it is cold or being equalised: stop the charge and look at what makes it."),
        Verdict(verdict=CAUTION, when=_lfp_frost, says="{remaining} by the count, in this frost perhaps much less. Warm the bank before any charge: at {temperature} an LFP bank must not be charged."),
        Verdict(verdict=CAUTION, when=_too_full, says="The monitor says {state}, the rested voltage at most {says_high}. Trust the lower: charge it to full, then look for a load that bypasses the shunt, or capacity that age has taken."),
        Verdict(verdict=CAUTION, when=_too_empty, says="The monitor says {state}, the rested voltage at least {says_low}. Count on the lower until a full charge has set the monitor right."),
        Verdict(verdict=CAUTION, when=lambda v: _out(v) and v.time is None, says="{remaining} by the count. How much of it comes out at {temperature} is not known: the published factors for cold end above that."),
        Verdict(verdict=CAUTION, when=_gone, says="{remaining} by the count, and the share you use is gone: charge it."),
        Verdict(verdict=CAUTION, when=lambda v: _in(v) and not at_most(v.current, v.usual_limit), says="{missing} missing, but {current} is more than such a bank is usually charged with, {usual_limit}: see its data sheet."),
        Verdict(verdict=CAUTION, when=lambda v: _in(v) and (_hot(v) or _cold_lead(v)), says="{missing} missing, but {temperature} is outside what such a bank is usually charged at: see its data sheet."),
        Verdict(verdict=CAUTION, when=_cool_charge, says="{remaining} by the count, and full in {full_time} at best: at {temperature} a bank takes its charge slowly."),
        Verdict(verdict=CAUTION, when=lambda v: v.why is not None, says="{remaining} by the count. The voltage tells no state: {why}."),
        Verdict(verdict=CAUTION, when=_perhaps_gone, says="{remaining} by the count, but that may be off by {drift}: of the share you use perhaps nothing is left."),
        Verdict(verdict=CAUTION, when=_drifted, says="{remaining} by the count, but unchecked for {since_full} it may be off by {drift}: charge it to full, so that the monitor sets itself right."),
        Verdict(verdict=CAUTION, when=_hot, says="{remaining} by the count, but {temperature} is too hot for a battery: see that it cools."),
        Verdict(verdict=FINE, when=lambda v: v.current == 0, says="{remaining} by the count; nothing flows now."),
        Verdict(verdict=FINE, when=_in, says="{remaining} by the count, and full in about {full_time}."),
        Verdict(verdict=FINE, says="{remaining} by the count: {to_floor} at this current until the share you use is gone."),
    ),
    remarks=(
        Remark(when=lambda v: _lfp_frost(v) or (_in(v) and not v.lead_acid), source="lfp-frost", says="Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. It may give current further down; the data sheet says how far."),
        Remark(when=lambda v: _cool_charge(v) and not v.lead_acid and v.temperature >= 0, source="practice",
               says="Near freezing an LFP battery takes a charge slowly; most makers ask for a reduced current below 5 to 10 °C, and none at all below 0 °C."),
        Remark(when=lambda v: _in(v) and bool(v.lead_acid) and not (at_least(v.temperature, COOL) and at_most(v.temperature, WARM)), source="practice", says=TEMPERED),
        Remark(when=lambda v: v.over, source="practice", says="An overcharged lead-acid bank runs hot and gives off gas that a spark sets off; an overcharged LFP bank has its management system alone between it and a fire. Switch the charger off, then look for the fault."),
        Remark(when=lambda v: v.past, source="practice", says="Cells drawn that far may short inside when they are charged again. Switch the bank off, let it alone, and ask the maker; a pack that smells, hisses, swells or grows warm: everybody out."),
        Remark(when=lambda v: v.reading is not None and v.taken == AT_REST and v.current != 0, source="practice", says="At rest means no current at all, and {current} flows now: the reading must be from before that."),
        Remark(when=lambda v: _named(v) and v.lead_acid and not at_least(v.rested_for, FULL_REST), source="rest-lead", says="Under 24 h of rest a lead-acid bank that was charged still reads high: count on the lower end."),
        Remark(when=_says("LFP"), source="states-lfp", says="On this flat curve a band so wide is all that a voltmeter can tell. It shows nearly empty and quite full; between, only a count will do."),
        Remark(when=_out, source="practice", says="The time holds for this current alone: a fridge that starts or a pump changes it at once."),
        Remark(when=lambda v: _out(v) and not v.lead_acid and v.temperature < 25, source="practice", says="No published factor for cold LFP is used: expect less than this in the cold."),
        Remark(when=lambda v: _lead_out(v) and not at_least(v.temperature, battery.seen_from()), source="memory", says="The factor for cold below 4.4 °C is from memory, not from a text."),
        Remark(when=lambda v: _in(v) and v.lead_acid, source="charge-efficiency", says="The efficiency holds over most of the range. Near full a lead-acid bank takes far less: leave it on until the current has been at the tail for a while."),
        Remark(when=lambda v: _in(v) and v.lead_acid, source="practice", says="As it fills, a lead-acid bank gives off gas that a spark sets off: let air to it, and keep flames away."),
        Remark(level=NOTE, when=lambda v: _named(v) and v.lead_acid, source="memory", says="The tables are for about 25 °C. A cold bank reads a little lower at the same state, about 1 mV for each kelvin at 12 V."),
        Remark(level=NOTE, source="practice", says="A new monitor knows nothing until it has seen one full charge."),
    ),
    valid="A healthy bank whose capacity is what you say. A count is only as good as its last full charge.",
    summary="{remaining} left",
)
