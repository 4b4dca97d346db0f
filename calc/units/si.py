"""Plain floats that say their unit: `current: Amperes` is a float in amperes.

The kind tells what the number is shown in; inside `calc` it stays the unit of its name.
"""

from typing import Annotated

from calc.units import kinds

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
