"""Walking the search: which step comes next, what a meter should show, what a reading leads to.

A path is text: the symptom and then the id of each turn taken, `flickers.no.all`. It may come from
a stranger; it is followed as far as it makes sense, and no further.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from math import inf

from calc.faults import graph
from calc.faults.graph import AMPS, CHARGE, OHMS, SHARED, VOLTS, End, Step, Turn
from calc.units.kinds import CHARGE as CHARGE_KIND
from calc.units.kinds import CURRENT, RESISTANCE
from calc.units.quantities import Kind, Unit
from calc.units.shown import quantity_text
from calc.worksheet.formula import names, work

METER = Kind(
    "voltage",
    "volt",
    (Unit("volt", "V", "V"), Unit("millivolt", "mV", "mV")),
    shown=("millivolt", "volt"),
)
"""Voltage as a meter shows it: in millivolts below one volt."""

KINDS = {VOLTS: METER, AMPS: CURRENT, OHMS: RESISTANCE, CHARGE: CHARGE_KIND}


class Values(Mapping[str, float]):
    """The reader's figures and the sound circuit's by name, with every limit worked when asked."""

    def __init__(self, known: Mapping[str, float]) -> None:
        self._known = dict(known)

    def __getitem__(self, name: str) -> float:
        if name not in self._known:
            self._known[name] = float(work(graph.criteria()[name].formula, self))
        return self._known[name]

    def __iter__(self) -> Iterator[str]:
        return iter({**self._known, **graph.criteria()})

    def __len__(self) -> int:
        return len({**self._known, **graph.criteria()})


@dataclass(frozen=True)
class Walk:
    """Where a path leads: to a `step` or to an `end`, by the turns `taken`.

    `path` is as much of it as makes sense; `odd` tells that the rest did not.
    """

    symptom: str
    step: Step | None
    end: End | None
    taken: tuple[tuple[Step, Turn], ...]
    path: str
    odd: bool


def walk(symptom: str, path: str) -> Walk:
    """Follow `path` from the start of `symptom`."""
    first, *tokens = path.split(".") if path else [symptom]
    known = first == symptom
    here: Step | None = graph.step(graph.symptom(symptom).start)
    taken: list[tuple[Step, Turn]] = []
    found: End | None = None
    odd = not known
    for token in tokens if known else ():
        turn = here.turn(token) if here else None
        if here is None or turn is None:
            odd = True
            break
        taken.append((here, turn))
        here, found = follow(symptom, turn)
    held = ".".join([symptom, *(turn.id for _, turn in taken)])
    return Walk(symptom, here, found, tuple(taken), held, odd)


def follow(symptom: str, turn: Turn) -> tuple[Step | None, End | None]:
    """Return the step or the end that a turn leads to."""
    if turn.found:
        return None, graph.end(turn.found)
    to = turn.to
    if to.startswith(SHARED):
        to = graph.symptom(symptom).after[to.removeprefix(SHARED)]
    return graph.step(to), None


@dataclass(frozen=True)
class Band:
    """The readings that one turn is for: from `low` to below `high` [in SI]."""

    turn: Turn
    low: float
    high: float


def bands(step: Step, values: Values) -> tuple[Band, ...]:
    """Return the readings of each turn of a measurement, lowest first, without a gap.

    A turn whose limit lies below the one before it has no readings, and is left out.
    """
    found = []
    low = -inf
    for turn in step.turns:
        high = max(low, work(turn.below, values)) if turn.below else inf
        if high > low:
            found.append(Band(turn, low, high))
        low = high
    return tuple(found)


def possible(step: Step, values: Values) -> tuple[Turn, ...]:
    """Return the turns that there are readings for; of a question, all."""
    return tuple(band.turn for band in bands(step, values)) if step.reads else step.turns


def turn_for(step: Step, reading: float, values: Values) -> Turn:
    """Return the turn that a `reading` [in SI] leads to."""
    return next(band.turn for band in bands(step, values) if reading < band.high)


@cache
def limits(step: Step) -> tuple[str, ...]:
    """Return the names of the limits that a step's turns rest on, each with those it rests on."""
    found: dict[str, None] = {}

    def add(formula: str) -> None:
        for name in sorted(names(formula)):
            if name in graph.criteria() and name not in found:
                add(graph.criteria()[name].formula)
                found[name] = None

    for formula in (step.expects, *(turn.below for turn in step.turns)):
        if formula:
            add(formula)
    return tuple(found)


def amount(value: float, reads: str) -> str:
    """Return a reading [in SI] as a meter shows it."""
    digits = 4 if reads == VOLTS and value >= 1 else 3
    return quantity_text(value, KINDS[reads], digits=digits)


def said(band: Band, reads: str) -> str:
    """Return the readings of a band in words."""
    if band.high == inf:
        return f"{amount(band.low, reads)} or more"
    if band.low == -inf:
        return f"less than {amount(band.high, reads)}"
    return f"{amount(band.low, reads)} to {amount(band.high, reads)}"


def answered(step: Step, turn: Turn, values: Values) -> str:
    """Return what an answer is called: its readings and what they mean, or the words alone."""
    if not step.reads:
        return turn.says
    band = next((band for band in bands(step, values) if band.turn == turn), None)
    words = said(band, step.reads) if band else "a reading that your figures leave no room for"
    return f"{words[0].upper()}{words[1:]}: {turn.says}"
