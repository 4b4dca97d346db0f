"""Kinds of quantity of heat, air, water and fuel; `calc.units.kinds` lists them with the others."""

from calc.units.quantities import METRIC, US, Kind, Unit

VOLUME = Kind(
    "volume",
    "meter ** 3",
    (
        Unit("liter", "L", "L", ("l", "litre", "litres", "liter", "liters"), METRIC),
        Unit("gallon", "gal", "gal", ("gallon", "gallons", "us gal"), US),
        Unit("meter ** 3", "m³", "m3", ("cubic metres", "cubic meters"), METRIC),
        Unit("milliliter", "mL", "mL", ("ml", "millilitres"), METRIC),
    ),
    shown=("milliliter", "liter"),
    shown_us=("gallon",),
)
SPACE = Kind(
    "space",
    "meter ** 3",
    (Unit("meter ** 3", "m³", "m3", (), METRIC), Unit("foot ** 3", "ft³", "ft3", (), US)),
    shown=("meter ** 3",),
    shown_us=("foot ** 3",),
)
AIRFLOW = Kind(
    "airflow",
    "meter ** 3 / second",
    (
        Unit("meter ** 3 / hour", "m³/h", "m3/h", ("cubic metres per hour",), METRIC),
        Unit("foot ** 3 / minute", "ft³/min", "ft3/min", ("cfm", "cubic feet per minute"), US),
        Unit("liter / second", "L/s", "L/s", ("litres per second",), METRIC),
    ),
    shown=("meter ** 3 / hour",),
    shown_us=("foot ** 3 / minute",),
)
CONDUCTIVITY = Kind(
    "thermal conductivity",
    "watt / meter / kelvin",
    (
        Unit("watt / meter / kelvin", "W/(m·K)", "W/m.K", ("w/mk",), METRIC),
        Unit(
            "Btu * inch / hour / foot ** 2 / delta_degree_Fahrenheit",
            "BTU·in/(h·ft²·°F)",
            "BTU.in/h.ft2.F",
            ("btu in/h ft2 f",),
            US,
        ),
    ),
    shown=("watt / meter / kelvin",),
    shown_us=("Btu * inch / hour / foot ** 2 / delta_degree_Fahrenheit",),
)
CONDUCTANCE = Kind(
    "thermal transmittance",
    "watt / meter ** 2 / kelvin",
    (
        Unit("watt / meter ** 2 / kelvin", "W/(m²·K)", "W/m2.K", ("w/m2k",), METRIC),
        Unit(
            "Btu / hour / foot ** 2 / delta_degree_Fahrenheit",
            "BTU/(h·ft²·°F)",
            "BTU/h.ft2.F",
            ("btu/h ft2 f",),
            US,
        ),
    ),
    shown=("watt / meter ** 2 / kelvin",),
    shown_us=("Btu / hour / foot ** 2 / delta_degree_Fahrenheit",),
)
INSULANCE = Kind(
    "thermal resistance",
    "meter ** 2 * kelvin / watt",
    (
        Unit("meter ** 2 * kelvin / watt", "m²·K/W", "m2.K/W", (), METRIC),
        Unit(
            "foot ** 2 * delta_degree_Fahrenheit * hour / Btu",
            "ft²·°F·h/BTU",
            "ft2.F.h/BTU",
            ("r value", "h ft2 f/btu"),
            US,
        ),
    ),
    shown=("meter ** 2 * kelvin / watt",),
    shown_us=("foot ** 2 * delta_degree_Fahrenheit * hour / Btu",),
)
HEAT = Kind(
    "heat flow",
    "watt",
    (
        Unit("watt", "W", "W", ("watt", "watts")),
        Unit("kilowatt", "kW", "kW", ("kilowatt", "kilowatts")),
        Unit("Btu / hour", "BTU/h", "BTU/h", ("btu", "btuh", "btu/hr", "btu per hour"), US),
    ),
    shown=("watt",),
    shown_us=("Btu / hour",),
)
HEAT_RATE = Kind(
    "heat flow per degree",
    "watt / kelvin",
    (
        Unit("watt / kelvin", "W/K", "W/K", (), METRIC),
        Unit("Btu / hour / delta_degree_Fahrenheit", "BTU/(h·°F)", "BTU/h.F", (), US),
    ),
    shown=("watt / kelvin",),
    shown_us=("Btu / hour / delta_degree_Fahrenheit",),
)
HEAT_STORE = Kind(
    "heat capacity",
    "joule / kelvin",
    (Unit("kilojoule / kelvin", "kJ/K", "kJ/K"),),
)
AIR_HEAT = Kind(
    "heat capacity of a volume",
    "joule / meter ** 3 / kelvin",
    (Unit("joule / meter ** 3 / kelvin", "J/(m³·K)", "J/m3.K"),),
)
SPECIFIC_HEAT = Kind(
    "specific heat",
    "joule / kilogram / kelvin",
    (Unit("joule / kilogram / kelvin", "J/(kg·K)", "J/kg.K"),),
)
DENSITY = Kind(
    "density",
    "kilogram / meter ** 3",
    (Unit("kilogram / meter ** 3", "kg/m³", "kg/m3"),),
)
MASS = Kind(
    "mass",
    "kilogram",
    (
        Unit("kilogram", "kg", "kg", ("kilogram", "kilograms"), METRIC),
        Unit("pound", "lb", "lb", ("pounds", "lbs"), US),
        Unit("gram", "g", "g", ("gram", "grams"), METRIC),
    ),
    shown=("gram", "kilogram"),
    shown_us=("pound",),
)
SURFACE = Kind(
    "surface",
    "meter ** 2",
    (
        Unit("meter ** 2", "m²", "m2", ("sq m", "square metres", "square meters"), METRIC),
        Unit("foot ** 2", "ft²", "ft2", ("sq ft", "square feet"), US),
    ),
    shown=("meter ** 2",),
    shown_us=("foot ** 2",),
)
OPENING = Kind(
    "opening",
    "meter ** 2",
    (
        Unit("centimeter ** 2", "cm²", "cm2", ("sq cm",), METRIC),
        Unit("inch ** 2", "in²", "in2", ("sq in", "square inches"), US),
    ),
    shown=("centimeter ** 2",),
    shown_us=("inch ** 2",),
)
RATE = Kind(
    "air changes",
    "1 / second",
    (Unit("1 / hour", "per hour", "perhour", ("/h", "per h", "ach", "air changes per hour")),),
)
ENERGY_DENSITY = Kind(
    "energy in a volume",
    "joule / meter ** 3",
    (
        Unit("kilowatt * hour / liter", "kWh/L", "kW.h/L", ("kwh/l",), METRIC),
        Unit("Btu / gallon", "BTU/gal", "BTU/gal", (), US),
    ),
    shown=("kilowatt * hour / liter",),
    shown_us=("Btu / gallon",),
)
IRRADIANCE = Kind(
    "irradiance",
    "watt / meter ** 2",
    (
        Unit("watt / meter ** 2", "W/m²", "W/m2", (), METRIC),
        Unit("Btu / hour / foot ** 2", "BTU/(h·ft²)", "BTU/h.ft2", (), US),
    ),
    shown=("watt / meter ** 2",),
    shown_us=("Btu / hour / foot ** 2",),
)
PERFORMANCE = Kind(
    "efficiency ratio",
    "dimensionless",
    (
        Unit("dimensionless", "COP", "COP"),
        Unit("Btu / hour / watt", "EER", "EER", ("btu/wh", "btu/h/w")),
    ),
)
DERATING = Kind(
    "share lost per degree",
    "1 / kelvin",
    (
        Unit("percent / delta_degree_Celsius", "%/K", "percent/K", ("%/c",), METRIC),
        Unit("percent / delta_degree_Fahrenheit", "%/°F", "percent/F", (), US),
    ),
    shown=("percent / delta_degree_Celsius",),
    shown_us=("percent / delta_degree_Fahrenheit",),
)
GAS_CURRENT = Kind(
    "gas current per capacity",
    "1 / second",
    (Unit("milliampere / ampere / hour", "mA/Ah", "mA/A.h", ("mA/(A·h)",)),),
)
GAS_PER_CHARGE = Kind(
    "air per charge",
    "meter ** 3 / ampere / second",
    (Unit("meter ** 3 / ampere / hour", "m³/Ah", "m3/A.h", ("m³/(A·h)",)),),
)
SPEED = Kind(
    "speed",
    "meter / second",
    (
        Unit("meter / second", "m/s", "m/s", (), METRIC),
        Unit("foot / minute", "ft/min", "ft/min", ("fpm",), US),
    ),
    shown=("meter / second",),
    shown_us=("foot / minute",),
)
ACCELERATION = Kind(
    "acceleration", "meter / second ** 2", (Unit("meter / second ** 2", "m/s²", "m/s2"),)
)
PRESSURE = Kind("pressure", "pascal", (Unit("pascal", "Pa", "Pa"),))

HEAT_KINDS = tuple(kind for kind in list(globals().values()) if isinstance(kind, Kind))
