"""alternator-charge: relay or regulated charger?"""

from types import SimpleNamespace

from calc.compare import at_least, at_most
from calc.declare import CAUTION, FINE, NOTE, STOP, Named, Remark, Rule, Step, always
from calc.electrical.limits import HOT_AIR
from calc.energy.battery import FROST_MARGIN
from calc.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    NUMBER,
    POWER,
    RATIO,
    RESISTANCE,
    TEMPERATURE,
    TIME,
    VOLTAGE,
)
from calc.sheets.alternator_charge_fields import FIELDS
from calc.sheets.alternator_charge_run import run
from calc.sheets.bank_fields import COOL, TEMPERED, WARM
from calc.sheets.wire_parts import (
    BEARING,
    COPPER_READ,
    HEAT_CAUTIONS,
    STRANDS_NOTE,
    WARMTH,
    bearing_steps,
    copper_steps,
    hot_copper,
    nec_notes,
    only_as_printed,
    rests_on_terminals,
    sae_notes,
    too_thin_alone,
    warmth_steps,
)
from calc.shown import DOWN, UP
from calc.tabled import Table
from calc.worksheet import Worksheet

NEAR_FROST = 10.0  # °C, below which makers of LFP ask for less current: common practice, no source
STATES = {"LFP": "states-lfp", "AGM": "states-agm", "gel": "states-gel", "flooded": "states-flooded"}


def _read(v: SimpleNamespace) -> bool:
    return not v.measured


def _joins(v: SimpleNamespace) -> bool:
    return bool(v.relay and v.flows)


def _fed(v: SimpleNamespace) -> bool:
    return bool(v.input_most is not None)


def _gives(v: SimpleNamespace) -> bool:
    return bool(v.flows and not v.relay)


def _falls(v: SimpleNamespace) -> bool:
    return bool(v.flows and v.tapers and v.going_in > 0)


def _no_rise(v: SimpleNamespace) -> bool:
    return _joins(v) and not v.counted


def _raised(v: SimpleNamespace) -> bool:
    return _joins(v) and not at_most(v.begins, v.bank_voltage)


def _lithium(v: SimpleNamespace) -> bool:
    return bool(v.chemistry == "LFP")


def _chilly(v: SimpleNamespace) -> bool:
    return _lithium(v) and v.may_charge and v.temperature < NEAR_FROST


def _frosty(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not at_least(v.temperature, 0.0)


def _frozen(v: SimpleNamespace) -> bool:
    return v.freezes is not None and at_most(v.temperature, v.freezes + FROST_MARGIN)


def _off_room(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not (at_least(v.temperature, COOL) and at_most(v.temperature, WARM))


def _cable_warns(v: SimpleNamespace) -> bool:
    crowded = v.uncounted_bundle and not at_most(v.fuse, v.crowded)
    return crowded or hot_copper(v) or rests_on_terminals(v) or only_as_printed(v) or too_thin_alone(v) or not at_most(v.air, HOT_AIR)


WORKSHEET = Worksheet(
    id="alternator-charge",
    title="Alternator charge",
    question="Relay or regulated charger?",
    asks="What does a drive put back?",
    about="Current through a relay or a charger, what it asks of cable and alternator, and the charge of a drive.",
    run=run,
    fields=FIELDS,
    results=(
        Named(id="initial_current", label="Into the bank, at first", symbol="I_1", kind=CURRENT),
        Named(id="charge", label="Put in by the drive", symbol="Q", kind=CHARGE, way=DOWN),
        Named(id="kept", label="Of that the bank keeps", symbol="Q_k", kind=CHARGE, way=DOWN, quiet=True),
        Named(id="end_state", label="State of charge afterwards", symbol="s_2", kind=RATIO, way=DOWN, quiet=True),
        Named(id="charge_most", label="Never more than", symbol="Q_m", kind=CHARGE, way=UP, quiet=True),
        Named(id="drive_time", label="Drive for the charge you want", symbol="t_w", kind=TIME, way=UP, quiet=True),
        Named(id="drain", label="The bank loses up to", symbol="I_d", kind=CURRENT, way=UP, quiet=True),
        Named(id="input_current", label="At the charger's input, at first", symbol="I_i", kind=CURRENT, way=UP, quiet=True),
        Named(id="input_voltage", label="Least voltage at its input", symbol="V_i", kind=VOLTAGE, way=DOWN, quiet=True),
        Named(id="cable_current", label="Most that the run carries", symbol="I_c", kind=CURRENT, way=UP, quiet=True),
        Named(id="cable_load", label="Of what the cable bears", symbol="x_c", kind=RATIO, way=UP, quiet=True),
        Named(id="cable_heat", label="Heat in the run", symbol="P_c", kind=POWER, way=UP, quiet=True),
        Named(id="fuse", label="Fuse at both ends", symbol="I_n", kind=CURRENT),
        Named(id="alternator_load", label="Of the alternator's rating", symbol="x_a", kind=RATIO, way=UP, quiet=True),
        Named(id="hot_left", label="Left for the bank, hot, for hours", symbol="I_h", kind=CURRENT, way=DOWN),
        Named(id="idle_left", label="Left for the bank, hot, at idle", symbol="I_0", kind=CURRENT, way=DOWN),
        Named(id="states", label="The alternator, cold and hot"),
    ),
    between=(
        *(named for named in COPPER_READ if named.id != "wires"),
        *BEARING,
        *WARMTH,
        Named(id="cable", label="Conductors, out and back", symbol="R_c", kind=RESISTANCE),
        Named(id="joints_total", label="Joints together", symbol="R_j", kind=RESISTANCE),
        Named(id="run_total", label="The run", symbol="R_r", kind=RESISTANCE),
        Named(id="loop", label="The whole loop", symbol="R", kind=RESISTANCE),
        Named(id="give", label="The charger gives", symbol="I_g", kind=CURRENT),
        Named(id="blocks", label="12 V blocks in series", kind=COUNT),
        Named(id="ends_at", label="The charge ends at", symbol="V_t", kind=VOLTAGE),
        Named(id="top_voltage", label="Highest voltage on the run", kind=VOLTAGE),
        Named(id="bears_voltage", label="Most such a bank is given", kind=VOLTAGE),
        Named(id="power_first", label="Input power at first", symbol="P_1", kind=POWER),
        Named(id="power_most", label="Input power at the end", symbol="P_m", kind=POWER),
        Named(id="input_most", label="Input current at the end", symbol="I_m", kind=CURRENT, way=UP),
        Named(id="asked", label="Asked of the alternator for it", symbol="I_q", kind=CURRENT, way=UP),
        Named(id="fed", label="Share of it that there is", symbol="f", kind=RATIO),
        Named(id="most_taken", label="Most the bank is usually given", symbol="I_b", kind=CURRENT, way=DOWN),
        Named(id="takes", label="What the bank takes at this state", symbol="I_s", kind=CURRENT),
        Named(id="coulombic", label="Charge efficiency", symbol="η_q", kind=RATIO),
        Named(id="going_in", label="Counted as going in at first", symbol="I_k", kind=CURRENT, way=DOWN),
        Named(id="room", label="Charge it takes to fill the bank", symbol="Q_r", kind=CHARGE),
        Named(id="rises_to", label="The bank's own voltage when full", symbol="V_f", kind=VOLTAGE),
        Named(id="begins", label="The bank's own voltage, as counted", symbol="V_0", kind=VOLTAGE, way=UP),
        Named(id="counted", label="Current counted from there", symbol="I_f", kind=CURRENT, way=DOWN),
        Named(id="reach", label="Share of it that the engine's voltage reaches", symbol="z", kind=RATIO),
        Named(id="later_room", label="Of that, with falling current", symbol="Q_l", kind=CHARGE),
        Named(id="steady_time", label="Time before the current falls", symbol="t_s", kind=TIME),
        Named(id="falls_in", label="Time constant of the fall", symbol="τ", kind=TIME),
        Named(id="euler", label="Euler's number", symbol="e", kind=NUMBER, digits=6),
        Named(id="still_open", label="Share of it still open", symbol="y", kind=RATIO),
        Named(id="freezes", label="Acid freezes at this state near", kind=TEMPERATURE, way=UP),
        Named(id="coldest", label="Charged from", kind=TEMPERATURE),
        Named(id="warmest", label="Charged up to", kind=TEMPERATURE),
        Named(id="margin", label="Margin for hours on end", symbol="m", kind=RATIO),
        Named(id="lowest", label="The fuse must carry", symbol="I_min", kind=CURRENT, way=UP),
        Named(id="highest", label="The cable bears", symbol="I_max", kind=CURRENT, way=DOWN),
        Named(id="ampacity", label="Ampacity, corrected", symbol="I_z", kind=CURRENT, way=DOWN),
    ),
    steps=(
        *copper_steps(_read),
        Step(of="per_length", formula="stated * (copper - zero) / (reference - zero)", source="copper-temperature", when=_read, says="Copper at {copper}."),
        Step(of="cable", formula="2 * length * per_length", source="ohm", when=_read, says="Out and back, so the length counts twice."),
        Step(of="joints_total", formula="joints * joint_resistance", when=_read, says="All of them lie in the same loop."),
        Step(of="run_total", formula="cable + joints_total", when=_read, says="What lies between the two batteries."),
        Step(of="run_total", formula="run_resistance", when=lambda v: v.measured, says="As you know it."),
        Step(of="loop", formula="run_total + bank_resistance", source="ohm", when=lambda v: v.relay, says="All that stands against the current. The regulator holds its voltage, so the alternator adds nothing."),
        Step(of="initial_current", formula="(engine_voltage - bank_voltage) / loop", source="ohm", when=_joins, says="Ohm's law, and nothing else, decides."),
        Step(of="drain", formula="(bank_voltage - engine_voltage) / loop", source="ohm", when=lambda v: v.drains, says="At most: an alternator takes nothing back, but the vehicle's loads and its battery do."),
        Step(of="give", formula="charger_limit * output_left", when=lambda v: not v.relay, says="Its limit, less what heat costs."),
        Step(of="ends_at", source="charge-volts", when=lambda v: not v.relay and v.charge_voltage is None and not _lithium(v), says="Usual for {chemistry}, {blocks} × 12 V; no less than the bank has now."),
        Step(of="ends_at", source="practice", when=lambda v: not v.relay and v.charge_voltage is None and _lithium(v), says="Usual for LFP, {blocks} × 12 V; no less than the bank has now."),
        Step(of="ends_at", formula="charge_voltage", when=lambda v: not v.relay and v.charge_voltage is not None, says="As you set it."),
        Step(of="power_first", formula="give * bank_voltage / charger_efficiency", source="charger-balance", when=lambda v: not v.relay, says="What goes out, and its loss."),
        Step(of="power_most", formula="give * ends_at / charger_efficiency", source="charger-balance", when=lambda v: not v.relay, says="More as the bank's voltage rises."),
        Step(of="input_current", formula="2 * power_first / (engine_voltage + sqrt(engine_voltage ** 2 - 4 * run_total * power_first))", source="ohm", when=_fed, says="Power at the end of a run that loses voltage: less volts, more amps."),
        Step(of="input_most", formula="2 * power_most / (engine_voltage + sqrt(engine_voltage ** 2 - 4 * run_total * power_most))", source="ohm", when=_fed, says="The same at the end of the charge."),
        Step(of="input_voltage", formula="engine_voltage - run_total * input_most", source="ohm", when=_fed, says="What is left of the engine's voltage."),
        Step(of="initial_current", formula="give", when=_gives, says="The charger's limit is its output, whatever the two voltages are."),
        Step(of="cable_current", formula="initial_current", when=_joins, says="At its first and highest."),
        Step(of="cable_current", formula="drain", when=lambda v: v.drains, says="The other way round."),
        Step(of="cable_current", formula="max(input_most, give)", when=_fed, says="The larger of both sides of the charger, for one size of cable throughout."),
        *bearing_steps(always, "bundled", "top_voltage"),
        Step(of="cable_load", formula="cable_current / highest", when=lambda v: v.cable_current is not None, says="Above 100 % it is too thin."),
        Step(of="cable_heat", formula="cable_current ** 2 * run_total", source="ohm", when=lambda v: v.cable_current is not None, says="Spread along the run and its joints."),
        Step(of="lowest", formula="margin * cable_current", source="nec-125", when=lambda v: v.cable_current is not None, says="A fuse that carries its full rating for hours ages and opens by itself."),
        Step(of="fuse", source="fuse-ratings", when=lambda v: v.fuse is not None, says="The smallest standard rating from {lowest} to {highest} that can break {fault_current}. One at each end, since both ends hang on a battery."),
        Step(of="fuse", source="fuse-ratings", when=lambda v: v.lowest is not None and v.fuse is None, says="No standard rating lies from {lowest} to {highest}."),
        *warmth_steps(lambda v: v.fuse is not None, "cable_current"),
        Step(of="hot_left", formula="max(alternator * hot_share, vehicle_load) - vehicle_load", source="practice", says="Heat is what limits it for hours on end."),
        Step(of="idle_left", formula="max(alternator * idle_share, vehicle_load) - vehicle_load", source="practice", says="At idle it turns slowly, and its fan with it."),
        Step(of="alternator_load", formula="(vehicle_load + asked) / alternator", when=lambda v: v.asked is not None, says="Vehicle and bank together. Above 100 % it is asked for more than it has even cold."),
        Step(of="states", source="alternator-manual", says="One published machine of 50 A, scaled to {alternator}; the last two rows are by your own shares."),
        Step(of="fed", formula="min(1, hot_left / asked)", when=lambda v: _gives(v) and v.fed is not None, says="Where the hot alternator has less than is asked, the charger gives less."),
        Step(of="most_taken", source="bulk-most", when=lambda v: v.flows and not _lithium(v), says="A quarter of its A·h in amps."),
        Step(of="most_taken", source="practice", when=lambda v: v.flows and _lithium(v), says="Half of its A·h in amps; the data sheet says what yours may have."),
        Step(of="takes", source="bulk-end", when=lambda v: _joins(v) and not _lithium(v), says="From about three quarters full on it takes less and less."),
        Step(of="takes", source="practice", when=lambda v: _joins(v) and _lithium(v), says="Nearly all the way up the same."),
        Step(of="begins", formula="bank_voltage", when=lambda v: _joins(v) and not _raised(v), says="What it shows now; the published rested voltages lie below it."),
        *(
            Step(of="begins", source=source, when=lambda v, chemistry=chemistry: _raised(v) and v.chemistry == chemistry,
                 says="More than it shows: a straight line from here stays above the published rested voltages as it fills.")
            for chemistry, source in STATES.items()
        ),
        Step(of="counted", formula="(max(engine_voltage, begins) - begins) / loop", source="ohm", when=_joins, says="Ohm's law again, with what the bank's voltage will soon be."),
        Step(of="going_in", formula="min(min(counted, hot_left), takes)", when=_joins, says="The least of what Ohm's law, the hot alternator and the bank allow."),
        Step(of="going_in", formula="min(give * fed, most_taken)", when=lambda v: _gives(v) and v.fed is not None, says="What the charger gives, so long as the bank takes it."),
        Step(of="room", formula="capacity * (1 - from_state) / coulombic", source="charge-efficiency", when=lambda v: v.flows, says="What is missing, and the loss on its way in."),
        Step(of="rises_to", source="charge-volts", when=lambda v: _falls(v) and v.relay and not _lithium(v), says="On charge, for {chemistry}, {blocks} × 12 V."),
        Step(of="rises_to", source="practice", when=lambda v: _falls(v) and v.relay and _lithium(v), says="On charge, for LFP, {blocks} × 12 V."),
        Step(of="reach", formula="(engine_voltage - begins) / (rises_to - begins)", source="practice", when=lambda v: _falls(v) and v.relay and v.reach < 1, says="Our model: the bank's own voltage rises evenly as it fills, and the current stops where it meets the engine's."),
        Step(of="reach", source="practice", when=lambda v: _falls(v) and v.relay and v.reach >= 1, says="Our model: the bank's own voltage rises evenly, here as far as the engine's, as it fills."),
        Step(of="falls_in", source="bulk-end", when=lambda v: _falls(v) and not v.relay, says="At the charging voltage the bank takes a current in proportion to what it lacks; spread see shore charge."),
        Step(of="later_room", formula="room * reach", when=lambda v: _falls(v) and v.relay, says="The current falls from the first minute."),
        Step(of="falls_in", formula="later_room / going_in", when=lambda v: _falls(v) and v.relay, says="As long as the first current would take to fill it."),
        Step(of="later_room", formula="min(room, going_in * falls_in)", when=lambda v: _falls(v) and not v.relay, says="From there on the bank takes less than the charger has."),
        Step(of="steady_time", formula="(room - later_room) / going_in", when=lambda v: _falls(v) and not v.relay, says="Until then the current is steady."),
        Step(of="still_open", formula="1 / euler ** ((hours - steady_time) / falls_in)", when=_falls, says="An exponential: quick at first, and never quite done."),
        Step(of="charge", formula="going_in * steady_time + later_room * (1 - still_open)", when=_falls, says="Steady part and falling part."),
        Step(of="charge", formula="going_in * hours", when=lambda v: v.flows and not _falls(v), says="The current is steady through the drive."),
        Step(of="charge_most", formula="min(initial_current * hours, room)", when=_joins, says="If the first current did not fall, or the bank were full."),
        Step(of="kept", formula="charge * coulombic", source="charge-efficiency", when=lambda v: v.flows, says="Not all that goes in comes out again."),
        Step(of="end_state", formula="from_state + kept / capacity", when=lambda v: v.flows, says="Counted, not read from a voltage."),
        Step(of="freezes", source="acid-freezing", when=_frosty, says="By the gravity of a flooded battery; sealed ones mostly freeze later."),
        Step(of="drive_time", formula="wanted / going_in", when=lambda v: v.drive_time is not None and not v.in_taper, says="At the steady current."),
        Step(of="drive_time", formula="steady_time + falls_in * ln(later_room / (later_room - (wanted - going_in * steady_time)))", when=lambda v: v.in_taper, says="The same exponential, the other way round."),
        Step(of="drive_time", when=lambda v: v.flows and v.wanted is not None and v.drive_time is None, says="No drive does: there is not that much room, or nothing goes in."),
    ),
    rules=(
        Rule(verdict=STOP, when=_frozen, says="At {from_state} its acid may freeze at {temperature}. Do not charge a frozen battery: let it thaw and look for cracks first."),
        Rule(verdict=STOP, when=lambda v: not v.may_charge, says="At {temperature} this bank may not be charged: {chemistry} is charged from {coldest} to {warmest}."),
        Rule(verdict=STOP, when=lambda v: v.drains, says="Nothing is charged: the engine holds {engine_voltage} and the bank has {bank_voltage}, so up to {drain} flows out of the bank into the vehicle."),
        Rule(verdict=STOP, when=lambda v: v.unfed, says="The run cannot feed this charger: at {power_most} the voltage at its input breaks down. Thicker or shorter cable."),
        Rule(verdict=STOP, when=lambda v: v.starved, says="Only {input_voltage} reach the charger's input and it works down to {lowest_input}: it eases off or stops."),
        Rule(verdict=STOP, when=lambda v: v.too_high, says="{ends_at} is more than such a bank is given, {bears_voltage} at most."),
        Rule(verdict=STOP, when=lambda v: not v.window_open, says="Too much for this run: {cable_current} needs a fuse of {lowest} or more, and {conductor} bears {highest}."),
        Rule(verdict=STOP, when=lambda v: v.fuse is None, says="No standard fuse stands between {lowest} for the current and {highest} for the cable."),
        Rule(verdict=STOP, when=lambda v: v.hot_left <= 0, says="The vehicle alone takes all that the hot alternator gives for hours: nothing is left for the bank."),
        Rule(verdict=STOP, when=lambda v: v.relay and v.beyond_rating, says="By Ohm's law the bank asks {initial_current}, and with the vehicle that is {alternator_load} of the rating: the alternator works flat out until it is full or burnt."),
        Rule(verdict=STOP, when=lambda v: v.relay and _lithium(v) and v.hot_short, says="An LFP bank asks {initial_current} through the relay and goes on asking; the hot alternator has {hot_left}. It needs a charger that limits the current."),
        Rule(verdict=CAUTION, when=lambda v: v.hot_short, says="{asked} is asked for the bank, and the hot alternator has {hot_left} for hours on end."),
        Rule(verdict=CAUTION, when=lambda v: v.full, says="The bank is full: there is nothing to put in."),
        Rule(verdict=CAUTION, when=lambda v: v.too_much, says="{initial_current} is more than such a bank is usually given, {most_taken}."),
        Rule(verdict=CAUTION, when=_no_rise, says="Count on no charge: {engine_voltage} at the engine is no more than such a bank holds by itself at {from_state} or soon after, {begins}."),
        Rule(verdict=CAUTION, when=lambda v: v.relay, says="{initial_current} at first and less as the bank fills, some {charge} in {hours}; but nothing holds it to that."),
        Rule(verdict=CAUTION, when=lambda v: v.idle_short, says="{charge} in {hours} on the road. Hot and at idle the alternator has {idle_left} for a bank that asks {asked}: do not count on idling."),
        Rule(verdict=CAUTION, when=_cable_warns, says="{charge} in {hours}, on a cable that bears it under conditions: read the cautions."),
        Rule(verdict=CAUTION, when=_chilly, says="{charge} in {hours} by the sum, but near freezing makers ask for less current, and the charger must know it."),
        Rule(verdict=CAUTION, when=_off_room, says="{charge} in {hours} near room temperature, and the bank is at {temperature}: read the cautions."),
        Rule(verdict=CAUTION, when=lambda v: not at_least(v.output_left, 1.0), says="{charge} in {hours}: heat leaves the charger {output_left} of its output."),
        Rule(verdict=CAUTION, when=lambda v: v.short and v.drive_time is None, says="{charge} in {hours}; no drive puts {wanted} into this bank."),
        Rule(verdict=CAUTION, when=lambda v: v.short, says="{charge} in {hours}: for the {wanted} you want, drive {drive_time}."),
        Rule(verdict=FINE, says="{initial_current} from the charger, {charge} in {hours}. Cable and alternator bear it, at idle too."),
    ),
    remarks=(
        Remark(when=_lithium, source="lfp-frost", says="Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. A relay knows nothing of frost, and a charger only with a sensor on the bank."),
        Remark(when=_frosty, source="acid-freezing", says="At {from_state} the acid freezes near {freezes}. Keep 3 K clear of it; never charge a frozen battery, it can burst."),
        Remark(when=_off_room, source="practice", says=TEMPERED),
        Remark(when=lambda v: v.relay, source="ohm", says="A relay bounds neither current nor voltage. A better bank, a warmer one or a thicker cable raises the first; the second is whatever the engine holds, be it too little to fill the bank or too much for it."),
        Remark(when=lambda v: v.relay, source="practice", says="A smart alternator lowers its voltage to save fuel and lifts it on the overrun. Work this sheet with the lowest that you measure: at or below the bank's own voltage nothing is charged, or the bank feeds the vehicle. LFP rests at 13.2 to 13.4 V, so this comes sooner with it."),
        Remark(when=lambda v: v.relay and _lithium(v), source="practice", says="An LFP bank that is low takes nearly the same current until it is almost full, where lead-acid lets up. Should its own protection cut off at full current, the alternator's voltage jumps and can destroy its diodes and the vehicle's electronics."),
        Remark(when=lambda v: v.relay, source="practice", says="With the engine off a relay that sticks, or one that goes by voltage and sees a bank resting above its cut-out (near 12.8 V on 12 V; LFP always is), keeps both joined: the loads of the night then empty the starter battery too. Engine off, put a clamp meter round the run: it must show nothing."),
        Remark(when=lambda v: not v.relay, source="practice", says="A charger must know that the engine runs, by a signal or by a voltage it is set for. Otherwise it goes on all night and empties the starter battery; with a smart alternator voltage alone will not do."),
        Remark(source="33cfr-place", says="This run hangs on a battery at both ends: a fuse at each, as near as the law says, within 7 in (18 cm), or 40 in (1 m) in a sheath. With one of them missing the cable is fed from the other battery with nothing to stop it."),
        Remark(when=lambda v: v.hot_short, source="practice", says="Nothing but heat limits an alternator. At full output for an hour in a hot engine bay its diodes and windings fail, and its cable burns if it was sized for less. Take a smaller charger, or one whose limit can be set."),
        Remark(when=lambda v: v.idle_short, source="alternator-manual", says="Hot and turning slowly, one published machine of 50 A gave 16 A; at more than three times the speed 48 A. What is missing at idle comes out of the starter battery, and a charger then lets go."),
        Remark(when=lambda v: v.unfed or v.starved, source="ohm", says="Less voltage at its input makes a charger take more current, which loses more voltage. Thicken or shorten the run, clean its joints, or set the charger lower."),
        Remark(when=lambda v: v.too_high, source="practice", says="Too high a voltage makes lead-acid gas and LFP switch itself off. See what the bank's maker allows, and what the engine really holds."),
        Remark(when=lambda v: v.too_much, source="practice", says="The bank's data sheet says what it may be given. Beyond it lead-acid gets hot and gasses, and LFP ages or switches off."),
        Remark(when=lambda v: _gives(v) and v.fed is not None and not at_least(v.fed, 1.0), source="practice", says="Charge is reckoned with {going_in}, what the hot alternator has left, not with the charger's limit."),
        Remark(when=lambda v: not at_least(v.output_left, 1.0), source="practice", says="Heat takes part of the charger's output: give its bay air, and see enclosure airflow for what that brings back."),
        Remark(when=lambda v: v.flows, source="practice", says="What runs on the bank meanwhile, a fridge or a fan, takes its part first: count that off."),
        Remark(when=lambda v: v.uncounted_bundle, source="33cfr-notes", says="{bundled} loaded conductors together heat each other. This rule set counts that from 50 V on only; with its factor the cable bears {crowded}."),
        *HEAT_CAUTIONS,
        Remark(source="practice", says="Two batteries feed this run: take the minus off both before you work, one insulated tool, no rings. A hot alternator burns and its belt catches sleeves. Keep to the makers' instructions, and never run an engine in a closed place: its exhaust kills."),
        *nec_notes(always),
        Remark(level=NOTE, source="alternator-rating", says="The rating on the label is for a cold machine at full speed. Hot or at idle it is not there."),
        Remark(level=NOTE, source="alternator-shaft", says="About half of what an alternator takes from the engine comes out: charging by driving is not free."),
        Remark(level=NOTE, when=lambda v: v.flows and not _lithium(v), source="bulk-end", says="Near three quarters full lead-acid begins to take less at any current: a drive alone seldom fills it, and never being filled ages it."),
        Remark(level=NOTE, when=_falls, source="practice", says="The falling current is a model. By it the bank holds {end_state} afterwards; a monitor that counts knows better."),
        *sae_notes(_read),
        STRANDS_NOTE,
    ),
    valid="A warm engine above idle, its regulator holding one voltage, a healthy bank. The starter battery's own share is not in it.",
    gist="{initial_current} at first, {charge} in {hours}",
    gist_none="nothing is charged",
    apart=(("lowest", "highest"),),
    tables=(
        Table(of="states", columns=(
            Named(id="name", label="State"), Named(id="share", label="Of the rating", kind=RATIO, way=DOWN), Named(id="output", label="It gives", kind=CURRENT, way=DOWN),
            Named(id="left", label="Left for the bank", kind=CURRENT, way=DOWN), Named(id="load", label="Asked of it", kind=RATIO, way=UP))),
    ),
)
