"""What a van says for a field of a worksheet: the text, and the place that it came from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from calc.units.constants import HOUR
from calc.van.record import Part, Van
from calc.van.values import State


@dataclass(frozen=True)
class Came:
    """A `text` as it would be typed, and the `place` in the van; no text where it is not known.

    `si` is its number in the base unit of its kind, where it is one.
    """

    text: str
    place: str
    si: float | None = None


def unknown(place: str) -> Came:
    """Return that what stands at `place` is not known."""
    return Came("", place)


def key_of(part: Part, name: str) -> Came | None:
    """Return what stands at a key of a part; None where there is no such thing."""
    value = part.values.get(name)
    if value is None or value.state is State.NONE:
        return None
    place = f"{part.place}.{name}"
    return Came(value.text, place, part.si(name)) if value.known else unknown(place)


def key_of_kind(van: Van, kind: str, name: str) -> Came | None:
    """Return what stands at a key of the first part of a kind; None where the van has none."""
    part = van.one(kind)
    if part is not None:
        return key_of(part, name)
    return None if van.stated(kind) is State.NONE else unknown(f"{kind}.{name}")


def agreed(parts: Sequence[Part], name: str) -> Came | None:
    """Return what all `parts` say at a key; not known where one says nothing, or another thing."""
    if not parts:
        return None
    first = parts[0][name].reading
    for part in parts:
        other = part[name].reading
        if not part[name].known or first is None or other is None or other.value != first.value:
            return unknown(f"{part.place}.{name}")
    return key_of(parts[0], name)


def amps(value: float, place: str) -> Came:
    """Return a current [A]."""
    return Came(f"{value:.6g} A", place, value)


def volts(value: float, place: str) -> Came:
    """Return a voltage [V]."""
    return Came(f"{value:.6g} V", place, value)


def watts(value: float, place: str) -> Came:
    """Return a power [W]."""
    return Came(f"{value:.6g} W", place, value)


def amp_hours(value: float, place: str) -> Came:
    """Return a charge [A·s]."""
    return Came(f"{value / HOUR:.6g} Ah", place, value)


def watt_hours(value: float, place: str) -> Came:
    """Return an energy [J]."""
    return Came(f"{value / HOUR:.6g} Wh", place, value)


def milliohms(value: float, place: str) -> Came:
    """Return a resistance [ohm]."""
    return Came(f"{value * 1e3:.6g} mΩ", place, value)


def metres(value: float, place: str) -> Came:
    """Return a length [m]."""
    return Came(f"{value:.6g} m", place, value)


def hours(value: float) -> str:
    """Return a time [s] as it would be typed."""
    return f"{value / HOUR:.6g} h"
