"""The worksheets in reading order, by chapter. Registration is this tuple and nothing else.

A worksheet's module is imported when it is first asked for: a page shows one of them, and reading
them all would be a good part of its start. `wire-drop` lives in `calc.sheets.wire_drop`.
"""

from dataclasses import dataclass
from functools import cache
from importlib import import_module

from calc.worksheet import Worksheet


@dataclass(frozen=True)
class Chapter:
    """Ids of worksheets that belong together, under the title by which pages group them."""

    title: str
    ids: tuple[str, ...]


CHAPTERS: tuple[Chapter, ...] = (
    Chapter(
        "Quick checks",
        ("watts-to-amps", "runtime", "wire-drop", "fuse-choice", "joint-torque"),
    ),
    Chapter("Wire, fuse and fault", ("wire-size", "fault-current", "fuse-ladder")),
    Chapter("Joints and faults", ("joint-heat", "joint-sheet", "find-fault")),
    Chapter(
        "The bank and its loads",
        (
            "appliance-route",
            "light-dimming",
            "inverter-size",
            "bank-size",
            "remote-switch",
            "bank-gauge",
            "standby-drain",
        ),
    ),
    Chapter("Three ways to charge", ("sun-yield", "alternator-charge", "shore-charge", "week-ahead")),
    Chapter(
        "Comfort",
        (
            "heat-loss",
            "heater-night",
            "cooling-day",
            "enclosure-airflow",
            "battery-air",
            "water-heater",
        ),
    ),
)

IDS: tuple[str, ...] = tuple(name for chapter in CHAPTERS for name in chapter.ids)


@cache
def worksheet(name: str) -> Worksheet:
    """Return the worksheet with the id `name`. Raises KeyError if none is registered."""
    if name not in IDS:
        raise KeyError(name)
    found: Worksheet = import_module(f"calc.sheets.{name.replace('-', '_')}").WORKSHEET
    return found
