"""battery-air: how much air does the battery need?"""

from dataclasses import dataclass
from math import pi
from types import SimpleNamespace

from calc.comfort import battery_air
from calc.energy.battery import Chemistry
from calc.sheets.parts.bank import chemistry_field
from calc.units.compare import at_least, at_most
from calc.units.kinds import CHARGE, COUNT, LENGTH, TEMPERATURE, heat
from calc.units.shown import UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.work import Worksheet

KINDS = {"flooded": "vented lead-acid", "AGM": "valve-regulated lead-acid", "gel": "valve-regulated lead-acid"}
FLOAT, BOOST, EQUALISE = "float", "boost", "equalising"
ROOM, BOX, UNSAID = "open in the living space", "box or bay vented outside", "not said"
WARMEST = 40.0  # °C, to which the table of gas currents holds: EN 50272-2


@dataclass(frozen=True, kw_only=True)
class BatteryAir:
    """Air [m³/s] that thins the hydrogen and the openings [m²] for it; None where the table has none."""

    lead: bool
    table_current: float | None
    gas: float | None
    air_per_charge: float
    airflow: float | None
    vent_speed: float
    opening: float | None
    hole: float | None
    kind: str


def run(
    *, chemistry: Chemistry, charging: str, cells: float, capacity: float, stands: str, vents: float | None,
    temperature: float, gas_current: float | None,
) -> BatteryAir:
    """Return the air for `cells` in series of `capacity` [A·s] while they are charged."""
    lead = chemistry in KINDS
    tabled = battery_air.gas_current(KINDS[chemistry], charging) if lead and charging != EQUALISE else None
    gas = (tabled if gas_current is None else gas_current) if lead else None
    flow = battery_air.airflow(cells, gas, capacity) if gas is not None else None
    opening = battery_air.opening(flow) if flow is not None else None
    return BatteryAir(
        lead=lead,
        table_current=tabled,
        gas=gas,
        air_per_charge=battery_air.AIR_PER_CHARGE,
        airflow=flow,
        vent_speed=battery_air.VENT_SPEED,
        opening=opening,
        hole=2 * (opening / pi) ** 0.5 if opening is not None else None,
        kind=KINDS.get(chemistry, "lithium"),
    )


def _hot(v: SimpleNamespace) -> bool:
    return not at_most(v.temperature, WARMEST)


def _trusting(v: SimpleNamespace) -> bool:
    """The reader's own gas current is below the table's."""
    return v.table_current is not None and v.gas_current is not None and not at_least(v.gas_current, v.table_current)


def _reckoned(v: SimpleNamespace) -> bool:
    return v.airflow is not None


def _equalising(v: SimpleNamespace) -> bool:
    return bool(v.lead) and v.charging == EQUALISE


WORKSHEET = Worksheet(
    id="battery-air",
    title="Battery air",
    question="How much air does the battery need?",
    entry_question="Does the battery box need a vent?",
    about="Hydrogen from charging, and the openings that thin it.",
    calculate=run,
    fields=(
        chemistry_field("AGM"),
        Quantity(id="capacity", label="Bank capacity", symbol="C", kinds=(CHARGE,), default="200 A·h", low="1 A·h", high="20000 A·h", hint="Batteries in parallel add up; in series they do not."),
        Quantity(id="cells", label="Cells in series", symbol="n", kinds=(COUNT,), default="6", low="1", high="400", hint="Lead-acid: 6 at 12 V, 12 at 24 V, 24 at 48 V."),
        Choice(id="charging", label="Charging", default=BOOST, options=(Option(BOOST, "boost (absorption)", aliases=("absorption",)), Option(FLOAT, "float only"), Option(EQUALISE, aliases=("equalizing",))), hint="Boost, if anything aboard ever charges above float: most chargers do. Equalising is a forced overcharge of flooded cells."),
        Choice(id="stands", label="Where it stands", default=UNSAID, options=(Option(UNSAID), Option(BOX, aliases=("box",)), Option(ROOM, aliases=("living space",))), hint="Where the gas would go."),
        Quantity(id="vents", label="Free area of each opening", symbol="A_v", kinds=(heat.OPENING,), optional=True, low="0.1 cm²", high="20000 cm²", example="20 cm²", hint="Of the two that are there, one low and one high. Empty: the sheet says what is needed."),
        Quantity(id="temperature", advanced=True, label="Warmest battery", symbol="T", kinds=(TEMPERATURE,), default="30 °C", low="0 °C", high="70 °C", hint="Of a lead-acid battery: the table holds to 40 °C; a hot one gasses more."),
        Quantity(id="gas_current", advanced=True, label="Current that makes gas", symbol="I_g", kinds=(heat.GAS_CURRENT,), optional=True, low="0.01 mA/(A·h)", high="1000 mA/(A·h)", example="8 mA/(A·h)", hint="Of each A·h of a lead-acid battery, from the maker. Empty: the standard's table."),
    ),
    results=(
        Output(id="airflow", label="Air needed", symbol="Q", kind=heat.AIRFLOW, rounding=UP, both=True),
        Output(id="opening", label="Two openings, each", symbol="A", kind=heat.OPENING, rounding=UP, both=True, hide_if_none=True),
        Output(id="hole", label="As a round hole", symbol="d", kind=LENGTH, rounding=UP, both=True, hide_if_none=True),
    ),
    intermediates=(
        Output(id="table_current", label="Gas current of the table", symbol="I_t", kind=heat.GAS_CURRENT),
        Output(id="gas", label="Gas current used", symbol="I_gas", kind=heat.GAS_CURRENT),
        Output(id="air_per_charge", label="Air for each ampere-hour gassed", symbol="v", kind=heat.GAS_PER_CHARGE),
        Output(id="vent_speed", label="Speed in the opening", symbol="w", kind=heat.SPEED),
        Output(id="kind", label="Kind of cell"),
    ),
    steps=(
        Step(of="kind", source="en-50272", says="The formula is for cells that split water at the end of a charge; lithium cells do not."),
        Step(of="table_current", source="en-50272-gas", when=lambda v: v.table_current is not None, says="{kind}, {charging}, to about 40 °C, with the table's safety factor of five."),
        Step(of="gas", formula="table_current", source="en-50272-gas", when=lambda v: v.table_current is not None and v.gas_current is None, says="As in the table."),
        Step(of="gas", formula="gas_current", when=lambda v: v.lead and v.gas_current is not None, says="As you give it."),
        Step(of="air_per_charge", source="en-50272", when=_reckoned, says="Hydrogen of 0.42 L per A·h, thinned to 4 % by 24 parts of air, and five times that for safety."),
        Step(of="airflow", formula="air_per_charge * cells * gas * capacity", source="en-50272", when=_reckoned, says="Each cell in series makes gas with the same current."),
        Step(of="vent_speed", source="en-50272", when=_reckoned, says="Natural air at about a tenth of a metre a second: the standard's 28 cm² for each m³/h."),
        Step(of="opening", formula="airflow / vent_speed", source="en-50272", when=_reckoned, says="One to let air in, low, and one to let it out, at the very top, on different walls if you can. A long pipe or a bend resists more than the plain opening that this is made for: give it more area."),
        Step(of="hole", formula="2 * sqrt(opening / 3.141592653589793)", when=_reckoned, says="Diameter of a round hole of that area. Mesh takes half of it away."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: v.chemistry == "flooded" and v.stands == ROOM, says="Vented cells do not belong in the living space: their air must lead outside, from a box of their own."),
        Verdict(verdict=STOP, when=lambda v: _reckoned(v) and v.vents is not None and not at_least(v.vents, v.opening), says="{vents} each is too little: this bank needs {airflow}, two openings of {opening} each."),
        Verdict(verdict=CAUTION, when=lambda v: not v.lead, says="An LFP bank gives off no gas in normal charging, so no opening follows from the formula. A fault is another matter."),
        Verdict(verdict=CAUTION, when=lambda v: _equalising(v) and not _reckoned(v), says="Equalising is not covered by the table: it gasses more than boost. Ask the maker for the gas current, or equalise in the open air."),
        Verdict(verdict=CAUTION, when=_equalising, says="{airflow}, two openings of {opening} each, by the gas current you give. Equalising is not covered by the standard's table."),
        Verdict(verdict=CAUTION, when=_hot, says="{airflow} and two openings of {opening} each to 40 °C; at {temperature} it gasses more than the table says."),
        Verdict(verdict=CAUTION, when=lambda v: v.charging == FLOAT or _trusting(v), says="{airflow}, two openings of {opening} each, if it never gasses more than this. Boost charging needs several times as much."),
        Verdict(verdict=CAUTION, when=lambda v: v.vents is None or v.stands != BOX, says="{airflow} of air, by two openings of {opening} each that lead outside. Make sure that they are there."),
        Verdict(verdict=FINE, says="{vents} each is enough: this bank needs {airflow}, two openings of {opening} each."),
    ),
    remarks=(
        Remark(when=lambda v: v.lead, source="en-50272", says="Hydrogen burns from 4 % in air and gathers under lids. No spark, relay, switch, fuse or flame in the box or above it; pull no cable off while it charges."),
        Remark(when=lambda v: v.kind.startswith("valve"), source="practice", says="A sealed battery gasses little until it is overcharged, too hot or at its end: then its valves open. A rotten smell, heat or a swollen case means: stop the charge, air the van, get out."),
        Remark(when=lambda v: v.chemistry == "flooded", source="practice", says="Vented cells also spit acid mist, which eats steel and lungs. Goggles and gloves for topping up, an acid-proof tray below, and the box closed towards the people."),
        Remark(when=lambda v: not v.lead, source="lithium-gas", says="If a lithium cell fails it vents flammable, poisonous gas: burning cells gave 20 to 200 mg of hydrogen fluoride for each W·h. No vent sized by this sheet copes with that: get everyone out, keep away, call the fire service."),
        Remark(when=lambda v: not v.lead, source="practice", says="What keeps it from failing: its own management system, a charger set for it, no charge below 0 °C, fuses, dry and firm mounting, and the maker's clearances."),
        Remark(when=lambda v: v.lead and v.charging == FLOAT, source="en-50272-gas", says="Chargers, alternators and solar regulators all pass through boost or absorption. Size for that unless nothing aboard can."),
        Remark(when=_reckoned, source="practice", says="Hydrogen rises. One opening low through floor or wall lets air in; the other starts under the lid and leads up, through wall or roof, never down. Both must open outside, clear of the living space."),
        Remark(when=_equalising, source="practice", says="Equalising boils the cells on purpose. Only flooded ones whose maker allows it, by day, watched, doors open, nobody asleep aboard; never sealed ones."),
        Remark(when=_trusting, source="en-50272-gas", says="Your gas current is below the table's {table_current}. Use it only if the maker states it for this charging."),
        Remark(when=lambda v: v.lead and _hot(v), source="en-50272-gas", says="Above 40 °C the gas current climbs and a sealed battery can run away: cool it, or lower the charging voltage as its maker says."),
        Remark(level=NOTE, when=lambda v: v.lead, source="en-50272-3", says="The rule for traction batteries counts higher gas currents, 1 to 6 A for each 100 A·h, and wants free room of 2.5 h worth of air. A bank charged hard every day is nearer to those: the maker decides."),
    ),
    valid="Lead-acid cells in order, charged as their maker says, up to about 40 °C and 2.40 V a cell (from memory). The formula was not made for lithium cells.",
    summary="{airflow}; two openings of {opening} each",
    summary_none="no opening follows",
)
