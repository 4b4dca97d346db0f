"""The way back of what a van works out for a worksheet: where another text of it would go."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from calc.van.came import amp_hours, metres
from calc.van.from_bank import house
from calc.van.record import Part, Van
from calc.worksheet.fields import Field

Back = Callable[[Van, Part | None, Field, str], Mapping[str, str]]

CURRENTS = {
    "circuits": "current",
    "cables": "current",
    "regulators": "current_limit",
    "shore": "charger",
}


def _chemistry(van: Van, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
    return {f"{one.place}.chemistry": text for one in house(van)}


def _capacity(van: Van, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
    """A capacity of like batteries is that of one, times those in parallel."""
    found = house(van)
    units = found[0].si("units") if len(found) == 1 else None
    total = field.read(text).value if text else None
    if not units or not isinstance(total, float):
        return {}
    place = f"{found[0].place}.capacity"
    return {place: text if units == 1 else amp_hours(total / units, place).text}


def _of_one_battery(name: str) -> Back:
    def back(van: Van, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
        found = house(van)
        return {f"{found[0].place}.{name}": text} if len(found) == 1 else {}

    return back


def _current(van: Van, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
    name = CURRENTS.get(part.kind.id) if part is not None else None
    return {f"{part.place}.{name}": text} if part is not None and name else {}


def _source(van: Van, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
    """The source of a short is the battery itself only where no other run lies before."""
    from calc.van.from_runs import source_strings

    own = source_strings(van, part) is not None
    return _of_one_battery("resistance")(van, part, field, text) if own else {}


def _length(van: Van, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
    """A cable of one pole stands in a worksheet as half its length, out and back."""
    from calc.van.supply import own_share

    length = field.read(text).value if text else None
    if part is None or not isinstance(length, float) or own_share(part) == 1:
        return {f"{part.place}.length": text} if part is not None else {}
    place = f"{part.place}.length"
    return {place: metres(length / own_share(part), place).text}


def _coefficient(van: Van, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
    share = field.read(text).value if text else None
    if part is None or not isinstance(share, float):
        return {}
    return {f"{part.place}.coefficient": f"{share * 100:.6g} %"}


def _loads(van: Van, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
    return {f"{part.place}.loads": text} if part is not None and "loads" in part.values else {}


BACK: Mapping[str, Back] = {
    "bank_chemistry": _chemistry,
    "bank_capacity": _capacity,
    "unit_capacity": _of_one_battery("capacity"),
    "unit_current": _of_one_battery("unit_current"),
    "source_resistance": _source,
    "load_current": _current,
    "loop_length": _length,
    "coefficient_of_voltage": _coefficient,
    "daily_loads": _loads,
}
"""The way back by the name of a function of `calc.van.derived`."""
