"""The search as data: steps, what each answer leads to, causes, limits and words.

A step is named `file.step`. A turn leads to another step, or to an end. `@run` and `@blocks` stand
for what comes after a stretch that several symptoms share; each symptom's file says what that is.
"""

import json
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc.tables import text
from calc.units.covered import Enumeration

SHARED = "@"


class Symptom(Enumeration):
    """What is seen to be wrong: where a search begins. A check begins where nothing is."""

    CHECK = "check"
    FLICKERS = "flickers"
    HOT = "hot"
    FLAT = "flat"
    CHARGE = "charge"
    FUSE = "fuse"
    INVERTER = "inverter"
    GAUGE = "gauge"
    DEAD = "dead"


class Reads(Enumeration):
    """What a meter is set to: volts, amps, ohms, or charge counted."""

    VOLTS = "volts"
    AMPS = "amps"
    OHMS = "ohms"
    CHARGE = "charge"


@dataclass(frozen=True, kw_only=True)
class Turn:
    """One answer to a step: where it leads (`to` a step, or `found` an end) and what it means.

    `old` marks one that older paths hold and that is no longer offered. `below` is a formula: the
    turn is for readings below it and not below that of the turn before. The last turn of a
    measurement, and every turn of a question, has none. `burns` tells that something was too hot,
    `still` that no current flows, so that a sound part loses nothing.
    """

    id: str
    text: str
    below: str = ""
    to: str = ""
    found: str = ""
    old: bool = False
    burns: bool = False
    still: bool = False


@dataclass(frozen=True, kw_only=True)
class Step:
    """A question to `ask`, or something to `measure`: with what, between which points, and when.

    `reads` is None for a question. `expects` is the formula for a sound circuit's reading. `danger`
    marks what must be done first. `older` is the step that a path from before this one goes on
    with.
    """

    id: str
    why: str
    turns: tuple[Turn, ...]
    ask: str = ""
    danger: bool = False
    measure: str = ""
    reads: Reads | None = None
    red: str = ""
    black: str = ""
    clamp: str = ""
    state: str = ""
    expects: str = ""
    older: str = ""

    @property
    def text(self) -> str:
        """The question, or what to measure."""
        return self.ask or self.measure

    def turn(self, name: str) -> Turn | None:
        """Return the turn with the id `name`, or None."""
        return next((turn for turn in self.turns if turn.id == name), None)


@dataclass(frozen=True, kw_only=True)
class End:
    """Where a search ends: the cause, what to do, and the worksheets that prevent it.

    `clear` marks that no fault was found, `usual` that what was seen is as it should be; `then`
    names the symptom to go on with. `joint` is the kind of joint that is to be remade, where it is
    known.
    """

    cause: str
    fix: str
    repair: str
    prevents: tuple[str, ...]
    joint: str = ""
    danger: bool = False
    clear: bool = False
    usual: bool = False
    then: str = ""


@dataclass(frozen=True, kw_only=True)
class WayIn:
    """How a search begins for a symptom, in words (`about`) and with the safety line.

    `called` is what people say for it. `start` is its first step, `after` what comes after each
    shared stretch. `charging` tells that the current on the run is a charger's.
    """

    about: str
    called: tuple[str, ...]
    safety: str
    start: str
    after: dict[str, str]
    charging: bool


@dataclass(frozen=True, kw_only=True)
class Criterion:
    """A limit by name: its formula, the reason for it and where that comes from."""

    formula: str
    label: str
    why: str
    source: str


@cache
def _file(name: str) -> dict[str, Any]:
    content: dict[str, Any] = json.loads(text("calc.faults", f"{name}.json"))
    return content


def _within(file: str, name: str) -> str:
    return name if not name or name.startswith(SHARED) or "." in name else f"{file}.{name}"


@cache
def way_in(symptom: Symptom) -> WayIn:
    """Return how the search for a `symptom` begins. Raises NotCovered."""
    name = Symptom(symptom)
    file = _file(name)
    return WayIn(
        about=file["about"],
        called=tuple(file["called"]),
        safety=file["safety"],
        start=_within(name, file["start"]),
        after={shared: _within(name, to) for shared, to in file["after"].items()},
        charging=file.get("charging", False),
    )


@cache
def step(name: str) -> Step:
    """Return the step `name`, such as `run.minus`. Raises KeyError."""
    file, _, own = name.partition(".")
    data = dict(_file(file)["steps"][own])
    turns = tuple(
        Turn(**{**turn, "to": _within(file, turn.get("to", ""))}) for turn in data.pop("turns")
    )
    if "older" in data:
        data["older"] = _within(file, data["older"])
    if "reads" in data:
        data["reads"] = Reads(data["reads"])
    return Step(id=name, turns=turns, **data)


@cache
def end(name: str) -> End:
    """Return the end `name`. Raises KeyError."""
    data = _file("ends")[name]
    return End(**{**data, "prevents": tuple(data["prevents"])})


@cache
def criteria() -> dict[str, Criterion]:
    """Return every limit by name."""
    return {name: Criterion(**data) for name, data in _file("criteria").items()}


def carried(name: str) -> dict[str, str]:
    """Return which figures the worksheet `name` is opened with: its field to ours."""
    found: dict[str, str] = _file("words")["carry"].get(name, {})
    return found


def words(group: str, charging: bool) -> dict[str, str]:
    """Return what places (`places`, `clamps`) or settings (`settings`) are called."""
    instead = {"places": "charging", "settings": "charger_on"}.get(group, "")
    file = _file("words")
    found: dict[str, str] = {**file[group], **(file[instead] if charging and instead else {})}
    return found


def steps_of(file: str) -> tuple[str, ...]:
    """Return the names of all steps that stand in one file."""
    return tuple(f"{file}.{own}" for own in _file(file)["steps"])


def ends() -> tuple[str, ...]:
    """Return the names of all ends."""
    return tuple(_file("ends"))
