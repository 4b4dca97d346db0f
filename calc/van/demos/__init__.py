"""Three vans of our own invention: a sound one, one with the ten usual mistakes, one half seen."""

from __future__ import annotations

from calc.tables import text
from calc.van.files import read_van
from calc.van.record import Van

DEMOS = {
    "marram": "A sound van for two",
    "ten-mistakes": "A van with the ten usual mistakes",
    "half-seen": "A van half seen in an inspection",
}
"""The id of each, and what it is."""


def demo_text(name: str) -> str:
    """Return the file of a demo as it was written. Raises KeyError."""
    if name not in DEMOS:
        raise KeyError(name)
    return text("calc.van.demos", f"{name}.toml")


def demo(name: str) -> Van:
    """Return a demo. Raises KeyError."""
    return read_van(demo_text(name))
