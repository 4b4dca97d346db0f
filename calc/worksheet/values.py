"""Inputs that are no text: a number, a pint quantity, a choice, each checked beside its field."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.units.kinds import RATIO
from calc.units.quantities import Kind, from_base, registry
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import Choice, Field, Measured, Quantity
from calc.worksheet.rows import Rows


def as_text(sheet: Declaration, name: str, value: Any) -> str:
    """Return `value` for the field `name` as a person would type it.

    A text stays as it is. Raises Problem for a bare number that could be read in two units, and for
    a quantity of another dimension.
    """
    if isinstance(value, str):
        return str(value)
    field = next((one for one in sheet.fields if one.id == name), None)
    if field is None:  # the sheet says which fields there are
        return f"{value}"
    if hasattr(value, "magnitude") and isinstance(field, Quantity):
        kind, number = _in_kind(field, value)
        first = kind.units[0]
        return f"{from_base(number, kind, first.name):.15g} {first.link}"
    if isinstance(value, int | float) and isinstance(field, Quantity):
        if not _has_one_meaning(field):
            raise field.problem(f"needs a unit: write {_sample(field)!r} or give a quantity.")
        return f"{value:.15g}"
    raise field.problem(f"must be a text, like {_sample(field)!r}, not {type(value).__name__}.")


def as_value(field: Field, value: Any) -> Any:
    """Return `value` as the calculation takes it: an SI float, a choice, or None.

    Raises Problem for what the field does not take or what lies outside its limits.
    """
    if value is None:
        if field.optional:
            return None
        raise field.problem(f"must be given, like {_sample(field)}.")
    if isinstance(field, Choice):
        return field.argument(field.read(str(value)))
    if isinstance(field, Rows):
        if isinstance(value, str):
            return field.argument(field.read(value))
        if isinstance(value, tuple) and all(isinstance(row, Mapping) for row in value):
            return value
        raise field.problem("must be a tuple of mappings, one a row, or the text of the list.")
    if not isinstance(field, Quantity):
        return field.argument(field.read(str(value)))
    if isinstance(value, Measured):
        kind, number = value.kind, value.value
        if kind not in field.kinds:
            raise field.problem(f"must be a {' or a '.join(one.id for one in field.kinds)}.")
    elif hasattr(value, "magnitude"):
        kind, number = _in_kind(field, value)
    elif isinstance(value, int | float) and not isinstance(value, bool):
        if len(field.kinds) > 1:
            raise field.problem(f"needs a unit: give a quantity, like {_sample(field)!r}.")
        kind, number = field.kind, float(value)
    else:
        raise field.problem(f"must be a number, not {type(value).__name__}.")
    field.check(number, kind)
    return Measured(number, kind) if len(field.kinds) > 1 else number


def _in_kind(field: Quantity, value: Any) -> tuple[Kind, float]:
    """Return the kind of the field that a pint quantity is of, and its number in the base unit."""
    for kind in field.kinds:
        base = registry().Unit(kind.base)
        if value.is_compatible_with(base):
            return kind, float(value.m_as(base))
    raise field.problem(f"must be a {' or a '.join(one.id for one in field.kinds)}.")


def _has_one_meaning(field: Quantity) -> bool:
    """Return whether a number alone can be read in one way: no unit to pick, and no percent."""
    return len(field.units) == 1 and field.kind is not RATIO


def _sample(field: Field) -> str:
    if isinstance(field, Quantity):
        return field.default or field.sample
    if isinstance(field, Choice):
        return field.options[0].typed
    return field.default or "a text"
