"""Judgements on an electrical bay: what it gets to, the air it needs, and what its devices keep."""

from typing import Annotated

# fmt: off
from calc.comfort.enclosure import (
    LITTLE_HEAT,
    MUCH_HEAT,
    Bay,
    Derated,
    Enclosure,
    Ventilation,
)
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Celsius, MetresPerSecond, OpeningSquareMetres, Share, Tag

# Beyond which ampacities taken for 30 °C no longer hold: common practice, no source
WARM_FOR_CABLE: Annotated[Celsius, Tag("bay too warm for ampacities at 30 °C")] = 50.0
# Where common cable and plastics reach their own limit: common practice, no source
HOT_FOR_CABLE: Annotated[Celsius, Tag("bay too hot for common cable")] = 60.0
# Of each vent, more than a bay has room for: common practice, no source
LARGEST_VENT: Annotated[OpeningSquareMetres, Share, Tag("largest vent of a bay")] = 0.2
# Through a vent, beyond which a small fan no longer moves what it says: common practice, no source
RUSH: Annotated[MetresPerSecond, Tag("fastest air of a small fan through a vent")] = 2.0

# What floats leave of no output at all
NO_OUTPUT_LEFT: Annotated[Share, Tag("output that counts as none")] = 1e-9


def _unknown(enclosure: Enclosure) -> bool:
    """Nothing tells what moves its air, and there is more heat than its walls pass."""
    return enclosure.bay.ventilation is Ventilation.UNKNOWN and enclosure.air.reached is None


def _walls_do(enclosure: Enclosure) -> bool:
    return enclosure.air.walled and at_most(enclosure.bay.heat, LITTLE_HEAT)


def _shut(enclosure: Enclosure) -> bool:
    return enclosure.bay.shut and enclosure.needed is not None


def _hotter_than(enclosure: Enclosure, limit: float) -> bool:
    return enclosure.air.reached is not None and not at_most(enclosure.air.reached, limit)


def _full(derated: Derated) -> bool:
    return at_least(derated.output_left, 1.0)


def _more_air(enclosure: Enclosure) -> Change | None:
    if enclosure.needed is None:
        return None
    if enclosure.bay.fan is not None:
        return Change({"fan": enclosure.needed.airflow})
    return Change({"vents": enclosure.needed.vent_area})


def _vents_for_fan(enclosure: Enclosure) -> Change | None:
    return None if enclosure.bay.fan is None else Change({"vents": enclosure.bay.fan / RUSH})


def _openings(enclosure: Enclosure) -> Change | None:
    if enclosure.needed is None:
        return None
    fan = enclosure.bay.fan
    return Change({"vents": enclosure.needed.vent_area if fan is None else fan / RUSH})


NO_COOLER_AIR = Rule[Enclosure](
    id="bay.no-cooler-air", level=Level.STOP, when=lambda e: e.needed is None,
    headline="Air at {bay.outside} cannot keep a bay below {bay.inside_limit}: draw it from somewhere cooler, or move the devices.",
)
SHUT = Rule[Enclosure](
    id="bay.shut", level=Level.STOP, when=lambda e: _shut(e) and at_least(e.bay.heat, MUCH_HEAT), source="practice",
    headline="Cut vents first, two of {needed.vent_area} each: a closed bay cannot lose {bay.heat}.",
    text="Fire: walls pass far less than {bay.heat}, so a closed bay gets hotter and hotter; a fan in it moves no air. Cut one vent low, one high.",
    mend=_openings,
    covers=frozenset({"bay.ruined"}),
)
SHUT_AND_WARM = Rule[Enclosure](
    id="bay.shut-and-warm", level=Level.CAUTION, source="practice",
    when=lambda e: _shut(e) and not at_most(e.bay.heat, LITTLE_HEAT) and not at_least(e.bay.heat, MUCH_HEAT),
    headline="Cut vents: a closed bay with {bay.heat} reaches about {air.reached}, a small one more.",
    text="A bay with a square metre of plywood around it gets warmer by 1 K for each 3 W (our estimate). Insulated or small, it gets hotter.",
    mend=_openings,
)
WALLS_DO = Rule[Enclosure](
    id="bay.walls-do", level=Level.NOTE, source="practice", when=_walls_do,
    text="This little heat passes through the walls: 1 K for each 3 W with a square metre of plywood (our estimate). An insulated bay gets warmer.",
)
RUINED = Rule[Enclosure](
    id="bay.ruined", level=Level.STOP, when=lambda e: e.air.ruined,
    headline="Ventilate first, {needed.airflow} or two vents of {needed.vent_area} each: it gets too hot for any device.",
    mend=_more_air,
)
BEYOND_VENTS = Rule[Enclosure](
    id="bay.beyond-vents", level=Level.STOP,
    when=lambda e: _unknown(e) and e.needed is not None and not at_most(e.needed.vent_area, LARGEST_VENT),
    headline="Fit a fan of {needed.airflow} or more: two vents of {needed.vent_area} each are too large for a bay.",
)
OVER_LIMIT = Rule[Enclosure](
    id="bay.over-limit", level=Level.CAUTION, when=lambda e: not e.within_limit and not _hotter_than(e, HOT_FOR_CABLE),
    headline="Ventilate with {needed.airflow}, or two vents of {needed.vent_area}: it reaches {air.reached}, over {bay.inside_limit}.",
    mend=_more_air,
)
FAR_OVER_LIMIT = Rule[Enclosure](
    id="bay.far-over-limit", level=Level.STOP, when=lambda e: not e.within_limit and _hotter_than(e, HOT_FOR_CABLE),
    headline="Ventilate with {needed.airflow}, or two vents of {needed.vent_area} each: {air.reached} is too hot for common cable.",
    mend=_more_air,
)
NO_OUTPUT = Rule[Derated](
    id="device.no-output", level=Level.STOP, when=lambda d: d.output_left < NO_OUTPUT_LEFT,
    headline="Keep the bay cooler: at {at} the device gives nothing.",
)
AIR_UNKNOWN = Rule[Enclosure](
    id="bay.air-unknown", level=Level.CAUTION, when=_unknown,
    headline="Check the vents: to hold {bay.inside_limit} it needs {needed.airflow}, or two vents of {needed.vent_area} each.",
    mend=_more_air,
)
TOO_HOT_FOR_CABLE = Rule[Enclosure](
    id="bay.too-hot-for-cable", level=Level.CAUTION, source="practice", when=lambda e: _hotter_than(e, HOT_FOR_CABLE),
    headline="The bay reaches {air.reached}: within the limit you set, but too hot for common cable.",
    text="Risk of fire: at {air.reached} common cable and plastics are over their limits. Stop and ventilate first; use every ampacity for that ambient.",
)
FAN_IN_CLOSED_BAY = Rule[Enclosure](
    id="bay.fan-without-vents", level=Level.CAUTION, when=lambda e: e.bay.fan is not None and e.bay.vents is None and not _walls_do(e),
    headline="Check the vents: a fan in a closed bay moves no air. {air.reached} is valid only with vents.",
    mend=_vents_for_fan,
)
VENTS_TOO_SMALL_FOR_FAN = Rule[Enclosure](
    id="bay.vents-too-small-for-fan", level=Level.CAUTION,
    when=lambda e: e.air.vent_speed is not None and not at_most(e.air.vent_speed, RUSH) and not _walls_do(e),
    headline="Cut larger vents: a small fan cannot blow {air.vent_speed} through {bay.vents}.",
    mend=_vents_for_fan,
)
LESS_OUTPUT = Rule[Derated](
    id="device.less-output", level=Level.CAUTION, source="practice", when=lambda d: not _full(d),
    headline="At {at} the device keeps {output_left} of its output; {charge_lost} less in {hours}.",
    text="For the charge of a drive, use {output_left} of the charger's rating: {charge_lost} less.",
)
WARM_AMBIENT = Rule[Enclosure](
    id="bay.warm-for-cable", level=Level.CAUTION, when=lambda e: _hotter_than(e, WARM_FOR_CABLE),
    headline="Use {air.reached} as the ambient for every wire in this bay: ampacity is lower in warm air.",
)

HEAT_AGES = Rule[Enclosure](
    id="bay.heat-ages", level=Level.ADVICE, source="practice", when=lambda e: _unknown(e) or not e.within_limit,
    text="Heat ages electronics and softens plastics: life halves with each 10 K, by common practice. Do not cover the devices, and keep cables and insulation clear of them.",
)
DRAUGHT = Rule[Bay](
    id="bay.draught-can-fail", level=Level.ADVICE, source="stack", when=lambda b: b.ventilation is Ventilation.VENTS,
    text="Draught needs one vent low and one high, both open to the same air. Wind, filters or dusty grilles can stop it: a fan with a thermostat is more reliable.",
)
FAN = Rule[Bay](
    id="bay.fan-can-fail", level=Level.ADVICE, source="energy-balance", when=lambda b: b.ventilation is Ventilation.FAN,
    text="A fan needs an inlet and an outlet, and if it fails the bay gets hotter than this. Fit one that starts with the charger or by thermostat.",
)
NO_THERMOSTAT = Rule[Enclosure](
    id="bay.thermostat-never-rests", level=Level.ADVICE, source="practice", when=lambda e: e.thermostat is None,
    text="The air drawn in is so warm that a thermostat would never switch off: run the fan with the charger.",
)
NOT_PAST_GAS = Rule[Bay](
    id="bay.not-past-gas", level=Level.ADVICE, source="practice",
    text="Never vent a bay with vented lead-acid cells past sparking parts, and never draw its air from near an exhaust or a gas locker. For battery ventilation, see battery air.",
)
CHECK_FIGURE = Rule[Bay](
    id="bay.check-figure", level=Level.NOTE, source="energy-balance",
    text="Check value: 500 W and 10 K need about 148 m³/h of air at 20 °C. In thin air at 2000 m it is 25 % more.",
)
