"""The working of battery-air in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.comfort.battery_air import BatteryAir
from calc.judge import Level, Rule
from calc.worksheet.declare import Step


def _reckoned(air: BatteryAir) -> bool:
    return air.opening is not None


STEPS: tuple[Step[BatteryAir], ...] = (
    Step(of="kind", source="en-50272", text="The formula is for cells that make gas at the end of charging; lithium cells do not."),
    Step(of="table_current", source="en-50272-gas", when=lambda b: b.gassing.table_current is not None, text="{kind}, {charging}, to about 40 °C, with the table's safety factor of five."),
    Step(of="gas", formula="table_current", source="en-50272-gas", when=lambda b: b.gassing.table_current is not None and b.gassing.given_current is None, text="As in the table."),
    Step(of="gas", formula="gas_current", when=lambda b: b.gassing.lead_acid and b.gassing.given_current is not None, text="As you typed it."),
    Step(of="air_per_charge", source="en-50272", when=_reckoned, text="0.42 L of hydrogen per Ah, diluted to 4 % by 24 parts of air, times five for safety."),
    Step(of="airflow", formula="air_per_charge * cells * gas * capacity", source="en-50272", when=_reckoned, text="Each cell in series makes gas with the same current."),
    Step(of="vent_speed", source="en-50272", when=_reckoned, text="Natural air at about a tenth of a metre a second: the standard's 28 cm² for each m³/h."),
    Step(of="opening", formula="airflow / vent_speed", source="en-50272", when=_reckoned, text="One low to let air in and one at the very top to let it out, on different walls if possible. A long pipe or a bend needs more area than this plain opening."),
    Step(of="hole", formula="2 * sqrt(opening / 3.141592653589793)", when=_reckoned, text="Diameter of a round hole of that area. Mesh blocks about half of it."),
)

FINE_LITHIUM = Rule[BatteryAir](
    id="battery-air.fine-lithium", level=Level.FINE, when=lambda b: b.management is not None,
    headline="No vent needed: an LFP battery with a management system gives off no gas in normal charging.",
)
FINE = Rule[BatteryAir](
    id="battery-air.fine", level=Level.FINE, when=lambda b: b.vents is not None and b.opening is not None,
    headline="Two openings of {vents} each are enough: this bank needs {opening} each, for {airflow} of air.",
)
