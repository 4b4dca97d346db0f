"""Why something of a van cannot be worked: which value is not known, in a few words."""

from __future__ import annotations

from calc.van.record import KINDS, Van, place_of
from calc.van.values import State

_SAYS = {State.NOT_SEEN: "not seen", State.NONE: "none", State.BLANK: "not stated"}


def why_not(van: Van, place: str) -> str:
    """Return what is not known at a place of a van: `Length of fridge: not seen`."""
    if place in KINDS and KINDS[place].many:
        return f"{KINDS[place].title}: {_SAYS.get(van.stated(place), 'not enough is known')}"
    kind, index, key = place_of(place)
    parts = van.all(kind.id)
    part = parts[index - 1] if 1 <= index <= len(parts) else None
    name = part.name if part else kind.one
    if not key:
        return f"{name[0].upper()}{name[1:]}: not enough is known"
    state = part[key].state if part else van.stated(kind.id)
    label = kind.key(key).field.label
    return f"{label} of {name}: {_SAYS.get(state, 'does not fit')}"
