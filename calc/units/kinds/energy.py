"""Kinds of quantity of banks, loads and charging; `calc.units.kinds` lists them with the others."""

from calc.units.quantities import METRIC, US, Kind, Unit

APPARENT = Kind(
    "apparent power",
    "volt * ampere",
    (
        Unit("volt_ampere", "V·A", "V.A", ("va", "v*a", "volt amps", "volt amperes")),
        Unit("kilovolt_ampere", "kV·A", "kV.A", ("kva", "kv*a")),
    ),
)
ANGLE = Kind("angle", "degree", (Unit("degree", "°", "deg", ("degrees", "degs")),))
IRRADIATION = Kind(
    "sunlight of a day",
    "joule / meter ** 2",
    (
        Unit("kilowatt * hour / meter ** 2", "kWh/m²", "kW.h/m2", ("kwh/m2",), METRIC),
        Unit("megajoule / meter ** 2", "MJ/m²", "MJ/m2", (), METRIC),
        Unit("Btu / foot ** 2", "BTU/ft²", "BTU/ft2", (), US),
    ),
    shown=("kilowatt * hour / meter ** 2",),
)
C_RATE = Kind("current against capacity", "1 / second", (Unit("1 / hour", "C", "C"),))
FREQUENCY = Kind(
    "frequency",
    "1 / second",
    (
        Unit("hertz", "Hz", "Hz", ("hertz",)),
        Unit("kilohertz", "kHz", "kHz", ("kilohertz",)),
    ),
)
LOSS_RATE = Kind(
    "share lost in a time",
    "1 / second",
    (
        Unit("percent / month", "%/month", "percent/month", ("% a month", "% per month")),
        Unit("percent / day", "%/day", "percent/day", ("% a day", "% per day")),
    ),
    shown=("percent / month",),
)
VOLTAGE_FALL = Kind(
    "voltage lost per degree",
    "volt / delta_degree_Celsius",
    (
        Unit("volt / delta_degree_Celsius", "V/K", "V/K", ("v/c",), METRIC),
        Unit("millivolt / delta_degree_Celsius", "mV/K", "mV/K", ("mv/c",), METRIC),
    ),
)

ENERGY_KINDS = tuple(kind for kind in list(globals().values()) if isinstance(kind, Kind))
