"""The working of alternator-charge in words, and what its answer says when nothing is wrong."""

# fmt: off
from collections.abc import Callable

from calc.energy.alternator import StateName
from calc.energy.battery import Chemistry
from calc.energy.drive import AlternatorCharge
from calc.energy.feeds import Method
from calc.energy.limits import FREEZING
from calc.judge import Level, Rule
from calc.sheets.parts.wire import ampacity_steps, stated_steps, steps_to_warmth
from calc.units.compare import at_least, at_most
from calc.worksheet.declare import Step

METHODS: dict[str, str] = {Method.RELAY: "relay", Method.CHARGER: "regulated charger"}
_STATES = {Chemistry.LFP: "states-lfp", Chemistry.AGM: "states-agm", Chemistry.GEL: "states-gel", Chemistry.FLOODED: "states-flooded"}
STATE_NAMES: dict[str, str] = {
    StateName.COLD_IDLE: "cold, idle",
    StateName.COLD_DRIVING: "cold, driving",
    StateName.HOT_IDLE: "hot, idle",
    StateName.HOT_DRIVING: "hot, driving",
    StateName.HOT_FAST: "hot, fast",
    StateName.OWN_IDLE: "hot, idle, your value",
    StateName.OWN_FOR_HOURS: "hot, continuous, your value",
}


def _read(found: AlternatorCharge) -> bool:
    return found.run.read is not None


def _flows(found: AlternatorCharge) -> bool:
    return found.drive is not None


def _joins(found: AlternatorCharge) -> bool:
    return found.relay is not None and found.relay.flows


def _drains(found: AlternatorCharge) -> bool:
    return found.relay is not None and not found.relay.flows


def _settles(found: AlternatorCharge) -> bool:
    return found.protection is not None and found.protection.settled is not None


def _fed(found: AlternatorCharge) -> bool:
    return found.charger is not None and not found.charger.unfed


def _gives(found: AlternatorCharge) -> bool:
    return found.charger is not None and found.charger.flows


def _usual_end(found: AlternatorCharge) -> bool:
    return found.charger is not None and found.inputs["charge_voltage"] is None


def _raised(found: AlternatorCharge) -> bool:
    return _joins(found) and found.rising is not None and not at_most(found.rising.begins, found.shown.voltage)


def _raised_for(chemistry: Chemistry) -> Callable[[AlternatorCharge], bool]:
    return lambda found: _raised(found) and found.bank.chemistry is chemistry


def _falls(found: AlternatorCharge) -> bool:
    return found.drive is not None and found.drive.falls


def _falls_by_relay(found: AlternatorCharge) -> bool:
    return found.relay is not None and _falls(found)


def _reaches_full(found: AlternatorCharge) -> bool:
    return found.rising is not None and found.rising.reach >= 1


def _drive_time(found: AlternatorCharge) -> float | None:
    return None if found.drive is None else found.drive.drive_time


def _while_falling(found: AlternatorCharge) -> bool:
    return found.drive is not None and found.drive.wanted_while_falling


def _frosty(found: AlternatorCharge) -> bool:
    return found.bank.lead_acid and not at_least(found.bank.temperature, FREEZING)


STEPS: tuple[Step[AlternatorCharge], ...] = (
    *stated_steps("run.read"),
    Step(of="per_length", formula="stated * (copper - zero) / (reference - zero)", source="copper-temperature", when=_read, text="Copper at {copper}."),
    Step(of="cable", formula="2 * length * per_length", source="ohm", when=_read, text="Out and back, so the length counts twice."),
    Step(of="joints_total", formula="joints * joint_resistance", when=_read, text="All of them are in the same loop."),
    Step(of="run_total", formula="cable + joints_total", when=_read, text="Everything between the two batteries."),
    Step(of="run_total", formula="run_resistance", when=lambda a: a.run.read is None, text="As you typed it."),
    Step(of="inside", formula="bank_resistance", when=lambda a: a.relay is not None and a.inner.known, text="As you typed it."),
    Step(of="inside", source="bank-resistance", when=lambda a: a.relay is not None and not a.inner.known and a.bank.lead_acid, text="12 V over a short-circuit current of 10 A for each Ah, block by block."),
    Step(of="inside", source="bank-resistance", when=lambda a: a.relay is not None and not a.inner.known and not a.bank.lead_acid, text="91 mV a cell at the current of an hour's rate; cells alone."),
    Step(of="loop", formula="run_total + inside", source="ohm", when=lambda a: a.relay is not None, text="All the resistance in the loop. The regulator keeps its voltage constant, so the alternator adds none."),
    Step(of="initial_current", formula="(engine_voltage - bank_voltage) / loop", source="ohm", when=_joins, text="Ohm's law alone: the voltage difference divided by the resistance."),
    Step(of="drain", formula="(bank_voltage - engine_voltage) / loop", source="ohm", when=_drains, text="At most: the vehicle's loads and its battery can draw this."),
    Step(of="give", formula="charger_limit * output_left", when=lambda a: a.charger is not None, text="Its limit, less the derating by heat."),
    Step(of="ends_at", source="charge-volts", when=lambda a: _usual_end(a) and a.bank.lead_acid, text="Usual for {chemistry}, {blocks} × 12 V; no less than the bank has now."),
    Step(of="ends_at", source="practice", when=lambda a: _usual_end(a) and not a.bank.lead_acid, text="Usual for LFP, {blocks} × 12 V; no less than the bank has now."),
    Step(of="ends_at", formula="charge_voltage", when=lambda a: a.charger is not None and not _usual_end(a), text="As you set it."),
    Step(of="power_first", formula="give * bank_voltage / charger_efficiency", source="charger-balance", when=lambda a: a.charger is not None, text="Its output and its loss."),
    Step(of="power_most", formula="give * ends_at / charger_efficiency", source="charger-balance", when=lambda a: a.charger is not None, text="More as the bank's voltage rises."),
    Step(of="input_current", formula="2 * power_first / (engine_voltage + sqrt(engine_voltage ** 2 - 4 * run_total * power_first))", source="ohm", when=_fed, text="Constant power at the end of a run with voltage drop: fewer volts, more amps."),
    Step(of="input_most", formula="2 * power_most / (engine_voltage + sqrt(engine_voltage ** 2 - 4 * run_total * power_most))", source="ohm", when=_fed, text="The same at the end of the charge."),
    Step(of="input_voltage", formula="engine_voltage - run_total * input_most", source="ohm", when=_fed, text="What is left of the engine's voltage."),
    Step(of="initial_current", formula="give", when=_gives, text="The charger's limit is its output, whatever the two voltages are."),
    Step(of="cable_current", formula="initial_current", when=_joins, text="At the start, when it is highest."),
    Step(of="cable_current", formula="drain", when=_drains, text="The other way round."),
    Step(of="cable_current", formula="max(input_most, give)", when=_fed, text="The larger of both sides of the charger, for one size of cable throughout."),
    *ampacity_steps("cable", together="bundled", volts="top_voltage"),
    Step(of="cable_load", formula="cable_current / highest", when=lambda a: a.protection is not None, text="Above 100 % it is too small."),
    Step(of="cable_heat", formula="cable_current ** 2 * run_total", source="ohm", when=lambda a: a.protection is not None, text="Spread along the run and its joints."),
    Step(of="takes", source="bulk-end", when=lambda a: _joins(a) and a.bank.lead_acid, text="From about 75 % full it accepts less and less."),
    Step(of="takes", source="practice", when=lambda a: _joins(a) and not a.bank.lead_acid, text="Nearly constant until almost full."),
    Step(of="settled", formula="min(initial_current, takes)", source="bulk-end", when=_settles, text="Lead-acid's own voltage rises within minutes; then its state of charge sets the current."),
    Step(of="lowest", formula="margin * cable_current", source="nec-125", when=lambda a: a.protection is not None and not _settles(a), text="A fuse that carries its full rating for hours ages and opens without a fault."),
    Step(of="lowest", formula="max(margin * settled, cable_current)", source="nec-125", when=_settles, text="1.25 times the continuous current, and no less than the current at first."),
    Step(of="fuse", source="fuse-ratings", when=lambda a: a.protection is not None and a.protection.fuse is not None, text="The standard rating from {lowest} to {highest} that can break {fault_current}, in the order of fuse choice: published and common ones first, then the smallest. One at each end, because a battery feeds each end."),
    Step(of="fuse", source="fuse-ratings", when=lambda a: a.protection is not None and a.protection.fuse is None, text="There is no standard rating from {lowest} to {highest}."),
    *steps_to_warmth("protection.warmth", "cable_current"),
    Step(of="hot_left", formula="max(alternator * hot_share, vehicle_load) - vehicle_load", source="practice", text="Heat sets its continuous limit."),
    Step(of="idle_left", formula="max(alternator * idle_share, vehicle_load) - vehicle_load", source="practice", text="At idle it turns slowly, and so does its fan."),
    Step(of="alternator_load", formula="(vehicle_load + asked) / alternator", when=lambda a: a.load.asked is not None, text="Vehicle and bank together. Above 100 % is more than it can give even cold."),
    Step(of="compared", text="The same calculation for a relay and for a charger of the output given here."),
    Step(of="states", source="alternator-manual", text="One published machine of 50 A, scaled to {alternator}; the last two rows are by your own shares."),
    Step(of="fed", formula="min(1, hot_left / asked)", when=_gives, text="If the hot alternator has too little, the charger gives less."),
    Step(of="most_taken", source="bulk-most", when=lambda a: _flows(a) and a.bank.lead_acid, text="A quarter of its Ah in amps."),
    Step(of="most_taken", source="practice", when=lambda a: _flows(a) and not a.bank.lead_acid, text="Half of its Ah in amps; see your data sheet."),
    Step(of="begins", formula="bank_voltage", when=lambda a: _joins(a) and not _raised(a), text="Its reading now; the published rested voltages are below it."),
    *(
        Step(of="begins", source=source, when=_raised_for(chemistry),
             text="Above its reading: a straight line from here stays above the published rested voltages as it fills.")
        for chemistry, source in _STATES.items()
    ),
    Step(of="counted", formula="(max(engine_voltage, begins) - begins) / loop", source="ohm", when=_joins, text="Ohm's law again, with the voltage the bank soon reaches."),
    Step(of="going_in", formula="min(min(counted, hot_left), takes)", when=_joins, text="The smallest of three: by Ohm's law, by the hot alternator and by the bank."),
    Step(of="going_in", formula="min(give * fed, most_taken)", when=_gives, text="The charger's output, as long as the bank accepts it."),
    Step(of="room", formula="capacity * (1 - from_state) / coulombic", source="charge-efficiency", when=_flows, text="The missing charge and the charging loss."),
    Step(of="rises_to", source="charge-volts", when=lambda a: _falls_by_relay(a) and a.bank.lead_acid, text="On charge, for {chemistry}, {blocks} × 12 V."),
    Step(of="rises_to", source="states-lfp", when=lambda a: _falls_by_relay(a) and not a.bank.lead_acid, text="At rest, for LFP, {blocks} × 12 V."),
    Step(of="reach", formula="(engine_voltage - begins) / (rises_to - begins)", source="practice", when=lambda a: _falls_by_relay(a) and not _reaches_full(a), text="Our model: the bank's own voltage rises evenly as it fills, and the current stops when it equals the engine's."),
    Step(of="reach", source="practice", when=lambda a: _falls_by_relay(a) and _reaches_full(a), text="Our model: the bank's own voltage rises evenly, here as far as the engine's, as it fills."),
    Step(of="falls_in", source="bulk-end", when=lambda a: _falls(a) and a.charger is not None, text="At the charging voltage the bank accepts a current in proportion to its missing charge; for the spread see shore charge."),
    Step(of="later_room", formula="room * reach", when=_falls_by_relay, text="The current falls from the first minute."),
    Step(of="falls_in", formula="later_room / going_in", when=_falls_by_relay, text="The time to fill it at the first current."),
    Step(of="later_room", formula="min(room, going_in * falls_in)", when=lambda a: _falls(a) and a.charger is not None, text="From there the bank accepts less than the charger can give."),
    Step(of="steady_time", formula="(room - later_room) / going_in", when=lambda a: _falls(a) and a.charger is not None, text="Until then the current is constant."),
    Step(of="still_open", formula="1 / euler ** ((hours - steady_time) / falls_in)", when=_falls, text="An exponential: fast at first, never quite complete."),
    Step(of="charge", formula="going_in * steady_time + later_room * (1 - still_open)", when=_falls, text="Constant part and falling part."),
    Step(of="charge", formula="going_in * hours", when=lambda a: _flows(a) and not _falls(a), text="The current is constant during the drive."),
    Step(of="charge_most", formula="min(initial_current * hours, room)", when=_joins, text="If the current did not fall, or until the bank is full."),
    Step(of="kept", formula="charge * coulombic", source="charge-efficiency", when=_flows, text="Not all the charge comes out again."),
    Step(of="end_state", formula="from_state + kept / capacity", when=_flows, text="Counted, not read from a voltage."),
    Step(of="freezes", source="acid-freezing", when=_frosty, text="By the acid density of a flooded battery; sealed ones usually freeze later."),
    Step(of="drive_time", formula="wanted / going_in", when=lambda a: _drive_time(a) is not None and not _while_falling(a), text="At constant current."),
    Step(of="drive_time", formula="steady_time + falls_in * ln(later_room / (later_room - (wanted - going_in * steady_time)))", when=_while_falling, text="The same exponential, the other way round."),
    Step(of="drive_time", when=lambda a: a.drive is not None and a.drive.wanted is not None and a.drive.drive_time is None, text="No drive is long enough: the bank has no room for it, or no charge goes in."),
)

FINE = Rule[AlternatorCharge](
    id="alternator-charge.fine", level=Level.FINE,
    headline="{initial_current} at {bank_voltage} from the charger: {drive.charge} in {drive.duration}. Fuse both ends: {protection.fuse}, able to interrupt {fault_current}.",
)
