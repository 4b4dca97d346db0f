"""fault-current: how much can flow if this run is shorted?"""

# fmt: off
from calc.electrical.rules import cable
from calc.electrical.rules import clearing as clears
from calc.electrical.rules import interrupting as duty
from calc.electrical.rules import short_circuit as shorts
from calc.electrical.rules.two_ends import FUSED_AT_ONE_END
from calc.sheets.wire.fault_current.calculate import calculate
from calc.sheets.wire.fault_current.fields import FIELDS
from calc.sheets.wire.fault_current.words import CLEARS, FINE, FINE_AS_TYPED, STEPS
from calc.units.kinds import (
    AREA,
    CURRENT,
    DURATION,
    LINEAR_RESISTANCE,
    NUMBER,
    RATIO,
    RESISTANCE,
    TEMPERATURE,
    VOLTAGE,
)
from calc.units.kinds.faults import CURRENT_PER_CAPACITY, HEAT_COEFFICIENT, JOULE_INTEGRAL
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.next_steps import Lead
from calc.worksheet.pictures import Breaking, Several, Shares
from calc.worksheet.work import Worksheet

# Beside a refusal only what bears on it is said
BESIDE = frozenset(rule.id for rule in (
    shorts.BREAK_AT_SOURCE, shorts.FUSE_EACH_STRING, shorts.CLASS_TIGHT, shorts.ARCS,
    duty.MARKED_HIGHER, duty.UNKNOWN, duty.FROM_MEMORY, duty.NO_STANDARD_RATING, duty.TIGHT,
    clears.ARC_FROM_MEMORY, clears.LARGER_FAULT, clears.ONLY_LET_THROUGH, clears.BY_DATA_SHEET,
))
AT_SOURCE_TIGHT = "Use the class above: {near_fault} at the source is within a tenth of what must break it ({interrupt_near} without a fuse), and a charger adds its own."

REFUSALS = (
    Placed(
        rule=clears.MAIN_FUSE_ALONE, covers=BESIDE,
        headline="Fit a fuse to each battery, class T for lithium: together they pass {near_fault}, and this fuse breaks {breaks}.",
    ),
    Placed(
        rule=FUSED_AT_ONE_END, fields=(("fused", "far_end"),),
        text="A conductor with a source at each end needs a fuse at each end: the far one feeds a short from its own side.",
    ),
    Placed(rule=shorts.BEYOND_CLASSES, at="short", covers=BESIDE),
    Placed(
        rule=duty.VOLTAGE_TOO_LOW, at="protection.duty", covers=BESIDE,
        headline="Do not use this fuse: its d.c. voltage rating is below {charged}.",
    ),
    Placed(
        rule=duty.CANNOT_INTERRUPT, at="protection.duty", covers=BESIDE,
        headline="Do not use this fuse: a short at the source may pass {near_fault}, and its family breaks {breaks}.",
        text="A fuse that cannot break the fault can burst and burn. Take a family that breaks {near_fault} at {charged}.",
    ),
    Placed(
        rule=duty.NOT_MADE_FOR_IT, at="protection.duty", covers=BESIDE,
        headline="Do not use this fuse: a short at the source may pass {near_fault}, such a cartridge breaks perhaps {weakest}.",
    ),
    *(Placed(rule=rule, covers=BESIDE) for rule in (clears.NEVER, clears.TOO_MUCH, clears.TOO_LATE, clears.ABOVE_CEILING)),
)
RESERVATIONS = (
    Placed(
        rule=duty.UNKNOWN, at="protection.duty", headline="Read the fuse's data sheet: it must break {near_fault}, and what this family breaks is not listed.",
        text="What this fuse breaks at {charged} d.c. is not known to us. It must break {near_fault}: read the fuse and its data sheet.",
    ),
    Placed(rule=duty.NO_STANDARD_RATING, at="protection.duty", headline="Look at the fuse again: {fuse} is not a standard rating of its family.", text="{fuse} is not among the standard ratings that we know of this family."),
    Placed(rule=duty.FROM_MEMORY, at="protection.duty", headline="Check the data sheet: the fuse must break {near_fault}, and no text that we saw says so.", text="What this family breaks ({breaks}) is from memory: read the fuse."),
    Placed(rule=duty.TIGHT, at="protection.duty", headline="Use a stronger family: {near_fault} at the source is within a tenth of what this one breaks.", text=AT_SOURCE_TIGHT),
    *placed("", clears.ARC_FROM_MEMORY),
    *placed("short", shorts.ROUGH_READINGS, shorts.OTHER_BANK, shorts.OVERHEATED, shorts.SLOW_ARC),
)


WORKSHEET = Worksheet(
    id="fault-current",
    title="Fault current",
    question="What current flows if this cable is shorted?",
    about="The highest and lowest short-circuit current, the fuse that can break it, and how long the wire survives.",
    calculate=calculate,
    picture=Several(
        first=Breaking(low="fault_low", high="near_fault", wire="all_bear", kinds="short.breaking", caption="What each kind of fuse or breaker can break, against this short. Each mark is ten times the one before."),
        folded=(
            Shares(
                parts=(("source_low", "source"), ("cable_least", "cable"), ("joints_total", "joints")), total="resistance_low", result="fault_current",
                caption="What limits a short at the far end: each part's share of the loop resistance",
            ),
        ),
        words="What limits the short",
    ),
    fields=FIELDS,
    results=(
        Output(id="fault_current", label="Short at the far end, at most", symbol="I_k", kind=CURRENT, at="short.far.current"),
        Output(id="interrupt_needed", label="A device at the far end must break", symbol="I_cn", kind=CURRENT, at="short.far.interrupting_class"),
        Output(id="near_fault", label="Short at the source, at most", symbol="I_s", kind=CURRENT, at="short.near.current"),
        Output(id="interrupt_near", label="A fuse at the source must break", symbol="I_cs", kind=CURRENT, at="short.near.interrupting_class"),
        Output(id="fault_low", label="Short at the far end, at least", symbol="I_l", kind=CURRENT, at="short.lowest.current"),
        Output(id="withstand", label="The wire withstands the highest for", symbol="t_k", kind=DURATION, at="short.far.withstand"),
        Output(id="withstand_low", label="The wire withstands the lowest for", symbol="t_l", kind=DURATION, at="short.lowest_start.withstand"),
        Output(id="energy_limit", label="Let-through energy (I²t) the wire withstands", symbol="W", kind=JOULE_INTEGRAL, at="short.withstand.let_through"),
        Output(id="resistance", label="Loop resistance by the table", symbol="R", kind=RESISTANCE, at="short.loop"),
        Output(id="resistance_low", label="Lowest loop resistance", symbol="R_0", kind=RESISTANCE, at="short.far.loop"),
        Output(id="k", label="k of the insulation", symbol="k", kind=HEAT_COEFFICIENT, digits=4, at="short.withstand.k"),
        Output(id="opens", label="The fuse opens", at="clears", words=CLEARS),
    ),
    intermediates=(
        Output(id="per_amp_hour_low", label="Short-circuit current for each Ah, lowest", symbol="k_1", kind=CURRENT_PER_CAPACITY, at="short.source.estimate.per_capacity.low"),
        Output(id="per_amp_hour_high", label="Short-circuit current for each Ah, usual highest", symbol="k_2", kind=CURRENT_PER_CAPACITY, at="short.source.estimate.per_capacity.usual"),
        Output(id="per_amp_hour_most", label="Short-circuit current for each Ah, highest published", symbol="k_3", kind=CURRENT_PER_CAPACITY, at="short.source.estimate.per_capacity.most"),
        Output(id="usual_low", label="Usual short at the source, from", symbol="I_1", kind=CURRENT, at="short.source.usual_low"),
        Output(id="usual_high", label="Usual short at the source, to", symbol="I_2", kind=CURRENT, at="short.source.usual_high"),
        Output(id="sag", label="Sag under load", symbol="ΔV", kind=VOLTAGE, at="short.source.readings.sag"),
        Output(id="off", label="The meter's error on two readings", symbol="δ", kind=VOLTAGE, at="short.source.readings.off"),
        Output(id="one_low", label="Resistance of one battery or string, lowest", symbol="R_a", kind=RESISTANCE, at="short.source.one.low"),
        Output(id="one_high", label="Resistance of one battery or string, highest", symbol="R_b", kind=RESISTANCE, at="short.source.one.high"),
        Output(id="source_low", label="Resistance of the source, lowest", symbol="R_s", kind=RESISTANCE, at="short.source.resistance.low"),
        Output(id="source_high", label="Resistance of the source, highest", symbol="R_t", kind=RESISTANCE, at="short.source.resistance.high"),
        Output(id="reference", label="Temperature of the table", symbol="T₀", kind=TEMPERATURE, unit="degree_Celsius", at="short.laid.reference"),
        Output(id="zero", label="Copper's zero-resistance temperature", symbol="T_z", kind=TEMPERATURE, unit="degree_Celsius", digits=4, at="short.laid.zero"),
        Output(id="gauge_resistance", label="Resistance of the gauge in the table", symbol="r_g", kind=LINEAR_RESISTANCE, digits=4, at="short.laid.gauge_resistance"),
        Output(id="named_area", label="Area of the gauge", symbol="S_g", kind=AREA, at="short.laid.copper.named_area"),
        Output(id="area", label="Copper in the conductor", symbol="S", kind=AREA, at="short.laid.copper.area"),
        Output(id="stated", label="Resistance per length in the table", symbol="r₀", kind=LINEAR_RESISTANCE, digits=4, at="short.laid.stated"),
        Output(id="per_length", label="Resistance per length, cold", symbol="r", kind=LINEAR_RESISTANCE, digits=4, at="short.laid.per_length"),
        Output(id="cable", label="Cable, out and back, by the table", symbol="R_c", kind=RESISTANCE, at="short.laid.resistance"),
        Output(id="least_stated", label="Resistance per length of solid copper", symbol="r_m", kind=LINEAR_RESISTANCE, digits=4, at="short.least.stated"),
        Output(id="annealed_at", label="Temperature of that", symbol="T_m", kind=TEMPERATURE, unit="degree_Celsius", at="short.least.reference"),
        Output(id="per_length_least", label="Resistance per length, cold and lowest", symbol="r_n", kind=LINEAR_RESISTANCE, digits=4, at="short.least.per_length"),
        Output(id="cable_least", label="Cable, out and back, cold and lowest", symbol="R_n", kind=RESISTANCE, at="short.least.resistance"),
        Output(id="joints_total", label="All joints", symbol="R_j", kind=RESISTANCE, at="short.joints_total"),
        Output(id="lowest_voltage", label="Voltage when nearly empty", symbol="V_e", kind=VOLTAGE, at="short.lowest.voltage"),
        Output(id="hot", label="Copper at the end of a short", symbol="T_f", kind=TEMPERATURE, unit="degree_Celsius", at="short.withstand.insulation.final"),
        Output(id="per_length_hot", label="Resistance per length, hot", symbol="r_h", kind=LINEAR_RESISTANCE, digits=4, at="short.hot.per_length"),
        Output(id="cable_hot", label="Cable, out and back, hot", symbol="R_h", kind=RESISTANCE, at="short.hot.resistance"),
        Output(id="resistance_high", label="Whole loop, hot and aged", symbol="R_w", kind=RESISTANCE, at="short.lowest.loop"),
        Output(id="per_length_warm", label="Resistance per length, at work", symbol="r_w", kind=LINEAR_RESISTANCE, digits=4, at="short.warm.per_length"),
        Output(id="cable_warm", label="Cable, out and back, at work", symbol="R_v", kind=RESISTANCE, at="short.warm.resistance"),
        Output(id="low_start", label="Lowest short at its start", symbol="I_b", kind=CURRENT, at="short.lowest_start.current"),
        Output(id="initial", label="Copper at work", symbol="T_i", kind=TEMPERATURE, unit="degree_Celsius", at="short.withstand.insulation.initial"),
        Output(id="copper", label="Copper's constant", symbol="K", kind=HEAT_COEFFICIENT, at="short.withstand.constant"),
        Output(id="withstand_near", label="The wire withstands a short at the source for", symbol="t_s", kind=DURATION, at="short.near.withstand"),
        Output(id="charging", label="Highest charging voltage against rest", symbol="c", kind=RATIO, at="short.charge_to_rest"),
        Output(id="charged", label="Voltage a fuse must be rated for", symbol="V_c", kind=VOLTAGE, at="short.max_voltage"),
        Output(id="breaks", label="The fuse's family breaks", kind=CURRENT, at="protection.duty.interrupting_rating"),
        Output(id="fuse_time", label="Fuse opens the lowest short within", symbol="t_o", kind=DURATION, at="latest"),
        Output(id="fuse_percent", label="Lowest short, in multiples of the fuse rating", symbol="p", kind=NUMBER, at="protection.multiple"),
        Output(id="ampacity", label="Ampacity of one conductor", symbol="I_z", kind=CURRENT),
        Output(id="all_bear", label="Ampacity of the whole run", symbol="I_a", kind=CURRENT, at="run_ampacity"),
        Output(id="ceiling", label="Largest fuse as a share of that", kind=RATIO),
        Output(id="version", label="Voltage to look for on the fuse", kind=VOLTAGE, at="protection.duty.marked_voltage"),
        Output(id="tested_at", label="Time constant at which d.c. fuses are tested", kind=DURATION, at="short.rise.tested_at"),
        Output(id="time_constant", label="Time constant", symbol="τ", kind=DURATION, at="short.rise.time_constant"),
        Output(id="settled", label="Time to 95 %", symbol="t_95", kind=DURATION, at="short.rise.settled"),
        Output(id="early", label="Current after a millisecond", symbol="i_1", kind=CURRENT, at="short.rise.early"),
    ),
    steps=STEPS,
    rules=(
        *REFUSALS,
        Placed(rule=shorts.FUSE_EACH_BATTERY, at="short"),
        clears.SHORT_BUT_NO_OVERLOAD, clears.NO_OVERLOAD, clears.NOT_CERTAIN, clears.FROM_MEMORY, clears.NO_CURVE,
        Placed(rule=shorts.ESTIMATED, at="short"),
        Placed(
            rule=duty.MARKED_HIGHER, at="protection.duty",
            headline="Use only the version rated {version} or more at {charged}: the common one is made for 32 V.",
        ),
        *RESERVATIONS, clears.NO_FUSE, FINE_AS_TYPED, FINE, clears.ONE_DEVICE,
        clears.NAME_THE_FUSE, cable.BELOW_TABLE,
        *placed("short", shorts.FUSE_EACH_STRING, shorts.NEVER_TRY, shorts.BREAK_AT_SOURCE, shorts.LARGE_ESTIMATED, shorts.LATE_READINGS),
        Placed(rule=shorts.CLASS_TIGHT, at="class_at_source", text=AT_SOURCE_TIGHT),
        Placed(rule=shorts.CLASS_TIGHT, at="short.far", text="{fault_current} at the far end is within a tenth of {interrupt_needed}. No source is known that precisely: use the class above there."),
        *placed("short", shorts.IN_ONE_CONDUCTOR),
        clears.BY_TYPED, clears.CURVE_WOULD_PROVE, clears.LARGER_FAULT, clears.ONLY_LET_THROUGH, clears.SLOW_FUSE, clears.BY_DATA_SHEET,
        *placed("short", shorts.ARCS, shorts.EACH_JUDGED_ALONE, shorts.BEYOND_ADIABATIC, shorts.K_NOT_PRINTED, shorts.CHARGERS_FEED, shorts.SOLID_COPPER, shorts.RATE_FOR_ALL, shorts.LARGE_FAULT_CLASS),
    ),
    leads=(
        Lead(label="Will this fuse open before the next one?", sheet="fuse-ladder", needs=("fuse",),
             carry=(("downstream", "fuse"), ("downstream_family", "fuse_family"), ("downstream_voltage", "fuse_voltage"), ("fault_current", "near_fault"), ("fault_low", "fault_low"), ("voltage", "charged"))),
    ),
    valid="A bolted short on direct current through copper, one bank, two like conductors. Copper fully loaded before the short; all heat kept in it, which holds up to 5 s.",
    summary="{fault_current} at most, {fault_low} at least",
    older_defaults=({}, {"insulation": "70 C PVC"}),
)
