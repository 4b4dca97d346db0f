"""The symbols of a diagram: how much room each takes along its line, and the word for it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Size:
    """How long a symbol is in its line, and how far it reaches above and below it."""

    width: float
    half: float
    word: str


SYMBOLS: dict[str, Size] = {
    "fuse": Size(32, 7, "fuse"),
    "no-fuse": Size(32, 7, "no fuse"),
    "unseen-fuse": Size(32, 9, "fuse not seen"),
    "fuse-block": Size(30, 9, "fuse block"),
    "breaker": Size(36, 14, "breaker"),
    "breaker-2": Size(36, 14, "double-pole breaker"),
    "isolator": Size(36, 14, "isolator"),
    "switch": Size(36, 14, "switch"),
    "residual": Size(36, 16, "residual-current device"),
    "changeover": Size(40, 16, "changeover switch"),
    "battery": Size(36, 18, "battery"),
    "panel": Size(42, 17, "solar panel"),
    "generator": Size(36, 18, "alternator"),
    "regulator": Size(38, 18, "solar regulator"),
    "charger": Size(38, 18, "charger from mains"),
    "dc-charger": Size(38, 18, "d.c. to d.c. charger or converter"),
    "relay": Size(38, 16, "split-charge relay"),
    "inverter": Size(38, 18, "inverter"),
    "shunt": Size(40, 12, "shunt"),
    "inlet": Size(36, 16, "shore power inlet"),
    "socket": Size(32, 14, "socket"),
    "lamp": Size(30, 15, "light"),
    "motor": Size(30, 15, "motor"),
    "pump": Size(30, 15, "pump"),
    "fan": Size(30, 15, "fan"),
    "heater": Size(36, 10, "heating element"),
    "fridge": Size(32, 15, "fridge"),
    "electronics": Size(32, 14, "electronics"),
    "load": Size(32, 14, "other load"),
    "chassis": Size(26, 13, "chassis of the van"),
    "earth": Size(26, 13, "protective earth"),
    "negative": Size(20, 9, "negative of the bank"),
    "to": Size(18, 8, "goes on to the mark named"),
    "from": Size(18, 8, "comes from the mark named"),
}
"""Every symbol by its name."""


def size(name: str) -> Size:
    """Return the room of a symbol; none for a plain line. Raises KeyError."""
    return SYMBOLS[name] if name else Size(0, 0, "")
