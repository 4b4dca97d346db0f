"""Judgements on the air of a battery: hydrogen of lead-acid cells, and what lithium cells do."""

from typing import Annotated

# fmt: off
from calc.comfort.battery_air import BatteryAir, CellKind, Charging, Gassing, Management, Place
from calc.energy.battery import Chemistry
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Celsius, Tag

# To which the table of gas currents holds: EN 50272-2
WARMEST: Annotated[Celsius, Tag("warmest battery of the table of gas currents")] = 40.0


def _equalising(gassing: Gassing) -> bool:
    return gassing.lead_acid and gassing.charging is Charging.EQUALISING


def _hot(gassing: Gassing) -> bool:
    return gassing.lead_acid and not at_most(gassing.temperature, WARMEST)


VENTED_IN_LIVING_SPACE = Rule[BatteryAir](
    id="battery.vented-in-living-space", level=Level.STOP,
    when=lambda b: b.gassing.kind is CellKind.VENTED and b.place is Place.LIVING_SPACE,
    headline="Move vented cells out of the living space, or into a box vented to the outside.",
    mend=lambda _: Change({"stands": Place.BOXED}),
)
VENTS_TOO_SMALL = Rule[BatteryAir](
    id="battery.vents-too-small", level=Level.STOP,
    when=lambda b: b.opening is not None and b.vents is not None and not at_least(b.vents, b.opening),
    headline="Cut larger openings before you charge: two of {opening} each, not {vents}. This bank needs {gassing.airflow} of air.",
    mend=lambda b: None if b.opening is None else Change({"vents": b.opening}),
)
UNMANAGED = Rule[BatteryAir](
    id="battery.lithium-unmanaged", level=Level.STOP, when=lambda b: b.management is Management.MISSING, source="practice",
    headline="Fit a management system before you charge: an overcharged lithium cell vents gas that burns and poisons.",
    mend=lambda _: Change({"management": Management.FITTED}),
)
MANAGEMENT_UNKNOWN = Rule[BatteryAir](
    id="battery.lithium-management-unknown", level=Level.CAUTION, when=lambda b: b.management is Management.UNKNOWN, source="practice",
    headline="Check that this LFP battery has a management system: only then does it need no vent.",
    mend=lambda _: Change({"management": Management.FITTED}),
)
LITHIUM = Rule[Gassing](
    id="battery.lithium-fault-vents-gas", level=Level.NOTE, source="lithium-gas", when=lambda g: not g.lead_acid,
    text="A lithium cell that fails vents gas that burns and poisons: burning cells gave 20 to 200 mg of hydrogen fluoride for each Wh. No vent copes with that: everyone out, keep away, call the fire service.",
)
EQUALISING_NOT_COVERED = Rule[Gassing](
    id="battery.equalising-not-covered", level=Level.CAUTION, when=lambda g: _equalising(g) and g.airflow is None,
    headline="Ask the maker for the gas current of equalising: it is above boost, and the table has none.",
)
EQUALISING_BY_MAKER = Rule[BatteryAir](
    id="battery.equalising-by-maker", level=Level.CAUTION, when=lambda b: _equalising(b.gassing) and b.opening is not None,
    headline="Ask the maker: {gassing.airflow}, two openings of {opening} each, depends on the gas current you typed.",
    mend=lambda _: Change({"charging": Charging.BOOST}),
)
HOT_BATTERY = Rule[Gassing](
    id="battery.hot-on-charge", level=Level.CAUTION, source="en-50272-gas", when=_hot,
    headline="Cool the battery: {airflow} is for 40 °C, and at {temperature} it gasses more.",
    text="Above 40 °C the gas current rises and a sealed battery can go into thermal runaway: cool it, or lower the charging voltage as its maker says.",
    mend=lambda _: Change({"temperature": WARMEST}),
)
FLOAT_ONLY = Rule[Gassing](
    id="battery.float-only", level=Level.CAUTION, source="en-50272-gas", when=lambda g: g.lead_acid and g.charging is Charging.FLOAT,
    headline="Check that no charger boosts: {airflow} is for this charging only, and boost needs several times as much.",
    text="Chargers, alternators and solar regulators all pass through boost or absorption. Size for that unless no charger aboard can.",
    mend=lambda _: Change({"charging": Charging.BOOST}),
)
BELOW_TABLE = Rule[Gassing](
    id="battery.gas-current-below-table", level=Level.CAUTION, source="en-50272-gas", when=lambda g: g.below_table,
    headline="Check that no charger boosts: {airflow} is for this charging only, and boost needs several times as much.",
    text="Your gas current is below the table's {table_current}. Use it only if the maker states it for this charging.",
    mend=lambda g: None if g.table_current is None else Change({"gas_current": g.table_current}),
)
OPENINGS_UNKNOWN = Rule[BatteryAir](
    id="battery.openings-unknown", level=Level.CAUTION, when=lambda b: b.opening is not None and (b.vents is None or b.place is not Place.BOXED),
    headline="See that two openings of {opening} lead outside: this bank needs {gassing.airflow} of air.",
    mend=lambda b: None if b.opening is None else Change({"vents": b.opening if b.vents is None else b.vents, "stands": Place.BOXED}),
)

HYDROGEN = Rule[Gassing](
    id="battery.hydrogen-burns", level=Level.ADVICE, source="en-50272", when=lambda g: g.lead_acid,
    text="Explosion: hydrogen burns from 4 % in air. No spark, relay, switch, fuse or flame in the box or above it; pull no cable off on charge.",
)
SEALED_GASSES_TOO = Rule[Gassing](
    id="battery.sealed-gasses-too", level=Level.ADVICE, source="practice", when=lambda g: g.kind is CellKind.SEALED,
    text="Overcharged, too hot or worn out, a sealed battery opens its valves. If it smells rotten, gets hot or swells: stop the charge, air the van, get out.",
)
ACID_MIST = Rule[Gassing](
    id="battery.acid-mist", level=Level.ADVICE, source="practice", when=lambda g: g.chemistry is Chemistry.FLOODED,
    text="Vented cells also spray acid mist, which corrodes steel and harms lungs. Goggles and gloves for topping up, an acid-proof tray below, and the box closed towards people.",
)
LITHIUM_KEPT_SAFE = Rule[Gassing](
    id="battery.lithium-kept-safe", level=Level.ADVICE, source="practice", when=lambda g: not g.lead_acid,
    text="To keep it from failing: its own management system, a charger set for it, no charge below 0 °C, fuses, dry and firm mounting, and the maker's clearances.",
)
HYDROGEN_RISES = Rule[Gassing](
    id="battery.hydrogen-rises", level=Level.ADVICE, source="practice", when=lambda g: g.airflow is not None,
    text="Hydrogen rises: one opening low lets air in, the other leads up from under the lid, never down. Both open outside, clear of the living space.",
)
EQUALISING_BOILS = Rule[Gassing](
    id="battery.equalising-boils", level=Level.ADVICE, source="practice", when=_equalising,
    text="Explosion: equalising makes a lot of gas. Only for flooded cells whose maker allows it, by day, watched, doors open, nobody asleep aboard; never for sealed ones.",
)
TRACTION = Rule[Gassing](
    id="battery.traction-rule", level=Level.NOTE, source="en-50272-3", when=lambda g: g.lead_acid,
    text="The rule for traction batteries uses higher gas currents, 1 to 6 A per 100 Ah, and a free volume of 2.5 h of air. A bank charged hard every day is closer to those: the maker decides.",
)
