"""Quantities at the edge: every kind of number a reader may type or read, and its units.

Inside `calc` a quantity is a plain float in the SI unit of its kind (temperatures in °C).
This is the only file that imports pint; what a person types never reaches pint's parser
(see `calc.typed`). Pint is imported when it is first needed: the page never needs it, since its
builder writes `unit_lines()` into the bundle, which takes a quarter off the start.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache
from pkgutil import get_data
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pint

METRIC, US = "metric", "us"
UNIT_LINES = "unit_lines.json"


@cache
def registry() -> pint.UnitRegistry:
    """Return the one registry of this process, built from our own small definitions file."""
    from importlib.resources import files  # slow to import, and the page never comes here

    import pint

    return pint.UnitRegistry(str(files("calc") / "units.txt"), autoconvert_offset_to_baseunit=False)


@dataclass(frozen=True)
class Unit:
    """A unit a reader may pick.

    `name` is pint's name; `symbol` is shown on the page; `link` is its ASCII form in a link;
    `spellings` are further accepted forms, compared without regard to case or spaces;
    `system` says whether it is at home in metric or US practice only.
    """

    name: str
    symbol: str
    link: str
    spellings: tuple[str, ...] = ()
    system: str = ""


@dataclass(frozen=True)
class Kind:
    """One kind of quantity.

    `base` is the unit of the plain floats inside `calc`; `units` are those a reader may pick,
    the first being the one a result is given in; `shown` are the names of the units
    used for answers, smallest first (`shown_us` where a reader works in US units).
    """

    id: str
    base: str
    units: tuple[Unit, ...]
    shown: tuple[str, ...] = ()
    shown_us: tuple[str, ...] = ()
    whole: bool = False

    def unit(self, name: str) -> Unit:
        """Return the unit of this kind with pint's `name`."""
        return next(unit for unit in self.units if unit.name == name)

    def best_unit(self, value: float, system: str = METRIC) -> Unit:
        """Return the unit in which `value` [base unit] reads best in a reader's `system`."""
        names = (self.shown_us if system == US else ()) or self.shown or (self.units[0].name,)
        fitting = [name for name in names if abs(from_base(value, self, name)) >= 1]
        return self.unit(fitting[-1] if fitting else names[0])


@cache
def _ready_lines() -> dict[str, tuple[float, float]]:
    """Return the lines that the page's bundle brings with it; elsewhere there are none."""
    try:
        lines: dict[str, tuple[float, float]] = json.loads(get_data("calc", UNIT_LINES) or b"{}")
    except FileNotFoundError:
        return {}
    return lines


def unit_lines() -> dict[str, tuple[float, float]]:
    """Return slope and offset of every unit of every kind, as pint has them."""
    kinds = [kind for kind in globals().values() if isinstance(kind, Kind)]
    return {
        f"{unit.name} to {kind.base}": _line(kind.base, unit.name)
        for kind in kinds
        for unit in kind.units
    }


@cache
def _line(kind_base: str, name: str) -> tuple[float, float]:
    """Return slope and offset of the straight line from unit `name` to `kind_base`."""
    if ready := _ready_lines().get(f"{name} to {kind_base}"):
        return ready
    quantity = registry().Quantity
    if name == kind_base:
        return 1.0, 0.0
    offset = float(quantity(0.0, name).to(kind_base).magnitude)
    if offset == 0:
        return float(quantity(1.0, name).to(kind_base).magnitude), 0.0
    difference = f"delta_{name}", f"delta_{kind_base}"
    return float(quantity(1.0, difference[0]).to(difference[1]).magnitude), offset


def to_base(number: float, kind: Kind, name: str) -> float:
    """Return `number` [unit `name`] in the base unit of `kind`."""
    slope, offset = _line(kind.base, name)
    return number * slope + offset


def from_base(value: float, kind: Kind, name: str) -> float:
    """Return `value` [base unit of `kind`] in the unit `name`."""
    slope, offset = _line(kind.base, name)
    return (value - offset) / slope


def quantity(value: float, kind: Kind) -> pint.Quantity:
    """Return `value` [base unit of `kind`] as a pint quantity in the kind's first unit."""
    first = kind.units[0].name
    return registry().Quantity(from_base(value, kind, first), first)


def base_quantity(value: float, kind: Kind) -> pint.Quantity:
    """Return `value` [base unit of `kind`] as a pint quantity in that base unit."""
    return registry().Quantity(value, kind.base)


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
        Unit("ampere * hour", "A·h", "A.h", ("ah", "amp hours", "amp hour", "a*h", "ampere hours")),
        Unit("milliampere * hour", "mA·h", "mA.h", ("mah", "ma*h")),
    ),
)
ENERGY = Kind(
    "energy",
    "joule",
    (
        Unit("watt * hour", "W·h", "W.h", ("wh", "watt hours", "watt hour", "w*h")),
        Unit("kilowatt * hour", "kW·h", "kW.h", ("kwh", "kw*h", "kilowatt hours")),
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
