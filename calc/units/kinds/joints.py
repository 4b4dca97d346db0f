"""Kinds of quantity of bolted joints and contacts; `calc.units.kinds` lists them all."""

from calc.units.quantities import METRIC, US, Kind, Unit

STRESS = Kind(
    "stress",
    "pascal",
    (
        Unit("megapascal", "MPa", "MPa", ("n/mm2", "n/mm²"), METRIC),
        Unit("kilopound_force_per_square_inch", "ksi", "ksi", (), US),
    ),
    shown=("megapascal",),
    shown_us=("kilopound_force_per_square_inch",),
)
VOLTAGE_PER_KELVIN = Kind(
    "voltage per degree",
    "volt / delta_degree_Celsius",
    (Unit("microvolt / delta_degree_Celsius", "µV/K", "uV/K"),),
)

JOINT_KINDS = tuple(kind for kind in list(globals().values()) if isinstance(kind, Kind))
