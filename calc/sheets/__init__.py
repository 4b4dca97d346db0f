"""The worksheets in reading order, by chapter. Registration is this tuple and nothing else.

A worksheet's module is imported when it is first asked for: a page shows one of them, and reading
them all would be a good part of its start. `wire-drop` lives in `calc.sheets.quick.wire_drop`.
"""

from __future__ import annotations

import copyreg
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from typing import TYPE_CHECKING

from calc.worksheet.work import Worksheet

if TYPE_CHECKING:  # neither is needed to work a sheet
    from calc.practice.declared import Practice
    from calc.worksheet.explain import Explanation


@dataclass(frozen=True)
class Chapter:
    """Ids of worksheets that belong together, under the title by which pages group them.

    `folder` is the package of `calc.sheets` that holds a package for each of them.
    """

    title: str
    folder: str
    ids: tuple[str, ...]


# fmt: off
CHAPTERS: tuple[Chapter, ...] = (
    Chapter("Quick checks", "quick", ("watts-to-amps", "runtime", "wire-drop", "fuse-choice", "joint-torque")),
    Chapter("Wire, fuse and fault", "wire", ("wire-size", "fault-current", "fuse-ladder")),
    Chapter("Joints and faults", "joints", ("joint-heat", "joint-sheet", "find-fault")),
    Chapter("The bank and its loads", "bank",
            ("appliance-route", "light-dimming", "inverter-size", "bank-size", "remote-switch", "bank-gauge", "standby-drain", "converter")),
    Chapter("Three ways to charge", "charging", ("sun-yield", "panel-string", "alternator-charge", "shore-charge", "week-ahead")),
    Chapter("Comfort", "comfort",
            ("heat-loss", "heater-night", "cooling-day", "enclosure-airflow", "battery-air", "water-heater")),
)
# fmt: on

IDS: tuple[str, ...] = tuple(name for chapter in CHAPTERS for name in chapter.ids)
_FOLDERS = {name: chapter.folder for chapter in CHAPTERS for name in chapter.ids}


def package_of(name: str) -> str:
    """Return the full name of the package of worksheet `name`. Raises KeyError."""
    return f"{__name__}.{_FOLDERS[name]}.{name.replace('-', '_')}"


@cache
def worksheet(name: str) -> Worksheet:
    """Return the worksheet with the id `name`. Raises KeyError if none is registered."""
    found: Worksheet = import_module(package_of(name)).WORKSHEET
    return found


@cache
def practice_of(name: str) -> Practice:
    """Return the practice of the worksheet with the id `name`. Raises KeyError."""
    found: Practice = import_module(f"{package_of(name)}.practice").PRACTICE
    return found


@cache
def explanation_of(name: str) -> Explanation:
    """Return how the worksheet with the id `name` is explained to a client. Raises KeyError."""
    found: Explanation = import_module(f"{package_of(name)}.client").EXPLANATION
    return found


def _by_name(sheet: Worksheet) -> tuple[Callable[..., Worksheet], tuple[str]]:
    return worksheet, (sheet.id,)


copyreg.pickle(Worksheet, _by_name)  # a declaration holds functions: it is found again by its id
