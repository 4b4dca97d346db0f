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
    Step(of="first_heat", formula="throughput * (1 / efficiency - 1)", source="device-loss", when=lambda e: e.bay.first.throughput is not None, text="What goes in and does not come out."),
    Step(of="first_heat", formula="given_heat", when=lambda e: e.bay.first.throughput is None, text="As you know it."),
    Step(of="other_heat", formula="throughput_2 * (1 / efficiency_2 - 1) + throughput_3 * (1 / efficiency_3 - 1)", source="device-loss", text="Of the others at work beside it."),
    Step(of="heat", formula="first_heat + other_heat", text="All of it must leave with the air; what the walls pass is counted only where it is little."),
    Step(of="density", formula="pressure / (gas * (outside - zero))", source="ideal-gas", text="Of the air as it is drawn in, at sea level."),
    Step(of="rise", formula="inside_limit - outside", when=_cool, text="A difference of temperatures, not a temperature."),
    Step(of="airflow", formula="heat / (density * air_heat * rise)", source="energy-balance", when=_cool, text="Air that is warmed by just that much carries the heat off."),
    Step(of="speed", formula="discharge * sqrt(2 * gravity * height * rise / (inside_limit - zero))", source="stack", when=_cool, text="Warm air rises: the draught of this height, in absolute temperature."),
    Step(of="effective", formula="airflow / speed", source="stack", when=_cool, text="As if there were one opening."),
    Step(of="vent_area", formula="sqrt(2) * effective", source="series-vents", when=_cool, text="Air passes two openings in a row, so each must be larger than one alone."),
    Step(of="fan_rise", formula="heat / (density * air_heat * fan)", source="energy-balance", when=lambda e: _by(e, Ventilation.FAN), text="What its air is warmed by, if the fan blows cool air in; one that draws warm air out carries some 5 % less for each 15 K."),
    Step(of="vent_speed", formula="fan / vents", when=lambda e: e.air.vent_speed is not None, text="All of its air must pass the vents."),
    Step(of="reached", source="energy-balance", when=lambda e: _by(e, Ventilation.FAN), text="{fan_rise} above {outside}. The fan decides; draught is not added."),
    Step(of="reached", source="stack", when=lambda e: _by(e, Ventilation.VENTS), text="Where the draught through two vents of {vents} each carries off just the heat that is made, found by halving."),
    Step(of="wall_rise", formula="heat / walls", source="practice", when=lambda e: e.air.walled, text="So little heat goes through the walls: {walls} for about a square metre of plywood (our estimate)."),
    Step(of="reached", source="practice", when=lambda e: e.air.walled, text="{wall_rise} above {outside}."),
    Step(of="draught", formula="discharge * vents / sqrt(2) * sqrt(2 * gravity * height * (reached - outside) / (reached - zero))", source="stack", when=lambda e: e.air.draught is not None, text="At that temperature."),
    Step(of="at", when=lambda e: _cool(e) and e.bay.ventilation is Ventilation.UNKNOWN and not _reached(e), text="The limit, if vents or fan are as needed above; closed, it gets hotter."),
    Step(of="at", when=_reached, text="What it comes to."),
    Step(of="output_left", source="practice", when=_full, text="At {at}, no warmer than {rated_to}, so the device gives all it has."),
    Step(of="output_left", formula="max(0, 1 - derating * (at - rated_to))", source="practice", when=lambda e: e.derated is not None and not _full(e), text="A straight line beyond {rated_to}; the maker's curve is better."),
    Step(of="charge_lost", formula="rated * (1 - output_left) * hours", when=lambda e: e.derated is not None, text="Of a charger that would give {rated} for {hours}, as in alternator charge."),
    Step(of="thermostat", source="practice", when=lambda e: e.thermostat is not None, text="{earlier} below the lower of {rated_to} and {inside_limit}: early enough for the fan to get ahead, above the air that is drawn in."),
)

FINE = Rule[Enclosure](
    id="enclosure-airflow.fine", level=Level.FINE,
    headline="The bay gets to {reached}, within {inside_limit}, and the device keeps its full output.",
)
