"""Quantities at the edge: what a kind of number is, and its units (the kinds: `calc.units.kinds`).

Inside `calc` a quantity is a plain float in the SI unit of its kind (temperatures in °C).
This is the only file that imports pint; what a person types never reaches pint's parser
(see `calc.units.typed`). Pint is imported when it is first needed: the page never needs it, since
its builder writes `unit_lines()` into the bundle, which takes a quarter off the start.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pkgutil import get_data
from typing import TYPE_CHECKING
from weakref import WeakSet

if TYPE_CHECKING:
    import pint

METRIC, US = "metric", "us"
UNIT_LINES = "unit_lines.json"
_completed: WeakSet[pint.UnitRegistry] = WeakSet()  # registries that have every unit of ours


def registry() -> pint.UnitRegistry:
    """Return pint's application registry, with every unit of ours in it.

    So a quantity of ours and one of the caller's go together. A unit that is there is left as it
    is; one of our definitions that is missing is added.
    """
    import pint

    # pint gives this function no types
    proxy = pint.get_application_registry()  # type: ignore[no-untyped-call]
    shared: pint.UnitRegistry = proxy.get()
    if shared not in _completed:
        for name, line in _definition_lines().items():
            try:
                shared.Unit(name)
            except pint.UndefinedUnitError:
                shared.define(line)
        _completed.add(shared)
    return shared


@cache
def _definitions() -> pint.UnitRegistry:
    """Return our own small definitions as a registry, from which the lines of units are taken."""
    from importlib.resources import files  # slow to import, and the page never comes here

    import pint

    ours = str(files("calc.units") / "units.txt")
    return pint.UnitRegistry(ours, autoconvert_offset_to_baseunit=False)


def _definition_lines() -> dict[str, str]:
    """Return the lines of our definitions file by a unit that needs them.

    A prefix is needed by the metre with it.
    """
    text = (get_data("calc.units", "units.txt") or b"").decode("utf-8")
    pairs = (line.partition(" = ") for line in text.splitlines() if line[:1].isascii())
    lines = {name.replace("-", "meter"): f"{name} = {rest}" for name, _, rest in pairs if rest}
    return {name: line for name, line in lines.items() if name.isidentifier()}


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

    def __hash__(self) -> int:
        return hash(self.name)


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

    def __hash__(self) -> int:
        return hash(self.id)  # it is looked up at every number that is read or shown

    def unit(self, name: str) -> Unit:
        """Return the unit of this kind with pint's `name`."""
        return next(unit for unit in self.units if unit.name == name)

    def best_unit(self, value: float, system: str = METRIC) -> Unit:
        """Return the unit in which `value` [base unit] reads best in a reader's `system`."""
        names = (self.shown_us if system == US else ()) or self.shown or (self.units[0].name,)
        if len(names) > 1:
            for name in reversed(names):
                if abs(from_base(value, self, name)) >= 1:
                    return self.unit(name)
        return self.unit(names[0])


@cache
def _ready_lines() -> dict[str, tuple[float, float]]:
    """Return the lines that the page's bundle brings with it; elsewhere there are none."""
    try:
        lines: dict[str, tuple[float, float]] = json.loads(
            get_data("calc.units", UNIT_LINES) or b"{}"
        )
    except FileNotFoundError:
        return {}
    return lines


def unit_lines(kinds: Iterable[Kind]) -> dict[str, tuple[float, float]]:
    """Return slope and offset of every unit of `kinds`, as pint has them."""
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
    quantity = _definitions().Quantity
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
