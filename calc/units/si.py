"""Plain floats that say their unit: `current: Amperes` is a float in amperes.

The kind tells what the number is shown in; inside `calc` it stays the unit of its name.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.units import kinds
from calc.units.kinds import energy, faults, heat, joints

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
PerSecond = Annotated[float, energy.C_RATE]  # current per capacity
LossRate = Annotated[float, energy.LOSS_RATE]  # share lost in a second
Count = Annotated[float, kinds.COUNT]  # whole
NewtonMetres = Annotated[float, kinds.TORQUE]
Newtons = Annotated[float, kinds.FORCE]
StressPascals = Annotated[float, joints.STRESS]
VoltsPerKelvin = Annotated[float, joints.VOLTAGE_PER_KELVIN]
Hertz = Annotated[float, energy.FREQUENCY]
VoltAmperes = Annotated[float, energy.APPARENT]
Degrees = Annotated[float, energy.ANGLE]
AmpereSquaredSeconds = Annotated[float, faults.JOULE_INTEGRAL]  # I²t
Henries = Annotated[float, faults.INDUCTANCE]
ShortCircuitCoefficient = Annotated[float, faults.HEAT_COEFFICIENT]  # k, A·√s/m²
CubicMetres = Annotated[float, heat.VOLUME]
MetresPerSecond = Annotated[float, heat.SPEED]
Pascals = Annotated[float, heat.PRESSURE]
WattsPerSquareMetre = Annotated[float, heat.IRRADIANCE]
SharePerKelvin = Annotated[float, heat.DERATING]
# Of heat and air
HeatWatts = Annotated[float, heat.HEAT]  # shown in BTU/h too
WattsPerKelvin = Annotated[float, heat.HEAT_RATE]
JoulesPerKelvin = Annotated[float, heat.HEAT_STORE]
JoulesPerKilogramKelvin = Annotated[float, heat.SPECIFIC_HEAT]
JoulesPerCubicMetreKelvin = Annotated[float, heat.AIR_HEAT]
JoulesPerCubicMetre = Annotated[float, heat.ENERGY_DENSITY]
WattsPerMetreKelvin = Annotated[float, heat.CONDUCTIVITY]
WattsPerSquareMetreKelvin = Annotated[float, heat.CONDUCTANCE]
SquareMetreKelvinsPerWatt = Annotated[float, heat.INSULANCE]
KilogramsPerCubicMetre = Annotated[float, heat.DENSITY]
Kilograms = Annotated[float, heat.MASS]
CubicMetresPerSecond = Annotated[float, heat.AIRFLOW]
RoomCubicMetres = Annotated[float, heat.SPACE]
SurfaceSquareMetres = Annotated[float, heat.SURFACE]
OpeningSquareMetres = Annotated[float, heat.OPENING]
MetresPerSecondSquared = Annotated[float, heat.ACCELERATION]
AirChangesPerSecond = Annotated[float, heat.RATE]
GasAmperesPerCoulomb = Annotated[float, heat.GAS_CURRENT]  # of each A·s of capacity
CubicMetresPerCoulomb = Annotated[float, heat.GAS_PER_CHARGE]
EfficiencyRatio = Annotated[float, heat.PERFORMANCE]  # cold for power, as a number
JoulesPerSquareMetre = Annotated[float, energy.IRRADIATION]  # of sunlight


@dataclass(frozen=True)
class Tag:
    """What a module's constant is, in a few words; a test holds that each has one home.

    `FROST: Annotated[Celsius, Tag("lowest temperature for charging LFP")] = 0.0`
    """

    quantity: str
