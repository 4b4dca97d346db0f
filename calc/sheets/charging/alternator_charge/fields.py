"""What alternator-charge asks for; its sum and its sentences stand beside."""

from dataclasses import replace

from calc.electrical.ampacity import INSIDE
from calc.sheets.parts.bank import CAPACITY, CHEMISTRY, from_state
from calc.sheets.parts.fields import (
    AMBIENT,
    BUNDLED,
    COPPER,
    GAUGE_READING,
    INSULATION,
    RULE_SET,
    STRANDS,
    SURROUNDINGS,
    conductor_field,
)
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    LENGTH,
    RATIO,
    RESISTANCE,
    TEMPERATURE,
    TIME,
    VOLTAGE,
)
from calc.worksheet.fields import Choice, Option, Problem, Quantity

RELAY, CHARGER = "relay", "charger"

FIELDS = (
    Choice(id="method", label="Between engine and bank", default=CHARGER,
           options=(Option(RELAY, "a relay", aliases=("split-charge relay",)), Option(CHARGER, "a regulated charger", aliases=("regulated charger", "DC to DC charger"))),
           hint="A relay only joins the two; a charger limits its own current and makes its own voltage."),
    Quantity(id="alternator", label="Alternator's rating", symbol="I_a", kinds=(CURRENT,), default="150 A", low="5 A", high="1000 A",
             hint="On its label: cold, and at full speed."),
    Quantity(id="vehicle_load", label="The vehicle takes", symbol="I_v", kinds=(CURRENT,), default="50 A", low="0 A", high="500 A",
             hint="Engine, lights, fan, heated glass: 30 to 70 A on a winter night (common practice, no source)."),
    Quantity(id="engine_voltage", label="Voltage the engine holds", symbol="V_e", kinds=(VOLTAGE,), default="14.4 V", low="5 V", high="100 V",
             hint="At the starter battery, engine running. A smart alternator wanders from about 12.2 V to 15 V: type both ends."),
    Quantity(id="bank_voltage", label="Voltage of the bank", symbol="V_b", kinds=(VOLTAGE,), default="13.0 V", low="5 V", high="60 V",
             hint="At its posts, before the charge begins."),
    Quantity(id="bank_resistance", label="Resistance inside the bank", symbol="R_b", kinds=(RESISTANCE,), default="10 mΩ", low="0.1 mΩ", high="1 Ω", only_if=("method", RELAY),
             hint="10 mΩ for one lead-acid battery, a good LFP one 3 mΩ or less (common practice, no source)."),
    Quantity(id="charger_limit", label="Charger's output", symbol="I_l", kinds=(CURRENT,), default="30 A", low="0.1 A", high="500 A", only_if=("method", CHARGER),
             hint="Its rated current into the bank."),
    Quantity(id="charger_efficiency", label="Charger's efficiency", symbol="η", kinds=(RATIO,), default="92 %", low="30 %", high="100 %", only_if=("method", CHARGER),
             hint="85 to 95 % (common practice, no source)."),
    Quantity(id="output_left", label="Output left when hot", symbol="x", kinds=(RATIO,), default="100 %", low="1 %", high="100 %", only_if=("method", CHARGER),
             hint="What the heat of its bay leaves of the charger: enclosure airflow tells."),
    conductor_field("8 AWG"),
    Quantity(id="length", label="Length, one way", symbol="L", kinds=(LENGTH,), default="12 ft", low="1 cm", high="100 m",
             hint="From the starter battery to the charger, or all the way to the bank. The sheet counts the way back."),
    INSULATION,
    CHEMISTRY,
    CAPACITY,
    from_state("50 %"),
    Quantity(id="temperature", label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="15 °C", low="-40 °C", high="70 °C",
             hint="Of the bank itself."),
    Quantity(id="hours", label="Hours of the drive", symbol="t", kinds=(TIME,), default="2 h", low="0.1 h", high="48 h",
             hint="With the engine above idle."),
    Quantity(id="wanted", label="Charge you want from it", symbol="Q_w", kinds=(CHARGE,), optional=True, low="0.1 A·h", high="10000 A·h", example="60 A·h",
             hint="The sheet then says how long you would have to drive. Empty: it does not."),
    Quantity(id="idle_share", advanced=True, label="Hot, at idle, it gives", symbol="x_i", kinds=(RATIO,), default="30 %", low="5 %", high="100 %",
             hint="Share of the rating: 30 to 50 % (common practice, no source)."),
    Quantity(id="hot_share", advanced=True, label="Hot, for hours, it gives", symbol="x_h", kinds=(RATIO,), default="60 %", low="10 %", high="100 %",
             hint="Share of the rating that it can bear for hours: 50 to 70 % (common practice, no source)."),
    Quantity(id="lowest_input", advanced=True, label="Charger works down to", symbol="V_l", kinds=(VOLTAGE,), default="11 V", low="5 V", high="60 V", only_if=("method", CHARGER),
             hint="At its input terminals; its manual says."),
    Quantity(id="charge_voltage", advanced=True, label="Charger ends at", symbol="V_c", kinds=(VOLTAGE,), optional=True, low="5 V", high="70 V", example="14.4 V", only_if=("method", CHARGER),
             hint="Empty: what is usual for the chemistry."),
    Quantity(id="joints", advanced=True, label="Joints in the run", symbol="j", kinds=(COUNT,), default="6", low="0", high="50",
             hint="Lugs, fuse holders, the relay: out and back."),
    Quantity(id="joint_resistance", advanced=True, label="Resistance of each joint", symbol="r_j", kinds=(RESISTANCE,), default="0.1 mΩ", low="0 mΩ", high="20 mΩ",
             hint="A good bolted joint has less, a fuse holder more."),
    Quantity(id="run_resistance", advanced=True, label="Resistance of the run, if known", symbol="R_k", kinds=(RESISTANCE,), optional=True, low="0.1 mΩ", high="10 Ω", example="12 mΩ",
             hint="Out and back, joints and all. Empty: from the conductor."),
    Quantity(id="copper", advanced=True, label="Copper of the run", symbol="T_w", kinds=(TEMPERATURE,), low="-40 °C", high="150 °C", default_by=("method", {RELAY: "20 °C", CHARGER: "60 °C"}),
             hint="Cold copper lets a relay pass the most; warm copper costs a charger the most."),
    Quantity(id="fault_current", advanced=True, label="Fault current at either fuse", symbol="I_f", kinds=(CURRENT,), default="2000 A", low="1 A", high="100000 A",
             hint="Both ends hang on a battery. Ten to twenty times the A·h of lead-acid; LFP: ask the maker."),
    replace(SURROUNDINGS, default=INSIDE),
    BUNDLED,
    AMBIENT,
    RULE_SET,
    GAUGE_READING,
    STRANDS,
    COPPER,
)


def problem(field: str, why: str) -> Problem:
    """Return the problem that what stands in `field` brings ("must be …")."""
    return next(one for one in FIELDS if one.id == field).problem(why)
