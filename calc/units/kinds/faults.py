"""Kinds of quantity of short circuits; `calc.units.kinds` lists them with the others."""

from calc.units.quantities import Kind, Unit

JOULE_INTEGRAL = Kind(
    "let-through energy",
    "ampere ** 2 * second",
    (
        Unit("ampere ** 2 * second", "A²·s", "A2.s", ("a2s", "a²s", "a^2 s", "i2t")),
        Unit("kiloampere ** 2 * second", "kA²·s", "kA2.s", ("ka2s", "ka²s")),
    ),
    shown=("ampere ** 2 * second",),  # one unit on one page: figures that a reader compares
)
INDUCTANCE = Kind(
    "inductance",
    "henry",
    (
        Unit("microhenry", "µH", "uH", ("microhenry", "microhenries")),
        Unit("millihenry", "mH", "mH", ("millihenry", "millihenries")),
    ),
    shown=("microhenry", "millihenry"),
)
HEAT_COEFFICIENT = Kind(
    "short-circuit coefficient",
    "ampere * second ** 0.5 / meter ** 2",
    (Unit("ampere * second ** 0.5 / millimeter ** 2", "A·√s/mm²", "A.s0.5/mm2"),),
)
CURRENT_PER_CAPACITY = Kind(
    "current per capacity", "1 / second", (Unit("1 / hour", "A/Ah", "A/A.h", ("A/(A·h)",)),)
)
INSULATION = Kind(
    "insulation resistance",
    "ohm",
    (
        Unit("megaohm", "MΩ", "Mohm", ("megohm", "megohms", "megaohm", "megaohms")),
        Unit("gigaohm", "GΩ", "Gohm", ("gigaohm", "gigaohms")),
        Unit("kiloohm", "kΩ", "kohm", ("kilohm", "kilohms")),
    ),
    shown=("kiloohm", "megaohm", "gigaohm"),
)

FAULT_KINDS = (JOULE_INTEGRAL, INDUCTANCE, HEAT_COEFFICIENT, CURRENT_PER_CAPACITY, INSULATION)
