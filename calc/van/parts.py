"""The parts of a van, all as data: what a record may hold, and which field reads it.

Where a worksheet asks for the same thing, its field reads the value here too. Every conductor
stands in a run: `runs` are the keys of whatever is fed by a pair of conductors, and `start` and
`end` name the parts, or a terminal of theirs (`fuse-block.3`), that it joins.
"""

# fmt: off
from calc.units.kinds import COUNT, CURRENT, LENGTH, POWER, RATIO, RESISTANCE, VOLTAGE
from calc.units.kinds.faults import INSULATION
from calc.van.keys import Key, PartKind, Walk, one_of, words
from calc.worksheet.fields import Quantity

NAME = Key(id="name", own=words("name", "Name", "fridge", "So that someone else finds it."), few=True)
PLACE = Key(id="place", own=words("place", "Place", "under the bench, left", "Where in the van it is."))
MAKE = Key(id="note", own=words("note", "Note", "looks new"))


def amps(name: str, label: str, hint: str = "", example: str = "30 A") -> Quantity:
    return Quantity(id=name, label=label, kinds=(CURRENT,), low="0.001 A", high="100 kA", example=example, hint=hint, optional=True)


def volts(name: str, label: str, hint: str = "", example: str = "12 V") -> Quantity:
    return Quantity(id=name, label=label, kinds=(VOLTAGE,), low="0 V", high="1000 V", example=example, hint=hint, optional=True)


YES_NO = ("yes", "no")
# The parts that a conductor may start or end at.
ENDS = ("batteries", "bars", "isolators", "shunt", "regulators", "alternator", "shore", "inverter", "converters", "panels", "circuits", "mains", "heater", "cooler", "water_heater", "chassis")

RUN = (
    Key(id="from", own=words("from", "From", "fuse-block", "The part or terminal nearer the bank."), few=True, refers=ENDS),
    Key(id="to", own=words("to", "To", "fridge", "The part or terminal that it feeds; empty: the part itself."), refers=ENDS),
    Key(id="return_to", own=words("return_to", "Return to", "minus-bar", "Where its negative ends."), refers=ENDS),
    Key(id="return_by", own=one_of("return_by", "Return path", "cable", "chassis"), usual="cable", safety=True),
    Key(id="bond_point", own=words("bond_point", "Bond to chassis", "floor stud by the bench", "Where a return by chassis joins the metal."), none=True),
    Key(id="length", of="wire-drop.length", few=True),
    Key(id="conductor", of="wire-drop.conductor", few=True, safety=True),
    Key(id="parallel", of="wire-drop.parallel", usual="1"),
    Key(id="insulation", of="wire-drop.insulation", usual="105 C"),
    Key(id="surroundings", of="wire-drop.surroundings", usual="outside engine space"),
    Key(id="bundled", of="wire-drop.bundled", usual="2"),
    Key(id="ambient", of="wire-drop.ambient", usual="30 °C", walk=Walk.DESK),
    Key(id="fuse", of="fuse-choice.fitted", label="Fuse", hint="Printed on it. Write “none” if there is no fuse.", few=True, none=True, safety=True),
    Key(id="fuse_family", of="fuse-choice.fitted_family", label="Family of the fuse", safety=True, none=True),
    Key(id="fuse_voltage", of="fuse-choice.fitted_voltage", label="Voltage printed on the fuse", none=True),
    Key(id="fused", of="alternator-charge.fused", label="Fused at", safety=True),
    Key(id="limit", of="wire-drop.limit", label="Voltage drop allowed", usual="3 %", walk=Walk.DESK),
    Key(id="measured_drop", own=volts("measured_drop", "Measured voltage drop", "Source to load and back, under its own current.", "210 mV"), walk=Walk.MILLIVOLTS),
)

# How far a fuse stands from what it guards a cable against.
AHEAD = (
    Key(id="unfused", own=Quantity(id="unfused", label="Unfused length up to the fuse", kinds=(LENGTH,), low="0 m", high="100 m", example="12 cm", hint="Along the conductor, from the post to its fuse.", optional=True)),
    Key(id="sheathed", own=one_of("sheathed", "In a sheath or conduit up to the fuse", *YES_NO)),
)

VAN = PartKind(id="van", title="The van", one="van", keys=(
    NAME,
    Key(id="kind", own=one_of("kind", "This record is", ("plan", "a plan"), ("inspection", "an inspection"), hint="In an inspection no default values are used."), usual="plan", few=True, walk=Walk.DESK),
    # Its own field: the search for a fault has the same, but with it comes the whole search.
    Key(id="system", own=one_of("system", "System voltage", "12 V", "24 V", "48 V"), usual="12 V", few=True, safety=True),
    Key(id="people", of="heat-loss.people", label="People who sleep in it", usual="2", few=True, walk=Walk.DESK),
    Key(id="rule_set", of="fuse-choice.rule_set", usual="33 CFR 183.425", walk=Walk.DESK),
    Key(id="chassis_bond", own=words("chassis_bond", "Negative bond to the chassis", "minus-bar", "Where it is: one place. “none”: no negative on the chassis."), none=True, safety=True),
    Key(id="mains_region", own=one_of("mains_region", "Mains where it is used", ("230-V", "230 V regions"), ("120-V", "120 V regions"), ("100-V", "100 V regions")), usual="230-V", walk=Walk.DESK),
    Key(id="inspector", own=words("inspector", "Inspected by", "A. Brandt"), walk=Walk.DESK),
    Key(id="date", own=words("date", "Date", "2026-11-20"), walk=Walk.DESK),
))
BANK = PartKind(id="bank", title="Bank", one="bank", keys=(
    Key(id="stands", of="battery-air.stands", label="Where the batteries are", safety=True, few=True),
    Key(id="coldest", of="bank-size.temperature", label="Lowest temperature there", usual="5 °C", few=True, walk=Walk.DESK),
    Key(id="warmest", of="battery-air.temperature", label="Highest temperature there", usual="35 °C", walk=Walk.DESK),
    Key(id="usable", of="runtime.usable", walk=Walk.DESK),
    Key(id="rested_voltage", of="alternator-charge.rested_voltage", label="Voltage at rest", walk=Walk.MILLIVOLTS),
    Key(id="take_off", own=one_of("take_off", "Where the cables leave", "diagonally", ("one-end", "both at one end"), ("bus-bars", "each by its own cable to bus bars"), ("single", "one battery only"))),
    Key(id="matched", own=one_of("matched", "Voltages matched before joining", *YES_NO), walk=Walk.DESK),
    Key(id="vents", of="battery-air.vents", label="Vents of the battery box"),
))
BATTERIES = PartKind(id="batteries", title="Batteries", one="battery", many=True, most=8, mark="G", keys=(
    NAME, PLACE,
    Key(id="role", own=one_of("role", "Role", ("house", "house bank"), ("starter", "starter battery")), usual="house", few=True),
    Key(id="chemistry", of="runtime.chemistry", few=True, safety=True),
    Key(id="capacity", of="runtime.capacity", label="Capacity of one", few=True),
    Key(id="units", of="fault-current.batteries", label="In parallel", usual="1", few=True),
    Key(id="series", of="fault-current.series", label="In series", usual="1"),
    Key(id="resistance", of="fault-current.source_resistance", label="Internal resistance of one"),
    Key(id="unit_current", of="bank-size.unit_current", label="Continuous current of one", walk=Walk.DESK),
    Key(id="fuse", of="fuse-choice.fitted", label="Fuse of each", few=True, none=True, safety=True),
    Key(id="fuse_family", of="fuse-choice.fitted_family", label="Family of the fuse", none=True, safety=True),
    *AHEAD,
))
MANAGEMENT = PartKind(id="management", title="Battery management", one="management system", none=True, keys=(
    Key(id="fitted", of="battery-air.management", label="Management system", few=True, safety=True),
    Key(id="charge_limit", own=amps("charge_limit", "Largest charging current", example="100 A"), few=True, walk=Walk.DESK),
    Key(id="discharge_limit", own=amps("discharge_limit", "Largest continuous current", example="150 A"), few=True, walk=Walk.DESK),
    Key(id="peak", own=amps("peak", "Peak current", "For a few seconds.", "250 A"), walk=Walk.DESK),
    Key(id="cold_cut_off", of="alternator-charge.cold_cut_off", safety=True, walk=Walk.DESK),
    Key(id="port", own=one_of("port", "Ports", ("common", "one for charge and discharge"), ("separate", "one each")), walk=Walk.DESK),
    Key(id="stop_signal", own=one_of("stop_signal", "Signal that stops chargers first", *YES_NO), none=True, walk=Walk.DESK),
    Key(id="draw", of="standby-drain.management", label="Its own draw", walk=Walk.DESK),
))
PANELS = PartKind(id="panels", title="Solar panels", one="string of panels", many=True, most=8, mark="B", keys=(
    NAME, PLACE,
    Key(id="power", own=Quantity(id="power", label="Power of one panel", kinds=(POWER,), low="1 W", high="2000 W", example="200 W", optional=True), few=True),
    Key(id="open_voltage", own=volts("open_voltage", "Open-circuit voltage of one", example="24.3 V"), few=True),
    Key(id="short_current", own=amps("short_current", "Short-circuit current of one", example="10.4 A"), few=True),
    Key(id="max_power_voltage", of="sun-yield.panel_voltage", label="Voltage at maximum power"),
    Key(id="max_power_current", own=amps("max_power_current", "Current at maximum power", example="9.8 A")),
    Key(id="series", own=Quantity(id="series", label="In series", kinds=(COUNT,), low="1", high="10", example="2", optional=True), usual="1", few=True),
    Key(id="strings", own=Quantity(id="strings", label="Strings in parallel", kinds=(COUNT,), low="1", high="10", example="1", optional=True), usual="1", few=True),
    Key(id="coefficient", own=Quantity(id="coefficient", label="Temperature coefficient of the voltage", kinds=(RATIO,), low="-1 %", high="0 %", example="-0.28 %", hint="For each kelvin, by the label.", optional=True), walk=Walk.DESK),
    Key(id="series_fuse", own=amps("series_fuse", "Largest series fuse by the label", example="20 A"), walk=Walk.DESK),
    Key(id="tilt", of="sun-yield.tilt", usual="0°"), Key(id="facing", of="sun-yield.facing", usual="180°"), Key(id="mount", of="sun-yield.mount", usual="close mount"),
    Key(id="regulator", own=words("regulator", "Regulator", "solar-regulator"), refers=("regulators",), few=True),
    Key(id="isolator", own=one_of("isolator", "Isolator between panels and regulator", *YES_NO), safety=True, few=True),
    *RUN,
))
REGULATORS = PartKind(id="regulators", title="Solar regulators", one="regulator", many=True, most=8, mark="U", keys=(
    NAME, PLACE,
    Key(id="kind", of="sun-yield.regulator", usual="MPPT", few=True),
    Key(id="max_voltage", own=volts("max_voltage", "Highest panel voltage", example="100 V"), few=True),
    Key(id="current_limit", own=amps("current_limit", "Largest charging current", example="30 A"), few=True),
    Key(id="max_short_current", own=amps("max_short_current", "Largest short-circuit current of panels", example="35 A"), walk=Walk.DESK),
    Key(id="panels_first", own=one_of("panels_first", "Panels can be connected before the battery", *YES_NO), walk=Walk.DESK),
    *RUN,
))
ALTERNATOR = PartKind(id="alternator", title="Alternator charging", one="alternator", mark="G", none=True, keys=(
    Key(id="method", of="alternator-charge.method", few=True, safety=True),
    Key(id="alternator", of="alternator-charge.alternator", few=True), Key(id="vehicle_load", of="alternator-charge.vehicle_load", walk=Walk.DESK),
    Key(id="engine_voltage", of="alternator-charge.engine_voltage", usual="14.4 V", walk=Walk.MILLIVOLTS),
    Key(id="charger_limit", of="alternator-charge.charger_limit", few=True), Key(id="charger_efficiency", of="alternator-charge.charger_efficiency", usual="92 %", walk=Walk.DESK),
    Key(id="stops_by", of="alternator-charge.stops_by"),
    *RUN,
))
SHORE = PartKind(id="shore", title="Shore charging", one="shore charger", mark="U", none=True, keys=(
    Key(id="charger", of="shore-charge.charger", few=True), Key(id="charger_efficiency", of="shore-charge.charger_efficiency", usual="85 %", walk=Walk.DESK),
    Key(id="power_factor", of="shore-charge.power_factor", usual="1", walk=Walk.DESK),
    *RUN,
))
MAINS = PartKind(id="mains", title="Mains", one="mains installation", mark="X", none=True, walk=Walk.MAINS_DEAD, keys=(
    Key(id="inlet", own=one_of("inlet", "Shore power inlet", *YES_NO), few=True),
    Key(id="supply_voltage", of="shore-charge.supply_voltage", few=True), Key(id="supply_limit", of="shore-charge.supply_limit", few=True),
    Key(id="practice", of="shore-charge.practice", usual="by voltage", walk=Walk.DESK),
    Key(id="breaker", own=amps("breaker", "Breaker behind the inlet", example="16 A"), few=True, none=True, safety=True, walk=Walk.MAINS_DEAD),
    Key(id="switching", of="shore-charge.switching", few=True, safety=True, walk=Walk.MAINS_DEAD),
    Key(id="residual", of="shore-charge.residual", few=True, safety=True, walk=Walk.MAINS_LIVE),
    Key(id="residual_type", own=one_of("residual_type", "Kind of residual-current device", ("AC", "type AC"), ("A", "type A"), ("F", "type F"), ("B", "type B")), none=True, safety=True),
    Key(id="earth", own=one_of("earth", "Protective earth joined to the chassis", *YES_NO), few=True, safety=True, walk=Walk.MAINS_DEAD),
    Key(id="polarity", of="shore-charge.polarity", safety=True, walk=Walk.MAINS_LIVE),
    Key(id="changeover", own=one_of("changeover", "Shore and inverter are kept apart by", ("changeover-switch", "a changeover switch, break before make"), ("inverter", "the inverter itself"), ("separate-sockets", "separate sockets"), ("nothing", "nothing")), none=True, safety=True, walk=Walk.MAINS_DEAD),
    Key(id="other_load", of="shore-charge.other_load", usual="0 A", walk=Walk.DESK),
    Key(id="earth_resistance", own=Quantity(id="earth_resistance", label="Earth, inlet to chassis", kinds=(RESISTANCE,), low="0 Ω", high="100000 Ω", example="0.05 Ω", optional=True), walk=Walk.MAINS_DEAD),
    Key(id="insulation_resistance", own=Quantity(id="insulation_resistance", label="Insulation resistance", kinds=(INSULATION,), low="0 MΩ", high="100 GΩ", example="200 MΩ", optional=True), walk=Walk.MAINS_DEAD),
))
INVERTER = PartKind(id="inverter", title="Inverter", one="inverter", mark="U", none=True, keys=(
    PLACE,
    Key(id="rating", of="inverter-size.running", label="Continuous rating", few=True), Key(id="surge", of="inverter-size.surge", label="Peak rating", walk=Walk.DESK),
    Key(id="efficiency", of="inverter-size.efficiency", usual="88 %", walk=Walk.DESK), Key(id="idle", of="inverter-size.idle", usual="15 W", walk=Walk.DESK),
    Key(id="inverter_on", of="week-ahead.inverter_on", few=True, usual="while used"),
    Key(id="neutral_bond", own=one_of("neutral_bond", "Neutral joined to earth", ("opened-on-shore", "when inverting, opened on shore"), ("always", "always"), ("never", "never")), few=True, safety=True, walk=Walk.MAINS_DEAD),
    Key(id="residual", own=one_of("residual", "Residual-current device on its outlets", *YES_NO), safety=True, none=True, walk=Walk.MAINS_DEAD),
    Key(id="lowest_voltage", of="inverter-size.lowest_voltage", walk=Walk.DESK),
    *RUN,
))
CONVERTERS = PartKind(id="converters", title="Converters", one="converter", many=True, most=8, mark="U", keys=(
    NAME, PLACE,
    Key(id="output_voltage", own=volts("output_voltage", "Output voltage", example="12 V"), few=True),
    Key(id="rated_current", own=amps("rated_current", "Continuous output current", example="20 A"), few=True),
    Key(id="efficiency", own=Quantity(id="efficiency", label="Efficiency", kinds=(RATIO,), low="50 %", high="100 %", example="90 %", optional=True), usual="90 %", walk=Walk.DESK),
    Key(id="standby", own=Quantity(id="standby", label="Draw with no load", kinds=(POWER,), low="0 W", high="100 W", example="1 W", optional=True), usual="1 W", walk=Walk.DESK),
    *RUN,
))
BARS = PartKind(id="bars", title="Bus bars and fuse blocks", one="bar", many=True, most=16, mark="X", keys=(
    NAME, PLACE,
    Key(id="pole", own=one_of("pole", "Pole", "plus", "minus"), few=True),
    Key(id="kind", own=one_of("kind", "Kind", "bus-bar", "fuse-block"), few=True),
    Key(id="rating", own=amps("rating", "Rated current", example="250 A"), few=True, safety=True),
    Key(id="studs", own=Quantity(id="studs", label="Studs or ways", kinds=(COUNT,), low="1", high="60", example="6", optional=True)),
    Key(id="lugs_on_stud", of="joint-sheet.joints.lugs", label="Largest number of lugs on one stud"),
    Key(id="cover", own=one_of("cover", "Insulating cover", *YES_NO), safety=True),
))
ISOLATORS = PartKind(id="isolators", title="Isolators and breakers", one="isolator", many=True, most=20, mark="Q", keys=(
    NAME, PLACE,
    Key(id="kind", own=one_of("kind", "Kind", "isolator", "breaker"), few=True),
    Key(id="poles", own=Quantity(id="poles", label="Poles", kinds=(COUNT,), low="1", high="4", example="1", optional=True), usual="1"),
    Key(id="rating", own=amps("rating", "Continuous current", example="300 A"), few=True, safety=True),
    Key(id="rated_voltage", own=volts("rated_voltage", "Rated voltage, d.c.", example="48 V"), few=True, safety=True),
    Key(id="interrupting", own=amps("interrupting", "Interrupting rating", example="5 kA"), none=True),
    Key(id="in_line", own=words("in_line", "In the line of", "main-plus", "The cable or circuit that it opens."), refers=("cables", "circuits", "panels", "regulators", "alternator", "shore", "inverter", "converters"), few=True),
    Key(id="stays_live", own=words("stays_live", "Still live when it is off", "panels and alternator")),
    Key(id="reach", own=one_of("reach", "In reach without tools", *YES_NO), safety=True),
))
CABLES = PartKind(id="cables", title="Main cables", one="cable", many=True, most=30, mark="W", keys=(
    NAME,
    Key(id="current", of="wire-drop.current", label="Largest continuous current", few=True, walk=Walk.DESK),
    Key(id="pole", own=one_of("pole", "Pole", "plus", "minus", ("both", "both, as a pair")), usual="plus", few=True),
    *RUN,
    *AHEAD,
))
SHUNT = PartKind(id="shunt", title="Shunt", one="shunt", mark="R", none=True, keys=(
    Key(id="rating", own=amps("rating", "Rated current", example="500 A"), few=True),
    Key(id="in_line", own=words("in_line", "In the line of", "main-minus"), refers=("cables",), few=True),
    Key(id="bypassed_by", own=words("bypassed_by", "Negatives on the battery side", "heater, tracker", "Anything connected ahead of the shunt is not counted."), none=True, few=True),
))
MONITOR = PartKind(id="monitor", title="Battery monitor", one="monitor", none=True, keys=(
    Key(id="monitor", of="bank-gauge.monitor", few=True),
    Key(id="in_view", own=one_of("in_view", "Can be read from the living space", *YES_NO)),
))
CIRCUITS = PartKind(id="circuits", title="Circuits", one="circuit", many=True, most=60, mark="F", keys=(
    NAME, PLACE,
    Key(id="load", own=one_of(
        "load", "Load", "light", "fridge", "pump", "fan", "socket", "heater-fan", ("electronics", "electronics"), ("resistive-heat", "resistive heat"),
        ("household-appliance", "household appliance by inverter"), ("cooler", "air conditioner"), ("water-heater", "water heater"), "motor", "hob", "other"), few=True),
    Key(id="current", of="wire-drop.current", label="Current", few=True, walk=Walk.DESK),
    Key(id="power", of="watts-to-amps.power", label="Power, in place of a current", few=True, walk=Walk.DESK),
    Key(id="route", of="week-ahead.loads.route", label="Supply route", usual="direct"),
    Key(id="start_current", own=amps("start_current", "Starting current", "For seconds.", "40 A"), walk=Walk.DESK),
    Key(id="allowed", of="fuse-choice.allowed", walk=Walk.DESK),
    Key(id="hours", of="week-ahead.loads.hours", few=True, walk=Walk.DESK),
    Key(id="when", of="week-ahead.loads.when", usual="any hour", walk=Walk.DESK),
    Key(id="switch", own=one_of("switch", "Switch", ("in-reach", "in reach"), ("hidden", "hidden or at the appliance"), ("thermostat", "its own thermostat")), none=True),
    Key(id="dimmer", own=one_of("dimmer", "Dimmer", *YES_NO), none=True),
    *RUN,
))
JOINTS = PartKind(id="joints", title="Joints", one="joint", many=True, most=120, mark="J", walk=Walk.TUG, keys=(
    Key(id="name", of="joint-sheet.joints.name", few=True), PLACE,
    Key(id="on", own=words("on", "At", "main-plus", "The part or cable that it belongs to."), refers=("cables", "circuits", "bars", "isolators", "batteries", "shunt", "inverter", "alternator", "shore", "regulators", "converters")),
    *(Key(id=one, of=f"joint-sheet.joints.{one}", few=one in ("stud", "joint")) for one in ("stud", "maker_torque", "grade", "condition", "lugs", "joint")),
    Key(id="lock", own=one_of("lock", "Locked by", ("lock-washer", "lock washer"), ("locking-nut", "locking nut"), ("spring-clamp", "spring clamp"), ("none", "nothing")), few=True, safety=True),
    Key(id="torque", of="joint-sheet.joints.maker_torque", label="Torque set", hint="As it was set with a torque wrench.", walk=Walk.TORQUE),
    Key(id="current", of="joint-heat.current", label="Current while measuring", walk=Walk.MILLIVOLTS),
    Key(id="full_current", of="joint-heat.full_current", walk=Walk.DESK),
    Key(id="drop", of="joint-heat.drop", label="Millivolts across it", walk=Walk.MILLIVOLTS),
    Key(id="tug", own=one_of("tug", "Tug", ("firm", "held firm"), ("moved", "moved")), safety=True, walk=Walk.TUG),
))
BAY = PartKind(id="bay", title="Electrical bay", one="bay", keys=(
    PLACE,
    Key(id="vents", of="enclosure-airflow.vents", few=True, safety=True, none=True), Key(id="height", of="enclosure-airflow.height", few=True),
    Key(id="outside", of="enclosure-airflow.outside", usual="30 °C", walk=Walk.DESK), Key(id="inside_limit", of="enclosure-airflow.inside_limit", usual="45 °C", walk=Walk.DESK),
    Key(id="fan", of="enclosure-airflow.fan", none=True), Key(id="rated_to", of="enclosure-airflow.rated_to", usual="40 °C", walk=Walk.DESK),
))
SHELL = PartKind(id="shell", title="Living space", one="living space", walk=Walk.DESK, keys=(
    *(Key(id=one, of=f"heat-loss.{one}", few=one in ("length", "width", "height", "insulation"), walk=Walk.DESK)
      for one in ("length", "width", "height", "insulation", "material", "glazing", "air_changes", "floor_insulation", "cover", "inside")),
))
HEATER = PartKind(id="heater", title="Heater", one="heater", none=True, keys=(
    Key(id="fuel", of="heat-loss.fuel", few=True, safety=True), Key(id="output", of="heat-loss.heater_output", few=True),
    Key(id="exhaust", of="heat-loss.exhaust", safety=True, few=True), Key(id="draw", of="heater-night.draw", usual="30 W", walk=Walk.DESK),
    Key(id="hours", of="heater-night.hours", usual="9 h", walk=Walk.DESK), Key(id="starts", of="heater-night.starts", usual="1", walk=Walk.DESK),
))
COOLER = PartKind(id="cooler", title="Air conditioner", one="air conditioner", none=True, walk=Walk.DESK, keys=(
    *(Key(id=one, of=f"cooling-day.{one}", few=one in ("cooling", "efficiency_ratio", "route"), walk=Walk.DESK)
      for one in ("cooling", "efficiency_ratio", "route", "duty", "hours", "outside", "inside", "sun")),
))
WATER_HEATER = PartKind(id="water_heater", title="Water heater", one="water heater", none=True, keys=(
    PLACE,
    *(Key(id=one, of=f"water-heater.{one}", few=True) for one in ("volume", "way", "power")),
    *(Key(id=one, of=f"water-heater.{one}", usual=usual, walk=Walk.DESK) for one, usual in (("from", "10 °C"), ("to", "45 °C"), ("hours", "2 h"))),
    Key(id="fuel", of="water-heater.fuel", none=True), Key(id="exhaust", of="water-heater.exhaust", safety=True, none=True),
    Key(id="mixing_valve", of="water-heater.mixing_valve", safety=True),
    Key(id="switch", own=one_of("switch", "Switch", ("in-reach", "in reach"), ("hidden", "hidden or at the appliance")), few=True, none=True),
))
GAS = PartKind(id="gas", title="Gas", one="gas installation", none=True, walk=Walk.SMELL, keys=(
    Key(id="locker", own=one_of("locker", "Cylinder locker", ("sealed-and-vented", "sealed from the inside, vented low to the outside"), ("open-inside", "open to the inside")), few=True, safety=True, walk=Walk.SMELL),
    Key(id="sparks", own=one_of("sparks", "Sparking parts in the locker", *YES_NO), safety=True, walk=Walk.SMELL),
    Key(id="flueless", own=one_of("flueless", "Cooker used with a vent open", *YES_NO), none=True, safety=True, walk=Walk.SMELL),
))
ALARMS = PartKind(id="alarms", title="Alarms", one="alarm", many=True, most=12, walk=Walk.SMELL, keys=(
    Key(id="kind", own=one_of("kind", "Kind", "smoke", ("co", "carbon monoxide"), ("gas", "gas")), few=True, safety=True, walk=Walk.SMELL), PLACE,
    Key(id="tested", own=one_of("tested", "Test button", ("sounded", "it sounded"), ("silent", "silent")), safety=True, few=True, walk=Walk.SMELL),
    Key(id="expiry", own=words("expiry", "Replace by", "2030-06", "Printed on it."), few=True, safety=True, walk=Walk.SMELL),
    Key(id="supply", own=one_of("supply", "Fed by", ("own-battery", "its own battery"), ("ahead-of-isolator", "the bank, ahead of the isolator"), ("behind-isolator", "the bank, behind the isolator")), safety=True, walk=Walk.SMELL),
))
PATTERNS = PartKind(id="patterns", title="Patterns of use", one="pattern", plainly="planned use", many=True, most=8, walk=Walk.DESK, keys=(
    Key(id="name", own=words("name", "Name", "winter weekend"), few=True),
    Key(id="question", of="week-ahead.question", usual="trip", few=True, walk=Walk.DESK), Key(id="nights", of="week-ahead.nights", usual="2", few=True, walk=Walk.DESK),
    Key(id="month", of="week-ahead.month", few=True, walk=Walk.DESK), Key(id="latitude", of="week-ahead.latitude", few=True, walk=Walk.DESK),
    Key(id="sky", of="week-ahead.sky", usual="50 %", walk=Walk.DESK), Key(id="climate", of="week-ahead.climate", usual="typed", walk=Walk.DESK),
    Key(id="own_skies", of="week-ahead.own_skies", walk=Walk.DESK),
    Key(id="drive_hours", of="week-ahead.drive_hours", usual="0 h", few=True, walk=Walk.DESK), Key(id="shore_every", of="week-ahead.shore_every", usual="0", few=True, walk=Walk.DESK), Key(id="shore_hours", of="week-ahead.shore_hours", usual="10 h", walk=Walk.DESK),
    Key(id="from_state", of="week-ahead.from_state", usual="100 %", walk=Walk.DESK), Key(id="recovery", of="week-ahead.recovery", usual="shore", walk=Walk.DESK),
    Key(id="temperature", of="week-ahead.temperature", label="Bank temperature", few=True, walk=Walk.DESK),
    Key(id="outside", of="heat-loss.outside", label="Outside at night", few=True, walk=Walk.DESK), Key(id="hottest", of="cooling-day.outside", label="Outside by day", walk=Walk.DESK),
    Key(id="heats", own=one_of("heats", "Heater is used", *YES_NO), usual="no", walk=Walk.DESK), Key(id="cools", own=one_of("cools", "Air conditioner is used", *YES_NO), usual="no", walk=Walk.DESK),
    Key(id="loads", of="week-ahead.loads", label="Loads, where other than the circuits’ own", walk=Walk.DESK),
))
LOG = PartKind(id="log", title="Service log", one="entry", many=True, most=400, walk=Walk.DESK, keys=(
    Key(id="date", own=words("date", "Date", "2026-11-20"), few=True), Key(id="part", own=words("part", "Part", "fridge"), few=True),
    Key(id="what", own=one_of("what", "What", ("drop", "voltage drop"), ("torque", "torque"), ("millivolts", "millivolts across a joint"), ("earth", "earth resistance"), ("insulation", "insulation resistance"), ("trip", "trip time"), ("look", "looked at"), ("replaced", "replaced")), few=True),
    Key(id="value", own=words("value", "Value", "210 mV"), few=True), Key(id="instrument", own=words("instrument", "Instrument", "multimeter 2")), Key(id="who", own=words("who", "Who", "A. Brandt")),
))
PARTS: tuple[PartKind, ...] = (
    VAN, BANK, BATTERIES, MANAGEMENT, PANELS, REGULATORS, ALTERNATOR, SHORE, MAINS, INVERTER, CONVERTERS, BARS, ISOLATORS, CABLES, SHUNT, MONITOR,
    CIRCUITS, JOINTS, BAY, SHELL, HEATER, COOLER, WATER_HEATER, GAS, ALARMS, PATTERNS, LOG,
)
