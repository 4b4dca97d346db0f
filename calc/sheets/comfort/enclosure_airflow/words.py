"""The working of enclosure-airflow in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.comfort.enclosure import Enclosure, Ventilation
from calc.judge import Level, Rule
from calc.units.compare import at_least
from calc.worksheet.declare import Step


def _cool(enclosure: Enclosure) -> bool:
    return enclosure.needed is not None


def _reached(enclosure: Enclosure) -> bool:
    return enclosure.air.reached is not None


def _by(enclosure: Enclosure, ventilation: Ventilation) -> bool:
    moved = enclosure.bay.ventilation is ventilation and not enclosure.air.walled
    return _reached(enclosure) and moved


def _full(enclosure: Enclosure) -> bool:
    return enclosure.derated is not None and at_least(enclosure.derated.output_left, 1.0)


STEPS: tuple[Step[Enclosure], ...] = (
    Step(of="first_heat", formula="throughput * (1 / efficiency - 1)", source="device-loss", when=lambda e: e.bay.first.throughput is not None, text="Input less output."),
    Step(of="first_heat", formula="given_heat", when=lambda e: e.bay.first.throughput is None, text="As you typed it."),
    Step(of="other_heat", formula="throughput_2 * (1 / efficiency_2 - 1) + throughput_3 * (1 / efficiency_3 - 1)", source="device-loss", text="Of the other devices at work."),
    Step(of="heat", formula="first_heat + other_heat", text="All of it must leave with the air; heat through the walls counts only if it is small."),
    Step(of="density", formula="pressure / (gas * (outside - zero))", source="ideal-gas", text="Of the air as it is drawn in, at sea level."),
    Step(of="rise", formula="inside_limit - outside", when=_cool, text="A difference of temperatures, not a temperature."),
    Step(of="airflow", formula="heat / (density * air_heat * rise)", source="energy-balance", when=_cool, text="The airflow that carries the heat off with this temperature rise."),
    Step(of="speed", formula="discharge * sqrt(2 * gravity * height * rise / (inside_limit - zero))", source="stack", when=_cool, text="Warm air rises: the draught of this height, in absolute temperature."),
    Step(of="effective", formula="airflow / speed", source="stack", when=_cool, text="As one opening."),
    Step(of="vent_area", formula="sqrt(2) * effective", source="series-vents", when=_cool, text="Air passes two openings in series, so each must be larger than one alone."),
    Step(of="fan_rise", formula="heat / (density * air_heat * fan)", source="energy-balance", when=lambda e: _by(e, Ventilation.FAN), text="Temperature rise if the fan blows cool air in; one that draws warm air out moves about 5 % less for each 15 K."),
    Step(of="vent_speed", formula="fan / vents", when=lambda e: e.air.vent_speed is not None, text="All its air must pass the vents."),
    Step(of="reached", source="energy-balance", when=lambda e: _by(e, Ventilation.FAN), text="{fan_rise} above {outside}. The fan decides; draught is not added."),
    Step(of="reached", source="stack", when=lambda e: _by(e, Ventilation.VENTS), text="The temperature at which draught through two vents of {vents} each removes the heat, found by bisection."),
    Step(of="wall_rise", formula="heat / walls", source="practice", when=lambda e: e.air.walled, text="This little heat passes through the walls: {walls} for about a square metre of plywood (our estimate)."),
    Step(of="reached", source="practice", when=lambda e: e.air.walled, text="{wall_rise} above {outside}."),
    Step(of="draught", formula="discharge * vents / sqrt(2) * sqrt(2 * gravity * height * (reached - outside) / (reached - zero))", source="stack", when=lambda e: e.air.draught is not None, text="At that temperature."),
    Step(of="at", when=lambda e: _cool(e) and e.bay.ventilation is Ventilation.UNKNOWN and not _reached(e), text="The limit, with vents or fan as needed above; a closed bay gets hotter."),
    Step(of="at", when=_reached, text="The bay temperature from above."),
    Step(of="output_left", source="practice", when=_full, text="At {at}, no warmer than {rated_to}, so the device gives full output."),
    Step(of="output_left", formula="max(0, 1 - derating * (at - rated_to))", source="practice", when=lambda e: e.derated is not None and not _full(e), text="A straight line beyond {rated_to}; the maker's curve is better."),
    Step(of="charge_lost", formula="rated * (1 - output_left) * hours", when=lambda e: e.derated is not None, text="Of a charger that would give {rated} for {hours}, as in alternator charge."),
    Step(of="thermostat", source="practice", when=lambda e: e.thermostat is not None, text="{earlier} below the lower of {rated_to} and {inside_limit}: early enough for the fan to keep up, above the air drawn in."),
)

FINE = Rule[Enclosure](
    id="enclosure-airflow.fine", level=Level.FINE,
    headline="The bay reaches {reached}, within {inside_limit}, and the device keeps its full output.",
)
