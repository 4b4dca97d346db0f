"""The conductor of a run: as stated, or chosen where a plan leaves it open.

In an inspection nothing is chosen, and nothing where somebody says that it was not seen.
"""

from __future__ import annotations

from dataclasses import dataclass

from calc.van.came import Came, unknown
from calc.van.record import Part, Van
from calc.van.values import State
from calc.van.worked import attempted


@dataclass(frozen=True)
class Laid:
    """A conductor by its `name`; `chosen` tells that the worksheet of sizes chose it."""

    name: str
    chosen: bool


def open_in_plan(van: Van, part: Part, name: str) -> bool:
    """Return whether a plan leaves a value open, so that it may be chosen."""
    return part[name].state is State.BLANK and not van.inspection


def conductor_of(van: Van, part: Part) -> Laid | Came:
    """Return a run's conductor, or the place of what is not known of it."""
    from calc.van.bind import filled

    given = part.choice("conductor")
    if given is not None:
        return Laid(given, chosen=False)
    if not open_in_plan(van, part, "conductor"):
        return unknown(f"{part.place}.conductor")
    found = filled(van, "wire-size", part)
    if found.lacking:
        return unknown(found.missing[found.lacking[0]])
    answer = attempted("wire-size", found.texts)
    name = answer.values["conductor"] if answer else None
    return Laid(name, chosen=True) if name else unknown(f"{part.place}.conductor")
