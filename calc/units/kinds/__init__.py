"""Every kind of quantity a reader may type or read: its base unit inside, its units outside."""

import copyreg
from collections.abc import Callable

from calc.units.kinds.energy import ENERGY_KINDS
from calc.units.kinds.faults import FAULT_KINDS
from calc.units.kinds.heat import HEAT_KINDS
from calc.units.kinds.joints import JOINT_KINDS
from calc.units.quantities import METRIC, US, Kind, Unit

PLAIN = Unit("dimensionless", "", "")

POWER = Kind(
    "power",
    "watt",
    (
        Unit("watt", "W", "W", ("watt", "watts")),
        Unit("kilowatt", "kW", "kW", ("kilowatt", "kilowatts")),
    ),
)
CURRENT = Kind(
    "current",
    "ampere",
    (
        Unit("ampere", "A", "A", ("amp", "amps", "ampere", "amperes")),
        Unit("milliampere", "mA", "mA", ("milliamp", "milliamps")),
        Unit("kiloampere", "kA", "kA", ("kiloamp", "kiloamps")),
    ),
)
VOLTAGE = Kind(
    "voltage",
    "volt",
    (Unit("volt", "V", "V", ("volt", "volts")), Unit("millivolt", "mV", "mV", ("millivolts",))),
    shown=("volt",),
)
CHARGE = Kind(
    "charge",
    "ampere * second",
    (
        Unit("ampere * hour", "Ah", "A.h", ("A·h", "amp hours", "amp hour", "a*h", "ampere hours")),
        Unit("milliampere * hour", "mAh", "mA.h", ("mA·h", "ma*h")),
    ),
)
ENERGY = Kind(
    "energy",
    "joule",
    (
        Unit("watt * hour", "Wh", "W.h", ("W·h", "watt hours", "watt hour", "w*h")),
        Unit("kilowatt * hour", "kWh", "kW.h", ("kW·h", "kw*h", "kilowatt hours")),
    ),
)
TIME = Kind(
    "time",
    "second",
    (
        Unit("hour", "h", "h", ("hr", "hrs", "hour", "hours")),
        Unit("minute", "min", "min", ("mins", "minute", "minutes")),
        Unit("day", "days", "days", ("d", "day")),
    ),
    shown=("minute", "hour"),
)
LENGTH = Kind(
    "length",
    "meter",
    (
        Unit("foot", "ft", "ft", ("feet", "foot", "'"), US),
        Unit("inch", "in", "in", ("inch", "inches", '"'), US),
        Unit("meter", "m", "m", ("metre", "metres", "meter", "meters"), METRIC),
        Unit("centimeter", "cm", "cm", ("centimetre", "centimetres"), METRIC),
        Unit("millimeter", "mm", "mm", ("millimetre", "millimetres"), METRIC),
    ),
    shown=("millimeter", "meter"),
    shown_us=("inch", "foot"),
)
DIAMETER = Kind(
    "diameter",
    "meter",
    (Unit("millimeter", "mm", "mm"), Unit("inch", "in", "in", (), US)),
    shown=("millimeter",),
)
RESISTANCE = Kind(
    "resistance",
    "ohm",
    (
        Unit("milliohm", "mΩ", "mohm", ("milliohm", "milliohms")),
        Unit("ohm", "Ω", "ohm", ("ohms",)),
        Unit("microohm", "µΩ", "uohm", ("microohm", "microohms")),
    ),
    shown=("microohm", "milliohm", "ohm"),
)
LINEAR_RESISTANCE = Kind(
    "resistance per length",
    "ohm / meter",
    (
        Unit("ohm / kilometer", "Ω/km", "ohm/km", ("mohm/m", "mω/m"), METRIC),
        Unit("ohm / kilofoot", "Ω/1000 ft", "ohm/kft", ("ohm/1000ft", "mohm/ft", "mω/ft"), US),
        Unit("ohm / foot", "Ω/ft", "ohm/ft", (), US),
    ),
    shown=("ohm / kilometer",),
    shown_us=("ohm / kilofoot",),
)
TEMPERATURE = Kind(
    "temperature",
    "degree_Celsius",
    (
        Unit("degree_Celsius", "°C", "C", ("degc", "celsius", "deg c"), METRIC),
        Unit("degree_Fahrenheit", "°F", "F", ("degf", "fahrenheit", "deg f"), US),
    ),
    shown=("degree_Celsius",),
    shown_us=("degree_Fahrenheit",),
)
RATIO = Kind("share", "dimensionless", (Unit("percent", "%", "percent", ("pct", "per cent")),))
NUMBER = Kind("number", "dimensionless", (PLAIN,))
COUNT = Kind("count", "dimensionless", (PLAIN,), whole=True)
TORQUE = Kind(
    "torque",
    "newton * meter",
    (
        Unit("newton * meter", "N·m", "N.m", ("nm", "n*m", "newton metres"), METRIC),
        Unit("force_pound * inch", "lbf·in", "lbf.in", ("inlb", "inlbf", "lbin", "lbfin"), US),
        Unit("force_pound * foot", "lbf·ft", "lbf.ft", ("ftlb", "ftlbf", "lbft", "lbfft"), US),
    ),
    shown=("newton * meter",),
    shown_us=("force_pound * inch",),
)
FORCE = Kind(
    "force",
    "newton",
    (
        Unit("kilonewton", "kN", "kN", (), METRIC),
        Unit("newton", "N", "N", (), METRIC),
        Unit("force_pound", "lbf", "lbf", (), US),
    ),
    shown=("newton", "kilonewton"),
    shown_us=("force_pound",),
)

AREA = Kind(
    "area",
    "meter ** 2",
    (
        Unit("millimeter ** 2", "mm²", "mm2", ("sq mm", "qmm"), METRIC),
        Unit("circular_mil", "circular mil", "cmil", ("circular mils", "cm area"), US),
    ),
    shown=("millimeter ** 2",),
)
DURATION = Kind(
    "duration",
    "second",
    (
        Unit("second", "s", "s", ("sec", "second", "seconds")),
        Unit("millisecond", "ms", "ms", ("millisecond", "milliseconds")),
        Unit("microsecond", "µs", "us", ("microsecond", "microseconds")),
        Unit("minute", "min", "min", ("mins", "minute", "minutes")),
        Unit("hour", "h", "h", ("hr", "hrs", "hour", "hours")),
    ),
    shown=("microsecond", "millisecond", "second", "minute", "hour"),
)
RISE = Kind(
    "temperature difference",
    "delta_degree_Celsius",
    (
        Unit("delta_degree_Celsius", "K", "K", ("kelvin", "c", "°c", "degc"), METRIC),
        Unit("delta_degree_Fahrenheit", "°F", "F", ("degf", "fahrenheit"), US),
    ),
    shown=("delta_degree_Celsius",),
    shown_us=("delta_degree_Fahrenheit",),
)

KINDS = (
    *(kind for kind in list(globals().values()) if isinstance(kind, Kind)),
    *ENERGY_KINDS,
    *FAULT_KINDS,
    *HEAT_KINDS,
    *JOINT_KINDS,
)


def _kind(name: str) -> Kind:
    return next(kind for kind in KINDS if kind.id == name)


def _by_id(kind: Kind) -> tuple[Callable[..., Kind], tuple[str]]:
    return _kind, (kind.id,)


copyreg.pickle(Kind, _by_id)  # there is one of each
