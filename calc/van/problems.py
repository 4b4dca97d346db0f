"""Problems of a van's file: gathered to be told at once, and names that were nearly right."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from calc.van.keys import PartKind
from calc.van.reading import printable
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

LONGEST_NAME = 40  # characters of a name that are shown, and of an id

_MOST_PROBLEMS = 200  # that are told at once
_NEAR = 2  # letters between a name and the one that was meant


@dataclass
class Problems:
    """What is wrong in one reading, in the order of the file; far too many are only counted."""

    told: list[Problem] = field(default_factory=list)
    more: int = 0

    def add(self, place: str, message: str | Callable[[], str]) -> None:
        """Tell what is wrong at a place; a message that takes work is made only if it is told."""
        if len(self.told) < _MOST_PROBLEMS:
            self.told.append(Problem(place, message if isinstance(message, str) else message()))
        else:
            self.more += 1

    def stop(self) -> None:
        """Raise InputError if there is a problem."""
        if self.more:
            self.told.append(Problem("", f"There are {self.more} problems more."))
        if self.told:
            raise InputError(tuple(self.told))


def unknown(where: str, name: str, accepted: tuple[str, ...]) -> str:
    shown = printable(name)[:LONGEST_NAME]
    near = nearest(shown, accepted)
    meant = f"Is “{near}” meant?" if near else f"It takes {', '.join(accepted)}."
    return f"{where} has no “{shown}”. {meant}"


def nearest(name: str, names: tuple[str, ...]) -> str:
    """Return the one of some names that a slip of the pen made `name`, if any."""
    folded = name.casefold().replace("-", "_")
    found = min(names, key=lambda one: _steps(folded, one.replace("-", "_")))
    steps = _steps(folded, found.replace("-", "_"))
    return found if steps <= min(_NEAR, len(found) // 2) else ""


def _steps(one: str, other: str) -> int:
    """Return how many letters must be put in, taken out or changed to make one of the other."""
    if abs(len(one) - len(other)) > _NEAR:
        return _NEAR + 1
    row = list(range(len(other) + 1))
    for place, sign in enumerate(one, start=1):
        above, row[0] = row[0], place
        for at, letter in enumerate(other, start=1):
            above, row[at] = row[at], min(row[at] + 1, row[at - 1] + 1, above + (sign != letter))
    return row[-1]


def called(kind: PartKind, index: int, raw: Mapping[str, Any]) -> str:
    """Return what a message calls a part: the word for it, its number and its name."""
    if not kind.many:
        return kind.title
    number = f"{kind.one[0].upper()}{kind.one[1:]} {index}"
    name = raw.get("name")
    if not name or not isinstance(name, str):
        return number
    return f"{number} “{printable(name)[:LONGEST_NAME]}”"
