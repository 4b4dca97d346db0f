"""The working of battery-air in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.comfort.battery_air import BatteryAir
from calc.judge import Level, Rule
from calc.worksheet.declare import Step


def _reckoned(air: BatteryAir) -> bool:
    return air.opening is not None


STEPS: tuple[Step[BatteryAir], ...] = (
    Step(of="kind", source="en-50272", text="The formula is for cells that split water at the end of a charge; lithium cells do not."),
    Step(of="table_current", source="en-50272-gas", when=lambda b: b.gassing.table_current is not None, text="{kind}, {charging}, to about 40 °C, with the table's safety factor of five."),
    Step(of="gas", formula="table_current", source="en-50272-gas", when=lambda b: b.gassing.table_current is not None and b.gassing.given_current is None, text="As in the table."),
    Step(of="gas", formula="gas_current", when=lambda b: b.gassing.lead_acid and b.gassing.given_current is not None, text="As you typed it."),
    Step(of="air_per_charge", source="en-50272", when=_reckoned, text="Hydrogen of 0.42 L per A·h, thinned to 4 % by 24 parts of air, and five times that for safety."),
    Step(of="airflow", formula="air_per_charge * cells * gas * capacity", source="en-50272", when=_reckoned, text="Each cell in series makes gas with the same current."),
    Step(of="vent_speed", source="en-50272", when=_reckoned, text="Natural air at about a tenth of a metre a second: the standard's 28 cm² for each m³/h."),
    Step(of="opening", formula="airflow / vent_speed", source="en-50272", when=_reckoned, text="One to let air in, low, and one to let it out, at the very top, on different walls if you can. A long pipe or a bend resists more than the plain opening that this is made for: give it more area."),
    Step(of="hole", formula="2 * sqrt(opening / 3.141592653589793)", when=_reckoned, text="Diameter of a round hole of that area. Mesh takes half of it away."),
)

FINE_LITHIUM = Rule[BatteryAir](
    id="battery-air.fine-lithium", level=Level.FINE, when=lambda b: b.management is not None,
    headline="No vent needed: an LFP battery with a management system gives off no gas in normal charging.",
)
FINE = Rule[BatteryAir](
    id="battery-air.fine", level=Level.FINE, when=lambda b: b.vents is not None and b.opening is not None,
    headline="Two openings of {vents} each are enough: this bank needs {opening} each, for {airflow} of air.",
)
