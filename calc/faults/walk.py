"""Walking the search: which step comes next, and what a reading leads to.

A path is text: the symptom and then the id of each turn taken, `flickers.no.all`. It may come from
a stranger; it is followed as far as it makes sense, and no further.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from math import inf

from calc.faults import graph
from calc.faults.graph import SHARED, End, Step, Symptom, Turn
from calc.worksheet.formula import names, work


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

    symptom: Symptom
    step: Step | None
    end: End | None
    taken: tuple[tuple[Step, Turn], ...]
    path: str
    odd: bool


def walk(symptom: Symptom, path: str) -> Walk:
    """Follow `path` from the start of `symptom`. Raises NotCovered for an unknown symptom.

    A path from before a step was there goes past it.
    """
    first, *tokens = path.split(".") if path else [symptom]
    known = first == symptom
    here: Step | None = graph.step(graph.way_in(symptom).start)
    taken: list[tuple[Step, Turn]] = []
    found: End | None = None
    odd = not known
    for token in tokens if known else ():
        turn = here.turn(token) if here else None
        while here is not None and turn is None and here.older:
            here = graph.step(here.older)
            turn = here.turn(token)
        if here is None or turn is None:
            odd = True
            break
        taken.append((here, turn))
        here, found = follow(symptom, turn)
    held = ".".join([symptom, *(turn.id for _, turn in taken)])
    return Walk(symptom, here, found, tuple(taken), held, odd)


def follow(symptom: Symptom, turn: Turn) -> tuple[Step | None, End | None]:
    """Return the step or the end that a turn leads to."""
    if turn.found:
        return None, graph.end(turn.found)
    to = turn.to
    if to.startswith(SHARED):
        to = graph.way_in(symptom).after[to.removeprefix(SHARED)]
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
    """Return the turns that there are readings for; of a question, all that are offered."""
    if step.reads:
        return tuple(band.turn for band in bands(step, values))
    return tuple(turn for turn in step.turns if not turn.old)


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
