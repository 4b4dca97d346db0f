"""What usually stands for a worksheet where an inspector saw nothing."""

from __future__ import annotations

from calc.van.bind import Filled
from calc.van.bindings import BINDINGS
from calc.van.record import place_of


def as_usual(sheet: str, own: Filled) -> dict[str, str]:
    """Return what usually stands where an inspector saw nothing, for keys that have such a text.

    What is grave even so is told; that the value was not seen, the review says by itself.
    """
    found = {}
    for name in own.lacking:
        source, place = BINDINGS[sheet, name], own.missing[name]
        if not source.endswith("()"):
            kind, _, key = place_of(place)
            if key and (usual := kind.key(key).usual):
                found[name] = usual
    return found
