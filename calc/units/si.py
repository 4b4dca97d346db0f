"""Plain floats that say their unit: `current: Amperes` is a float in amperes.

The kind tells what the number is shown in; inside `calc` it stays the unit of its name.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.units import kinds
from calc.units.kinds import energy, heat

Amperes = Annotated[float, kinds.CURRENT]
Volts = Annotated[float, kinds.VOLTAGE]
Ohms = Annotated[float, kinds.RESISTANCE]
OhmsPerMetre = Annotated[float, kinds.LINEAR_RESISTANCE]
Watts = Annotated[float, kinds.POWER]
Joules = Annotated[float, kinds.ENERGY]
Coulombs = Annotated[float, kinds.CHARGE]
Seconds = Annotated[float, kinds.TIME]
ShortSeconds = Annotated[float, kinds.DURATION]  # of a fault: shown in ms and µs too
Metres = Annotated[float, kinds.LENGTH]
SquareMetres = Annotated[float, kinds.AREA]
Celsius = Annotated[float, kinds.TEMPERATURE]
Kelvins = Annotated[float, kinds.RISE]
Share = Annotated[float, kinds.RATIO]  # of one
Number = Annotated[float, kinds.NUMBER]
NewtonMetres = Annotated[float, kinds.TORQUE]
Newtons = Annotated[float, kinds.FORCE]
Hertz = Annotated[float, energy.FREQUENCY]
VoltAmperes = Annotated[float, energy.APPARENT]
Degrees = Annotated[float, energy.ANGLE]
CubicMetres = Annotated[float, heat.VOLUME]


@dataclass(frozen=True)
class Tag:
    """What a module's constant is, in a few words; a test holds that each has one home.

    `FROST: Annotated[Celsius, Tag("lowest temperature for charging LFP")] = 0.0`
    """

    quantity: str
