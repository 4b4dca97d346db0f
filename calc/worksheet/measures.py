"""The defaults of a sheet in the units of a reader who has chosen metric or US ones.

A default is a sample: in other units it is the round figure nearest to it, never an exact one.
"""

from collections.abc import Iterator

from calc.units.kinds import TEMPERATURE
from calc.units.quantities import Unit, from_base
from calc.units.shown import rounded
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import Choice, Problem, Quantity

_NEAR = 0.02  # a figure of two digits is near enough to its default


def defaults_in(sheet: Declaration, system: str) -> dict[str, str]:
    """Return texts, by field, for the defaults that are not in the units of `system`.

    A field that is at home in neither system, or whose round figure it would not take, is left out.
    """
    return dict(_defaults(sheet, system))


def units_in(sheet: Declaration, system: str) -> dict[str, str]:
    """Return the unit of `system` to pick beside each box that is empty, by field."""
    fields = (f for f in sheet.fields if isinstance(f, Quantity) and not f.default)
    found = ((field.id, _unit(field, system)) for field in fields)
    return {name: unit.link for name, unit in found if unit}


def _defaults(sheet: Declaration, system: str) -> Iterator[tuple[str, str]]:
    for field in sheet.fields:
        if isinstance(field, Choice):
            theirs = [one.id for one in field.options if one.system == system]
            if theirs and field.default not in theirs:
                yield field.id, theirs[0]
        elif isinstance(field, Quantity) and field.default and (text := _text(field, system)):
            yield field.id, text


def _text(field: Quantity, system: str) -> str:
    value = field.read(field.default).value
    unit = _unit(field, system, value if isinstance(value, float) else None)
    if unit is None or not isinstance(value, float):
        return ""
    exact = from_base(value, field.bare[0], unit.name)
    short, long = (rounded(exact, digits) for digits in (2, 3))
    near = field.bare[0] is TEMPERATURE or abs(float(short) - exact) <= _NEAR * abs(exact)
    text = f"{short if near else long} {unit.link}"
    try:
        field.read(text)
    except Problem:
        return ""
    return text


def _unit(field: Quantity, system: str, value: float | None = None) -> Unit | None:
    """Return the unit of `system` in which a field's default reads best, None for its own."""
    kind, own = field.bare
    theirs = [unit for unit in kind.units if unit.system == system]
    if not own.system or own.system == system or not theirs:
        return None
    if value is None or kind is TEMPERATURE:
        return theirs[0]
    sizes = {unit: abs(from_base(value, kind, unit.name)) for unit in theirs}
    well = next((unit for unit, size in sizes.items() if size >= 1), None)
    return well or max(theirs, key=lambda unit: sizes[unit])
