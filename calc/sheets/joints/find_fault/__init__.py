"""find-fault: what is wrong, and what to measure next?"""

# fmt: off
from dataclasses import replace

from calc.electrical.sound_parts import GOOD_JOINT
from calc.energy.battery import Chemistry
from calc.faults import graph
from calc.faults.graph import Symptom
from calc.faults.rules import search as judged
from calc.faults.trail import Trail
from calc.faults.words import METER
from calc.sheets.joints.find_fault.calculate import calculate
from calc.sheets.joints.find_fault.page import PAGE
from calc.sheets.joints.find_fault.words import (
    STEPS,
    brief,
    limits_told,
    now,
    prevention,
    probes,
    state_of,
    trail,
    ways_back,
    ways_on,
)
from calc.sheets.parts.bank import CAPACITY, chemistry_field
from calc.sheets.parts.fields import conductor_field
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    LENGTH,
    LINEAR_RESISTANCE,
    POWER,
    RATIO,
    RESISTANCE,
    TEMPERATURE,
    VOLTAGE,
)
from calc.worksheet.declare import Output
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Probes
from calc.worksheet.work import Worksheet

SYMPTOMS = tuple(
    Option(symptom, graph.way_in(symptom).about, aliases=graph.way_in(symptom).called) for symptom in Symptom
)


def _by_symptom(main: str, small: str, charger: str) -> tuple[str, dict[str, str]]:
    """Return a default for each symptom: for all that the bank gives, for a device, for a charger."""
    usual = {Symptom.FUSE: small, Symptom.DEAD: small, Symptom.FLAT: charger, Symptom.CHARGE: charger}
    return "symptom", {symptom: usual.get(symptom, main) for symptom in Symptom}


WORKSHEET = Worksheet(
    id="find-fault",
    title="Find the fault",
    question="Something is wrong: what do I measure?",
    about="From a symptom, one measurement at a time, to a cause and its repair.",
    calculate=calculate,
    picture=Probes(
        red="at.step.red", black="at.step.black", clamp="at.step.clamp", charging="way_in.charging", told="probes",
        caption="Where the meter goes on the run",
    ),
    fields=(
        Choice(id="symptom", label="What is wrong", of=Symptom, default=Symptom.CHECK, example="like “hot lug” or “inverter trips”", options=SYMPTOMS,
               hint="The search starts here. A change starts it again."),
        Choice(id="system", label="System", default="12 V", options=(Option("12 V"), Option("24 V"), Option("48 V")),
               hint="Nominal voltage of the bank."),
        chemistry_field(Chemistry.AGM),
        Quantity(id="load", label="Load in question", symbol="P", kinds=(CURRENT, POWER), default_by=_by_symptom("50 A", "6 A", "6 A"),
                 low="0.05 A | 0.5 W", high="1000 A | 20000 W",
                 hint="What runs while you measure, in amps or battery watts."),
        Quantity(id="length", label="Length of its cable, one way", symbol="L", kinds=(LENGTH,), default_by=_by_symptom("1.5 m", "4.5 m", "3.6 m"), low="1 in", high="100 ft",
                 hint="Along the cable: to the device, or from the charger."),
        conductor_field("4 AWG"),
        Quantity(id="fuse", label="Fuse of that run", symbol="I_n", kinds=(CURRENT,), default_by=_by_symptom("70 A", "10 A", "40 A"), low="0.5 A", high="1000 A",
                 hint="Its rating, as printed on it."),
        Quantity(id="heaviest", label="Highest current from the bank", symbol="I_b", kinds=(CURRENT,), default="50 A", low="0.05 A", high="2000 A", since=2, before="0.05 A",
                 hint="With the largest loads on together, often the inverter."),
        Quantity(id="charger", advanced=True, label="Charger's rated current", symbol="I_c", kinds=(CURRENT,), default="30 A", low="0.5 A", high="500 A",
                 hint="From its label, for the charger in question."),
        replace(CAPACITY, advanced=True),
        Quantity(id="standby", advanced=True, label="Standby current", symbol="I_s", kinds=(CURRENT,), default="100 mA", low="1 mA", high="20 A",
                 hint="Draw of alarms, monitors and the like, everything switched off."),
        Quantity(id="idle", advanced=True, label="Inverter's idle current", symbol="I_i", kinds=(CURRENT,), default="1.2 A", low="1 mA", high="20 A",
                 hint="On, with nothing plugged in: from its manual."),
        Quantity(id="cutoff", advanced=True, label="Inverter's cut-out voltage", symbol="V_c", kinds=(VOLTAGE,), low="8 V", high="56 V",
                 default_by=("system", {"12 V": "10.5 V", "24 V": "21 V", "48 V": "42 V"}), hint="Its low-voltage cut-off under load: from its manual."),
        Quantity(id="limit", advanced=True, label="Drop allowed in the cable", kinds=(RATIO,), default="3 %", low="0.5 %", high="15 %",
                 hint="There and back, of the system voltage."),
        Quantity(id="joint", advanced=True, label="Resistance of a good joint", symbol="R_j", kinds=(RESISTANCE,), default=f"{GOOD_JOINT * 1e3:g} mΩ", low="1 µΩ", high="20 mΩ",
                 hint="Best: a like joint's volts divided by its amps."),
        Quantity(id="joints", advanced=True, label="Joints on each side", symbol="n_j", kinds=(COUNT,), default="3", low="3", high="20",
                 hint="Post, device, each bar, stud or switch; not fuse or shunt."),
        Quantity(id="shunt", advanced=True, label="Resistance of the shunt", symbol="R_s", kinds=(RESISTANCE,), default="0.1 mΩ", low="1 µΩ", high="10 mΩ",
                 hint="Stamped millivolts divided by amps: 50 mV at 500 A is 0.1 mΩ."),
        Quantity(id="temperature", advanced=True, label="Conductor temperature", symbol="T", kinds=(TEMPERATURE,), default="30 °C", low="-40 °C", high="105 °C",
                 hint="Warm copper has more resistance."),
        Quantity(id="source_resistance", advanced=True, label="Resistance of the bank", symbol="R_b", kinds=(RESISTANCE,), example="6 mΩ", low="10 µΩ", high="2000 mΩ",
                 optional=True, hint="From its data sheet or two readings. Empty: estimated from capacity."),
        Quantity(id="blocks", advanced=True, label="Batteries or cells in series", symbol="n_b", kinds=(COUNT,), low="1", high="24",
                 default_by=("system", {"12 V": "1", "24 V": "2", "48 V": "4"}), hint="As many as you can measure one by one."),
        Quantity(id="charge_voltage", advanced=True, label="Charging voltage", symbol="V_a", kinds=(VOLTAGE,), example="14.4 V", low="10 V", high="70 V",
                 optional=True, hint="End-of-charge voltage, from its manual. Empty: by chemistry."),
        Trail(id="path", label="Turns taken", start="symptom", example="flickers.no", optional=True, hint="Set by the links below the step."),
    ),
    results=(
        Output(id="step", label="Now", needs_step=False, find=now),
        Output(id="cause", label="Cause", hide_if_none=True, needs_step=False),
        Output(id="remedy", label="Repair", hide_if_none=True, needs_step=False, find=lambda s: s.at.end.repair if s.at.end else None),
        Output(id="probes", label="Meter", hide_if_none=True, needs_step=False, find=probes),
        Output(id="setting", label="State", hide_if_none=True, needs_step=False, find=state_of),
        Output(id="volts", label="A good circuit shows", symbol="U", kind=METER, digits=4, hide_if_none=True),
        Output(id="amps", label="A good circuit shows", symbol="I", kind=CURRENT, hide_if_none=True),
        Output(id="ohms", label="A good circuit shows more than", symbol="R", kind=RESISTANCE, hide_if_none=True),
        Output(id="ampere_hours", label="A good bank shows", symbol="Q", kind=CHARGE, hide_if_none=True),
        Output(id="why", label="Why", hide_if_none=True, needs_step=False, find=lambda s: s.at.step.why if s.at.step else None),
        Output(id="moves", label="What you find", needs_step=False, find=ways_on),
        Output(id="prevents", label="To stop it coming back", needs_step=False, find=prevention),
        Output(id="back", label="Took a wrong turn?", needs_step=False, find=ways_back),
        Output(id="trail", label="Steps so far", needs_step=False, find=trail),
        Output(id="limits", label="Where these limits come from", needs_step=False, find=limits_told),
    ),
    intermediates=(
        Output(id="brief", label="In brief", find=brief),
        Output(id="number", label="Number of the step"),
        Output(id="safety", label="First"),
        Output(id="cells", label="Cells in series", symbol="n_c", kind=COUNT, at="circuit.bank.cells"),
        Output(id="zero", label="Copper's zero-resistance temperature", symbol="T_z", kind=TEMPERATURE, unit="degree_Celsius", digits=4, at="circuit.run.laid.zero"),
        Output(id="reference", label="Temperature of the table", symbol="T₀", kind=TEMPERATURE, unit="degree_Celsius", at="circuit.run.laid.reference"),
        Output(id="stated", label="Stated resistance per length", symbol="r₀", kind=LINEAR_RESISTANCE, digits=4, at="circuit.run.laid.stated"),
        Output(id="per_length", label="Resistance per length, warm", symbol="r", kind=LINEAR_RESISTANCE, digits=4, at="circuit.run.laid.per_length"),
        Output(id="joint_taken", at="circuit.run.joint", label="Good joint, value used", symbol="R_t", kind=RESISTANCE),
        Output(id="run", label="Resistance of one conductor", symbol="R_w", kind=RESISTANCE, at="circuit.run.conductor"),
        Output(id="fuse_rated_drop", label="Voltage drop of a fuse at its rating", symbol="U_n", kind=METER, at="circuit.run.rated_drop"),
        Output(id="fuse_resistance", label="Resistance of fuse and holder", symbol="R_f", kind=RESISTANCE, at="circuit.run.fuse"),
        Output(id="source", label="Resistance of the bank, value used", symbol="R_q", kind=RESISTANCE, at="circuit.bank.resistance"),
        Output(id="rest_full", label="Bank full, at rest", symbol="V₀", kind=VOLTAGE, digits=4, at="circuit.bank.full"),
        Output(id="rest_low", label="Bank well below full, at rest", kind=VOLTAGE, digits=4, at="circuit.bank.low"),
        Output(id="cell", label="One cell, full, at rest", symbol="V_1", kind=VOLTAGE, digits=4, at="circuit.bank.cell"),
        Output(id="block", label="One battery, full, at rest", symbol="V_n", kind=VOLTAGE, digits=4, at="circuit.bank.block"),
        Output(id="block_empty", label="One battery, empty, at rest", kind=VOLTAGE, digits=4, at="circuit.bank.empty_block"),
        Output(id="current", label="Current of the load", symbol="I_L", kind=CURRENT, at="circuit.readings.current"),
        Output(id="flow", label="Current on the run", symbol="I_r", kind=CURRENT, at="circuit.readings.flow"),
        Output(id="bank_flow", label="At the bank's posts", symbol="V_b", kind=VOLTAGE, digits=4, at="circuit.readings.at_bank"),
        Output(id="far", label="At the far end", symbol="V_d", kind=VOLTAGE, digits=4, at="circuit.readings.far"),
        Output(id="joint_drop", label="Across a good joint", symbol="U_j", kind=METER, at="circuit.readings.joint_drop"),
        Output(id="middle_drop", label="Across the joints between", symbol="U_m", kind=METER, at="circuit.readings.middle_drop"),
        Output(id="fuse_drop", label="Across fuse and holder", symbol="U_f", kind=METER, at="circuit.readings.fuse_drop"),
        Output(id="run_drop", label="Along one conductor", symbol="U_w", kind=METER, at="circuit.readings.conductor_drop"),
        Output(id="shunt_drop", label="Across the shunt", symbol="U_s", kind=METER, at="circuit.readings.shunt_drop"),
        Output(id="plus_drop", label="Voltage drop on the plus side", symbol="U_plus", kind=METER, at="circuit.readings.plus_drop"),
        Output(id="minus_drop", label="Voltage drop on the minus side", symbol="U_minus", kind=METER, at="circuit.readings.minus_drop"),
        Output(id="charging_to", label="Charging voltage, value used", symbol="V_e", kind=VOLTAGE, digits=4, at="circuit.bank.charging_to"),
        Output(id="tail", label="Current at the end of a charge", symbol="I_t", kind=CURRENT, at="circuit.bank.tail"),
        Output(id="usable", label="Share you use", symbol="u", kind=RATIO, at="circuit.bank.usable"),
        Output(id="bears", label="Ampacity of the conductor", symbol="I_z", kind=CURRENT, at="ampacity"),
    ),
    steps=STEPS,
    walked=PAGE,
    rules=(*judged.JUDGEMENTS, *judged.ALONG, *judged.LIMITS),
    valid="One run between a bank and a device or charger, at 12, 24 or 48 V direct current; copper. Mains wiring is left to licensed people.",
    summary="{brief}",
    older_defaults=(
        {"symptom": "flickers", "load": "6 A", "length": "4.5 m", "conductor": "12 AWG", "fuse": "10 A", "joint": "0.3 mΩ"},
    ),
)
